// The drawing of one jar: a stoneware body with a lid, what is in it, and its marks. Shapes only, in a 62 × 66 box.
import { FLAG } from '../../core/shapes/drawing-flags';
import './jar-shape.css';

export const BODY = 'M12 11V12C12 16 2 15 2 25V51Q2 64 15 64H47Q60 64 60 51V25C60 15 50 16 50 12V11Z';
const BELOW = 'V51Q56 60 46 60H16Q6 60 6 51Z';

/**
 * The surface of the contents, loosest first: loose waves, a slack ripple, a spoon's hollow, a level line, and a level
 * block that stands clear of the wall. All lie above the numeral, so that its ink stands on the contents alone: over
 * the glass it would be lost in the dark theme, and hide the surface in both.
 */
export const CONTENTS = [
  `M6 22C10 14 16 14 21 19.5S31 25 37 20S50 13 56 22${BELOW}`,
  `M6 20C14 16 20 16.5 27 19.5S41 23.5 47 20S53 18 56 19.5${BELOW}`,
  `M6 18H17C23 18 23 25.5 31 25.5S39 18 45 18H56${BELOW}`,
  `M6 18H56${BELOW}`,
  'M13 15.5H49Q53 15.5 53 19.5V50Q53 60 45 60H17Q9 60 9 50V19.5Q9 15.5 13 15.5Z',
] as const;
const SURFACES = CONTENTS.map((path) => path.split(BELOW)[0] ?? path);
const SURFACE_VERY_FIRM = 'M9 22.5V19.5Q9 15.5 13 15.5H49Q53 15.5 53 19.5V22.5';

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
