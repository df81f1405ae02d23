// What a jar and a fresh start cost the keeper: from recorded prices, else in jars. What is assumed is listed.
import { median } from '../vigour/order';
import type { RestartCosts } from './restart';

export interface CostRecords {
  /** Price of one jar's milk and additions, where a package with price and size was recorded (minor units). */
  readonly jars: readonly number[];
  /** Price of the pieces that started one founding batch (minor units), where known. */
  readonly starts: readonly number[];
  /** Jars made in each later batch. */
  readonly jarsPerBatch: readonly number[];
  readonly currency: string;
}

export interface KeptCosts {
  readonly costs: RestartCosts;
  /** A currency, or 'jars' where no price is known: everything is then reckoned in jars. */
  readonly unit: string;
  readonly assumed: readonly string[];
}

/** A fresh start is worth so many jars where no price of what starts it is known (an assumption, no source). */
const START_IN_JARS = 6;

/** Costs as C(n) needs them, in whole units of the currency. A weak jar loses half of itself, a discarded one all. */
export function keptCosts(records: CostRecords): KeptCosts {
  const assumed: string[] = [];
  const priced = median(records.jars);
  const jar = priced === null || priced === 0 ? 1 : priced / 100;
  const unit = priced === null || priced === 0 ? 'jars' : records.currency;
  if (unit === 'jars') assumed.push('No price of milk is recorded, so everything is reckoned in jars.');
  const start = unit === 'jars' ? null : median(records.starts);
  const freshStart = start === null ? START_IN_JARS * jar : start / 100;
  if (start === null) assumed.push(`What starts a line is taken to cost as much as ${START_IN_JARS} jars.`);
  const jarsPerGeneration = Math.max(1, Math.round(median(records.jarsPerBatch) ?? 3));
  assumed.push(
    'A weak jar is eaten and loses half its worth; a discarded one all of it, and as much again for what hangs on it.',
    'A restart that was not planned costs one batch more.',
  );
  return {
    costs: {
      freshStart,
      jarsPerGeneration,
      jar,
      weakLoss: jar / 2,
      discardLoss: jar,
      unplanned: jarsPerGeneration * jar,
    },
    unit,
    assumed,
  };
}
