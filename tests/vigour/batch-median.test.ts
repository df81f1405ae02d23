// The median of a batch. Plain medians by sorting, grouped ones by hand arithmetic.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batchMedian } from '../../core/vigour/batch-median';

const jars = (width: number, ...scores: number[]) => scores.map((score) => ({ score, width }));
const plain = (scores: readonly number[]): number => {
  const sorted = scores.toSorted((a, b) => a - b);
  const middle = sorted.length / 2;
  return Number.isInteger(middle)
    ? ((sorted[middle - 1] ?? 0) + (sorted[middle] ?? 0)) / 2
    : (sorted[Math.floor(middle)] ?? 0);
};
const score = fc.double({ min: -20, max: 120, noNaN: true });

describe('the median of a batch', () => {
  it.each([
    [36, 75, 55.5],
    [0, 75, 37.5],
  ])('of %d and %d is the middle of the two, however finely each was seen', (a, b, middle) => {
    for (const width of [0, 4, 40 / 8.5, 40 / 6.5, 20]) expect(batchMedian(jars(width, a, b))).toBeCloseTo(middle, 6);
  }); // prettier-ignore

  it('of two jars whose ranges lie apart is the middle of the two (property)', () => {
    fc.assert(
      fc.property(score, score, fc.double({ min: 0, max: 20, noNaN: true }), (a, b, width) => {
        fc.pre(Math.abs(a - b) > width + 1e-6);
        expect(batchMedian(jars(width, a, b))).toBeCloseTo((a + b) / 2, 6);
      }),
    );
  });

  it('of exact scores is the plain median (property)', () => {
    fc.assert(
      fc.property(fc.array(score, { minLength: 1, maxLength: 9 }), (scores) => {
        expect(batchMedian(jars(0, ...scores))).toBeCloseTo(plain(scores), 6);
      }),
    );
  });

  it('of set words alone is that of the ranges they leave open', () => {
    // Soft covers 45 to 65 and each of four firm ones 65 to 85: half of five is 2.5, so 1.5 of 4 into 65 to 85.
    expect(batchMedian(jars(20, 55, 75, 75, 75, 75))).toBeCloseTo(65 + (20 * 1.5) / 4, 6);
    expect(batchMedian([])).toBeNull();
  });

  it('never lies outside what was seen (property)', () => {
    const ranged = fc.record({ score, width: fc.double({ min: 0, max: 20, noNaN: true }) });
    fc.assert(
      fc.property(fc.array(ranged, { minLength: 1, maxLength: 9 }), (given) => {
        const found = batchMedian(given) ?? Number.NaN;
        expect(found).toBeGreaterThanOrEqual(Math.min(...given.map((one) => one.score - one.width / 2)) - 1e-6);
        expect(found).toBeLessThanOrEqual(Math.max(...given.map((one) => one.score + one.width / 2)) + 1e-6);
      }),
    );
  }); // prettier-ignore
});
