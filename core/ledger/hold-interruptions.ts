// What an interruption of a hold is to one jar that stayed in it. Pure.
import { toHundredth } from './hold-hours';

/** What failed. */
export type FailedWhat = 'power' | 'heater' | 'lid' | 'other';

/** An interruption of a hold, with the stay of one jar there. Moments in seconds since 1970; null is not known. */
export interface InterruptedStay {
  readonly what: FailedWhat;
  readonly began: number | null;
  readonly ended: number | null;
  /** How long it took (h), where its two moments don't tell. */
  readonly hours: number | null;
  /** When the jar came into the hold, and left it; where nobody said, when the hold began and ended. */
  readonly from: number | null;
  readonly to: number | null;
}

/** What interrupted the warmth of a jar: everything that failed, and for how many hours together (null: not known). */
export interface HoldInterruption {
  readonly what: readonly FailedWhat[];
  readonly hours: number | null;
}

const HOUR = 3600;

/** From when to when it lasted, as far as that is known: without bounds where it is not. */
function spanOf({ began, ended, hours }: InterruptedStay): readonly [number, number] {
  const length = hours === null ? null : hours * HOUR;
  const from = began ?? (ended === null || length === null ? null : ended - length);
  const to = ended ?? (began === null || length === null ? null : began + length);
  return [from ?? -Infinity, to ?? Infinity];
}

/** Hours of it that the jar was there for; null where it was not there, 'unknown' where nobody can say how many. */
function hoursThere(one: InterruptedStay): number | 'unknown' | null {
  const [from, to] = spanOf(one);
  const [first, last] = [Math.max(from, one.from ?? -Infinity), Math.min(to, one.to ?? Infinity)];
  // One of no length counts where it falls within; one that ends as the jar comes, or begins as it leaves, does not.
  if (first > last || (first === last && from < to)) return null;
  if (Number.isFinite(from) && Number.isFinite(to)) return (last - first) / HOUR;
  return one.hours ?? 'unknown';
}

/**
 * What interrupted the warmth of one jar.
 * @param stays each interruption of a hold that the jar stood in, with its stay there
 * @returns null where it stood in none while that failed
 */
export function interruptionOf(stays: readonly InterruptedStay[]): HoldInterruption | null {
  const there = stays.flatMap((one) => {
    const hours = hoursThere(one);
    return hours === null ? [] : [{ what: one.what, hours }];
  });
  if (there.length === 0) return null;
  const hours = there.map((one) => one.hours);
  const unknown = hours.includes('unknown');
  const sum = hours.reduce<number>((total, one) => total + Number(one), 0);
  return { what: [...new Set(there.map(({ what }) => what))], hours: unknown ? null : toHundredth(sum) };
}

const WORDS: Readonly<Record<FailedWhat, readonly [string, string]>> = {
  power: ['the power failed', 'a power cut'],
  heater: ['the heater failed', 'a heater that failed'],
  lid: ['the lid was off', 'a lid that was off'],
  other: ['the warmth was interrupted', 'an interruption'],
};

/** What failed, as a clause: "the power failed and the heater failed". */
export const failedClause = (what: readonly FailedWhat[]): string =>
  what.map((one) => WORDS[one][0]).join(' and ');

/** What failed, as a thing: "a power cut and a heater that failed". */
export const failedNoun = (what: readonly FailedWhat[]): string =>
  what.map((one) => WORDS[one][1]).join(' and ');
