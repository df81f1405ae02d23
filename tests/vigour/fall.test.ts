// How a line came down: one drop is said as a drop, a loss with each generation as a slope, whatever chance adds.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fallOf } from '../../core/vigour/fall';

const points = (scores: readonly number[]) => scores.map((score, i) => ({ generation: i + 2, score }));
/** Even to within 3 points: nothing of it looks like a fall. */
const noise = (count: number) =>
  fc.array(fc.integer({ min: -3, max: 3 }), { minLength: count, maxLength: count });

describe('a line that came down', () => {
  it('at once is said to have, with the batch and by how much', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 12 }), fc.integer({ min: 3, max: 20 }), fc.integer({ min: 20, max: 60 }), noise(32), (before, after, drop, by) => {
        const level = (i: number): number => (i < before ? 78 : 78 - drop) + (by[i] ?? 0);
        const fall = fallOf(points(Array.from({ length: before + after }, (_, i) => level(i))));
        expect(fall?.shape).toBe('at once');
        expect(fall?.at).toBe(before);
        expect(Math.abs((fall?.points ?? 0) - drop)).toBeLessThanOrEqual(6);
      }),
      { numRuns: 60 },
    );
  }); // prettier-ignore

  it('with each generation is said to lose so much', () => {
    fc.assert(
      fc.property(fc.integer({ min: 3, max: 10 }), fc.integer({ min: 8, max: 14 }), fc.integer({ min: 3, max: 6 }), noise(24), (before, after, loss, by) => {
        const level = (i: number): number => 78 - loss * Math.max(0, i - before + 1) + (by[i] ?? 0) / 3;
        const fall = fallOf(points(Array.from({ length: before + after }, (_, i) => level(i))));
        expect(fall?.shape).toBe('with each generation');
        // The loss lies in its range, and the range is of losses.
        expect([(fall?.low ?? 0) > 0, (fall?.low ?? 99) <= (fall?.points ?? 0), (fall?.points ?? 99) <= (fall?.high ?? 0)]).toEqual([true, true, true]);
        expect(Math.abs((fall?.at ?? 0) - before)).toBeLessThanOrEqual(2);
        expect(Math.abs((fall?.points ?? 0) - loss)).toBeLessThanOrEqual(1);
      }),
      { numRuns: 60 },
    );
  }); // prettier-ignore

  it('is a slope as soon as four batches show it, however short', () => {
    expect(fallOf(points([78, 78, 78, 73, 68, 63, 58]))?.shape).toBe('with each generation');
  });

  it('is not one bad day among even batches', () => {
    const fall = fallOf(points([75, 76, 74, 40, 75, 76, 74, 50, 49, 51, 50]));
    expect([fall?.shape, fall?.at]).toEqual(['at once', 7]);
  });

  it('is said to lose with each generation only where that can be told from none', () => {
    expect(fallOf(points([75, 75, 75, 75, 66, 75, 57, 75, 48]))?.shape).not.toBe('with each generation');
  });

  it('needs batches before and after, and is none where nothing came down', () => {
    expect(fallOf(points([75, 40]))).toBeNull();
    expect(fallOf(points([60, 60, 60, 60, 60]))).toBeNull();
    expect(fallOf(points([40, 50, 60, 70, 80]))).toBeNull();
  });
});
