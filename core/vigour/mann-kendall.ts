// Mann–Kendall test for a trend. Owns the statistic only; what is said of a line is decided in standing.ts.
// Method: Mann 1945; Kendall, Rank Correlation Methods; with ties in time and value the variance is Kendall's for ties
// in both rankings, which is the published Mann–Kendall variance where only values are tied.
import { normalCdf } from './distributions';

export interface MannKendall {
  readonly n: number;
  /** Sum of signs over all pairs. */
  readonly s: number;
  readonly variance: number;
  /** With the continuity correction of one. */
  readonly z: number;
  /** Kendall's tau-b. */
  readonly tau: number;
  /** Chance of an S as low as this or lower if there were no trend. */
  readonly pFalling: number;
  readonly pTwoSided: number;
  /** Whether the chances are exact (no ties, at most 60 values) or from the normal distribution. */
  readonly exact: boolean;
}

/** Up to here the exact distribution is used when nothing is tied. */
const EXACT_UP_TO = 60;
const exactTails = new Map<number, readonly number[]>();

/** P(S ≥ s) for n untied values, from the counts of permutations by inversions (index: inversions = (pairs − s)/2). */
function tailByInversions(n: number): readonly number[] {
  const known = exactTails.get(n);
  if (known) return known;
  let chances = [1];
  for (let size = 2; size <= n; size++) {
    const next = Array.from({ length: chances.length + size - 1 }, () => 0);
    chances.forEach((chance, inversions) => {
      for (let more = 0; more < size; more++) {
        next[inversions + more] = (next[inversions + more] ?? 0) + chance / size;
      }
    });
    chances = next;
  }
  let sum = 0;
  const tails = chances.map((chance) => Math.min(1, (sum += chance)));
  exactTails.set(n, tails);
  return tails;
}

/** Exact P(S ≥ s) for n values without ties, n ≥ 2; s has the parity of n(n−1)/2. */
export function exactUpperTail(n: number, s: number): number {
  const pairs = (n * (n - 1)) / 2;
  const inversions = Math.floor((pairs - s) / 2);
  if (inversions < 0) return 0;
  return tailByInversions(n)[Math.min(inversions, pairs)] ?? 1;
}

const tieSizes = (values: readonly number[]): number[] => {
  const sizes = new Map<number, number>();
  for (const value of values) sizes.set(value, (sizes.get(value) ?? 0) + 1);
  return [...sizes.values()].filter((size) => size > 1);
};
const sumOver = (sizes: readonly number[], term: (t: number) => number): number =>
  sizes.reduce((sum, t) => sum + term(t), 0);

// Terms of the variance with ties, for a group of k equal values.
const v = (k: number): number => k * (k - 1) * (2 * k + 5);
const triples = (k: number): number => k * (k - 1) * (k - 2);

/**
 * Mann–Kendall for values in time order, or at the given times (which may be tied: such pairs count nothing).
 * @returns null for fewer than two values.
 */
export function mannKendall(values: readonly number[], times?: readonly number[]): MannKendall | null {
  const n = values.length;
  if (n < 2) return null;
  const at = times ?? values.map((_, i) => i);
  let s = 0;
  for (let j = 1; j < n; j++) {
    for (let i = 0; i < j; i++) {
      s += Math.sign((values[j] ?? 0) - (values[i] ?? 0)) * Math.sign((at[j] ?? 0) - (at[i] ?? 0));
    }
  }
  const t = tieSizes(values);
  const u = tieSizes(at);
  const pairs = (n * (n - 1)) / 2;
  let variance = (v(n) - sumOver(t, v) - sumOver(u, v)) / 18;
  variance += (sumOver(t, (k) => k * (k - 1)) * sumOver(u, (k) => k * (k - 1))) / (2 * n * (n - 1));
  if (n > 2) {
    variance += (sumOver(t, triples) * sumOver(u, triples)) / (9 * n * (n - 1) * (n - 2));
  }
  const untied = (sizes: readonly number[]): number => pairs - sumOver(sizes, (k) => (k * (k - 1)) / 2);
  const scale = Math.sqrt(untied(t) * untied(u));
  const z = s === 0 || variance <= 0 ? 0 : (Math.sign(s) * (Math.abs(s) - 1)) / Math.sqrt(variance);
  const exact = t.length === 0 && u.length === 0 && n <= EXACT_UP_TO;
  // The distribution is symmetric, so P(S ≤ s) = P(S ≥ −s).
  const pFalling = exact ? exactUpperTail(n, -s) : normalCdf(s === 0 ? 0 : (s + 1) / Math.sqrt(variance));
  const pTwoSided = exact
    ? Math.min(1, 2 * exactUpperTail(n, Math.abs(s)))
    : 2 * (1 - normalCdf(Math.abs(z)));
  return { n, s, variance, z, tau: scale > 0 ? s / scale : 0, pFalling, pTwoSided, exact };
}
