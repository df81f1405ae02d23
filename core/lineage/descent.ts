// Walking up to what a jar descends from and down to what descends from it. Nearest first, iterative.
import type { FamilyColumns } from './counting';

export interface Reached {
  /** Slots reached, nearest first; the ones started from are not among them unless a walk comes back to them. */
  readonly slots: Int32Array;
  /** Fewest seedings between a start and each slot. */
  readonly steps: Int32Array;
}

function reach(
  size: number,
  starts: readonly number[],
  next: (slot: number) => readonly number[],
  atMost = Infinity,
): Reached {
  const seen = new Uint8Array(size);
  const slots: number[] = [];
  const steps: number[] = [];
  const take = (slot: number, step: number): void => {
    for (const other of next(slot)) {
      if (other < 0 || seen[other]) continue;
      seen[other] = 1;
      slots.push(other);
      steps.push(step);
    }
  };
  for (const start of starts) take(start, 1);
  for (let i = 0; i < slots.length && slots.length < atMost; i++)
    take(slots[i] as number, (steps[i] as number) + 1);
  const many = Math.min(slots.length, atMost);
  return { slots: Int32Array.from(slots.slice(0, many)), steps: Int32Array.from(steps.slice(0, many)) };
}

/** All that the given slots descend from, or the nearest so many of it. */
export const reachUp = (columns: FamilyColumns, slots: readonly number[], atMost?: number): Reached =>
  reach(columns.jars.length, slots, (slot) => columns.seedSlots[slot] as readonly number[], atMost);

/** All that descends from the given slots, or the nearest so many of it. */
export const reachDown = (columns: FamilyColumns, slots: readonly number[], atMost?: number): Reached =>
  reach(columns.jars.length, slots, (slot) => columns.children[slot] as readonly number[], atMost);
