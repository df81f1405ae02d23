// The same rows laid on calendar time: where a day stands, and the months written above it.
import { dayLabel } from './labels';

/** Days since 1970-01-01 of a civil day, by the proleptic Gregorian calendar; no clock and no zone are asked. */
export function dayNumber(day: string): number {
  return (
    Date.UTC(Number(day.slice(0, 4)), Number(day.slice(5, 7)) - 1, Number(day.slice(8, 10))) / 86_400_000
  );
}

/** Most ticks written above a drawing; beyond that, every third, sixth, then twelfth month, and so on. */
const MOST_TICKS = 60;

/** Days that one grid step stands for: the usual wait between a jar and the one it seeded, so that a line reads evenly. */
export function daysPerStep(waits: readonly number[]): number {
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
 * its seed was made); one of unknown day stands a step after its seed, or a step before what it seeded.
 *
 * @param days YYYY-MM-DD or null, by jar
 * @param parent the jar it hangs from, or -1
 * @param rows row of each jar, in steps
 * @param order seeds before what they seeded
 */
export function layAlongCalendar(
  days: readonly (string | null)[],
  parent: Int32Array,
  rows: Float64Array,
  order: Int32Array,
): Along {
  const numbers = days.map((day) => (day === null ? NaN : dayNumber(day)));
  let first = Infinity;
  let last = -Infinity;
  for (const day of numbers) {
    if (day < first) first = day;
    if (day > last) last = day;
  }
  const waits: number[] = [];
  parent.forEach((seed, jar) => {
    const wait = (numbers[jar] as number) - (numbers[seed] ?? NaN);
    if (wait > 0) waits.push(wait);
  });
  const step = daysPerStep(waits);
  const x = new Float64Array(days.length);
  const earliestChild = new Float64Array(days.length).fill(Infinity);
  for (const jar of order) {
    const seed = parent[jar] as number;
    const day = numbers[jar] as number;
    if (seed >= 0 && day < (earliestChild[seed] as number)) earliestChild[seed] = day;
  }
  for (const jar of order) {
    const seed = parent[jar] as number;
    const day = numbers[jar] as number;
    const child = earliestChild[jar] as number;
    if (!Number.isNaN(day)) x[jar] = (day - first) / step;
    else if (seed >= 0) x[jar] = (x[seed] as number) + 1;
    else x[jar] = Number.isFinite(child) ? (child - first) / step - 1 : 0;
  }
  keepApart(x, rows, parent, order);
  const least = x.reduce((low, at) => Math.min(low, at), 0);
  for (let i = 0; i < x.length; i++) x[i] = (x[i] as number) - least;
  const ticks = Number.isFinite(first)
    ? monthStarts(first, last).map(({ day, label }) => ({ x: (day - first) / step - least, label }))
    : [];
  return { x, ticks: ticks.filter((tick) => tick.x >= 0) };
}

/** How far right of its seed a jar stands at least, so that no ribbon runs backwards in time. */
const BEHIND_SEED = 0.5;

/** One step, less what rounding may take: (x + 1) - 1 can be smaller than x, and then a jar would be moved for ever. */
const APART = 1 - 1e-9;

/**
 * Moves jars right, as little as needed, until no two within one row of each other are within one step. It ends: a jar
 * only ever moves right, and only to one step after a jar that stands already, of which there are finitely many.
 *
 * @param x steps along the calendar, by jar; changed in place
 * @param rows row of each jar, in steps
 * @param parent the jar it hangs from, or -1
 * @param order seeds before what they seeded
 */
export function keepApart(x: Float64Array, rows: Float64Array, parent: Int32Array, order: Int32Array): void {
  const turn = new Int32Array(x.length);
  order.forEach((jar, i) => {
    turn[jar] = i;
  });
  const fromLeft = order.toSorted(
    (a, b) => (x[a] as number) - (x[b] as number) || (turn[a] as number) - (turn[b] as number),
  );
  /** Jars already standing, by whole row; along each list x only grows. */
  const bands = new Map<number, number[]>();
  for (const jar of fromLeft) {
    const row = rows[jar] as number;
    const band = Math.floor(row);
    const seed = parent[jar] as number;
    const own = bands.get(band) ?? [];
    bands.set(band, own);
    let at = x[jar] as number;
    if (seed >= 0) at = Math.max(at, (x[seed] as number) + BEHIND_SEED);
    if (own.length > 0) at = Math.max(at, (x[own.at(-1) as number] as number) + 1);
    for (let moved = true; moved;) {
      moved = false;
      for (const list of [bands.get(band - 1) ?? [], bands.get(band + 1) ?? []]) {
        for (let i = list.length - 1; i >= 0 && (x[list[i] as number] as number) > at - APART; i--) {
          const other = list[i] as number;
          if (Math.abs((rows[other] as number) - row) > 1 - 1e-9 || (x[other] as number) >= at + APART)
            continue;
          // Beyond 2^25 steps rounding can make this no move at all; then it must not count as one.
          const free = (x[other] as number) + 1;
          if (free <= at) continue;
          at = free;
          moved = true;
        }
      }
    }
    x[jar] = at;
    own.push(jar);
  }
}

const iso = (day: number): string => new Date(day * 86_400_000).toISOString().slice(0, 10);

/** First days of months from the month of `first` to `last`, thinned to MOST_TICKS; the year is written where it turns. */
function monthStarts(first: number, last: number): { day: number; label: string }[] {
  const [startYear, startMonth] = iso(first).split('-').map(Number) as [number, number];
  const [endYear, endMonth] = iso(last).split('-').map(Number) as [number, number];
  const from = startYear * 12 + startMonth - 1;
  const to = endYear * 12 + endMonth - 1;
  const every = [1, 3, 6, 12, 60, 120, 600].find((months) => (to - from) / months <= MOST_TICKS) ?? 1200;
  const ticks: { day: number; label: string }[] = [];
  for (let month = Math.floor(from / every) * every; month <= to; month += every) {
    const year = Math.floor(month / 12);
    const day = `${year}-${String((month % 12) + 1).padStart(2, '0')}-01`;
    const name = dayLabel(day, false).slice(2);
    ticks.push({
      day: dayNumber(day),
      label: month % 12 === 0 || ticks.length === 0 ? `${name} ${year}` : name,
    });
  }
  return ticks;
}
