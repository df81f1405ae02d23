// What milk the invented kitchen bought for each batch, at invented prices: so much a litre, in whole litre cartons.
// No two batches share a package, since a shared one would put a caution on jars that have nothing else to do with a
// spoiled one.
import type { Package } from '../ledger/records';
import type { DemoBatch, DemoJar } from './scenario-shapes';

/** Pence a litre, from that day on. Invented: it went up twice over the winter. */
const PRICES = [
  ['2025-10-01', 162],
  ['2026-01-01', 168],
  ['2026-03-01', 174],
] as const;

/** Milk bought for a batch, and which of its jars were filled from it. */
export interface DemoMilk {
  /** By what the scenario knows it. */
  readonly name: string;
  readonly package: Omit<Package, 'id'>;
}

/** The scenario's own name for the milk a jar was filled from. */
export const milkOf = (day: string, jar: DemoJar): string =>
  `milk of ${day}${jar.ownCarton ? ` ${jar.letter}` : ''}`;

/** Milk of a batch: one package for its jars together, and one more for each jar filled from a carton of its own. */
export function milkFor(batch: DemoBatch): DemoMilk[] {
  const millilitres = new Map<string, number>();
  for (const jar of batch.jars) {
    const name = milkOf(batch.day, jar);
    millilitres.set(name, (millilitres.get(name) ?? 0) + jar.volumeMl);
  }
  const pence = PRICES.findLast(([from]) => from <= batch.day)?.[1] ?? PRICES[0][1];
  return [...millilitres].map(([name, ml]): DemoMilk => {
    const litres = Math.ceil(ml / 1000);
    return {
      name,
      package: {
        of: 'milk',
        source: null,
        name: `whole milk, ${litres} l`,
        size: { value: litres * 1000, unit: 'mL', typed: `${litres} l` },
        price: { minor: litres * pence, currency: 'GBP', typed: null },
        boughtOn: batch.day,
        openedOn: batch.day,
        bestBefore: null,
        note: null,
      },
    };
  });
}
