// Finding a jar that would descend from itself. A seed is never made on a later day, so a loop stays within one day.
import type { Facts, SeedingFact } from './asked-facts';

/** Jars with what seeded them, each jar after its seeds; what stands in a loop, or below one, is left out. */
export function* seedsBefore(
  edges: readonly Pick<SeedingFact, 'jar' | 'fromJar'>[],
): Generator<{ readonly jar: number; readonly seeds: readonly number[] }> {
  const seeds = new Map<number, Set<number>>();
  const children = new Map<number, number[]>();
  for (const { jar, fromJar } of edges) {
    if (fromJar === null || seeds.get(jar)?.has(fromJar)) continue;
    seeds.set(jar, (seeds.get(jar) ?? new Set()).add(fromJar));
    if (!seeds.has(fromJar)) seeds.set(fromJar, new Set());
    const there = children.get(fromJar);
    if (there) there.push(jar);
    else children.set(fromJar, [jar]);
  }
  const waiting = new Map([...seeds].map(([jar, of]) => [jar, of.size]));
  const done = [...waiting].flatMap(([jar, count]) => (count === 0 ? [jar] : []));
  for (const jar of done) {
    yield { jar, seeds: [...(seeds.get(jar) ?? [])] };
    for (const child of children.get(jar) ?? []) {
      const left = (waiting.get(child) ?? 0) - 1;
      waiting.set(child, left);
      if (left === 0) done.push(child);
    }
  }
}

/**
 * A loop among the seedings of one day that runs through a jar asked about: from that jar down to its seed, and closed.
 * Each seeding is looked at once for taking off what no loop runs through, and once more for naming one.
 * @returns keys of jars, or null where there is none
 */
export function loopOf({ sameDay, touched }: Pick<Facts, 'sameDay' | 'touched'>): number[] | null {
  const children = new Map<number, number[]>();
  const waiting = new Map<number, number>();
  for (const { jar, fromJar } of sameDay) {
    if (fromJar === null) continue;
    const there = children.get(fromJar);
    if (there) there.push(jar);
    else children.set(fromJar, [jar]);
    waiting.set(jar, (waiting.get(jar) ?? 0) + 1);
    if (!waiting.has(fromJar)) waiting.set(fromJar, 0);
  }
  // Jars all of whose seeds are done, seeds first: what is left over stands in a loop or below one.
  const done = [...waiting].flatMap(([jar, seeds]) => (seeds === 0 ? [jar] : []));
  for (const jar of done) {
    waiting.delete(jar);
    for (const child of children.get(jar) ?? []) {
      const left = (waiting.get(child) ?? 0) - 1;
      waiting.set(child, left);
      if (left === 0) done.push(child);
    }
  }
  for (const jar of touched) {
    if (!waiting.has(jar)) continue;
    const path = pathBack(jar, children, waiting);
    if (path) return path;
  }
  return null;
}

/** From a jar through what it seeded back to itself, among the jars that are left over. */
function pathBack(
  start: number,
  children: ReadonlyMap<number, readonly number[]>,
  left: ReadonlyMap<number, number>,
): number[] | null {
  const cameFrom = new Map<number, number>();
  const open = [start];
  for (let jar = open.pop(); jar !== undefined; jar = open.pop()) {
    for (const child of children.get(jar) ?? []) {
      if (!left.has(child) || cameFrom.has(child)) continue;
      cameFrom.set(child, jar);
      if (child === start) {
        const path = [start];
        for (let at = jar; at !== start; at = cameFrom.get(at) as number) path.push(at);
        return [...path, start].toReversed();
      }
      open.push(child);
    }
  }
  return null;
}
