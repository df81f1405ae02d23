// A drawing's columns: where jars stand, what they hang from, how they look, and what must never move.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildFamily, changeFamily, type Family } from '../../core/lineage/family';
import { drawFamily, type Looks } from '../../core/lineage/drawing';
import { FLAG } from '../../core/shapes/drawing-flags';
import type { SetWord } from '../../core/ledger/records';
import { plainSeeding, syntheticFamily } from '../families';
import { familyOf, type Told } from './short-families';

const looks = (setWords: Record<number, SetWord> = {}): Looks => ({
  jar: (key) => ({
    setWord: setWords[key] ?? null,
    outcomeKnown: key in setWords,
    onShelf: key === 2 ? true : null,
  }),
  mayBeThere: () => true,
  lineName: (batch) => `line ${batch}`,
  lineId: String,
  strainsOf: (source) => (source === 1 ? ['invented 1', 'invented 2'] : []),
});

const draw = (family: Family, spacing: 'generation' | 'calendar' = 'generation') =>
  drawFamily(family, looks(), spacing);

/** Rows by key. */
const rowsOf = (family: Family): Map<number, number> => {
  const drawing = draw(family);
  return new Map([...drawing.keys].map((key, i) => [key, drawing.y[i] as number]));
};

const founder = (key: number, more: Partial<Told> = {}): Told => ({
  key,
  from: [{ source: 1, pieces: 8 }],
  ...more,
});
const child = (key: number, ...from: number[]): Told => ({
  key,
  from: from.map((fromJar) => ({ fromJar, volumeMl: 40 })),
});

// Sugiyama, Tagawa & Toda 1981 (longest-path layering; from memory): the mixture graph of the founder-share example lies
// in columns 1, 2, 3, 4, 5, and every edge goes to a larger one.
it('stands a jar in the column of its generation; every ribbon goes right', () => {
  const family = familyOf(
    [
      founder(3),
      { key: 4, from: [{ fromJar: 3, volumeMl: 2 }, { source: 2, volumeMl: 1 }] },
      child(5, 4),
      child(6, 5, 3),
      { key: 7, from: [{ fromJar: 6, volumeMl: 3 }, { source: 2, volumeMl: 1 }] },
    ],
    [{ key: 1 }, { key: 2 }],
  ); // prettier-ignore
  const drawing = draw(family);
  expect([...drawing.generation]).toEqual([1, 2, 3, 4, 5]);
  expect([...drawing.x]).toEqual([0, 1, 2, 3, 4]);
  drawing.parent.forEach((seed, i) => {
    if (seed >= 0) expect(drawing.x[seed]).toBeLessThan(drawing.x[i] as number);
  });
  expect([[...drawing.otherChild], [...drawing.otherSeed], [...drawing.otherShare]]).toEqual([
    [3],
    [0],
    [0.5],
  ]);
  expect(drawing.founders).toEqual([
    {
      line: 'line 3',
      jars: [0],
      sources: [{ name: 'source 1', strains: ['invented 1', 'invented 2'], culture: false }],
    },
  ]);
});

describe('the spacing that a family opens in', () => {
  const day = (at: number): string => new Date(Date.UTC(2026, 0, 1 + at)).toISOString().slice(0, 10);
  /** Lines of so many generations, each made every so many days from some day on. */
  const lines = (
    ...told: readonly { readonly jars: number; readonly every: number; readonly from?: number }[]
  ) =>
    familyOf(
      told.flatMap(({ jars, every, from = 0 }, line) =>
        Array.from({ length: jars }, (_, at) => {
          const key = line * 100 + at + 1;
          return {
            ...(at === 0 ? founder(key) : child(key, key - 1)),
            madeOn: day(from + at * every),
            batch: key,
          };
        }),
      ),
    );
  const opens = (family: Family) => drawFamily(family, looks(), null).spacing;

  it('is that of generations for one line, for lines as deep, for short ones, and where the other line has ended', () => {
    expect(opens(familyOf([]))).toBe('generation');
    expect(opens(lines({ jars: 60, every: 7 }))).toBe('generation');
    expect(opens(lines({ jars: 40, every: 7 }, { jars: 36, every: 8 }))).toBe('generation');
    expect(opens(lines({ jars: 16, every: 7 }, { jars: 5, every: 21 }))).toBe('generation');
    expect(opens(lines({ jars: 40, every: 7 }, { jars: 10, every: 7 }))).toBe('generation');
  });
  it('is the calendar where two lines go on side by side, one of them many generations deeper', () => {
    expect(opens(lines({ jars: 35, every: 12 }, { jars: 17, every: 24 }))).toBe('calendar');
    expect(opens(lines({ jars: 60, every: 7 }, { jars: 8, every: 7, from: 364 }))).toBe('calendar');
  });
});

it('a culture of known past stands as far along as it is', () => {
  const family = familyOf(
    [founder(1), { key: 2, from: [{ source: 9, volumeMl: 40 }] }, child(3, 2), child(4, 1)],
    [{ key: 1 }, { key: 9, culture: true, knownGenerations: 4000 }],
  );
  expect([...draw(family).x]).toEqual([0, 4000, 4001, 1]);
});

const day = (madeOn: string, label: string): Partial<Told> => ({ madeOn, label });

const from = (...seeds: [number, number][]): Told => ({
  key: 9,
  madeOn: '2025-12-01',
  from: seeds.map(([fromJar, volumeMl]) => ({ fromJar, volumeMl })),
});

it('a jar hangs from its deepest seed, then the larger share, the earlier day, the label', () => {
  const seeds = [
    founder(1, day('2025-10-15', 'b')),
    founder(2, day('2025-10-15', 'a')),
    founder(3, day('2025-10-14', 'c')),
    { ...child(4, 1), ...day('2025-10-20', 'd') },
  ];
  const hangsFrom = (jar: Told): number => {
    const drawing = draw(familyOf([...seeds, jar]));
    return drawing.keys[drawing.parent[4] as number] as number;
  };
  expect(hangsFrom(from([1, 90], [4, 10]))).toBe(4);
  expect(hangsFrom(from([1, 60], [2, 40]))).toBe(1);
  expect(hangsFrom(from([1, 40], [3, 40]))).toBe(3);
  expect(hangsFrom(from([1, 40], [2, 40]))).toBe(2);
});

it('another seed that changes no depth moves no jar', () => {
  fc.assert(
    fc.property(fc.nat(), fc.nat(), fc.integer({ min: 2, max: 30 }), (a, b, jars) => {
      const family = buildFamily(syntheticFamily({ jars, shape: 'bushy', seed: a }));
      const jar = 1 + (a % jars);
      const before = draw(family);
      const at = before.keys.indexOf(jar);
      const own = before.generation[at] as number;
      const hangs = before.parent[at] as number;
      // A seed that is less deep than the one it hangs from, made no later, and no part of its descent.
      const seed = [...before.keys].find(
        (key, i) =>
          key >= (b % jars) && (before.generation[i] as number) < own - 1 &&
          (family.jar(key).madeOn ?? '') <= (family.jar(jar).madeOn ?? '') && i !== hangs,
      ); // prettier-ignore
      if (seed === undefined) return;
      const seedings = [
        ...family.seedsOf(jar),
        plainSeeding({ key: 9999, jar, fromJar: seed, volumeMl: 500 }),
      ];
      const after = draw(changeFamily(family, { seedings: [{ jar, seedings }] }).family);
      expect([...after.x]).toEqual([...before.x]);
      expect([...after.y]).toEqual([...before.y]);
      expect(after.otherChild.length).toBeGreaterThanOrEqual(before.otherChild.length);
    }),
  );
});

it('is the same whatever the order of records, and whether built or grown', () => {
  const records = syntheticFamily({ jars: 200, shape: 'bushy', seed: 3 });
  const built = draw(buildFamily(records));
  expect(draw(buildFamily({ ...records, jars: records.jars.toReversed(), seedings: records.seedings.toReversed() }))).toEqual(built); // prettier-ignore
  let grown = buildFamily({ ...records, jars: [], seedings: [] });
  for (const jar of records.jars.toReversed()) {
    const seedings = records.seedings.filter((seeding) => seeding.jar === jar.key);
    grown = changeFamily(grown, { jars: [jar], seedings: [{ jar: jar.key, seedings }] }).family;
  }
  expect(draw(grown)).toEqual(built);
});

const jar = (key: number, batch: number, madeOn: string, letter: string): Told => ({
  ...child(key, 1),
  batch,
  madeOn,
  letter,
});

it('keeps batch-mates of one seed side by side, by day and letter', () => {
  const rows = rowsOf(
    familyOf([
      founder(1),
      jar(2, 20, '2025-11-05', 'b'), jar(3, 21, '2025-11-01', 'a'), jar(4, 20, '2025-11-05', 'a'), jar(5, 20, '2025-11-05', 'c'),
    ]),
  ); // prettier-ignore
  expect([3, 4, 2, 5].map((key) => rows.get(key))).toEqual([0, 1, 2, 3]);
});

it('writes spoiled, held, shelved, seen, lost, weak and "at least" as bits', () => {
  const family = familyOf([
    founder(1),
    { ...child(2, 1), spoiled: true },
    child(3, 2),
    { key: 4, lost: true },
    founder(5),
  ]);
  const drawing = drawFamily(family, looks({ 1: 'soft', 2: 'firm' }), 'generation');
  expect([...drawing.flags]).toEqual([
    FLAG.look | FLAG.outcomeKnown | FLAG.weak,
    FLAG.spoiled | FLAG.onShelf | FLAG.outcomeKnown,
    FLAG.setAside,
    FLAG.lost | FLAG.atLeast,
    0,
  ]);
  expect([...drawing.setWord]).toEqual([1, 3, 255, 255, 255]);
  // A jar of which nothing is left asks nobody to look at it; what is spoiled or set aside stays as it was.
  const gone = drawFamily(
    family,
    { ...looks({ 1: 'soft', 2: 'firm' }), mayBeThere: () => false },
    'generation',
  );
  expect([...gone.flags]).toEqual([...drawing.flags].map((one) => one & ~FLAG.look));
});

describe('on calendar time', () => {
  it('keeps the rows, runs with the days and marks the months', () => {
    const family = familyOf([
      founder(1, { madeOn: '2025-10-15' }),
      { ...child(2, 1), madeOn: '2025-10-25' },
      { ...child(3, 2), madeOn: '2025-11-04' },
      { ...child(4, 3), madeOn: '2026-01-03' },
    ]);
    const drawing = draw(family, 'calendar');
    expect([...drawing.y]).toEqual([...draw(family).y]);
    // Ten days a step, the usual wait; the last waited sixty.
    expect([...drawing.x]).toEqual([0, 1, 2, 8]);
    expect(drawing.ticks.map(({ label }) => label)).toEqual(['Nov 2025', 'Dec', 'Jan 2026']);
    expect(drawing.ticks[0]?.x).toBeCloseTo(1.7, 12);
  });

  it('never draws one jar over another, nor a seed right of what it seeded', () => {
    fc.assert(
      fc.property(fc.nat(), fc.integer({ min: 1, max: 60 }), (seed, jars) => {
        const drawing = draw(buildFamily(syntheticFamily({ jars, shape: seed % 5 ? 'bushy' : 'line', seed })), 'calendar');
        drawing.x.forEach((x, i) => {
          const above = drawing.parent[i] as number;
          if (above >= 0) expect(drawing.x[above]).toBeLessThan(x);
          for (let j = 0; j < i; j++) {
            const apart = Math.max(Math.abs((drawing.x[j] as number) - x), Math.abs((drawing.y[j] as number) - (drawing.y[i] as number)));
            expect(apart).toBeGreaterThan(1 - 1e-6);
          }
        });
      }),
    );
  }); // prettier-ignore

  it('finds a place for a lost jar of unknown day', () => {
    const family = familyOf([
      { key: 1, lost: true, madeOn: null },
      { ...child(2, 1), madeOn: '2025-10-25' },
    ]);
    expect([...draw(family, 'calendar').x]).toEqual([0, 1]);
  });
});

// d3's own constructor climbs to the root from every node: quadratic here. Finishing at all is the proof.
it('draws one line of 100,000 jars, each in its own column of one row', () => {
  const drawing = draw(buildFamily(syntheticFamily({ jars: 100_000, shape: 'line' })));
  expect(drawing.x[99_999]).toBe(99_999);
  expect(drawing.y.every((row) => row === 0)).toBe(true);
  expect([drawing.width, drawing.height]).toEqual([100_000, 1]);
});

it('draws no jars as nothing', () => {
  const drawing = draw(familyOf([]), 'calendar');
  expect([drawing.width, drawing.height, drawing.keys.length, drawing.ticks]).toEqual([0, 0, 0, []]);
});
