// The plot of a line: where things stand, and the numbers that go out. Pure geometry, so checked by arithmetic.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineNumbers, tabbed } from '../../renderer/vigour/numbers';
import {
  BIG,
  LEAST_STEP,
  leastWidth,
  type LineReply,
  runningLine,
  scaleOf,
  slopeLine,
  spread,
  stretches,
} from '../../renderer/vigour/plot-scale';

const uid = (n: number): string => `01900000-0000-7000-8000-${String(n).padStart(12, '0')}`;
const batch = (n: number, points: number | null): LineReply['batches'][number] => ({
  batch: uid(n), label: `${n} Mar 2026`, madeOn: `2026-03-${String(n).padStart(2, '0')}`, generation: n, score: points,
  points, uncorrected: points, first: n === 1, standing: 'no slip seen', says: '',
  jars: points === null ? [] : [{ jar: uid(100 + n), label: `${n} Mar a`, score: points, low: points - 5, high: points + 5, asItCame: points, compared: true, held: null }],
  leftOut: points === null ? [{ jar: uid(100 + n), label: `${n} Mar a`, reason: 'Nothing was\twritten down.' }] : [],
}); // prettier-ignore
const line = (points: readonly (number | null)[], more: Partial<LineReply> = {}): LineReply => ({
  line: uid(1), name: 'Heron', standing: 'slipping', sentence: '', reasons: [],
  batches: points.map((value, at) => batch(at + 1, value)), comparable: 0, slope: null, slopeLow: null, slopeHigh: null,
  baseline: null, spread: null, drop: null, lowerLimit: null, running: [], calledAt: null, startedAt: null, suspects: [],
  blocked: [], effects: [], why: { formula: '', inputs: [], assumptions: [], source: null }, safety: 'This says nothing about safety.',
  model: { version: 1, parameters: {} }, ...more,
}); // prettier-ignore

describe('the scale', () => {
  it('is the same for every line: 0 at the foot, 100 at the top, nothing beyond', () => {
    const { y } = scaleOf({ ...BIG, width: 900 }, 7);
    expect(y(0)).toBe(BIG.height - BIG.bottom);
    expect(y(100)).toBe(BIG.top);
    expect(y(-20)).toBe(y(0));
    expect(y(130)).toBe(y(100));
  });

  it('never makes a column too narrow to press', () => {
    for (const batches of [1, 14, 200])
      expect(scaleOf({ ...BIG, width: leastWidth(BIG, batches) }, batches).step).toBeCloseTo(LEAST_STEP);
  });
});

describe('the slope', () => {
  it('runs through points that lie on a line, its range turning about their middle', () => {
    const found = slopeLine(line([null, 80, 76, null, 68, 64], { slope: -4, slopeLow: -5, slopeHigh: -3 }));
    expect(found?.at.map(({ middle }) => middle)).toEqual([80, 76, 68, 64]);
    expect(found?.at.map(({ low, middle, high }) => low <= middle && middle <= high)).not.toContain(false);
    // Generations 2, 3, 5, 6: the middle is 4, two below the last, so the range there is ±1 × 2.
    expect(found?.at.at(-1)).toEqual({ index: 5, middle: 64, low: 62, high: 66 });
  });

  it('is drawn over the batches it was reckoned on, and not at all where there are too few', () => {
    const recent = line([80, 80, 80, 76, 72], { slope: -4, slopeLow: -5, slopeHigh: -3, model: { version: 1, parameters: { window: 3 } } }); // prettier-ignore
    expect(slopeLine(recent)?.at.map(({ index }) => index)).toEqual([2, 3, 4]);
    expect(slopeLine(line([80, 79]))).toBeNull();
  });
});

it('the running mean stands at the last batches that can be compared', () => {
  expect(runningLine(line([70, null, 72, 74], { running: [71, 73] }))).toEqual([
    { index: 2, points: 71 },
    { index: 3, points: 73 },
  ]);
});

it('what was not compared is not bridged', () => {
  expect(stretches([{ index: 1 }, { index: 2 }, { index: 4 }])).toEqual([
    [{ index: 1 }, { index: 2 }],
    [{ index: 4 }],
  ]);
});

it('labels keep their order and their distance, and stay in the room where it is large enough', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { minLength: 1, maxLength: 6 }),
      (wanted) => {
        const placed = spread(wanted, 20, 0, 300);
        const order = wanted.map((y, at) => ({ y, at })).toSorted((a, b) => a.y - b.y);
        for (const [rank, { at }] of order.entries()) {
          expect(placed[at]).toBeGreaterThanOrEqual(-1e-9);
          expect(placed[at]).toBeLessThanOrEqual(300 + 1e-9);
          const above = order[rank - 1];
          if (above) expect((placed[at] ?? 0) - (placed[above.at] ?? 0)).toBeGreaterThanOrEqual(20 - 1e-9);
        }
      },
    ),
  );
});

describe('the numbers', () => {
  it('leave unknown empty, never 0, and keep every row the same length', () => {
    expect(tabbed([['a', null, 0], ['b\tc\nd', 1, 2]])).toBe('a\t\t0\nb c d\t1\t2'); // prettier-ignore
    const rows = lineNumbers(line([80, null])).split('\n');
    const head = rows.findIndex((row) => row.startsWith('batch\t'));
    expect(rows.slice(head).map((row) => row.split('\t').length)).toEqual([13, 13, 13]);
    expect(rows[head + 2]).toBe(
      '2 Mar 2026\t2026-03-02\t2\t\t\t2 Mar a\t\t\t\t\tno\tNothing was written down.\t',
    );
    expect(rows).toContain('This says nothing about safety.');
  });
});
