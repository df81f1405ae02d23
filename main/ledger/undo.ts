// Undo and redo. Undoing writes a new act with the inverse images of one whole act; redoing undoes that undo. Nothing
// is kept in memory, so it works the same after a restart. Refused, with names, where later facts stand on it.
import { actWords } from '../../core/ledger/act-words';
import type { RecordKind } from '../../core/ledger/records';
import { type Acts, type Change, changeFrom, type Done, type JournalRow, type OpenAct } from './acts';
import { Refused } from './refusal';
import type { Rows } from './rows';
import { refuseDay, refuseSeed } from './seed-rules';
import { type Columns, TABLES, type Value } from './tables';

export interface ActRow {
  readonly key: number;
  readonly uid: string;
  readonly kind: string;
  readonly at: string;
  readonly subject: string;
  readonly why: string | null;
  readonly undoes: number | null;
}

export const wordsOf = (act: ActRow): string => actWords(act.kind, act.subject);

/** Keys of the acts that are undone as things stand. An undo that was itself undone counts no more. */
export function undoneActs(rows: Rows): ReadonlySet<number> {
  const undone = new Set<number>();
  const undos = rows.prepare('SELECT key, undoes FROM act WHERE undoes IS NOT NULL ORDER BY key DESC').all();
  for (const { key, undoes } of undos as { key: number; undoes: number }[]) {
    if (!undone.has(key)) undone.add(undoes);
  }
  return undone;
}

const actByKey = (rows: Rows, key: number): ActRow =>
  rows.prepare('SELECT * FROM act WHERE key = ?').get(key) as ActRow;

/** The act that undo, asked for nothing in particular, would undo. Preferences are no part of it. */
export function nextUndo(rows: Rows): ActRow | null {
  const undone = undoneActs(rows);
  const acts = rows.db
    .prepare("SELECT * FROM act WHERE undoes IS NULL AND kind <> 'preferences.save' ORDER BY key DESC")
    .iterate() as IterableIterator<ActRow>;
  for (const act of acts) if (!undone.has(act.key)) return act;
  return null;
}

/** The undo that redo would undo: the latest that stands, as long as nothing was recorded after it. */
export function nextRedo(rows: Rows): ActRow | null {
  const undone = undoneActs(rows);
  const last = rows.count("SELECT max(key) FROM act WHERE undoes IS NULL AND kind <> 'preferences.save'");
  const undos = rows.db
    .prepare("SELECT * FROM act WHERE kind = 'act.undo' AND key > ? ORDER BY key DESC")
    .iterate(last) as IterableIterator<ActRow>;
  for (const act of undos) if (!undone.has(act.key)) return act;
  return null;
}

/**
 * Undoes an act, or does again what an undo took away.
 * @param uid of the act; null: the latest
 * @throws Refused 'nothing to undo', 'not found', 'undone already', 'stands on it' and the rules of seeds
 */
export function undo(acts: Acts, uid: string | null): Done<string> {
  const { rows } = acts;
  if (uid === null) {
    const next = nextUndo(rows);
    if (!next) throw new Refused('nothing to undo');
    return invert(acts, next, 'act.undo', wordsOf(next));
  }
  const asked = rows.prepare('SELECT * FROM act WHERE uid = ?').get(uid) as ActRow | undefined;
  if (!asked) throw new Refused('not found', { kind: 'act' });
  // Undoing an undo is doing again; undoing a redo is undoing what it did again.
  let root = asked;
  let depth = 0;
  for (; root.undoes !== null; depth++) root = actByKey(rows, root.undoes);
  const undone = undoneActs(rows);
  if (depth % 2 === 0) {
    if (undone.has(root.key)) throw new Refused('undone already', { says: wordsOf(root) });
    return invert(acts, root, 'act.undo', wordsOf(root));
  }
  if (undone.has(asked.key)) throw new Refused('undone already', { says: wordsOf(asked) });
  return invert(acts, asked, 'act.redo', wordsOf(root));
}

/** @throws Refused 'nothing to redo', 'stands on it' and the rules of seeds */
export function redo(acts: Acts): Done<string> {
  const next = nextRedo(acts.rows);
  if (!next || next.undoes === null) throw new Refused('nothing to redo');
  return invert(acts, next, 'act.redo', wordsOf(actByKey(acts.rows, next.undoes)));
}

function invert(acts: Acts, target: ActRow, kind: 'act.undo' | 'act.redo', subject: string): Done<string> {
  const { rows } = acts;
  refuseLater(rows, target);
  const done = acts.run(
    kind,
    subject,
    null,
    (act) => {
      for (const change of journal(rows, target.key, 'DESC')) invertChange(rows, act, change);
      return actWords(kind, subject);
    },
    target.key,
  );
  if (!done) throw new Refused('nothing changed');
  return done;
}

function* journal(rows: Rows, act: number, order: 'ASC' | 'DESC'): Generator<Change> {
  // Page by page: while a statement is being iterated, better-sqlite3 lets nothing be written.
  const page = rows.prepare(
    order === 'DESC'
      ? 'SELECT * FROM journal WHERE act = ? AND key < ? ORDER BY key DESC LIMIT 500'
      : 'SELECT * FROM journal WHERE act = ? AND key > ? ORDER BY key LIMIT 500',
  );
  let from = order === 'DESC' ? Number.MAX_SAFE_INTEGER : 0;
  for (;;) {
    const found = page.all(act, from) as (JournalRow & { key: number })[];
    for (const row of found) yield changeFrom(row);
    if (found.length < 500) return;
    from = found[found.length - 1]?.key ?? from;
  }
}

const rowName = (change: Change): string => `${change.kind} ${change.key}`;

/** Whether a row is now as an image shows it. Revisions don't count: they only ever rise. */
function isNow(rows: Rows, { kind, key }: Change, image: Columns | null): boolean {
  const now = rows.prepare(`SELECT * FROM ${TABLES[kind].table} WHERE key = ?`).get(key) as
    Columns | undefined;
  if (!now || !image) return !now && !image;
  return Object.entries(now).every(
    ([column, value]) => column === 'revision' || value === (image[column] ?? null),
  );
}

/** @throws Refused 'stands on it', naming the later acts */
function refuseLater(rows: Rows, target: ActRow): void {
  const later = new Set<number>();
  const seen = new Set<string>();
  for (const change of journal(rows, target.key, 'DESC')) {
    if (seen.has(rowName(change))) continue;
    seen.add(rowName(change));
    if (!isNow(rows, change, change.after)) addActs(rows, later, change.kind, change.key, target.key);
  }
  const made = new Map<RecordKind, Set<number>>();
  const first = new Set<string>();
  for (const change of journal(rows, target.key, 'ASC')) {
    if (first.has(rowName(change))) continue;
    first.add(rowName(change));
    if (change.before === null) {
      const keys = made.get(change.kind) ?? new Set<number>();
      keys.add(change.key);
      made.set(change.kind, keys);
    }
  }
  for (const [kind, keys] of made) {
    for (const { from, column } of referrers(rows, kind)) {
      const find = rows.prepare(`SELECT key FROM ${TABLES[from].table} WHERE ${column} = ?`).pluck();
      for (const key of keys) {
        for (const referrer of find.all(key) as number[]) {
          if (!made.get(from)?.has(referrer)) addActs(rows, later, from, referrer, target.key);
        }
      }
    }
  }
  if (later.size === 0) return;
  const undone = undoneActs(rows);
  const named = [...later].filter((key) => !undone.has(key)).toSorted((a, b) => a - b);
  const says = [
    ...new Set((named.length > 0 ? named : [...later]).map((key) => wordsOf(actByKey(rows, key)))),
  ];
  throw new Refused('stands on it', {
    later: says.length > 5 ? [...says.slice(0, 5), `and ${says.length - 5} more`] : says,
  });
}

function addActs(rows: Rows, acts: Set<number>, kind: RecordKind, key: number, after: number): void {
  const found = rows
    .prepare('SELECT DISTINCT act FROM journal WHERE table_name = ? AND row_key = ? AND act > ?')
    .pluck()
    .all(TABLES[kind].table, key, after);
  for (const act of found) acts.add(Number(act));
}

/** Which columns of which tables point at a kind. */
function referrers(rows: Rows, kind: RecordKind): { from: RecordKind; column: string }[] {
  return (Object.keys(TABLES) as RecordKind[]).flatMap((from) =>
    (rows.db.pragma(`foreign_key_list(${TABLES[from].table})`) as { table: string; from: string }[])
      .filter(({ table }) => table === TABLES[kind].table)
      .map(({ from: column }) => ({ from, column })),
  );
}

function invertChange(rows: Rows, act: OpenAct, { kind, key, before, after }: Change): void {
  const { table } = TABLES[kind];
  if (before === null) {
    act.remove(kind, key);
    return;
  }
  if (kind === 'seeding' && before.from_jar !== undefined) {
    refuseSeed(rows, Number(before.jar), Number(before.from_jar));
  }
  if (kind === 'batch' && typeof before.made_on === 'string') refuseDay(rows, key, before.made_on);
  if (after === null) {
    const uid = String(before.uid);
    const revision = rows.count('SELECT revision FROM tombstone WHERE uid = ?', uid) + 1;
    const columns = Object.keys(before);
    rows
      .prepare(
        `INSERT INTO ${table} (revision, ${columns.join(', ')}) VALUES (?${', ?'.repeat(columns.length)})`,
      )
      .run(
        revision,
        columns.map((column) => before[column] as Value),
      );
    return;
  }
  const columns = [...new Set([...Object.keys(before), ...Object.keys(after)])].filter(
    (column) => before[column] !== after[column],
  );
  if (columns.length === 0) return;
  rows
    .prepare(
      `UPDATE ${table} SET revision = revision + 1, ${columns.map((column) => `${column} = ?`).join(', ')} WHERE key = ?`,
    )
    .run(
      columns.map((column) => before[column] ?? null),
      key,
    );
}
