// One thing known of many records at once: what judgement, advice and costs read of a whole ledger in a statement or two.
import type { Amount } from '../../../core/ledger/basics';
import type { JarRecord } from '../../../core/vigour/evidence';
import type { Rows } from '../facts/fact-rows';
import { whereabouts } from '../entries/where-it-stands';

type Noted = 'jar' | 'hold' | 'batch' | 'portion';

/** Notes by key, where anything was noted. */
export function notesOf({ db }: Rows, kind: Noted): ReadonlyMap<number, string> {
  const noted = db.prepare(
    `SELECT ${kind}, text FROM remark WHERE ${kind} IS NOT NULL AND field = 'note' ORDER BY key DESC`,
  );
  return new Map(noted.raw().all() as [number, string][]);
}

/** What milk each jar was made of, by key; null where nobody said. */
export function milks({ db }: Rows): ReadonlyMap<number, string | null> {
  const all = db.prepare(
    'SELECT j.key, m.name FROM jar j LEFT JOIN milk m ON m.jar = j.key ORDER BY j.key, m.key DESC',
  );
  return new Map(all.raw().all() as [number, string | null][]);
}

/** How jars were made, as judgement asks it (JarRecord). @param jar one of them, or null for all */
export function madeOf({ db }: Rows, jar: number | null): ReadonlyMap<number, JarRecord['made']> {
  const all = db.prepare(`
    SELECT j.key, j.vessel, (SELECT u.package FROM milk m JOIN use u ON u.milk = m.key WHERE m.jar = j.key ORDER BY u.key LIMIT 1),
      (SELECT coalesce(s.part, p.part) FROM seeding s LEFT JOIN portion p ON p.key = s.portion
        WHERE s.jar = j.key AND coalesce(s.part, p.part) IS NOT NULL LIMIT 1),
      (SELECT sum(coalesce(a.actual_v, a.planned_v)) FROM addition a WHERE a.jar = j.key),
      (SELECT min(coalesce(a.actual_u, a.planned_u, '')) FROM addition a WHERE a.jar = j.key),
      (SELECT max(coalesce(a.actual_u, a.planned_u, '')) FROM addition a WHERE a.jar = j.key)
    FROM jar j ${jar === null ? '' : 'WHERE j.key = ?'}`);
  type Found = [number, string | null, number | null, JarRecord['made']['seedPart'], number | null, string | null, string | null];
  return new Map(
    (all.raw().all(...(jar === null ? [] : [jar])) as Found[]).map(([key, vessel, carton, seedPart, dose, least, most]) => [
      key,
      { vessel, carton, seedPart, dose: dose !== null && least === most && least ? { value: dose, unit: least } : null },
    ]),
  );
} // prettier-ignore

/** Keys of the jars that are gone since a day that was told. */
export function goneJars(rows: Rows): ReadonlySet<number> {
  const ended = rows
    .prepare(
      "SELECT DISTINCT jar FROM movement WHERE jar IS NOT NULL AND kind IN ('gone', 'given', 'discarded')",
    )
    .pluck()
    .all() as number[];
  return new Set(ended.filter((jar) => whereabouts(rows.where('movement', 'jar', jar)).goneOn !== null));
}

/** Batches of which both a bath and a jar were read. */
export const batchesReadTwice = (rows: Rows): readonly number[] =>
  rows
    .prepare(
      `SELECT h.batch FROM series s JOIN hold h ON h.key = s.hold JOIN reading_block b ON b.key = s.block
        WHERE s.place IN ('bath', 'jar') AND b.n > 1 AND h.batch IS NOT NULL
        GROUP BY h.batch HAVING count(DISTINCT s.place) = 2`,
    )
    .pluck()
    .all() as number[];

/** Amounts of all seedings, or of those of some jars, by seeding key. */
export function seedingAmounts({ db }: Rows, jars: readonly number[] | null): ReadonlyMap<number, Amount> {
  const amounts = new Map<number, Amount>();
  const rows = db
    .prepare(
      `SELECT key, actual_v AS amount_value, actual_u AS amount_unit, actual_t AS amount_typed
         FROM seeding WHERE actual_v IS NOT NULL
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
