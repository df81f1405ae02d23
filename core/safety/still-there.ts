// Whether a jar of which nobody said that it is there may be taken for being there.
import type { Family } from '../lineage/family';
import { daysBetween } from '../quantities/typed-days';

/** A jar of which nobody said that it is kept counts as kept for so many days (common practice, no source). */
const KEPT_UNSAID_DAYS = 60;

/** Whether nobody said that it is there, for longer than it is taken for being there. @param since the day it was made, or left warmth */
export const longUnsaid = (onShelf: boolean | null, since: string | null, today: string): boolean =>
  onShelf === null && (since === null || daysBetween(since, today) > KEPT_UNSAID_DAYS);

/** Whether something was seeded from the jar itself on a day: whoever took seed of it then had it in the hand. */
export const seededOn = (family: Family, jar: number, day: string): boolean =>
  family
    .childrenOf(jar)
    .some(
      (child) =>
        family.jar(child).madeOn === day &&
        family.seedsOf(child).some(({ fromJar, takenOn = null }) => fromJar === jar && takenOn === null),
    );
