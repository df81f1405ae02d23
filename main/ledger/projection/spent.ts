// What was spent, from the prices and sizes of packages. A price counts only where the amount used and the size of the
// package are in one unit.
import type { Rows } from '../rows';

/** So many minor units of a currency, for the jar or batch with that key. */
export interface SpentRow {
  readonly key: number;
  readonly minor: number;
  readonly currency: string;
}

/** The price of an amount of a package `p`, in minor units. */
const priced = (value: string): string => `p.price_minor * ${value} / p.size_value`;
const joined = (unit: string): string =>
  `p.price_minor IS NOT NULL AND p.size_value > 0 AND p.size_unit = ${unit}`;

/** For the milk of each made jar. */
export function spentOnMilk(rows: Rows): SpentRow[] {
  const value = 'coalesce(j.milk_amount_value, j.final_volume_value)';
  return rows
    .prepare(
      `SELECT j.key, ${priced(value)} AS minor, p.price_currency AS currency
         FROM jar j JOIN package p ON p.key = j.milk_package
        WHERE j.state = 'made' AND ${value} IS NOT NULL
          AND ${joined('coalesce(j.milk_amount_unit, j.final_volume_unit)')}`,
    )
    .all() as SpentRow[];
}

/** For what was stirred into each jar. */
export const spentOnAdditions = (rows: Rows): SpentRow[] =>
  rows
    .prepare(
      `SELECT a.jar AS key, ${priced('coalesce(a.actual_value, a.planned_value)')} AS minor, p.price_currency AS currency
         FROM addition a JOIN package p ON p.key = a.package
        WHERE coalesce(a.actual_value, a.planned_value) IS NOT NULL
          AND ${joined('coalesce(a.actual_unit, a.planned_unit)')}`,
    )
    .all() as SpentRow[];

/** For the sources that each batch's made jars were started from; its key is the batch's. */
export const spentOnSources = (rows: Rows): SpentRow[] =>
  rows
    .prepare(
      `SELECT j.batch AS key, ${priced('s.amount_value')} AS minor, p.price_currency AS currency
         FROM seeding s JOIN package p ON p.key = s.package JOIN jar j ON j.key = s.jar
        WHERE s.source IS NOT NULL AND j.state = 'made' AND s.amount_value IS NOT NULL AND ${joined('s.amount_unit')}`,
    )
    .all() as SpentRow[];
