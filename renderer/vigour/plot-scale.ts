// Where things stand in a line's plot: pure, in pixels. Every line is drawn on the same scale, 0 to 100.
import type { Reply } from '../../core/contract';

export type LineReply = Reply<'judgement.line'>;
export type LineBatch = LineReply['batches'][number];

export interface PlotSize {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  /** Room below the scale for what has no score, and for the days. */
  readonly bottom: number;
}

/** Right of the scale there is room for “smoothed level 100” at 15 px. */
export const BIG: Omit<PlotSize, 'width'> = { height: 400, left: 36, right: 148, top: 18, bottom: 104 };
export const SMALL: Omit<PlotSize, 'width'> = { height: 116, left: 6, right: 6, top: 6, bottom: 22 };
/** A batch's column is never narrower: what can be pressed is at least this wide. */
export const LEAST_STEP = 40;

const cut = (points: number): number => Math.min(100, Math.max(0, points));

export interface Scale {
  readonly size: PlotSize;
  readonly step: number;
  readonly x: (index: number) => number;
  /** Points outside 0 to 100 lie on the edge. */
  readonly y: (points: number) => number;
}

/** The scale for so many batches. */
export function scaleOf(size: PlotSize, batches: number): Scale {
  const inner = size.width - size.left - size.right;
  const step = inner / Math.max(1, batches);
  const rise = size.height - size.top - size.bottom;
  return {
    size,
    step,
    x: (index) => size.left + (index + 0.5) * step,
    y: (points) => size.top + (1 - cut(points) / 100) * rise,
  };
}

/** Width that so many batches need at least. */
export const leastWidth = (size: Omit<PlotSize, 'width'>, batches: number): number =>
  size.left + size.right + batches * LEAST_STEP;

const median = (values: readonly number[]): number => {
  const sorted = values.toSorted((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? upper) + upper) / 2;
};

export interface SlopeLine {
  /** Index of the batch, and the level there: of the slope, and of the ends of its interval. */
  readonly at: readonly {
    readonly index: number;
    readonly middle: number;
    readonly low: number;
    readonly high: number;
  }[];
}

/**
 * The slope through the batches it was reckoned on. It goes through the median level at the median generation
 * (Theil–Sen); the interval's ends turn about that same point.
 * @returns null with too few batches
 */
export function slopeLine(line: LineReply): SlopeLine | null {
  const { slope, slopeLow, slopeHigh } = line;
  if (slope === null || slopeLow === null || slopeHigh === null) return null;
  const window = line.model.parameters['window'];
  const compared = line.batches.flatMap(({ points, generation }, index) =>
    points === null ? [] : [{ index, points, generation }],
  );
  const used = typeof window === 'number' ? compared.slice(-window) : compared;
  const middle = median(used.map(({ generation }) => generation));
  const level = median(used.map(({ points, generation }) => points - slope * (generation - middle)));
  return {
    at: used.map(({ index, generation }) => {
      const by = generation - middle;
      const ends = [level + slopeLow * by, level + slopeHigh * by];
      return { index, middle: level + slope * by, low: Math.min(...ends), high: Math.max(...ends) };
    }),
  };
}

/** The running mean over the batches it was reckoned on: the last ones that can be compared. */
export function runningLine(line: LineReply): { readonly index: number; readonly points: number }[] {
  const compared = line.batches.flatMap(({ points }, index) => (points === null ? [] : [index]));
  const used = compared.slice(-line.running.length);
  return line.running.flatMap((points, at) => {
    const index = used[at];
    return index === undefined ? [] : [{ index, points }];
  });
}

/** Moves labels apart: the same order, each at least `gap` below the one above, none outside the room. */
export function spread(wanted: readonly number[], gap: number, top: number, bottom: number): number[] {
  const order = wanted.map((y, at) => ({ y, at })).toSorted((a, b) => a.y - b.y);
  let above = Number.NEGATIVE_INFINITY;
  for (const label of order) {
    label.y = Math.max(label.y, top, above + gap);
    above = label.y;
  }
  let below = Number.POSITIVE_INFINITY;
  for (const label of order.toReversed()) {
    label.y = Math.min(label.y, bottom, below - gap);
    below = label.y;
  }
  const placed = [...wanted];
  for (const { y, at } of order) placed[at] = y;
  return placed;
}

/** Stretches without a gap: what was not compared is not bridged. */
export function stretches<T extends { readonly index: number }>(points: readonly T[]): T[][] {
  const found: T[][] = [];
  for (const point of points) {
    const last = found.at(-1);
    if (last && last.at(-1)?.index === point.index - 1) last.push(point);
    else found.push([point]);
  }
  return found;
}

/** "M1 2L3 4" through points. */
export const path = (points: readonly (readonly [number, number])[]): string =>
  points.map(([x, y], at) => `${at === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');
