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
  /** Lines that reached it, also where nothing was seen of it but of a later one; of those the ones seen in it, and the ones that had to end here. */
  readonly lines: number;
  readonly seen: number;
  readonly ended: number;
}

/** Belief before any jar: so many bad in so many. Stated, editable; no published figure exists. */
export const CHANCE_PRIORS = {
  weak: { bad: 0.3, of: 3 },
  discarded: { bad: 0.1, of: 5 },
  ended: { bad: 0.1, of: 5 },
} as const;
type ChanceKind = keyof typeof CHANCE_PRIORS;

/** Beyond the last generation seen, what is known there counts for this much less with each step: same mean, wider. */
const FADES = 0.8;

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
  /** From this generation on, fewer lines tell than told before: the others ended, were restarted or are still younger. */
  readonly fewer: { readonly from: number; readonly lines: number; readonly of: number } | null;
}

interface Belief {
  readonly bad: number;
  readonly of: number;
}

/** Lines that reached a generation, as a part of the most that reached an earlier one (from the second on). */
function shareOfLines(records: ReadonlyMap<number, GenerationRecord>, generation: number): number {
  const lines = (g: number): number => records.get(g)?.lines ?? 0;
  const before = Array.from({ length: Math.max(0, generation - 1) }, (_, i) => lines(i + 2));
  const most = Math.max(0, ...before);
  return most === 0 ? 1 : Math.min(1, lines(generation) / most);
}

function fewerLines(
  records: ReadonlyMap<number, GenerationRecord>,
  lastSeen: number,
): PooledChances['fewer'] {
  for (let generation = 3; generation <= lastSeen; generation++) {
    const lines = records.get(generation)?.lines ?? 0;
    if (lines === 0 || shareOfLines(records, generation) >= 1) continue;
    const of = Math.max(
      ...[...records.values()]
        .filter((one) => one.generation > 1 && one.generation < generation)
        .map(({ lines }) => lines),
    );
    return { from: generation, lines, of };
  }
  return null;
}

/** Belief about each generation: prior and what was seen; past the last one seen its (pooled) mean, ever less sure. */
function beliefs(
  records: ReadonlyMap<number, GenerationRecord>,
  generations: number,
  lastSeen: number,
  kind: ChanceKind,
): Belief[] {
  const prior = CHANCE_PRIORS[kind];
  const seen = Array.from({ length: Math.min(generations, Math.max(1, lastSeen)) }, (_, i): Belief => {
    const record = records.get(i + 1);
    if (!record) return prior;
    const [bad, of] =
      kind === 'ended'
        ? [record.ended, record.lines]
        : [kind === 'weak' ? record.weak : record.discarded, record.jars];
    // Lines that are still there may be the better ones: what they tell is taken to be worth less, so it is less sure.
    const share = shareOfLines(records, i + 1);
    return { bad: prior.bad + bad * share, of: prior.of + of * share };
  });
  const later = seen.slice(1);
  const pooled = nonFalling(
    later.map(({ bad, of }) => bad / of),
    later.map(({ of }) => of),
  );
  const level = pooled.at(-1) ?? prior.bad / prior.of;
  const weight = later.at(-1)?.of ?? prior.of;
  const beyond = Array.from({ length: generations - seen.length }, (_, i): Belief => {
    const of = Math.max(1, weight * FADES ** (i + 1));
    return { bad: level * of, of };
  });
  return [...seen, ...beyond];
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
    kinds.map((kind) => [kind, beliefs(byGeneration, generations, lastSeen, kind)]),
  ) as Record<ChanceKind, Belief[]>;
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
    fewer: fewerLines(byGeneration, lastSeen),
  };
}
