// The order of what may be used. What was seen to come out comes before what nobody looked at; after those and after a fresh
// start comes what was left in doubt by its own hold. Within that, the lower cost first, where what has to be looked at
// first, or may be gone, counts as a little dearer than it is.
import { ABOUT_AS_GOOD } from './restart-curve';
import { inTiedOrder } from './ties';
import type { Ranked } from './seed-candidate';

/**
 * By this part dearer counts what has to be looked at first: it comes before a seed that need not be only where it is
 * cheaper by more than what counts as about as good.
 */
export const LOOK_FIRST = ABOUT_AS_GOOD;
/** By this part more for each further thing to look at, so that two warnings never beat one at as good a cost. */
export const LOOK_AGAIN = 0.01;
/** By this part dearer counts what nobody has said to be still kept: costs so near are as good as equal. */
export const MAY_BE_GONE = 0.01;

/** Rounding in the sums is no difference. */
const HAIR = 1e-9;

/** By what part what has to be looked at first counts as dearer. @param looks how many things there are to look at */
const looksDearer = (looks: number): number => (looks === 0 ? 0 : LOOK_FIRST + (looks - 1) * LOOK_AGAIN);

/** By what a cost is multiplied for its place. @param looks how many things have to be looked at first */
export const placeFactor = (looks: number, keptSaid: boolean): number =>
  (1 + looksDearer(looks)) * (keptSaid ? 1 : 1 + MAY_BE_GONE);

/**
 * A reserve waits behind what is fresh and about as good, also where nobody has yet written down how that came out; never
 * behind what is dearer than a fresh start, or the start would be made with a good reserve at hand.
 * @param items in order; @param of whether it is a reserve, what it counts as, and whether going on from it pays
 */
export function reservesKept<T>(
  items: readonly T[],
  of: (item: T) => { readonly reserve: boolean; readonly cost: number; readonly pays: boolean },
): T[] {
  const left = [...items];
  const ordered: T[] = [];
  while (left.length > 0) {
    const [next] = left;
    if (next === undefined) break;
    const { reserve, cost } = of(next);
    const waitsFor = (one: T): boolean => {
      const other = of(one);
      return !other.reserve && other.pays && other.cost <= cost * (1 + ABOUT_AS_GOOD);
    };
    ordered.push(...left.splice(Math.max(0, reserve ? left.findIndex(waitsFor) : 0), 1));
  }
  return ordered;
}

/**
 * Seeds by what they count as, near ties by freshness (ties.ts). Against a fresh start a seed counts as what it costs: that it
 * has to be looked at first makes no fresh start better.
 * @param allowed seeds that may be used; @param fresh the fresh start, always among what is offered; @param jar what a jar costs
 */
export function inOrder(allowed: readonly Ranked[], fresh: Ranked, jar: number): Ranked[] {
  const those = (tells: Ranked['tells']): Ranked[] =>
    inTiedOrder(
      allowed.filter((one) => one.tells === tells),
      ({ placeCost, kind, days, own, looks, keptSaid, passed }) => ({
        cost: placeCost ?? 0,
        asks: looks.length + (keptSaid ? 0 : 1) + (passed ? 0 : 1),
        reserve: kind === 'reserve',
        days,
        own: own ?? Number.NEGATIVE_INFINITY,
      }),
      jar,
    );
  const pays = (one: Ranked): boolean => (one.cost ?? 0) <= (fresh.cost ?? 0) + HAIR * jar;
  const seeds = reservesKept([...those('seen'), ...those('unseen')], (one) => ({
    reserve: one.kind === 'reserve',
    cost: one.placeCost ?? 0,
    pays: pays(one),
  }));
  const dearer = seeds.findIndex((one) => !pays(one));
  const place = dearer < 0 ? seeds.length : dearer;
  return [...seeds.slice(0, place), fresh, ...seeds.slice(place), ...those('in doubt')];
}
