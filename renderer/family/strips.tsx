// The label strips of founding batches: a slip of paper for each product, a cell for each strain declared on it; and the
// small slips of products that topped a jar up.
import { memo } from 'react';
import { JAR, STRIP_HEIGHT, type StripSize } from './geometry';
import { textWidth } from './measure';
import type { Lit } from './kin';
import { ribbonWidth } from './ribbons';
import type { TopUp } from './top-ups';

type Props = {
  readonly x: number;
  readonly y: number;
  readonly name: string;
  readonly strains: number;
  readonly culture: boolean;
  /** Distance from the middle of its founding jars, in screen pixels. */
  readonly lift: number;
  readonly dimmed: boolean;
} & StripSize;

const MOST_CELLS = 12;

/** The name as it fits on the slip. */
function short(name: string, room: number): string {
  let shown = name;
  while (shown.length > 1 && textWidth(shown) > room) shown = `${shown.slice(0, -2).trimEnd()}…`;
  return shown;
}

export const Strip = memo(function Strip({
  x,
  y,
  name,
  strains,
  culture,
  lift,
  dimmed,
  width,
  reach,
}: Props) {
  const cells = Math.min(strains, MOST_CELLS);
  const step = Math.min(17, (width - 28) / Math.max(1, cells));
  return (
    <g className={dimmed ? 'strip dimmed' : 'strip'} transform={`translate(${x} ${y + JAR.inletY})`}>
      <g className="screen-size">
        <g transform={`translate(${-width - reach} ${lift})`}>
          <rect className="slip" width={width} height={STRIP_HEIGHT} rx="5" />
          <text x="12" y="20">
            {short(name, width - 22)}
          </text>
          {culture ? (
            <path className="culture" d="M12 35Q20 28 28 35T44 35T60 35T76 35" />
          ) : cells === 0 ? (
            <text className="not-noted" x="12" y="39">
              {textWidth('strains not noted') <= width - 20 ? 'strains not noted' : 'strains: ?'}
            </text>
          ) : (
            Array.from({ length: cells }, (_, at) => (
              <rect
                key={at}
                className="strain"
                x={12 + at * step}
                y="28"
                width={step - 4}
                height="11"
                rx="3"
              />
            ))
          )}
          {strains > MOST_CELLS && (
            <text x={width - 12} y="40" textAnchor="end">
              {strains}
            </text>
          )}
        </g>
      </g>
    </g>
  );
});

/** The slips of products that topped jars up: too small for words; the jar's own words name them. */
export const TopUps = memo(function TopUps(props: {
  readonly all: readonly TopUp[];
  readonly lit: Lit | null;
  readonly cornerX: number;
  readonly cornerY: number;
}) {
  const { all, lit, cornerX, cornerY } = props;
  return (
    <g aria-hidden="true" transform={`translate(${-cornerX} ${-cornerY})`}>
      {all.map(({ key, child, box, share, path }) => {
        const [width, height] = [box.right - box.left, box.bottom - box.top];
        return (
          <g key={key} className={lit !== null && lit[child] !== 1 ? 'strip top-up dimmed' : 'strip top-up'}>
            <path
              className={lit?.[child] === 1 ? 'ribbon lit' : 'ribbon'}
              d={path}
              strokeWidth={ribbonWidth(share)}
            />
            <rect className="slip" x={box.left} y={box.top} width={width} height={height} rx="3" />
            <rect
              className="written"
              x={box.left + width * 0.2}
              y={box.top + height * 0.42}
              width={width * 0.6}
              height={height * 0.16}
            />
          </g>
        );
      })}
    </g>
  );
});
