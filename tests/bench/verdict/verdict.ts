// The verdict as a policy: the program's own posterior and its own worth of going on, told of a simulated keeper only what
// that keeper wrote down.
import { worthOf, type Worth } from '../../../core/advice/worth';
import { LEVEL_RULES } from '../../../core/vigour/level/rules';
import { firstBelief, LevelTree } from '../../../core/vigour/level/tree';
import { delayHours, storageLoss } from '../../../core/growth/storage';
import { WEAK_BELOW, type Candidate, type Choose, type SeenBatch } from './keeper';
import type { KeeperTruth } from './models';

export const TUNE = {
  margin: Number(process.env['MARGIN'] ?? 0),
  coldMean: -15,
  coldSd: 9,
  older: Number(process.env['OLDER'] ?? 0),
};
const POINTS_A_TENFOLD = 8;

const storedOf = (fridgeDays: number, frozenDays: number) =>
  storageLoss({ fridgeDays, frozenDays, freezings: frozenDays > 0 ? 1 : 0 });

function shiftOf(batch: SeenBatch): { mean: number; sd: number } {
  const tenths = batch.parent < 0 ? 0 : storedOf(batch.fridgeDays, batch.frozenDays).middle;
  const cold = batch.cold ? TUNE.coldMean : 0;
  return {
    mean: cold - POINTS_A_TENFOLD * tenths,
    sd: Math.hypot(batch.cold ? TUNE.coldSd : 0, (POINTS_A_TENFOLD / 3) * tenths),
  };
}

export function verdict(truth: KeeperTruth): Choose {
  const basis = {
    jars: truth.jars, start: truth.startCost / truth.jarCost, weakBelow: WEAK_BELOW, weakKeeps: 0.5, discarded: 0.02,
    firstBelow: 25, firstDiscarded: 0.12,
  }; // prettier-ignore
  const worth: Worth = worthOf(basis, LEVEL_RULES, (drift) => firstBelief(LEVEL_RULES, drift));
  const size = LEVEL_RULES.levels * LEVEL_RULES.rates.length;
  let tree = new LevelTree();
  return ({ seen, candidates }) => {
    // Another line of the same keeper begins anew.
    if (tree.length > seen.length) tree = new LevelTree();
    for (const batch of seen.slice(tree.length))
      tree.add({
        parent: batch.parent < 0 ? null : batch.parent,
        jars: batch.parent < 0 ? [] : batch.jars,
        shift: shiftOf(batch),
        treatment: batch.fibre > 0 ? String(batch.fibre) : null,
      });
    let [best, most] = [null as Candidate | null, -TUNE.margin];
    for (const seed of candidates) {
      const next = tree.next(seed.place);
      let value = 0;
      for (let h = 0; h < tree.weights.length; h++) {
        let sum = 0;
        for (let i = h * size; i < (h + 1) * size; i++)
          sum += (next[i] as number) * (worth.values[i] as number);
        value += (tree.weights[h] as number) * sum;
      }
      const loss = storedOf(seed.fridgeDays, seed.frozenDays);
      value -= truth.jars * 0.01 * delayHours(loss).middle;
      if (value > most) [best, most] = [seed, value];
    }
    return best;
  };
}
