// What is said of a line, from its batches: the meanings of design.md, and the traps of even and short lines.
import { describe, expect, it } from 'vitest';
import { batchMedian } from '../../core/vigour/batch-median';
import { standingOf, trendOf, type TrendPoint } from '../../core/vigour/trend';

const point = (generation: number, score: number): TrendPoint => ({
  generation,
  score,
  jars: [{ score, width: 0 }],
});
const line = (scores: readonly number[]): TrendPoint[] => scores.map((score, i) => point(i + 2, score));
const standing = (scores: readonly number[]): string => standingOf(trendOf(line(scores)));

describe('standing', () => {
  it('says too few below five comparable batches, whatever they show', () => {
    expect(standing([90, 60, 30, 5])).toBe('too few batches to say');
  });

  it('neither divides by zero nor alarms at the first soft batch of a very even line', () => {
    expect(standing([70, 70, 70, 70, 70])).toBe('no slip seen');
    expect(standing([70, 70, 70, 70, 70, 70, 70, 70])).toBe('steady');
    const trend = trendOf(line([70, 70, 70, 70, 70, 70, 70, 30]));
    expect(trend?.alarm).toBe(false);
    expect(Number.isFinite(trend?.fall)).toBe(true);
  });

  it('calls a plain loss of five a generation by the eighth batch', () => {
    expect(standing([78, 72, 69, 62, 58, 54, 47])).toBe('slipping');
  });

  it('calls a line worn out when it has fallen far', () => {
    expect(standing([80, 78, 79, 70, 60, 48, 40, 30, 22])).toBe('worn out');
  });

  it('does not call two poor batches in a row a slip when the line came back', () => {
    expect(['steady', 'no slip seen']).toContain(standing([74, 78, 72, 52, 50, 73, 76, 75]));
  });

  it('says nothing where all batches are of one generation', () => {
    expect(trendOf([1, 2, 3, 4, 5].map((score) => point(3, score)))).toBeNull();
  });

  it('does not move when all scores move together', () => {
    const scores = [78, 72, 75, 62, 66, 54, 61];
    const [low, high] = [trendOf(line(scores)), trendOf(line(scores.map((s) => s - 20)))];
    expect(high?.fall).toBeCloseTo(low?.fall ?? Number.NaN, 9);
  });
});

const of = (scores: readonly number[], width: number): number | null =>
  batchMedian(scores.map((score) => ({ score, width })));

describe('median of a batch', () => {
  it('is the plain median of exact scores', () => {
    expect(of([3, 1, 2], 0)).toBeCloseTo(2, 6);
    expect(of([1, 2, 3, 10], 0)).toBeCloseTo(2.5, 6);
    expect(of([4, 4, 9], 0)).toBeCloseTo(4, 6);
    expect(of([], 0)).toBeNull();
  });
  it('is the median of grouped data for set words', () => {
    // Grouped-data median L + w(n/2 − F)/f: three in 60–80, one in 40–60 → 60 + 20(2 − 1)/3; plain arithmetic.
    expect(of([70, 70, 70, 50], 20)).toBeCloseTo(60 + 20 / 3, 9);
    expect(of([70, 70, 70, 70], 20)).toBeCloseTo(70, 9);
  });
});
