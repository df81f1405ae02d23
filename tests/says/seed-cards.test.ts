// Cards of seeds side by side: what all of them share is said once, and nothing is lost by it.
import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { cardsBeside } from '../../core/says/seed-card-says';

const line = fc.constantFrom(
  'Look at it first.',
  'Nobody has said it.',
  'It is 3 days old.',
  'Its note says: “x”.',
);
const seed = fc.record({
  jar: fc.option(fc.constantFrom('a', 'b', 'c'), { freq: 4 }),
  doubts: fc.subarray(['Look at it first.']),
  lines: fc.uniqueArray(line, { maxLength: 3 }),
  weakChance: fc.option(fc.double({ min: 0, max: 1, noNaN: true })),
});

it('each line of a card stands on it still or above all of them, a doubt on its card', () => {
  fc.assert(
    fc.property(fc.array(seed, { maxLength: 5 }), (ranked) => {
      const { shared, lines } = cardsBeside(ranked);
      ranked.forEach((one, at) => {
        const own = lines[at] ?? [];
        for (const said of one.lines) expect([...own, ...shared]).toContain(said);
        if (one.jar === null) expect(own).toEqual(one.lines);
        else for (const said of shared) expect(own).not.toContain(said);
      });
      const seeds = ranked.filter(({ jar }) => jar !== null);
      if (seeds.length < 2) expect(shared).toEqual([]);
      for (const said of seeds.flatMap(({ doubts }) => doubts)) expect(shared).not.toContain(said);
    }),
  );
});

it('a card leads with what fewest others say, after its doubts', () => {
  const card = (jar: string, lines: readonly string[], doubts: readonly string[] = []) => ({ jar, doubts, lines, weakChance: null });
  const stood = (days: number): string => `It has stood in the fridge for ${days} days.`;
  const { shared, lines } = cardsBeside([
    card('a', [stood(26), 'Its note says: “grainy”.']),
    card('b', [stood(24), 'It is a twin.']),
    card('c', ['The power failed.', stood(23)], ['The power failed.']),
    card('d', [stood(22)]),
  ]);
  expect(shared).toEqual([]);
  expect(lines.map(([first]) => first)).toEqual(['Its note says: “grainy”.', 'It is a twin.', 'The power failed.', stood(22)]);
}); // prettier-ignore

it('a card that shares everything leads with its chance', () => {
  const all = ['Look at it first.', 'Nobody has said it.'];
  const card = (jar: string, weakChance: number) => ({ jar, doubts: [], lines: all, weakChance });
  const { shared, lines } = cardsBeside([card('a', 0.09), card('b', 0.31)]);
  expect(shared).toEqual(all);
  expect(lines).toEqual([
    ['About 9 in 100 jars would come out weak.'],
    ['About 31 in 100 jars would come out weak.'],
  ]);
});
