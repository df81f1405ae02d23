// The nearest marked jar on a way back: all at once must be what each way back tells by itself.
import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { buildFamily } from '../../core/lineage/family';
import { nearestMarks } from '../../core/safety/marked-line';
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
      // Seedings between a jar and what it descends from, counted by hand.
      const steps = (jar: number, to: number): number => {
        const parents = family.seedsOf(jar).flatMap(({ fromJar }) => (fromJar === null ? [] : [fromJar]));
        return parents.includes(to) ? 1 : 1 + Math.min(Infinity, ...parents.map((parent) => steps(parent, to)));
      };
      for (const jar of family.keys) {
        const above = [...marks.keys()].map((mark) => steps(jar, mark)).filter(Number.isFinite);
        const mark = found.get(jar);
        expect(mark === undefined ? null : steps(jar, mark)).toBe(above.length === 0 ? null : Math.min(...above));
        if (mark !== undefined) met += 1;
      }
    }),
    { numRuns: 300 },
  );
  expect(met).toBeGreaterThan(50);
}); // prettier-ignore
