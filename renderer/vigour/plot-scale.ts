// Where things stand in a line's plot: pure, in pixels. A plot is fitted to the batches that it shows.
import type { Reply } from '../../core/contract';

export type LineReply = Reply<'judgement.line'>;
export type LineBatch = LineReply['batches'][number];

/** A batch's column is never narrower where it can be pressed. */
export const LEAST_STEP = 40;
/** More than these are not shown at once, but as a whole. */
const MOST_SHOWN = 25;
/** Points that a plot spans at least: smaller differences are not blown up. */
const LEAST_SPAN = 40;
/** Left of the plot stand the scale and the words of the early band; right of it, when asked for, those of the levels. */
const LEFT = 104;
/** The figures of the scale end here; the band and its words begin beside them. */
export const SCALE = 34;
const RIGHT = { plain: 24, worked: 156 } as const;
const TOP = 30;
/** Between the highest and the lowest; with all that it was worked out by, there must be room between the marks. */
const RISE = { plain: 156, worked: 270 } as const;
/** A batch's jar is never wider; beside its jars' dots it steps back. */
const WIDEST = { plain: 46, worked: 29 } as const;

/** The batches shown: from, to (not included). */
export interface Shown {
  readonly from: number;
  readonly to: number;
}

/** How many batches a plot of that width has room for, with the words of the levels or without. */
export const roomFor = (width: number): number =>
  Math.max(1, Math.min(MOST_SHOWN, Math.floor((width - LEFT - RIGHT.worked) / LEAST_STEP)));

/** The newest that there is room for. */
export const newest = (batches: number, room: number): Shown => ({
  from: Math.max(0, batches - room),
  to: batches,
});

/** As many as before, moved so that a batch is among them. */
export function movedTo(shown: Shown, index: number, batches: number): Shown {
  const many = Math.min(shown.to - shown.from, batches);
  const from = index < shown.from ? index : index >= shown.to ? index - many + 1 : shown.from;
  const kept = Math.max(0, Math.min(batches - many, from));
  return { from: kept, to: kept + many };
}

export interface Layout {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly step: number;
  /** Width of a batch's jar. */
  readonly jar: number;
  readonly top: number;
  readonly foot: number;
  /** Where "fell here" stands; where batches without a score do; null where there is none. Where the days begin. */
  readonly fell: number | null;
  readonly lane: number | null;
  readonly days: number;
  /** Points written at the left, of 0 to 100. */
  readonly scale: readonly number[];
  readonly x: (index: number) => number;
  /** Points outside what is shown lie on the edge. */
  readonly y: (points: number) => number;
}

/** Points of a batch as they are drawn. */
export const levelOf = (batch: LineBatch, corrected: boolean): number | null =>
  corrected ? batch.points : batch.uncorrected;

/** What a plot spans: all that is drawn in it, at least LEAST_SPAN. */
function spanOf(
  line: LineReply,
  batches: readonly LineBatch[],
  worked: boolean,
): { low: number; high: number } {
  const points = batches.flatMap(({ points, uncorrected, jars }) => [
    ...(points === null ? [] : [points]),
    ...(worked && uncorrected !== null ? [uncorrected] : []),
    ...(worked ? jars.flatMap(({ score, asItCame }) => [score, asItCame]) : []),
  ]);
  const { baseline, spread } = line;
  if (baseline !== null) points.push(baseline - (spread ?? 0), baseline + (spread ?? 0));
  if (worked && line.lowerLimit !== null) points.push(line.lowerLimit);
  const [low, high] = points.length === 0 ? [0, 100] : [Math.min(...points), Math.max(...points)];
  const lack = Math.max(0, LEAST_SPAN - (high - low)) / 2;
  return { low: low - lack, high: high + lack };
}

/** Points that are written beside the plot: every tenth, or every twentieth where it spans many. */
function scaleOf(low: number, high: number): number[] {
  const step = high - low > 70 ? 20 : 10;
  return Array.from({ length: 100 / step + 1 }, (_, at) => at * step).filter((at) => at >= low && at <= high);
}

/** The plot of the batches shown. @param worked with slope, levels, jars and what was left out */
export function layoutOf(line: LineReply, shown: Shown, width: number, worked: boolean): Layout {
  const batches = line.batches.slice(shown.from, shown.to);
  const kind = worked ? 'worked' : 'plain';
  const [left, right, rise] = [LEFT, RIGHT[kind], RISE[kind]];
  const step = (width - left - right) / Math.max(1, batches.length);
  const jar = Math.max(5, Math.min(WIDEST[kind], step * 0.84));
  const { low, high } = spanOf(line, batches, worked);
  const foot = TOP + rise;
  const falls = batches.some(({ batch }) => batch === line.cameDownAt);
  const lacking = batches.some(({ points }) => points === null);
  const fell = falls ? foot + 42 : null;
  const lane = lacking ? (fell ?? foot + 10) + 70 : null;
  const days = (lane ?? fell ?? foot + 10) + 40;
  return {
    width, left, right, step, jar, top: TOP, foot, fell, lane, days, scale: scaleOf(low, high), height: days + 28,
    x: (index) => left + (index - shown.from + 0.5) * step,
    y: (points) => foot - ((Math.min(high, Math.max(low, points)) - low) / (high - low)) * rise,
  }; // prettier-ignore
}

/** A plot in small, on a card: every line on the same scale, 0 to 100. */
export interface SmallLayout {
  readonly x: (index: number) => number;
  readonly y: (points: number) => number;
}
export const SMALL = { width: 190, height: 76 } as const;
export const smallLayout = (batches: number): SmallLayout => ({
  x: (index) => 6 + ((index + 0.5) / Math.max(1, batches)) * (SMALL.width - 12),
  y: (points) => 6 + (1 - Math.min(100, Math.max(0, points)) / 100) * (SMALL.height - 12),
});

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
 * The slope through the batches it was reckoned on: those since the line began to fall, else the latest; none across one drop, which
 * is no slope. It goes through the median level at the median generation (Theil–Sen); the interval's ends turn about that same point.
 * @returns null with too few batches
 */
export function slopeLine(line: LineReply): SlopeLine | null {
  const { slope, slopeLow, slopeHigh } = line;
  if (slope === null || slopeLow === null || slopeHigh === null || line.cameDown === 'at once') return null;
  const window = line.model.parameters['window'];
  const compared = line.batches.flatMap(({ points, generation }, index) =>
    points === null ? [] : [{ index, points, generation }],
  );
  const since = line.batches.findIndex(({ batch }) => batch === line.cameDownAt);
  const latest = typeof window === 'number' ? compared.slice(-window) : compared;
  const used =
    since < 0 || line.cameDown !== 'with each generation'
      ? latest
      : compared.filter(({ index }) => index >= since);
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

/** Why a batch stands below the line, in a word or two. */
const whyBelow = (batch: LineBatch): string =>
  batch.first ? 'first batch' : batch.jars.length === 0 && batch.setWord === null ? 'not noted' : 'left out';

/** Batches below the line with their word, said once for neighbours that share it: at its middle. */
export function wordsBelow(
  batches: readonly LineBatch[],
  shown: Shown,
): { readonly at: number; readonly words: string }[] {
  const runs: { from: number; to: number; words: string }[] = [];
  for (let index = shown.from; index < shown.to; index += 1) {
    const batch = batches[index];
    if (!batch || batch.points !== null) continue;
    const words = whyBelow(batch);
    const last = runs.at(-1);
    if (last && last.to === index - 1 && last.words === words) last.to = index;
    else runs.push({ from: index, to: index, words });
  }
  return runs.map(({ from, to, words }) => ({ at: (from + to) / 2, words }));
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** Days below the columns: as many as there is room for, the newest always; the year with the first of each. */
export function dayMarks(
  batches: readonly LineBatch[],
  shown: Shown,
  step: number,
): { readonly index: number; readonly day: string; readonly year: string | null }[] {
  const every = Math.max(1, Math.ceil(62 / step));
  let year = '';
  const marks: { index: number; day: string; year: string | null }[] = [];
  for (let index = shown.from; index < shown.to; index += 1) {
    const madeOn = batches[index]?.madeOn;
    if ((shown.to - 1 - index) % every !== 0) continue;
    if (madeOn === null || madeOn === undefined) {
      marks.push({ index, day: '?', year: null });
      continue;
    }
    const own = madeOn.slice(0, 4);
    marks.push({ index, day: `${Number(madeOn.slice(8, 10))} ${MONTHS[Number(madeOn.slice(5, 7)) - 1] ?? ''}`, year: own === year ? null : own }); // prettier-ignore
    year = own;
  }
  return marks;
}
