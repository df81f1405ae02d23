// What a jar and a fresh start cost the keeper: from recorded prices, else in jars. What is assumed is listed.
import { minorDigits } from '../quantities/quantities';
import { median } from '../vigour/medians';
import type { Spent } from '../shapes/cost-codes';

/** What starts and jars cost. */
export interface RestartCosts {
  /** A fresh start, its poor first batch included. */
  readonly freshStart: number;
  readonly jarsPerGeneration: number;
  readonly jar: number;
  /** Part of its worth that a weak jar keeps (it is eaten); a discarded one keeps none. */
  readonly weakKeeps: number;
  /** Extra cost of a restart that was not planned. */
  readonly unplanned: number;
}

/**
 * How unsure each price is, as the standard deviation of its logarithm: 0 where it is recorded, LOG_SD_ASSUMED where it is
 * assumed.
 */
export type PriceDoubt = Pick<RestartCosts, 'freshStart' | 'jar' | 'unplanned'>;

/** Four assumed prices in five are taken to lie within a factor of two (an assumption, no source). */
const LOG_SD_ASSUMED = Math.LN2 / 1.2816;

export interface CostRecords {
  /** What each jar's milk and additions cost, where packages with price and size were recorded. */
  readonly jars: readonly Spent[];
  /** What the pieces cost that started each founding batch, where known. */
  readonly starts: readonly Spent[];
  /** Jars made in each later batch. */
  readonly jarsPerBatch: readonly number[];
  /** The keeper's own. */
  readonly currency: string;
}

export interface KeptCosts {
  readonly costs: RestartCosts;
  readonly doubt: PriceDoubt;
  /** A currency, or 'jars' where no price is known: costs are then counted in jars. */
  readonly unit: string;
  /** Each a sentence; what costs are counted in comes first. */
  readonly assumed: readonly string[];
}

/** Said once wherever costs are shown without a price. */
export const COUNTED_IN_JARS =
  'No price of milk is recorded, so costs are counted in jars: a cost of 2 is what two jars cost.';

/** What a price is made of, said first where costs are in money. */
const COUNTED_IN_MONEY =
  'A jar costs its milk and what was stirred into it, where the package, its size and its price are recorded. Spoonfuls of what is sold by weight are left out.';

/** Part of its worth that a weak jar keeps, eaten all the same. */
const WEAK_KEEPS = 0.5;

/** A fresh start is worth so many jars where no price of what starts it is known (an assumption, no source). */
const START_IN_JARS = 6;

/** Costs as C(n) needs them, in whole units of the currency. */
export function keptCosts(records: CostRecords): KeptCosts {
  const assumed: string[] = [];
  const currencies = [
    ...new Set([...records.jars, ...records.starts].map(({ currency }) => currency)),
  ].toSorted();
  const [currency = records.currency] = currencies;
  const whole = (spent: readonly Spent[]): number | null =>
    median(spent.map(({ minor }) => minor / 10 ** minorDigits(currency)));
  const priced = currencies.length > 1 ? null : whole(records.jars);
  const unit = priced === null || priced === 0 ? 'jars' : currency;
  const jar = unit === 'jars' || priced === null ? 1 : priced;
  if (currencies.length > 1)
    assumed.push(
      `Prices are recorded in ${currencies.join(' and ')}. They can't be added, so costs are counted in jars: a cost of 2 is what two jars cost.`,
    );
  else assumed.push(unit === 'jars' ? COUNTED_IN_JARS : COUNTED_IN_MONEY);
  const start = unit === 'jars' ? null : whole(records.starts);
  const freshStart = start ?? START_IN_JARS * jar;
  if (start === null)
    assumed.push(
      `What starts a line is taken to cost as much as ${START_IN_JARS} jars, give or take a factor of two.`,
    );
  const jarsPerGeneration = Math.max(1, Math.round(median(records.jarsPerBatch) ?? 3));
  assumed.push(
    'A weak jar is eaten and keeps half its worth; a discarded one keeps none.',
    'A restart that was not planned costs one batch more.',
  );
  return {
    costs: {
      freshStart,
      jarsPerGeneration,
      jar,
      weakKeeps: WEAK_KEEPS,
      unplanned: jarsPerGeneration * jar,
    },
    // A jar is what costs are counted in, or recorded; what an unplanned restart costs nobody has recorded.
    doubt: { freshStart: start === null ? LOG_SD_ASSUMED : 0, jar: 0, unplanned: LOG_SD_ASSUMED },
    unit,
    assumed,
  };
}
