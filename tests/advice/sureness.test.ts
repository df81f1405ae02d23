// When a figure for a fresh start may be given as known: the lines have to tell, not merely to exist.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LineTold } from '../../core/advice/line-told';
import { outlookOf, restartReply } from '../../core/says/advice-reply';
import { NO_DOUBT } from '../../core/advice/restart-curve';
import { toldBy, wearing, type Came } from './judged-line';

const kept = {
  costs: { freshStart: 6, jarsPerGeneration: 3, jar: 1, weakKeeps: 0.5, unplanned: 3 },
  doubt: NO_DOUBT,
  unit: 'jars',
  assumed: [],
};
const NO_LIMITS = { fridgeDays: null, freezerDays: null, generation: null };
const sureOf = (lines: readonly LineTold[]): boolean =>
  restartReply(outlookOf(lines, kept), [], NO_LIMITS, null, null).sure;

/** A line that comes out weak after one of its generations. */
const wore = (generations: number, after: number): LineTold => toldBy(wearing(generations, after));
const even = (generations: number): LineTold => wore(generations, generations);
/** A line of which all jars of its last generation spoiled. */
const spoiling = (generations: number): LineTold => toldBy(wearing(generations, generations - 1, 'spoiled'));

const anyLine = fc
  .tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 12 }), fc.boolean())
  .map(([generations, after, spoils]) => (spoils ? spoiling(generations) : wore(generations, after)));
const oneJar = fc.constantFrom<Came>('firm', 'runny', 'spoiled').map((came) => toldBy([[came]]));

describe('a figure for a fresh start', () => {
  it('is never made surer by a line of one jar, however it came out (property)', () => {
    fc.assert(
      fc.property(fc.array(anyLine, { maxLength: 4 }), oneJar, (lines, more) => {
        expect(sureOf([...lines, more])).toBe(sureOf(lines));
      }),
      // Lines that tell enough by themselves, and some that do not: neither may be all there is.
      {
        numRuns: 40,
        examples: [
          [[wore(11, 8), wore(11, 8)], toldBy([['firm']])],
          [[even(9)], toldBy([['firm']])],
        ],
      },
    );
  });
  it.each<[string, boolean, readonly LineTold[]]>([
    ['one line that wore', false, [wore(11, 8)]],
    ['two lines that wore', true, [wore(11, 8), wore(11, 8)]],
    ['a line that wore and one too young to tell', false, [wore(11, 8), even(3)]],
    ['two young lines', false, [even(5), even(5)]],
    ['twenty young lines', false, Array.from({ length: 20 }, () => even(5))],
    ['three lines that spoiled to the last jar', true, [spoiling(4), spoiling(4), spoiling(4)]],
    ['two lines seen in two generations each: below five batches', false, [spoiling(2), spoiling(2)]],
  ])('after %s is known: %s', (_, known, lines) => {
    expect(sureOf(lines)).toBe(known);
  });
});
