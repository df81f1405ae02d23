// The counts against figures from outside. Each check names where its numbers come from.
import { expect, it } from 'vitest';
import { lineageFigures } from '../../core/lineage/figures-with-why';
import type { Family } from '../../core/lineage/family';
import { countPaths, familyOf, sumOf, type Told } from './short-families';

const TABLESPOON_ML = 14.78676478125; // NIST Handbook 44, Appendix C: a US tablespoon is exactly half a US fluid ounce
const QUART_ML = 946.352946; // 64 such tablespoons

/** Doublings of one jar seeded from another by volume. */
const doublings = (seedMl: number, finalMl: number): number | null =>
  familyOf([
    { key: 1, from: [{ source: 1, pieces: 10, countPerPiece: 1e8 }] },
    { key: 2, finalVolumeMl: finalMl, from: [{ fromJar: 1, volumeMl: seedMl }] },
  ]).doublingsOf(2).transfers;

/** A line of transfers of the same volume, one jar after another. */
const line = (transfers: number, seedMl: number, finalMl: number): Family =>
  familyOf([
    { key: 1, from: [{ source: 1, pieces: 10, countPerPiece: 1e8 }] },
    ...Array.from({ length: transfers }, (_, i) => ({
      key: i + 2,
      finalVolumeMl: finalMl,
      from: [{ fromJar: i + 1, volumeMl: seedMl }],
    })),
  ]);

// Lenski et al. 1991, Am Nat 138:1315-1341 (numbers as quoted on the experiment's own site): 1 in 100 moved on each day,
// "about 6 and 2/3 doublings" a day, 500 generations in about 75 days.
it('counts the serial transfers of the long-term evolution experiment', () => {
  expect(doublings(1, 100)).toBeCloseTo(6.643856, 6);
  const after75 = line(75, 1, 100).doublingsOf(76).transfers as number;
  expect(after75).toBeCloseTo(75 * Math.log2(100), 9);
  expect(Math.round(after75 / 10) * 10).toBe(500);
  expect(500 / (doublings(1, 100) as number)).toBeCloseTo(75.26, 2);
});

// Powers of two are exact: 1/32 is 2^-5. The others are logarithms recomputed independently of this program.
it.each([
  [1, 10, 3.321928],
  [5, 100, 4.321928],
  [1, 32, 5],
  [1, 50, 5.643856],
  [1, 64, 6],
  [1, 1000, 9.965784],
])('%d in %d regrown is %d doublings', (seed, final, expected) => {
  expect(doublings(seed, final)).toBeCloseTo(expected, 6);
});

it.each([
  [1, 6, 6.022368],
  [2, 5, 5.044394],
  [3, 4.415037, 4.481127],
  [4, 4, 4.087463],
])('%d tbsp within a quart is %d doublings, added to a quart %d', (spoons, within, added) => {
  expect(doublings(spoons * TABLESPOON_ML, QUART_ML)).toBeCloseTo(within, 6);
  expect(doublings(spoons * TABLESPOON_ML, QUART_ML + spoons * TABLESPOON_ML)).toBeCloseTo(added, 6);
});

it('adds doublings down the line: ten transfers of 2 tbsp within a quart are 50', () => {
  expect(line(10, 2 * TABLESPOON_ML, QUART_ML).doublingsOf(11).transfers).toBeCloseTo(50, 9);
});

// A seed that lost one power of ten needs log2(10) = 3.3219 more: 5 + 3.321928 (recomputed).
it('counts more doublings, not fewer, where the seed was measured weaker', () => {
  const family = familyOf([
    { key: 1, countPerMl: 2e7, from: [{ source: 1, pieces: 10, countPerPiece: 1e8 }] },
    { key: 2, countPerMl: 2e8, finalVolumeMl: 64, from: [{ fromJar: 1, volumeMl: 2 }] },
  ]);
  expect(family.doublingsOf(2).transfers).toBeCloseTo(8.321928, 6);
});

// Dose arithmetic, recomputed: ten pieces of 1e8 in a quart are 1.0567e6 per mL; to 1e9 per mL that is 9.8862 doublings.
it('keeps the start from pieces apart, with the final density it was measured at', () => {
  const family = familyOf([
    {
      key: 1,
      countPerMl: 1e9,
      finalVolumeMl: QUART_ML,
      from: [{ source: 1, pieces: 10, countPerPiece: 1e8 }],
    },
    { key: 2, countPerMl: 1e9, finalVolumeMl: 32, from: [{ fromJar: 1, volumeMl: 1 }] },
  ]);
  expect(family.doublingsOf(1).start).toBeCloseTo(9.8862, 4);
  expect(family.doublingsOf(1).transfers).toBe(0);
  expect(family.doublingsOf(2).transfers).toBeCloseTo(5, 12);
  expect(family.doublingsOf(2).start).toBeCloseTo(9.8862, 4);
});

// Generation count n = log2(N / N0): 84 to 3.39e8 is 21.944393 doublings (microbiologybytes.com, bact18; the page prints
// 21.96 from rounded logarithms). In 1 mL with the counts given directly.
it('counts doublings of a published growth curve', () => {
  const family = familyOf([
    { key: 1, countPerMl: 3.39e8, finalVolumeMl: 1, from: [{ source: 1, countDirect: 84 }] },
  ]);
  expect(family.doublingsOf(1).start).toBeCloseTo(21.944393, 6);
  // Both counts were told, so nothing of it is assumed; without the one of the jar its density is.
  const assumed = (told: Told): string =>
    JSON.stringify(lineageFigures(familyOf([told]), 1).filter(({ name }) => name.startsWith('Doublings')));
  const told: Told = { key: 1, countPerMl: 3.39e8, finalVolumeMl: 1, from: [{ source: 1, countDirect: 84 }] };
  expect(assumed(told)).not.toContain('assumed');
  expect(assumed({ ...told, countPerMl: null })).toContain('assumed');
});

// Topping up: 3 tbsp at 2e8 per mL bring 8.9e9 and ten tablets of 1e8 bring 1e9, about
// a tenth of the inoculum (arithmetic).
it('shows how little topping up with tablets brings', () => {
  const family = familyOf([
    { key: 1, from: [{ source: 1, pieces: 10, countPerPiece: 1e8 }] },
    {
      key: 2,
      from: [
        { fromJar: 1, volumeMl: 3 * TABLESPOON_ML },
        { source: 1, pieces: 10, countPerPiece: 1e8 },
      ],
    },
  ]);
  const [seed, tablets] = [...family.sharesOf(2).values()] as [number, number];
  expect(family.basisOf(2)).toBe('count');
  expect(seed / tablets).toBeCloseTo((3 * TABLESPOON_ML * 2e8) / 1e9, 12);
  expect(tablets).toBeCloseTo(0.101, 3);
});

// Founder shares on a mixture graph. The graph and its answers were worked out by hand for this purpose (not published);
// A and B are sources, so that they count as generation 0.
const MIXED: Told[] = [
  { key: 3, label: 'C', from: [{ source: 1, volumeMl: 1 }] },
  { key: 4, label: 'D', from: [{ fromJar: 3, volumeMl: 2 }, { source: 2, volumeMl: 1 }] },
  { key: 5, label: 'E', from: [{ fromJar: 4, volumeMl: 1 }] },
  { key: 6, label: 'F', from: [{ fromJar: 5, volumeMl: 1 }, { fromJar: 3, volumeMl: 1 }] },
  { key: 7, label: 'G', from: [{ fromJar: 6, volumeMl: 3 }, { source: 2, volumeMl: 1 }] },
]; // prettier-ignore

it.each([
  ['C', 3, 1, 0, 1, 1, 1, 1],
  ['D', 4, 2 / 3, 1 / 3, 1, 2, 5 / 3, 2],
  ['E', 5, 2 / 3, 1 / 3, 2, 3, 8 / 3, 2],
  ['F', 6, 5 / 6, 1 / 6, 2, 4, 17 / 6, 3],
  ['G', 7, 5 / 8, 3 / 8, 1, 5, 25 / 8, 4],
])(
  'founder shares, generations and paths of %s',
  (_, key, fromA, fromB, shallowest, deepest, mean, paths) => {
    const family = familyOf(MIXED, [{ key: 1 }, { key: 2 }]);
    const traced = new Map(family.tracedSharesOf(key).map(({ source, share }) => [source, share]));
    expect(traced.get(1) ?? 0).toBeCloseTo(fromA, 12);
    expect(traced.get(2) ?? 0).toBeCloseTo(fromB, 12);
    const generation = family.generationOf(key);
    expect([generation.shallowest, generation.deepest]).toEqual([shallowest, deepest]);
    expect(generation.mean).toBeCloseTo(mean, 12);
    expect(countPaths(family, key)).toBe(paths);
  },
);

// Wright 1922, Am Nat 56:330-338 (the formula from memory): each path between two parents through a common ancestor
// weighs (1/2)^n, n the individuals on it. A jar half from each of two seeds is that same half, so the share of one
// ancestor in a jar is the sum over paths of (1/2)^steps. Worked values for uncle-niece (two loops of five members:
// 0.5^4 + 0.5^4 = 12.5 %) and first cousins (1/16) as published for pedigrees.
const half = (key: number, ...parents: readonly [number, number]): Told => ({
  key,
  from: parents.map((fromJar) => ({ fromJar, volumeMl: 1 })),
});
const founder = (key: number): Told => ({ key, from: [{ source: key, volumeMl: 1 }] });

/** Σ over common founders of the product of the two traced shares × 1/2: Wright's F for founders unrelated to each other. */
function sharedByDescent(family: Family, a: number, b: number): number {
  const ofB = new Map(family.tracedSharesOf(b).map(({ source, share }) => [source, share]));
  return sumOf(
    family.tracedSharesOf(a).map(({ source, share }) => (share * (ofB.get(source as number) ?? 0)) / 2),
  );
}

it.each([
  ['half sibs', [half(11, 1, 2), half(12, 1, 3)], 11, 12, 1 / 8],
  ['full sibs', [half(11, 1, 2), half(12, 1, 2)], 11, 12, 1 / 4],
  ['uncle and niece', [half(11, 1, 2), half(12, 1, 2), half(13, 12, 3)], 11, 13, 1 / 8],
  ['first cousins', [half(11, 1, 2), half(12, 1, 2), half(13, 11, 3), half(14, 12, 4)], 13, 14, 1 / 16],
])('path counting: traced shares give Wright’s coefficient for %s', (_, jars, a, b, expected) => {
  const founders = [1, 2, 3, 4].map(founder);
  const family = familyOf(
    [...founders, ...jars],
    [1, 2, 3, 4].map((key) => ({ key, culture: true })),
  );
  expect(sharedByDescent(family, a, b)).toBeCloseTo(expected, 12);
});

// The keeper's own example: 1 % of generation 9 in fresh pieces is deepest 10, mean 1.1 (arithmetic: 0.01 × 10 + 0.99).
it('tells the deepest from the mean where a little of an old jar goes into a fresh start', () => {
  const old: Told[] = Array.from({ length: 9 }, (_, i) => ({
    key: i + 1,
    from: [i === 0 ? { source: 1, pieces: 10, countPerPiece: 1e8 } : { fromJar: i, volumeMl: 40 }],
  }));
  const family = familyOf([
    ...old,
    { key: 10, from: [{ fromJar: 9, volumeMl: 1 }, { source: 1, pieces: 99, countPerPiece: 2e8 }] },
  ]); // prettier-ignore
  expect(family.generationOf(10)).toMatchObject({ deepest: 10, shallowest: 1, atLeast: false });
  expect(family.generationOf(10).mean).toBeCloseTo(1.09, 12);
});
