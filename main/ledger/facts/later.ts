// What was written after an act, and which of it stands on what the act did. Reads only. Costs as much as was written
// later: undoing the newest act, however large, asks nothing of its rows, since no row changes without the journal.
import { formAfter, formOf } from './changes';
import type { Rows } from './rows';
import { type Columns, type FactKind, kindOf, tableOf } from './tables';

export interface LaterRow {
  readonly kind: FactKind;
  readonly key: number;
}

/** Records that acts after this one made or changed, each once. */
export function touchedSince(rows: Rows, act: number): LaterRow[] {
  const found = rows
    .prepare(
      `SELECT r.key, r.kind FROM record r WHERE r.made_in > ?
        UNION SELECT r.key, r.kind FROM journal j JOIN record r ON r.key = j.record WHERE j.act > ?`,
    )
    .all(act, act) as { key: number; kind: string }[];
  return found.map(({ key, kind }) => ({ kind: kindOf(kind), key }));
}

/** Whether an act made a record or brought it back. */
function madeBy(rows: Rows, act: number, key: number): boolean {
  const made = rows.prepare('SELECT 1 FROM record WHERE key = ? AND made_in = ?').get(key, act);
  if (made !== undefined) return true;
  const first = rows
    .prepare('SELECT op FROM journal WHERE record = ? AND act = ? ORDER BY key LIMIT 1')
    .pluck()
    .get(key, act);
  return first === 'back';
}

/** The form in which an act left a record; undefined where it did nothing to it. */
function leftBy(rows: Rows, act: number, { kind, key }: LaterRow): Columns | null | undefined {
  const last = rows.count('SELECT max(key) FROM journal WHERE record = ? AND act = ?', key, act);
  if (last === 0 && !madeBy(rows, act, key)) return undefined;
  // Made there, and changed only later: the first form before is what was made.
  return formAfter(rows, kind, key, last);
}

/** Whether two forms are the same thing. What its home calls the form is no part of it. */
function sameForm(one: Columns | null, other: Columns | null): boolean {
  if (!one || !other) return !one && !other;
  const names = new Set([...Object.keys(one), ...Object.keys(other)]);
  names.delete('home_form');
  return [...names].every((name) => (one[name] ?? null) === (other[name] ?? null));
}

/**
 * Keys of the later acts that stand on what an act did, oldest first: those that changed its records again, and those
 * whose records point at one that it made.
 * @param later from touchedSince
 */
export function standsOn(rows: Rows, act: number, later: readonly LaterRow[]): number[] {
  const acts = new Set<number>();
  for (const row of later) {
    const left = leftBy(rows, act, row);
    const columns = rows.columnsNow(row.kind, row.key);
    const now = columns ? formOf(columns) : null;
    const stands =
      left === undefined ? now !== null && pointsAtMade(rows, act, row.kind, now) : !sameForm(now, left);
    if (!stands) continue;
    const since = rows
      .prepare(
        `SELECT made_in FROM record WHERE key = ? AND made_in > ?
          UNION SELECT act FROM journal WHERE record = ? AND act > ?`,
      )
      .pluck()
      .all(row.key, act, row.key, act);
    for (const one of since) acts.add(Number(one));
  }
  return [...acts].toSorted((a, b) => a - b);
}

/** Whether one of a row's references leads to a record that the act made. */
function pointsAtMade(rows: Rows, act: number, kind: FactKind, row: Columns): boolean {
  return referencesOf(rows, kind).some((column) => {
    const key = row[column];
    return typeof key === 'number' && madeBy(rows, act, key);
  });
}

/** Columns of a kind that point at a fact. One that points at a bare record outlives what it points at. */
function referencesOf(rows: Rows, kind: FactKind): string[] {
  return rows
    .prepare(
      `SELECT "from" FROM pragma_foreign_key_list('${tableOf(kind)}')
        WHERE "table" NOT IN ('record', 'ledger', 'reading_block')`,
    )
    .pluck()
    .all() as string[];
}
