// Warm hours of a hold: ∫ γ(T) dt, hours at the best temperature that would do as much. Always a band, since the culture's
// own temperatures are known only as ranges; plain hours stand first where the culture is mixed or unknown.
import { ASSUMED_SETS, growthFactor, type CardinalTemperatures } from './cardinal';

/** A temperature (°C) at a time in hours from the start of the hold. */
export interface WarmPoint {
  readonly hour: number;
  readonly celsius: number;
}

/** Above this some of the culture may be harmed (common practice, no source). */
export const DAMAGE_ABOVE = 45;

export interface Warmth {
  /** Length of the profile (h). */
  readonly plainHours: number;
  /** Warm hours by the middle of the ranges, and the least and most that any set within them gives. */
  readonly warmHours: { readonly middle: number; readonly low: number; readonly high: number };
  readonly minutesAboveDamage: number;
  readonly coolest: number;
  readonly warmest: number;
}

/** Longest step of the integration (h): γ is smooth, so Simpson's rule on such steps is exact to four digits and more. */
const STEP = 0.25;

function integrate(from: WarmPoint, to: WarmPoint, set: CardinalTemperatures): number {
  const hours = to.hour - from.hour;
  const steps = Math.max(1, Math.ceil(hours / STEP));
  const at = (x: number): number =>
    growthFactor(from.celsius + ((to.celsius - from.celsius) * x) / steps, set);
  let sum = 0;
  for (let i = 0; i < steps; i++) sum += at(i) + 4 * at(i + 0.5) + at(i + 1);
  return (sum * hours) / steps / 6;
}

/** Hours of a straight stretch that lie above a temperature. */
function hoursAbove(from: WarmPoint, to: WarmPoint, celsius: number): number {
  const hours = to.hour - from.hour;
  const [low, high] = [Math.min(from.celsius, to.celsius), Math.max(from.celsius, to.celsius)];
  if (high <= celsius) return 0;
  return low >= celsius ? hours : (hours * (high - celsius)) / (high - low);
}

/**
 * Warmth of a profile, straight between its points.
 * @param profile at least two points, hours rising.
 * @param sets the middle one first; the band spans all of them.
 */
export function warmthOf(profile: readonly WarmPoint[], sets = ASSUMED_SETS): Warmth | null {
  const [first] = profile;
  const last = profile.at(-1);
  if (!first || !last || profile.length < 2 || sets.length === 0) return null;
  const pairs = profile.slice(1).map((to, i) => [profile[i] ?? to, to] as const);
  if (pairs.some(([from, to]) => to.hour < from.hour)) throw new RangeError('hours must rise');
  const bySet = sets.map((set) => pairs.reduce((sum, [from, to]) => sum + integrate(from, to, set), 0));
  const temperatures = profile.map((point) => point.celsius);
  return {
    plainHours: last.hour - first.hour,
    warmHours: { middle: bySet[0] ?? 0, low: Math.min(...bySet), high: Math.max(...bySet) },
    minutesAboveDamage: 60 * pairs.reduce((sum, [from, to]) => sum + hoursAbove(from, to, DAMAGE_ABOVE), 0),
    // A probe may have read each second for days: more than can be spread out at once.
    coolest: temperatures.reduce((least, celsius) => Math.min(least, celsius)),
    warmest: temperatures.reduce((most, celsius) => Math.max(most, celsius)),
  };
}

/** Mean temperature (°C) of a profile, its first `skip` hours (warming up) not counted; null where nothing is left. */
export function meanTemperature(profile: readonly WarmPoint[], skip: number): number | null {
  let [hours, sum] = [0, 0];
  profile.slice(1).forEach((to, i) => {
    const from = profile[i] ?? to;
    const start = Math.max(from.hour, skip);
    if (to.hour <= start) return;
    const slope = (to.celsius - from.celsius) / (to.hour - from.hour);
    const atStart = from.celsius + slope * (start - from.hour);
    hours += to.hour - start;
    sum += ((atStart + to.celsius) / 2) * (to.hour - start);
  });
  return hours > 0 ? sum / hours : null;
}

/** The profile up to a time; a profile that ends earlier is carried on at its last temperature. */
export function profileUntil(profile: readonly WarmPoint[], hour: number): readonly WarmPoint[] {
  const before = profile.filter((point) => point.hour < hour);
  const from = before.at(-1);
  if (!from) return profile.slice(0, 1);
  const to = profile[before.length];
  const celsius = to
    ? from.celsius + ((to.celsius - from.celsius) * (hour - from.hour)) / (to.hour - from.hour)
    : from.celsius;
  return [...before, { hour, celsius }];
}

/** A hold at one temperature. */
export const constantProfile = (hours: number, celsius: number): readonly WarmPoint[] => [
  { hour: 0, celsius },
  { hour: hours, celsius },
];
