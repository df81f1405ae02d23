// Days, times and moments as a keeper types them into a field. Pure: today and the offset of a local time are passed in.
import { isDay } from '../ledger/basics';

export type DateOrder = 'day first' | 'month first';

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'] as const;
const SHOWN = MONTHS.map((month) => month[0]!.toUpperCase() + month.slice(1));
const pad = (n: number): string => String(n).padStart(2, '0');

/** A day written for reading: "14 Mar 2026", or "Mar 14, 2026" where the month comes first. */
export function printDay(day: string, order: DateOrder): string {
  const [year, month, date] = day.split('-').map(Number) as [number, number, number];
  const word = SHOWN[month - 1] ?? '';
  return order === 'day first' ? `${date} ${word} ${year}` : `${word} ${date}, ${year}`;
}

/** The day `steps` days later (negative: earlier). UTC arithmetic on a civil day: no time zone can move it. */
export function addDays(day: string, steps: number): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + steps * 86_400_000).toISOString().slice(0, 10);
}

export type DayRead =
  { readonly ok: true; readonly day: string; readonly yearAssumed: boolean } | { readonly ok: false };

/** The number of a month by its name or the first letters of it; null where it is none. */
export function monthOf(word: string): number | null {
  const index = MONTHS.findIndex((month) => word.toLowerCase().startsWith(month));
  return index < 0 ? null : index + 1;
}

interface Parts {
  readonly year: string | undefined;
  readonly month: number;
  readonly date: number;
}

function partsOf(text: string, order: DateOrder): Parts | null {
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(text);
  if (iso) return { year: iso[1], month: Number(iso[2]), date: Number(iso[3]) };
  const dayWord = /^(\d{1,2})(?:st|nd|rd|th)?[\s.-]*([a-z]{3,9})\.?,?[\s-]*(\d{4}|\d{2})?$/i.exec(text);
  if (dayWord) {
    const month = monthOf(dayWord[2]!);
    return month ? { year: dayWord[3], month, date: Number(dayWord[1]) } : null;
  }
  const wordDay = /^([a-z]{3,9})\.?\s*(\d{1,2})(?:st|nd|rd|th)?(?:,?\s+(\d{4}|\d{2}))?$/i.exec(text);
  if (wordDay) {
    const month = monthOf(wordDay[1]!);
    return month ? { year: wordDay[3], month, date: Number(wordDay[2]) } : null;
  }
  const figures = /^(\d{1,2})\s*[/.-]\s*(\d{1,2})(?:\s*[/.-]\s*(\d{4}|\d{2}))?\.?$/.exec(text);
  if (!figures) return null;
  const [first, second] = [Number(figures[1]), Number(figures[2])];
  // A figure above 12 can only be the day, whatever the preference says.
  const dayFirst = first > 12 || (second <= 12 && order === 'day first');
  return dayFirst
    ? { year: figures[3], month: second, date: first }
    : { year: figures[3], month: first, date: second };
}

/**
 * Reads a typed day: "14 Mar", "3/14/26", "14.3.2026", "2026-03-14", "today", "yesterday".
 * @param order which figure comes first where both could be the day
 * @param today YYYY-MM-DD; a missing year is the latest that makes the day no later than today (or, with `ahead`, the
 *   first that makes it no earlier), and is reported as assumed
 */
export function readDay(text: string, order: DateOrder, today: string, ahead = false): DayRead {
  const typed = text.trim().toLowerCase();
  if (typed === 'today') return { ok: true, day: today, yearAssumed: false };
  if (typed === 'yesterday') return { ok: true, day: addDays(today, -1), yearAssumed: false };
  const parts = partsOf(typed, order);
  if (!parts) return { ok: false };
  const at = (year: number): string => `${year}-${pad(parts.month)}-${pad(parts.date)}`;
  if (parts.year !== undefined) {
    const day = at(parts.year.length === 2 ? 2000 + Number(parts.year) : Number(parts.year));
    return isDay(day) ? { ok: true, day, yearAssumed: false } : { ok: false };
  }
  // Eight years reach across a 29 February that a century year leaves out.
  const thisYear = Number(today.slice(0, 4));
  for (let step = 0; step <= 8; step += 1) {
    const day = at(ahead ? thisYear + step : thisYear - step);
    if (isDay(day) && (ahead ? day >= today : day <= today)) return { ok: true, day, yearAssumed: true };
  }
  return { ok: false };
}

/** Reads a time of day: "18:30", "6:30 pm", "6.30pm", "18h30", "6 pm". Minutes after midnight, or null. */
export function readTime(text: string): number | null {
  const found = /^(\d{1,2})(?:[:.h](\d{2})|h)?\s*(am|pm)?$/i.exec(text.trim());
  if (!found) return null;
  const half = found[3]?.toLowerCase();
  if (found[2] === undefined && half === undefined && !/h$/i.test(text.trim())) return null;
  const hour = Number(found[1]);
  const minute = Number(found[2] ?? 0);
  if (minute > 59 || (half === undefined ? hour > 23 : hour < 1 || hour > 12)) return null;
  return ((half === undefined ? hour : (hour % 12) + (half === 'pm' ? 12 : 0)) % 24) * 60 + minute;
}

export type MomentRead =
  | { readonly ok: true; readonly moment: string; readonly day: string; readonly time: string }
  | { readonly ok: false; readonly why: 'not a time' | 'which day' };

/**
 * Reads a moment: a time alone ("18:30") on `day`, or a day and a time ("14 Mar 6:30 pm", "2026-03-14 18:30").
 * @param day the day a bare time belongs to, or null where it must be said
 * @param offsetAt the offset ("+01:00" or "Z") of a local time written YYYY-MM-DDTHH:MM
 */
export function readMoment(
  text: string,
  day: string | null,
  order: DateOrder,
  today: string,
  offsetAt: (local: string) => string,
): MomentRead {
  const typed = text.trim().replace(/^(\d{4}-\d{2}-\d{2})T/i, '$1 ');
  const bare = readTime(typed);
  let on = day;
  let minutes = bare;
  if (bare === null) {
    const split = /^(.*\S)[\s,]+(\d{1,2}(?:[:.h]\d{2}|h)?\s*(?:am|pm)?)$/i.exec(typed);
    const read = split ? readDay(split[1]!.replace(/,$/, ''), order, today) : null;
    minutes = split ? readTime(split[2]!) : null;
    if (!read?.ok || minutes === null) return { ok: false, why: 'not a time' };
    on = read.day;
  }
  if (on === null || minutes === null) return { ok: false, why: 'which day' };
  const time = `${pad(Math.floor(minutes / 60))}:${pad(minutes % 60)}`;
  return { ok: true, moment: `${on}T${time}:00${offsetAt(`${on}T${time}`)}`, day: on, time };
}

/** Days from one day to another. */
export const daysBetween = (from: string, to: string): number =>
  Math.max(0, Math.round((Date.parse(`${to}T12:00:00Z`) - Date.parse(`${from}T12:00:00Z`)) / 86_400_000));

/** "12 to 18 days" where only that is known; @param least null: the count itself is. */
export const daysSpan = (count: number, least: number | null | undefined): string =>
  least == null || Math.round(least) === Math.round(count)
    ? daysWords(count)
    : `${Math.round(least)} to ${daysWords(count)}`;

/** "1 day", "12 days". */
export const daysWords = (count: number): string => {
  const whole = Math.round(count);
  return `${whole} ${whole === 1 ? 'day' : 'days'}`;
};
