// The one clock of the ledger: the machine's in a named time zone, or standing still at `--now`.
import { storedMoment } from '../../core/ledger/stored-moments';

export interface Clock {
  /** Now, with its offset: 2026-03-14T18:30:00.000+01:00. */
  readonly now: () => string;
  /** The civil day it is for the keeper, YYYY-MM-DD. */
  readonly today: () => string;
  /** Milliseconds since 1970, for ids. */
  readonly milliseconds: () => number;
  /** Minutes by which the keeper's clock is ahead of UTC at a moment (ms since 1970). */
  readonly offsetAt: (milliseconds: number) => number;
}

const two = (value: number): string => String(value).padStart(2, '0');

/**
 * The machine's clock in the zone (IANA name). The zone's rules are asked each time, so a clock change in the
 * night moves the offset, never the day.
 */
export function machineClock(timeZone: string, milliseconds: () => number = Date.now): Clock {
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
    fractionalSecondDigits: 3,
    timeZoneName: 'longOffset',
  });
  const parts = (at = milliseconds()): Record<string, string> =>
    Object.fromEntries(format.formatToParts(at).map(({ type, value }) => [type, value]));
  return {
    now: () => {
      const p = parts();
      // "GMT" alone is UTC; zones of long ago carry seconds, which ISO 8601 offsets don't.
      const offset = /GMT([+-]\d{2}:\d{2})/.exec(p.timeZoneName ?? '')?.[1] ?? 'Z';
      return `${p.year}-${p.month}-${p.day}T${p.hour}:${p.minute}:${p.second}.${p.fractionalSecond}${offset}`;
    },
    today: () => {
      const p = parts();
      return `${p.year}-${p.month}-${p.day}`;
    },
    milliseconds,
    offsetAt: (at) => {
      const offset = /GMT([+-])(\d{2}):(\d{2})/.exec(parts(at).timeZoneName ?? '');
      const minutes = offset ? Number(offset[2]) * 60 + Number(offset[3]) : 0;
      return offset?.[1] === '-' ? -minutes : minutes;
    },
  };
}

/**
 * A clock that stands still at a moment with its offset. Today is the day as written there.
 * @param timeZone whose rules tell the offset of other moments; without one it is that of the moment
 */
export function stillClock(moment: string, timeZone: string | null = null): Clock {
  const at = Date.parse(moment);
  if (Number.isNaN(at)) throw new Error(`${moment} is no moment`);
  const { offset } = storedMoment(moment);
  // Made when it is first asked: reading a zone's rules costs more than most calls.
  let zone: Clock | null = null;
  return {
    now: () => moment,
    today: () => moment.slice(0, 10),
    milliseconds: () => at,
    offsetAt: (other) => (timeZone === null ? offset : (zone ??= machineClock(timeZone)).offsetAt(other)),
  };
}

/** The last second that has a year of four digits (ms since 1970). */
const LAST_STAMP = Date.UTC(9999, 11, 31, 23, 59, 59);

/**
 * The moment as text that sorts by time and suits a file name: 20260314T173000Z. What a clock says from before 1970 or
 * after 9999 is drawn to that end.
 */
export function stampOf(milliseconds: number): string {
  const at = new Date(Math.min(Math.max(milliseconds, 0), LAST_STAMP));
  return (
    `${at.getUTCFullYear()}${two(at.getUTCMonth() + 1)}${two(at.getUTCDate())}` +
    `T${two(at.getUTCHours())}${two(at.getUTCMinutes())}${two(at.getUTCSeconds())}Z`
  );
}
