// Above the drawing: what each column is, in words, or the days of the calendar. Moves with the drawing by two CSS
// variables, so that a pan renders nothing.
import { type CSSProperties, memo } from 'react';
import type { Drawing } from '../../core/contract';
import { type Geometry, JAR, type Size, type View } from './geometry';
import { textWidth } from './measure';

interface Head {
  readonly x: number;
  readonly text: string;
}

interface Column {
  readonly x: number;
  readonly long: string;
  readonly short: string;
  /** What every n-th is counted by: the generation; on the calendar its place. */
  readonly count: number;
}

/** The heads to write: all where they fit, round numbers where not; a bare number once the word is written before it. */
export function thinnedHeads(
  columns: readonly Column[],
  k: number,
  measure: (text: string) => number,
): Head[] {
  const gap = 14;
  const fits = (heads: readonly Head[]): boolean => {
    let right = -Infinity;
    return heads.every(({ x, text }) => {
      const half = measure(text) / 2;
      const free = x * k - half >= right + gap;
      right = x * k + half;
      return free;
    });
  };
  const long = columns.map(({ x, long: text }) => ({ x, text }));
  if (fits(long)) return long;
  const most = columns.at(-1)?.count ?? 0;
  for (const every of roundSteps(most)) {
    const heads = columns.flatMap(({ x, long: word, short, count }, at) =>
      at === 0 || count % every === 0 ? [{ x, text: at === 0 ? word : short }] : [],
    );
    if (fits(heads)) return heads;
  }
  return long.slice(0, 1);
}

/** 1, 2, 5, 10, 20, 50 … as far as needed. */
function* roundSteps(most: number): Generator<number> {
  for (let ten = 1; ten <= most; ten *= 10) yield* [ten, ten * 2, ten * 5];
}

interface Props {
  readonly drawing: Drawing;
  readonly geometry: Geometry;
  readonly view: View;
  readonly size: Size;
}

const near = (x: number, view: View, size: Size): boolean => {
  const at = x * view.k + view.tx;
  return at > -size.width && at < size.width * 2;
};
const along = (x: number) => ({ '--x': x }) as CSSProperties;

/** Fine lines under the jars, one for each day named on the calendar. */
export const Ticks = memo(function Ticks({ drawing, geometry, view, size }: Props) {
  if (drawing.spacing !== 'calendar') return null;
  return (
    <div className="family-ticks" aria-hidden="true">
      {drawing.ticks
        .map((tick) => tick.x * geometry.columnStep + JAR.width / 2)
        .filter((x) => near(x, view, size))
        .map((x) => (
          <span key={x} style={along(x)} />
        ))}
    </div>
  );
});

export const Heads = memo(function Heads({
  drawing,
  columnXs,
  geometry,
  view,
  size,
}: Props & { readonly columnXs: ReadonlyMap<number, number> }) {
  const all =
    drawing.spacing === 'calendar'
      ? drawing.ticks.map((tick, count) => ({ at: tick.x, long: tick.label, short: tick.label, count }))
      : [...columnXs]
          .toSorted(([a], [b]) => a - b)
          .map(([generation, at]) => ({
            at,
            long: `generation ${generation}`,
            short: String(generation),
            count: generation,
          }));
  const shown = all
    .map((head) => ({ ...head, x: head.at * geometry.columnStep + JAR.width / 2 }))
    .filter((head) => near(head.x, view, size));
  return (
    <div className="family-heads" aria-hidden="true">
      {thinnedHeads(shown, view.k, textWidth).map((head) => (
        <span key={`${head.x} ${head.text}`} style={along(head.x)}>
          {head.text}
        </span>
      ))}
    </div>
  );
});
