// The order of the table's rows. Pure.
import type { Drawing } from '../../core/contract';
import { FLAG } from '../../core/shapes/drawing-flags';

export type SortBy = 'day' | 'generation' | 'set' | 'state';

const RANKED = [FLAG.spoiled, FLAG.setAside, FLAG.look, FLAG.onShelf] as const;

/**
 * Indices in order. Ties keep the order of making, newest first when the main order is by day downwards.
 * An unknown set word comes last either way.
 */
export function sortedRows(
  drawing: Pick<Drawing, 'keys' | 'generation' | 'days' | 'setWord' | 'flags' | 'y'>,
  by: SortBy,
  down: boolean,
): Int32Array {
  /** A lost jar of unknown day counts as made before all others. */
  const day = (index: number): number => {
    const known = drawing.days[index] ?? NaN;
    return Number.isNaN(known) ? -1e9 : known;
  };
  const made = (a: number, b: number): number => day(a) - day(b) || a - b;
  const worst = (index: number): number => {
    const flags = drawing.flags[index] ?? 0;
    const rank = RANKED.findIndex((flag) => (flags & flag) !== 0);
    return rank < 0 ? RANKED.length : rank;
  };
  const sign = down ? -1 : 1;
  const compare: Record<SortBy, (a: number, b: number) => number> = {
    day: (a, b) => sign * made(a, b),
    generation: (a, b) => sign * ((drawing.generation[a] ?? 0) - (drawing.generation[b] ?? 0)) || made(a, b),
    set: (a, b) => {
      const [one, other] = [drawing.setWord[a] ?? 255, drawing.setWord[b] ?? 255];
      if (one === other) return made(a, b);
      if (one === 255 || other === 255) return one === 255 ? 1 : -1;
      return sign * (one - other);
    },
    state: (a, b) => sign * (worst(a) - worst(b)) || made(a, b),
  };
  return Int32Array.from(drawing.keys.keys()).toSorted(compare[by]);
}
