// The order of the table's rows. Pure.
import type { Drawing } from '../../core/contract';
import { FLAG } from './flags';

export type SortBy = 'day' | 'generation' | 'set' | 'state';

const RANKED = [FLAG.spoiled, FLAG.onHold, FLAG.look, FLAG.onShelf] as const;

/**
 * Indices in order. Ties keep the order of making, newest first when the main order is by day downwards.
 * An unknown set word comes last either way.
 * @param days position along the calendar by index; null: the order of the drawing
 */
export function sortedRows(
  drawing: Pick<Drawing, 'keys' | 'generation' | 'setWord' | 'flags' | 'y'>,
  days: Float64Array | null,
  by: SortBy,
  down: boolean,
): Int32Array {
  const day = (index: number): number => days?.[index] ?? index;
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
