// The tub round jars that stand in warmth: one for each run of jars of a hold that stand one below the other. Pure.
import { JAR } from '../../core/pictures/jar-outline';
import type { Geometry } from './geometry';
import type { Placed } from './lanes';

export interface Tub {
  readonly key: string;
  /** The walls and the floor; open above, as a bath is. */
  readonly path: string;
  /** Where "in warmth" is written: below the middle of its floor, or beside its wall where another jar stands below. */
  readonly x: number;
  readonly y: number;
  readonly beside: boolean;
}

const SIDE = 15;
const ABOVE = 13;
const BELOW = 11;
const ROUND = 14;

/** @param warm keys of jars in warmth, by hold */
export function tubsOf(
  drawing: Placed,
  { columnStep, rowStep }: Pick<Geometry, 'columnStep' | 'rowStep'>,
  warm: readonly (readonly number[])[],
): Tub[] {
  const indexOf = new Map(Array.from(drawing.keys, (key, index) => [key, index]));
  return warm.flatMap((keys) => {
    const places = keys
      .flatMap((key) => indexOf.get(key) ?? [])
      .map((index) => ({
        index,
        x: drawing.x[index] ?? 0,
        y: drawing.y[index] ?? 0,
        lane: drawing.lane[index] ?? 0,
      }))
      .toSorted((a, b) => a.lane - b.lane || a.x - b.x || a.y - b.y);
    const runs: (typeof places)[] = [];
    for (const place of places) {
      const run = runs.at(-1);
      const before = run?.at(-1);
      if (run && before && before.lane === place.lane && before.x === place.x && place.y - before.y <= 1)
        run.push(place);
      else runs.push([place]);
    }
    return runs.flatMap((run): Tub[] => {
      const [first, end] = [run[0], run.at(-1)];
      if (!first || !end) return [];
      const left = first.x * columnStep - SIDE;
      const right = first.x * columnStep + JAR.width + SIDE;
      const top = first.y * rowStep - ABOVE;
      const beside = drawing.x.some(
        (x, at) => x === first.x && (drawing.y[at] ?? 0) > end.y && (drawing.y[at] ?? 0) - end.y <= 1,
      );
      // A jar right below keeps its lid out of the water.
      const bottom = end.y * rowStep + JAR.height + (beside ? 1 : BELOW);
      return [
        {
          key: String(drawing.keys[first.index]),
          path: `M${left} ${top}V${bottom - ROUND}Q${left} ${bottom} ${left + ROUND} ${bottom}H${right - ROUND}Q${right} ${bottom} ${right} ${bottom - ROUND}V${top}`,
          x: beside ? right : (left + right) / 2,
          y: beside ? (top + bottom) / 2 : bottom,
          beside,
        },
      ];
    });
  });
}
