// The looks of a hold that runs: which are done, due, missed and by how much, and what is still to come. Looks go by the
// clock, also through power cuts.
import { LOOK_HOURS } from './waking-hours';

const HOUR = 3600;
/** An observation so near to a look (h) is that look; a look not taken by then is missed. */
const NEAR = 3;

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
 * @param seenHours hours after the start at which somebody looked
 */
export function looksOf(
  began: number,
  ends: number | null,
  seenHours: readonly number[],
  now: number,
): HoldLook[] {
  const marks = LOOK_HOURS.filter((hours) => ends === null || began + hours * HOUR < ends).map((hours) => ({
    what: 'look' as const,
    hours,
  }));
  const all = ends === null ? marks : [...marks, { what: 'take-out' as const, hours: (ends - began) / HOUR }];
  return all.map(({ what, hours }) => {
    const at = began + hours * HOUR;
    const done = what === 'look' && seenHours.some((seen) => Math.abs(seen - hours) <= NEAR);
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
