// The seeds on the screen: the verdict's own stands first, whatever the ranking says, and nothing stopped is offered.
import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { inOrder, keyOf, type Ranked } from '../../renderer/vigour/seed-list';
import { cardLines } from '../../core/says/seed-card-says';

const seed = (n: number, allowed: boolean): Ranked => ({
  jar: n === 0 ? null : `jar ${n}`, portion: null, label: `${n}`, kind: n === 0 ? 'fresh start' : 'jar', allowed, discard: null, level: null, stops: [],
  doubts: [], looks: [], cost: 1, weakChance: 0.1, assumed: false, reasons: [], lines: [], wouldChange: '',
}); // prettier-ignore

it('puts the verdict first, then what is as good, then the rest by rank', () => {
  fc.assert(
    fc.property(
      fc.array(fc.boolean(), { minLength: 1, maxLength: 12 }),
      fc.nat(11),
      fc.nat(11),
      (may, one, two) => {
        const ranking = may.map((allowed, n) => seed(n, allowed));
        const named = (n: number) => ranking[n % ranking.length] ?? seed(0, true);
        const [advised, asGood] = [named(one), named(two)];
        const list = inOrder(ranking, { seed: advised, asGood: [asGood] });
        expect(list.every(({ allowed }) => allowed)).toBe(true);
        expect(list.length).toBe(may.filter(Boolean).length);
        if (advised.allowed) expect(list[0]).toBe(advised);
        const rest = list.filter((ranked) => ![keyOf(advised), keyOf(asGood)].includes(keyOf(ranked)));
        expect(rest).toEqual(ranking.filter((ranked) => rest.includes(ranked)));
      },
    ),
  );
});

it('says on a card the deciding thing first, two lines at most, and nothing of chance before what is to be minded', () => {
  const plain = { doubts: [], looks: [], quotes: [], outcomeKnown: true, keptSaid: true, weakChance: 0.14, place: 'fridge', days: 12, lastOf: null, slow: false } as const; // prettier-ignore
  expect(cardLines(plain)).toEqual(['About 14 in 100 jars would come out weak.', 'It is 12 days old.']);
  expect(cardLines({ ...plain, weakChance: 0.01, place: 'freezer', days: 151, slow: true })).toEqual([
    'Hardly any jar would come out weak.',
    'Slow at first: keep to the early check.',
  ]);
  expect(cardLines({ ...plain, doubts: ['A slow start.'], looks: ['Its note says: “odd”.'] })).toEqual([
    'A slow start.',
    'Its note says: “odd”.',
  ]);
  expect(cardLines({ ...plain, days: 21, lastOf: 21 })[0]).toBe(
    'Today is its last day as seed: your limit is 21 days (Preferences).',
  );
  expect(cardLines({ ...plain, outcomeKnown: false, keptSaid: false })[0]).toMatch(
    /^Nobody has written down/,
  );
});
