// Short ways to write a family down in a test, and to compare two.
import { buildFamily, type Family } from '../../core/lineage/family';
import type {
  FamilyJar,
  FamilyRecords,
  FamilySeeding,
  FamilySource,
} from '../../core/lineage/lineage-shapes';
import { plainJar, plainSeeding, plainSource } from '../families';

/** One jar in a few words: its own fields, and its seeds as "jar or source key" with what was recorded of the amount. */
export interface Told extends Partial<FamilyJar> {
  readonly key: number;
  readonly from?: readonly (Partial<FamilySeeding> & ({ fromJar: number } | { source: number }))[];
}

/** Records of a family told jar by jar; seeding keys count up in the order told. */
export function tell(
  jars: readonly Told[],
  sources: readonly (Partial<FamilySource> & { key: number })[] = [{ key: 1 }],
): FamilyRecords {
  const records = {
    jars: [] as FamilyJar[],
    seedings: [] as FamilySeeding[],
    sources: sources.map(plainSource),
    clearings: [],
  };
  for (const { from = [], ...jar } of jars) {
    records.jars.push(plainJar(jar));
    for (const seeding of from) {
      records.seedings.push(plainSeeding({ key: records.seedings.length + 1, jar: jar.key, ...seeding }));
    }
  }
  return records;
}

export const familyOf = (...told: Parameters<typeof tell>): Family => buildFamily(tell(...told));

/** Everything a family answers, for comparing two of them to the last bit. */
export function answers(family: Family): Map<number, unknown> {
  return new Map(
    family.keys
      .toSorted((a, b) => a - b)
      .map((key) => [
        key,
        {
          jar: family.jar(key),
          generation: family.generationOf(key),
          doublings: family.doublingsOf(key),
          own: family.ownDoublingsOf(key),
          shares: [...family.sharesOf(key)],
          basis: family.basisOf(key),
          traced: family.tracedSharesOf(key),
          lines: family.linesOf(key),
          cautions: family.cautionsOf(key),
          level: family.cautionLevelOf(key),
          seeds: family.seedsOf(key),
          children: family.childrenOf(key),
        },
      ]),
  );
}

export const sumOf = (values: Iterable<number>): number =>
  [...values].reduce((total, value) => total + value, 0);

/** Published path counting: how many different ways lead from a jar back to a source (founder), by walking each one. */
export function countPaths(family: Family, key: number): number {
  const known = new Map<number, number>();
  const waiting = [key];
  while (waiting.length > 0) {
    const jar = waiting.at(-1) as number;
    const seeds = family.seedsOf(jar);
    const open = seeds.flatMap((seeding) =>
      seeding.fromJar !== null && !known.has(seeding.fromJar) ? [seeding.fromJar] : [],
    );
    if (open.length > 0) waiting.push(...open);
    else {
      known.set(
        jar,
        sumOf(
          seeds.map((seeding) => (seeding.fromJar === null ? 1 : (known.get(seeding.fromJar) as number))),
        ),
      );
      waiting.pop();
    }
  }
  return known.get(key) as number;
}
