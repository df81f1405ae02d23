// What a hold that still runs asks for next: the early look, then the take-out. Pure.
import { momentText, storedMoment } from './stored-moments';

/** Hours after the start between which the early look is taken (see the words: 6 to 12 h). */
const EARLY_FROM = 6;
const EARLY_BY = 12;
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
  /** The early look was taken, of all its jars. */
  readonly earlySeen: boolean;
}

export interface NextLook {
  readonly what: 'early look' | 'take-out';
  /** From when on, and by when. null: nobody said when it is to end. */
  readonly from: string | null;
  readonly by: string | null;
  /** It is time, or past it. */
  readonly due: boolean;
}

const after = (moment: string, hours: number): string => {
  const { seconds, offset } = storedMoment(moment);
  return momentText(seconds + Math.round(hours * HOUR), offset);
};
const at = (moment: string): number => storedMoment(moment).seconds;

/** When it is planned to end; null where nobody said. */
export const endsAt = ({
  began,
  plannedTo,
  hours,
}: Pick<Running, 'began' | 'plannedTo' | 'hours'>): string | null =>
  plannedTo ?? (hours === null ? null : after(began, hours));

/** Whether a hold that began and that nobody ended is still to be spoken of at a moment. */
export function stillRuns(hold: Pick<Running, 'began' | 'plannedTo' | 'hours'>, now: string): boolean {
  const ends = endsAt(hold);
  const until = ends === null ? after(hold.began, LONGEST_UNPLANNED) : after(ends, FORGOTTEN_AFTER);
  return at(hold.began) <= at(now) && at(now) < at(until);
}

/** What it asks for next. */
export function nextLook(hold: Running, now: string): NextLook {
  const ends = endsAt(hold);
  const early = { from: after(hold.began, EARLY_FROM), by: after(hold.began, EARLY_BY) };
  const inTime = at(now) < at(early.by) && (ends === null || at(early.by) <= at(ends));
  if (!hold.earlySeen && inTime) return { what: 'early look', ...early, due: at(now) >= at(early.from) };
  return { what: 'take-out', from: ends, by: ends, due: ends !== null && at(now) >= at(ends) };
}
