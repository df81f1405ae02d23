// The time constant of a jar in a bath at one temperature, by a straight line through the logarithms of what is still
// missing (Newton's law: ln |T − T_bath| falls by 1/τ an hour). With an interval by Student's t.
import jStat from 'jstat';
// oxlint-disable-next-line typescript/triple-slash-reference -- whoever imports core must see these types too
/// <reference path="../vigour/jstat.d.ts" />

export interface FittedConstant {
  /** τ, in the unit of time that went in; 95 of 100 such intervals hold the true one. */
  readonly middle: number;
  readonly low: number;
  readonly high: number;
  readonly points: number;
}

const FEWEST = 3;

/**
 * τ by least squares on the logarithms, its line not held to any starting point.
 * @param apart how far the jar is from its bath (same sign throughout) at each time
 * @returns null where fewer than three points lie apart, or they don't come nearer
 */
export function logRegression(
  apart: readonly { readonly time: number; readonly by: number }[],
): FittedConstant | null {
  const points = apart.filter(({ by }) => by > 0).map(({ time, by }) => [time, Math.log(by)] as const);
  const n = points.length;
  if (n < FEWEST) return null;
  const mean = (of: 0 | 1): number => points.reduce((sum, point) => sum + point[of], 0) / n;
  const [x, y] = [mean(0), mean(1)];
  const xx = points.reduce((sum, [a]) => sum + (a - x) ** 2, 0);
  const slope = points.reduce((sum, [a, b]) => sum + (a - x) * (b - y), 0) / xx;
  if (!(slope < 0)) return null;
  const rest = points.reduce((sum, [a, b]) => sum + (b - y - slope * (a - x)) ** 2, 0);
  const wide = n > 2 ? jStat.studentt.inv(0.975, n - 2) * Math.sqrt(rest / (n - 2) / xx) : Infinity;
  // The slope is what is uncertain evenly; its reciprocal is not.
  return {
    middle: -1 / slope,
    low: 1 / (-slope + wide),
    high: -slope > wide ? 1 / (-slope - wide) : Infinity,
    points: n,
  };
}
