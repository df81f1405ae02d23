// What a jar, a cup and a good jar cost, from what was taken of packages. A jar counts whole where all that went into it has a
// price; where none does, its milk alone says "at least". What has no price is never counted as nothing.
import { median } from '../vigour/medians';
import { priceOf, type Taken } from './spent';

/** How a jar came out, as far as costs ask. */
export type CameOut = 'good' | 'weak' | 'discarded' | 'unknown';

export interface JarTaken {
  readonly taken: readonly Taken[];
  /** What it held (mL); null where nobody noted it. */
  readonly volume: number | null;
  readonly cameOut: CameOut;
}

/** A cost in minor units, not whole. */
export interface Costed {
  readonly minor: number;
  /** So many jars it rests on, of so many. */
  readonly jars: number;
  readonly of: number;
  /** Something that went into these jars has no price. */
  readonly atLeast: boolean;
}

export interface CostSheet {
  readonly jar: Costed | null;
  readonly cup: Costed | null;
  /** What all jars that were seen cost, shared among those that came out well; a weak one counts half, a discarded none. */
  readonly goodJar: Costed | null;
}

interface Priced {
  readonly minor: number;
  readonly whole: boolean;
  readonly of: JarTaken;
}

/** What a weak jar is worth of a good one (common practice and judgement, no source). */
const WORTH: Readonly<Record<CameOut, number>> = { good: 1, weak: 0.5, discarded: 0, unknown: 0 };

/** What is known of a jar's cost in a currency; null where not even its milk has a price in it. */
function priced(of: JarTaken, currency: string): Priced | null {
  let [minor, whole, milk] = [0, true, false];
  for (const one of of.taken) {
    const price = priceOf(one);
    if (typeof price === 'string' || price.currency !== currency) {
      whole = false;
      continue;
    }
    minor += price.minor;
    if (one.what === 'milk') milk = true;
  }
  return milk ? { minor, whole, of } : null;
}

/**
 * @param jars made ones, each with all that went into it; founding jars too
 * @param cup mL
 */
export function costSheet(jars: readonly JarTaken[], currency: string, cup: number): CostSheet {
  const known = jars.flatMap((jar) => priced(jar, currency) ?? []);
  const whole = known.filter((one) => one.whole);
  const counted = whole.length > 0 ? whole : known;
  const costed = (some: readonly Priced[], minor: number | null): Costed | null =>
    minor === null || some.length === 0
      ? null
      : { minor, jars: some.length, of: jars.length, atLeast: some.some((one) => !one.whole) };
  const measured = counted.filter(({ of }) => of.volume !== null && of.volume > 0);
  const seen = counted.filter(({ of }) => of.cameOut !== 'unknown');
  const worth = seen.reduce((sum, { of }) => sum + WORTH[of.cameOut], 0);
  const spent = seen.reduce((sum, { minor }) => sum + minor, 0);
  return {
    jar: costed(counted, median(counted.map(({ minor }) => minor))),
    cup: costed(measured, median(measured.map(({ minor, of }) => (minor * cup) / (of.volume ?? 1)))),
    goodJar: costed(seen, worth > 0 ? spent / worth : null),
  };
}
