// A jar on hold seeds nothing new unless a reason is written down, whoever asks: the window or a call without one. The
// reason is kept as the act's, and the hold stays.
import type { Ledger } from '../ledger';
import { Refused } from '../refusal';

/** As few characters as say anything, as for lifting a caution. */
const LEAST_REASON = 3;

/**
 * Refuses jars on hold as seed where no reason is given.
 * @param seeds keys of the jars that are new as seeds in this act; what was seeded before is history
 * @param why the act's reason, tidied
 * @throws Refused 'seed on hold'
 */
export function refuseHeldSeeds(
  { index }: Ledger,
  seeds: readonly (number | null)[],
  why: string | null,
): void {
  if ((why?.length ?? 0) >= LEAST_REASON) return;
  const { family } = index;
  for (const seed of new Set(seeds)) {
    if (seed === null || !family.has(seed) || family.cautionLevelOf(seed) !== 'on hold') continue;
    const because = family
      .cautionsOf(seed)
      .flatMap(({ level, cleared, of }) =>
        level === 'on hold' && cleared === null ? [index.jar(of).label] : [],
      );
    throw new Refused('seed on hold', { seed: index.jar(seed).label, because });
  }
}

/** Keys of the jars behind the ids of seedings; null for a source. @throws Refused 'not found' */
export const seedKeys = (
  { rows }: Ledger,
  seedings: readonly { readonly fromJar: string | null }[],
): (number | null)[] => seedings.map(({ fromJar }) => rows.keyOrNull('jar', fromJar));
