// How fast a jar follows its bath or the air: as the keeper says, else measured where a probe stood in both, else a range.
import { DEFAULT_TIME_CONSTANT, jarFollows } from './jar-temperature';
import type { WarmPoint } from './warm-hours';

/** Time constant in hours, with its band and where it comes from. */
export interface TimeConstant {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
  readonly from: 'your figure' | 'measured' | 'usual range';
  readonly says: string;
}

/** Readings of a bath and of a jar in it, on one clock. */
export interface BathAndJar {
  readonly bath: readonly WarmPoint[];
  readonly jar: readonly WarmPoint[];
}

const FEWEST = 5;
/** A jar that goes in this near to its bath (°C) shows nothing of how it follows. */
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
 * @returns null where the readings don't overlap or the jar was at its bath's temperature from the start
 */
export function fitTimeConstant({ bath, jar }: BathAndJar): Omit<TimeConstant, 'from' | 'says'> | null {
  const [from, to] = [Math.max(bath[0]?.hour ?? 0, jar[0]?.hour ?? 0), bath.at(-1)?.hour ?? 0];
  const seen = jar.filter(({ hour }) => hour >= from && hour <= to);
  const [first] = seen;
  if (!first || seen.length < FEWEST || Math.abs(at(bath, first.hour) - first.celsius) < APART) return null;
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

const hours = (value: number): string => `${value < 1 ? value.toFixed(2) : value.toFixed(1)} h`;

/** What is said of jars that were read in one of several baths. */
const leftOut = (unclear: number): string =>
  unclear === 0
    ? ''
    : ` The readings in ${unclear === 1 ? 'one jar' : `${unclear} jars`} were left out: more than one bath was read at that time, and nothing recorded says which of them ${unclear === 1 ? 'it' : 'each'} stood in.`;

/**
 * The time constant to go by.
 * @param told the keeper's own figure (h)
 * @param seen probes that stood in bath and jar
 * @param unclear jars that were read, but nobody can tell in which bath
 */
export function timeConstantOf(told: number | null, seen: readonly BathAndJar[], unclear = 0): TimeConstant {
  if (told !== null)
    return {
      low: told, middle: told, high: told, from: 'your figure',
      says: `The jar is taken to follow what the probe read with a time constant of ${hours(told)}, as you said.`,
    }; // prettier-ignore
  const fits = seen.flatMap((pair) => fitTimeConstant(pair) ?? []);
  const middle = fits.map((fit) => fit.middle).toSorted((a, b) => a - b)[Math.floor(fits.length / 2)];
  if (middle !== undefined) {
    const [low, high] = [Math.min(...fits.map((fit) => fit.low)), Math.max(...fits.map((fit) => fit.high))];
    return {
      low, middle, high, from: 'measured',
      says: `The jar is taken to follow what the probe read with a time constant of ${hours(middle)} (${hours(low)} to ${hours(high)}), measured where you had a probe in the bath and one in a jar.${leftOut(unclear)}`,
    }; // prettier-ignore
  }
  const { low, middle: usual, high } = DEFAULT_TIME_CONSTANT;
  return {
    low, middle: usual, high, from: 'usual range',
    says: `The jar is taken to follow what the probe read with a time constant of ${hours(usual)} (${hours(low)} to ${hours(high)}). Nobody measured it: a probe in bath and jar at once would.${leftOut(unclear)}`,
  }; // prettier-ignore
}

export const USUAL_TIME_CONSTANT = timeConstantOf(null, []);
