// What part of a jar's inoculum each seeding brought, and how often the culture doubled in that jar.
// One basis for all seedings of a jar, so that a share never mixes cells with millilitres. No storage model enters here:
// tuning one must not move a share.
import { DEFAULT_COUNT_PER_ML, type FamilySeeding, type ShareBasis } from './lineage-shapes';

/** What a share needs to know beside the seeding itself. */
export interface SeedContext {
  /** Measured density of the seed jar (CFU per mL), or null where it was never counted or the seed is a source. */
  readonly density: number | null;
  /** The seed is a received culture (a volume of it may be given the default density; a powder's may not). */
  readonly culture: boolean;
}

export interface SeedCount {
  /** Living cells brought in (CFU), or null where they can't be given a count. */
  readonly count: number | null;
  /** Declared on a label, measured, or recorded in CFU: anything but the default density. */
  readonly stated: boolean;
}

/**
 * Cells one seeding brought (CFU): recorded as such, pieces × declared count, or volume × density (measured, else
 * DEFAULT_COUNT_PER_ML). A volume of a powder is given no count: its density is not that of a fermented milk.
 */
export function seedCount(seeding: FamilySeeding, context: SeedContext): SeedCount {
  if (seeding.countDirect !== null) return { count: seeding.countDirect, stated: true };
  if (seeding.source !== null && seeding.pieces !== null && seeding.countPerPiece !== null) {
    return { count: seeding.pieces * seeding.countPerPiece, stated: true };
  }
  if (seeding.volumeMl === null || (seeding.source !== null && !context.culture)) {
    return { count: null, stated: false };
  }
  return context.density === null
    ? { count: seeding.volumeMl * DEFAULT_COUNT_PER_ML, stated: false }
    : { count: seeding.volumeMl * context.density, stated: true };
}

export interface SeedShares {
  readonly basis: ShareBasis;
  /** One per seeding, in the order given; they sum to 1. */
  readonly shares: readonly number[];
  /** All cells brought in (CFU), or null where one seeding can't be given a count. */
  readonly countIn: number | null;
}

const allKnown = (values: readonly (number | null)[]): values is readonly number[] =>
  values.every((value) => value !== null);

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** Each value over their total; null where they can't be weighed against one another (one unknown, or all 0). */
function portions(values: readonly (number | null)[]): readonly number[] | null {
  if (!allKnown(values)) return null;
  const total = sum(values);
  if (!(total > 0)) return null;
  return values.map((value) => value / total);
}

const WHOLE: readonly number[] = [1];

/** A lone seed brought everything; its basis is told all the same. Most jars are of this kind, so it takes no lists. */
function shareLone(seeding: FamilySeeding, context: SeedContext): SeedShares {
  const { count, stated } = seedCount(seeding, context);
  const basis: ShareBasis =
    stated && count !== null && count > 0
      ? 'count'
      : seeding.volumeMl !== null && seeding.volumeMl > 0
        ? 'volume'
        : seeding.pieces !== null && seeding.pieces > 0
          ? 'pieces'
          : 'equal, assumed';
  return { basis, shares: WHOLE, countIn: count };
}

/**
 * The seed shares of one jar (at least one seeding).
 *
 * Basis, the first that applies to every seeding: 'count' if each can be given a count and at least one of these is
 * declared or measured; 'volume'; 'pieces'; else 'equal, assumed'.
 */
export function shareSeeds(
  seedings: readonly FamilySeeding[],
  contextOf: (index: number) => SeedContext,
): SeedShares {
  if (seedings.length === 1) return shareLone(seedings[0] as FamilySeeding, contextOf(0));
  const counts: (number | null)[] = [];
  let stated = false;
  for (let i = 0; i < seedings.length; i++) {
    const brought = seedCount(seedings[i] as FamilySeeding, contextOf(i));
    counts.push(brought.count);
    stated ||= brought.stated;
  }
  const countIn = allKnown(counts) ? sum(counts) : null;
  const answer = (basis: ShareBasis, shares: readonly number[]): SeedShares => ({ basis, shares, countIn });
  const byCount = stated ? portions(counts) : null;
  if (byCount) return answer('count', byCount);
  const byVolume = portions(seedings.map((seeding) => seeding.volumeMl));
  if (byVolume) return answer('volume', byVolume);
  const byPieces = portions(seedings.map((seeding) => seeding.pieces));
  if (byPieces) return answer('pieces', byPieces);
  return answer(
    'equal, assumed',
    seedings.map(() => 1 / seedings.length),
  );
}

/**
 * Doublings in one jar: log2(final count / count brought in), which is log2(1 / seed fraction) where densities are equal.
 * At least that many, if the jar grew back to that density. Never below 0: a jar that ended with fewer cells than were
 * put in has doubled at least no times. Null where volume, or a count, is unknown.
 *
 * @param volumeMl final volume in the jar (mL)
 * @param density measured density of the finished jar (CFU per mL), or null: DEFAULT_COUNT_PER_ML is assumed
 * @param countIn all cells brought in (CFU)
 */
export function doublingsInJar(
  volumeMl: number | null,
  density: number | null,
  countIn: number | null,
): number | null {
  if (volumeMl === null || countIn === null || !(volumeMl > 0) || !(countIn > 0)) return null;
  return Math.max(0, Math.log2((volumeMl * (density ?? DEFAULT_COUNT_PER_ML)) / countIn));
}
