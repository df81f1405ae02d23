// oxlint-disable-next-line typescript/triple-slash-reference -- whoever imports core must see these types too
/// <reference path="./jstat.d.ts" />
// The one door to the statistics library: distribution functions that judgement needs. Sampling is never used, so no
// randomness enters: draws are made from uniform numbers that the caller passes in.
import jStat from 'jstat';

/** P(Z ≤ z) of the standard normal. */
export const normalCdf = (z: number): number => jStat.normal.cdf(z, 0, 1);

/** The z with P(Z ≤ z) = p, 0 < p < 1. */
export const normalQuantile = (p: number): number => jStat.normal.inv(p, 0, 1);
