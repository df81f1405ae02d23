// The same rows laid on calendar time: where a day stands, and the months written above it.
import { dayLabel } from './labels';

/** Days since 1970-01-01 of a civil day, by the proleptic Gregorian calendar; no clock and no zone are asked. */
export const dayNumber = (day: string): number => Date.parse(`${day}T00:00:00Z`) / 86_400_000;

/** Most ticks written above a drawing; beyond that, every third, sixth, then twelfth month, and so on. */
const MOST_TICKS = 60;

/** Days that one grid step stands for: the usual wait between a jar and the one it seeded, so that a line reads evenly. */
function daysPerStep(waits: readonly number[]): number {
  const real = waits.filter((days) => days > 0).toSorted((a, b) => a - b);
  if (real.length === 0) return 1;
  // The lower quarter: with the median, every second jar would stand too close to its seed to be told apart.
  return Math.max(1, real[Math.floor(real.length / 4)] as number);
}

/** Where jars stand along the calendar. */
export interface Along {
  readonly x: Float64Array<ArrayBuffer>;
  readonly ticks: readonly { readonly x: number; readonly label: string }[];
}

/**
 * Lays jars along time. A jar stands at its day, or just right of what would cover it in its row (a jar seeded on the day
 * its seed was made); one of unknown day stands a step after its seed, or a step before what it seeded. One of a range of
 * days stands in its middle, no earlier than its seed and no later than what it seeded.
 *
 * @param days as in dayNumber, NaN where unknown, by jar
 * @param parent the jar it hangs from, or -1
 * @param rows row of each jar, in whole steps
 * @param order seeds before what they seeded
 */
export function layAlongCalendar(
  days: Float64Array,
  parent: Int32Array,
  rows: Float64Array,
  order: Int32Array,
): Along {
  let first = Infinity;
  let last = -Infinity;
  for (const day of days) {
    if (day < first) first = day;
    if (day > last) last = day;
  }
  const waits: number[] = [];
  parent.forEach((seed, jar) => {
    const wait = (days[jar] as number) - (days[seed] ?? NaN);
    if (wait > 0) waits.push(wait);
  });
  const step = daysPerStep(waits);
  const x = placesInTime(days, parent, order, first, step);
  keepApart(x, rows, parent, order);
  const least = x.reduce((low, at) => Math.min(low, at), 0);
  for (let i = 0; i < x.length; i++) x[i] = (x[i] as number) - least;
  const ticks = Number.isFinite(first) ? monthStarts(first + least * step, first, last) : [];
  return { x, ticks: ticks.map(({ day, label }) => ({ x: (day - first) / step - least, label })) };
}

/** Steps from the first day, each jar by itself; one of unknown day no further than the first known day below it. */
function placesInTime(
  days: Float64Array,
  parent: Int32Array,
  order: Int32Array,
  first: number,
  step: number,
): Float64Array<ArrayBuffer> {
  const firstBelow = new Float64Array(days.length).fill(Infinity);
  for (let i = order.length - 1; i >= 0; i--) {
    const jar = order[i] as number;
    const seed = parent[jar] as number;
    const day = days[jar] as number;
    const below = firstBelow[jar] as number;
    // The middle of a range may lie after the day of what the jar seeded.
    const from = Number.isNaN(day) ? below : Math.min(day, below);
    if (seed >= 0 && from < (firstBelow[seed] as number)) firstBelow[seed] = from;
  }
  const x = new Float64Array(days.length);
  for (const jar of order) {
    const seed = parent[jar] as number;
    const day = days[jar] as number;
    const known = firstBelow[jar] as number;
    const below = known === Infinity ? Infinity : (known - first) / step;
    if (!Number.isNaN(day))
      x[jar] = Math.max(Math.min((day - first) / step, below), seed >= 0 ? (x[seed] as number) : 0);
    else if (seed >= 0) x[jar] = Math.min((x[seed] as number) + 1, below);
    else x[jar] = Number.isFinite(below) ? below - 1 : 0;
  }
  return x;
}

/** How far right of its seed a jar stands at least, so that no ribbon runs backwards in time. */
const BEHIND_SEED = 0.5;

/**
 * Moves jars right, as little as needed, until no two of one row are within one step and none is left of its seed.
 *
 * @param x steps along the calendar, by jar; changed in place
 * @param rows row of each jar, in whole steps from 0
 * @param parent the jar it hangs from, or -1
 * @param order seeds before what they seeded, and no jar left of its seed by more than rounding
 */
export function keepApart(x: Float64Array, rows: Float64Array, parent: Int32Array, order: Int32Array): void {
  const turn = new Int32Array(x.length);
  order.forEach((jar, i) => {
    turn[jar] = i;
  });
  const fromLeft = order.toSorted(
    (a, b) => (x[a] as number) - (x[b] as number) || (turn[a] as number) - (turn[b] as number),
  );
  /** Where the next jar of each row may stand. */
  const free = new Float64Array(rows.reduce((most, row) => Math.max(most, row), 0) + 1).fill(-Infinity);
  for (const jar of fromLeft) {
    const row = rows[jar] as number;
    const seed = parent[jar] as number;
    const behind = seed >= 0 ? (x[seed] as number) + BEHIND_SEED : -Infinity;
    const at = Math.max(x[jar] as number, behind, free[row] as number);
    x[jar] = at;
    free[row] = at + 1;
  }
}

const iso = (day: number): string => new Date(day * 86_400_000).toISOString().slice(0, 10);

/**
 * First days of months from that of `first` to `last`, thinned to MOST_TICKS, without those before `from`; the year is
 * written with the first and where it turns.
 */
function monthStarts(from: number, first: number, last: number): { day: number; label: string }[] {
  const [startYear, startMonth] = iso(first).split('-').map(Number) as [number, number];
  const [endYear, endMonth] = iso(last).split('-').map(Number) as [number, number];
  const start = startYear * 12 + startMonth - 1;
  const to = endYear * 12 + endMonth - 1;
  const every = [1, 3, 6, 12, 60, 120, 600].find((months) => (to - start) / months <= MOST_TICKS) ?? 1200;
  const ticks: { day: number; label: string }[] = [];
  for (let month = Math.floor(start / every) * every; month <= to; month += every) {
    const year = Math.floor(month / 12);
    const day = `${year}-${String((month % 12) + 1).padStart(2, '0')}-01`;
    if (dayNumber(day) < from) continue;
    const name = dayLabel(day, false).slice(2);
    ticks.push({
      day: dayNumber(day),
      label: month % 12 === 0 || ticks.length === 0 ? `${name} ${year}` : name,
    });
  }
  return ticks;
}
