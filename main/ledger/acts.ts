// Acts: the only way anything recorded changes. `acts.run(kind, subject, why, work)` opens an act in a transaction of
// its own and hands `work` an OpenAct that writes rows; the tables' triggers keep each row's form before and after.
// If `work` throws, or changed nothing, not even the act is left.
//
// For bringing in notes (main/ledger/notes.ts) – one import is one act, whatever its size:
//
//   const done = acts.run('notes.bringIn', 'kitchen-notes.csv', null, (act) => {
//     const batch = act.insert('batch', { madeOn, word, note });              // → { key, uid }
//     const jar = act.insert('jar', { batch: batch.key, letter, … });         // records with keys, not uids
//     act.insert('seeding', { jar: jar.key, fromJar: seedKey, … });
//     act.insert('noteRow', { file, fingerprint, occurrence, line, jar: jar.key });
//     if (row % 500 === 0) job.step(row, rows);  // throws Refused('cancelled') → everything is rolled back
//   });
//   done === null when nothing was new: then there is no act either.
//
// Statements are prepared once per kind, so 100,000 rows go in as one transaction. Seeds go in before what they
// seeded. Look-ups: `rows` (main/ledger/rows.ts) for records by key or column; `jarsOfDay` below for jars by day;
// `noteRowsOf` for the rows of a file that came in before.
import Database from 'better-sqlite3';
import type { ActKind } from '../../core/ledger/act-words';
import type { RecordKind } from '../../core/ledger/records';
import type { Clock } from './clock';
import { Refused } from './refusal';
import type { Rows } from './rows';
import type { Asked } from './rules/ask';
import type { Pending } from './rules/load';
import {
  type Columns,
  columnsOf,
  fromColumns,
  type NoteRow,
  type Row,
  type Stored,
  TABLES,
  toColumns,
  type Value,
  valuesOf,
} from './tables';

export interface Made {
  readonly key: number;
  readonly uid: string;
}

/** What one act changed in one row, as the journal keeps it. */
export interface Change {
  readonly kind: RecordKind;
  readonly key: number;
  readonly before: Columns | null;
  readonly after: Columns | null;
}

/** Writes rows under an open act. Lives only inside `acts.run`. */
export class OpenAct {
  readonly #rows: Rows;
  readonly #newId: () => string;
  readonly #inserts = new Map<RecordKind, Database.Statement>();
  readonly #explain: (pending: Pending) => void;

  constructor(
    readonly key: number,
    readonly uid: string,
    rows: Rows,
    newId: () => string,
    explain: (pending: Pending) => void,
  ) {
    this.#rows = rows;
    this.#newId = newId;
    this.#explain = explain;
  }

  /**
   * Writes what the tables' own rules may refuse: the rule book is then asked for the sentence.
   * @param columns the row as it would be
   * @throws Refused; the table's own error where no rule of the book says why
   */
  guarded<T>(kind: RecordKind, key: number | null, columns: () => Columns, write: () => T): T {
    try {
      return write();
    } catch (error) {
      const pending = error instanceof Database.SqliteError ? pendingRow(kind, key, columns()) : null;
      if (pending) this.#explain(pending);
      throw error;
    }
  }

  /** Adds a record; refs are keys. The record's uid is made here. */
  insert<K extends RecordKind>(kind: K, record: Stored[K]): Made {
    let insert = this.#inserts.get(kind);
    if (!insert) {
      const columns = columnsOf(kind);
      insert = this.#rows.prepare(
        `INSERT INTO ${TABLES[kind].table} (uid, ${columns.join(', ')})
         VALUES (?${', ?'.repeat(columns.length)})`,
      );
      this.#inserts.set(kind, insert);
    }
    const uid = this.#newId();
    const statement = insert;
    const { lastInsertRowid } = this.guarded(
      kind,
      null,
      () => toColumns(kind, record),
      () => statement.run(uid, valuesOf(kind, record)),
    );
    return { key: Number(lastInsertRowid), uid };
  }

  /** Changes the given fields of a record. Where none is different nothing is written. @returns whether any was. */
  update<K extends RecordKind>(kind: K, key: number, changes: Partial<Stored[K]>): boolean {
    const columns = toColumns(kind, changes);
    const names = Object.keys(columns);
    const now = this.#rows.prepare(`SELECT * FROM ${TABLES[kind].table} WHERE key = ?`).get(key) as
      Columns | undefined;
    if (!now) throw new Error(`no ${kind} ${key}`);
    const different = names.filter((name) => columns[name] !== now[name]);
    if (different.length === 0) return false;
    const update = this.#rows.prepare(
      `UPDATE ${TABLES[kind].table}
         SET revision = revision + 1, ${different.map((name) => `${name} = ?`).join(', ')} WHERE key = ?`,
    );
    this.guarded(
      kind,
      key,
      () => ({ ...now, ...columns }),
      () =>
        update.run(
          different.map((name) => columns[name] as Value),
          key,
        ),
    );
    return true;
  }

  /** Takes a record away; a tombstone with its uid stays. */
  remove(kind: RecordKind, key: number): void {
    this.#rows.prepare(`DELETE FROM ${TABLES[kind].table} WHERE key = ?`).run(key);
  }
}

/** A row as the rule book looks at it where the tables have not taken it; null where no table would refuse such a row. */
function pendingRow(kind: RecordKind, key: number | null, columns: Columns): Pending | null {
  if (kind === 'batch' && key !== null)
    return { day: { batch: key, madeOn: (columns.made_on ?? null) as string | null } };
  if (kind === 'outcome') {
    const { jar, ph, earlyPh, setAfterHours, setByHours, setAtTakeOut } = fromColumns('outcome', columns);
    const acidity = [ph, earlyPh].filter((one) => one !== null);
    return {
      observation: { jar, acidity, setAfterHours, setByHours, setAtTakeOut, toldOn: null, daysOpen: null },
    };
  }
  if (kind !== 'seeding') return null;
  const { jar, fromJar, portion, amount } = fromColumns('seeding', columns);
  return { seeding: { jar, fromJar, portion, amount } };
}

export interface Done<T> {
  readonly act: Made;
  readonly value: T;
}

/** The keeper's word on two equal labels; null where the call can't say so. */
type Meant = boolean | null;

export class Acts {
  /** Asks the rule book about an act, inside its transaction. @throws Refused */
  ask: (asked: Asked) => void = () => undefined;
  /** Says which rule a row would break that the tables have not taken. @throws Refused where one does */
  explain: (act: number, pending: Pending) => void = () => undefined;
  /** Called inside the transaction after the work: may still refuse. Its answer is called after the commit. */
  settle: (act: number) => () => void = () => () => undefined;
  /** How many acts this has kept: each is on the disk once it is counted. */
  kept = 0;
  #open = false;

  constructor(
    readonly rows: Rows,
    readonly clock: Clock,
    readonly newId: () => string,
  ) {}

  /**
   * One act in one transaction.
   * @param kind the call's name
   * @param subject what it is about, in words, with labels as they are now (cut at 500 characters)
   * @param why the keeper's reason, if given
   * @param work writes the rows; may throw Refused
   * @param undoes key of the act whose inverse this is
   * @param sameLabelMeant the keeper's word on two equal labels
   * @returns null when nothing was changed: then there is no act
   */
  run<T>(
    kind: ActKind,
    subject: string,
    why: string | null,
    work: (act: OpenAct) => T,
    undoes: number | null = null,
    sameLabelMeant: Meant = null,
  ): Done<T> | null {
    if (this.#open) throw new Error('an act is open already');
    const { db } = this.rows;
    this.#open = true;
    try {
      db.exec('BEGIN IMMEDIATE');
      const uid = this.newId();
      const { lastInsertRowid } = this.rows
        .prepare('INSERT INTO act (uid, kind, at, subject, why, undoes) VALUES (?, ?, ?, ?, ?, ?)')
        .run(uid, kind, this.clock.now(), subject.slice(0, 500), why, undoes);
      const key = Number(lastInsertRowid);
      this.rows.prepare('UPDATE open_act SET act = ? WHERE one = 1').run(key);
      const explain = (pending: Pending): void => this.explain(key, pending);
      const value = work(new OpenAct(key, uid, this.rows, this.newId, explain));
      this.rows.prepare('UPDATE open_act SET act = NULL WHERE one = 1').run();
      const changed = this.rows.prepare('SELECT 1 FROM journal WHERE act = ? LIMIT 1').get(key);
      if (changed === undefined) {
        db.exec('ROLLBACK');
        return null;
      }
      this.ask({ act: key, kind, why, sameLabelMeant });
      const settled = this.settle(key);
      db.exec('COMMIT');
      this.kept += 1;
      settled();
      return { act: { key, uid }, value };
    } catch (error) {
      if (db.inTransaction) db.exec('ROLLBACK');
      throw error;
    } finally {
      this.#open = false;
    }
  }

  /**
   * Like run, for a write that a keeper asked for.
   * @param draft key of the draft it was typed in: removed in the same act, so that it is never offered again
   * @throws Refused 'nothing changed'
   */
  mustRun<T>(
    kind: ActKind,
    subject: string,
    why: string | null,
    work: (act: OpenAct) => T,
    draft: string | null = null,
    sameLabelMeant: Meant = null,
  ): Done<T> {
    const drafted = (act: OpenAct): T => {
      const value = work(act);
      if (draft !== null) this.rows.prepare('DELETE FROM draft WHERE key = ?').run(draft);
      return value;
    };
    const done = this.run(kind, subject, why, drafted, null, sameLabelMeant);
    if (!done) throw new Refused('nothing changed');
    return done;
  }

  /** What an act changed, in order. */
  *changesOf(act: number): Generator<Change> {
    const rows = this.rows.db
      .prepare('SELECT table_name, row_key, before, after FROM journal WHERE act = ? ORDER BY key')
      .iterate(act);
    for (const row of rows as IterableIterator<JournalRow>) yield changeFrom(row);
  }

  /** Jars of a day that count as entered (mistakes left out), with their batch's word: to find a label. */
  jarsOfDay(day: string): { key: number; uid: string; letter: string; word: string | null; state: string }[] {
    return this.rows
      .prepare(
        `SELECT j.key, j.uid, j.letter, b.word, j.state FROM jar j JOIN batch b ON b.key = j.batch
         WHERE b.made_on = ? AND j.state <> 'mistake' ORDER BY j.key`,
      )
      .all(day) as ReturnType<Acts['jarsOfDay']>;
  }

  /** Rows that came in earlier from what is the same file. */
  noteRowsOf(file: string): Row<'noteRow'>[] {
    return this.rows.where('noteRow', 'file', file);
  }
}

export interface JournalRow {
  readonly table_name: string;
  readonly row_key: number;
  readonly before: string | null;
  readonly after: string | null;
}

const KIND_OF = new Map<string, RecordKind>(
  (Object.keys(TABLES) as RecordKind[]).map((kind) => [TABLES[kind].table, kind]),
);

/** The kind of record that lies in a table. */
export function kindOfTable(table: string): RecordKind {
  const kind = KIND_OF.get(table);
  if (!kind) throw new Error(`no record lies in a table ${table}`);
  return kind;
}

/** A journal row as a change. */
export function changeFrom(row: JournalRow): Change {
  return {
    kind: kindOfTable(row.table_name),
    key: row.row_key,
    before: row.before === null ? null : (JSON.parse(row.before) as Columns),
    after: row.after === null ? null : (JSON.parse(row.after) as Columns),
  };
}

export type { NoteRow };
