// A jar can't seed itself or an ancestor, nor be seeded by a jar made on a later day. Found here, with the loop named;
// the ledger's trigger is the safety net behind it.
import type { Refusal } from '../contract';
import type { FamilyColumns } from './counting';
import { earliestDay, latestDay } from './lineage-shapes';

/** A family that can't be: the reason as a refusal, ready for the table of sentences. */
export class FamilyRefused extends Error {
  override readonly name = 'FamilyRefused';
  constructor(readonly refusal: Refusal) {
    super(refusal.code);
  }
}

/** The jar's label; a jar that has none printed is named by its letter. */
const nameOf = (columns: FamilyColumns, slot: number): string =>
  columns.jars[slot]?.label || columns.jars[slot]?.letter || '?';

/**
 * Seeds before what they seeded, among the given slots (each once). Iterative: a line may be 100,000 jars deep.
 * @throws FamilyRefused 'own ancestor', naming one loop from a jar back to itself
 */
export function seedsFirst(columns: FamilyColumns, slots: Int32Array): Int32Array {
  const waiting = new Int32Array(columns.jars.length).fill(-1);
  for (const slot of slots) waiting[slot] = 0;
  for (const slot of slots) {
    for (const child of columns.children[slot] as readonly number[]) {
      if (waiting[child] !== -1) waiting[child] = (waiting[child] as number) + 1;
    }
  }
  const order = new Int32Array(slots.length);
  let filled = 0;
  for (const slot of slots) if (waiting[slot] === 0) order[filled++] = slot;
  for (let next = 0; next < filled; next++) {
    for (const child of columns.children[order[next] as number] as readonly number[]) {
      if (waiting[child] === -1) continue;
      waiting[child] = (waiting[child] as number) - 1;
      if (waiting[child] === 0) order[filled++] = child;
    }
  }
  if (filled < slots.length) {
    const start = slots.find((slot) => (waiting[slot] as number) > 0) as number;
    const loop = walkToLoop(columns, waiting, start).map((slot) => nameOf(columns, slot));
    throw new FamilyRefused({ code: 'own ancestor', params: { loop, jar: loop[0] ?? '?' } });
  }
  return order;
}

/** From a slot that could never be counted, upwards through seeds that couldn't either, until one comes up again. */
function walkToLoop(columns: FamilyColumns, waiting: Int32Array, start: number): number[] {
  const path: number[] = [];
  const placeOf = new Map<number, number>();
  let slot = start;
  while (!placeOf.has(slot)) {
    placeOf.set(slot, path.length);
    path.push(slot);
    slot = (columns.seedSlots[slot] as readonly number[]).find(
      (seed) => seed >= 0 && (waiting[seed] as number) > 0,
    ) as number;
  }
  // The path ran from jar to seed; said the way it was made, from seed to jar, and closed.
  return [...path.slice(placeOf.get(slot)), slot].toReversed();
}

/**
 * Refuses a seed made on a later day than the jar it seeded, for one jar's seeds.
 * @throws FamilyRefused 'seed made later'
 */
export function refuseLaterSeeds(columns: FamilyColumns, slot: number): void {
  const jar = columns.jars[slot];
  const day = jar ? latestDay(jar) : null;
  if (day === null) return;
  for (const seed of columns.seedSlots[slot] as readonly number[]) {
    const from = seed >= 0 ? columns.jars[seed] : undefined;
    const seedDay = from ? earliestDay(from) : null;
    if (seedDay !== null && seedDay > day) {
      throw new FamilyRefused({
        code: 'seed made later',
        params: { jar: nameOf(columns, slot), seed: nameOf(columns, seed), day, seedDay },
      });
    }
  }
}
