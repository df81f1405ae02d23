// From a probe's readings to a profile: impossible readings are left out, gaps bridged by a straight line, and both said.
import type { WarmPoint } from './warm-hours';

/** Liquid water and nothing else stands round a jar. */
const POSSIBLE = { low: 0, high: 100 } as const;
/** Readings this far (°C) from those before and after, which agree as far as a warming jar does, are a fault of the probe. */
const LEAP = 5;
const AGREE = 5;
/** … where they leap so many times as far as those around them differ, … */
const TIMES_APART = 3;
/** … and no more than so many stand together, for no longer than this (h): a real change lasts. */
const MOST_TOGETHER = 6;
const LONGEST_LEAP = 0.75;
/** The first and last readings have nothing on their other side: they leap where no water follows (°C in LEAST_TIME h). */
const EDGE_LEAP = 15;
/** A gap is longer than this many usual intervals, and at least so long (h). */
const GAP_INTERVALS = 3;
const GAP_HOURS = 0.5;

export interface ReadingsProfile {
  readonly profile: readonly WarmPoint[];
  readonly leftOut: readonly WarmPoint[];
  readonly gaps: readonly { readonly from: number; readonly to: number }[];
}

/** How many readings from a place on leap away from the one before and come back; 0 where none do. */
function leapAt(readings: readonly WarmPoint[], at: number, before: WarmPoint): number {
  for (let on = at + 1; on <= Math.min(at + MOST_TOGETHER, readings.length - 1); on++) {
    const [last, after] = [readings[on - 1], readings[on]];
    if (!last || !after || last.hour - before.hour > LONGEST_LEAP) return 0;
    if (Math.abs(last.celsius - before.celsius) <= LEAP) return 0;
    const apart = Math.abs(after.celsius - before.celsius);
    const far = Math.max(LEAP, TIMES_APART * apart);
    const alone = readings
      .slice(at, on)
      .every(({ celsius }) => [before, after].every((near) => Math.abs(celsius - near.celsius) > far));
    if (apart <= AGREE && alone) return on - at;
  }
  return 0;
}

/** Readings without those that leap away and come back. */
function withoutLeaps(readings: readonly WarmPoint[]): WarmPoint[] {
  const kept: WarmPoint[] = [];
  for (let at = 0; at < readings.length; at++) {
    const reading = readings[at];
    const before = kept.at(-1);
    if (!reading) continue;
    const leap =
      before && Math.abs(reading.celsius - before.celsius) > LEAP ? leapAt(readings, at, before) : 0;
    if (leap > 0) at += leap - 1;
    else kept.push(reading);
  }
  return kept;
}

/** A first or last reading that leaps from two that agree: a probe that was being switched on, or pulled out. */
function withoutEdges(readings: readonly WarmPoint[], usual: number): readonly WarmPoint[] {
  const leaps = (edge?: WarmPoint, next?: WarmPoint, second?: WarmPoint): boolean =>
    edge !== undefined && next !== undefined && second !== undefined &&
    Math.abs(edge.hour - next.hour) <= Math.min(GAP_HOURS, 1.5 * usual) &&
    Math.abs(next.celsius - second.celsius) <= AGREE &&
    Math.abs(edge.celsius - next.celsius) > EDGE_LEAP; // prettier-ignore
  const [first, second, third] = readings;
  const from = leaps(first, second, third) ? 1 : 0;
  const rest = readings.slice(from);
  return leaps(rest.at(-1), rest.at(-2), rest.at(-3)) ? rest.slice(0, -1) : rest;
}

/** @param readings in any order; of two at one time the first stands. */
export function profileOf(readings: readonly WarmPoint[]): ReadingsProfile {
  const sorted = readings
    .toSorted((a, b) => a.hour - b.hour)
    .filter((reading, i, all) => i === 0 || reading.hour > (all[i - 1]?.hour ?? -1));
  const intervals = sorted.slice(1).map((reading, i) => reading.hour - (sorted[i]?.hour ?? 0));
  const usual = intervals.toSorted((a, b) => a - b)[Math.floor(intervals.length / 2)] ?? 0;
  const possible = sorted.filter(({ celsius }) => celsius >= POSSIBLE.low && celsius <= POSSIBLE.high);
  const profile = withoutLeaps(withoutEdges(possible, usual));
  const kept = new Set(profile);
  const leftOut = sorted.filter((reading) => !kept.has(reading));
  const longest = Math.max(GAP_HOURS, GAP_INTERVALS * usual);
  const gaps = profile.slice(1).flatMap((reading, i) => {
    const from = profile[i]?.hour ?? reading.hour;
    return reading.hour - from > longest ? [{ from, to: reading.hour }] : [];
  });
  return { profile, leftOut, gaps };
}
