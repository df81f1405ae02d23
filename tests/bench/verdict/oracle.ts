// The oracle: it knows a keeper's truth and the present hidden state of every batch, not the future. It goes on from whatever
// seed leaves most of a good jar's worth to come, counted against what a fresh start gives on the long run.
import { normalCdf } from '../../../core/vigour/distributions';
import { WEAK_BELOW, type Candidate, type Choose, type Hidden } from './keeper';
import type { KeeperTruth } from './models';

const STEP = 2.5;
const LEVELS = 41;
const GENERATIONS = 25;
const SWEEPS = 100;
/** A batch later counts this much less: the years end, and nobody plans without end. */
const LATER = 0.97;
const SIZES = [0.1, 0.3, 0.5, 0.7, 0.9];

const levelOf = (i: number): number => i * STEP;
/** A value at a level, between the two nearest that were reckoned. */
function at(values: Float64Array, level: number): number {
  const place = Math.min(LEVELS - 1.001, Math.max(0, level / STEP));
  const below = Math.floor(place);
  const low = values[below] as number;
  return low + (place - below) * ((values[below + 1] as number) - low);
}

/** Worth of a jar made at each level, half of it where it is weak. */
function worthOf(truth: KeeperTruth, shift: number, jarSd: number, notSet: number): Float64Array {
  const sd = Math.hypot(truth.batchSd, jarSd, truth.fibreSd);
  const kept = 1 - notSet - truth.seenInJars;
  const weak = (level: number): number => normalCdf((WEAK_BELOW - level) / sd);
  const cold = truth.coldChance + truth.powerCutChance;
  const [least, most] = truth.coldEffect;
  return Float64Array.from({ length: LEVELS }, (_, i) => {
    const level = levelOf(i) + shift;
    const inCold = SIZES.reduce((sum, part) => sum + weak(level - least - part * (most - least)), 0) / SIZES.length; // prettier-ignore
    return kept * (1 - 0.5 * ((1 - cold) * weak(level) + cold * inCold));
  });
}

interface Plan {
  /** Value of a batch at each level, with all that follows it: by whether its line loses, and its generation. */
  readonly values: readonly (readonly Float64Array[])[];
  readonly worth: Float64Array;
  /** Cost of a good jar's worth on the long run (jars). */
  readonly cost: number;
}

/** Value of the next batch from a batch at a level. */
function after(
  truth: KeeperTruth,
  level: number,
  loses: boolean,
  next: Float64Array,
  generation: number,
): number {
  const lost = loses && generation + 1 >= truth.lossFrom ? truth.loss : 0;
  const base = Math.max(Math.min(level, truth.floor), level - lost);
  const hazard = truth.suddenChance * truth.inherited;
  if (hazard === 0) return at(next, base);
  const [least, most] = truth.sudden;
  const fallen = SIZES.reduce((sum, part) => sum + at(next, base - least - part * (most - least)), 0) / SIZES.length; // prettier-ignore
  return (1 - hazard) * at(next, base) + hazard * fallen;
}

function reckon(truth: KeeperTruth, worth: Float64Array, cost: number): Float64Array[][] {
  const m = truth.jars;
  return [false, true].map((loses) => {
    const values = Array.from({ length: GENERATIONS + 1 }, () => new Float64Array(LEVELS));
    const sweep = (generation: number, next: Float64Array): void => {
      const own = values[generation] as Float64Array;
      for (let i = 0; i < LEVELS; i++)
        own[i] = m * (cost * (worth[i] as number) - 1) + LATER * Math.max(0, after(truth, levelOf(i), loses, next, generation)); // prettier-ignore
    };
    const last = values[GENERATIONS] as Float64Array;
    for (let k = 0; k < SWEEPS; k++) sweep(GENERATIONS, Float64Array.from(last));
    for (let generation = GENERATIONS - 1; generation > 0; generation--)
      sweep(generation, values[generation + 1] as Float64Array);
    return values;
  });
}

/** The cost at which a fresh start is just worth what it costs: that of a good jar's worth under the best choices. */
export function planOf(truth: KeeperTruth): Plan {
  const worth = worthOf(truth, 0, truth.jarSd, truth.laterNotSet);
  const first = worthOf(truth, -(truth.firstEffect[0] + truth.firstEffect[1]) / 2, 2 * truth.jarSd, truth.firstNotSet); // prettier-ignore
  const start = truth.startCost / truth.jarCost;
  const [least, most] = truth.startLevel;
  let [low, high] = [1, 12];
  let values = reckon(truth, worth, high);
  for (let k = 0; k < 14; k++) {
    const cost = (low + high) / 2;
    values = reckon(truth, worth, cost);
    const gain = SIZES.reduce((sum, part) => {
      const level = least + part * (most - least);
      const of = (loses: boolean): number =>
        truth.jars * (cost * at(first, level) - 1) + LATER * Math.max(0, after(truth, level, loses, (values[loses ? 1 : 0] as Float64Array[])[2] as Float64Array, 1)); // prettier-ignore
      return sum + truth.losing * of(true) + (1 - truth.losing) * of(false);
    }, 0) / SIZES.length; // prettier-ignore
    if (gain > start) high = cost;
    else low = cost;
  }
  return { values, worth, cost: high };
}

function valueOf(truth: KeeperTruth, plan: Plan, seed: Candidate, from: Hidden): number {
  const share = from.hidden * truth.hiddenGrowth;
  if (share > 0 && share >= truth.hiddenSeenAt) return -truth.jars;
  const generation = Math.min(GENERATIONS, from.generation + 1);
  const next = plan.values[from.loses ? 1 : 0]?.[generation] as Float64Array;
  const tenths = seed.fridgeDays / truth.tenfoldDays + (seed.frozenDays > 0 ? truth.freezeStep + seed.frozenDays / 7 / truth.tenfoldWeeksFrozen : 0); // prettier-ignore
  const passing = at(plan.worth, from.level) - at(plan.worth, from.level - tenths * truth.pointsATenfold);
  const doomed = from.hidden > 0 ? truth.jars : 0;
  const level = from.level - (truth.lossAWeek * seed.fridgeDays) / 7;
  return after(truth, level, from.loses, next, from.generation) - truth.jars * plan.cost * passing - doomed;
}

export function oracle(truth: KeeperTruth): Choose {
  const plan = planOf(truth);
  return ({ candidates, hidden }) => {
    let best: Candidate | null = null;
    let most = 0;
    for (const seed of candidates) {
      const value = valueOf(truth, plan, seed, hidden[seed.place] as Hidden);
      if (value > most) [best, most] = [seed, value];
    }
    return best;
  };
}
