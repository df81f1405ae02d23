// When a hold that runs is planned to end, and until when it is spoken of. Pure.
import { momentText, storedMoment } from './stored-moments';

const HOUR = 3600;
/** How long after its planned end, or after this long without one, a hold that nobody ended counts as forgotten (h). */
const FORGOTTEN_AFTER = 48;
const LONGEST_UNPLANNED = 72;

export interface Running {
  /** Moments, with the offset of the start. */
  readonly began: string;
  /** When it is planned to end: a moment, or after so many hours; null where nobody said. */
  readonly plannedTo: string | null;
  readonly hours: number | null;
}

/**
 * When a hold that nobody ended began: as noted, or as planned. Where a batch is recorded on the day it is made and nobody
 * noted a start, the plan begins when it was recorded.
 */
export const beganOrPlanned = (hold: {
  readonly began: string | null;
  readonly plannedFrom: string | null;
}): string | null => hold.began ?? hold.plannedFrom;

const after = (moment: string, hours: number): string => {
  const { seconds, offset } = storedMoment(moment);
  return momentText(seconds + Math.round(hours * HOUR), offset);
};
const at = (moment: string): number => storedMoment(moment).seconds;

/** When it is planned to end; null where nobody said. */
export const endsAt = ({ began, plannedTo, hours }: Running): string | null =>
  plannedTo ?? (hours === null ? null : after(began, hours));

/** Whether a hold that began and that nobody ended is still to be spoken of at a moment. */
export function stillRuns(hold: Running, now: string): boolean {
  const ends = endsAt(hold);
  const until = ends === null ? after(hold.began, LONGEST_UNPLANNED) : after(ends, FORGOTTEN_AFTER);
  return at(hold.began) <= at(now) && at(now) < at(until);
}
