// What was spent, worked out from each thing taken of a package, and what of it nobody can price. A price counts only where
// the amount taken and the size of its package are in one unit.
import type { Amount } from '../ledger/basics';
import { median } from '../vigour/medians';
import type { Unpriced, UsualCost, Spent } from '../shapes/cost-codes';

/** Milk of a jar, something stirred into it, or what a line was started from; once for each package that it came from. */
export interface Taken {
  readonly what: 'milk' | 'addition' | 'start';
  /** What is added up to one cost: the jar's key; of a start the batch's. */
  readonly of: number;
  readonly jar: number;
  readonly name: string;
  readonly amount: Pick<Amount, 'value' | 'unit'> | null;
  /** Null where no package was named. */
  readonly package: {
    readonly size: Pick<Amount, 'value' | 'unit'> | null;
    readonly minor: number | null;
    readonly currency: string | null;
  } | null;
}

/** The price of what was taken, in minor units (not whole), or why there is none. */
export function priceOf({ amount, package: from }: Taken): Spent | Unpriced {
  if (from === null) return 'no package';
  if (from.minor === null || from.currency === null) return 'no price';
  if (from.size === null || from.size.value <= 0) return 'no size';
  if (amount === null) return 'no amount';
  if (amount.unit !== from.size.unit) return 'not weighed';
  return { minor: (from.minor * amount.value) / from.size.value, currency: from.currency };
}

const groups = <K, T>(all: readonly T[], key: (one: T) => K): T[][] => {
  const found = new Map<K, T[]>();
  for (const one of all) found.set(key(one), [...(found.get(key(one)) ?? []), one]);
  return [...found.values()];
};

const tally = <T>(all: readonly T[]): [T, number][] => {
  const times = new Map<T, number>();
  for (const one of all) times.set(one, (times.get(one) ?? 0) + 1);
  return [...times].toSorted((a, b) => b[1] - a[1]);
};

/** Adds up each of `of`; a part without a price leaves the whole without one. */
function usualCost(what: Taken['what'], name: string, all: readonly Taken[]): UsualCost {
  const parts = groups(all, ({ of }) => of);
  const costs = parts.map((taken): Spent | Unpriced => {
    const prices = taken.map(priceOf);
    const missing = prices.find((price) => typeof price === 'string');
    if (missing !== undefined) return missing;
    const spent = prices.filter((price) => typeof price !== 'string');
    const currency = spent[0]?.currency ?? '';
    return spent.some((one) => one.currency !== currency)
      ? 'other money'
      : { currency, minor: spent.reduce((sum, { minor }) => sum + minor, 0) };
  });
  const known = costs.filter((cost) => typeof cost !== 'string');
  // One money only: the commonest.
  const [currency = ''] = tally(known.map((cost) => cost.currency))[0] ?? [];
  const same = known.filter((cost) => cost.currency === currency);
  const usual = median(same.map(({ minor }) => minor));
  const why: Unpriced[] = [
    ...costs.filter((cost) => typeof cost === 'string'),
    ...known.filter((cost) => cost.currency !== currency).map(() => 'other money' as const),
  ];
  const jars = parts.map((taken) => new Set(taken.map(({ jar }) => jar)).size);
  return {
    what,
    name,
    usual: usual === null ? null : { minor: Math.round(usual), currency },
    priced: same.length,
    of: costs.length,
    unpriced: tally(why).map(([one, times]) => ({ why: one, times })),
    jars: what === 'start' ? Math.max(1, Math.round(median(jars) ?? 1)) : 1,
  };
}

/**
 * What the milk of a jar, each thing stirred in and a start usually cost: medians over the jars (of starts: batches) that can be
 * priced. Nothing that was taken is passed over: what has no price is counted with its reason.
 */
export function usualCosts(taken: readonly Taken[]): UsualCost[] {
  const of = (what: Taken['what']): Taken[] => taken.filter((one) => one.what === what);
  const additions = groups(of('addition'), ({ name }) => name.toLowerCase());
  return [
    ...(of('milk').length > 0 ? [usualCost('milk', 'milk', of('milk'))] : []),
    ...additions
      .map((all) => usualCost('addition', all[0]?.name ?? '', all))
      .toSorted((a, b) => b.of - a.of || a.name.localeCompare(b.name, 'en')),
    ...(of('start').length > 0 ? [usualCost('start', 'a fresh start', of('start'))] : []),
  ];
}
