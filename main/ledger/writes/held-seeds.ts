// A jar on hold, or one whose acid is not there, seeds nothing new unless a reason is written down, whoever asks: the window
// or a call without one. The reason is kept as the act's, and a hold stays.
import { acidNotThere } from '../../../core/advice/doubts';
import type { Ledger } from '../ledger';
import { Refused } from '../refusal';

/** As few characters as say anything, as for lifting a caution. */
const LEAST_REASON = 3;

/**
 * Refuses jars on hold, or without their acid (core/advice/doubts.ts), as seed where no reason is given.
 * @param seeds keys of the jars that are new as seeds in this act; what was seeded before is history
 * @param why the act's reason, tidied
 * @throws Refused 'seed on hold', 'seed without acid'
 */
export function refuseHeldSeeds(
  { rows, index }: Ledger,
  seeds: readonly (number | null)[],
  why: string | null,
): void {
  if ((why?.length ?? 0) >= LEAST_REASON) return;
  const { family } = index;
  for (const seed of new Set(seeds)) {
    if (seed === null || !family.has(seed)) continue;
    const says = acidNotThere(rows.where('outcome', 'jar', seed)[0] ?? null);
    if (says !== null) throw new Refused('seed without acid', { seed: index.jar(seed).label, says });
    if (family.cautionLevelOf(seed) !== 'on hold') continue;
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
