// What has to be looked at before a seed is used, and what that does to its place.
import { NEUTRAL_LIMITS } from '../ledger/default-preferences';
import { placeFactor } from './ranking-order';
import { seedCost, type CostBasis } from './seed-cost';
import { daysWords } from '../quantities/typed-days';
import type { SeedCandidate } from './seed-candidate';

/**
 * A sentence each: what the caution on it says, what its own hold asks, and that it has stood for longer than jars are
 * commonly kept (three weeks: common practice, no source), whatever limit the keeper has set.
 */
export function looksOf({ caution, cautionSays, asks, place, days }: SeedCandidate): string[] {
  return [
    ...(caution === 'look' ? [cautionSays ?? 'Look at it first.'] : []),
    ...asks,
    ...(place === 'fridge' && days > NEUTRAL_LIMITS.seedFridgeDays
      ? [
          `It has stood in the fridge for ${daysWords(days)}; jars are commonly used up within three weeks. Look and smell first, and when in doubt, discard.`,
        ]
      : []),
  ];
}

/** Cost of a good jar as it counts for a seed's place (ranking-order.ts). @param weak chance of a weak jar */
export const placeCostOf = (candidate: SeedCandidate, weak: number, basis: CostBasis): number =>
  seedCost(candidate, weak, basis) * placeFactor(looksOf(candidate), candidate.keptSaid);
