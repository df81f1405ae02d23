// Whether a jar may still stand in its hold: nobody has seen how it came out, so it is no seed yet.

import { daysBetween, type HoldRecord } from '../vigour/evidence';

/** Where nothing tells when a hold ends, a jar younger than this (days) may still be in it (common practice, no source). */
const HOLD_DAYS = 2;
const HOUR = 3_600_000;

/** When a hold ends, in milliseconds; null where nothing tells. */
function endOf({ startedAt, endedAt, hours }: HoldRecord): number | null {
  if (endedAt !== null) return Date.parse(endedAt);
  return startedAt === null || hours === null ? null : Date.parse(startedAt) + hours * HOUR;
}

/**
 * Whether the hold of a jar whose outcome nobody wrote down has not ended yet, as far as is known.
 * @param now the moment, ISO 8601 with its offset @param today its day
 */
export function mayBeInHold(hold: HoldRecord | null, madeOn: string, now: string, today: string): boolean {
  const end = hold && endOf(hold);
  return end === null ? daysBetween(madeOn, today) < HOLD_DAYS : end > Date.parse(now);
}
