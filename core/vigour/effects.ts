// What an addition or a milk does to a jar, learned only from siblings: same seed, same hold, the rest alike. Shrunk to
// zero, so that one odd jar proves little. Without such siblings nothing is learned, and that is said.
import { median } from './order';
import type { JarEvidence } from './types';

/** Belief before any siblings: an effect of this spread (points) round none; two siblings differ by chance by this much. */
export const EFFECT_RULES = { priorSpread: 20, differenceSpread: 7 } as const;

export interface Effect {
  /** "oat bran", or "goat milk" for a milk. */
  readonly name: string;
  /** Points that it adds (negative: takes away), shrunk to zero. */
  readonly points: number;
  /** What the siblings differed by, before shrinking. */
  readonly seen: number;
  readonly error: number;
  /** Sets of siblings that it was learned from. */
  readonly sets: number;
}

/** What was done to a jar beyond seed and hold. */
export const treatmentOf = (jar: JarEvidence): string =>
  [...jar.additions, ...(jar.milk ? [`milk: ${jar.milk.toLowerCase()}`] : [])].join(' + ');

const groupBy = <T>(items: readonly T[], key: (item: T) => string): Map<string, T[]> => {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const group = groups.get(key(item));
    if (group) group.push(item);
    else groups.set(key(item), [item]);
  }
  return groups;
};

/**
 * Effects of every treatment that differs from the usual one, from sets of siblings in which both occur.
 * @param scored jars with their uncorrected points (spoiled and unseen ones are not among them)
 * @param usual the treatment that jars are compared with
 */
export function siblingEffects(
  scored: readonly { readonly jar: JarEvidence; readonly points: number }[],
  usual: string,
): ReadonlyMap<string, Effect> {
  const sets = groupBy(
    scored.filter(({ jar }) => jar.hold !== null && jar.seed !== ''),
    ({ jar }) => `${jar.batch}|${jar.hold}|${jar.seed}`,
  );
  const differences = new Map<string, number[]>();
  for (const set of sets.values()) {
    const byTreatment = groupBy(set, ({ jar }) => treatmentOf(jar));
    const plain = median((byTreatment.get(usual) ?? []).map(({ points }) => points));
    if (plain === null) continue;
    for (const [treatment, jars] of byTreatment) {
      const level = median(jars.map(({ points }) => points));
      if (treatment === usual || level === null) continue;
      differences.set(treatment, [...(differences.get(treatment) ?? []), level - plain]);
    }
  }
  const prior = 1 / EFFECT_RULES.priorSpread ** 2;
  return new Map(
    [...differences].map(([treatment, found]) => {
      const known = found.length / EFFECT_RULES.differenceSpread ** 2;
      const seen = found.reduce((a, b) => a + b, 0) / found.length;
      const name = treatment || 'plain';
      return [
        treatment,
        {
          name,
          seen,
          points: (seen * known) / (known + prior),
          error: 1 / Math.sqrt(known + prior),
          sets: found.length,
        },
      ];
    }),
  );
}
