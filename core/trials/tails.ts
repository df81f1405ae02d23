// Tails of distributions that tastings are tested by: the one door to the statistics library here.
import jStat from 'jstat';
// oxlint-disable-next-line typescript/triple-slash-reference -- whoever imports core must see these types too
/// <reference path="../vigour/jstat.d.ts" />

/** P(X ≥ x) of chi-square. */
export const chiSquareBeyond = (x: number, freedom: number): number => 1 - jStat.chisquare.cdf(x, freedom);

/** P(Z ≥ z) of the standard normal. */
export const normalBeyond = (z: number): number => 1 - jStat.normal.cdf(z, 0, 1);

/** Logarithms of the factorials, each worked out once. */
const logFactorials = [0];
function logFactorial(n: number): number {
  for (let i = logFactorials.length; i <= n; i++)
    logFactorials.push((logFactorials[i - 1] ?? 0) + Math.log(i));
  return logFactorials[n] ?? 0;
}

/** P(X = x) of n tries, each with chance p: in logarithms, so that no factorial grows too large. */
export function binomialAt(x: number, n: number, p: number): number {
  if (x < 0 || x > n) return 0;
  if (p <= 0) return x === 0 ? 1 : 0;
  if (p >= 1) return x === n ? 1 : 0;
  const ways = logFactorial(n) - logFactorial(x) - logFactorial(n - x);
  return Math.exp(ways + x * Math.log(p) + (n - x) * Math.log(1 - p));
}

/** P(X ≥ x) of n tries, each with chance p. */
export function binomialFrom(x: number, n: number, p: number): number {
  let sum = 0;
  for (let i = n; i >= Math.max(0, x); i--) sum += binomialAt(i, n, p);
  return Math.min(1, sum);
}
