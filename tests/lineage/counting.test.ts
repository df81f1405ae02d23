// Generation, doublings and shares where something is unknown, by the words of the design.
import { describe, expect, it } from 'vitest';
import { changeFamily } from '../../core/lineage/family';
import { plainJar, plainSeeding } from '../families';
import { familyOf, type Told } from './short-families';

const CAPSULES = { source: 1, pieces: 10, countPerPiece: 1e8 };
const SOURCES = [
  { key: 1, name: 'Blue Tin' },
  { key: 2, name: 'Lantern', culture: true },
  { key: 3, name: 'known culture', culture: true, knownGenerations: 6 },
];
const jars = (...told: Told[]) => familyOf(told, SOURCES);

describe('generation', () => {
  it('is 1 for a jar from sources, 2 and "at least" from a culture of unknown past, n + 1 from one of known past', () => {
    const family = jars(
      { key: 1, from: [CAPSULES] },
      { key: 2, from: [{ source: 2, volumeMl: 40 }] },
      { key: 3, from: [{ source: 3, volumeMl: 40 }] },
    );
    expect(family.generationOf(1)).toEqual({ deepest: 1, shallowest: 1, mean: 1, atLeast: false });
    expect(family.generationOf(2)).toEqual({ deepest: 2, shallowest: 2, mean: 2, atLeast: true });
    expect(family.generationOf(3)).toEqual({ deepest: 7, shallowest: 7, mean: 7, atLeast: false });
  });

  it('is "at least" for a jar without a recorded seed, a lost jar, a seed no longer there, and all that descends', () => {
    const family = jars(
      { key: 1 },
      { key: 2, lost: true, madeOn: null },
      { key: 3, from: [{ fromJar: 404, volumeMl: 40 }] },
      { key: 4, from: [CAPSULES] },
      { key: 5, from: [{ fromJar: 1 }, { fromJar: 4 }] },
      { key: 6, from: [{ fromJar: 5 }] },
      { key: 7, from: [{ fromJar: 2 }] },
      { key: 8, from: [{ fromJar: 4 }] },
    );
    expect(family.generationOf(1)).toEqual({ deepest: 1, shallowest: 1, mean: 1, atLeast: true });
    expect(family.generationOf(2)).toEqual({ deepest: 1, shallowest: 1, mean: 1, atLeast: true });
    expect(family.generationOf(3)).toEqual({ deepest: 2, shallowest: 2, mean: 2, atLeast: true });
    expect([5, 6, 7].map((key) => family.generationOf(key).atLeast)).toEqual([true, true, true]);
    expect(family.generationOf(8).atLeast).toBe(false);
    expect(family.tracedSharesOf(5)).toEqual([
      { source: null, share: 0.5 },
      { source: 1, share: 0.5 },
    ]);
  });
});

/** Jar 3 seeded from 1 and 2, with what was recorded of each amount. */
const two = (a: object, b: object, seedJar: Partial<Told> = {}) =>
  jars(
    { key: 1, from: [CAPSULES], ...seedJar },
    { key: 2, from: [CAPSULES] },
    { key: 3, from: [{ fromJar: 1, ...a }, { fromJar: 2, ...b }] },
  ); // prettier-ignore

const sharesOf3 = (family: ReturnType<typeof two>) => [...family.sharesOf(3).values()];

it('the mean of seeds of one generation is that generation and one, to the last bit', () => {
  const family = jars(...[1, 2, 3, 4, 5, 6].map((key): Told => ({ key, from: [CAPSULES] })), {
    key: 7,
    from: [1, 2, 3, 4, 5, 6].map((fromJar) => ({ fromJar, volumeMl: 0.1 * fromJar })),
  });
  expect(family.generationOf(7).mean).toBe(2);
});

describe('seed shares rest on one basis, the first that applies', () => {
  it('count, where one of the densities was measured; the default for the other', () => {
    const family = two({ volumeMl: 10 }, { volumeMl: 10 }, { countPerMl: 6e8 });
    expect(family.basisOf(3)).toBe('count');
    expect(sharesOf3(family)).toEqual([0.75, 0.25]);
  });
  it('volume, where no count is declared or measured', () => {
    const family = two({ volumeMl: 30 }, { volumeMl: 10 });
    expect(family.basisOf(3)).toBe('volume');
    expect(sharesOf3(family)).toEqual([0.75, 0.25]);
  });
  it('pieces, where only these are known (cubes from the freezer)', () => {
    const family = two({ pieces: 3 }, { pieces: 1 });
    expect(family.basisOf(3)).toBe('pieces');
    expect(sharesOf3(family)).toEqual([0.75, 0.25]);
  });
  it('equal and said to be assumed, where amounts can’t be compared', () => {
    const family = two({ pieces: 3 }, { volumeMl: 1 });
    expect(family.basisOf(3)).toBe('equal, assumed');
    expect(sharesOf3(family)).toEqual([0.5, 0.5]);
  });
  it('a volume of powder is never given the density of a fermented milk', () => {
    const family = jars({ key: 1, from: [{ source: 1, volumeMl: 5 }, { ...CAPSULES }] }); // prettier-ignore
    expect(family.basisOf(1)).toBe('equal, assumed');
  });
  it('no basis without a recorded seed', () => expect(jars({ key: 1 }).basisOf(1)).toBeNull());
});

describe('doublings: unknown is null, never 0, and one of the two may be known alone', () => {
  const transfer = { fromJar: 1, volumeMl: 10 };
  it('an undeclared count leaves the start unknown and the transfers known', () => {
    const family = jars(
      { key: 1, from: [{ source: 1, pieces: 10 }] },
      { key: 2, finalVolumeMl: 100, from: [transfer] },
    );
    expect(family.doublingsOf(1)).toEqual({ transfers: 0, start: null });
    expect(family.doublingsOf(2)).toEqual({ transfers: Math.log2(10), start: null });
  });
  it('a missing volume leaves the transfers unknown and the start known', () => {
    const family = jars({ key: 1, from: [CAPSULES] }, { key: 2, finalVolumeMl: null, from: [transfer] });
    expect(family.doublingsOf(2).transfers).toBeNull();
    expect(family.doublingsOf(2).start).toBe(family.doublingsOf(1).start);
    expect(family.doublingsOf(2).start).not.toBeNull();
  });
  it('both are unknown behind an unknown past', () => {
    const family = jars({ key: 1, lost: true }, { key: 2, finalVolumeMl: 100, from: [transfer] });
    expect(family.doublingsOf(2)).toEqual({ transfers: null, start: null });
    expect(family.ownDoublingsOf(2)).toBeCloseTo(Math.log2(10), 12);
  });
  it('weighs two seeds by their shares', () => {
    const family = jars(
      { key: 1, from: [CAPSULES] },
      { key: 2, finalVolumeMl: 64, from: [{ fromJar: 1, volumeMl: 1 }] },
      { key: 3, finalVolumeMl: 64, from: [{ fromJar: 2, volumeMl: 3 }, { fromJar: 1, volumeMl: 1 }] },
    ); // prettier-ignore
    // 6 doublings to jar 2; in jar 3 four of 64 mL: 4 more, on three quarters of 6.
    expect(family.doublingsOf(3).transfers).toBeCloseTo(0.75 * 6 + 4, 12);
  });
});

describe('lines', () => {
  it('are founded by the source-only jars of one batch; a jar that mixes two belongs to both', () => {
    const family = jars(
      { key: 1, batch: 7, madeOn: '2025-10-15', letter: 'a', from: [CAPSULES] },
      { key: 2, batch: 7, madeOn: '2025-10-15', letter: 'b', from: [CAPSULES] },
      { key: 3, batch: 8, madeOn: '2025-09-01', from: [{ source: 2, volumeMl: 40 }] },
      { key: 4, batch: 9, madeOn: '2025-11-01', from: [{ fromJar: 1 }, { fromJar: 3 }] },
      { key: 5, batch: 9, madeOn: '2025-11-01', from: [{ fromJar: 2 }, CAPSULES] },
      { key: 6, batch: 10, madeOn: '2025-11-02' },
    ); // prettier-ignore
    expect(family.linesOf(4)).toEqual([7, 8]);
    expect(family.linesOf(5)).toEqual([7]);
    expect(family.linesOf(6)).toEqual([]);
    expect(family.lines).toEqual([
      { batch: 8, founded: '2025-09-01', founders: [3], jarCount: 2 },
      { batch: 7, founded: '2025-10-15', founders: [1, 2], jarCount: 4 },
    ]);
  });
});

it('a jar that comes back from being a mistake is the seed of its children again', () => {
  const before = jars({ key: 1, from: [CAPSULES] }, { key: 2, from: [{ fromJar: 1 }] });
  const without = changeFamily(before, { gone: [1] });
  expect(without.touched).toEqual([1, 2]);
  expect(without.family.generationOf(2)).toMatchObject({ deepest: 2, atLeast: true });
  expect(without.family.has(1)).toBe(false);
  const again = changeFamily(without.family, {
    jars: [plainJar({ key: 1 })],
    seedings: [{ jar: 1, seedings: [plainSeeding({ key: 1, jar: 1, ...CAPSULES })] }],
  });
  expect(again.family.generationOf(2)).toMatchObject({ deepest: 2, atLeast: false });
  expect(again.family.childrenOf(1)).toEqual([2]);
});

it('a jar moved below a spoiled one is set aside with its descendants, though no count of theirs changes', () => {
  const before = jars(
    { key: 1, batch: 1, from: [CAPSULES] },
    { key: 2, batch: 1, hold: 2, spoiled: true, from: [CAPSULES] },
    { key: 3, from: [{ fromJar: 1, volumeMl: 40 }] },
    { key: 4, from: [{ fromJar: 3, volumeMl: 40 }] },
  );
  const moved = plainSeeding({ key: 3, jar: 3, fromJar: 2, volumeMl: 40 });
  const after = changeFamily(before, { seedings: [{ jar: 3, seedings: [moved] }] });
  expect(after.family.tracedSharesOf(4)).toEqual(before.tracedSharesOf(4));
  expect(after.family.linesOf(4)).toEqual(before.linesOf(4));
  expect(after.touched).toEqual([3]);
  expect(after.family.cautionsOf(4)).toMatchObject([{ of: 2, relation: 'seeded by it', steps: 2 }]);
});

it('what seeded a spoiled jar is looked at, the old seed no longer, once it is corrected', () => {
  const before = jars(
    ...[1, 2].map((key): Told => ({ key, hold: key, from: [CAPSULES] })),
    { key: 3, hold: 3, spoiled: true, from: [{ fromJar: 1, volumeMl: 40 }] },
    { key: 4, hold: 4, from: [{ fromJar: 1, volumeMl: 40 }] },
    { key: 5, hold: 5, from: [{ fromJar: 2, volumeMl: 40 }] },
    { key: 6, hold: 6, from: [CAPSULES] },
  );
  const seedings = [plainSeeding({ key: 3, jar: 3, fromJar: 2, volumeMl: 40 })];
  const levels = (family: typeof before) => family.keys.map((key) => family.cautionLevelOf(key));
  expect(levels(before)).toEqual(['look', null, 'condemned', 'look', null, null]);
  const { family, touched } = changeFamily(before, { seedings: [{ jar: 3, seedings }] });
  expect(levels(family)).toEqual([null, 'look', 'condemned', null, 'look', null]);
  expect(touched).toEqual([3]);
});
