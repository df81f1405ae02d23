// The order of what may be used. What was seen to come out comes before what nobody looked at; what descends from a jar on
// hold comes after those and after a fresh start, and last what was left in doubt by its own hold. Within that, the lower
// cost first, where what has to be looked at first, or may be gone, counts as a little dearer than it is.
import type { Ranked } from './next';

/**
 * By this part dearer counts what has to be looked at first: it comes before a seed that need not be only where it is
 * clearly cheaper. Restarts as near as this are called about as good too (restart.ts).
 */
export const LOOK_FIRST = 0.05;
/** By this part more for each further thing to look at, so that two warnings never beat one at as good a cost. */
export const LOOK_AGAIN = 0.01;
/** By this part dearer counts what nobody has said to be still kept: costs so near are as good as equal. */
export const MAY_BE_GONE = 0.01;

/** Rounding in the sums is no difference. */
const HAIR = 1e-9;

/** By what part what has to be looked at first counts as dearer. @param looks a sentence for each thing to look at */
export const looksDearer = (looks: readonly string[]): number =>
  looks.length === 0 ? 0 : LOOK_FIRST + (looks.length - 1) * LOOK_AGAIN;

/** By what a cost is multiplied for its place. @param looks what has to be looked at first, a sentence each */
export const placeFactor = (looks: readonly string[], keptSaid: boolean): number =>
  (1 + looksDearer(looks)) * (keptSaid ? 1 : 1 + MAY_BE_GONE);

/** The cheaper first; of equals the jar that came out better itself, as the best jar seeds the next batch by the trade. */
function byCost(a: Ranked, b: Ranked): number {
  const apart = (a.placeCost ?? 0) - (b.placeCost ?? 0);
  return Math.abs(apart) > HAIR ? apart : (b.own ?? -Infinity) - (a.own ?? -Infinity) || 0;
}

/** @param allowed seeds that may be used; @param fresh the fresh start, always among what is offered */
export function inOrder(allowed: readonly Ranked[], fresh: Ranked): Ranked[] {
  const those = (tells: Ranked['tells']): Ranked[] =>
    allowed.filter((one) => one.tells === tells).toSorted(byCost);
  const seeds = [...those('seen'), ...those('unseen')];
  const dearer = seeds.findIndex((one) => (one.placeCost ?? 0) > (fresh.placeCost ?? 0));
  const place = dearer < 0 ? seeds.length : dearer;
  return [
    ...seeds.slice(0, place),
    fresh,
    ...seeds.slice(place),
    ...those('held line'),
    ...those('in doubt'),
  ];
}
