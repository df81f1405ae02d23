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

/** The heads to write: all where they fit, each n-th where not; a bare number once the word is written before it. */
export function thinnedHeads(
  columns: readonly { readonly x: number; readonly long: string; readonly short: string }[],
  k: number,
  measure: (text: string) => number,
): Head[] {
  const gap = 14;
  const fits = (pick: (at: number) => string, every: number): boolean => {
    let right = -Infinity;
    for (let at = 0; at < columns.length; at += every) {
      const column = columns[at];
      if (!column) continue;
      const half = measure(pick(at)) / 2;
      if (column.x * k - half < right + gap) return false;
      right = column.x * k + half;
    }
    return true;
  };
  const long = (at: number): string => columns[at]?.long ?? '';
  const short = (at: number): string => (at === 0 ? long(0) : (columns[at]?.short ?? ''));
  for (const pick of [long, short])
    if (fits(pick, 1)) return columns.map((column, at) => ({ x: column.x, text: pick(at) }));
  for (let every = 2; every < columns.length; every = every < 5 ? 5 : every * 2)
    if (fits(short, every))
      return columns.flatMap((column, at) => (at % every === 0 ? [{ x: column.x, text: short(at) }] : []));
  const first = columns[0];
  return first ? [{ x: first.x, text: first.long }] : [];
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
      ? drawing.ticks.map((tick) => ({ at: tick.x, long: tick.label, short: tick.label }))
      : [...columnXs]
          .toSorted(([a], [b]) => a - b)
          .map(([generation, at]) => ({ at, long: `generation ${generation}`, short: String(generation) }));
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
