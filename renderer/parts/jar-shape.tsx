// The drawing of one jar: a stoneware body with a lid, what is in it, and its marks. Shapes only, in a 62 × 66 box.
import { BODY, CONTENTS, SURFACE_VERY_FIRM, SURFACES } from '../../core/pictures/jar-outline';
import { FLAG } from '../../core/shapes/drawing-flags';
import './jar-shape.css';

interface Props {
  readonly generation: number;
  readonly setWord: number;
  readonly flags: number;
  /** Vigour, 0 to 100: the line on its wall. Absent or null: none is drawn. */
  readonly score?: number | null;
}

/** The set line: a level marked on both walls, from the foot (0) to the shoulder (100). The numeral stays clear. */
function SetLine({ score }: { readonly score: number }) {
  const y = (59 - 0.36 * score).toFixed(1);
  return <path className="set-line" d={`M-3 ${y}H3M59 ${y}H65`} />;
}

/**
 * A plain lid; while set aside a wider, solid one with a light bar across, as at a road closed to all; where a look is due the
 * plain one with a hollow ring, which is no alarm. Told apart by outline and by light and dark, so also in grey. A cross means
 * spoiled, far out and in the table, and nothing else.
 */
export function Lid({ flags }: { readonly flags: number }) {
  if (flags & FLAG.setAside)
    return (
      <>
        <rect className="lid barred" x="3" y="-4" width="56" height="16" rx="3" />
        <path className="lid-bar" d="M15 4H47" />
      </>
    );
  return (
    <>
      <rect className="lid" x="10" y="1" width="42" height="10" rx="4" />
      {(flags & FLAG.look) !== 0 && <circle className="lid-dot" cx="31" cy="3" r="7" />}
    </>
  );
}

/** A jar as the family, the legend and the pane draw it. */
export function JarShape({ generation, setWord, flags, score = null }: Props) {
  const lost = (flags & FLAG.lost) !== 0;
  const spoiled = (flags & FLAG.spoiled) !== 0;
  const known = CONTENTS[setWord];
  // Seen but with no set word: filled to a plain line, in the faintest shade. Not seen: an open outline.
  const contents = lost ? null : (known ?? (flags & FLAG.outcomeKnown || spoiled ? CONTENTS[3] : null));
  const digits = String(generation).length;
  const size = digits > 2 ? ' many' : digits > 1 ? ' two' : '';
  const kind = ['body', lost ? 'lost' : '', flags & FLAG.onShelf ? 'shelf' : ''].filter(Boolean).join(' ');
  return (
    <>
      <path className={kind} d={BODY} />
      {contents !== null && (
        <path className={known ? `contents set-${setWord + 1}` : 'contents set-1'} d={contents} />
      )}
      {spoiled && <path className="hatch" d={BODY} />}
      {known && !spoiled && (
        <path
          className={setWord === 4 ? 'surface heavy' : 'surface'}
          d={setWord === 4 ? SURFACE_VERY_FIRM : SURFACES[setWord]}
        />
      )}
      {!lost && <Lid flags={flags} />}
      {score !== null && !lost && !spoiled && <SetLine score={score} />}
      <text
        className={`numeral${contents === null ? ' open' : ''}${spoiled ? ' over-hatch' : ''}${size}`}
        x="31"
        y={contents === null ? 54 : 56.5}
      >
        {generation}
      </text>
      {(flags & FLAG.atLeast) !== 0 && (
        <text className="at-least" x="63" y="65">
          +
        </text>
      )}
    </>
  );
}

/** The hatching of spoiled contents: once for each drawing that shows jars. */
export function JarDefs() {
  return (
    <defs>
      <pattern id="hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <path className="hatch-line" d="M2 0V7" />
      </pattern>
    </defs>
  );
}

/** A jar by itself, outside the drawing. Decoration: what it shows stands in words beside it. */
export function JarPicture({ generation, setWord, flags, score = null }: Props) {
  return (
    <svg className="jar-picture" viewBox="-2 -7 66 74" aria-hidden="true">
      <g className="jar">
        <JarShape generation={generation} setWord={setWord} flags={flags} score={score} />
      </g>
    </svg>
  );
}
