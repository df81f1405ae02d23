// What the records say themselves asks nobody: a cell that was read whole asks no remark, of a cell that was read in part the rest does.
import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { remarksOfPlan } from '../../core/notes/notes-door';
import { leftInWords } from '../../core/safety/in-words';
import { read } from './read';

/** Cells that are read whole, as keepers write them in English and German, by what their column tells. */
const WHOLE: Readonly<Record<string, readonly (readonly [headings: readonly string[], cells: readonly string[]])[]>> = {
  English: [
    [['Set', 'Texture', 'How did it set?'], ['firm', 'Very firm', 'soft.', 'thick', 'set hard', 'thick and creamy', 'not set', 'runny']],
    [['Whey'], ['none', 'a little', 'a bit of whey', 'some', 'lots', 'a lot', 'no whey', 'not much', 'very little']],
    [['Tang'], ['mild', 'slightly sour', 'very tangy', 'sharp', 'tangy', 'not sour']],
    [['Start'], ['7pm', 'Sat 7 pm', '4 Jan 19:00', 'Jan 4, 7:00 pm']],
    [['Price'], ['2.10 EUR', '£2.10', '1.99 USD']],
    [['Spoiled'], ['no', 'n', '-']],
    [['Hold'], ['36 h', '36 hours', '1½ d']],
    [['Taste /10'], ['8', '7.5']],
  ],
  German: [
    [['Konsistenz'], ['fest', 'sehr fest', 'weich', 'löffelfest', 'cremig und dick', 'nicht fest']],
    [['Molke'], ['keine', 'keine Molke', 'etwas', 'ein wenig Molke', 'viel', 'sehr viel', 'nicht viel']],
    [['Säure'], ['mild', 'sehr sauer', 'leicht sauer', 'sauer']],
    [['Beginn'], ['19 Uhr', 'Sa 19:00', '4. Jan 19:00', '4. Januar 19 Uhr']],
    [['Preis'], ['2,10 Euro', '2,10 €']],
    [['Stunden'], ['36 Std', '36 Stunden', '1½ Tage']],
    [['Note 1-5 (von 10)'], ['8', '7,5']],
  ],
};
const CASES = Object.values(WHOLE).flatMap((columns) =>
  columns.flatMap(([headings, cells]) => headings.flatMap((heading) => cells.map((cell) => [heading, cell] as const))),
);
const remarksOf = (heading: string, cell: string): string[] => {
  const { plan } = read(`Date;Jar;Seed;${heading}\n2026-01-01;a;8 caps Blue Tin;"${cell}"\n2026-01-08;a;2026-01-01 a;"${cell}"`);
  expect(plan.jars).toHaveLength(2);
  return remarksOfPlan(plan, {}, () => undefined).map(({ text }) => text);
};

it.each(CASES)('under “%s” “%s” is read whole and asks no remark', (heading, cell) => {
  expect(remarksOf(heading, cell)).toEqual([]);
});

it('what is left of a cell that was read in part is the remark, wherever it stands', () => {
  const read = CASES.filter(([heading]) => ['Set', 'Texture', 'Konsistenz', 'Whey', 'Molke', 'Tang', 'Säure'].includes(heading));
  fc.assert(
    fc.property(fc.constantFrom(...read), fc.constantFrom('Anna mag es', 'odd but nice', 'riecht nach Heu'), fc.boolean(), ([heading, cell], rest, before) => {
      const whole = before ? `${rest}, ${cell}` : `${cell.replace(/\.$/, '')}, ${rest}`;
      for (const text of remarksOf(heading, whole)) expect(text.replace(`${heading}: `, '')).toBe(rest);
      expect(remarksOf(heading, whole)).toHaveLength(2);
    }),
    { numRuns: 60 },
  );
});

it.each([
  ['fest, rosa Fleck', 'rosa Fleck'],
  ['odd smell, firm', 'odd smell'],
  ['not soft, firm', 'not soft'],
  ['firm, but was it mould?', 'but was it mould?'],
  ['Score: 8\nSmell: off, 8', 'Smell: off'],
  ['4 Jan 19:00', null],
  ['8 arm', '8 arm'],
  ['pH 5.2?', 'pH 5.2?'],
  ['Mon', 'Mon'],
])('of “%s” is left %j', (text, left) => {
  expect(leftInWords(text, 'note')).toBe(left);
});
