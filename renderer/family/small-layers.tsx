// Layers of the drawing with few parts: the tubs that jars in warmth stand in, and dots for jars that lie folded.
import { JAR } from '../../core/pictures/jar-outline';
import type { Geometry } from './geometry';
import type { Placed } from './lanes';
import type { tubsOf } from './tubs';

interface Corner {
  readonly cornerX: number;
  readonly cornerY: number;
}

export function Tubs(props: Corner & { readonly all: ReturnType<typeof tubsOf>; readonly k: number }) {
  return (
    <g className="tubs" aria-hidden="true" transform={`translate(${-props.cornerX} ${-props.cornerY})`}>
      {props.all.map(({ key, path, x, y, beside }) => (
        <g key={key}>
          <path className="tub" d={path} />
          <text
            className={beside ? 'jar-label tub-word beside' : 'jar-label above tub-word'}
            x={beside ? x + 8 / props.k : x}
            y={y + 4 / props.k}
          >
            in warmth
          </text>
        </g>
      ))}
    </g>
  );
}

/** No more dots than this stand below one jar. */
const MOST_DOTS = 5;

interface MatesProps extends Corner {
  readonly drawing: Placed;
  readonly geometry: Geometry;
  readonly mounted: readonly number[];
  /** By index: how many jars lie folded below it. */
  readonly mates: Uint16Array;
}

export function Mates({ drawing, geometry, mounted, mates, cornerX, cornerY }: MatesProps) {
  const dot = (index: number, at: number, all: number) => (
    <circle
      key={`${index} ${at}`}
      cx={(drawing.x[index] ?? 0) * geometry.columnStep - cornerX + JAR.width / 2 + (at - (all - 1) / 2) * 13}
      cy={(drawing.y[index] ?? 0) * geometry.rowStep - cornerY + JAR.height + 12}
      r="4.5"
    />
  );
  return (
    <g className="mates" aria-hidden="true">
      {mounted.flatMap((index) => {
        const all = Math.min(MOST_DOTS, mates[index] ?? 0);
        return Array.from({ length: all }, (_, at) => dot(index, at, all));
      })}
    </g>
  );
}
