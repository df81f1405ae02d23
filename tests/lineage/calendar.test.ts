// Jars of the same time stand beside one another: what moving them apart ends in.
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { dayNumber, keepApart, layAlongCalendar } from '../../core/lineage/calendar';
import { layRows } from '../../core/lineage/drawing-rows';

const ROUNDING = 1e-6;

/** Two jars of one row, closer than one step: none may be left. */
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
  const laneOf = Int32Array.from(hung.keys());
  const numbers = Float64Array.from(days, (day) => (day === null ? NaN : dayNumber(day)));
  const day = Int32Array.from(numbers, (one) => (Number.isNaN(one) ? -(2 ** 31) : one));
  const { row, seedsFirst } = layRows({
    order,
    parent: hung,
    column: generation,
    day,
    laneOf,
    lanes: hung.length,
  });
  return { rows: row, parent: hung, ...layAlongCalendar(numbers, hung, row, seedsFirst) };
}

function holds({ x, rows, parent }: ReturnType<typeof lay>): void {
  expect(x.every((at) => Number.isFinite(at) && at >= 0)).toBe(true);
  expect(crowded(x, rows)).toEqual([]);
  parent.forEach((seed, jar) => {
    if (seed >= 0) expect(x[jar] as number).toBeGreaterThan(x[seed] as number);
  });
}

describe('keeping apart', () => {
  test('leaves none of a row within a step of another, none left of its seed, and moves none further than needed', () => {
    const jar = fc.record({
      x: fc.oneof(
        fc.double({ min: 0, max: 40, noNaN: true }),
        fc.double({ min: 2 ** 24, max: 2 ** 26, noNaN: true }),
        fc.integer({ min: 0, max: 6 }),
      ),
      row: fc.integer({ min: 0, max: 6 }),
      seed: fc.nat(),
    });
    fc.assert(
      fc.property(fc.array(jar, { minLength: 1, maxLength: 120 }), (jars) => {
        const told = jars.toSorted((a, b) => a.x - b.x);
        const before = Float64Array.from(told, (one) => one.x);
        const x = before.slice();
        const rows = Float64Array.from(told, (one) => one.row);
        const parent = Int32Array.from(told, ({ seed }, i) => (seed % 3 === 0 ? -1 : (seed % (i + 1)) - 1));
        keepApart(x, rows, parent, Int32Array.from(x.keys()));
        expect(crowded(x, rows)).toEqual([]);
        x.forEach((at, i) => {
          const seed = parent[i] as number;
          const mates = [...x.keys()].filter((other) => other < i && rows[other] === rows[i]);
          const needs = [
            before[i] as number,
            ...(seed >= 0 ? [(x[seed] as number) + 0.5] : []),
            ...mates.map((other) => (x[other] as number) + 1),
          ];
          expect(at).toBe(Math.max(...needs));
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
