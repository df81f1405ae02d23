// What must hold for every family, tried on many small invented ones (fast-check prints the seed of a failure).
import * as fc from 'fast-check';
import { expect, it, vi } from 'vitest';
import { FamilyColumns } from '../../core/lineage/counting';
import { buildFamily, changeFamily, FamilyRefused, type FamilyChange } from '../../core/lineage/family';
import type { FamilyRecords } from '../../core/lineage/lineage-shapes';
import { primarySeed } from '../../core/lineage/primary-seed';
import { wayBack } from '../../core/says/way-to-source';
import { dayAfter, plainJar, plainSeeding, plainSource, seededNumbers, syntheticFamily } from '../families';
import { answers, sumOf } from './short-families';
import { UNSEEN, type JarSafety } from '../../core/shapes/safety-codes';
import { runs } from '../runs';

const amount = fc.option(fc.double({ min: 0, max: 1e6, noNaN: true }), { nil: null });
const density = fc.option(fc.double({ min: 1, max: 1e12, noNaN: true }), { nil: null });

const jarDraw = fc.record({
  seeds: fc.array(
    fc.record({
      pick: fc.nat(),
      kind: fc.constantFrom('jar', 'jar', 'jar', 'source', 'missing'),
      volumeMl: amount,
      pieces: amount,
      countPerPiece: density,
      countDirect: fc.option(density, { nil: null, freq: 1 }),
    }),
    { maxLength: 4 },
  ),
  sameBatch: fc.boolean(),
  lost: fc.constantFrom(false, false, false, true),
  spoiled: fc.constantFrom(false, false, false, true),
  openedDays: fc.option(fc.nat(20), { nil: null }),
  notSet: fc.boolean(),
  clean: fc.boolean(),
  hold: fc.option(fc.nat(2), { nil: null }),
  packages: fc.uniqueArray(fc.integer({ min: 1, max: 3 }), { maxLength: 2 }),
  countPerMl: density,
  finalVolumeMl: amount,
});

/** What was seen of a drawn jar: its sign at take-out or after opening, or that it only did not set; else whether it was clean. */
const safetyDrawn = ({ spoiled, openedDays, notSet, clean, batch }: { spoiled: boolean; openedDays: number | null; notSet: boolean; clean: boolean; batch: number }): JarSafety => ({
  ...UNSEEN,
  discard: spoiled ? (notSet ? 'not set' : 'spoiled') : null,
  clean: clean && !spoiled,
  opened: spoiled && !notSet && openedDays !== null ? { signOn: dayAfter(batch + 2 + openedDays), openedOn: dayAfter(batch + 2) } : null,
}); // prettier-ignore

/** A family whose jars come in order of key, every seed before what it seeded. */
const family = fc.array(jarDraw, { minLength: 1, maxLength: 16 }).map((draws): FamilyRecords => {
  let batch = 0;
  let seedingKey = 0;
  const seedings: FamilyRecords['seedings'][number][] = [];
  const jars = draws.map((draw, i) => {
    const key = i + 1;
    if (!draw.sameBatch || batch === 0) batch++;
    for (const seed of draw.seeds) {
      const source = seed.kind === 'source' || i === 0 ? 1 + (seed.pick % 3) : null;
      const fromJar = source !== null ? null : seed.kind === 'missing' ? 1000 : 1 + (seed.pick % i);
      seedings.push(
        plainSeeding({
          key: ++seedingKey,
          jar: key,
          source,
          fromJar,
          volumeMl: seed.volumeMl,
          pieces: seed.pieces,
          countPerPiece: source === null ? null : seed.countPerPiece,
          countDirect: seed.countDirect,
        }),
      );
    }
    return plainJar({
      key,
      batch,
      madeOn: dayAfter(batch),
      lost: draw.lost,
      spoiled: draw.spoiled,
      safety: safetyDrawn({ ...draw, batch }),
      hold: draw.hold === null ? null : batch * 10 + draw.hold,
      packages: draw.packages,
      countPerMl: draw.countPerMl,
      finalVolumeMl: draw.finalVolumeMl,
    });
  });
  const sources = [
    plainSource({ key: 1 }),
    plainSource({ key: 2, culture: true }),
    plainSource({ key: 3, culture: true, knownGenerations: 7 }),
  ];
  return { jars, seedings, sources, clearings: [] };
});

const shuffled = <T>(list: readonly T[], seed: number): T[] => {
  const random = seededNumbers(seed);
  return list
    .map((value) => [random(), value] as const)
    .toSorted((a, b) => a[0] - b[0])
    .map(([, value]) => value);
};

/** The same with every jar made on one day, so that no change is refused for its date. */
const onOneDay = (records: FamilyRecords): FamilyRecords => ({
  ...records,
  jars: records.jars.map((jar) => ({ ...jar, madeOn: '2025-10-15' })),
});

it('shares of a jar, and its traced shares, sum to 1', () => {
  fc.assert(
    fc.property(family, (records) => {
      const built = buildFamily(records);
      for (const key of built.keys) {
        if (built.seedsOf(key).length > 0) {
          expect(Math.abs(sumOf(built.sharesOf(key).values()) - 1)).toBeLessThan(1e-12);
        }
        expect(Math.abs(sumOf(built.tracedSharesOf(key).map(({ share }) => share)) - 1)).toBeLessThan(1e-12);
      }
    }),
  );
});

it('keeps traced shares summing to 1 over a line of 20,000 mixtures', () => {
  const jars = Array.from({ length: 20_000 }, (_, i) => plainJar({ key: i + 1 }));
  const seedings = jars.flatMap(({ key }) => [
    key === 1 ? plainSeeding({ key: 1, jar: 1, source: 1, volumeMl: 1 }) : plainSeeding({ key: key * 2, jar: key, fromJar: key - 1, volumeMl: 3 }),
    plainSeeding({ key: key * 2 + 1, jar: key, source: 1 + (key % 3), volumeMl: 0.1 }),
  ]); // prettier-ignore
  const sources = [1, 2, 3].map((key) => plainSource({ key, culture: true }));
  const built = buildFamily({ jars, seedings, sources, clearings: [] });
  expect(Math.abs(sumOf(built.tracedSharesOf(20_000).map(({ share }) => share)) - 1)).toBeLessThan(1e-12);
});

it('the order of the records makes no difference, nor does recording jar by jar in any seeds-first order', () => {
  fc.assert(
    fc.property(family, fc.nat(), (records, seed) => {
      const built = answers(buildFamily(records));
      const other = {
        ...records,
        jars: shuffled(records.jars, seed),
        seedings: shuffled(records.seedings, seed + 1),
      };
      expect(answers(buildFamily(other))).toEqual(built);
      // One jar at a time; a jar comes when all its seeds that will ever come are there.
      let grown = buildFamily({ ...records, jars: [], seedings: [] });
      let waiting = other.jars;
      while (waiting.length > 0) {
        const next = waiting.find((jar) =>
          records.seedings.every(
            (s) => s.jar !== jar.key || s.fromJar === null || s.fromJar === 1000 || grown.has(s.fromJar),
          ),
        );
        if (!next) throw new Error('the records are not seeds-first');
        const seedings = records.seedings.filter((s) => s.jar === next.key);
        grown = changeFamily(grown, { jars: [next], seedings: [{ jar: next.key, seedings }] }).family;
        waiting = waiting.filter((jar) => jar !== next);
      }
      expect(answers(grown)).toEqual(built);
    }),
  );
});

it('adding a leaf changes no other jar', () => {
  fc.assert(
    fc.property(family, fc.nat(), (records, pick) => {
      const before = buildFamily(records);
      const seed = 1 + (pick % records.jars.length);
      const leaf = plainJar({ key: 99, batch: 999, madeOn: '2099-01-01' });
      const seedings = [plainSeeding({ key: 999, jar: 99, fromJar: seed, volumeMl: 5 })];
      const after = changeFamily(before, { jars: [leaf], seedings: [{ jar: 99, seedings }] });
      expect(after.touched).toEqual([99]);
      const [was, is] = [answers(before), answers(after.family)];
      for (const [key, answer] of was) {
        const children = key === seed ? { children: expect.anything() } : {};
        expect(is.get(key)).toEqual({ ...(answer as object), ...children });
      }
    }),
  );
});

it('back-filling a seed changes exactly its descendants', () => {
  fc.assert(
    fc.property(family, fc.nat(), (records, pick) => {
      const spotless = {
        ...records,
        jars: records.jars.map((jar) => ({ ...jar, spoiled: false, lost: false })),
      };
      const before = buildFamily(spotless);
      const jar = records.jars[pick % records.jars.length]!.key;
      // A seed that nothing else has: a culture at a generation that moves every count.
      const seedings = [plainSeeding({ key: 999, jar, source: 9, volumeMl: 5 })];
      const after = changeFamily(before, {
        sources: [plainSource({ key: 9, culture: true, knownGenerations: 5000 })],
        seedings: [{ jar, seedings: [...before.seedsOf(jar), ...seedings] }],
      });
      expect(after.touched).toEqual([jar, ...before.descendantsOf(jar)].toSorted((a, b) => a - b));
      const [was, is] = [answers(before), answers(after.family)];
      const touched = new Set(after.touched);
      for (const [key, answer] of was) {
        if (touched.has(key)) expect(is.get(key)).not.toEqual(answer);
        else expect(is.get(key)).toEqual(answer);
      }
    }),
  );
});

/** Every jar whose answers differ between two versions, or that only one of them has. */
function differing(a: Map<number, unknown>, b: Map<number, unknown>): number[] {
  return [...new Set([...a.keys(), ...b.keys()])].filter(
    (key) => JSON.stringify(a.get(key)) !== JSON.stringify(b.get(key)),
  );
}

/** Record and counts alone: cautions are asked of a version as a whole. */
const counted = (all: Map<number, unknown>): Map<number, unknown> =>
  new Map([...all].map(([key, answer]) => [key, { ...(answer as object), children: null, cautions: null, level: null }])); // prettier-ignore

it('the way back is counted as it is walked', () => {
  fc.assert(
    fc.property(family, (records) => {
      const built = buildFamily(records);
      const { columns } = built;
      for (const key of built.keys) {
        const way: number[] = [];
        for (let slot = columns.slot(key); slot >= 0; slot = primarySeed(columns, slot)) way.push(slot);
        const seeded = way.slice(0, -1);
        const mixed = seeded.filter((slot, i) =>
          columns.seedSlots[slot]?.some((seed) => seed !== way[i + 1]),
        );
        const slot = columns.slot(key);
        expect([columns.wayLength[slot], columns.wayMixed[slot], columns.wayFirst[slot]]).toEqual([
          seeded.length,
          mixed.length,
          seeded.at(-1) ?? -1,
        ]);
      }
    }),
  );
});

it('a changed family equals a rebuilt one, and names every jar whose record or counts came out different', () => {
  fc.assert(
    fc.property(
      family.map(onOneDay),
      family.map(onOneDay),
      fc.array(fc.nat(), { minLength: 1, maxLength: 4 }),
      (records, donor, picks) => {
        let known = records;
        let grown = buildFamily(records);
        for (const [turn, pick] of picks.entries()) {
          const key = 1 + (pick % 16);
          const before = grown;
          const jar = donor.jars.find((one) => one.key === key);
          let change: FamilyChange;
          if (pick % 3 === 0 || !jar) {
          change = { gone: [key] };
          known = {
            ...known,
            jars: known.jars.filter((one) => one.key !== key),
            seedings: known.seedings.filter((one) => one.jar !== key),
          };
        } else {
          const seedings = donor.seedings.filter((one) => one.jar === key).map((one) => ({ ...one, key: one.key + 1000 * (turn + 1) }));
          const clearings = [{ jar: key, of: 1 + (pick % 5), reason: 'looked at it' }];
          change = { jars: [jar], seedings: [{ jar: key, seedings }], clearings };
          known = {
            ...known,
            jars: [...known.jars.filter((one) => one.key !== key), jar],
            seedings: [...known.seedings.filter((one) => one.jar !== key), ...seedings],
            clearings,
          };
        } // prettier-ignore
          const changed = changeFamily(before, change);
          const is = answers(changed.family);
          const rebuilt = buildFamily(known);
          expect(is).toEqual(answers(rebuilt));
          for (const key of rebuilt.keys) expect(wayBack(changed.family, key)).toBe(wayBack(rebuilt, key));
          const touched = new Set(changed.touched);
          for (const key of differing(counted(answers(before)), counted(is))) {
            expect(touched.has(key), `jar ${key} changed and is not named`).toBe(true);
          }
          grown = changed.family;
        }
      },
    ),
    { numRuns: runs(150) },
  );
});

it('leaves the version it started from as it was', () => {
  fc.assert(
    fc.property(family, fc.nat(), (records, pick) => {
      const before = buildFamily(records);
      const was = structuredClone(answers(before));
      changeFamily(before, { gone: [1 + (pick % records.jars.length)] });
      changeFamily(before, { jars: [plainJar({ key: 77, spoiled: true })], seedings: [] });
      expect(answers(before)).toEqual(was);
    }),
  );
});

it('every version answers as one built for itself, in whatever order they are made and asked', () => {
  fc.assert(
    fc.property(
      family.map(onOneDay),
      family.map(onOneDay),
      fc.array(fc.tuple(fc.nat(), fc.nat(), fc.boolean()), { minLength: 1, maxLength: 6 }),
      fc.array(fc.nat(), { maxLength: 12 }),
      (records, donor, changes, asks) => {
        const versions = [{ built: buildFamily(records), known: records }];
        for (const [from, pick, goes] of changes) {
          const { built, known } = versions[from % versions.length]!;
          const key = 1 + (pick % 17);
          const jar = donor.jars.find((one) => one.key === key);
          const jars = known.jars.filter((one) => one.key !== key);
          const rest = known.seedings.filter((one) => one.jar !== key);
          if (goes || !jar) {
            const after = changeFamily(built, { gone: [key] }).family;
            versions.push({ built: after, known: { ...known, jars, seedings: rest } });
            continue;
          }
          const seedings = donor.seedings
            .filter((one) => one.jar === key)
            .map((one) => ({ ...one, key: one.key + 1000 * versions.length }));
          const sources = [plainSource({ key: 2, culture: true, knownGenerations: pick })];
          const after = changeFamily(built, { sources, jars: [jar], seedings: [{ jar: key, seedings }] });
          versions.push({
            built: after.family,
            known: {
              ...known,
              sources: [...known.sources.filter((one) => one.key !== 2), ...sources],
              jars: [...jars, jar],
              seedings: [...rest, ...seedings],
            },
          });
        }
        for (const ask of [...asks, ...versions.keys()]) {
          const { built, known } = versions[ask % versions.length]!;
          expect(answers(built)).toEqual(answers(buildFamily(known)));
        }
      },
    ),
    { numRuns: runs(100) },
  );
});

it('a refused change leaves nothing behind, however much of it was written', () => {
  fc.assert(
    fc.property(family.map(onOneDay), fc.nat(), fc.nat(), (records, a, b) => {
      const before = buildFamily(records);
      const of = (pick: number): number => 1 + (pick % records.jars.length);
      const jars = [
        plainJar({ key: 77, spoiled: true, madeOn: '2025-10-15' }),
        { ...records.jars[of(a) - 1]!, spoiled: true, countPerMl: 5 },
      ];
      const loop = [
        plainSeeding({ key: 997, jar: 77, fromJar: of(a), volumeMl: 1 }),
        plainSeeding({ key: 998, jar: of(a), fromJar: 77, volumeMl: 1 }),
      ];
      const change: FamilyChange = {
        sources: [plainSource({ key: 2, culture: true, knownGenerations: 5000 })],
        gone: of(b) === of(a) ? [] : [of(b)],
        jars,
        seedings: loop.map((one) => ({ jar: one.jar, seedings: [one] })),
      };
      expect(() => changeFamily(before, change)).toThrow(FamilyRefused);
      // Asked for the first time only now, so that no answer of before is at hand.
      expect(answers(before)).toEqual(answers(buildFamily(records)));
      expect(answers(changeFamily(before, { jars }).family)).toEqual(
        answers(
          buildFamily({ ...records, jars: [...records.jars.filter((one) => one.key !== of(a)), ...jars] }),
        ),
      );
    }),
  );
});

it('a leaf writes its own row and its seed’s, however large the family', () => {
  const put = vi.spyOn(FamilyColumns.prototype, 'exchange');
  for (const jars of [10, 20_000]) {
    const before = buildFamily(syntheticFamily({ jars, shape: 'line' }));
    const leaf = plainJar({ key: jars + 1, batch: jars + 1, madeOn: '2999-01-01' });
    const seedings = [plainSeeding({ key: 10 * jars, jar: leaf.key, fromJar: jars, volumeMl: 5 })];
    const after = changeFamily(before, { jars: [leaf], seedings: [{ jar: leaf.key, seedings }] }).family;
    put.mockClear();
    expect([after.has(leaf.key), before.has(leaf.key)]).toEqual([true, false]);
    expect(put.mock.calls.map(([rows]) => rows.size)).toEqual([2]);
  }
  put.mockRestore();
});

it('no cycle can enter', () => {
  fc.assert(
    fc.property(family, fc.nat(), fc.nat(), (records, a, b) => {
      const before = buildFamily(onOneDay(records));
      const jar = 1 + (a % records.jars.length);
      const seed = 1 + (b % records.jars.length);
      const seedings = [...before.seedsOf(jar), plainSeeding({ key: 999, jar, fromJar: seed, volumeMl: 1 })];
      const refused = jar === seed || before.ancestorsOf(seed).includes(jar);
      const change = (): unknown => changeFamily(before, { seedings: [{ jar, seedings }] });
      if (refused) expect(change).toThrow(FamilyRefused);
      else expect(change).not.toThrow();
    }),
  );
});

it('walks and counts a line of 100,000 jars without recursion', () => {
  const built = buildFamily(syntheticFamily({ jars: 100_000, shape: 'line' }));
  expect(built.generationOf(100_000)).toEqual({
    deepest: 100_000,
    shallowest: 100_000,
    mean: 100_000,
    atLeast: false,
  });
  expect(built.ancestorsOf(100_000)).toHaveLength(99_999);
  expect(built.descendantsOf(1)).toHaveLength(99_999);
  expect(built.lines).toEqual([{ batch: 1, founded: '2000-01-01', founders: [1], jarCount: 100_000 }]);
});

it('the generator gives the same family for the same seed, of exactly the size asked for', () => {
  const shape = { jars: 1000, shape: 'bushy', seed: 5 } as const;
  expect(syntheticFamily(shape)).toEqual(syntheticFamily(shape));
  expect(syntheticFamily(shape).jars).toHaveLength(1000);
  expect(syntheticFamily({ ...shape, seed: 6 })).not.toEqual(syntheticFamily(shape));
});
