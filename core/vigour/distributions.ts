// oxlint-disable-next-line typescript/triple-slash-reference -- whoever imports core must see these types too
/// <reference path="./jstat.d.ts" />
// The one door to the statistics library: distribution functions that judgement needs. Sampling is never used, so no
// randomness enters: draws are made from uniform numbers that the caller passes in.
import jStat from 'jstat';

/** P(Z ≤ z) of the standard normal. */
export const normalCdf = (z: number): number => jStat.normal.cdf(z, 0, 1);

/** The z with P(Z ≤ z) = p, 0 < p < 1. */
export const normalQuantile = (p: number): number => jStat.normal.inv(p, 0, 1);

/** How far the library's answer may miss the probability asked for before it is found anew. */
const BETA_MISS = 1e-7;
const HALVINGS = 80;
/** Nothing smaller can be told from nothing. */
const LEAST_LOG = -700;

/**
 * The x with P(X ≤ x) = p for X ~ Beta(alpha, beta): with a uniform p, a draw from it (inverse transform). The library's own
 * search leaves the range, or gives no number, where a shape is far below 1; then it is halved in on from both ends, on the
 * scale of logarithms, since such quantiles lie very near an end.
 * @param alpha @param beta above 0
 */
export function betaQuantile(p: number, alpha: number, beta: number): number {
  if (p <= 0) return 0;
  if (p >= 1) return 1;
  const quick = jStat.beta.inv(p, alpha, beta);
  if (quick > 0 && quick < 1 && Math.abs(jStat.beta.cdf(quick, alpha, beta) - p) < BETA_MISS) return quick;
  return p > jStat.beta.cdf(0.5, alpha, beta)
    ? 1 - lowerBetaQuantile(1 - p, beta, alpha)
    : lowerBetaQuantile(p, alpha, beta);
}

/** The same where it lies at or below a half. */
function lowerBetaQuantile(p: number, alpha: number, beta: number): number {
  let [low, high] = [LEAST_LOG, Math.log(0.5)];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (jStat.beta.cdf(Math.exp(middle), alpha, beta) < p) low = middle;
    else high = middle;
  }
  return Math.exp(high);
}
