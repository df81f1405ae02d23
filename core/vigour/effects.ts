// What an addition or a milk does to a jar, learned only from siblings: same seed, same hold, the rest alike. Shrunk to
// zero, so that one odd jar proves little. Without such siblings nothing is learned, and that is said.
import { median } from './medians';
import type { JarEvidence } from './jar-evidence';

/** The name of a jar without what is usually stirred in. */
export const NOTHING_IN = 'nothing stirred in';

/** From two sightings or fewer no more than this is corrected for (points): two odd jars prove little. */
const FEW_SETS = 2;
const MOST_BY_FEW = 10;

/** Belief before any siblings: an effect of this spread (points) round none; two siblings differ by chance by this much. */
const EFFECT_RULES = { priorSpread: 20, differenceSpread: 7 } as const;

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

/** How a line's jars are usually made; null where that varies, and then nothing of it counts as different. */
export interface UsualTreatment {
  /** What is stirred in, '' for nothing. */
  readonly additions: string | null;
  readonly milk: string | null;
}

export const additionsOf = (jar: JarEvidence): string => jar.additions.join(' and ');
export const milkOf = (jar: JarEvidence): string | null => jar.milk?.toLowerCase() ?? null;

/** What was done to a jar otherwise than usual, one by one: what was stirred in, its milk. Unknown milk is none. */
export function madeUnlike(jar: JarEvidence, usual: UsualTreatment): readonly string[] {
  const milk = milkOf(jar);
  const added = usual.additions === null || additionsOf(jar) === usual.additions ? null : jar.additions;
  return [
    ...(added?.length === 0 ? [NOTHING_IN] : (added ?? [])),
    ...(usual.milk === null || milk === null || milk === usual.milk ? [] : [milk]),
  ];
}

/** The same in words: "oat bran", "oat bran and goat milk"; '' for as usual. */
export const treatmentOf = (jar: JarEvidence, usual: UsualTreatment): string =>
  madeUnlike(jar, usual).join(' and ');

const groupBy = <T>(items: readonly T[], key: (item: T) => string): Map<string, T[]> => {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const group = groups.get(key(item));
    if (group) group.push(item);
    else groups.set(key(item), [item]);
  }
  return groups;
};

const correctedBy = (points: number, sets: number): number =>
  sets > FEW_SETS ? points : Math.max(-MOST_BY_FEW, Math.min(MOST_BY_FEW, points));

/**
 * Effects of every treatment that differs from the usual one, from sets of siblings in which both occur.
 * @param scored jars with their uncorrected points (spoiled and unseen ones are not among them)
 * @param usual the treatment that jars are compared with
 */
export function siblingEffects(
  scored: readonly { readonly jar: JarEvidence; readonly points: number }[],
  usual: UsualTreatment,
): ReadonlyMap<string, Effect> {
  const sets = groupBy(
    scored.filter(({ jar }) => jar.hold !== null && jar.seed !== ''),
    ({ jar }) => `${jar.batch}|${jar.hold}|${jar.seed}`,
  );
  const differences = new Map<string, number[]>();
  for (const set of sets.values()) {
    const byTreatment = groupBy(set, ({ jar }) => treatmentOf(jar, usual));
    const plain = median((byTreatment.get('') ?? []).map(({ points }) => points));
    if (plain === null) continue;
    for (const [treatment, jars] of byTreatment) {
      const level = median(jars.map(({ points }) => points));
      if (treatment === '' || level === null) continue;
      differences.set(treatment, [...(differences.get(treatment) ?? []), level - plain]);
    }
  }
  const prior = 1 / EFFECT_RULES.priorSpread ** 2;
  return new Map(
    [...differences].map(([treatment, found]) => {
      const known = found.length / EFFECT_RULES.differenceSpread ** 2;
      const seen = found.reduce((a, b) => a + b, 0) / found.length;
      return [
        treatment,
        {
          name: treatment,
          seen,
          points: correctedBy((seen * known) / (known + prior), found.length),
          error: 1 / Math.sqrt(known + prior),
          sets: found.length,
        },
      ];
    }),
  );
}
