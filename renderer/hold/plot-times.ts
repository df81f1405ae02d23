// Where times and temperatures lie in the plot of a hold. Pure.
import type { Reply } from '../../core/contract';
import { momentText, storedMoment } from '../../core/ledger/stored-moments';
import { dayLabel } from '../../core/lineage/labels';

export type Hold = Reply<'hold.get'>;

const HOUR = 3600;
const seconds = (moment: string): number => storedMoment(moment).seconds;

export interface Span {
  readonly from: number;
  readonly to: number;
}

/** From the start or the first reading to the end, or the last of what is known, in seconds. */
export function spanOf(hold: Hold): Span {
  const read = hold.series.flatMap(({ at }) => [at[0] ?? Infinity, at.at(-1) ?? -Infinity]);
  const moments = [hold.began, hold.ended, hold.ends, hold.runs ? hold.now : null].flatMap((one) =>
    one === null ? [] : [seconds(one)],
  );
  const all = [...moments, ...read.filter(Number.isFinite)];
  const from = all.reduce((least, one) => Math.min(least, one), Infinity);
  const to = all.reduce((most, one) => Math.max(most, one), -Infinity);
  return Number.isFinite(from) ? { from, to: Math.max(to, from + HOUR) } : { from: 0, to: HOUR };
}

export interface Tick {
  readonly at: number;
  readonly words: string;
}

const STEPS = [1, 2, 4, 6, 8, 12, 24, 48, 96, 168];

/** Full hours of the local clock, no closer than `least` pixels; midnight is named by its day. */
export function timeTicks({ from, to }: Span, offset: number, width: number, least = 76): readonly Tick[] {
  const step = (STEPS.find((hours) => (width * hours * HOUR) / (to - from) >= least) ?? 168) * HOUR;
  const local = offset * 60;
  const first = Math.ceil((from + local) / step) * step - local;
  const ticks: Tick[] = [];
  for (let at = first; at <= to; at += step) {
    const text = momentText(at, offset);
    const midnight = text.slice(11, 16) === '00:00';
    ticks.push({ at, words: midnight ? dayLabel(text.slice(0, 10), false) : text.slice(11, 16) });
  }
  return ticks;
}

/** Temperatures shown, °C: all that was read and planned, and no less than 30 to 40. */
export function warmthRange(hold: Hold): { readonly low: number; readonly high: number } {
  const all = [...hold.series.flatMap(({ c }) => c), ...(hold.planned ? [hold.planned.value] : [])];
  const low = all.reduce((least, one) => Math.min(least, one), 30);
  const high = all.reduce((most, one) => Math.max(most, one), 40);
  return { low: Math.floor(low - 1), high: Math.ceil(high + 2) };
}

/** Each stretch of readings without a gap, as the points of a line; between two of them the gap. */
export function stretches(
  series: Hold['series'][number],
  x: (at: number) => number,
  y: (celsius: number) => number,
): { readonly read: readonly string[]; readonly gaps: readonly string[] } {
  const after = new Set(series.gaps.map(({ to }) => seconds(to)));
  const read: string[] = [];
  const gaps: string[] = [];
  let now: string[] = [];
  let before = '';
  for (const [i, at] of series.at.entries()) {
    const point = `${x(at).toFixed(1)} ${y(series.c[i] ?? 0).toFixed(1)}`;
    if (after.has(at) && now.length > 0) {
      read.push(now.join(' L'));
      gaps.push(`${before} L${point}`);
      now = [];
    }
    now.push(point);
    before = point;
  }
  return { read: now.length > 0 ? [...read, now.join(' L')] : read, gaps };
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/**
 * At which of a series' points its name stands, so that the line doesn't run through it: the one nearest the middle over whose
 * width the line keeps to its side; where there is none, the point that lies farthest out.
 * @param points in px, y downwards @param width of the name @param above or below the line
 */
export function nameAt(points: readonly Point[], width: number, above: boolean): number {
  const out = (y: number): number => (above ? -y : y);
  const clear = points.flatMap((point, i) => {
    const over = points.filter(({ x }) => x >= point.x && x <= point.x + width);
    return over.every(({ y }) => out(y) <= out(point.y) + 4) ? [i] : [];
  });
  const middle = points.length / 2;
  const fits = clear.filter((i) => (points[i]?.x ?? 0) + width <= (points.at(-1)?.x ?? 0));
  const near = fits.toSorted((a, b) => Math.abs(a - middle) - Math.abs(b - middle))[0];
  if (near !== undefined) return near;
  return points.reduce((best, { y }, i) => (out(y) > out(points[best]?.y ?? y) ? i : best), 0);
}

/** From when to when something failed, in seconds; up to now where it still lasts; null where nobody said when. */
export function failedSpan(one: Hold['interruptions'][number], hold: Hold): Span | null {
  const length = one.hours === null ? null : one.hours * HOUR;
  const from =
    one.from !== null
      ? seconds(one.from)
      : one.to !== null && length !== null
        ? seconds(one.to) - length
        : null;
  if (from === null) return null;
  const to =
    one.to !== null ? seconds(one.to) : length !== null ? from + length : seconds(hold.ended ?? hold.now);
  return { from, to: Math.max(from, to) };
}
