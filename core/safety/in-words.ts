// What of a text says something in words. Figures, units and marks are measured, not said, and how a jar set has a word of its
// own: nobody is asked how they are to be read.
import { isUnknown, plain } from '../quantities/quantities';
import { remembered } from '../quantities/remembered';
import { onlyClean } from './clean-words';
import { onlyHowSet } from './set-phrases';

/** "Score: 8": what a cell was kept under, before what stood in it. */
const HEADED = /^[^:\n]{1,120}:\s+(?=\S)/;
/** Units, money and halves of the day that stand at a figure, days with their month, and the day of the week at either. */
const UNITS = String.raw`ml|cl|dl|l|mg|g|kg|oz|lb|h|hrs?|hours?|std|stunden?|heures?|horas?|uur|timmar|timer|min|days?|tage?n?|d|tbsps?|tbs|tsps?|cups?|el|tl|msk|spsk|am|pm|a\.m\.?|p\.m\.?|uhr|ph|deg|grad|c|f|x|eur|euros?|usd|gbp|chf|kr|cent|pence`;
const MONTHS =
  '(?:jan|feb|mar|apr|may|jun|jul|aug|sept?|oct|nov|dec|januar[y]?|februar[y]?|march|april|june|july|august|september|october|november|december|marz|mai|juni|juli|okt|oktober|dez|dezember)';
const WEEKDAYS =
  '(?:mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun|monday|tuesday|wednesday|thursday|friday|saturday|sunday|mo|di|mi|do|fr|sa|so|montag|dienstag|mittwoch|donnerstag|freitag|samstag|sonntag)';
const MEASURED = new RegExp(
  [
    String.raw`(?<![\p{L}\p{N}])(?:${WEEKDAYS}\.?,?\s+)?\d{1,2}(?:st|nd|rd|th|\.)?\s?-?${MONTHS}(?![\p{L}\p{N}])\.?`,
    String.raw`(?<![\p{L}\p{N}])(?:${WEEKDAYS}\.?,?\s+)?${MONTHS}\.?\s\d{1,2}(?:st|nd|rd|th)?(?![\p{L}\p{N}])`,
    String.raw`(?<![\p{L}\p{N}])${WEEKDAYS}\.?,?\s+(?=\d)`,
    // The name of a picture.
    String.raw`(?<!\S)[\p{L}\p{N}_.()-]+\.(?:jpe?g|png|heic|webp|gif|mov|mp4|pdf)(?!\S)`,
    String.raw`[\d½¼¾⅓⅔]\s*(?:°\s*[cf]?|${UNITS})(?![\p{L}\p{N}])`,
  ].join('|'),
  'giu',
);

/** Where one thing said ends and the next begins. */
const BETWEEN = /([,;!]\s+|(?<=\p{L}{2})\.\s+)/u;

type Field = 'smell' | 'texture' | 'other';

/**
 * Whether letters stand in what is said that are no unit, no day and no time, and do not merely tell how a jar set, or under
 * "smell" and "texture" that it is clean.
 */
function saysMore(said: string, field: Field): boolean {
  if (isUnknown(said)) return false;
  // "x" marks a box.
  const words = plain(said)
    .replace(MEASURED, ' ')
    .replace(/(?<![\p{L}\p{N}])x(?![\p{L}\p{N}])/giu, ' ');
  return /\p{L}/u.test(words) && !onlyHowSet(words) && (field === 'other' || !onlyClean(words, field));
}

/** A line without what is only measured or tells how a jar set, at its beginning and its end; what stands between is left as it is. */
function leftOfLine(line: string, field: Field): string[] {
  const heading = HEADED.exec(line)?.[0] ?? '';
  const parts = line.slice(heading.length).split(BETWEEN);
  const more = (_: string, at: number): boolean => at % 2 === 0 && saysMore(parts[at] ?? '', field);
  const first = parts.findIndex(more);
  return first < 0 ? [] : [`${heading}${parts.slice(first, parts.findLastIndex(more) + 1).join('')}`];
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
