// The three small pictures on the doors, drawn with the same tokens as the family. Decoration: hidden from readers.

/** A jar of 44 by 58, filled to `level` (0 to 1), a numeral in it if given. */
function JarPicture({
  x,
  y,
  level,
  numeral,
}: {
  readonly x: number;
  readonly y: number;
  readonly level: number;
  readonly numeral?: string;
}) {
  const top = 14 + (1 - level) * 38;
  return (
    <g transform={`translate(${x} ${y})`}>
      <path className="door-glass" d="M4 12 h36 v34 a9 9 0 0 1 -9 9 h-18 a9 9 0 0 1 -9 -9 z" />
      {level > 0 && (
        <path className="door-fill" d={`M6 ${top} h32 V46 a7 7 0 0 1 -7 7 h-18 a7 7 0 0 1 -7 -7 z`} />
      )}
      {level > 0 && <path className="door-surface" d={`M6 ${top} h32`} />}
      <path className="door-edge" d="M4 12 h36 v34 a9 9 0 0 1 -9 9 h-18 a9 9 0 0 1 -9 -9 z" />
      <rect className="door-lid" x="2" y="4" width="40" height="8" rx="3" />
      {numeral && (
        <text className="door-numeral" x="22" y="44" textAnchor="middle">
          {numeral}
        </text>
      )}
    </g>
  );
}

function Picture({ children }: { readonly children: React.ReactNode }) {
  return (
    <svg className="door-picture" viewBox="0 0 240 130" aria-hidden="true" focusable="false">
      {children}
    </svg>
  );
}

/** A small family: one jar, two that it seeded, one more. */
export function FamilyPicture() {
  return (
    <Picture>
      <path className="door-ribbon wide" d="M58 68 C 78 68, 78 38, 98 38" />
      <path className="door-ribbon" d="M58 68 C 78 68, 78 98, 98 98" />
      <path className="door-ribbon wide" d="M142 38 C 162 38, 162 68, 182 68" />
      <path className="door-ribbon" d="M142 98 C 162 98, 162 68, 182 68" />
      <JarPicture x={14} y={36} level={0.8} numeral="1" />
      <JarPicture x={98} y={5} level={0.85} numeral="2" />
      <JarPicture x={98} y={66} level={0.6} numeral="2" />
      <JarPicture x={182} y={36} level={0.8} numeral="3" />
    </Picture>
  );
}

/** A sheet of notes on its way into a jar. */
export function NotesPicture() {
  const lines = [28, 42, 56, 70, 84];
  return (
    <Picture>
      <path className="door-sheet" d="M28 10 h68 l14 14 v96 h-82 z" />
      <path className="door-fold" d="M96 10 v14 h14" />
      {lines.map((y, at) => (
        <g key={y}>
          <path className="door-line" d={`M40 ${y} h14`} />
          <path className="door-line" d={`M62 ${y} h${at % 2 ? 22 : 34}`} />
        </g>
      ))}
      <path className="door-ribbon wide" d="M112 70 C 136 70, 140 68, 164 68" />
      <JarPicture x={164} y={36} level={0.8} numeral="1" />
    </Picture>
  );
}

/** One clean jar. */
export function EmptyPicture() {
  return (
    <Picture>
      <JarPicture x={98} y={36} level={0} />
      <path className="door-shelf" d="M40 97 h160" />
    </Picture>
  );
}
