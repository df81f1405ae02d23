// Jars of the same time stand beside one another: that moving them apart always ends, and what it ends in.
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { keepApart, layAlongCalendar } from '../../core/lineage/calendar';
import { layRows } from '../../core/lineage/rows';

const ROUNDING = 1e-6;

/** Two jars within one row of each other, closer than one step: none may be left. */
function crowded(x: Float64Array, rows: Float64Array): string[] {
  const byX = Array.from(x.keys()).toSorted((a, b) => (x[a] as number) - (x[b] as number));
  const found: string[] = [];
  byX.forEach((jar, i) => {
    for (let j = i + 1; j < byX.length; j += 1) {
      const other = byX[j] as number;
      if ((x[other] as number) - (x[jar] as number) >= 1 - ROUNDING) break;
      if (Math.abs((rows[other] as number) - (rows[jar] as number)) < 1 - ROUNDING)
        found.push(`${jar} and ${other}`);
    }
  });
  return found;
}

/** Seeds of jars on days; every jar hangs from the jar given, or from none. */
function lay(days: readonly (string | null)[], parent: readonly number[]) {
  const order = Int32Array.from(parent.keys());
  const hung = Int32Array.from(parent);
  const generation = new Int32Array(parent.length);
  for (const jar of order) {
    const seed = hung[jar] as number;
    generation[jar] = seed < 0 ? 1 : (generation[seed] as number) + 1;
  }
  const rows = layRows(order, hung, generation);
  return { rows, parent: hung, ...layAlongCalendar(days, hung, rows, order) };
}

function holds({ x, rows, parent }: ReturnType<typeof lay>): void {
  expect(x.every((at) => Number.isFinite(at) && at >= 0)).toBe(true);
  expect(crowded(x, rows)).toEqual([]);
  parent.forEach((seed, jar) => {
    if (seed >= 0) expect(x[jar] as number).toBeGreaterThan(x[seed] as number);
  });
}

describe('keeping apart', () => {
  /** Where one step further, less the breath allowed for rounding, still rounds to a place behind: 2^25 on. */
  const stubborn = (): number[] => {
    const breath = 1 - 1e-9;
    const found: number[] = [];
    for (let power = 20; power < 52; power += 1)
      for (let ulps = -4; ulps <= 4; ulps += 1) {
        const x = 2 ** power - 1 + ulps * 2 ** (power - 53);
        if (x > x + 1 - breath) found.push(x);
      }
    return found;
  };

  test('ends also where rounding leaves a moved jar no further than before', () => {
    const places = stubborn();
    // With none the test would prove nothing.
    expect(places.length).toBeGreaterThan(0);
    for (const place of places) {
      const x = Float64Array.of(place, place);
      keepApart(x, Float64Array.of(0.6, 1.2), Int32Array.of(-1, -1), Int32Array.of(0, 1));
      expect(x[0]).toBe(place);
      expect(x[1]).toBe(place + 1);
    }
  });

  test('ends for any places and rows, each jar moved right by less than one step for each jar there is', () => {
    const jar = fc.record({
      x: fc.oneof(
        fc.double({ min: 0, max: 40, noNaN: true }),
        fc.double({ min: 2 ** 24, max: 2 ** 26, noNaN: true }),
        fc.integer({ min: 0, max: 6 }),
      ),
      row: fc.oneof(fc.double({ min: 0, max: 6, noNaN: true }), fc.integer({ min: 0, max: 6 })),
    });
    fc.assert(
      fc.property(fc.array(jar, { minLength: 1, maxLength: 120 }), (jars) => {
        const before = Float64Array.from(jars, (one) => one.x);
        const x = before.slice();
        const rows = Float64Array.from(jars, (one) => one.row);
        keepApart(x, rows, new Int32Array(x.length).fill(-1), Int32Array.from(x.keys()));
        expect(crowded(x, rows)).toEqual([]);
        x.forEach((at, i) => {
          expect(at).toBeGreaterThanOrEqual(before[i] as number);
          expect(at - (before[i] as number)).toBeLessThan(x.length + 1);
        });
      }),
    );
  });
});

describe('shapes of one day', () => {
  const day = '2026-03-14';
  const all = Array.from({ length: 500 }, () => day);

  test('500 jars of one day from sources stand above one another at that day', () => {
    const laid = lay(
      all,
      all.map(() => -1),
    );
    holds(laid);
    expect(new Set(laid.x)).toEqual(new Set([0]));
  });

  test('500 jars of one day seeded by one jar of that day', () => {
    holds(
      lay(
        all,
        all.map((_, jar) => (jar === 0 ? -1 : 0)),
      ),
    );
  });

  test('500 jars of one day, each seeded by the one before', () => {
    const laid = lay(
      all,
      all.map((_, jar) => jar - 1),
    );
    holds(laid);
    expect(laid.x[499]).toBeCloseTo(499, 6);
  });

  test('500 jars of one day, each seeding two', () => {
    holds(
      lay(
        all,
        all.map((_, jar) => Math.floor((jar - 1) / 2)),
      ),
    );
  });

  test('500 jars whose day nobody knows, in a line', () => {
    holds(
      lay(
        all.map(() => null),
        all.map((_, jar) => jar - 1),
      ),
    );
  });

  test('500 jars of one day beside one of the first and one of the last day that can be typed', () => {
    holds(lay(['0001-01-01', ...all, '9999-12-31'], [-1, ...all.map(() => 0), 1]));
  });
});
