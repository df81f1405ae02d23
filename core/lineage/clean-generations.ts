// When a caution ends by itself: on each path where two successive generations passed the gate and were seen clean again five
// days later or on opening. A jar of which that is not known starts the count again; so does a new sign.
import type { FamilyColumns } from './counting';
import { reachDown } from './descent';
import { seedsFirst } from './loops';
import type { FamilyJar } from './lineage-shapes';
import { safetyOf } from './touch';

const ENOUGH = 2;

/**
 * Slots on which the caution of some mates has ended: every path from a mate to the slot, or on from it, holds two clean
 * generations in a row. A mate's own ends where all its paths do.
 */
export function endedFrom(columns: FamilyColumns, mates: readonly number[]): ReadonlySet<number> {
  const below = reachDown(columns, mates).slots;
  const clean = (slot: number): boolean => safetyOf(columns.jars[slot] as FamilyJar).clean;
  const among = new Set(below);
  const order = [...seedsFirst(columns, Int32Array.from(below))];
  // Fewest clean generations in a row that a path not yet ended brings to a slot; ENOUGH: all paths have ended.
  const row = new Map<number, number>();
  for (const mate of mates) row.set(mate, 0);
  for (const slot of order) {
    if (row.has(slot)) continue;
    const above = (columns.seedSlots[slot] as readonly number[]).filter(
      (seed) => among.has(seed) || mates.includes(seed),
    );
    const open = above.map((seed) => row.get(seed) ?? 0).filter((count) => count < ENOUGH);
    row.set(slot, open.length === 0 ? ENOUGH : clean(slot) ? Math.min(...open) + 1 : 0);
  }
  const onward = onwardOf(columns, order, clean);
  const ended = new Set<number>();
  for (const slot of order) {
    const count = row.get(slot) ?? 0;
    if (count >= ENOUGH || onward(slot, count)) ended.add(slot);
  }
  for (const mate of mates) if (onward(mate, 0)) ended.add(mate);
  return ended;
}

/** Whether all paths on from a slot end, that arrives there with so many clean generations in a row. */
function onwardOf(
  columns: FamilyColumns,
  order: readonly number[],
  clean: (slot: number) => boolean,
): (slot: number, count: number) => boolean {
  const known = new Map<number, readonly [boolean, boolean]>();
  const from = (slot: number, count: number): boolean => {
    const children = columns.children[slot] as readonly number[];
    return (
      children.length > 0 &&
      children.every((child) => {
        const next = clean(child) ? count + 1 : 0;
        return next >= ENOUGH || (known.get(child)?.[next] ?? false);
      })
    );
  };
  for (const slot of order.toReversed()) known.set(slot, [from(slot, 0), from(slot, 1)]);
  return from;
}
