// Days that a cell tells only roughly: "about 15 Jan", "mid January", "Jan 2025", "between 3 and 9 Jan". In the languages
// whose words somebody can vouch for; a month's name is known in more. Pure.
import { type DayRange, readDayRange } from '../quantities/day-ranges';
import { addDays } from '../quantities/typed-days';
import { plain, tidy } from '../quantities/quantities';
import { cellDay, type DayOrder, dayIn, dayText, monthOf, type ReadDay } from './days';

/** As far as its text tells; a year that is null is not written. */
export type RoughDay =
  | { readonly kind: 'about'; readonly day: ReadDay }
  | { readonly kind: 'between'; readonly from: ReadDay; readonly to: ReadDay }
  | { readonly kind: 'month'; readonly part: Part; readonly month: number; readonly year: number | null };

type Part = 'early' | 'mid' | 'late' | '';

/** Words before a day or a month: English, German. */
const ABOUT =
  /^(?:(?:about|around|roughly|approx\.?|circa|ca\.?|c\.|sometime in|in|etwa|ungefahr|rund um|um den|um|gegen|irgendwann im|im)\s+|[~≈]\s*)+/;
const PARTS: readonly (readonly [RegExp, Part])[] = [
  [/^(?:early|(?:the )?beginning of|(?:the )?start of|anfang)[\s-]+/, 'early'],
  [/^(?:mid(?:dle)?|(?:the )?middle of|mitte)[\s-]+/, 'mid'],
  [/^(?:late|(?:the )?end of|ende)[\s-]+/, 'late'],
];
const BETWEEN =
  /^(?:(?:some(?:where|time) )?between\s+(.+?)\s+and\s+(.+)|zwischen\s+(?:dem\s+)?(.+?)\s+und\s+(?:dem\s+)?(.+)|(.+?)\s+(?:or|oder)\s+(.+))$/;
const MONTH = /^(\p{L}{3,12})\.?(?:,?\s+(?:of\s+)?(\d{4}|'\d{2}))?$/u;
/** "3 and 9 Jan": the first has the month of the second. */
const BARE_DAY = /^(\d{1,2})(?:st|nd|rd|th|\.)?$/;

const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

const oneDay = (text: string, order: DayOrder): ReadDay | null => {
  const found = cellDay(text);
  return found && dayIn(found, order);
};

function between(text: string, order: DayOrder): RoughDay | null {
  const [first, second] = BETWEEN.exec(text)?.slice(1).filter((part) => part !== undefined) ?? []; // prettier-ignore
  const to = second === undefined ? null : oneDay(second, order);
  if (first === undefined || to === null) return null;
  const bare = BARE_DAY.exec(first);
  const from = bare ? { ...to, day: Number(bare[1]) } : oneDay(first, order);
  return from && { kind: 'between', from, to };
}

/** A name without the words before its day: "about 15 Jan b". */
export const withoutAbout = (text: string): string => text.replace(/^(?:about\s+|[~≈]\s*)(?=\d)/i, '');

/** A whole cell that tells a day only roughly, or null: also for a day that is told as such. */
export function roughDay(cell: string, order: DayOrder): RoughDay | null {
  const typed = plain(tidy(cell));
  const text = typed.replace(ABOUT, '');
  const two = between(text, order);
  if (two) return two;
  const part = PARTS.find(([begins]) => begins.test(text));
  const named = MONTH.exec(part ? text.replace(part[0], '') : text);
  const month = monthOf(named?.[1]);
  if (month !== null) {
    // "January 26" is a day; "January '26" a year.
    const year = named?.[2] === undefined ? null : Number(named[2].replace("'", '20'));
    return { kind: 'month', part: part?.[1] ?? '', month, year };
  }
  const day = text === typed ? null : oneDay(text, order);
  return day && { kind: 'about', day };
}

/** "About" a day is so many days either way, as where it is typed. */
const ABOUT_DAYS = 3;

/** The days between which it lies, in a year where none is written; null where they can't be. */
export function daysOf(rough: RoughDay, year: number): DayRange | null {
  if (rough.kind === 'month') {
    const told = `${rough.part} ${MONTHS[rough.month - 1]} ${rough.year ?? year}`.trim();
    const read = readDayRange(told, 'day first', '9999-12-31');
    return read.ok ? read.range : null;
  }
  if (rough.kind === 'about') {
    const day = dayText(rough.day, rough.day.year ?? year);
    return day === null ? null : { from: addDays(day, -ABOUT_DAYS), to: addDays(day, ABOUT_DAYS) };
  }
  const to = dayText(rough.to, rough.to.year ?? year);
  if (to === null) return null;
  const own = rough.from.year ?? Number(to.slice(0, 4));
  const [here, before] = [own, own - 1].map((one) => dayText(rough.from, one));
  if (here && here <= to) return { from: here, to };
  return before && rough.from.year === null ? { from: before, to } : null;
}

/** The year that it tells; null: none. */
export const yearTold = (rough: RoughDay): number | null =>
  rough.kind === 'month' ? rough.year : rough.kind === 'about' ? rough.day.year : rough.to.year;

/** What is made is made by today: a range ends there at the latest. One that begins later stays as it is told. */
export const upTo = ({ from, to }: DayRange, today: string): DayRange =>
  from <= today && to > today ? { from, to: today } : { from, to };

interface Made {
  readonly day: string | null;
  readonly between: DayRange | null;
}

/** The day that figures may be made of: none where only a range is told. */
export const exactDay = ({ day, between }: Made): string | null => (between === null ? day : null);

/** What tells the day of one jar from that of another: a jar of a range of days is none of the day in its middle. */
export const dayName = ({ day, between }: Made): string | null =>
  between === null || day === null ? day : `~${day}`;
