// What a spoiled jar may no longer be: seed, or seed kept back. What was done before anyone knew stays history.
import { isSpoiled } from '../../../core/ledger/gate';
import type { Ledger } from '../ledger';
import { Refused } from '../refusal';
import type { Columns } from '../tables';

/** Whether what was seen of a jar means that it is spoiled. */
export function jarSpoiled(ledger: Ledger, jar: number): boolean {
  const [outcome] = ledger.rows.where('outcome', 'jar', jar);
  return outcome !== undefined && isSpoiled(outcome);
}

/** Columns of an outcome that decide whether it means *spoiled*. */
const DECIDING = ['signs', 'spoiled_said', 'set_at_take_out', 'ph', 'ph_how'] as const;
const form = (json: string | null): Columns => (json === null ? {} : (JSON.parse(json) as Columns));

/** The day on which the ledger was told that a jar is spoiled, by the act's own clock; null where it is not spoiled. */
function knownSpoiledOn(ledger: Ledger, jar: number): string | null {
  const [outcome] = ledger.rows.where('outcome', 'jar', jar);
  if (outcome === undefined || !isSpoiled(outcome)) return null;
  const written = ledger.rows
    .prepare(
      `SELECT j.before, j.after, a.at FROM journal j JOIN act a ON a.key = j.act
       WHERE j.table_name = 'outcome' AND j.row_key = ? ORDER BY j.key DESC`,
    )
    .all(outcome.key) as { before: string | null; after: string | null; at: string }[];
  const told = written.find(({ before, after }) => {
    const [was, is] = [form(before), form(after)];
    return DECIDING.some((column) => was[column] !== is[column]);
  });
  return told?.at.slice(0, 10) ?? null;
}

/**
 * Refuses a jar as seed that was known to be spoiled when the seeded jar was made. One made on an earlier day may be
 * written down: it is history, and its caution depends on it.
 * @throws Refused 'seed spoiled'
 */
export function refuseSpoiledSeed(ledger: Ledger, jar: number, seed: number): void {
  const known = knownSpoiledOn(ledger, seed);
  if (known === null) return;
  const madeOn = ledger.rows
    .prepare('SELECT b.made_on FROM jar j JOIN batch b ON b.key = j.batch WHERE j.key = ?')
    .pluck()
    .get(jar) as string | null;
  if (madeOn === null || madeOn < known) return;
  throw new Refused('seed spoiled', { seed: ledger.index.jar(seed).label, known });
}
