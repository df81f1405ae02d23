// What has to be looked at before a seed is used, and what that does to its place.
import { NEUTRAL_LIMITS } from '../ledger/default-preferences';
import { placeFactor } from './ranking-order';
import { seedCost, type CostBasis } from './seed-cost';
import type { SeedLook } from '../shapes/seed-codes';
import type { SeedCandidate } from './seed-candidate';

/**
 * What the caution on it asks, what its own hold and way back ask, and that it has stood for longer than jars are commonly
 * kept (three weeks: common practice, no source), whatever limit the keeper has set.
 */
export function looksOf({ caution, asks, place, days, daysLeast }: SeedCandidate): SeedLook[] {
  return [
    ...(caution?.level === 'look' ? [{ code: 'caution' as const, caution }] : []),
    ...asks,
    ...(place === 'fridge' && days > NEUTRAL_LIMITS.seedFridgeDays
      ? [{ code: 'long in the fridge' as const, days, ...(daysLeast !== undefined && { least: daysLeast }) }]
      : []),
  ];
}

/** Cost of a good jar as it counts for a seed's place (ranking-order.ts). @param weak chance of a weak jar */
export const placeCostOf = (candidate: SeedCandidate, weak: number, basis: CostBasis): number =>
  seedCost(candidate, weak, basis) * placeFactor(looksOf(candidate).length, candidate.keptSaid);
