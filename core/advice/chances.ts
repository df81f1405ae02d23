// The chance of a weak jar, of a discarded one, and that a line must end, by generation: pooled over all lines the keeper
// has had, with a stated prior. From the second generation on they do not fall, on each draw.
import { betaQuantile } from '../vigour/distributions';
import { nonFalling } from './isotonic';

/** What happened in one generation, over all lines. */
export interface GenerationRecord {
  readonly generation: number;
  /** Jars whose outcome is known, and of those the weak (runny or soft) and the discarded. */
  readonly jars: number;
  readonly weak: number;
  readonly discarded: number;
  /** Lines that reached it, and of those the ones that had to end here. */
  readonly lines: number;
  readonly ended: number;
}

/** Belief before any jar: so many bad in so many. Stated, editable; no published figure exists. */
export const CHANCE_PRIORS = {
  weak: { bad: 1, of: 10 },
  discarded: { bad: 0.4, of: 20 },
  ended: { bad: 0.4, of: 20 },
} as const;
type ChanceKind = keyof typeof CHANCE_PRIORS;

/** Beyond the last generation seen, what was seen there counts for this much less with each step. */
const FADES = 0.7;

export interface Chances {
  /** Index 0 is generation 1. */
  readonly weak: readonly number[];
  readonly discarded: readonly number[];
  readonly ended: readonly number[];
}

export interface PooledChances {
  readonly draws: readonly Chances[];
  /** Last generation of which jars were seen; later ones are reckoned on, and wider. */
  readonly lastSeen: number;
}

/** Jars and bad ones that speak for a generation; past the last one seen, ever fewer of that one's. */
function counted(
  records: ReadonlyMap<number, GenerationRecord>,
  generation: number,
  lastSeen: number,
  kind: ChanceKind,
): { bad: number; of: number } {
  const from = Math.min(generation, lastSeen);
  const fade = generation > lastSeen ? FADES ** (generation - lastSeen) : 1;
  const record = records.get(from);
  if (!record) return { bad: 0, of: 0 };
  const [bad, of] =
    kind === 'ended'
      ? [record.ended, record.lines]
      : [kind === 'weak' ? record.weak : record.discarded, record.jars];
  return { bad: bad * fade, of: of * fade };
}

/**
 * Draws of the chances.
 * @param random uniform numbers in (0, 1), passed in: the same ones give the same draws
 */
export function drawChances(
  records: readonly GenerationRecord[],
  generations: number,
  draws: number,
  random: () => number,
): PooledChances {
  const byGeneration = new Map(records.map((record) => [record.generation, record]));
  const lastSeen = Math.max(0, ...records.filter(({ jars }) => jars > 0).map(({ generation }) => generation));
  const kinds: readonly ChanceKind[] = ['weak', 'discarded', 'ended'];
  const posterior = Object.fromEntries(
    kinds.map((kind) => [
      kind,
      Array.from({ length: generations }, (_, i) => {
        const prior = CHANCE_PRIORS[kind];
        const seen = counted(byGeneration, i + 1, lastSeen, kind);
        return { bad: prior.bad + seen.bad, of: prior.of + seen.of };
      }),
    ]),
  ) as Record<ChanceKind, { bad: number; of: number }[]>;
  const drawn = (kind: ChanceKind): number[] => {
    const values = posterior[kind].map(({ bad, of }) =>
      betaQuantile(Math.min(1 - 1e-9, Math.max(1e-9, random())), bad, of - bad),
    );
    const weights = posterior[kind].map(({ of }) => of);
    return [...values.slice(0, 1), ...nonFalling(values.slice(1), weights.slice(1))];
  };
  return {
    draws: Array.from({ length: draws }, () => ({
      weak: drawn('weak'),
      discarded: drawn('discarded'),
      ended: drawn('ended'),
    })),
    lastSeen,
  };
}
