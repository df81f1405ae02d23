// Whether a jar may still stand in its hold: then nobody has seen how it comes out, and it is no seed yet.
import type { Hold, Outcome } from '../ledger/records';
import { dayBegan } from '../ledger/stored-moments';
import { daysBetween } from '../quantities/typed-days';

type HoldTimes = Pick<Hold, 'startedAt' | 'endedAt' | 'hours'>;

/** Where nothing tells when a hold ends, a jar younger than this (days) may still be in it (common practice, no source). */
const HOLD_DAYS = 2;
const HOUR = 3_600_000;

/** When a hold ends, in milliseconds; null where nothing tells. */
function endOf({ startedAt, endedAt, hours }: HoldTimes): number | null {
  if (endedAt !== null) return Date.parse(endedAt);
  return startedAt === null || hours === null ? null : Date.parse(startedAt) + hours * HOUR;
}

/** The earliest that a hold can end whose start nobody noted: it began on the day the jar was made, or later. */
const earliestEnd = ({ hours }: HoldTimes, madeOn: string, now: string): number =>
  dayBegan(madeOn, now) + (hours ?? 0) * HOUR;

/**
 * Whether a jar's hold has not ended yet, as far as is known. Until a known end no words count: what was written too soon is of
 * an early look. Where nothing tells when it ends, what was looked at at take-out is out.
 * @param known whether its outcome tells how it came out
 * @param now the moment, ISO 8601 with its offset @param today its day
 */
export function mayBeInHold(
  hold: HoldTimes | null,
  outcome: Pick<Outcome, 'setAtTakeOut'> | null,
  known: boolean,
  madeOn: string,
  now: string,
  today: string,
): boolean {
  const end = hold && endOf(hold);
  if (end !== null) return end > Date.parse(now);
  if (hold && earliestEnd(hold, madeOn, now) > Date.parse(now)) return true;
  return outcome?.setAtTakeOut == null && !known && daysBetween(madeOn, today) < HOLD_DAYS;
}

/**
 * The day on which a jar came out of warmth, from which on it stands somewhere else: the end of its hold, or the start and
 * its hours; where only the hours are known those after the day it was made, as whole days. Unknown: the day it was made.
 */
export function outOfWarmthOn(hold: HoldTimes | null, madeOn: string): string {
  const later = (days: number): string =>
    new Date(Date.parse(`${madeOn}T12:00:00Z`) + days * 24 * HOUR).toISOString().slice(0, 10);
  if (hold === null) return madeOn;
  const { startedAt, endedAt, hours } = hold;
  if (endedAt !== null) return endedAt.slice(0, 10) > madeOn ? endedAt.slice(0, 10) : madeOn;
  if (hours === null) return madeOn;
  // The clock on which it was started is the clock on which it ended.
  const started =
    startedAt === null ? 0 : Date.parse(`${startedAt.slice(0, 19)}Z`) - Date.parse(`${madeOn}T00:00:00Z`);
  return later(Math.max(0, Math.floor((started / HOUR + hours) / 24)));
}
