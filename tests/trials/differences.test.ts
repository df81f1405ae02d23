// What the jars of a batch are compared for, and what else they differ in.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Compared, differenceOf } from '../../core/trials/differences';
import { runs } from '../runs';

const jar = (key: number, more: Partial<Compared> = {}): Compared => ({
  jar: key,
  milk: 'whole milk',
  seed: '1 Mar a',
  additions: [],
  ...more,
});
const some = (name: string, value: number | null = null, unit = 'g') => [
  { name, value, unit: value === null ? null : unit, printed: value === null ? null : `${value} ${unit}` },
];

describe('what jars differ in', () => {
  it('is what was stirred in before the milk, and the seed last', () => {
    const [a, b, c] = [jar(1), jar(2, { additions: some('Oat bran') }), jar(3, { additions: some('acacia fibre') })];
    expect(differenceOf([a, b, c])).toMatchObject({
      what: 'stirred in', also: [], treatments: [{ name: 'plain', plain: true }, { name: 'Oat bran', plain: false }, { name: 'acacia fibre', plain: false }],
    });
    expect(differenceOf([a, { ...b, milk: 'cream', seed: '1 Mar b' }])?.also).toEqual(['milk', 'seed']);
    expect(differenceOf([a, jar(2, { milk: 'cream' })])).toMatchObject({ what: 'milk', also: [] });
    expect(differenceOf([a, jar(2, { seed: '' })])).toMatchObject({ what: 'seed', treatments: [{ name: '1 Mar a' }, { name: 'seed not noted' }] });
  }); // prettier-ignore
  it('is how much, where one thing went in in several amounts of one unit', () => {
    const doses = [jar(1), jar(2, { additions: some('oat bran', 10) }), jar(3, { additions: some('Oat bran', 20) })];
    expect(differenceOf(doses)).toMatchObject({ what: 'amount', of: 'oat bran', treatments: [{ name: 'plain', dose: 0 }, { name: '10 g oat bran', dose: 10 }, { name: '20 g oat bran', dose: 20 }] });
    // One amount beside a plain jar is a matter of whether; so are amounts that nobody noted, or in units that don't compare.
    expect(differenceOf(doses.slice(0, 2))).toMatchObject({ what: 'stirred in' });
    expect(differenceOf([doses[0]!, doses[1]!, jar(3, { additions: some('oat bran') })])).toMatchObject({ what: 'stirred in' });
    expect(differenceOf([doses[1]!, jar(3, { additions: some('oat bran', 20, 'mL') })])).toBeNull();
  }); // prettier-ignore
  it('is nothing where all is noted alike, whatever the jars and however they are ordered', () => {
    const one = fc.record({
      milk: fc.constantFrom(null, 'milk', 'Milk ', 'cream'),
      seed: fc.constantFrom('', '1 Mar a'),
      name: fc.constantFrom(null, 'oat bran', 'Oat bran'),
      value: fc.constantFrom(null, 5, 10),
    });
    fc.assert(
      fc.property(fc.array(one, { minLength: 1, maxLength: 5 }), (given) => {
        const jars = given.map(({ milk, seed, name, value }, key) =>
          jar(key, { milk, seed, additions: name === null ? [] : some(name, value) }),
        );
        const found = differenceOf(jars);
        const turned = differenceOf(jars.toReversed());
        expect([turned?.what, turned?.also]).toEqual([found?.what, found?.also]);
        if (found === null) return;
        // Every jar is named, not all alike, and nothing is both compared and said to differ as well.
        expect(found.treatments.map((treated) => treated.jar)).toEqual(jars.map((compared) => compared.jar));
        expect(new Set(found.treatments.map(({ name }) => name.toLowerCase())).size).toBeGreaterThan(1);
        expect(found.also).not.toContain(found.what);
      }),
      { numRuns: runs(200) },
    );
    expect(differenceOf([jar(1), jar(2)])).toBeNull();
  });
});
