// What a jar is called, and which jar a keeper means: "14 Mar b", "14 Mar plain b", with the year where another year has
// the same. Labels match without regard to case.
import { type DayRange, middleDay } from '../quantities/day-ranges';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** What a label is made of. */
export interface LabelParts {
  /** YYYY-MM-DD; null where the day is not known. */
  readonly madeOn: string | null;
  /** Where only a range of days is known, the day in its middle: "about 15 Jan a". None of a jar that nobody can name. */
  readonly about?: string | null;
  /** The batch's short word. */
  readonly word: string | null;
  readonly letter: string;
}

/** What the screens call the part of a traced share that leads to no source. */
export const UNKNOWN_PAST_NAME = 'unknown past';

/** "14 Mar", or "14 Mar 2025" with the year. */
export function dayLabel(day: string, withYear: boolean): string {
  const [year, month, date] = day.split('-');
  return `${Number(date)} ${MONTHS[Number(month) - 1] ?? '?'}${withYear ? ` ${year}` : ''}`;
}

/** A text with each day that is written YYYY-MM-DD turned into words: "14 Mar 2025". Names of files stay as they are. */
export const daysInWords = (text: string): string =>
  text.replace(/(?<![\w.\-/])\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])(?!\.?\w|[-/])/g, (day) =>
    dayLabel(day, true),
  );

type DayParts = Pick<LabelParts, 'madeOn' | 'about'>;

/** The day that a label names, be it known or only about. */
export const dayNamed = ({ madeOn, about }: DayParts): string | null => madeOn ?? about ?? null;

/** "14 Mar", or "about 15 Jan" where only a range of days is known; null where nothing is. */
export function batchDay(parts: DayParts, withYear: boolean): string | null {
  const day = dayNamed(parts);
  return day === null ? null : `${parts.madeOn === null ? 'about ' : ''}${dayLabel(day, withYear)}`;
}

/** The day that a batch is called by. */
export const calledDay = (batch: {
  readonly madeOn: string | null;
  readonly madeFrom: string | null;
  readonly madeTo: string | null;
}): DayParts & { readonly about: string | null } => ({
  madeOn: batch.madeOn,
  about:
    batch.madeFrom === null || batch.madeTo === null
      ? null
      : middleDay({ from: batch.madeFrom, to: batch.madeTo }),
});

/** A jar's printed label. A jar of unknown day has no day in it: "lost a". */
export function jarLabel(parts: LabelParts, withYear: boolean): string {
  const day = batchDay(parts, withYear) ?? 'lost';
  return [day, parts.word?.trim(), parts.letter.toLowerCase()].filter(Boolean).join(' ');
}

/** Jars with the same group read the same without their year. */
export const labelGroup = (parts: LabelParts): string =>
  `${parts.madeOn === null && parts.about ? '~' : ''}${dayNamed(parts)?.slice(5) ?? 'lost'}|${parts.word?.trim().toLowerCase() ?? ''}|${parts.letter.toLowerCase()}`;

/** A line is called as its keeper calls it, else by its founding batch's word, else by the day of that batch. */
export const lineName = (
  batch: DayParts & { readonly word: string | null },
  named: string | null = null,
): string => named?.trim() || batch.word?.trim() || (batchDay(batch, true) ?? 'a day not known');

/** A line in a sentence: by its word ("Heron"), else "the line of 15 Oct 2025". */
export const lineWords = (name: string): string =>
  /^(?:about )?\d{1,2} \p{L}{3} \d{4}$/u.test(name) || name === 'a day not known'
    ? `the line of ${name}`
    : name;

/** What a keeper typed, taken apart; a part that was not typed is null. */
export interface LabelQuery {
  /** Possible days: both orders where "3/4" can't be told, the preferred one first. */
  readonly days: readonly { readonly month: number; readonly date: number }[];
  readonly month: number | null;
  readonly year: number | null;
  readonly letter: string | null;
  readonly words: readonly string[];
  /** It was typed with "about" before it. */
  readonly about: boolean;
}

/** As it begins the label of a jar of which only a range of days is known. */
const ABOUT = /^(?:about|ca\.?|circa|~)\s*(?=\S)/;

const monthOf = (text: string): number | null => {
  const short = text.slice(0, 3);
  const month = MONTHS.findIndex((name) => name.toLowerCase() === short);
  return /^[a-z]{3,9}\.?$/.test(text) && month >= 0 ? month + 1 : null;
};

const yearOf = (text: string): number => (text.length === 2 ? 2000 + Number(text) : Number(text));

const isDate = (month: number, date: number): boolean => month >= 1 && month <= 12 && date >= 1 && date <= 31;

/**
 * Reads part of a label as people type it: "14 Mar b", "mar 14 b", "3/14 b", "14.3.26 b", "2026-03-14 b", "plain b", "b".
 *
 * @param dates which number of "3/4" comes first; the other order is still allowed, as the second choice
 */
export function readLabel(text: string, dates: 'day first' | 'month first'): LabelQuery {
  let days: { month: number; date: number }[] = [];
  let month: number | null = null;
  let date: number | null = null;
  let year: number | null = null;
  let letter: string | null = null;
  const words: string[] = [];
  // "3/14b" and "14mar" are two things each; "14th" is one.
  const typed = text.trim().toLowerCase();
  const spaced = typed.replace(ABOUT, '').replaceAll(/(\d\.?)(?!(?:st|nd|rd|th)\b)(?=[a-z])/g, '$1 ');
  for (const token of spaced.split(/[\s,]+/).filter(Boolean)) {
    const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(token);
    const numbers = /^(\d{1,2})[./-](\d{1,2})(?:[./-](\d{2}|\d{4})?)?$/.exec(token);
    if (iso) {
      year = Number(iso[1]);
      days = [{ month: Number(iso[2]), date: Number(iso[3]) }];
    } else if (numbers) {
      const [a, b] = [Number(numbers[1]), Number(numbers[2])];
      const orders = [
        { month: b, date: a },
        { month: a, date: b },
      ];
      days = (dates === 'day first' ? orders : orders.toReversed()).filter((day) =>
        isDate(day.month, day.date),
      );
      if (a === b) days = days.slice(0, 1);
      if (days.length === 0) words.push(token);
      if (numbers[3]) year = yearOf(numbers[3]);
    } else if (/^\d{4}$/.test(token)) year = Number(token);
    else if (/^\d{1,2}(st|nd|rd|th)?\.?$/.test(token)) date = Number.parseInt(token, 10);
    else if (monthOf(token) !== null && month === null) month = monthOf(token);
    else if (/^[a-z]{1,2}$/.test(token) && letter === null) letter = token;
    else words.push(token);
  }
  if (days.length === 0 && date !== null) {
    if (month !== null && isDate(month, date)) {
      days = [{ month, date }];
      month = null;
    } else words.push(String(date));
  }
  return { days, month, year, letter, words, about: ABOUT.test(typed) };
}

/** Words that may stand beside a label and name the same jar, or what is kept apart of it (core/ledger/portions.ts). */
const BESIDE_LABEL = new Set(
  'a the jar some of from seed freezer cube cubes frozen dried flakes lidded pot fridge in whey curd mixed'.split(
    ' ',
  ),
);
const squeezed = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[\s·]+/g, ' ')
    .trim();

/**
 * Whether a text is the name of a jar, or of what is kept apart of it: its label in any case, written as labels may be
 * typed, with or without the year, which is not compared. Part of a label is not its name.
 *
 * @returns asks one jar after the other
 */
export function namerOf(text: string, dates: 'day first' | 'month first'): (jar: LabelParts) => boolean {
  const typed = squeezed(text);
  const query = readLabel(typed, dates);
  const told = [...query.words, ...(query.letter === null ? [] : [query.letter])];
  return (jar) => {
    if (typed === '') return false;
    // Few jars begin as the text does: only their labels are printed.
    const begins = batchDay(jar, false)?.toLowerCase() ?? 'lost';
    if (typed.startsWith(begins) && [false, true].some((year) => squeezed(jarLabel(jar, year)) === typed))
      return true;
    // "15 Jan a" is no name of one that was made about then.
    if (query.about !== (jar.madeOn === null)) return false;
    const day = dayNamed(jar)?.slice(5) ?? null;
    if (!query.days.some(({ month, date }) => day === `${two(month)}-${two(date)}`)) return false;
    const left = [...told];
    for (const own of squeezed(`${jar.word ?? ''} ${jar.letter}`)
      .split(' ')
      .filter(Boolean)) {
      const at = left.indexOf(own);
      if (at < 0) return false;
      left.splice(at, 1);
    }
    return left.every((word) => BESIDE_LABEL.has(word) || /^[-,.]+$/.test(word));
  };
}

const two = (value: number): string => String(value).padStart(2, '0');

/**
 * How well a jar fits what was typed: 0 not at all; the higher, the better. A full label, in any case, fits best; then
 * every part typed, with the preferred order of day and month before the other; then any label that holds each word.
 */
function fitOf(label: string, parts: LabelParts, query: LabelQuery, text: string): number {
  const typed = text.trim().toLowerCase();
  const printed = label.toLowerCase();
  if (typed === '') return 1;
  if (typed === printed) return 5;
  const named = dayNamed(parts);
  const day =
    named === null
      ? null
      : { year: Number(named.slice(0, 4)), month: Number(named.slice(5, 7)), date: Number(named.slice(8)) };
  const order = query.days.findIndex((wanted) => wanted.month === day?.month && wanted.date === day.date);
  const word = parts.word?.toLowerCase() ?? '';
  const letter = parts.letter.toLowerCase();
  const fits =
    (query.days.length === 0 || order >= 0) &&
    (query.month === null || query.month === day?.month) &&
    (query.year === null || query.year === day?.year) &&
    (query.letter === null || query.letter === letter) &&
    (!query.about || parts.madeOn === null) &&
    query.words.every(
      (wanted) => word.split(/\s+/).some((own) => own.startsWith(wanted)) || letter === wanted,
    );
  // "15 Jan" finds what was made about then, too, after what was made on it.
  if (fits) return order > 0 || (named !== null && !query.about && parts.madeOn === null) ? 3 : 4;
  const tokens = typed.split(/\s+/);
  return printed.startsWith(typed) ? 2 : tokens.every((token) => printed.includes(token)) ? 1 : 0;
}

/** A jar that can be found: its parts with the label that is printed. */
export type Findable = LabelParts & {
  readonly key: number;
  readonly label: string;
  /** The days between which it was made, where only these are known. */
  readonly madeBetween?: DayRange | null;
};

/**
 * Jars a keeper may mean, the best fit first, then the newest, then by letter.
 *
 * @param notAfter leaves out jars made on a later day (a seed can't be made after the jar it seeds)
 */
export function findJars<J extends Findable>(
  jars: Iterable<J>,
  text: string,
  options: { dates: 'day first' | 'month first'; limit: number; notAfter: string | null },
): J[] {
  const query = readLabel(text, options.dates);
  const found: { jar: J; fit: number }[] = [];
  for (const jar of jars) {
    const made = jar.madeOn ?? jar.madeBetween?.from ?? null;
    if (options.notAfter !== null && made !== null && made > options.notAfter) continue;
    const fit = fitOf(jar.label, jar, query, text);
    if (fit > 0) found.push({ jar, fit });
  }
  found.sort(
    (a, b) =>
      b.fit - a.fit ||
      compare(dayNamed(b.jar) ?? '', dayNamed(a.jar) ?? '') ||
      compare(a.jar.letter.toLowerCase(), b.jar.letter.toLowerCase()) ||
      a.jar.key - b.jar.key,
  );
  return found.slice(0, options.limit).map(({ jar }) => jar);
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
