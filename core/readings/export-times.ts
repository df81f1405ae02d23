// When the rows of an export were read: the order of day and month, clocks of twelve hours, times without a day, and the
// night the clocks change, each told by what makes the times run on evenly. Pure: the keeper's zone is asked by a function.
import type { DayOrder } from '../text/days';
import { dayNumber, type ReadStamp } from './export-cells';

const DAY = 86_400;
const HOUR = 3600;
/** The longest that clocks are put back (s). */
const CHANGE = HOUR;

/** What is known of the time beside the file. Moments in seconds since 1970, offsets in minutes ahead of UTC. */
export interface Around {
  readonly began: number | null;
  readonly ended: number | null;
  readonly beganOffset: number | null;
  readonly endedOffset: number | null;
  /** How the keeper writes days, where the file leaves it open. */
  readonly dates: DayOrder;
  /** Offset of the keeper's zone at a moment. */
  readonly offsetAt: (seconds: number) => number;
  /** Today, for a year that is not written. */
  readonly now: number;
}

/** A time as a civil clock showed it (s, as if it were UTC), or as a moment where its offset is written. */
export interface Civil {
  readonly seconds: number;
  readonly offset: number | null;
}

const middle = (numbers: readonly number[]): number =>
  numbers.toSorted((a, b) => a - b)[Math.floor(numbers.length / 2)] ?? 0;

/** Civil start of the hold, or null. */
const civilStart = ({ began, beganOffset }: Around): number | null =>
  began === null ? null : began + (beganOffset ?? 0) * 60;

/** Days of all rows in an order (null: impossible that way). A year that is not written is that of the hold. */
function daysIn(stamps: readonly ReadStamp[], order: DayOrder, around: Around): (number | null)[] {
  const near = (civilStart(around) ?? around.now) / DAY;
  const year = new Date(near * DAY * 1000).getUTCFullYear();
  return stamps.map(({ day }) => {
    if (!day) return null;
    const tries = [year - 1, year, year + 1].flatMap((one) => dayNumber(day, order, one) ?? []);
    return tries.toSorted((a, b) => Math.abs(a - near) - Math.abs(b - near))[0] ?? null;
  });
}

/** The order of day and month in which the rows run on best: all days exist, the times span least, and lie by the hold. */
function orderOfDays(stamps: readonly ReadStamp[], around: Around): { order: DayOrder; either: boolean } {
  const other: DayOrder = around.dates === 'month first' ? 'day first' : 'month first';
  const start = civilStart(around);
  const costs = [around.dates, other, 'year first' as const].map((order) => {
    const days = daysIn(stamps, order, around);
    const known = days.filter((day) => day !== null);
    if (known.length === 0) return { order, cost: Infinity, span: Infinity };
    const [low, high] = [known.reduce((a, b) => Math.min(a, b)), known.reduce((a, b) => Math.max(a, b))];
    const span = high - low + 1e6 * (days.length - known.length);
    const away = start === null ? 0 : Math.max(0, low - start / DAY, start / DAY - high - 1);
    return { order, cost: span + Math.min(1, away / 1000), span };
  });
  const [best, next] = costs.toSorted((a, b) => a.cost - b.cost);
  return { order: best?.order ?? around.dates, either: stamps.some(({ day }) => day && !day.sure) && best?.cost === next?.cost };
} // prettier-ignore

/** Adds what a clock of twelve hours without morning or afternoon leaves out, where the rows show that it is one. */
function unfolded(clocks: readonly number[], days: readonly (number | null)[], start: number | null): number[] {
  const half = 12 * HOUR;
  const steps = clocks.slice(1).map((clock, i) => clock - (clocks[i] ?? 0));
  // From 12:50 to 1:00; where the newest stands first every step goes back a little.
  const wraps = steps.filter((step) => step < -half / 2 && step >= -half).length;
  const twelve = clocks.every((clock) => clock >= HOUR && clock < half + HOUR) && clocks.some((clock) => clock >= half) && wraps > 0;
  if (!twelve) return [...clocks];
  let turns = 0;
  const run = clocks.map((clock, i) => {
    if (i > 0 && clock % half < (clocks[i - 1] ?? 0) % half) turns += 1;
    return (clock % half) + turns * half;
  });
  const known = days[0] !== null && days[0] !== undefined;
  // Midnight is where the day changes; without days, the half that lies nearer the start of the hold.
  const changes = days.findIndex((day, i) => i > 0 && day !== days[i - 1]);
  const late = known && changes > 0
    ? Math.floor((run[changes] ?? 0) / half) % 2 === 1
    : start !== null && Math.abs(((start % DAY) + DAY) % DAY - (run[0] ?? 0)) > half / 2;
  return run.map((seconds) => (late ? seconds + half : seconds));
} // prettier-ignore

/**
 * Civil times of rows in the order of the file.
 * @param given the day that stood above the row, where its times have none of their own
 */
export function civilTimes(
  stamps: readonly ReadStamp[],
  given: readonly (ReadStamp | null)[],
  around: Around,
): { times: Civil[]; order: DayOrder; either: boolean; placed: boolean } {
  const told = stamps.map((stamp, i) => (stamp.day ? stamp : { ...stamp, day: given[i]?.day ?? null }));
  const { order, either } = orderOfDays(told.filter(({ day }) => day), around); // prettier-ignore
  const days = daysIn(told, order, around);
  const clocks = stamps.map(({ clock }) => clock?.seconds ?? 0);
  const start = civilStart(around);
  const sure = stamps.some(({ clock }) => clock?.sure);
  const seconds = sure ? clocks : unfolded(clocks, days, start);
  const own = stamps.every(({ day }) => day !== null);
  if (own && seconds.every((one, i) => one === clocks[i])) {
    const times = seconds.map((one, i) => ({
      seconds: (days[i] ?? 0) * DAY + one,
      offset: stamps[i]?.offset ?? null,
    }));
    return { times, order, either, placed: true };
  }
  // Times without days run on past midnight, from the day above them or from the hold's own.
  const first = days[0] ?? (start === null ? null : Math.round((start - (seconds[0] ?? 0)) / DAY));
  let turns = 0;
  const times = seconds.map((one, i) => {
    const before = seconds[i - 1];
    if (before !== undefined && one + turns * DAY < before + turns * DAY - 12 * HOUR) turns += 1;
    const named = !own && days[i] !== null && days[i] !== days[i - 1] && i > 0 ? (days[i] ?? 0) - (first ?? 0) : null;
    if (named !== null) turns = named;
    return { seconds: ((first ?? 0) + turns) * DAY + one, offset: stamps[i]?.offset ?? null };
  });
  return { times, order, either, placed: first !== null };
} // prettier-ignore

/** A moment with the offset that its clock had. */
export interface At {
  readonly seconds: number;
  readonly offset: number;
}

/**
 * Moments of civil times. Where the clock was put back, the times step back by up to an hour; where it was put forward, an
 * hour is missing between two readings: the keeper's zone or the hold's own offsets say so, or else the night itself does.
 * A logger that never changed its clock shows neither, and keeps the offset that it began with.
 */
export function momentsOf(times: readonly Civil[], around: Around): { at: At[]; changed: 'back' | 'forward' | null } {
  const [head] = times;
  if (!head) return { at: [], changed: null };
  const { beganOffset, endedOffset, offsetAt } = around;
  const guess = beganOffset ?? offsetAt(head.seconds - offsetAt(head.seconds) * 60);
  // The zone of this machine is the keeper's only where it agrees with what the hold says.
  const inZone = around.began === null || offsetAt(around.began) === beganOffset;
  const offsetFor = (civil: number): number => offsetAt(civil - offsetAt(civil - guess * 60) * 60);
  const steps = times.slice(1).map((time, i) => time.seconds - (times[i]?.seconds ?? 0));
  const usual = middle(steps.filter((step) => step > 0));
  let offset = inZone ? offsetFor(head.seconds) : guess;
  let changed: 'back' | 'forward' | null = null;
  const at = times.map((time, i): At => {
    if (time.offset !== null) return { seconds: time.seconds - time.offset * 60, offset: time.offset };
    const step = i === 0 ? usual : (steps[i - 1] ?? usual);
    if (changed === null && isBack(time.seconds, step, usual)) {
      offset -= 60;
      changed = 'back';
    } else if (changed === null && i > 0 && step > CHANGE && isForward(times[i - 1]?.seconds ?? 0, time.seconds, step - CHANGE, usual)) {
      const zoneSays = inZone && offsetFor(time.seconds) === offset + 60;
      const holdSays = beganOffset !== null && endedOffset === beganOffset + 60;
      if (zoneSays || holdSays || (!inZone && endedOffset === null)) {
        offset += 60;
        changed = 'forward';
      }
    }
    return { seconds: time.seconds - offset * 60, offset };
  });
  return { at, changed };
} // prettier-ignore

/** Whether a step goes back by the hour that is lived twice, before five in the morning. */
const isBack = (to: number, step: number, usual: number): boolean =>
  step < 0 && step + CHANGE >= 0 && step + CHANGE <= 1.6 * usual && ((to % DAY) + DAY) % DAY < 5 * HOUR;

/** Whether a step leaves out just the hour that is missing when clocks are put forward, on a Sunday before four. */
function isForward(from: number, to: number, rest: number, usual: number): boolean {
  const hour = Math.floor((((to % DAY) + DAY) % DAY) / HOUR);
  const sunday = new Date(to * 1000).getUTCDay() === 0;
  const missing = (((from % DAY) + DAY) % DAY) < hour * HOUR;
  return sunday && hour >= 1 && hour < 4 && missing && rest > 0 && rest < 1.6 * usual;
} // prettier-ignore
