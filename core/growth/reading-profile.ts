// From a probe's readings to a profile: impossible readings are left out, gaps bridged by a straight line, and both said.
import type { WarmPoint } from './warm-hours';

/** Liquid water and nothing else stands round a jar. */
const POSSIBLE = { low: 0, high: 100 } as const;
/** A lone reading this far (°C) from both its neighbours, which agree within AGREE, is a fault of the probe. */
const LEAP = 8;
const AGREE = 3;
/** A gap is longer than this many usual intervals, and at least so long (h). */
const GAP_INTERVALS = 3;
const GAP_HOURS = 0.5;

export interface ReadingsProfile {
  readonly profile: readonly WarmPoint[];
  readonly leftOut: readonly WarmPoint[];
  readonly gaps: readonly { readonly from: number; readonly to: number }[];
  /** What was done, in sentences. */
  readonly says: readonly string[];
}

const clock = (hours: number): string => {
  const minutes = Math.round(hours * 60);
  return minutes < 60 ? `${minutes} min` : `${Math.floor(minutes / 60)} h ${minutes % 60} min`;
};
const degrees = (celsius: number): string => `${celsius.toFixed(1)} °C`;

/** @param readings in any order; of two at one time the first stands. */
export function profileOf(readings: readonly WarmPoint[]): ReadingsProfile {
  const sorted = readings
    .toSorted((a, b) => a.hour - b.hour)
    .filter((reading, i, all) => i === 0 || reading.hour > (all[i - 1]?.hour ?? -1));
  const possible = sorted.filter(({ celsius }) => celsius >= POSSIBLE.low && celsius <= POSSIBLE.high);
  const profile = possible.filter((reading, i) => {
    const [before, after] = [possible[i - 1], possible[i + 1]];
    if (!before || !after || Math.abs(before.celsius - after.celsius) > AGREE) return true;
    return [before, after].some((near) => Math.abs(reading.celsius - near.celsius) <= LEAP);
  });
  const kept = new Set(profile);
  const leftOut = sorted.filter((reading) => !kept.has(reading));
  const intervals = sorted.slice(1).map((reading, i) => reading.hour - (sorted[i]?.hour ?? 0));
  const usual = intervals.toSorted((a, b) => a - b)[Math.floor(intervals.length / 2)] ?? 0;
  const longest = Math.max(GAP_HOURS, GAP_INTERVALS * usual);
  const gaps = profile.slice(1).flatMap((reading, i) => {
    const from = profile[i]?.hour ?? reading.hour;
    return reading.hour - from > longest ? [{ from, to: reading.hour }] : [];
  });
  return {
    profile,
    leftOut,
    gaps,
    says: [
      ...leftOut.map(
        ({ hour, celsius }) =>
          `Left out: ${degrees(celsius)} at ${clock(hour)}. No jar warms and cools that fast.`,
      ),
      ...gaps.map(
        ({ from, to }) =>
          `Nothing was read for ${clock(to - from)} from ${clock(from)} on. A straight line stands in for it.`,
      ),
    ],
  };
}
