// Theil–Sen slope: the median of the slopes between all pairs of points. Method: Theil 1950; Sen 1968.
import { normalQuantile } from './distributions';
import { median, rising } from './medians';

/**
 * Which order statistics bound the slope. 'gilbert': interpolated at ranks M1 and M2+1 (Gilbert 1987, ch. 16);
 * 'hollander-wolfe': the nearest whole ranks outwards from the middle. Published examples use both; ours is Gilbert's.
 */
export type SlopeIntervalRule = 'gilbert' | 'hollander-wolfe';

export interface TheilSen {
  readonly slope: number;
  /** Level of the line at time 0: median of value − slope × time. */
  readonly intercept: number;
  /** Slopes between pairs at different times, rising. */
  readonly slopes: readonly number[];
}

/** @returns null where no two points lie at different times. */
export function theilSen(times: readonly number[], values: readonly number[]): TheilSen | null {
  const slopes: number[] = [];
  for (let j = 1; j < values.length; j++) {
    for (let i = 0; i < j; i++) {
      const dx = (times[j] ?? 0) - (times[i] ?? 0);
      if (dx !== 0) slopes.push(((values[j] ?? 0) - (values[i] ?? 0)) / dx);
    }
  }
  const slope = median(slopes);
  if (slope === null) return null;
  const intercept = median(values.map((value, i) => value - slope * (times[i] ?? 0))) ?? 0;
  return { slope, intercept, slopes: rising(slopes) };
}

/** Value at a rank counted from 1, interpolated, kept within the list. */
function atRank(sorted: readonly number[], rank: number): number {
  const within = Math.min(Math.max(rank, 1), sorted.length);
  const below = sorted[Math.floor(within) - 1] ?? Number.NaN;
  const above = sorted[Math.ceil(within) - 1] ?? Number.NaN;
  return below + (above - below) * (within - Math.floor(within));
}

/**
 * Distribution-free interval of the slope from the Mann–Kendall variance.
 * @param variance of the Mann–Kendall S of the same points.
 * @param level confidence, e.g. 0.95.
 */
export function slopeInterval(
  fit: TheilSen,
  variance: number,
  level: number,
  rule: SlopeIntervalRule = 'gilbert',
): { readonly low: number; readonly high: number } {
  const c = normalQuantile(0.5 + level / 2) * Math.sqrt(variance);
  const n = fit.slopes.length;
  const [m1, m2] = [(n - c) / 2, (n + c) / 2];
  return rule === 'gilbert'
    ? { low: atRank(fit.slopes, m1), high: atRank(fit.slopes, m2 + 1) }
    : { low: atRank(fit.slopes, Math.ceil(m1)), high: atRank(fit.slopes, Math.ceil(m2)) };
}
