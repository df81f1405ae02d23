// The one seed a jar hangs from in the drawing, and along which its way back is told.
import { dayInOrder, type FamilyJar } from './lineage-shapes';

export const inOrder = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** What the choice rests on, by slot. */
export interface SeedColumns {
  readonly jars: readonly (FamilyJar | undefined)[];
  readonly seedSlots: readonly (readonly number[])[];
  readonly shares: readonly (readonly number[])[];
  readonly deepest: Int32Array;
}

/** A jar that seeded another, with all it brought (in one seeding or several). */
export interface SeedJar {
  readonly slot: number;
  readonly share: number;
}

/** The jars that seeded a slot, each once, the one it hangs from first: deepest, then larger share, earlier day, label. */
export function seedJars(columns: SeedColumns, slot: number): SeedJar[] {
  const from = columns.seedSlots[slot] as readonly number[];
  const shares = columns.shares[slot] as readonly number[];
  if (from.length === 1) return (from[0] as number) >= 0 ? [{ slot: from[0] as number, share: 1 }] : [];
  const brought = new Map<number, number>();
  from.forEach((seed, i) => {
    if (seed >= 0) brought.set(seed, (brought.get(seed) ?? 0) + (shares[i] as number));
  });
  return [...brought]
    .map(([seed, share]) => ({ slot: seed, share }))
    .toSorted((a, b) => {
      const [one, other] = [columns.jars[a.slot], columns.jars[b.slot]];
      return (
        (columns.deepest[b.slot] as number) - (columns.deepest[a.slot] as number) ||
        b.share - a.share ||
        inOrder((one && dayInOrder(one)) ?? '9999', (other && dayInOrder(other)) ?? '9999') ||
        inOrder(one?.label ?? '', other?.label ?? '') ||
        (one?.key ?? 0) - (other?.key ?? 0)
      );
    });
}

/** The seed a slot hangs from, or -1. */
export const primarySeed = (columns: SeedColumns, slot: number): number =>
  seedJars(columns, slot)[0]?.slot ?? -1;
