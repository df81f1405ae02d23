// The trend of a line over its comparable batches by published methods: how fast it falls and how far its running mean stands
// below its early batches. It is shown beside what is said of the line and checks it; the word itself comes of the posterior
// (standing.ts).
import { ewma, ewmaErrorFromBaseline } from './ewma';
import { mannKendall, type MannKendall } from './mann-kendall';
import { mean } from './medians';
import { slopeInterval, theilSen } from './theil-sen';

/** One comparable batch: its generation and the median of its comparable jars' scores (points). */
export interface TrendPoint {
  readonly generation: number;
  readonly score: number;
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
  /** Control limit of the running mean, in standard errors: the usual three. */
  readonly limit: number;
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
  limit: 3,
  lossToRuleOut: 3,
  ruleOutSpread: 8,
  ruleOutErrors: 2.5,
};

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
  /** A loss of `lossToRuleOut` a generation can be ruled out. */
  readonly lossRuledOut: boolean;
}

const hundredths = (value: number): number => Math.round(100 * value) / 100;

/** Spread pulled towards the expected one, each weighted by its degrees of freedom (a moderated variance). */
function moderatedSpread(expected: number, weight: number, squares: number, freedom: number): number {
  return Math.sqrt((weight * expected ** 2 + squares) / (weight + freedom));
}

/**
 * Trend of batches in order of making. Scores are on the line's own scale, not cut off at 0 or 100.
 * The spread is moderated (prior and residuals weighted by degrees of freedom, as in Smyth 2004,
 * doi 10.2202/1544-6115.1027, from memory), so that an even line does not divide by zero.
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
  // To hundredths, so that whatever rounds them prints the same.
  const baseline = hundredths(mean(all.slice(0, baselineSize)) ?? 0);
  const later = all.slice(baselineSize);
  const running = ewma(later, rules.lambda, baseline);
  const drop = hundredths(baseline - (running.at(-1) ?? baseline));
  const dropError = ewmaErrorFromBaseline(rules.lambda, spread, later.length, baselineSize);

  const lossRuledOut = fit.slope - rules.ruleOutErrors * carefulError > -rules.lossToRuleOut;
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
    lossRuledOut,
  };
}

/** What a line stands below its early batches by the figures that are shown beside: their level less the smoothed one. */
export const pointsBelow = ({ drop }: Pick<Trend, 'drop'>): number => Math.max(0, Math.round(drop));
