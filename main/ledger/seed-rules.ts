// The rules of seeds, asked before rows are written so that the sentence can name what stands against it: a jar can't
// seed itself or an ancestor, nor be seeded by a jar made on a later day. Core (core/lineage/loops.ts) asks again when
// the family is changed, and triggers hold it whoever writes.
import { jarLabel } from '../../core/lineage/labels';
import { Refused } from './refusal';
import type { Rows } from './rows';

interface Named {
  readonly key: number;
  readonly madeOn: string | null;
  readonly word: string | null;
  readonly letter: string;
  readonly state: 'planned' | 'made' | 'mistake' | 'lost';
}

function named(rows: Rows, key: number): Named {
  return rows
    .prepare(
      `SELECT j.key, b.made_on AS madeOn, b.word, j.letter, j.state FROM jar j JOIN batch b ON b.key = j.batch
       WHERE j.key = ?`,
    )
    .get(key) as Named;
}

const labelOf = (jar: Named): string => jarLabel(jar, false);

/**
 * Refuses a seed that can't have seeded a jar.
 * @param stood the seeding stood before with the seed as it is now, so that whether it was made is not asked again: a jar
 *   entered by mistake leaves a stub where something was seeded from it
 * @throws Refused 'seed made later', 'own ancestor', 'seed not made', 'day not known'
 */
export function refuseSeed(rows: Rows, jarKey: number, seedKey: number, stood = false): void {
  const jar = named(rows, jarKey);
  const seed = named(rows, seedKey);
  if (jarKey === seedKey) {
    throw new Refused('own ancestor', { jar: labelOf(jar), loop: [labelOf(jar), labelOf(jar)] });
  }
  if (!stood) refuseUnmadeSeed(seed, jar.state);
  if (jar.madeOn === null) throw new Refused('day not known', { jar: labelOf(jar) });
  if (seed.madeOn !== null && seed.madeOn > jar.madeOn) throw laterSeed(jar, seed);
  // A loop stays within one day: a seed of an earlier day can't descend from the jar.
  const loop = seed.madeOn === jar.madeOn ? pathUp(rows, seedKey, jarKey, jar.madeOn) : null;
  if (loop) {
    // From the jar down to its would-be seed, and back.
    const labels = [...loop.toReversed(), jarKey].map((key) => labelOf(named(rows, key)));
    throw new Refused('own ancestor', { jar: labelOf(jar), loop: labels });
  }
}

function refuseUnmadeSeed(seed: Named, stateOfJar: Named['state']): void {
  if (seed.state === 'mistake') {
    throw new Refused('seed not made', { seed: labelOf(seed), state: 'marked as entered by mistake' });
  }
  if (seed.state === 'planned' && stateOfJar !== 'planned') {
    throw new Refused('seed not made', { seed: labelOf(seed), state: 'only planned' });
  }
}

const laterSeed = (jar: Named, seed: Named): Refused =>
  new Refused('seed made later', {
    jar: labelOf(jar),
    seed: labelOf(seed),
    day: jar.madeOn,
    seedDay: seed.madeOn,
  });

/** Jars of one day from `from` up its seeds to `to`, both included, or null. */
function pathUp(rows: Rows, from: number, to: number, day: string): number[] | null {
  const seedsOf = rows
    .prepare(
      `SELECT s.from_jar FROM seeding s JOIN jar j ON j.key = s.from_jar JOIN batch b ON b.key = j.batch
       WHERE s.jar = ? AND b.made_on = ?`,
    )
    .pluck();
  const cameFrom = new Map<number, number | null>([[from, null]]);
  const waiting = [from];
  for (let key = waiting.pop(); key !== undefined; key = waiting.pop()) {
    if (key === to) {
      const path: number[] = [];
      for (let at: number | null = to; at !== null; at = cameFrom.get(at) ?? null) path.push(at);
      return path.toReversed();
    }
    for (const seed of seedsOf.all(key, day) as number[]) {
      if (cameFrom.has(seed)) continue;
      cameFrom.set(seed, key);
      waiting.push(seed);
    }
  }
  return null;
}

/**
 * Refuses a day for a batch on which one of its jars would have been seeded from the future, or have seeded the past.
 * @throws Refused 'seed made later'
 */
export function refuseDay(rows: Rows, batch: number, day: string): void {
  const earlier = rows
    .prepare(
      `SELECT s.jar, s.from_jar AS seed FROM jar j JOIN seeding s ON s.jar = j.key JOIN jar f ON f.key = s.from_jar
         JOIN batch b ON b.key = f.batch WHERE j.batch = ? AND f.batch <> j.batch AND b.made_on > ? LIMIT 1`,
    )
    .get(batch, day) as { jar: number; seed: number } | undefined;
  if (earlier) throw laterSeed({ ...named(rows, earlier.jar), madeOn: day }, named(rows, earlier.seed));
  const later = rows
    .prepare(
      `SELECT s.jar, s.from_jar AS seed FROM jar j JOIN seeding s ON s.from_jar = j.key JOIN jar c ON c.key = s.jar
         JOIN batch b ON b.key = c.batch WHERE j.batch = ? AND c.batch <> j.batch AND b.made_on < ? LIMIT 1`,
    )
    .get(batch, day) as { jar: number; seed: number } | undefined;
  if (later) throw laterSeed(named(rows, later.jar), { ...named(rows, later.seed), madeOn: day });
}
