// How far tasters agree: Kendall's W from three on, in words for two. W goes with and without correction for ties.
import { ranksOf, rankSums, tieSum } from './ranks';
import { chiSquareBeyond } from './tails';

export interface Agreement {
  readonly raw: number;
  /** Corrected for ties. */
  readonly w: number;
  readonly chiSquare: number;
  readonly freedom: number;
  readonly p: number;
}

/**
 * @param table a row for each taster, a column for each jar
 * @returns null where nobody told any two apart, or there are fewer than two of either
 */
export function kendallW(table: readonly (readonly number[])[]): Agreement | null {
  const [m, n] = [table.length, table[0]?.length ?? 0];
  if (m < 2 || n < 2) return null;
  const blocks = table.map(ranksOf);
  const sums = rankSums(blocks);
  const mean = (m * (n + 1)) / 2;
  const spread = sums.reduce((all, sum) => all + (sum - mean) ** 2, 0);
  const whole = m * m * (n ** 3 - n);
  const without = whole - m * tieSum(blocks);
  if (without <= 0) return null;
  const w = (12 * spread) / without;
  const chiSquare = m * (n - 1) * w;
  return {
    raw: (12 * spread) / whole,
    w,
    chiSquare,
    freedom: n - 1,
    p: chiSquareBeyond(chiSquare, n - 1),
  };
}

/** Two tasters: how many of the pairs of jars that both told apart they put the same way round. */
export function pairsAlike(one: readonly number[], other: readonly number[]): { alike: number; of: number } {
  let [alike, of] = [0, 0];
  for (let a = 0; a < one.length; a++)
    for (let b = a + 1; b < one.length; b++) {
      const [x, y] = [(one[a] ?? 0) - (one[b] ?? 0), (other[a] ?? 0) - (other[b] ?? 0)];
      if (x === 0 || y === 0) continue;
      of += 1;
      if (x * y > 0) alike += 1;
    }
  return { alike, of };
}
