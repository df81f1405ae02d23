// The plot of a line: where things stand, and the numbers that go out. Pure geometry, so checked by arithmetic.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lineNumbers, tabbed } from '../../renderer/vigour/tabbed-numbers';
import {
  dayMarks,
  layoutOf,
  LEAST_STEP,
  type LineReply,
  movedTo,
  newest,
  roomFor,
  runningLine,
  slopeLine,
  spread,
  stretches,
  wordsBelow,
} from '../../renderer/vigour/plot-scale';

const uid = (n: number): string => `01900000-0000-7000-8000-${String(n).padStart(12, '0')}`;
const batch = (n: number, points: number | null): LineReply['batches'][number] => ({
  batch: uid(n), label: `${n} Mar 2026`, madeOn: `2026-03-${String(n).padStart(2, '0')}`, generation: n, score: points,
  points, uncorrected: points, first: n === 1, setWord: points === null ? null : 'firm', spoiled: false, standing: 'no slip seen', says: '',
  jars: points === null ? [] : [{ jar: uid(100 + n), label: `${n} Mar a`, score: points, low: points - 5, high: points + 5, asItCame: points, compared: true, held: null }],
  leftOut: points === null ? [{ jar: uid(100 + n), label: `${n} Mar a`, reason: 'Nothing was\twritten down.' }] : [],
}); // prettier-ignore
const line = (points: readonly (number | null)[], more: Partial<LineReply> = {}): LineReply => ({
  line: uid(1), name: 'Heron', standing: 'slipping', sentence: '', since: null, reasons: [],
  batches: points.map((value, at) => batch(at + 1, value)), comparable: 0, slope: null, slopeLow: null, slopeHigh: null,
  baseline: null, spread: null, drop: null, lowerLimit: null, running: [], calledAt: null, startedAt: null, cameDown: null, cameDownAt: null, suspects: [],
  blocked: [], effects: [], why: { formula: '', inputs: [], assumptions: [], source: null }, safety: 'This says nothing about safety.',
  model: { version: 1, parameters: {} }, ...more,
}); // prettier-ignore

describe('the plot', () => {
  const many = (count: number) =>
    line(
      Array.from({ length: count }, (_, at) => 75 - (at % 7)),
      { baseline: 74, spread: 5 },
    );

  it('is fitted: all that is drawn lies inside, and small differences are not blown up', () => {
    const judged = line([null, 80, 76, null, 68, 30], { baseline: 78, spread: 6 });
    const { y, top, foot } = layoutOf(judged, { from: 0, to: 6 }, 900, false);
    for (const points of [80, 76, 68, 30, 84]) {
      expect(y(points)).toBeGreaterThanOrEqual(top);
      expect(y(points)).toBeLessThanOrEqual(foot);
    }
    const level = layoutOf(line([70, 71, 70]), { from: 0, to: 3 }, 900, false);
    expect(level.y(70) - level.y(71)).toBeLessThan((level.foot - level.top) / 30);
  });

  it('shows as many of the newest as can be pressed, 25 at most, at any width', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 320, max: 2600 }),
        fc.integer({ min: 1, max: 400 }),
        fc.boolean(),
        (width, count, worked) => {
          const room = roomFor(width);
          const shown = newest(count, room);
          expect(shown.to).toBe(count);
          expect(shown.to - shown.from).toBe(Math.min(room, count));
          expect(room).toBeLessThanOrEqual(25);
          const { step, x, right } = layoutOf(many(count), shown, width, worked);
          expect(step).toBeGreaterThanOrEqual(LEAST_STEP - 1e-9);
          // The last column, a label as wide as it and half a day's name stay inside.
          expect(x(shown.to - 1) + 20).toBeLessThanOrEqual(width - right + 1e-9);
        },
      ),
    );
  });

  it('has a scale of 0 to 100 beside it, each figure at its height', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -20, max: 120, noNaN: true }), { minLength: 1, maxLength: 12 }), fc.boolean(), (points, worked) => {
        const { scale, y, top, foot } = layoutOf(line(points), { from: 0, to: points.length }, 900, worked);
        expect(scale.length).toBeGreaterThanOrEqual(2);
        for (const at of scale) expect([at >= 0, at <= 100, y(at) >= top - 1e-9, y(at) <= foot + 1e-9]).toEqual([true, true, true, true]);
        const steps = scale.slice(1).map((at, i) => y(scale[i] as number) - y(at));
        expect(Math.min(...steps)).toBeGreaterThanOrEqual(17);
      }),
    );
  }); // prettier-ignore

  it('walking past an end brings in what lies beyond, and never more than there is', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 1, max: 25 }),
        fc.nat(59),
        (count, room, at) => {
          const index = at % count;
          const moved = movedTo(newest(count, room), index, count);
          expect(moved.from).toBeLessThanOrEqual(index);
          expect(moved.to).toBeGreaterThan(index);
          expect([moved.from >= 0, moved.to <= count, moved.to - moved.from]).toEqual([
            true,
            true,
            Math.min(room, count),
          ]);
        },
      ),
    );
  });

  it('names the newest day always, and the year with the first of each', () => {
    const days = ['2025-12-20', '2025-12-27', '2026-01-03', null, '2026-01-17'];
    const batches = line([1, 2, 3, 4, 5]).batches.map((one, at) => ({ ...one, madeOn: days[at] ?? null }));
    expect(dayMarks(batches, { from: 0, to: 5 }, 80)).toEqual([
      { index: 0, day: '20 Dec', year: '2025' },
      { index: 1, day: '27 Dec', year: null },
      { index: 2, day: '3 Jan', year: '2026' },
      { index: 3, day: '?', year: null },
      { index: 4, day: '17 Jan', year: null },
    ]);
    expect(dayMarks(batches, { from: 0, to: 5 }, 40).map(({ index }) => index)).toEqual([0, 2, 4]);
  });

  it('says below the line why there is no score, once for neighbours that share it', () => {
    const judged = line([null, 80, null, null, 76]);
    expect(wordsBelow(judged.batches, { from: 0, to: 5 })).toEqual([
      { at: 0, words: 'first batch' },
      { at: 2.5, words: 'not noted' },
    ]);
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
    // Of a line that falls with each generation, over the batches since it began to.
    const falling = line([80, 80, 80, 76, 72], { slope: -4, slopeLow: -5, slopeHigh: -3, cameDown: 'with each generation', cameDownAt: uid(4), model: { version: 1, parameters: { window: 12 } } }); // prettier-ignore
    expect(slopeLine(falling)?.at.map(({ index, middle }) => [index, middle])).toEqual([[3, 76], [4, 72]]); // prettier-ignore
    // No slope across one drop and a level stretch.
    const dropped = line([80, 81, 80, 50, 52, 55], {
      slope: -6,
      slopeLow: -8,
      slopeHigh: -4,
      cameDown: 'at once',
    });
    expect(slopeLine(dropped)).toBeNull();
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
