// What of a text says something in words. Figures, units and marks are measured, not said, and how a jar set has a word of its
// own: nobody is asked how they are to be read.
import { isUnknown, plain } from '../quantities/quantities';
import { remembered } from '../quantities/remembered';
import { leftOf } from '../text/clauses';
import { saysWhey } from '../text/look-words';
import { withoutMeasured } from '../text/measured';
import { onlyClean } from './clean-words';
import { onlyHowSet } from '../text/set-phrases';

/** "Score: 8": what a cell was kept under, before what stood in it. */
const HEADED = /^[^:\n]{1,120}:\s+(?=\S)/;
type Field = 'smell' | 'texture' | 'other';

/**
 * Whether letters stand in what is said that are no unit, no day and no time, and do not merely tell how a jar set, or under
 * "smell" and "texture" that it is clean.
 */
function saysMore(said: string, field: Field): boolean {
  if (isUnknown(said)) return false;
  // "x" marks a box.
  const words = withoutMeasured(plain(said)).replace(/(?<![\p{L}\p{N}])x(?![\p{L}\p{N}])/giu, ' ');
  if (!/\p{L}/u.test(words) || onlyHowSet(words) || saysWhey(words)) return false;
  return field === 'other' || !onlyClean(words, field);
}

/** A line without what is only measured or tells how a jar set, at its beginning and its end; what stands between is left as it is. */
function leftOfLine(line: string, field: Field): string[] {
  const heading = HEADED.exec(line)?.[0] ?? '';
  const left = leftOf(line.slice(heading.length), (said) => !saysMore(said, field));
  return left === '' ? [] : [`${heading}${left}`];
}

/** What of a text says something in words: what is left when all that is read without is taken away; null: nothing. */
export const leftInWords = (text: string, field: string): string | null =>
  left(text, field === 'smell' || field === 'texture' ? field : 'other');

const left = remembered(
  (text: string, field: Field): string | null => {
    const lines = text.split(/\r?\n/).flatMap((line) => leftOfLine(line, field));
    return lines.length === 0 ? null : lines.join('\n');
  },
  (field) => `${field}:`,
);

/** Whether anything is said in words. @param field under which it stands */
export const saysInWords = (text: string, field: string): boolean => leftInWords(text, field) !== null;
