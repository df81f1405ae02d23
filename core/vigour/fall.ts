// How a line that was said to slip came down: at once with one batch, or with each generation. Of the two shapes the one that
// leaves less of its batches unexplained is said, so that a slope is never said of one drop and a level stretch.
import type { Trend, TrendPoint } from './trend';
import { normalQuantile } from './distributions';
import { median, rising } from './medians';

export interface Fall {
  /** Unclear: a loss with each generation would fit better, but whether there is one can't be told. */
  readonly shape: 'at once' | 'with each generation' | 'unclear';
  /** Place, among the points, of the first batch below. */
  readonly at: number;
  /** Points by which it fell at once, or that it loses with each generation. */
  readonly points: number;
  /** Nine in ten lie between, of a loss with each generation; of a fall at once both are `points`. */
  readonly low: number;
  readonly high: number;
}

/** How fast a line gains (points a generation; negative is a loss), with its 90 % interval. */
export interface Rate {
  readonly slope: number;
  readonly low: number;
  readonly high: number;
}

/** Batches looked back on, and by how much worse (in all its points) a shape may fit and the two still can't be told apart. */
const BACK = 60;
const CLOSE = 1;
/** A loss with each generation is said only where no less than this is likely (points). */
const LEAST_LOSS = 0.1;

interface Fitted extends Fall {
  /** Sum of what is left unexplained (points, without sign): a bad day weighs no more than it is off. */
  readonly left: number;
}

const leftOf = (points: readonly TrendPoint[], of: (point: TrendPoint) => number): number =>
  points.reduce((sum, point) => sum + Math.abs(point.score - of(point)), 0);
const middleOf = (values: readonly number[]): number => median(values) ?? 0;

/** One level before a batch and another from it on. */
function dropAt(points: readonly TrendPoint[], at: number): Fitted {
  const [before, after] = [points.slice(0, at), points.slice(at)];
  const [high, low] = [before, after].map((part) => middleOf(part.map(({ score }) => score))) as [number, number];
  const fell = high - low;
  return { shape: 'at once', at, points: fell, low: fell, high: fell, left: leftOf(before, () => high) + leftOf(after, () => low) };
} // prettier-ignore

/**
 * Nine in ten of what the median of values may be: order statistics, by the normal approximation of the sign test
 * (Hollander & Wolfe 1999, from memory).
 * @param values rising, at least one
 */
function intervalOf(values: readonly number[]): { readonly low: number; readonly high: number } {
  const n = values.length;
  const below = Math.max(0, Math.floor((n - normalQuantile(0.95) * Math.sqrt(n)) / 2));
  return { low: values[below] as number, high: values[n - 1 - below] as number };
}

/** One level before a batch, and from it on so much less with each generation. */
function slopeFrom(points: readonly TrendPoint[], at: number): Fitted {
  const [before, after] = [points.slice(0, at), points.slice(at)];
  const high = middleOf(before.map(({ score }) => score));
  const from = before.at(-1)?.generation ?? 0;
  const since = ({ generation }: TrendPoint): number => Math.max(1, generation - from);
  const losses = rising(after.map((point) => (high - point.score) / since(point)));
  const loss = middleOf(losses);
  const left = leftOf(before, () => high) + leftOf(after, (point) => high - loss * since(point));
  return { shape: 'with each generation', at, points: loss, ...intervalOf(losses), left };
}

/**
 * Levels are medians, what is left is counted without squares (least absolute deviations, from memory), so one bad day makes no
 * fall. Of shapes that explain the batches about as well a slope is said only where it is the better, and where it had two
 * batches or more to show in.
 * @param points of the comparable batches, in order of making
 * @returns null where there are fewer than two batches before and one after, or where no shape comes down
 */
export function fallOf(points: readonly TrendPoint[]): Fall | null {
  const skipped = Math.max(0, points.length - BACK);
  const looked = points.slice(skipped);
  let drop: Fitted | null = null;
  let slope: Fitted | null = null;
  for (let at = 2; at < looked.length; at++) {
    const [one, other] = [dropAt(looked, at), slopeFrom(looked, at)];
    if (one.points > 0 && (!drop || one.left < drop.left)) drop = one;
    if (other.points > 0 && looked.length - at > 1 && (!slope || other.left < slope.left)) slope = other;
  }
  const best = slope && (!drop || slope.left < drop.left - CLOSE) ? slope : drop;
  if (!best) return null;
  const shape = best.shape === 'with each generation' && best.low < LEAST_LOSS ? 'unclear' : best.shape;
  return { shape, at: best.at + skipped, points: best.points, low: best.low, high: best.high };
}

const hundredths = (value: number): number => Math.round(100 * value) / 100;

/**
 * The one rate of a line, to hundredths, so that whatever rounds it prints the same: since it began to fall where it falls with
 * each generation, else over its latest batches.
 */
export function rateOf(trend: Trend | null, fall: Fall | null): Rate | null {
  if (fall?.shape === 'with each generation')
    return { slope: -hundredths(fall.points), low: -hundredths(fall.high), high: -hundredths(fall.low) };
  return (
    trend && {
      slope: hundredths(trend.slope),
      low: hundredths(trend.slopeLow),
      high: hundredths(trend.slopeHigh),
    }
  );
}
