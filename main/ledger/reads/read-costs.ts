// What jars and fresh starts have cost, from the prices and sizes of packages.
import type { CostRecords, Spent } from '../../../core/advice/costs';
import type { Judged } from '../judged';
import type { Ledger } from '../ledger';
import { spentOnAdditions, spentOnMilk, spentOnSources, type SpentRow } from '../derived/spent';

export function costRecords({ rows, preferences }: Ledger, judged: Judged): CostRecords {
  const milk = spentOnMilk(rows);
  const stirredIn = spentOnAdditions(rows);
  const sizes = new Map<number, number>();
  for (const { batch, founding } of judged.all.evidence)
    if (!founding) sizes.set(batch, (sizes.get(batch) ?? 0) + 1);
  const withMilk = new Set(milk.map(({ key }) => key));
  return {
    jars: together([...milk, ...stirredIn.filter(({ key }) => withMilk.has(key))]),
    starts: together(spentOnSources(rows)),
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
