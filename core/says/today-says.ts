// What the place of today says of a hold that runs, from its figures: what is due, or quietly how it stands.
import { dayLabel } from '../lineage/labels';
import { momentText, storedMoment } from '../ledger/stored-moments';
import type { HoldAsks } from '../plan/hold-looks';

export interface TodayWords {
  readonly title: string;
  readonly rest: string;
}

const DAY = 86_400;

/** From here on (s) a moment is told by the clock on which it was written: in between the clocks may have changed. */
const LONG_AGO = 7 * DAY;

/** "08:00", "tomorrow at 08:00", "4 May at 08:00", as the clock stands now. */
export function clockWords(moment: string, now: string): string {
  const { offset, seconds } = storedMoment(now);
  const told = storedMoment(moment);
  const far = Math.abs(told.seconds - seconds) > LONG_AGO;
  const local = momentText(told.seconds, far ? told.offset : offset);
  const time = local.slice(11, 16);
  const day = local.slice(0, 10);
  const on = (days: number): string => momentText(seconds + days * DAY, offset).slice(0, 10);
  if (day === on(0)) return time;
  if (day === on(1)) return `tomorrow at ${time}`;
  if (day === on(-1)) return `yesterday at ${time}`;
  return `${dayLabel(day, false)} at ${time}`;
}

/** "18 h 20 min", "45 min", "3 h": how long something takes. */
export function lengthWords(minutes: number): string {
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  if (hours === 0) return `${rest} min`;
  return rest === 0 ? `${hours} h` : `${hours} h ${rest} min`;
}

/** "20 min", "3 h", "2 days": how late something is, no finer than anybody asks. */
export function lateWords(minutes: number): string {
  if (minutes < 60) return `${minutes} min`;
  const hours = Math.round(minutes / 60);
  return hours < 48 ? `${hours} h` : `${Math.floor(hours / 24)} days`;
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;

/** How late something is that was due at a moment: "was due 3 h ago, at 08:00". */
const dueWords = (late: number, at: string, now: string): string =>
  late < 1
    ? `is due now, ${clockWords(at, now)}`
    : `was due ${lateWords(late)} ago, ${/^\d/.test(clockWords(at, now)) ? 'at ' : ''}${clockWords(at, now)}`;

/** "Nobody looked at 12 h." */
const missedWords = (missed: readonly number[]): string =>
  missed.length === 0 ? '' : ` Nobody looked at ${missed.join(' and ')} h.`;

/** @param label of what stands in it @param began when it began, and `now`, as moments */
export function todayWords(label: string, began: string, asks: HoldAsks, now: string): TodayWords {
  const { what, look, ends, minutesLeft, lateMinutes, missed } = asks;
  const { offset } = storedMoment(now);
  const moment = (seconds: number): string => momentText(Math.round(seconds), offset);
  const out = ends === null ? null : `out ${clockWords(moment(ends), now)}`;
  const left = minutesLeft === null ? null : `${lengthWords(minutesLeft)} left`;
  if (what === 'take-out' && ends !== null)
    return {
      title: `Take ${label} out.`,
      rest: sentence(`the take-out ${dueWords(lateMinutes, moment(ends), now)}`),
    };
  if (what === 'look' && look) {
    const by = clockWords(moment(look.at), now);
    if (lateMinutes > 0)
      return {
        title: `Look at ${label} now.`,
        rest: sentence(`the look at ${look.hours} h ${dueWords(lateMinutes, moment(look.at), now)}`),
      };
    return {
      title: `Look at ${label} by ${by.replace(/^tomorrow at /, 'tomorrow, ')}.`,
      rest: sentence(left ?? 'in warmth'),
    };
  }
  const next = look ? `look at ${look.hours} h, due ${clockWords(moment(look.at), now)}` : out;
  const since = Math.floor((storedMoment(now).seconds - storedMoment(began).seconds) / 60);
  return {
    title: left === null ? `${label} is in warmth.` : `${label}: ${left}.`,
    rest: `${sentence(next ?? `in warmth for ${lengthWords(since)}`)}${missedWords(missed)}`,
  };
}

/** What falls due on the shelf. The days are the keeper's limits, none a promise. */
export function shelfDueSays(name: string, what: 'eat by' | 'seed by', today: boolean): TodayWords {
  const when = today ? 'today' : 'tomorrow';
  return what === 'eat by'
    ? {
        title: `${name}: eat by ${when}.`,
        rest: 'By the days that things keep (Preferences). Look and smell first, whatever the day.',
      }
    : {
        title: `${name}: seed by ${when}.`,
        rest: 'After that it is too old to seed from (Preferences).',
      };
}

const CHECKS = {
  meter: 'Check the meter in buffer',
  thermometer: 'Check the thermometer in ice water',
  fridge: 'Check the fridge with a glass of water',
} as const;

/** A check that is due again. @param days since the last @param out what comes out of warmth today */
export const checkDueSays = (tool: keyof typeof CHECKS, days: number, out: string | null): TodayWords => ({
  title: `${CHECKS[tool]}.`,
  rest:
    tool === 'meter'
      ? `Before ${out ?? 'a jar'} comes out: an unchecked meter proves nothing.`
      : `It was checked ${days} days ago.`,
});

/** That there is too little for a fresh start. @param line that asks for one */
export const orderSays = (
  line: string,
  { name, took, left }: { readonly name: string; readonly took: number; readonly left: number | null },
): TodayWords => ({
  title: `Order ${name}.`,
  rest: `${line} may need a fresh start: ${left ?? 0} pieces are left, and the last start took ${took}.`,
});

/** That a line has nothing to fall back on. @param jar of which a reserve could be kept */
export const reserveSays = (line: string, jar: string, lacks: 'none' | 'too old'): TodayWords => ({
  title: `Time for a reserve of ${line}.`,
  rest: `${lacks === 'none' ? 'Nothing of it is kept back' : 'What was kept back is past its best'}: freeze some of ${jar} in cubes.`,
});
