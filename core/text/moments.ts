// When a hold began and ended, as jotted down → how long it was: "7pm" to "9am next day", "2025-05-02 19:00" to "4 May 7:00".
import { plain, tidy } from '../quantities/quantities';
import { dayIn, findDay, nearestDay, type DayOrder, type ReadDay } from './days';
import { weekdayOf } from './weekdays';

export interface ReadTime {
  /** Without its year where none was written. */
  readonly day: ReadDay | null;
  /** Minutes after midnight. */
  readonly minutes: number | null;
  /** Days after the first: "next day", "(+2)". */
  readonly later: number | null;
  /** From Sunday (0) on, where only the day of the week is told. */
  readonly weekday?: number;
}

const CLOCK =
  /(?:^|[^\d.,+])(\d{1,2})(?:(?:[:.]|\s?h\s?)(\d{2})(?::\d{2})?|\s?(?=[ap]\.?m\b|uhr|h\b)|(?=[ap]\b))\s*(a\.?m\b\.?|p\.?m\b\.?|(?<=\d)[ap]\b)?/i;
/** "7 in the evening", "8 o'clock in the morning", "7 uhr abends". */
const HALF_DAY =
  /\b(\d{1,2}(?:[:.]\d{2})?)\s*(?:o'?clock|uhr)?\s*(?:in the |at )?(morning|morgens?|fruh|afternoon|nachmittags?|evening|abends?|night|nachts)\b/;
const LATER: readonly (readonly [RegExp, number])[] = [
  [/\b(?:2|two) days (?:later|after)\b|\bday after next\b|\bubernachst\w*/, 2],
  [/\b(?:next|following) (?:day|morning|evening|night)\b|\bday after\b|\btomorrow\b|\b(?:am )?nachste[rnm]? (?:tag|morgen)\b|\blendemain\b|\bdia siguiente\b|\bgiorno dopo\b|\bvolgende dag\b|\bdia seguinte\b|\b(?:nasta|naeste|neste) dag\b|\bnastepnego dnia\b/, 1],
  [/\bsame (?:day|evening|night)\b/, 0],
]; // prettier-ignore

/** A day, a time of day, or both, and nothing that says neither; null where neither is told. */
export function readMoment(text: string, order: DayOrder): ReadTime | null {
  const clean = tidy(text);
  const found = findDay(clean);
  const day = found ? dayIn(found, order) : null;
  let rest = clean;
  if (found) {
    const told = clean.slice(found.start, found.end).replace(/[T ]\d{1,2}:\d{2}.*$/, '');
    rest = `${clean.slice(0, found.start)} ${clean.slice(found.start + told.length)}`.replace(
      / T(?=\d)/,
      ' ',
    );
  }
  // "1900", as clocks of 24 hours are jotted down.
  const said = plain(rest)
    .replace(/^([01]\d|2[0-3])([0-5]\d)$/, '$1:$2')
    .replace(
      HALF_DAY,
      (_, clock: string, half: string) => `${clock} ${/^(?:morn|morg|fruh)/.test(half) ? 'am' : 'pm'}`,
    );
  const clock = CLOCK.exec(said);
  let minutes: number | null = null;
  if (clock) {
    const half = clock[3]?.[0];
    const hour = Number(clock[1]);
    const minute = Number(clock[2] ?? 0);
    if (minute > 59 || (half === undefined ? hour > 24 : hour < 1 || hour > 12)) return null;
    minutes = (half === undefined ? hour : (hour % 12) + (half === 'p' ? 12 : 0)) * 60 + minute;
  } else if (/\bnoon\b|\bmidday\b|\bmittags?\b|\bmidi\b/.test(said)) minutes = 12 * 60;
  else if (/\bmidnight\b|\bmitternacht\b|\bminuit\b/.test(said)) minutes = 24 * 60;
  const plus = /\+\s?(\d)(?:\s?(?:d|days?|tage?))?\b/.exec(said)?.[1];
  const later =
    plus === undefined ? (LATER.find(([pattern]) => pattern.test(said))?.[1] ?? null) : Number(plus);
  const weekday = day === null ? weekdayOf(said) : null;
  if (day === null && minutes === null) return null;
  return { day, minutes, later, ...(weekday === null ? {} : { weekday }) };
}

/** What parts two moments of one cell. */
const UNTIL = /\s*(?:→|->|\s-\s|\s(?:to|until|till|bis|[aà]|tot|til|till|do|al?le)\s)\s*/iu;

/**
 * When a hold began and ended, told in one cell: "19:00 - 07:00", "7pm to 7am", "2 May 19:00 → 4 May 7:00"; else null.
 * "30 - 36 h" is a length between two.
 */
export function readSpan(text: string, order: DayOrder): { from: string; to: string } | null {
  const clean = tidy(text).replace(/^(?:from|von|de|da|van|fra|fr[aå]n|od)\s+/iu, '');
  const halves = clean.split(UNTIL);
  const close = /^(.*\d(?:[:.]\d{2}|\s?[ap]\.?m\b\.?|\s?uhr))-(\S.*)$/iu.exec(clean);
  const [from = '', to = ''] = halves.length === 2 ? halves : close ? close.slice(1) : [];
  const clock = (half: string): boolean =>
    /\d[:.](?:00|15|30|45)\b|\d:\d{2}|\d\s?[ap]\.?m\b|\d\s?uhr\b/i.test(half) &&
    readMoment(half, order)?.minutes != null;
  return clock(from) && clock(to) ? { from, to } : null;
}

const dayNumber = (day: string): number => Date.parse(`${day}T00:00:00Z`) / 86_400_000;
/**
 * Hours between two moments, and the end in words; null where they don't tell them. An end without a day is the first
 * such time after the start, at least three hours later. Clocks put forward or back in between are not counted.
 * @param made the day the jar was made, YYYY-MM-DD: the day of a start that tells none.
 */
export function hoursBetween(
  start: ReadTime,
  end: ReadTime,
  made: string,
): { hours: number; nextDay: number | null } | null {
  if (start.minutes === null || end.minutes === null) return null;
  const from = start.day === null ? made : nearestDay(start.day, made);
  if (from === null) return null;
  const clock = end.minutes - start.minutes;
  if (end.day !== null) {
    const to = nearestDay(end.day, from);
    if (to === null) return null;
    const hours = (dayNumber(to) - dayNumber(from)) * 24 + clock / 60;
    return hours > 0 ? { hours, nextDay: null } : null;
  }
  const days = end.later ?? weekdaysBetween(start, end, from) ?? (clock >= 180 ? 0 : 1);
  const hours = days * 24 + clock / 60;
  return hours > 0 ? { hours, nextDay: end.later === null && days < 2 ? days : null } : null;
}

/** Days from the day of the week that a hold began on to the one that it ended on; null where the end tells none. */
function weekdaysBetween(start: ReadTime, end: ReadTime, from: string): number | null {
  if (end.weekday === undefined) return null;
  const began = start.weekday ?? new Date(`${from}T00:00:00Z`).getUTCDay();
  const days = (end.weekday - began + 7) % 7;
  return days === 0 && (end.minutes ?? 0) <= (start.minutes ?? 0) ? 7 : days;
}
