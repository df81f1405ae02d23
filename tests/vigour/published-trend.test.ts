// Trend statistics against their published examples. Sources are named beside each; [computed] values were reproduced
// independently before this program was written.
import { describe, expect, it } from 'vitest';
import { normalCdf, normalQuantile } from '../../core/vigour/distributions';
import { ewma, ewmaErrorFromBaseline, ewmaWidth } from '../../core/vigour/ewma';
import { exactUpperTail, mannKendall } from '../../core/vigour/mann-kendall';
import { slopeInterval, theilSen } from '../../core/vigour/theil-sen';

const A = [10, 10, 10, 5, 10, 20, 18, 17, 15, 24, 15];
const B = [12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7];
const C = [4.46, 4.21, 4.13, 4.05, 3.94, 3.79, 3.72];
const D = [4.36, 4.26, 4.23, 4.21, 4.24, 4.09, 4.01];
const steps = (values: readonly number[]): number[] => values.map((_, i) => i);

describe('Mann–Kendall', () => {
  it.each([
    // U.S. EPA QA/G-9S (2006), p. 109: S 22, variance 155.33, Z 1.685.
    { name: 'EPA', values: A, s: 22, variance: 155.3333333, z: 1.6849498, p: 0.0919983, tau: 0.428174 },
    // J. Little, Holy Cross, "Mann-Kendall by hand": S 54, Z 2.9058, p .0018.
    {
      name: 'Holy Cross',
      values: B,
      s: 54,
      variance: 332.6666667,
      z: 2.9058368,
      p: 0.0036627,
      tau: 0.596694,
    },
    // pH in storage, Front Microbiol 2019 9:3133, Table 4; statistics [computed].
    { name: 'pH, one culture', values: C, s: -21, variance: 44.3333333, z: -3.0038, p: 0.000396825, tau: -1 },
    { name: 'pH, the other', values: D, s: -17, variance: 44.3333333, z: -2.403, p: 0.0107143, tau: -0.8095 },
  ])('gives the published figures: $name', ({ values, s, variance, z, p, tau }) => {
    const test = mannKendall(values);
    expect(test?.s).toBe(s);
    expect(test?.variance).toBeCloseTo(variance, 6);
    expect(test?.z).toBeCloseTo(z, 4);
    expect(test?.pTwoSided).toBeCloseTo(p, 6);
    expect(test?.tau).toBeCloseTo(tau, 4);
  });

  it('gives the one-sided chance of a fall (EPA and Holy Cross, mirrored)', () => {
    expect(mannKendall(A.map((x) => -x))?.pFalling).toBeCloseTo(0.0459991, 6);
    expect(mannKendall(B.map((x) => -x))?.pFalling).toBeCloseTo(0.0018314, 6);
    expect(mannKendall(C)?.pFalling).toBeCloseTo(1 / 5040, 9);
  });

  // [computed from inversion counts]; Gilbert 1987, Table A18 carries the same to 3 digits (from memory).
  const tails: Record<number, Record<number, number>> = {
    4: { 0: 0.625, 2: 0.375, 4: 0.1667, 6: 0.0417 },
    5: { 0: 0.5917, 2: 0.4083, 4: 0.2417, 6: 0.1167, 8: 0.0417, 10: 0.0083 },
    7: { 1: 0.5, 7: 0.1907, 13: 0.0345, 15: 0.0151, 17: 0.0054, 19: 0.0014, 21: 0.0002 },
    8: { 0: 0.5476, 12: 0.0894, 16: 0.0305, 20: 0.0071, 24: 0.0009 },
    10: { 1: 0.5, 11: 0.1904, 21: 0.0363, 25: 0.0143, 29: 0.0046 },
  };
  it.each(Object.entries(tails))('has the exact tail for n = %s', (n, row) => {
    for (const [s, p] of Object.entries(row)) expect(exactUpperTail(Number(n), Number(s))).toBeCloseTo(p, 4);
  });

  it('can never be significant on four values, and can on five', () => {
    expect(mannKendall([4, 3, 2, 1])?.pTwoSided).toBeGreaterThan(0.05);
    expect(mannKendall([5, 4, 3, 2, 1])?.pTwoSided).toBeCloseTo(0.0167, 4);
  });

  it('says nothing of values all alike, and counts no pair at one time', () => {
    expect(mannKendall([70, 70, 70, 70, 70])).toMatchObject({ s: 0, z: 0, pFalling: 0.5 });
    expect(mannKendall([3, 2, 1], [1, 1, 2])?.s).toBe(-2);
    expect(mannKendall([1])).toBeNull();
  });
});

describe('Theil–Sen', () => {
  // Hollander & Wolfe 1999 by R package statpsych, ci.theil: 0.5, 0.3243243 to 0.75.
  const y = [21, 4, 9, 12, 35, 18, 10, 22, 24, 1, 6, 8, 13, 16, 19];
  const x = [67, 28, 30, 28, 52, 40, 25, 37, 44, 10, 14, 20, 28, 40, 51];
  it('gives the published slope and interval (Hollander & Wolfe)', () => {
    const fit = theilSen(x, y);
    expect(fit?.slope).toBe(0.5);
    expect(fit?.slopes).toHaveLength(101);
    const interval = fit && slopeInterval(fit, (15 * 14 * 35) / 18, 0.95, 'hollander-wolfe');
    expect(interval?.low).toBeCloseTo(0.3243243, 7);
    expect(interval?.high).toBeCloseTo(0.75, 7);
  });

  it.each([
    // [computed] with Gilbert's interpolated ranks on the EPA and Holy Cross series.
    { name: 'EPA', values: A, slope: 1, low: 0, high: 2 },
    { name: 'Holy Cross', values: B, slope: 17 / 30, low: 0.32313, high: 0.869784 },
  ])("gives Gilbert's interval: $name", ({ values, slope, low, high }) => {
    const fit = theilSen(steps(values), values);
    const test = mannKendall(values);
    expect(fit?.slope).toBeCloseTo(slope, 9);
    const interval = fit && test && slopeInterval(fit, test.variance, 0.95);
    expect(interval?.low).toBeCloseTo(low, 6);
    expect(interval?.high).toBeCloseTo(high, 6);
  });

  it('takes uneven times (pH in storage, Front Microbiol 2019, [computed])', () => {
    const days = [0, 0.5, 1, 2, 3, 7, 14];
    expect(theilSen(days, C)?.slope).toBeCloseTo(-0.08, 9);
    expect(theilSen(days, D)?.slope).toBeCloseTo(-0.024, 9);
  });

  it('has no slope where all lie at one time', () => {
    expect(theilSen([3, 3, 3], [1, 2, 3])).toBeNull();
  });
});

describe('EWMA', () => {
  // NIST/SEMATECH e-Handbook 6.3.2.4; 4-digit values and widths [computed].
  const x = [52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]; // prettier-ignore
  const printed = [50.6, 49.52, 50.564, 50.1848, 50.1594, 49.2116, 49.7481, 49.8537, 50.2576, 50.3303, 50.1112, 49.3578, 49.5205, 50.0543, 49.378, 49.9246, 50.7272, 51.2291, 51.9403, 51.9882]; // prettier-ignore
  it('gives the published averages and limits', () => {
    ewma(x, 0.3, 50).forEach((value, i) => expect(value).toBeCloseTo(printed[i] ?? 0, 4));
    expect(50 + ewmaWidth(0.3, 2.0539, 3, null)).toBeCloseTo(52.588432, 6);
    expect(50 - ewmaWidth(0.3, 2.0539, 3, null)).toBeCloseTo(47.411568, 6);
    [51.8485, 52.2564, 52.4314, 52.5127, 52.5516].forEach((limit, i) =>
      expect(50 + ewmaWidth(0.3, 2.0539, 3, i + 1)).toBeCloseTo(limit, 4),
    );
  });

  it("adds the baseline's own uncertainty, which vanishes for a long one", () => {
    // With λ = 1 the average is the last value: var = s²(1 + 1/k), plain arithmetic.
    expect(ewmaErrorFromBaseline(1, 2, 1, 4)).toBeCloseTo(2 * Math.sqrt(1.25), 12);
    expect(ewmaErrorFromBaseline(0.3, 2.0539, 7, 1e9)).toBeCloseTo(ewmaWidth(0.3, 2.0539, 1, 7), 6);
  });
});

describe('distributions', () => {
  it('agree with tables', () => {
    expect(normalQuantile(0.975)).toBeCloseTo(1.959963985, 8);
    expect(normalCdf(1.959963985)).toBeCloseTo(0.975, 8);
  });
});
