// Whether a jar of which nobody said that it is there may be taken for being there.
import { daysBetween } from '../quantities/typed-days';

/** A jar of which nobody said that it is kept counts as kept for so many days (common practice, no source). */
const KEPT_UNSAID_DAYS = 60;

/** Whether nobody said that it is there, for longer than it is taken for being there. @param since the day it was made, or left warmth */
export const longUnsaid = (onShelf: boolean | null, since: string | null, today: string): boolean =>
  onShelf === null && (since === null || daysBetween(since, today) > KEPT_UNSAID_DAYS);
