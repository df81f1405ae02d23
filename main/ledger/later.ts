// What was written after an act, and which of it stands on what the act did. Reads only. Costs as much as was written
// later: undoing the newest act, however large, asks nothing of its rows, since no row changes without the journal.
import type { RecordKind } from '../../core/ledger/records';
import { kindOfTable } from './acts';
import type { Rows } from './rows';
import { type Columns, TABLES } from './tables';

export interface LaterRow {
  readonly kind: RecordKind;
  readonly key: number;
}

/** Rows that acts after this one wrote, each once. */
export function touchedSince(rows: Rows, act: number): LaterRow[] {
  const found = rows.prepare('SELECT DISTINCT table_name, row_key FROM journal WHERE act > ?').all(act) as {
    table_name: string;
    row_key: number;
  }[];
  return found.map(({ table_name, row_key }) => ({ kind: kindOfTable(table_name), key: row_key }));
}

interface Written {
  /** The row's form after the act, null where the act took it away. */
  readonly after: Columns | null;
  /** Whether the act made the row. */
  readonly made: boolean;
}

/** What an act did to one row, or null where it left it alone. */
function writtenBy(rows: Rows, act: number, { kind, key }: LaterRow): Written | null {
  const images = rows
    .prepare(
      'SELECT before, after FROM journal WHERE table_name = ? AND row_key = ? AND act = ? ORDER BY key',
    )
    .all(TABLES[kind].table, key, act) as { before: string | null; after: string | null }[];
  const [first] = images;
  const last = images.at(-1);
  if (!first || !last) return null;
  return {
    after: last.after === null ? null : (JSON.parse(last.after) as Columns),
    made: first.before === null,
  };
}

const rowOf = (rows: Rows, { kind, key }: LaterRow): Columns | undefined =>
  rows.prepare(`SELECT * FROM ${TABLES[kind].table} WHERE key = ?`).get(key) as Columns | undefined;

/** Whether a row is as an image shows it. Revisions don't count: they only ever rise. */
function isAs(now: Columns | undefined, image: Columns | null): boolean {
  if (!now || !image) return !now && !image;
  return Object.entries(now).every(
    ([column, value]) => column === 'revision' || value === (image[column] ?? null),
  );
}

/**
 * Keys of the later acts that stand on what an act did, oldest first: those that changed its rows again, and those whose
 * records point at a row that it made.
 * @param later from touchedSince
 */
export function standsOn(rows: Rows, act: number, later: readonly LaterRow[]): number[] {
  const acts = new Set<number>();
  for (const row of later) {
    const written = writtenBy(rows, act, row);
    const now = rowOf(rows, row);
    const stands = written
      ? !isAs(now, written.after)
      : now !== undefined && pointsAtMade(rows, act, row.kind, now);
    if (!stands) continue;
    const since = rows
      .prepare('SELECT DISTINCT act FROM journal WHERE table_name = ? AND row_key = ? AND act > ?')
      .pluck()
      .all(TABLES[row.kind].table, row.key, act);
    for (const one of since) acts.add(Number(one));
  }
  return [...acts].toSorted((a, b) => a - b);
}

/** Whether one of a row's references leads to a row that the act made. */
function pointsAtMade(rows: Rows, act: number, kind: RecordKind, row: Columns): boolean {
  return referencesOf(rows, kind).some(({ column, to }) => {
    const key = row[column];
    return typeof key === 'number' && writtenBy(rows, act, { kind: to, key })?.made === true;
  });
}

/** Which columns of a kind point at which other kind. */
function referencesOf(rows: Rows, kind: RecordKind): { column: string; to: RecordKind }[] {
  const keys = rows
    .prepare(`SELECT "table" AS name, "from" AS source FROM pragma_foreign_key_list('${TABLES[kind].table}')`)
    .all() as { name: string; source: string }[];
  return keys.map(({ name, source }) => ({ column: source, to: kindOfTable(name) }));
}
