// The nearest marked jar on a way back: all at once must be what each way back tells by itself.
import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { buildFamily } from '../../core/lineage/family';
import { nearestMarks } from '../../core/safety/marked-line';
import { UNSEEN } from '../../core/shapes/safety-codes';
import type { InShort } from '../../core/shapes/seed-codes';
import { wayBackOf } from '../../core/safety/way-back';
import { tell, type Told } from '../lineage/short-families';

it('is found for every jar (property: any family, any marks)', () => {
  const oneJar = fc.record({ seeds: fc.array(fc.nat(), { maxLength: 2 }), marked: fc.integer({ min: 0, max: 3 }) });
  let met = 0;
  fc.assert(
    fc.property(fc.array(oneJar, { minLength: 2, maxLength: 16 }), (those) => {
      const told = those.map(({ seeds }, i): Told => ({
        key: i + 1, batch: i + 1,
        from: i === 0 || seeds.length === 0 ? [{ source: 1 }] : [...new Set(seeds.map((seed) => (seed % i) + 1))].map((fromJar) => ({ fromJar })),
      }));
      const family = buildFamily(tell(told));
      const marks = new Map(those.flatMap(({ marked }, i) => (marked === 0 ? [[i + 1, i + 1] as const] : [])));
      const found = nearestMarks(family, marks);
      const near = nearestMarks(family, marks, (_mark, _jar, run) => (run < 2 ? run + 1 : null));
      // Seedings between a jar and what it descends from, counted by hand.
      const steps = (jar: number, to: number): number => {
        const parents = family.seedsOf(jar).flatMap(({ fromJar }) => (fromJar === null ? [] : [fromJar]));
        return parents.includes(to) ? 1 : 1 + Math.min(Infinity, ...parents.map((parent) => steps(parent, to)));
      };
      for (const jar of family.keys) {
        const above = [...marks.keys()].map((mark) => steps(jar, mark)).filter(Number.isFinite);
        const mark = found.get(jar);
        expect(mark === undefined ? null : steps(jar, mark)).toBe(above.length === 0 ? null : Math.min(...above));
        // Handed on for two generations alone, it is told of those and of no later one.
        expect(near.has(jar)).toBe(above.length > 0 && Math.min(...above) <= 2);
        if (mark !== undefined) met += 1;
      }
    }),
    { numRuns: 300 },
  );
  expect(met).toBeGreaterThan(50);
}); // prettier-ignore

/** Mates 2 and 3 of one hold; 3 seeded 4, that 5, and so on to 8. */
const line = (more: (key: number) => Partial<Told>): Told[] => [
  { key: 1, batch: 1, hold: 1, from: [{ source: 1 }] },
  { key: 2, batch: 2, hold: 2, from: [{ fromJar: 1 }], ...more(2) },
  { key: 3, batch: 2, hold: 2, from: [{ fromJar: 1 }], ...more(3) },
  ...[4, 5, 6, 7, 8].map((key): Told => ({ key, batch: key, hold: key, from: [{ fromJar: key - 1 }], ...more(key) })), // prettier-ignore
];

it.each([
  ['a power cut: nobody saw two clean generations', [4, 6], { code: 'power cut', hours: 3 }, [4, 5, 6, 7, 8]],
  ['a power cut: two in a row passed the gate and were seen clean again', [5, 6], { code: 'power cut', hours: 3 }, [4, 5]],
  ['a pH above 4.6, likewise', [4, 5], { code: 'acid', ph: 4.9, how: 'meter' }, [4]],
  ['a slow start: it never ends by itself', [4, 5, 6], { code: 'slow start', kind: 'look', hours: 12, ph: null, loose: false, sourless: true }, [4, 5, 6, 7, 8]],
] as const)('a doubt is handed down: %s', (_why, clean, because, told) => {
  const seen = (key: number): Partial<Told> => ((clean as readonly number[]).includes(key) ? { safety: { ...UNSEEN, gate: 'passed', clean: true } } : {});
  const family = buildFamily(tell(line(seen)));
  const { looks } = wayBackOf(family, new Map([[3, { jar: 3, label: 'jar 3', because: [because as InShort] }]]));
  expect(family.keys.filter((key) => looks(key).some(({ code }) => code === 'descends from doubt'))).toEqual(told);
}); // prettier-ignore

it('a caution lifted on a mate is lifted on all that descends from it, and is told for two generations', () => {
  const family = buildFamily({
    ...tell(line((key) => (key === 2 ? { spoiled: true } : {}))),
    clearings: [{ jar: 3, of: 2, reason: 'Looked at under a glass: lint.', outdated: false }],
  });
  expect([3, 4, 5, 6, 7, 8].map((key) => family.cautionLevelOf(key))).toEqual([null, null, null, null, null, null]); // prettier-ignore
  const { looks } = wayBackOf(family, new Map());
  expect([3, 4, 5, 6, 7, 8].filter((key) => looks(key).some(({ code }) => code === 'lifted'))).toEqual([3, 4, 5]); // prettier-ignore
});
