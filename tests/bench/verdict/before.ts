// The ranking as it was before there was a verdict, for comparison: chances of a weak jar by generation, pooled, with odds moved by
// the score of the seed's batch (e-fold for 12 points), the cost of a good jar of one more batch held against the lowest cost
// of a good jar after a fresh start. Means in place of the draws that it averaged over.
import { nonFalling } from '../../../core/advice/isotonic';
import { middleOf } from './habits';
import type { Choose, SeenBatch } from './keeper';
import type { KeeperTruth } from './models';

const GENERATIONS = 40;
const good = (weak: number, lost: number): number => Math.max(0.02, 1 - weak - lost);

/** Chances by generation from 1: what was seen added to a belief of one in ten, non-falling from the second on. */
function chances(
  seen: readonly SeenBatch[],
  count: (batch: SeenBatch) => number,
  bad: number,
  of: number,
): number[] {
  const sums = Array.from({ length: GENERATIONS }, () => ({ bad, of }));
  for (const batch of seen) {
    const sum = sums[Math.min(GENERATIONS, batch.generation) - 1];
    if (!sum) continue;
    sum.bad += count(batch);
    sum.of += batch.jars.length + batch.discarded;
  }
  const rates = sums.map((sum) => sum.bad / sum.of);
  return [
    ...rates.slice(0, 1),
    ...nonFalling(
      rates.slice(1),
      sums.slice(1).map((sum) => sum.of),
    ),
  ];
}

export const ranking =
  (truth: KeeperTruth): Choose =>
  ({ seen, candidates }) => {
    const weak = chances(seen, ({ jars }) => jars.filter((jar) => jar.weak).length, 0.3, 3);
    const lost = chances(seen, ({ discarded }) => discarded, 0.1, 5);
    let [spent, goods, fresh] = [truth.startCost / truth.jarCost, 0, Number.POSITIVE_INFINITY];
    weak.forEach((p, i) => {
      const d = lost[i] ?? 0;
      spent += truth.jars * (1 + p / 2 + d);
      goods += truth.jars * good(p, d);
      fresh = Math.min(fresh, spent / goods);
    });
    let [best, least] = [null as (typeof candidates)[number] | null, fresh];
    for (const seed of candidates) {
      const generation = Math.min(GENERATIONS - 1, seen[seed.place]?.generation ?? 1);
      const batch = seen[seed.place];
      const middle = batch && batch.parent >= 0 ? middleOf(batch) : null;
      const p = Math.min(0.99, Math.max(0.001, weak[generation] ?? 0.1));
      const odds = (p / (1 - p)) * (middle === null ? 1 : Math.exp((75 - middle) / 12));
      const chance = Math.min(0.9, odds / (1 + odds));
      const d = lost[generation] ?? 0;
      const cost =
        (1 + chance / 2 + d) / good(chance, d) + 0.13 * (seed.fridgeDays / 27 + seed.frozenDays / 54) * 0.3;
      if (cost < least) [best, least] = [seed, cost];
    }
    return best;
  };
