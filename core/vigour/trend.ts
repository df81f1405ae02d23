// The trend of a line over its comparable batches: how fast it falls, how far it stands below its early batches, and
// whether that raises an alarm. One budget of false alarms covers slope, level, likelihood and Mann–Kendall together and every look
// taken as the line grows; the limits were set for it by simulation (tests/bench/judgement.ts prints what they achieve).
import type { ScoredRange } from './batch-median';
import { ewma, ewmaErrorFromBaseline } from './ewma';
import { lossLikelihood, type LossLikelihood } from './likelihood';
import { mannKendall, type MannKendall } from './mann-kendall';
import { mean } from './order';
import { slopeInterval, theilSen } from './theil-sen';
import type { Standing } from './types';

/** One comparable batch: its generation and the median of its comparable jars' scores (points). */
export interface TrendPoint {
  readonly generation: number;
  readonly score: number;
  /** What was recorded of those jars (at least one): a set word alone leaves a range open. */
  readonly jars: readonly ScoredRange[];
}

/** What judgement of a trend goes by. Kept with each decision taken. */
export interface TrendRules {
  /** Fewest comparable batches before anything is said. */
  readonly fewest: number;
  /** The slope is that of so many latest batches. */
  readonly window: number;
  /** Spread expected of a line before its own batches tell (points), and how many batches that expectation weighs. */
  readonly priorSpread: number;
  readonly priorWeight: number;
  /** Weight of the newest batch in the running mean. */
  readonly lambda: number;
  /** Batches that make the baseline. */
  readonly baselineBatches: number;
  /**
   * Standard errors of fall at which the alarm is raised, for 5, 6, 7, … comparable batches (the last holds from there
   * on). Most of the budget is spent at 6 and 7, when a keeper can still act; a real slip outgrows the later limits.
   */
  readonly limits: readonly number[];
  /**
   * Alarm also where such batches are likelier on a losing line by this much (natural logarithm), for 5, 6, 7, … batches. It
   * is the sharper test of even lines, slope and level are of uneven ones.
   */
  readonly likelihoodLimits: readonly number[];
  /** The same for a line that was steady and began to lose a few batches ago. */
  readonly latelyLimit: number;
  /** Below so many standard errors of fall likelihoods are not asked: nothing is falling. */
  readonly likelihoodFrom: number;
  /** The level alone counts a little less than slope and level together. */
  readonly levelAlone: number;
  /** Alarm also when Mann–Kendall's chance of so steady a fall by luck is at most this. */
  readonly steadyFallChance: number;
  /** … and the line loses at least so much a generation (points). */
  readonly leastLoss: number;
  /** Points below the baseline from which a falling line is worn out. */
  readonly wornOutDrop: number;
  /**
   * A loss of this much a generation must be ruled out for "steady", with so many standard errors. To call a line steady
   * the careful thing is to expect a wide spread, so this has an expectation of its own.
   */
  readonly lossToRuleOut: number;
  readonly ruleOutSpread: number;
  readonly ruleOutErrors: number;
}

export const TREND_RULES: TrendRules = {
  fewest: 5,
  window: 12,
  priorSpread: 4,
  priorWeight: 6,
  lambda: 0.5,
  baselineBatches: 3,
  limits: [6, 5.46, 5.1, 5.15, 5.4, 5.5, 5.5, 6.1, 6.3],
  likelihoodLimits: [2.2, 1.93, 1.75, 2],
  latelyLimit: 4.5,
  likelihoodFrom: 0.5,
  levelAlone: 0.9,
  steadyFallChance: 0.0003,
  leastLoss: 1.5,
  wornOutDrop: 30,
  lossToRuleOut: 3,
  ruleOutSpread: 8,
  ruleOutErrors: 2.5,
};

/** 'steady fall': Mann–Kendall. */
export type Alarm = 'slope and level' | 'likelihood' | 'likelihood lately' | 'steady fall';

export interface Trend {
  readonly batches: number;
  /** Theil–Sen, points a generation over the window; negative is a loss. */
  readonly slope: number;
  /** Its distribution-free 90 % interval (Gilbert's rule). */
  readonly slopeLow: number;
  readonly slopeHigh: number;
  /** Standard error of the slope by the moderated spread. */
  readonly slopeError: number;
  /** Spread of a batch around the line (points), moderated by what is expected of any line. */
  readonly spread: number;
  readonly mannKendall: MannKendall;
  readonly baseline: number;
  readonly baselineSize: number;
  /** Running mean (EWMA) after each batch that follows the baseline. */
  readonly running: readonly number[];
  /** Baseline less the latest running mean (points), and its standard error with the baseline's own uncertainty. */
  readonly drop: number;
  readonly dropError: number;
  /** Standard errors of fall, and the limit that raises the alarm at this many batches. */
  readonly fall: number;
  readonly limit: number;
  /** How much likelier the latest batches are on a losing line; null where nothing falls. */
  readonly likelihood: LossLikelihood | null;
  readonly likelihoodLimit: number;
  /** What raises the alarm; none: no alarm. */
  readonly alarms: readonly Alarm[];
  readonly alarm: boolean;
  /** A loss of `lossToRuleOut` a generation can be ruled out. */
  readonly lossRuledOut: boolean;
}

/** Spread pulled towards the expected one, each weighted by its degrees of freedom (a moderated variance). */
function moderatedSpread(expected: number, weight: number, squares: number, freedom: number): number {
  return Math.sqrt((weight * expected ** 2 + squares) / (weight + freedom));
}

/**
 * Trend of batches in order of making. Scores are on the line's own scale, not cut off at 0 or 100.
 * The spread is moderated (prior and residuals weighted by degrees of freedom, as in Smyth 2004,
 * doi 10.2202/1544-6115.1027, from memory), so an even line neither divides by zero nor alarms at its first soft batch.
 * @returns null below `rules.fewest` points, or where the latest are all of one generation.
 */
export function trendOf(points: readonly TrendPoint[], rules: TrendRules = TREND_RULES): Trend | null {
  const n = points.length;
  if (n < rules.fewest) return null;
  const latest = points.slice(-rules.window);
  const times = latest.map((point) => point.generation);
  const scores = latest.map((point) => point.score);
  const fit = theilSen(times, scores);
  const test = mannKendall(scores, times);
  const middle = mean(times);
  if (!fit || !test || middle === null) return null;
  const squares = scores.reduce(
    (sum, y, i) => sum + (y - fit.intercept - fit.slope * (times[i] ?? 0)) ** 2,
    0,
  );
  const spreadFrom = (expected: number): number =>
    moderatedSpread(expected, rules.priorWeight, squares, latest.length - 2);
  const spread = spreadFrom(rules.priorSpread);
  const reach = Math.sqrt(times.reduce((sum, x) => sum + (x - middle) ** 2, 0));
  const slopeError = spread / reach;
  const carefulError = spreadFrom(rules.ruleOutSpread) / reach;
  const interval = slopeInterval(fit, test.variance, 0.9);

  const all = points.map((point) => point.score);
  const baselineSize = rules.baselineBatches;
  const baseline = mean(all.slice(0, baselineSize)) ?? 0;
  const later = all.slice(baselineSize);
  const running = ewma(later, rules.lambda, baseline);
  const drop = baseline - (running.at(-1) ?? baseline);
  const dropError = ewmaErrorFromBaseline(rules.lambda, spread, later.length, baselineSize);

  const level = drop / dropError;
  const fall = Math.max((-fit.slope / slopeError + level) / 2, rules.levelAlone * level);
  const atThisLook = (limits: readonly number[]): number =>
    limits[Math.min(n - rules.fewest, limits.length - 1)] ?? Number.POSITIVE_INFINITY;
  const limit = atThisLook(rules.limits);
  const likelihood = fall < rules.likelihoodFrom ? null : lossLikelihood(latest);
  const likelihoodLimit = atThisLook(rules.likelihoodLimits);
  const lossRuledOut = fit.slope - rules.ruleOutErrors * carefulError > -rules.lossToRuleOut;
  const alarms: Alarm[] = [
    ...(fall > limit ? (['slope and level'] as const) : []),
    ...(likelihood !== null && likelihood.throughout > likelihoodLimit ? (['likelihood'] as const) : []),
    ...((likelihood?.lately ?? Number.NEGATIVE_INFINITY) > rules.latelyLimit ? (['likelihood lately'] as const) : []),
    // However even it falls, a loss too small to matter is no slip.
    ...(test.pFalling <= rules.steadyFallChance && fit.slope <= -rules.leastLoss ? (['steady fall'] as const) : []),
  ]; // prettier-ignore
  return {
    batches: n,
    slope: fit.slope,
    slopeLow: interval.low,
    slopeHigh: interval.high,
    slopeError,
    spread,
    mannKendall: test,
    baseline,
    baselineSize,
    running,
    drop,
    dropError,
    fall,
    limit,
    likelihood,
    likelihoodLimit,
    alarms,
    alarm: alarms.length > 0,
    lossRuledOut,
  };
}

/** The word for a trend: worn out is an alarm on a line that stands far below its early batches. */
export function standingOf(trend: Trend | null, rules: TrendRules = TREND_RULES): Standing {
  if (!trend) return 'too few batches to say';
  if (trend.alarm) return trend.drop >= rules.wornOutDrop ? 'worn out' : 'slipping';
  return trend.lossRuledOut ? 'steady' : 'no slip seen';
}
