// How much likelier a line's batches are if it loses with each generation than if it is steady. What nobody knows (level,
// spread of batches and of jars, size of the loss) is averaged over, so that an even line needs less to be called than an
// uneven one, and a set word counts for what it tells. A Bayes factor (Kass & Raftery 1995, doi 10.1080/01621459.1995.10476572,
// from memory); what it is worth is measured by simulation (tests/bench/judgement.md).
import { addLogs, batchLikelihood, type BatchLikelihood } from './batch-likelihood';
import type { ScoredRange } from './batch-median';

/** One comparable batch: its generation and what was recorded of its comparable jars (at least one). */
export interface RecordedBatch {
  readonly generation: number;
  readonly jars: readonly ScoredRange[];
}

interface Weighed {
  readonly value: number;
  readonly weight: number;
}

/** What is averaged over. The figures are the program's own (no source). */
export interface LikelihoodRules {
  /** Spreads of batches around their line (points). A steady line counts by the spread to this power: it may well be uneven. */
  readonly spreads: readonly number[];
  readonly steadyPower: number;
  /** Spreads of jars around their batch: about this part of the batches' own, give or take so much (standard deviation of logs). */
  readonly jarSpreads: readonly number[];
  readonly jarPart: number;
  readonly jarPartLogSd: number;
  /** A steady line wanders too, as batches that follow one another are alike: falls of so many spreads a generation. */
  readonly wander: readonly Weighed[];
  /** Losses that are looked for (points a generation). */
  readonly losses: readonly Weighed[];
  /** From so many batches on a loss is also looked for that began so many batches ago. */
  readonly lateFrom: number;
  readonly lateStarts: readonly number[];
}

export const LIKELIHOOD_RULES: LikelihoodRules = {
  spreads: [2, 3, 4, 5.5, 7.5, 10, 14, 20],
  steadyPower: 1.5,
  jarSpreads: [1, 1.7, 3, 5, 8.5],
  jarPart: 0.5,
  jarPartLogSd: 0.5,
  wander: [
    { value: 0, weight: 0.5 },
    { value: 0.17, weight: 0.35 },
    { value: 0.34, weight: 0.15 },
  ],
  losses: [
    { value: 3, weight: 0.3 },
    { value: 5, weight: 0.4 },
    { value: 7, weight: 0.3 },
  ],
  lateFrom: 8,
  lateStarts: [3, 4, 5, 7],
};

/** Pairs of spreads that hardly ever go together are not worth their time. */
const LEAST_WEIGHT = 0.01;

interface Pair {
  readonly spread: number;
  readonly jarSpread: number;
  readonly steady: number;
  readonly losing: number;
}

/** Spreads of batches and jars that are averaged over, with their weights for a steady line and for a losing one. */
const pairsKnown = new WeakMap<LikelihoodRules, readonly Pair[]>();
function pairsOf(rules: LikelihoodRules): readonly Pair[] {
  const before = pairsKnown.get(rules);
  if (before) return before;
  const pairs = reckonPairs(rules);
  pairsKnown.set(rules, pairs);
  return pairs;
}

function reckonPairs(rules: LikelihoodRules): Pair[] {
  const steadyTotal = rules.spreads.reduce((sum, spread) => sum + spread ** rules.steadyPower, 0);
  return rules.spreads.flatMap((spread) => {
    const weights = rules.jarSpreads.map((jarSpread) =>
      Math.exp(-(Math.log(jarSpread / (rules.jarPart * spread)) ** 2) / (2 * rules.jarPartLogSd ** 2)),
    );
    const total = weights.reduce((a, b) => a + b, 0);
    return rules.jarSpreads.flatMap((jarSpread, i) => {
      const weight = (weights[i] as number) / total;
      return weight < LEAST_WEIGHT
        ? []
        : [
            {
              spread,
              jarSpread,
              steady: (weight * spread ** rules.steadyPower) / steadyTotal,
              losing: weight / rules.spreads.length,
            },
          ];
    });
  });
}

function logOfSum(logs: readonly number[]): number {
  const most = Math.max(...logs);
  return most + Math.log(logs.reduce((sum, x) => sum + Math.exp(x - most), 0));
}

/** Where nothing but scores was recorded, the average over all levels is known in closed form. */
function overLevelsOfScores(batches: readonly BatchLikelihood[], falls: Float64Array): number {
  let [weight, weighted, squares, constants] = [0, 0, 0, 0];
  for (let i = 0; i < batches.length; i++) {
    const batch = batches[i] as BatchLikelihood;
    if (batch.kind !== 'scores') continue;
    const w = 1 / batch.variance;
    const level = batch.at + (falls[i] as number);
    weight += w;
    weighted += w * level;
    squares += w * level * level;
    constants += batch.constant;
  }
  return constants - (squares - weighted ** 2 / weight) / 2 + Math.log((2 * Math.PI) / weight) / 2;
}

/** Far enough for a set word on either side; finer where the line is even. */
const reachOf = (spread: number): number => 25 + spread / 2;
const stepOf = (spread: number): number => Math.max(1.5, spread / 2);

function overLevelsOfRanges(
  batches: readonly BatchLikelihood[],
  falls: Float64Array,
  spread: number,
): number {
  const levels = batches.map(({ at }, i) => at + (falls[i] as number)).toSorted((a, b) => a - b);
  const from = (levels[Math.floor(levels.length / 2)] as number) - reachOf(spread);
  const step = stepOf(spread);
  const logs = new Float64Array(Math.ceil((2 * reachOf(spread)) / step) + 1);
  for (let i = 0; i < batches.length; i++)
    addLogs(batches[i] as BatchLikelihood, from - (falls[i] as number), step, logs);
  let most = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < logs.length; k++) most = Math.max(most, logs[k] as number);
  let sum = 0;
  for (let k = 0; k < logs.length; k++) sum += Math.exp((logs[k] as number) - most);
  return most + Math.log(step * sum);
}

/** Likelihoods of a batch by pair of spreads, worked out once for all looks at a growing line. */
const known = new WeakMap<LikelihoodRules, WeakMap<RecordedBatch, readonly BatchLikelihood[]>>();
function likelihoodsOf(
  batch: RecordedBatch,
  pairs: readonly Pair[],
  rules: LikelihoodRules,
): readonly BatchLikelihood[] {
  const ofRules = known.get(rules) ?? new WeakMap<RecordedBatch, readonly BatchLikelihood[]>();
  known.set(rules, ofRules);
  const before = ofRules.get(batch);
  if (before) return before;
  const all = pairs.map(({ spread, jarSpread }) => batchLikelihood(batch.jars, spread, jarSpread));
  ofRules.set(batch, all);
  return all;
}

/** Natural logarithms of how much likelier the batches are on a losing line than on a steady one. */
export interface LossLikelihood {
  /** If it has lost since the first of these batches. */
  readonly throughout: number;
  /** If it was steady and began to lose a few batches ago; null with too few batches to tell. */
  readonly lately: number | null;
}

/**
 * @param batches comparable batches in order of making, at least two; a batch is told by its identity, so its jars must not
 * be changed afterwards
 */
export function lossLikelihood(
  batches: readonly RecordedBatch[],
  rules: LikelihoodRules = LIKELIHOOD_RULES,
): LossLikelihood {
  const first = batches[0]?.generation ?? 0;
  const since = batches.map(({ generation }) => generation - first);
  const fallsOf = (perGeneration: number, start: number): Float64Array =>
    Float64Array.from(since, (generation) => perGeneration * Math.max(0, generation - start));
  const starts =
    batches.length < rules.lateFrom
      ? []
      : rules.lateStarts.map((ago) => since[batches.length - 1 - ago] as number);
  const losing = rules.losses.map(({ value, weight }) => ({ weight, falls: fallsOf(value, 0) }));
  const losingLately = rules.losses.flatMap(({ value, weight }) =>
    starts.map((start) => ({ weight: weight / starts.length, falls: fallsOf(value, start) })),
  );
  const pairs = pairsOf(rules);
  const likelihoods = batches.map((batch) => likelihoodsOf(batch, pairs, rules));
  const scoresOnly = likelihoods.every((all) => all.every(({ kind }) => kind === 'scores'));
  const steady: number[] = [];
  const throughout: number[] = [];
  const lately: number[] = [];
  pairs.forEach(({ spread, steady: ifSteady, losing: ifLosing }, pair) => {
    const each = likelihoods.map((all) => all[pair] as BatchLikelihood);
    // Averaged evenly over the level of the line, each batch lying so far below it.
    const averaged = (falls: Float64Array): number =>
      scoresOnly ? overLevelsOfScores(each, falls) : overLevelsOfRanges(each, falls, spread);
    for (const { value, weight } of rules.wander)
      steady.push(Math.log(ifSteady * weight) + averaged(fallsOf(value * spread, 0)));
    for (const { weight, falls } of losing) throughout.push(Math.log(ifLosing * weight) + averaged(falls));
    for (const { weight, falls } of losingLately) lately.push(Math.log(ifLosing * weight) + averaged(falls));
  });
  const base = logOfSum(steady);
  return {
    throughout: logOfSum(throughout) - base,
    lately: starts.length > 0 ? logOfSum(lately) - base : null,
  };
}
