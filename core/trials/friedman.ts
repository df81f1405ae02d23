// Friedman's test: do several tasters rank jars alike, more than chance would? The statistic is corrected for ties as SciPy
// and R do (not as NAG g08ae prints). For few blocks the chance is exact, over all orders of each block's own ranks; beyond
// that it goes by chi-square.
import { ordersOf, ranksOf, rankSums, tieSum } from './ranks';
import { chiSquareBeyond } from './tails';

export interface Friedman {
  /** Corrected for ties. */
  readonly q: number;
  readonly uncorrected: number;
  /** Chance of so much agreement or more where all orders are alike. */
  readonly p: number;
  readonly method: 'exact' | 'chi-square';
  readonly rankSums: readonly number[];
  /** Kendall's W, corrected for ties: 0 no agreement, 1 the same order by all. */
  readonly w: number;
}

/** Steps beyond which chi-square stands in for counting. */
const MOST_STEPS = 3_000_000;
const FEW_COLUMNS = 6;

/** Σ of squares of rank sums, in halves so that ties stay whole. */
const spread = (sums: readonly number[]): number => sums.reduce((all, sum) => all + sum * sum, 0);

/**
 * How likely each sum of squares is where every block comes in any of its orders. The order of the columns does not matter,
 * so that rank sums are kept sorted.
 * @returns null where that would take too long
 */
function distribution(blocks: readonly (readonly number[])[]): Map<number, number> | null {
  const columns = blocks[0]?.length ?? 0;
  if (columns > FEW_COLUMNS) return null;
  let states = new Map<string, number>([[Array.from({ length: columns }, () => 0).join(' '), 1]]);
  let steps = 0;
  for (const block of blocks) {
    const orders = ordersOf(block.map((rank) => Math.round(rank * 2)));
    steps += states.size * orders.length;
    if (steps > MOST_STEPS) return null;
    const next = new Map<string, number>();
    for (const [state, chance] of states) {
      const sums = state.split(' ').map(Number);
      for (const order of orders) {
        const key = sums.map((sum, i) => sum + (order[i] ?? 0)).toSorted((a, b) => a - b).join(' ');
        next.set(key, (next.get(key) ?? 0) + chance / orders.length);
      }
    }
    states = next;
  }
  const found = new Map<number, number>();
  for (const [state, chance] of states) {
    const squares = spread(state.split(' ').map(Number));
    found.set(squares, (found.get(squares) ?? 0) + chance);
  }
  return found;
} // prettier-ignore

/**
 * @param table a row for each block (taster), a column for each jar; higher is better or worse, all rows alike
 * @returns null where there is nothing to compare: fewer than two blocks or jars, or no taster told any two apart
 */
export function friedman(table: readonly (readonly number[])[]): Friedman | null {
  const [n, k] = [table.length, table[0]?.length ?? 0];
  if (n < 2 || k < 2) return null;
  const blocks = table.map(ranksOf);
  const sums = rankSums(blocks);
  const uncorrected = (12 / (n * k * (k + 1))) * spread(sums) - 3 * n * (k + 1);
  const factor = 1 - tieSum(blocks) / (n * k * (k * k - 1));
  if (factor <= 0) return null;
  const q = uncorrected / factor;
  const chances = distribution(blocks);
  const mine = spread(sums.map((sum) => Math.round(sum * 2)));
  const exact = chances && [...chances].reduce((sum, [squares, chance]) => sum + (squares >= mine ? chance : 0), 0); // prettier-ignore
  return {
    q,
    uncorrected,
    p: Math.min(1, exact ?? chiSquareBeyond(q, k - 1)),
    method: exact === null ? 'chi-square' : 'exact',
    rankSums: sums,
    w: q / (n * (k - 1)),
  };
}

/** The chance of the best that could come of it: all tasters in the same order. */
export function bestFriedman(tasters: number, jars: number): number {
  let orders = 1;
  for (let i = 2; i <= jars; i++) orders *= i;
  return orders ** (1 - tasters);
}

/**
 * The least statistic, without ties, that tells at a level; null where not even the same order by all does.
 * @returns the statistic and its chance
 */
export function leastFriedman(tasters: number, jars: number, alpha = 0.05): { q: number; p: number } | null {
  if (tasters < 2 || jars < 2) return null;
  const row = Array.from({ length: jars }, (_, i) => i + 1);
  const chances = distribution(Array.from({ length: tasters }, () => row));
  if (!chances) return null;
  let [sum, least]: [number, { q: number; p: number } | null] = [0, null];
  for (const [squares, chance] of [...chances].toSorted(([a], [b]) => b - a)) {
    sum += chance;
    if (sum > alpha + 1e-12) break;
    least = { q: (12 / (tasters * jars * (jars + 1))) * (squares / 4) - 3 * tasters * (jars + 1), p: sum };
  }
  return least;
}
