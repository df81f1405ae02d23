// Restarting from a reserve: which one, and what a good jar then costs.
import type { PooledChances } from './chances';
import type { SeedCandidate } from './next';
import { restartOf, type ReserveStart, type RestartCosts } from './restart';
import { reserveStart, seedCost, weakFrom, type CostBasis } from './seed-cost';
import { stopsOf, type SeedLimits } from './stops';

/**
 * Lowest cost of a good jar after a restart from a reserve, by its generation and what the start costs. At each generation to
 * end at, the cost rises with the start in a straight line: two curves for each generation of reserve tell all the others.
 */
export function reserveCosts(costs: RestartCosts, chances: PooledChances): CostBasis['fromReserve'] {
  const known = new Map<number, readonly { readonly free: number; readonly slope: number }[]>();
  return (generation, start) => {
    let lines = known.get(generation);
    if (!lines) {
      const [free, one] = [0, 1].map((freshStart) => restartOf({ ...costs, freshStart }, chances, generation)); // prettier-ignore
      lines = (free?.curve ?? []).map(({ cost }, i) => ({
        free: cost,
        slope: (one?.curve[i]?.cost ?? Number.NaN) - cost,
      }));
      known.set(generation, lines);
    }
    return Math.min(...lines.map(({ free, slope }) => free + start * slope));
  };
}

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
    .filter(
      (one) =>
        one.kind === 'reserve' &&
        one.heldAncestor === null &&
        one.doubts.length === 0 &&
        stopsOf(one, limits).length === 0,
    )
    .map((seed) => ({ seed, goodJar: seedCost(seed, weakFrom(seed, basis), basis) }))
    .toSorted((a, b) => a.goodJar - b.goodJar || a.seed.generation - b.seed.generation);
  if (!best) return null;
  const { label, generation, delayHours } = best.seed;
  return { label, generation, cost: reserveStart(basis.costs, delayHours), least: best.goodJar };
}
