// What is said of a line, from its batches: the meanings of design.md, and the traps of even and short lines.
import { describe, expect, it } from 'vitest';
import { batchMedian } from '../../core/vigour/batch-median';
import { LineLevel } from '../../core/vigour/level/line-level';
import { StandingWalk } from '../../core/vigour/standing';
import { trendOf, TREND_RULES, type TrendPoint } from '../../core/vigour/trend';
import type { Standing } from '../../core/shapes/vigour-codes';

const line = (scores: readonly number[]): TrendPoint[] =>
  scores.map((score, i) => ({ generation: i + 2, score }));
/** What is said after each batch of one jar, each seeded from the one before. */
const standings = (scores: readonly number[]): Standing[] => {
  const level = new LineLevel();
  const walk = new StandingWalk();
  level.add([{ batch: 0, seedBatch: null, jars: [] }]);
  return scores.map((score, i) => {
    const look = level.add([{ batch: i + 1, seedBatch: i, jars: [{ score, width: 0 }] }]);
    if (!look) throw new Error('a batch with a jar is looked at');
    return walk.next(trendOf(line(scores.slice(0, i + 1))), look);
  });
};
const standing = (scores: readonly number[]): string => standings(scores).at(-1) ?? '';

describe('standing', () => {
  it('says too few below five comparable batches, whatever they show', () => {
    expect(standing([90, 60, 30, 5])).toBe('too few batches to say');
  });

  it('neither divides by zero nor alarms at the first soft batch of a very even line', () => {
    expect(standing([70, 70, 70, 70, 70])).toBe('no slip seen');
    expect(standing([70, 70, 70, 70, 70, 70, 70, 70])).toBe('steady');
    expect(['steady', 'no slip seen']).toContain(standing([70, 70, 70, 70, 70, 70, 70, 30]));
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
    expect(trendOf([1, 2, 3, 4, 5].map((score) => ({ generation: 3, score })))).toBeNull();
  });

  it('calls a lasting drop within three batches, and says it until the line is back for three', () => {
    const before = [74, 78, 72, 75, 77, 73, 76, 74];
    const after = [48, 51, 46, 50, 49, 47, 52, 48, 50, 49, 51];
    const said = standings([...before, ...after]);
    const called = ['slipping', 'worn out'];
    expect(said.slice(0, before.length).some((word) => called.includes(word))).toBe(false);
    expect(said.slice(before.length + 2).every((word) => called.includes(word))).toBe(true);
    const back = standings([...before, ...after.slice(0, 4), 75, 73, 77, 74, 76, 75]);
    expect(called).toContain(back[before.length + 3]);
    expect(['steady', 'no slip seen']).toContain(back.at(-1));
  });

  it('says steady only of a line that stands within its early level', () => {
    // Fallen at once and even since: the latest slope alone would say steady.
    const fallen = [76, 75, 77, 74, ...Array.from({ length: 20 }, (_, i) => 55 + (i % 3))];
    expect(standing(fallen)).not.toBe('steady');
  });
});

const of = (scores: readonly number[], width: number): number | null =>
  batchMedian(scores.map((score) => ({ score, width })));

// "Steady: a loss of 3 a generation can be ruled out" (the meaning of the word).
describe('a loss that has to be ruled out', () => {
  const even = (perGeneration: number): TrendPoint[] => line(Array.from({ length: 12 }, (_, i) => 75 - perGeneration * i + (i % 2)));
  it('is three points a generation: not a little more, and not a little less', () => {
    const ruledOut = (loss: number): boolean | undefined => trendOf(even(loss), { ...TREND_RULES, ruleOutSpread: 0.5 })?.lossRuledOut;
    expect(ruledOut(3.5)).toBe(false);
    expect(ruledOut(3.05)).toBe(false);
    expect(ruledOut(2.8)).toBe(true);
  });
}); // prettier-ignore

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
