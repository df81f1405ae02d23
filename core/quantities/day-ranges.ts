// Days that are known only roughly, as people say them: "about 15 Jan", "mid January", "Jan 2025", "between 3 and 9 Jan".
import { isDay } from '../ledger/basics';
import { addDays, type DateOrder, monthOf, printDay, readDay } from './typed-days';

/** A day between these two, both counted: YYYY-MM-DD, the first no later than the second. */
export interface DayRange {
  readonly from: string;
  readonly to: string;
}

/** "About" a day is taken as so many days either way. */
const ABOUT_DAYS = 3;

const DAY_MS = 86_400_000;
const at = (day: string): number => Date.parse(`${day}T00:00:00Z`) / DAY_MS;

/** The day in the middle, the earlier of two: where something of such days stands in order. No figure is made of it. */
export const middleDay = ({ from, to }: DayRange): string =>
  from === to ? from : addDays(from, Math.floor((at(to) - at(from)) / 2));

/** "between 3 Jan 2026 and 9 Jan 2026"; read again it is the same range. */
export const printRange = ({ from, to }: DayRange, order: DateOrder): string =>
  `between ${printDay(from, order)} and ${printDay(to, order)}`;

export type RangeRead =
  { readonly ok: true; readonly range: DayRange; readonly yearAssumed: boolean } | { readonly ok: false };
const NOT_READ: RangeRead = { ok: false };

const ABOUT = /^(?:(?:about|around|roughly|approx\.?|circa|ca\.?|c\.|in|sometime in)\s+|[~≈]\s*)+/;
/** Which days of a month a part of it is: common usage, no source. */
const PARTS: readonly (readonly [RegExp, number, number])[] = [
  [/^(?:early|(?:the )?beginning of|(?:the )?start of)[\s-]+/, 1, 10],
  [/^(?:mid(?:dle)?|(?:the )?middle of)[\s-]+/, 11, 20],
  [/^(?:late|(?:the )?end of)[\s-]+/, 21, 31],
];
const BETWEEN = /^(?:(?:some(?:where|time) )?between\s+(.+?)\s+and\s+(.+)|from\s+(.+?)\s+(?:to|until|till)\s+(.+)|(.+?)(?:\s+(?:to|until|till|or)\s+|\s*[–—]\s*|\s+-\s+)(.+))$/; // prettier-ignore
/** "3-9 Jan 2026": one month for both. */
const ONE_MONTH = /^(\d{1,2})\s*[-–—]\s*(\d{1,2})\s+(\p{L}.*)$/u;

const MONTH_NAMES =
  'january february march april may june july august september october november december'.split(' ');
const isMonth = (word: string): boolean =>
  word === 'sept' || MONTH_NAMES.some((name) => name.startsWith(word));

const pad = (n: number): string => String(n).padStart(2, '0');
const lastOf = (year: number, month: number): string =>
  addDays(month === 12 ? `${year + 1}-01-01` : `${year}-${pad(month + 1)}-01`, -1);

/** A month with or without its year: "january", "jan 2025", "01/2025", "2025-01". */
function monthIn(text: string): { readonly month: number; readonly year: number | null } | null {
  const word = /^(\p{L}{3,9})\.?(?:,?\s+(?:of\s+)?(\d{4}))?$/u.exec(text);
  const month = word?.[1] && isMonth(word[1]) ? monthOf(word[1]) : null;
  if (month !== null) return { month, year: word?.[2] ? Number(word[2]) : null };
  const figures =
    /^(?<month>\d{1,2})\s*[./-]\s*(?<year>\d{4})$/.exec(text) ??
    /^(?<year>\d{4})-(?<month>\d{1,2})$/.exec(text);
  const told = { month: Number(figures?.groups?.['month']), year: Number(figures?.groups?.['year']) };
  return told.month >= 1 && told.month <= 12 ? told : null;
}

/** The days of a month, or of a part of it. */
function daysOfMonth(text: string, today: string): RangeRead {
  const part = PARTS.find(([begins]) => begins.test(text));
  const told = monthIn(part ? text.replace(part[0], '') : text);
  if (!told) return NOT_READ;
  const [first, last] = part ? [part[1], part[2]] : [1, 31];
  const of = (year: number): DayRange => {
    const end = lastOf(year, told.month);
    const to = `${year}-${pad(told.month)}-${pad(last)}`;
    return { from: `${year}-${pad(told.month)}-${pad(first)}`, to: to < end ? to : end };
  };
  if (told.year !== null) return { ok: true, range: of(told.year), yearAssumed: false };
  const year = Number(today.slice(0, 4));
  const range = of(year);
  return { ok: true, range: range.from <= today ? range : of(year - 1), yearAssumed: true };
}

/** From one day to another; where the first says no month or year it has those of the second. */
function daysBetweenTwo(text: string, order: DateOrder, today: string): RangeRead {
  const one = ONE_MONTH.exec(text);
  const [first, second] = one
    ? [`${one[1]} ${one[3]}`, `${one[2]} ${one[3]}`]
    : (BETWEEN.exec(text)
        ?.slice(1)
        .filter((part) => part !== undefined) ?? []);
  if (first === undefined || second === undefined) return NOT_READ;
  const to = readDay(second, order, today);
  if (!to.ok) return NOT_READ;
  const bare = /^(\d{1,2})(?:st|nd|rd|th)?$/.exec(first);
  const own = bare
    ? { ok: true as const, day: `${to.day.slice(0, 8)}${pad(Number(bare[1]))}`, yearAssumed: false }
    : readDay(first, order, today);
  if (!own.ok || !isDay(own.day)) return NOT_READ;
  // A day without its year lies before the other: "28 Dec" of "28 Dec and 3 Jan 2026".
  const before = own.yearAssumed ? readDay(first, order, to.day) : own;
  if (!before.ok || before.day > to.day) return NOT_READ;
  return { ok: true, range: { from: before.day, to: to.day }, yearAssumed: to.yearAssumed };
}

/**
 * Reads days that are known only roughly. What is made is made by today, so no range reaches beyond it.
 * @param today YYYY-MM-DD; a missing year is the latest that begins no later than today, and is reported as assumed
 * @returns not ok for a single day that is said as such: that is readDay's
 */
export function readDayRange(text: string, order: DateOrder, today: string): RangeRead {
  const typed = text.trim().toLowerCase().replaceAll(/\s+/g, ' ');
  const bare = typed.replace(ABOUT, '');
  const two = daysBetweenTwo(bare, order, today);
  const read = two.ok ? two : daysOfMonth(bare, today);
  if (read.ok) return endedBy(read, today);
  if (/^\d{4}$/.test(bare) && isDay(`${bare}-01-01`))
    return endedBy(
      { ok: true, range: { from: `${bare}-01-01`, to: `${bare}-12-31` }, yearAssumed: false },
      today,
    );
  const day = bare === typed ? NOT_READ : readDay(bare, order, today);
  if (!('day' in day)) return NOT_READ;
  const range = { from: addDays(day.day, -ABOUT_DAYS), to: addDays(day.day, ABOUT_DAYS) };
  return endedBy({ ok: true, range, yearAssumed: day.yearAssumed }, today);
}

function endedBy(read: RangeRead & { ok: true }, today: string): RangeRead {
  const { from, to } = read.range;
  return from <= today && to > today ? { ...read, range: { from, to: today } } : read;
}
