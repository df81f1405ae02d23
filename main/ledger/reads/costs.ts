// What jars and fresh starts have cost, from the prices and sizes of packages. A price counts only where the amount used
// and the size of the package are in one unit.
import type { CostRecords, Spent } from '../../../core/advice/costs';
import type { Judged } from '../judged';
import type { Ledger } from '../ledger';

/** Joins a package `p` and gives its price for an amount, in minor units. */
const priced = (value: string): string => `p.price_minor * ${value} / p.size_value`;
const JOINED = (unit: string): string =>
  `p.price_minor IS NOT NULL AND p.size_value > 0 AND p.size_unit = ${unit}`;

interface SpentRow {
  readonly key: number;
  readonly minor: number;
  readonly currency: string;
}

export function costRecords({ rows, preferences }: Ledger, judged: Judged): CostRecords {
  const milkValue = 'coalesce(j.milk_amount_value, j.final_volume_value)';
  const milk = rows
    .prepare(
      `SELECT j.key, ${priced(milkValue)} AS minor, p.price_currency AS currency
         FROM jar j JOIN package p ON p.key = j.milk_package
        WHERE j.state = 'made' AND ${milkValue} IS NOT NULL
          AND ${JOINED('coalesce(j.milk_amount_unit, j.final_volume_unit)')}`,
    )
    .all() as SpentRow[];
  const stirredIn = rows
    .prepare(
      `SELECT a.jar AS key, ${priced('coalesce(a.actual_value, a.planned_value)')} AS minor, p.price_currency AS currency
         FROM addition a JOIN package p ON p.key = a.package
        WHERE coalesce(a.actual_value, a.planned_value) IS NOT NULL
          AND ${JOINED('coalesce(a.actual_unit, a.planned_unit)')}`,
    )
    .all() as SpentRow[];
  const pieces = rows
    .prepare(
      `SELECT j.batch AS key, ${priced('s.amount_value')} AS minor, p.price_currency AS currency
         FROM seeding s JOIN package p ON p.key = s.package JOIN jar j ON j.key = s.jar
        WHERE s.source IS NOT NULL AND j.state = 'made' AND s.amount_value IS NOT NULL AND ${JOINED('s.amount_unit')}`,
    )
    .all() as SpentRow[];
  const sizes = new Map<number, number>();
  for (const { batch, founding } of judged.all.evidence)
    if (!founding) sizes.set(batch, (sizes.get(batch) ?? 0) + 1);
  const withMilk = new Set(milk.map(({ key }) => key));
  return {
    jars: together([...milk, ...stirredIn.filter(({ key }) => withMilk.has(key))]),
    starts: together(pieces),
    jarsPerBatch: [...sizes.values()],
    currency: preferences.currency,
  };
}

/** What was spent on each, in each currency. */
function together(spent: readonly SpentRow[]): Spent[] {
  const sums = new Map<string, Spent>();
  for (const { key, minor, currency } of spent) {
    const name = `${key} ${currency}`;
    sums.set(name, { currency, minor: (sums.get(name)?.minor ?? 0) + minor });
  }
  return [...sums.values()];
}
