// The verdict as a policy: the program's own posterior and its own worth of going on, told of a simulated keeper only what
// that keeper wrote down.
import { carriedCost, carriedFrom, type Carried } from '../../../core/advice/carried';
import { HOUR_OF_DELAY } from '../../../core/advice/seed-cost';
import { saidChance } from '../../../core/advice/chances';
import { promiseOf, worthFor } from '../../../core/advice/seed-level';
import { POINTS_A_TENFOLD } from '../../../core/vigour/level/stored-seed';
import { inTiedOrder } from '../../../core/advice/ties';
import { WEAK_EDGE } from '../../../core/advice/weak';
import { delayHours, storageLoss } from '../../../core/growth/storage';
import { borrowedWeights } from '../../../core/vigour/level/borrowed';
import { LevelTree } from '../../../core/vigour/level/tree';
import { SCORE_RULES } from '../../../core/vigour/score';
import { USUAL_POINTS } from '../../../core/vigour/jar-evidence';
import { WEAK_BELOW, type Choose, type SeenBatch } from './keeper';
import type { KeeperTruth } from './models';
import type { RestartCosts } from '../../../core/advice/costs';

/** A cold night that was written down is taken to have cost about so much (points). */
const COLD = { mean: -15, sd: 9 } as const;
/** Generations that worth is spread over for the tie rule, as a restart curve would give them. */
const SPREAD_OVER = 12;

const storedOf = (fridgeDays: number, frozenDays: number) =>
  storageLoss({ fridgeDays, frozenDays, freezings: frozenDays > 0 ? 1 : 0 });

function shiftOf(batch: SeenBatch): { mean: number; sd: number } {
  const tenths = batch.parent < 0 ? 0 : storedOf(batch.fridgeDays, batch.frozenDays).middle;
  const cold = batch.cold ? COLD.mean : 0;
  return {
    mean: cold - POINTS_A_TENFOLD * tenths,
    sd: Math.hypot(batch.cold ? COLD.sd : 0, (POINTS_A_TENFOLD / 3) * tenths),
  };
}

export function verdict(truth: KeeperTruth): Choose {
  const costs: RestartCosts = {
    freshStart: truth.startCost / truth.jarCost, jarsPerGeneration: truth.jars, jar: 1, weakKeeps: 0.5,
    unplanned: truth.jars,
  }; // prettier-ignore
  // The points of these keepers are those of the words: firm is the usual word.
  const worth = worthFor(
    costs,
    (USUAL_POINTS - WEAK_BELOW) / SCORE_RULES.pointsPer['set word'] + WEAK_EDGE,
    0.02,
  );
  let tree = new LevelTree();
  let told = 0;
  const others: LevelTree[] = [];
  return ({ seen, candidates }) => {
    // Another line of the same keeper begins anew.
    if (tree.length > seen.length) {
      others.push(tree);
      [tree, told] = [new LevelTree(), 0];
    }
    for (const batch of seen.slice(tree.length)) {
      const jars = batch.parent < 0 ? [] : batch.jars;
      told += jars.length;
      const parent = batch.parent < 0 ? null : batch.parent;
      tree.add({
        parent,
        jars,
        shift: shiftOf(batch),
        treatment: batch.fibre > 0 ? String(batch.fibre) : null,
      });
    }
    const carried = carriedFrom(seen.map(({ parent, spoiled }) => ({ parent: parent < 0 ? null : parent, jars: truth.jars, spoiled }))); // prettier-ignore
    const weights = borrowedWeights(tree, others);
    const offered = candidates.map((seed) => {
      const loss = storedOf(seed.fridgeDays, seed.frozenDays);
      const promise = promiseOf(
        weights,
        tree.next(seed.place),
        worth,
        POINTS_A_TENFOLD * loss.middle,
        tree.treatments.next(),
      );
      const delay = truth.jars * HOUR_OF_DELAY * delayHours(loss).middle;
      const doomed = carriedCost(carried[seed.place] as Carried, truth.jars, costs.freshStart);
      return { seed, worth: promise.worth - delay - doomed, weak: saidChance(promise.weak, told) };
    });
    const [best] = inTiedOrder(
      offered,
      ({ seed, worth: gain }) => ({
        cost: -gain / (truth.jars * SPREAD_OVER),
        asks: 0,
        reserve: seed.frozenDays > 0,
        days: seed.fridgeDays + seed.frozenDays,
        own: 0,
      }),
      1,
    );
    return best && best.worth > 0 ? { ...best.seed, said: best.weak } : null;
  };
}
