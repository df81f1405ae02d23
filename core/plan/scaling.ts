// What goes into each jar of a plan: seed, milk and additions by its volume, and how often the culture has to double.
import { DEFAULT_COUNT_PER_ML } from '../lineage/lineage-shapes';

/** What a piece holds is known to this factor either way, and past its best-before to a tenth (common practice, no source). */
const PIECES_FACTOR = 3;
const PAST_BEST_BEFORE = 10;

export interface Doublings {
  readonly low: number;
  readonly mid: number;
  readonly high: number;
}

/** Of a jar seeded from a jar: log2(1 / seed fraction), where densities are equal. */
export function doublingsFromSeed(fraction: number): Doublings {
  const mid = Math.log2(1 / fraction);
  return { low: mid, mid, high: mid };
}

/**
 * Of a jar seeded from pieces, up to the density that is assumed of a full jar.
 * @param count declared count of all pieces together (CFU)
 */
export function doublingsFromPieces(volumeMl: number, count: number, pastBestBefore: boolean): Doublings {
  const real = pastBestBefore ? count / PAST_BEST_BEFORE : count;
  const mid = Math.log2((DEFAULT_COUNT_PER_ML * volumeMl) / real);
  return { low: mid - Math.log2(PIECES_FACTOR), mid, high: mid + Math.log2(PIECES_FACTOR) };
}

/**
 * Of a jar seeded from jars and from pieces, whatever of each: what pieces hold is known to a factor, what a jar holds is
 * taken as full. Null where nothing seeds it.
 * @param seed mL @param count declared count of all pieces together (CFU)
 */
export function doublingsFromBoth(
  volumeMl: number,
  seed: number,
  count: number,
  pastBestBefore: boolean,
): Doublings | null {
  const real = pastBestBefore ? count / PAST_BEST_BEFORE : count;
  const grown = DEFAULT_COUNT_PER_ML * volumeMl;
  const from = (pieces: number): number =>
    Math.max(0, Math.log2(grown / (seed * DEFAULT_COUNT_PER_ML + pieces)));
  return seed + count > 0
    ? { low: from(real * PIECES_FACTOR), mid: from(real), high: from(real / PIECES_FACTOR) }
    : null;
}

export interface PlannedJar {
  readonly vessel: string | null;
  readonly volume: number;
  readonly seed: number;
  readonly milk: number;
  readonly additions: readonly { readonly name: string; readonly value: number; readonly unit: 'g' | 'mL' }[];
}

/** One jar by its volume (mL). @param fraction of the final volume that is seed; 0 for one that starts from pieces */
export function planJar(
  vessel: string | null,
  volume: number,
  fraction: number,
  perLitre: readonly { readonly name: string; readonly value: number; readonly unit: 'g' | 'mL' }[],
): PlannedJar {
  return {
    vessel,
    volume,
    seed: volume * fraction,
    milk: volume * (1 - fraction),
    additions: perLitre.map(({ name, value, unit }) => ({ name, value: (value * volume) / 1000, unit })),
  };
}

/** How many of the jars, in their order, the milk at hand fills. */
export function jarsFilled(jars: readonly PlannedJar[], milk: number): number {
  let left = milk;
  let count = 0;
  for (const jar of jars) {
    left -= jar.milk;
    if (left < -1e-9) break;
    count += 1;
  }
  return count;
}

export interface Expected {
  readonly low: number | null;
  readonly mid: number;
  readonly high: number | null;
  readonly basis: 'your own record' | 'a stated belief';
}

/** How often a jar comes out uneven or does not set, where the keeper's record is too short (trade; common practice). */
const BELIEF = { first: 0.3, later: 0.05 } as const;
const ENOUGH = 10;
const Z = 1.959_963_984_540_054;

/** The Wilson score interval, 95 in 100 (Newcombe 1998, Stat Med 17:857-872). */
export function wilson(count: number, of: number): { low: number; high: number } {
  const p = count / of;
  const middle = (p + (Z * Z) / (2 * of)) / (1 + (Z * Z) / of);
  const wide = (Z * Math.sqrt((p * (1 - p)) / of + (Z * Z) / (4 * of * of))) / (1 + (Z * Z) / of);
  return { low: Math.max(0, middle - wide), high: Math.min(1, middle + wide) };
}

/** Share of jars to be expected uneven or not set, from the keeper's own where there are ten of the kind. */
export function expectedUneven(first: boolean, uneven: number, of: number): Expected {
  if (of < ENOUGH) return { low: null, mid: first ? BELIEF.first : BELIEF.later, high: null, basis: 'a stated belief' }; // prettier-ignore
  return { ...wilson(uneven, of), mid: uneven / of, basis: 'your own record' };
}

/** Whether a carton that is open warns, or is not for a hold (trade cautions; common practice); null: neither. */
export function cartonAge(
  kind: 'milk' | 'half-and-half',
  daysOpen: number,
): 'not for a hold' | 'fresher is safer' | null {
  const warn = kind === 'milk' ? 5 : 3;
  return daysOpen >= 7 ? 'not for a hold' : daysOpen >= warn ? 'fresher is safer' : null;
}
