// One thing known of many records at once: what judgement, advice and costs read of a whole ledger in a statement or two.
import type { Amount } from '../../../core/ledger/basics';
import type { Rows } from '../rows';

type Noted = 'jar' | 'hold' | 'batch' | 'portion';

/** Notes by key, where anything was noted. */
export function notesOf({ db }: Rows, kind: Noted): ReadonlyMap<number, string> {
  const noted = db.prepare(`SELECT key, note FROM ${kind} WHERE note IS NOT NULL`).raw().all();
  return new Map(noted as [number, string][]);
}

/** What milk each jar was made of, by key; null where nobody said. */
export function milks({ db }: Rows): ReadonlyMap<number, string | null> {
  return new Map(db.prepare('SELECT key, milk FROM jar').raw().all() as [number, string | null][]);
}

/** Keys of the jars that are gone since a day that was told. */
export const goneJars = (rows: Rows): ReadonlySet<number> =>
  new Set(rows.prepare('SELECT key FROM jar WHERE gone_on IS NOT NULL').pluck().all() as number[]);

/** Batches of which both a bath and a jar were read. */
export const batchesReadTwice = (rows: Rows): readonly number[] =>
  rows
    .prepare(
      `SELECT batch FROM hold WHERE probe IN ('bath', 'jar') AND json_array_length(readings) > 1
        GROUP BY batch HAVING count(DISTINCT probe) = 2`,
    )
    .pluck()
    .all() as number[];

/** Amounts of all seedings, or of those of some jars, by seeding key. */
export function seedingAmounts({ db }: Rows, jars: readonly number[] | null): ReadonlyMap<number, Amount> {
  const amounts = new Map<number, Amount>();
  const rows = db
    .prepare(
      `SELECT key, amount_value, amount_unit, amount_typed FROM seeding WHERE amount_value IS NOT NULL
       ${jars ? 'AND jar IN (SELECT value FROM json_each(?))' : ''}`,
    )
    .iterate(...(jars ? [JSON.stringify(jars)] : [])) as IterableIterator<{
    key: number;
    amount_value: number;
    amount_unit: Amount['unit'];
    amount_typed: string | null;
  }>;
  for (const row of rows) {
    amounts.set(row.key, { value: row.amount_value, unit: row.amount_unit, typed: row.amount_typed });
  }
  return amounts;
}
