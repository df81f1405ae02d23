// The small slips of products that topped jars up: too small for words; the jar's own words name them.
import { memo } from 'react';
import type { Lit } from './kin';
import { ribbonWidth } from '../../core/pictures/ribbons';
import type { TopUp } from './top-ups';

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
