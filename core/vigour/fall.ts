// How a line that was said to slip came down: at once with one batch, or with each generation. Of the two shapes the one that
// leaves less of its batches unexplained is said, so that a slope is never said of one drop and a level stretch.
import type { TrendPoint } from './trend';
import { median } from './medians';

export interface Fall {
  readonly shape: 'at once' | 'with each generation';
  /** Place, among the points, of the first batch below. */
  readonly at: number;
  /** Points by which it fell at once, or that it loses with each generation. */
  readonly points: number;
}

/** Batches looked back on, and by how much worse (in all its points) a shape may fit and the two still can't be told apart. */
const BACK = 60;
const CLOSE = 1;

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
  return { shape: 'at once', at, points: high - low, left: leftOf(before, () => high) + leftOf(after, () => low) };
} // prettier-ignore

/** One level before a batch, and from it on so much less with each generation. */
function slopeFrom(points: readonly TrendPoint[], at: number): Fitted {
  const [before, after] = [points.slice(0, at), points.slice(at)];
  const high = middleOf(before.map(({ score }) => score));
  const from = before.at(-1)?.generation ?? 0;
  const since = ({ generation }: TrendPoint): number => Math.max(1, generation - from);
  const loss = middleOf(after.map((point) => (high - point.score) / since(point)));
  const left = leftOf(before, () => high) + leftOf(after, (point) => high - loss * since(point));
  return { shape: 'with each generation', at, points: loss, left };
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
  return best && { shape: best.shape, at: best.at + skipped, points: best.points };
}
