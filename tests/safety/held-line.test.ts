// Which jars a hold touches: all at once must be what each tells by itself.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildFamily } from '../../core/lineage/family';
import { heldAncestor, heldJars, holdSentence } from '../../core/safety/held-line';
import { familyOf, tell, type Told } from '../lineage/helpers';

/** Batch-mates 2 and 3 of one bath, 3 spoiled; 4 from 2, 5 from 4. */
const MATES: Told[] = [
  { key: 1, batch: 1, from: [{ source: 1 }] },
  { key: 2, batch: 2, hold: 2, label: '1 Apr b', from: [{ fromJar: 1 }] },
  { key: 3, batch: 2, hold: 2, label: '1 Apr c', spoiled: true, from: [{ fromJar: 1 }] },
  { key: 4, batch: 4, from: [{ fromJar: 2 }] },
  { key: 5, batch: 5, from: [{ fromJar: 4 }] },
];

describe('a hold', () => {
  it('touches the jar itself and, unchained as cautions are, all that descends from it', () => {
    expect([...heldJars(familyOf(MATES))].toSorted()).toEqual([
      [2, 'on hold'],
      [4, 'held line'],
      [5, 'held line'],
    ]);
    expect(holdSentence(familyOf(MATES), 2)).toBe(
      'It is on hold: from the same batch, kept warm together (1 Apr c).',
    );
    expect(holdSentence(familyOf(MATES), 4)).toBeNull();
  });
  it('touches nothing once it is lifted, nor where nothing is spoiled', () => {
    const lifted = { ...tell(MATES), clearings: [{ jar: 2, of: 3, reason: 'It stood in another bath.' }] };
    expect(heldJars(buildFamily(lifted)).size).toBe(0);
    expect(heldJars(familyOf(MATES.map((jar) => ({ ...jar, spoiled: false })))).size).toBe(0);
  });

  it('is for every jar what that jar tells by itself (property: any family, spoiled jars and lifted holds)', () => {
    const oneJar = fc.record({ seeds: fc.array(fc.nat(), { minLength: 0, maxLength: 2 }), batch: fc.integer({ min: 0, max: 2 }), spoiled: fc.integer({ min: 0, max: 5 }) });
    const clearing = fc.record({ jar: fc.nat(), of: fc.nat() });
    let met = 0;
    fc.assert(
      fc.property(fc.array(oneJar, { minLength: 2, maxLength: 14 }), fc.array(clearing, { maxLength: 6 }), (those, lifted) => {
        const told = those.map(({ seeds, batch, spoiled }, i): Told => ({
          key: i + 1, batch: Math.max(1, i + 1 - batch), hold: null, spoiled: spoiled === 0,
          from: i === 0 || seeds.length === 0 ? [{ source: 1 }] : [...new Set(seeds.map((seed) => (seed % i) + 1))].map((fromJar) => ({ fromJar })),
        }));
        const key = (n: number): number => (n % told.length) + 1;
        const clearings = lifted.map((one) => ({ jar: key(one.jar), of: key(one.of), reason: 'Looked into.' }));
        const family = buildFamily({ ...tell(told), clearings });
        const found = heldJars(family);
        for (const jar of family.keys) {
          const own = family.cautionLevelOf(jar);
          const expected = own === 'on hold' ? 'on hold' : heldAncestor(family, jar) === null ? null : 'held line';
          if (expected === 'held line') met += 1;
          expect(found.get(jar) ?? null).toBe(expected);
        }
      }),
      { numRuns: 400 },
    );
    expect(met).toBeGreaterThan(50);
  }); // prettier-ignore
});
