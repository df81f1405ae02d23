// How fast a jar follows its bath or the air: as the keeper says, else measured where a probe stood in both, else a range.
import { DEFAULT_TIME_CONSTANT, jarFollows } from './jar-temperature';
import type { WarmPoint } from './warm-hours';

/** Time constant in hours, with its band and where it comes from. */
export interface TimeConstant {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
  readonly from: 'your figure' | 'measured' | 'usual range';
  /** Jars that were read, but nobody can tell in which of several baths: left out. */
  readonly unclear: number;
}

/** Readings of a bath and of a jar in it, on one clock. */
export interface BathAndJar {
  readonly bath: readonly WarmPoint[];
  readonly jar: readonly WarmPoint[];
}

const FEWEST = 5;
/** A jar that is never farther from its bath than this (°C) shows nothing of how it follows. */
const APART = 3;
/** Time constants tried (h), 2 % apart. */
const TRIED = Array.from({ length: 280 }, (_, i) => 0.05 * 1.02 ** i);

function at(profile: readonly WarmPoint[], hour: number): number {
  const after = profile.findIndex((point) => point.hour >= hour);
  const to = profile[after];
  const from = profile[after - 1];
  if (!to) return profile.at(-1)?.celsius ?? Number.NaN;
  if (!from || to.hour === from.hour) return to.celsius;
  return from.celsius + ((to.celsius - from.celsius) * (hour - from.hour)) / (to.hour - from.hour);
}

/**
 * The time constant that fits a jar's readings best (least squares), and the range about as likely (95 in 100, by
 * likelihood ratio with the readings taken as independent, so the true range is rather wider).
 * @returns null where the readings don't overlap or the jar was never apart from its bath
 */
export function fitTimeConstant({
  bath,
  jar,
}: BathAndJar): Pick<TimeConstant, 'low' | 'middle' | 'high'> | null {
  const [from, to] = [Math.max(bath[0]?.hour ?? 0, jar[0]?.hour ?? 0), bath.at(-1)?.hour ?? 0];
  const seen = jar.filter(({ hour }) => hour >= from && hour <= to);
  const [first] = seen;
  const apart = seen.reduce(
    (most, { hour, celsius }) => Math.max(most, Math.abs(at(bath, hour) - celsius)),
    0,
  );
  if (!first || seen.length < FEWEST || apart < APART) return null;
  const hours = [...new Set([...bath, ...seen].map(({ hour }) => hour))]
    .filter((hour) => hour >= first.hour)
    .toSorted((a, b) => a - b);
  const warmth = hours.map((hour) => ({ hour, celsius: at(bath, hour) }));
  const misses = TRIED.map((tau) => {
    const followed = jarFollows(warmth, tau, first.celsius);
    const byHour = new Map(followed.map(({ hour, celsius }) => [hour, celsius]));
    return seen.reduce((sum, { hour, celsius }) => sum + (celsius - (byHour.get(hour) ?? celsius)) ** 2, 0);
  });
  // A probe reads to about a tenth of a degree: no fit is taken to be better than that.
  const least = Math.max(Math.min(...misses), seen.length * 0.01);
  const best = misses.indexOf(Math.min(...misses));
  const likely = misses.map((miss) => seen.length * Math.log(Math.max(miss, least) / least) <= 3.84);
  return {
    low: TRIED[likely.indexOf(true)] ?? 0,
    middle: TRIED[best] ?? 0,
    high: TRIED[likely.lastIndexOf(true)] ?? 0,
  };
}

/**
 * The time constant to go by.
 * @param told the keeper's own figure (h)
 * @param seen probes that stood in bath and jar
 * @param unclear jars that were read, but nobody can tell in which bath
 */
export function timeConstantOf(told: number | null, seen: readonly BathAndJar[], unclear = 0): TimeConstant {
  if (told !== null) return { low: told, middle: told, high: told, from: 'your figure', unclear: 0 };
  const fits = seen.flatMap((pair) => fitTimeConstant(pair) ?? []);
  const middle = fits.map((fit) => fit.middle).toSorted((a, b) => a - b)[Math.floor(fits.length / 2)];
  if (middle === undefined) return { ...DEFAULT_TIME_CONSTANT, from: 'usual range', unclear };
  const [low, high] = [Math.min(...fits.map((fit) => fit.low)), Math.max(...fits.map((fit) => fit.high))];
  return { low, middle, high, from: 'measured', unclear };
}

export const USUAL_TIME_CONSTANT = timeConstantOf(null, []);
