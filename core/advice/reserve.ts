// Restarting from a reserve: which one, and what a good jar then costs.
import type { ReserveStart } from './restart-curve';
import { reserveStart, seedCost, weakFrom, type CostBasis } from './seed-cost';
import { stopsOf } from './stops';
import type { SeedCandidate, SeedLimits } from './seed-candidate';

/**
 * The reserve that a restart is held against: of those that may be used, with nothing to look into and no doubt, the one from
 * which a good jar costs least (of equals, the lowest generation). Its cost is what the ranking gives it.
 */
export function bestReserve(
  candidates: readonly SeedCandidate[],
  limits: SeedLimits,
  basis: CostBasis,
): ReserveStart | null {
  const [best] = candidates
    .filter((one) => one.kind === 'reserve' && one.doubts.length === 0 && stopsOf(one, limits).length === 0)
    .map((seed) => ({ seed, goodJar: seedCost(seed, weakFrom(seed, basis), basis) }))
    .toSorted((a, b) => a.goodJar - b.goodJar || a.seed.generation - b.seed.generation);
  if (!best) return null;
  const { label, generation, delayHours } = best.seed;
  return { label, generation, cost: reserveStart(basis.costs, delayHours), least: best.goodJar };
}
