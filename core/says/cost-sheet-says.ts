// The costs screen in words: what each figure is, and where it comes from.
import type { Costed, CostSheet } from '../advice/cost-sheet';
import { printPrice } from '../quantities/quantities';
import type { UsualCost } from '../shapes/cost-codes';
import { unpricedWords } from './cost-says';

const money = (minor: number, currency: string): string =>
  printPrice({ minor: Math.round(minor), currency, typed: null });

const NOT_KNOWN = 'not known';

/** "1.49 GBP", "at least 1.49 GBP", "not known". */
export const costedSays = (cost: Pick<Costed, 'minor' | 'atLeast'> | null, currency: string): string =>
  cost === null ? NOT_KNOWN : `${cost.atLeast ? 'at least ' : ''}${money(cost.minor, currency)}`;

const jarsWords = ({ jars, of }: Costed): string =>
  of === 1 ? 'the one jar' : jars === of ? `all ${of} jars` : `${jars} of ${of} jars`;

const WITHOUT = 'What has no price is not in it.';

/** Where the cost of a jar, of a cup and of a good jar come from. */
export function fromSays(what: 'jar' | 'cup' | 'good jar', cost: Costed | null, cup: string): string {
  if (cost === null)
    return {
      jar: 'No jar has milk with a price.',
      cup: 'No jar with a price has a noted volume.',
      'good jar': 'No jar with a price was seen.',
    }[what];
  const says = {
    jar: `The middle of ${jarsWords(cost)}: milk and what was stirred in.`,
    cup: `The same, for ${cup}, by what each jar held.`,
    'good jar': `What ${jarsWords(cost)} cost, shared among the good ones; a weak one counts half.`,
  }[what];
  return cost.atLeast ? `${says} ${WITHOUT}` : says;
}

const many = (count: number, one: string): string => (count === 1 ? `one ${one}` : `${count} ${one}s`);

/** Where the cost of something stirred in, or of a start, comes from, and what of it has no price. */
export function usualFromSays(cost: UsualCost): string {
  const unit = cost.what === 'start' ? 'start' : 'jar';
  const unpriced = unpricedWords(cost);
  const from =
    cost.priced === 0 ? '' : `${cost.priced === 1 ? 'From' : 'The middle of'} ${many(cost.priced, unit)}.`;
  return [from, unpriced === null ? '' : `No price ${unpriced}.`].filter((part) => part !== '').join(' ');
}

/** The first words: a cup beside the shop's, else what a jar costs, else what to do. */
export function sheetHead(
  { jar, cup }: CostSheet,
  shopCup: number | null,
  currency: string,
): { sentence: string; reason: string } {
  if (jar === null)
    return {
      sentence: 'What a jar costs is not known yet.',
      reason: 'Type what a litre of milk costs, or note the price of a carton.',
    };
  const own = costedSays(jar, currency);
  if (cup === null || shopCup === null)
    return {
      sentence: `A jar costs ${own}.`,
      reason:
        shopCup === null
          ? 'Type what the shop asks, and it stands beside it.'
          : 'No jar has a noted volume, so a cup is not known.',
    };
  const less = shopCup - cup.minor;
  const apart = money(Math.abs(less), currency);
  const about = cup.atLeast ? 'Something in it has no price.' : `Your own cup costs ${costedSays(cup, currency)}.`;
  if (Math.round(less) === 0) return { sentence: 'A cup of your own costs what the shop asks.', reason: about };
  return less > 0
    ? { sentence: `A cup of your own costs ${cup.atLeast ? 'at most ' : ''}${apart} less than the shop’s.`, reason: about }
    : { sentence: `A cup of your own costs ${cup.atLeast ? 'at least ' : ''}${apart} more than the shop’s.`, reason: about };
} // prettier-ignore

/** What a package lacks. */
export const lacksSays = (lacks: { readonly price: boolean; readonly size: boolean }): string =>
  lacks.price && lacks.size ? 'price and size not noted' : lacks.price ? 'price not noted' : 'size not noted';

export const OWN_CUP = 'Your own';
export const SHOP_CUP = 'From the shop';
