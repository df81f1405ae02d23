// When a figure for a fresh start may be given as known: the lines have to tell, not merely to exist.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { GenerationRecord } from '../../core/advice/chances';
import { historyOf, type History } from '../../core/advice/history';
import { outlookOf, restartReply } from '../../core/advice/reply';

const kept = {
  costs: { freshStart: 6, jarsPerGeneration: 3, jar: 1, weakKeeps: 0.5, unplanned: 3 },
  unit: 'jars',
  assumed: [],
};
const NO_LIMITS = { fridgeDays: null, freezerDays: null, generation: null };
type Line = readonly GenerationRecord[];
const sureOf = (history: History): boolean =>
  restartReply(outlookOf(history, kept), [], NO_LIMITS, null, null).sure;

const record = (generation: number, more: Partial<GenerationRecord> = {}): GenerationRecord => ({
  generation, jars: 3, weak: 0, discarded: 0, lines: 1, seen: 1, ended: 0, ...more,
}); // prettier-ignore
/** A line of so many generations that comes out weak after one of them. */
const wearing = (generations: number, after: number): Line =>
  Array.from({ length: generations }, (_, i) => record(i + 1, { weak: i + 1 > after ? 3 : 0 }));
const even = (generations: number): Line => wearing(generations, generations);
/** A line of which all jars of its last generation spoiled. */
const spoiling = (generations: number): Line => [
  ...even(generations - 1),
  record(generations, { discarded: 3, ended: 1 }),
];

const anyLine = fc
  .tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 12 }), fc.boolean())
  .map(([generations, after, spoils]) => (spoils ? spoiling(generations) : wearing(generations, after)));
const oneJar = fc
  .tuple(fc.integer({ min: 1, max: 14 }), fc.constantFrom({}, { weak: 1 }, { discarded: 1, ended: 1 }))
  .map(([generation, what]): Line => [record(generation, { jars: 1, ...what })]);

describe('a figure for a fresh start', () => {
  it('is never made surer by a line of one jar, however it came out (property)', () => {
    fc.assert(
      fc.property(fc.array(anyLine, { maxLength: 4 }), oneJar, (lines, more) => {
        expect(sureOf(historyOf([...lines, more]))).toBe(sureOf(historyOf(lines)));
      }),
      // Lines that tell enough by themselves, and some that do not: neither may be all there is.
      {
        numRuns: 60,
        examples: [
          [[wearing(11, 8), wearing(11, 8)], [record(1)]],
          [[even(9)], [record(1)]],
        ],
      },
    );
  });
  it.each<[string, boolean, readonly Line[]]>([
    ['one line that wore', false, [wearing(11, 8)]],
    ['two lines that wore', true, [wearing(11, 8), wearing(11, 8)]],
    ['a line that wore and one too young to tell', false, [wearing(11, 8), even(3)]],
    ['two young lines', false, [even(5), even(5)]],
    ['twenty young lines', false, Array.from({ length: 20 }, () => even(5))],
    ['three lines that spoiled to the last jar', true, [spoiling(4), spoiling(4), spoiling(4)]],
    ['two lines seen in two generations each: below five batches', false, [spoiling(2), spoiling(2)]],
  ])('after %s is known: %s', (_, known, lines) => {
    expect(sureOf(historyOf(lines))).toBe(known);
  });
});
