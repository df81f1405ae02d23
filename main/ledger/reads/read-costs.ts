// What jars and fresh starts have cost, from the prices and sizes of packages.
import type { CostRecords } from '../../../core/advice/costs';
import { priceOf, usualCosts, type Taken } from '../../../core/advice/spent';
import type { Reply } from '../../../core/contract';
import { costsSentence, NOT_COUNTED, unpricedWords, usualWords } from '../../../core/says/cost-says';
import type { Judged } from '../judged';
import type { Ledger } from '../ledger';
import { ownPrices } from '../derived/own-prices';
import { takenOf } from '../derived/spent-rows';
import type { Spent } from '../../../core/shapes/cost-codes';

export function costRecords(ledger: Ledger, judged: Judged): CostRecords {
  const { rows, preferences } = ledger;
  const taken = takenOf(rows, ownPrices(ledger).milk);
  const milk = taken.filter(({ what }) => what === 'milk');
  const withMilk = new Set(milk.filter((one) => typeof priceOf(one) !== 'string').map(({ of }) => of));
  const sizes = new Map<number, number>();
  for (const { batch, founding } of judged.all.evidence)
    if (!founding) sizes.set(batch, (sizes.get(batch) ?? 0) + 1);
  return {
    jars: together(taken.filter(({ what, of }) => what !== 'start' && withMilk.has(of))),
    starts: together(taken.filter(({ what }) => what === 'start')),
    jarsPerBatch: [...sizes.values()],
    currency: preferences.currency,
  };
}

/** What was spent on each, in each currency, as far as it is priced. */
function together(taken: readonly Taken[]): Spent[] {
  const sums = new Map<string, Spent>();
  for (const one of taken) {
    const price = priceOf(one);
    if (typeof price === 'string') continue;
    const name = `${one.of} ${price.currency}`;
    sums.set(name, { currency: price.currency, minor: (sums.get(name)?.minor ?? 0) + price.minor });
  }
  return [...sums.values()];
}

/** What a jar, what is stirred in and a start usually cost, and what of them has no price. */
export function listCosts(ledger: Ledger): Reply<'cost.list'> {
  const costs = usualCosts(takenOf(ledger.rows, ownPrices(ledger).milk));
  return {
    sentence: costsSentence(costs),
    notCounted: NOT_COUNTED,
    costs: costs.map((cost) => ({
      ...cost,
      unpriced: [...cost.unpriced],
      says: usualWords(cost),
      unpricedSays: unpricedWords(cost),
    })),
  };
}
