// Costs in words: what a jar, what is stirred in and a start usually cost, and why something has no price.
import type { CostAssumed } from '../advice/costs';
import { printPrice } from '../quantities/quantities';
import type { Unpriced, UsualCost, Spent } from '../shapes/cost-codes';

/** "1.49 GBP". */
const moneyWords = ({ minor, currency }: Spent): string => printPrice({ minor, currency, typed: null });

const small = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine'] as const;
const many = (count: number, one: string, more: string): string =>
  `${small[count] ?? count} ${count === 1 ? one : more}`;

const WHY: Readonly<Record<Unpriced, string>> = {
  'no package': 'no package is noted',
  'no price': 'its package has no price',
  'no size': 'its package has no size',
  'no amount': 'how much went in is not noted',
  'not weighed': 'measured by the spoon and sold by weight (weigh it, and it is priced)',
  'other money': 'paid in another currency',
};

/** "in nine jars: measured by the spoon and sold by weight; in one jar: no package is noted"; null where all is priced. */
export const unpricedWords = ({ what, unpriced }: UsualCost): string | null =>
  unpriced.length === 0
    ? null
    : unpriced
        .map(({ why, times }) => `in ${what === 'start' ? many(times, 'start', 'starts') : many(times, 'jar', 'jars')}: ${WHY[why]}`)
        .join('; '); // prettier-ignore

/** "1.49 GBP a jar", "13.43 GBP for two jars", "not known". */
export const usualWords = ({ what, usual, jars }: UsualCost): string =>
  usual === null
    ? 'not known'
    : `${moneyWords(usual)} ${what === 'start' ? `for ${many(jars, 'jar', 'jars')}` : 'a jar'}`;

/** The first sentence on costs: what is known of a jar and a start, or that nothing is, and what to do. */
export function costsSentence(costs: readonly UsualCost[]): string {
  const milk = costs.find(({ what }) => what === 'milk')?.usual ?? null;
  const start = costs.find(({ what }) => what === 'start');
  const started = start?.usual ? `starting a line costs ${usualWords(start)}` : null;
  if (milk === null && started === null)
    return 'What a jar costs is not known: note size and price of each package, and say from which one it came.';
  const jar = milk === null ? 'What a jar costs is not known' : `A plain jar costs ${moneyWords(milk)}`;
  return `${jar}; ${started ?? 'what a start costs is not known'}.`;
} // prettier-ignore

/** A cost in words: "1.35 EUR", or "as much as 1.35 jars" where no price is known. */
export const costWords = (value: number, unit: string): string =>
  unit === 'jars'
    ? `as much as ${value.toFixed(2) === '1.00' ? 'one jar' : `${value.toFixed(2)} jars`}`
    : `${value.toFixed(2)} ${unit}`;

/** What 100 good jars cost beyond as many jars: so many are as good as thrown out, starts and weak jars taken in. */
export const lostInHundred = (cost: number): number => Math.max(0, Math.round(100 * cost) - 100);

/** "18 jars", "hardly any jar": so many are as good as thrown out. */
export const thrownOut = (jars: number): string =>
  jars === 0 ? 'hardly any jar' : `${jars} ${jars === 1 ? 'jar' : 'jars'}`;

/** What a good jar costs: "1.35 EUR", or without a price "35 jars thrown out for every 100 good ones". */
export const goodJarWords = (value: number, unit: string): string =>
  unit === 'jars'
    ? `${thrownOut(lostInHundred(value))} thrown out for every 100 good ones`
    : costWords(value, unit);

/** The same as a sentence. @param then " then", where it is said of what is yet to be done */
export const goodJarSays = (value: number, unit: string, then = ''): string =>
  unit === 'jars'
    ? `It is${then} as if ${thrownOut(lostInHundred(value))} were thrown out for every 100 good ones`
    : `A good jar${then} costs ${costWords(value, unit)}`;

/** What no cost here holds. */
export const NOT_COUNTED = 'Electricity is not counted.';

/** Said once wherever costs are shown without a price. */
export const COUNTED_IN_JARS =
  'No price of milk is recorded, so costs are counted in jars: a cost of 2 is what two jars cost.';

/** What a price is made of, said first where costs are in money. */
const COUNTED_IN_MONEY =
  'A jar costs its milk and what was stirred into it, where the package, its size and its price are recorded. Spoonfuls of what is sold by weight are left out.';

/** What is assumed of costs. */
export function costAssumedSays(assumed: CostAssumed): string {
  switch (assumed.code) {
    case 'currencies':
      return `Prices are recorded in ${assumed.currencies.join(' and ')}. They can't be added, so costs are counted in jars: a cost of 2 is what two jars cost.`;
    case 'in jars':
      return COUNTED_IN_JARS;
    case 'in money':
      return COUNTED_IN_MONEY;
    case 'start':
      return `What starts a line is taken to cost as much as ${assumed.jars} jars, give or take a factor of two.`;
    case 'weak jar':
      return 'A weak jar is eaten and keeps half its worth; a discarded one keeps none.';
    case 'unplanned':
      return 'A restart that was not planned costs one batch more.';
  }
}
