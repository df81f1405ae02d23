// The looks of a hold that runs: which are done, due, missed and by how much, what is still to come, and what it asks for
// now. Looks go by the clock, also through power cuts.
import { LOOK_HOURS } from './waking-hours';

const HOUR = 3600;
/** A look not taken by so long after its time (h) is missed. */
const NEAR = 3;
/** From so long before its time on (h) a look counts as that look: the early one from 6 h on (common practice, no source). */
const opensBefore = (hours: number): number => (hours <= 12 ? 6 : NEAR);

export interface HoldLook {
  readonly what: 'look' | 'take-out';
  /** Hours after the start, and the moment (s since 1970). */
  readonly hours: number;
  readonly at: number;
  readonly state: 'done' | 'due' | 'missed' | 'to come';
  /** Past its time; 0 where it is not. */
  readonly lateMinutes: number;
}

/**
 * @param began and ends in seconds since 1970; ends null: nobody said
 * @param seenHours of each jar in it, the hours after the start at which somebody looked at it; a look is done once every jar
 * had it
 */
export function looksOf(
  began: number,
  ends: number | null,
  seenHours: readonly (readonly number[])[],
  now: number,
): HoldLook[] {
  const marks = LOOK_HOURS.filter((hours) => ends === null || began + hours * HOUR < ends).map((hours) => ({
    what: 'look' as const,
    hours,
  }));
  const all = ends === null ? marks : [...marks, { what: 'take-out' as const, hours: (ends - began) / HOUR }];
  return all.map(({ what, hours }) => {
    const at = began + hours * HOUR;
    const done =
      what === 'look' &&
      seenHours.length > 0 &&
      seenHours.every((seen) => seen.some((one) => isLookAt(one, hours)));
    const late = done ? 0 : Math.max(0, Math.round((now - at) / 60));
    const over = what === 'look' && now - at > NEAR * HOUR;
    return {
      what,
      hours,
      at,
      state: done ? 'done' : now < at ? 'to come' : over ? 'missed' : 'due',
      lateMinutes: late,
    };
  });
}

/** Whether a look so many hours after the start is the one that is due at so many. */
export const isLookAt = (seen: number, hours: number): boolean =>
  seen >= hours - opensBefore(hours) && seen <= hours + NEAR;

/** What a hold that runs asks for now. Moments in seconds since 1970. */
export interface HoldAsks {
  /** 'look': it is time for one, or it opened; 'take-out': its time has come; 'in warmth': nothing now. */
  readonly what: 'look' | 'take-out' | 'in warmth';
  /** The look that is open, or the next to come; null: none is left. From `opens` on it counts. */
  readonly look: { readonly hours: number; readonly opens: number; readonly at: number } | null;
  readonly ends: number | null;
  /** Until it is over; below 0 once it is; null where nobody said when. */
  readonly minutesLeft: number | null;
  /** By which what is asked for is past its time. */
  readonly lateMinutes: number;
  /** Hours of looks that nobody took. */
  readonly missed: readonly number[];
}

/** What it asks for: the take-out before a look, the look that is open before one to come. As looksOf. */
export function asksNow(
  began: number,
  ends: number | null,
  seenHours: readonly (readonly number[])[],
  now: number,
): HoldAsks {
  const looks = looksOf(began, ends, seenHours, now).filter(({ what }) => what === 'look');
  const missed = looks.flatMap(({ hours, state }) => (state === 'missed' ? [hours] : []));
  const next = looks.find(({ state }) => state === 'due' || state === 'to come');
  const look = next
    ? { hours: next.hours, opens: next.at - opensBefore(next.hours) * HOUR, at: next.at }
    : null;
  const told = { look, ends, minutesLeft: ends === null ? null : Math.ceil((ends - now) / 60) + 0, missed };
  if (ends !== null && now >= ends)
    return { ...told, what: 'take-out', lateMinutes: Math.floor((now - ends) / 60) };
  if (look && next && now >= look.opens) return { ...told, what: 'look', lateMinutes: next.lateMinutes };
  return { ...told, what: 'in warmth', lateMinutes: 0 };
}
