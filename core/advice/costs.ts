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
  readonly assumed: readonly CostAssumed[];
}

/** What is assumed of costs: what they are counted in first. core/says/cost-says.ts makes the sentences. */
export type CostAssumed =
  /** Prices in several currencies can't be added, so costs are counted in jars. */
  | { readonly code: 'currencies'; readonly currencies: readonly string[] }
  | { readonly code: 'in jars' | 'in money' | 'weak jar' | 'unplanned' }
  /** What starts a line is taken to cost so many jars. */
  | { readonly code: 'start'; readonly jars: number };

/** Part of its worth that a weak jar keeps, eaten all the same. */
const WEAK_KEEPS = 0.5;

/** A fresh start is worth so many jars where no price of what starts it is known (an assumption, no source). */
const START_IN_JARS = 6;

/** Costs as C(n) needs them, in whole units of the currency. */
export function keptCosts(records: CostRecords): KeptCosts {
  const assumed: CostAssumed[] = [];
  const currencies = [
    ...new Set([...records.jars, ...records.starts].map(({ currency }) => currency)),
  ].toSorted();
  const [currency = records.currency] = currencies;
  const whole = (spent: readonly Spent[]): number | null =>
    median(spent.map(({ minor }) => minor / 10 ** minorDigits(currency)));
  const priced = currencies.length > 1 ? null : whole(records.jars);
  const unit = priced === null || priced === 0 ? 'jars' : currency;
  const jar = unit === 'jars' || priced === null ? 1 : priced;
  if (currencies.length > 1) assumed.push({ code: 'currencies', currencies });
  else assumed.push({ code: unit === 'jars' ? 'in jars' : 'in money' });
  const start = unit === 'jars' ? null : whole(records.starts);
  const freshStart = start ?? START_IN_JARS * jar;
  if (start === null) assumed.push({ code: 'start', jars: START_IN_JARS });
  const jarsPerGeneration = Math.max(1, Math.round(median(records.jarsPerBatch) ?? 3));
  assumed.push({ code: 'weak jar' }, { code: 'unplanned' });
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
