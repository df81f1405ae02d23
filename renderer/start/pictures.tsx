// The three small pictures on the doors, drawn with the same tokens as the family. Decoration: hidden from readers.
import { FLAG } from '../../core/shapes/drawing-flags';
import { JarShape } from '../parts/jar-shape';

/** A set word nobody has written down yet. */
const UNKNOWN = 255;

/** The family's own jar, its top left corner at x and y. */
function Jar({
  x,
  y,
  generation,
  setWord,
}: {
  readonly x: number;
  readonly y: number;
  readonly generation: number;
  readonly setWord: number;
}) {
  return (
    <g className="jar" transform={`translate(${x} ${y})`}>
      <JarShape generation={generation} setWord={setWord} flags={FLAG.outcomeKnown} />
    </g>
  );
}

function Picture({ children }: { readonly children: React.ReactNode }) {
  return (
    <svg className="door-picture" viewBox="0 0 280 172" aria-hidden="true" focusable="false">
      {children}
    </svg>
  );
}

/** A small family: one jar, two that it seeded, and one that both seeded. */
export function FamilyPicture() {
  return (
    <Picture>
      <path className="door-ribbon wide" d="M62 90 C 84 90, 84 50, 108 50" />
      <path className="door-ribbon" d="M62 96 C 84 96, 84 132, 108 132" />
      <path className="door-ribbon wide" d="M166 50 C 190 50, 190 90, 214 90" />
      <path className="door-ribbon" d="M166 132 C 190 132, 190 97, 214 97" />
      <Jar x={4} y={48} generation={1} setWord={2} />
      <Jar x={106} y={4} generation={2} setWord={3} />
      <Jar x={106} y={88} generation={2} setWord={1} />
      <Jar x={212} y={48} generation={3} setWord={4} />
    </Picture>
  );
}

/** A sheet of notes on its way into a jar. */
export function NotesPicture() {
  const lines = [44, 62, 80, 98, 116];
  return (
    <Picture>
      <path className="door-ribbon wide" d="M126 92 H 204" />
      <path className="door-sheet" d="M26 16 h84 l18 18 v122 h-102 z" />
      <path className="door-fold" d="M110 16 v18 h18" />
      {lines.map((y, at) => (
        <g key={y}>
          <path className="door-line" d={`M42 ${y} h16`} />
          <path className="door-line" d={`M70 ${y} h${at % 2 ? 26 : 40}`} />
        </g>
      ))}
      <Jar x={202} y={48} generation={1} setWord={3} />
    </Picture>
  );
}

/** One clean jar on the shelf. */
export function EmptyPicture() {
  return (
    <Picture>
      <path className="door-shelf" d="M44 126 h192" />
      <g className="jar" transform="translate(108 48)">
        <JarShape generation={1} setWord={UNKNOWN} flags={0} />
      </g>
    </Picture>
  );
}
