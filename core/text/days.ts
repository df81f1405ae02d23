// Days as people write them, and which way round a whole file writes them.
import { isDay } from '../ledger/basics';
import { findAmounts, plain, remembered, tidy } from '../quantities/quantities';

export type DayOrder = 'day first' | 'month first' | 'year first';

/** A day as far as its text tells. `year` null: not written. `either`: day and month could be swapped. */
export interface ReadDay {
  readonly year: number | null;
  readonly month: number;
  readonly day: number;
}

/** A date found in a text: where, and its reading in each order (null: impossible that way). */
export interface FoundDay {
  readonly start: number;
  readonly end: number;
  readonly dayFirst: ReadDay | null;
  readonly monthFirst: ReadDay | null;
  /** Three figures of two digits may start with the year: "25-05-02". */
  readonly yearFirst?: ReadDay | null;
  /** Written so that its order can't be doubted (ISO, a month's name). */
  readonly sure: boolean;
  /** Figures parted by points: day first, unless the file shows otherwise. */
  readonly points?: boolean;
}

/** A found day in the order a file writes its days; what is possible only the other way stays so. */
export const dayIn = (found: FoundDay, order: DayOrder): ReadDay | null =>
  order === 'year first' && !found.sure
    ? (found.yearFirst ?? null)
    : order === 'month first'
      ? found.monthFirst
      : found.dayFirst;

const MONTHS: readonly (readonly string[])[] = [
  ['january', 'jan', 'januar', 'janvier', 'janv', 'enero', 'ene', 'gennaio', 'gen', 'januari', 'janeiro', 'stycznia', 'styczen', 'sty', 'janner'],
  ['february', 'feb', 'februar', 'fevrier', 'fevr', 'fev', 'febrero', 'febbraio', 'februari', 'fevereiro', 'lutego', 'luty', 'lut'],
  ['march', 'mar', 'marz', 'maerz', 'mrz', 'mars', 'marzo', 'maart', 'mrt', 'marco', 'marts', 'marca', 'marzec'],
  ['april', 'apr', 'avril', 'avr', 'abril', 'abr', 'aprile', 'kwietnia', 'kwiecien', 'kwi'],
  ['may', 'mai', 'mayo', 'maggio', 'mag', 'mei', 'maio', 'maj', 'maja'],
  ['june', 'jun', 'juni', 'juin', 'junio', 'giugno', 'giu', 'junho', 'czerwca', 'czerwiec', 'cze'],
  ['july', 'jul', 'juli', 'juillet', 'juil', 'julio', 'luglio', 'lug', 'julho', 'lipca', 'lipiec', 'lip'],
  ['august', 'aug', 'aout', 'agosto', 'ago', 'augustus', 'augusti', 'sierpnia', 'sierpien', 'sie'],
  ['september', 'sep', 'sept', 'septembre', 'septiembre', 'settembre', 'set', 'setembro', 'wrzesnia', 'wrzesien', 'wrz'],
  ['october', 'oct', 'oktober', 'okt', 'octobre', 'octubre', 'ottobre', 'ott', 'outubro', 'out', 'pazdziernika', 'pazdziernik', 'paz'],
  ['november', 'nov', 'novembre', 'noviembre', 'novembro', 'listopada', 'listopad', 'lis'],
  ['december', 'dec', 'dezember', 'dez', 'decembre', 'diciembre', 'dic', 'dicembre', 'desember', 'des', 'dezembro', 'grudnia', 'grudzien', 'gru'],
]; // prettier-ignore
const MONTH_OF = new Map(MONTHS.flatMap((names, at) => names.map((name) => [name, at + 1] as const)));

export const monthOf = (word: string | undefined): number | null =>
  MONTH_OF.get(plain(word ?? '').replace(/\.$/, '')) ?? null;
const fullYear = (told: string | undefined): number | null => {
  const text = told?.replace("'", '');
  return text === undefined ? null : text.length === 4 ? Number(text) : 2000 + Number(text);
};

/** No jar was made in another year: outside them the figures are a slip of the pen. */
export const YEARS_POSSIBLE = { first: 1990, last: 2100 } as const;

/** Whether figures stand there like a day in full, right or not: "1026-03-08", "20226-03-15", "3/8/20226". */
export const likeDay = (text: string): boolean =>
  /(?<!\d)(?:\d{3,}([-/.])\d{1,2}\1\d{1,2}|\d{1,2}([-/.])\d{1,2}\2\d+)(?!\d)/.test(tidy(text));

/** Whether digits that belong to no day stand right beside one: "8 Mar 20226", but not "15 Oct 19:00", "15 Oct 250 mL". */
export const strayDigits = (before: string, after: string): boolean =>
  /^\s*[,./-]?\s*'?\d{3,}(?![\d:]|\s?\p{L})/u.test(after) ||
  /^[./-]\d/.test(after) ||
  /\d{3,}\s*[./-]?\s*$/.test(before);

function made(year: number | null, month: number, day: number): ReadDay | null {
  if (year !== null && (year < YEARS_POSSIBLE.first || year > YEARS_POSSIBLE.last)) return null;
  const text = `${year ?? 2024}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
  return isDay(text) ? { year, month, day } : null;
}

const ROMAN = 'I II III IV V VI VII VIII IX X XI XII'.split(' ');
const romanOf = (text: string | undefined): number | null => ROMAN.indexOf(text ?? '') + 1 || null;
/** Two figures before a clock's are an hour: "4 Jan 19:00", "4. Januar 19 Uhr". */
const YEAR = String.raw`(?<year>\d{4}|'?\d{2}(?!:\d|\s?(?:[Uu]hr|[Hh]|[AaPp]\.?[Mm])(?![\p{L}\p{N}])))`;
/** "First of August", "the twenty-second of May", "August the first". */
const ORDINALS = 'first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth seventeenth eighteenth nineteenth twentieth'.split(' '); // prettier-ignore
const ORDINAL = new Map<string, number>([
  ...ORDINALS.map((word, at) => [word, at + 1] as const),
  ...ORDINALS.slice(0, 9).map((word, at) => [`twenty ${word}`, at + 21] as const),
  ['thirtieth', 30],
  ['thirty first', 31],
]);
const ordinalOf = (word: string | undefined): number | null =>
  ORDINAL.get(plain(word ?? '').replace(/[\s-]+/g, ' ')) ?? null;
const figure = (text: string | undefined): number => Number(text);
const WORDED = String.raw`(?<day>(?:twenty|thirty)[\s-]+\p{L}+|\p{L}{5,11})`;
const MONTH = String.raw`(?<month>\p{L}{3,12})`;
const DAY = String.raw`(?<day>\d{1,2})`;
const TIME = String.raw`(?:[T ]\d{1,2}:\d{2}(?::\d{2})?(?:\.\d+)?Z?)?`;
/** Of several days the first: "2-4 May 2025", "May 16-18 2025". */
const MORE = String.raw`\s?(?:-|to|bis)\s?\d{1,2}`;

/** How days are written that can't be doubted, in order of trying, and how month and day of each are told. */
const SURE: readonly (readonly [RegExp, typeof monthOf, (text: string | undefined) => number | null])[] = [
  [new RegExp(String.raw`(?<year>\d{4})\s?([-/.])\s?(?<month>\d{1,2})\s?\2\s?${DAY}(?!\d)${TIME}`, 'y'), figure, figure],
  [new RegExp(String.raw`(?<year>\d{4})[\s,./-]+${MONTH}\.?[\s.-]*${DAY}(?:st|nd|rd|th)?(?!\d)`, 'uy'), monthOf, figure],
  [/(?<year>20\d{2})(?<month>0[1-9]|1[0-2])(?<day>0[1-9]|[12]\d|3[01])(?!\d)/y, figure, figure],
  [/(?<day>\d{1,2})\s?[./ -]\s?(?<month>[IVX]{1,4})\s?[./ -]\s?(?<year>'?\d{2}|\d{4})(?!\d)/y, romanOf, figure],
  [new RegExp(String.raw`${DAY}(?:st|nd|rd|th|\.)?${MORE}(?:st|nd|rd|th|\.)?\s*(?:de|of)?[\s./-]*${MONTH}\.?(?:\s*,?\s*${YEAR}(?!\d))?`, 'uy'), monthOf, figure],
  [new RegExp(String.raw`${MONTH}\.?\s+${DAY}(?:st|nd|rd|th)?\s?(?:-|to)\s?\d{1,2}(?:st|nd|rd|th)?\s*,?\s+(?<year>\d{4})(?!\d)`, 'uy'), monthOf, figure],
  [new RegExp(String.raw`${DAY}(?:st|nd|rd|th|er|\.|º|°|:e|e)?\s*(?:de|of|di)?[\s./-]*${MONTH}\.?(?:(?:\s*,?\s*(?:de|del)?\s*|[-/.])${YEAR}(?!\d))?`, 'uy'), monthOf, figure],
  [new RegExp(String.raw`${MONTH}\.?[\s.-]*${DAY}(?:st|nd|rd|th)?(?!\d)(?:(?:\s*,\s*|\s+|[-/])${YEAR}(?!\d))?`, 'uy'), monthOf, figure],
  [new RegExp(String.raw`${WORDED}\s+(?:day\s+)?(?:of\s+)?${MONTH}\.?(?:\s*,?\s*(?:of\s+)?${YEAR}(?!\d))?`, 'uyi'), monthOf, ordinalOf],
  [new RegExp(String.raw`${MONTH}\.?\s+(?:the\s+)?${WORDED}(?:\s*,?\s*${YEAR}(?!\d))?`, 'uyi'), monthOf, ordinalOf],
]; // prettier-ignore
/** In "5.1. 18:00" and "5.1. 8 Uhr" an hour follows, and no year. */
const NO_HOUR = String.raw`(?!\d|[:.]\d{2}(?!\d)|\s?(?:uhr|h|[ap]\.?m)\b)`;
const NUMERIC = new RegExp(
  String.raw`(\d{1,2})\s?([./-])\s?(\d{1,2})(?:\s?\2\s?('?\d{2,4}${NO_HOUR})?)?(?!\d)` +
    String.raw`(?:\s+\d{1,2}:\d{2}(?::\d{2})?(?:\s?[ap]m)?)?`,
  'iy',
);

/** The date that starts at a place of a tidied text, or null. Numbers alone, as "12", are no date. */
function dayAt(text: string, at: number): FoundDay | null {
  for (const [pattern, monthIn, dayIs] of SURE) {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    const { year, month, day } = found?.groups ?? {};
    const [monthTold, dayTold] = found ? [monthIn(month), dayIs(day)] : [null, null];
    if (!found || monthTold === null || dayTold === null) continue;
    const read = made(fullYear(year), monthTold, dayTold);
    return read && { start: at, end: at + found[0].length, dayFirst: read, monthFirst: read, sure: true };
  }
  return joinedDay(text, at) ?? numericDay(text, at);
}

/** "260105a": two figures each for year, month and day in some order, and the letter of a jar. */
const JOINED = /(\d{2})(\d{2})(\d{2})(?=[-_ ]?\p{L}(?![\p{L}\p{N}]))/uy;

/** Such a day at a place, or null. */
function joinedDay(text: string, at: number): FoundDay | null {
  JOINED.lastIndex = at;
  const [first, second, third] = (JOINED.exec(text) ?? []).slice(1).map(Number);
  if (first === undefined || second === undefined || third === undefined) return null;
  const dayFirst = made(2000 + third, second, first);
  const monthFirst = made(2000 + third, first, second);
  const yearFirst = made(2000 + first, second, third);
  if (!dayFirst && !monthFirst && !yearFirst) return null;
  return { start: at, end: at + 6, dayFirst, monthFirst, yearFirst, sure: false };
}

/** "5/23-5/25/2025": what ends the first of two days tells the year of both. */
const UNTIL_DAY = /^\s?-\s?\d{1,2}[./]\d{1,2}[./]('?\d{2}|\d{4})(?!\d)/;

/** A date in figures that starts at a place, or null. */
function numericDay(text: string, at: number): FoundDay | null {
  NUMERIC.lastIndex = at;
  const numeric = NUMERIC.exec(text);
  if (!numeric) return null;
  const after = text.slice(at + numeric[0].length);
  const [first, mark, second] = [Number(numeric[1]), numeric[2], Number(numeric[3])];
  const until = numeric[4] === undefined && mark !== '-' ? UNTIL_DAY.exec(after) : null;
  const yearText = (numeric[4] ?? until?.[1])?.replace("'", '');
  // A year of one or three digits is no year; "1.5" and "3-4" without a year are dates only with "/" or a closing point.
  if (yearText !== undefined && yearText.length === 3) return null;
  // "3/8/20226": what follows is no year, and the day is not to be trusted without it.
  if (yearText === undefined && /^[./-]\d/.test(after)) return null;
  const closing = /[.]\s?$/.test(numeric[0].replace(/\d{1,2}:.*$/, ''));
  if (yearText === undefined && mark === '.' && !closing) return null;
  if (yearText === undefined && mark === '-' && numeric[0].endsWith('-')) return null;
  const year = fullYear(yearText);
  const dayFirst = made(year, second, first);
  const monthFirst = made(year, first, second);
  const yearFirst =
    yearText?.length === 2 && numeric[1]?.length === 2 ? made(2000 + first, second, Number(yearText)) : null;
  if (!dayFirst && !monthFirst && !yearFirst) return null;
  const end = at + numeric[0].trimEnd().length + (until?.[0].length ?? 0);
  return { start: at, end, dayFirst, monthFirst, yearFirst, sure: false, points: mark === '.' };
}

/** "Batch 1 - 5 Jan 2026": the number of a batch, and then its day. */
const NUMBER_BEFORE = /\b(?:batch|charge|ansatz|lot|no|nr|week|woche|jar|glas)\.?\s?#?$/iu;
const NUMBERED = /^\d{1,3}\s[-–—]\s/u;

/** The first date in a text (positions in tidy(text)), or null. */
export const findDay = remembered(firstDay);

function firstDay(text: string): FoundDay | null {
  const clean = tidy(text);
  for (let at = 0; at < clean.length; at += 1) {
    if (at > 0 && /[\p{L}\p{N}]/u.test(clean[at - 1] ?? '') && /[\p{L}\p{N}]/u.test(clean[at] ?? ''))
      continue;
    // "1026-03-08" holds no 8 March of an unknown year.
    if (/\d{3,}[./-]$/.test(clean.slice(Math.max(0, at - 4), at))) continue;
    if (NUMBERED.test(clean.slice(at, at + 6)) && NUMBER_BEFORE.test(clean.slice(0, at))) continue;
    const found = dayAt(clean, at);
    if (found) return found;
  }
  return null;
}

/** Days from one to another in the order a file writes them; null where one has no year, or can't be. */
export function daysBetween(one: FoundDay, other: FoundDay, order: DayOrder): number | null {
  const [from, to] = [one, other].map((found) => {
    const read = dayIn(found, order);
    return read === null || read.year === null
      ? Number.NaN
      : Date.UTC(read.year, read.month - 1, read.day) / 86_400_000;
  });
  const days = (to ?? Number.NaN) - (from ?? Number.NaN);
  return Number.isNaN(days) ? null : days;
}

/** A text without the days that can be nothing else: with a year, or a month's name. Of the same length. */
export function withoutSureDays(text: string): string {
  let rest = tidy(text);
  for (let at = 0; at < rest.length; at += 1) {
    if (!/[\p{L}\p{N}]/u.test(rest[at] ?? '') || /[\p{L}\p{N}]/u.test(rest[at - 1] ?? '')) continue;
    const found = dayAt(rest, at);
    const year = found && (found.dayFirst ?? found.monthFirst ?? found.yearFirst)?.year;
    if (!found || (!found.sure && year === null)) continue;
    rest = rest.slice(0, found.start) + ' '.repeat(found.end - found.start) + rest.slice(found.end);
    at = found.end;
  }
  return rest;
}

/** A text without its amounts, of the same length: "1/4 cup of batch 2" holds no day. */
export function withoutAmounts(text: string): string {
  let rest = tidy(text);
  if (!/\d\s*\/\s*\d/.test(rest)) return rest;
  for (const { start, end, amount } of findAmounts(rest, { spoons: 'US' }, true))
    // "10/23/25 c" is no 25 cups.
    if (
      !/\d[./-]$/.test(rest.slice(0, start)) &&
      (amount.unit !== 'pieces' || !/\d\/\d/.test(rest.slice(start, end)))
    )
      rest = rest.slice(0, start) + '_'.repeat(end - start) + rest.slice(end);
  return rest;
}

/** A spreadsheet's day number (day 1 is 1 January 1900, with its leap-year slip) → a day, or null. */
export function serialDay(text: string): string | null {
  const clean = tidy(text);
  if (!/^\d{5}(?:[.,]\d+)?$/.test(clean)) return null;
  const days = Math.floor(Number(clean.replace(',', '.')));
  if (days < 36526 || days > 73050) return null; // 2000 to 2099
  const date = new Date(Date.UTC(1899, 11, 30) + days * 86_400_000);
  return date.toISOString().slice(0, 10);
}

/** A weekday or other small talk that may stand before a date. */
const WEEKDAY = /^\p{L}{2,12}\.?,?\s+(?:(?:the|den|der|le|el|il|am)\s+)?/u;

/** A whole cell as one date and nothing else (a weekday may lead), or null. */
export const cellDay = remembered(wholeDay);

function wholeDay(cell: string): FoundDay | null {
  // A spreadsheet's mark for text may stand before it.
  const clean = tidy(cell).replace(/^'(?=\d)/, '');
  const tries = [0, WEEKDAY.exec(clean)?.[0].length ?? 0];
  for (const at of tries) {
    const found = dayAt(clean, at);
    if (found && clean.slice(found.end).replace(/[.\s]/g, '') === '') return found;
  }
  return null;
}

export interface OrderEvidence {
  /** null: not one date settles it, and at least one could be either. */
  readonly order: DayOrder | null;
  /** A date that settles it, or that shows the doubt. */
  readonly example: string | null;
  readonly doubtful: number;
  /** Only that points stand between the figures speaks for it. */
  readonly pointsOnly?: true;
}

const YEARS = 365 * 86_400_000;

/** Two-digit years lead where that keeps all days within three years and no other order keeps them within six. */
function yearsFirst(texts: readonly string[], look?: () => void): OrderEvidence | null {
  const found = texts
    .map((text) => {
      look?.();
      return cellDay(text) ?? findDay(text);
    })
    .filter((one) => one !== null && !one.sure && one.yearFirst !== undefined);
  const [first] = texts;
  if (found.length < 2 || first === undefined || found.some((one) => !one?.yearFirst)) return null;
  const spread = (order: DayOrder): number => {
    const days = found.map((one) => (one ? dayIn(one, order) : null));
    if (days.some((day) => day === null || day.year === null)) return Infinity;
    const times = days.map((day) => Date.UTC(day?.year ?? 0, (day?.month ?? 1) - 1, day?.day));
    const most = times.reduce((one, other) => Math.max(one, other), -Infinity);
    return most - times.reduce((one, other) => Math.min(one, other), Infinity);
  };
  if (spread('year first') > 3 * YEARS || Math.min(spread('day first'), spread('month first')) < 6 * YEARS)
    return null;
  return { order: 'year first', example: tidy(first), doubtful: found.length };
}

/** Which way round a file writes its dates: one that is possible only one way settles it for all. */
export function orderOf(texts: readonly string[], look?: () => void): OrderEvidence {
  const yearly = yearsFirst(texts, look);
  if (yearly) return yearly;
  let day = 0;
  let month = 0;
  let doubtful = 0;
  let points: string | null = null;
  const example: Record<'day' | 'month' | 'doubt', string | null> = { day: null, month: null, doubt: null };
  for (const text of texts) {
    look?.();
    const found = cellDay(text) ?? findDay(text);
    if (!found || found.sure) continue;
    const shown = tidy(text).slice(found.start, found.end);
    if (found.dayFirst && found.monthFirst) {
      if (found.dayFirst.day !== found.monthFirst.day) {
        doubtful += 1;
        if (found.points) points ??= shown;
        else example.doubt ??= shown;
      }
    } else if (found.dayFirst) {
      day += 1;
      example.day ??= shown;
    } else {
      month += 1;
      example.month ??= shown;
    }
  }
  if (day > month) return { order: 'day first', example: example.day, doubtful };
  if (month > 0) return { order: 'month first', example: example.month, doubtful };
  // Points between figures are written where the day comes first.
  if (points !== null && example.doubt === null)
    return { order: 'day first', example: points, doubtful, pointsOnly: true };
  return { order: null, example: example.doubt ?? points, doubtful };
}

/** YYYY-MM-DD of a day with its year, or null. */
export function dayText(read: ReadDay, year: number): string | null {
  const text = `${year}-${String(read.month).padStart(2, '0')}-${String(read.day).padStart(2, '0')}`;
  return isDay(text) ? text : null;
}

/** The day in full that is nearest to another, of those in some years; left out: that one's year and those beside it. */
export function nearestDay(read: ReadDay, near: string, years?: readonly number[]): string | null {
  if (read.year !== null) return dayText(read, read.year);
  const year = Number(near.slice(0, 4));
  const away = (day: string): number => Math.abs(Date.parse(day) - Date.parse(near));
  const days = (years ?? [year - 1, year, year + 1]).flatMap((one) => dayText(read, one) ?? []);
  return days.toSorted((a, b) => away(a) - away(b))[0] ?? null;
}
