// What a jar may carry for somebody who must avoid it: the milk, what was stirred in, and what came along with the seed of
// three generations; older ones as traces. Never "free from": only what was noted is known.
export interface Stirred {
  /** Names of what was stirred into this jar. */
  readonly additions: readonly string[];
  readonly seeds: readonly number[];
}

export interface Carried {
  readonly allergen: string;
  /** From this jar or the three generations before it; else only traces. */
  readonly near: boolean;
}

/** Milk is an allergen by itself; a fermented milk is not free of it. */
const MILK = 'milk';
const NEAR = 3;

/**
 * Allergens of a jar, the nearest first.
 * @param stirred what is noted of a jar; null for one that is not known
 * @param carries allergens by the name of what is stirred in, in lower case
 */
export function allergensOf(
  jar: number,
  stirred: (jar: number) => Stirred | null,
  carries: ReadonlyMap<string, readonly string[]>,
): Carried[] {
  const found = new Map<string, boolean>([[MILK, true]]);
  const seen = new Set<number>();
  let row = [jar];
  for (let steps = 0; row.length > 0; steps++) {
    const next: number[] = [];
    for (const one of row) {
      if (seen.has(one)) continue;
      seen.add(one);
      const { additions, seeds } = stirred(one) ?? { additions: [], seeds: [] };
      for (const name of additions)
        for (const allergen of carries.get(name.trim().toLowerCase()) ?? [])
          if (!found.has(allergen.toLowerCase())) found.set(allergen.toLowerCase(), steps <= NEAR);
      next.push(...seeds);
    }
    row = next;
  }
  return [...found].map(([allergen, near]) => ({ allergen, near }));
} // prettier-ignore
