// Page's test for jars in an expected order (more fibre, thicker): does the taste rise with the dose? One-sided. The exact
// chance is that of ranks without ties; a statistic that ties make a half is rounded down, as SciPy does, which sides with
// chance. Page 1963, JASA 58:216-230.
import { ordersOf, ranksOf, rankSums } from './ranks';
import { normalBeyond } from './tails';

export interface Page {
  readonly l: number;
  /** Chance of such a trend or a steeper one. */
  readonly p: number;
  readonly method: 'exact' | 'normal';
  /** The chance by the normal distribution, for comparison. */
  readonly byNormal: number;
}

const MOST_COLUMNS = 7;
const MOST_BLOCKS = 200;

/** How likely each L is for so many blocks without ties. */
function distributionOfL(blocks: number, columns: number): Map<number, number> {
  const orders = ordersOf(Array.from({ length: columns }, (_, i) => i + 1));
  const one = new Map<number, number>();
  for (const order of orders) {
    const l = order.reduce((sum, rank, i) => sum + rank * (i + 1), 0);
    one.set(l, (one.get(l) ?? 0) + 1 / orders.length);
  }
  let all = new Map<number, number>([[0, 1]]);
  for (let block = 0; block < blocks; block++) {
    const next = new Map<number, number>();
    for (const [sum, chance] of all)
      for (const [l, p] of one) next.set(sum + l, (next.get(sum + l) ?? 0) + chance * p);
    all = next;
  }
  return all;
}

/** P(L ≥ l) for so many blocks and columns without ties. */
export const pageBeyond = (l: number, blocks: number, columns: number): number =>
  [...distributionOfL(blocks, columns)].reduce((sum, [one, chance]) => sum + (one >= l ? chance : 0), 0);

/**
 * @param table a row for each taster, its columns in the expected order, lowest first
 * @returns null where there are fewer than two rows or three columns
 */
export function page(table: readonly (readonly number[])[]): Page | null {
  const [n, k] = [table.length, table[0]?.length ?? 0];
  if (n < 2 || k < 3) return null;
  const l = rankSums(table.map(ranksOf)).reduce((sum, ranks, i) => sum + ranks * (i + 1), 0);
  const mean = (n * k * (k + 1) ** 2) / 4;
  const variance = (n * k ** 2 * (k + 1) * (k ** 2 - 1)) / 144;
  const byNormal = normalBeyond((l - mean) / Math.sqrt(variance));
  if (k > MOST_COLUMNS || n > MOST_BLOCKS) return { l, p: byNormal, method: 'normal', byNormal };
  return { l, p: Math.min(1, pageBeyond(Math.floor(l), n, k)), method: 'exact', byNormal };
}

/** The least L that tells at a level; null where not even a perfect order does. */
export function leastPage(tasters: number, jars: number, alpha = 0.05): { l: number; p: number } | null {
  let [sum, least]: [number, { l: number; p: number } | null] = [0, null];
  for (const [l, chance] of [...distributionOfL(tasters, jars)].toSorted(([a], [b]) => b - a)) {
    sum += chance;
    if (sum > alpha + 1e-12) break;
    least = { l, p: sum };
  }
  return least;
}
