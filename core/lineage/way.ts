// The way back of a jar: the seeds that it hangs from, one a generation.
import type { Family } from './family-version';
import { primarySeed } from './primary-seed';

/** Keys from the first jar known to the jar itself, each seeded by the one before. @throws RangeError where the family holds no such jar */
export function wayTo(family: Family, key: number): number[] {
  const { columns } = family;
  const way: number[] = [];
  let slot = columns.slot(key);
  if (slot < 0) throw new RangeError(`the family holds no jar ${key}`);
  for (; slot >= 0; slot = primarySeed(columns, slot)) way.push(columns.index.keyOf[slot] as number);
  return way.toReversed();
}
