// The order of what may be used. What was seen to come out comes before what nobody looked at; what descends from a jar on
// hold comes after those and after a fresh start, and last what was left in doubt by its own hold. Within that, the lower
// cost first.
import type { Ranked } from './next';

const byCost = (a: Ranked, b: Ranked): number => (a.cost ?? 0) - (b.cost ?? 0);

/** @param allowed seeds that may be used; @param fresh the fresh start, always among what is offered */
export function inOrder(allowed: readonly Ranked[], fresh: Ranked): Ranked[] {
  const those = (tells: Ranked['tells']): Ranked[] =>
    allowed.filter((one) => one.tells === tells).toSorted(byCost);
  const seeds = [...those('seen'), ...those('unseen')];
  const dearer = seeds.findIndex((one) => byCost(one, fresh) > 0);
  const place = dearer < 0 ? seeds.length : dearer;
  return [
    ...seeds.slice(0, place),
    fresh,
    ...seeds.slice(place),
    ...those('held line'),
    ...those('in doubt'),
  ];
}
