// Acts: the only way anything recorded changes. `acts.run(kind, subject, why, work)` opens an act in a transaction of
// its own and hands `work` an OpenAct that writes rows; the tables' triggers keep the form there was before each change.
// If `work` throws, or changed nothing, not even the act is left. Statements are prepared once per kind, so 100,000 rows
// go in as one transaction. What is pointed at goes in before what points at it.
import Database from 'better-sqlite3';
import type { ActKind } from '../../../core/ledger/act-words';
import { storedMoment } from '../../../core/ledger/stored-moments';
import type { Clock } from '../clock';
import { Refused } from '../../refusal';
import type { Rows } from './fact-rows';
import { Waiting } from './waiting';
import {
  columnsOf,
  type Columns,
  type FactKind,
  type Stored,
  tableOf,
  toColumns,
  type Value,
  valuesOf,
} from './tables';

export interface Made {
  readonly key: number;
  readonly uid: string;
}

/** Where a record comes from that was not made here: its id, its home ledger's key and the number of its form there. */
export interface Origin {
  readonly uid: string;
  readonly home: number;
  readonly homeForm: number;
}

/** A row that the tables refused. @property key of the row there is; null where it would be new */
export interface RefusedRow {
  readonly kind: FactKind;
  readonly key: number | null;
  readonly columns: Columns;
}
/** Says which rule a refused row would break. @throws Refused where one does */
type Explain = (act: number, row: RefusedRow) => void;

/** What an act is, before it is opened. */
export interface Chosen {
  readonly kind: ActKind;
  readonly subject: string;
  readonly why: string | null;
  /** Key of the act whose inverse it is. */
  readonly undoes: number | null;
  /** The keeper's word on two equal labels; null where the call can't say so. */
  readonly sameLabelMeant?: boolean | null;
}

/** Writes rows under an open act. Lives only inside `acts.run`. */
export class OpenAct {
  readonly #newId: () => string;
  readonly #inserts = new Map<FactKind, Database.Statement>();
  readonly #explain: Explain;
  #waiting: Waiting | null = null;

  constructor(
    readonly key: number,
    readonly uid: string,
    readonly rows: Rows,
    newId: () => string,
    explain: Explain = () => undefined,
  ) {
    this.#newId = newId;
    this.#explain = explain;
  }

  /** Writes a row. Where the tables' own rules refuse it, the rule book is asked for the sentence. */
  #write(kind: FactKind, key: number | null, columns: () => Columns, write: () => void): void {
    try {
      write();
    } catch (error) {
      if (error instanceof Database.SqliteError) this.#explain(this.key, { kind, key, columns: columns() });
      throw error;
    }
  }

  /** From here on new facts are written together (waiting.ts): for an act that adds thousands. */
  together(): void {
    const waiting = new Waiting(this.rows, this.key, (kind, { key, values }) =>
      this.#row(kind, key, values, () =>
        Object.fromEntries(columnsOf(kind).map((column, at) => [column, values[at] ?? null])),
      ),
    );
    this.#waiting = waiting;
    this.rows.writeWaiting = () => waiting.write();
  }

  /** Adds a fact; it points at others by key, and what is left out is null. Its id is made here. */
  insert<K extends FactKind>(kind: K, fact: Partial<Stored<K>>): Made {
    const uid = this.#newId();
    if (this.#waiting) return { key: this.#waiting.add(kind, uid, valuesOf(kind, fact)), uid };
    const { lastInsertRowid } = this.rows
      .prepare('INSERT INTO record (uid, kind, made_in) VALUES (?, ?, ?)')
      .run(uid, tableOf(kind), this.key);
    return { key: this.#new(kind, Number(lastInsertRowid), fact), uid };
  }

  /** Adds a fact that comes from another ledger, under the id that it has there. */
  insertFrom<K extends FactKind>(kind: K, fact: Partial<Stored<K>>, { uid, home, homeForm }: Origin): Made {
    if (this.#waiting) throw new Error('what comes from elsewhere is written one by one');
    const { lastInsertRowid } = this.rows
      .prepare('INSERT INTO record (uid, kind, made_in, home, home_form) VALUES (?, ?, ?, ?, ?)')
      .run(uid, tableOf(kind), this.key, home, homeForm);
    return { key: this.#new(kind, Number(lastInsertRowid), fact), uid };
  }

  #new<K extends FactKind>(kind: K, key: number, fact: Partial<Stored<K>>): number {
    this.#row(kind, key, valuesOf(kind, fact), () => toColumns(kind, fact));
    return key;
  }

  #row(kind: FactKind, key: number, values: readonly Value[], columns: () => Columns): void {
    let insert = this.#inserts.get(kind);
    if (!insert) {
      const names = columnsOf(kind);
      insert = this.rows.prepare(
        `INSERT INTO ${tableOf(kind)} (key, ${names.join(', ')}) VALUES (?${', ?'.repeat(names.length)})`,
      );
      this.#inserts.set(kind, insert);
    }
    const statement = insert;
    this.#write(kind, null, columns, () => statement.run(key, values));
  }

  /** Changes the given fields of a fact. Where none is different nothing is written. @returns whether any was */
  update<K extends FactKind>(kind: K, key: number, changes: Partial<Stored<K>>): boolean {
    return this.updateColumns(kind, key, toColumns(kind, changes));
  }

  /** Like update, by columns. */
  updateColumns(kind: FactKind, key: number, columns: Columns): boolean {
    const now = this.rows.columnsNow(kind, key);
    if (!now) throw new Error(`no ${kind} ${key}`);
    const different = Object.keys(columns).filter((name) => columns[name] !== now[name]);
    if (different.length === 0) return false;
    const update = this.rows.prepare(
      `UPDATE ${tableOf(kind)} SET ${different.map((name) => `${name} = ?`).join(', ')} WHERE key = ?`,
    );
    const values = different.map((name) => columns[name] as Value);
    this.#write(
      kind,
      key,
      () => ({ ...now, ...columns }),
      () => update.run(values, key),
    );
    return true;
  }

  /** Takes a fact away; its record stays, with the act that ended it. */
  remove(kind: FactKind, key: number): void {
    this.rows.prepare(`DELETE FROM ${tableOf(kind)} WHERE key = ?`).run(key);
  }

  /** Puts a fact back that was taken away, under its key and id. */
  bringBack(kind: FactKind, key: number, form: Columns): void {
    const columns = columnsOf(kind).filter((column) => form[column] !== undefined);
    const names = ['key', ...columns];
    const insert = this.rows.prepare(
      `INSERT INTO ${tableOf(kind)} (${names.join(', ')}) VALUES (?${', ?'.repeat(columns.length)})`,
    );
    const values = columns.map((column) => form[column] as Value);
    this.#write(
      kind,
      null,
      () => form,
      () => insert.run(key, values),
    );
  }

  /** Remembers the number that a record's form has in its home ledger. Called once the row holds that form. */
  learnHomeForm(key: number, homeForm: number | null): void {
    this.rows
      .prepare('UPDATE record SET home_form = ? WHERE key = ? AND home <> 1 AND home_form IS NOT ?')
      .run(homeForm, key, homeForm);
  }
}

export interface Done<T> {
  readonly act: Made;
  readonly value: T;
}

export class Acts {
  /** Asks the rule book about an act, inside its transaction. @throws Refused */
  ask: (act: number, chosen: Chosen) => void = () => undefined;
  /** Called inside the transaction after the rule book: may still refuse. Its answer is called after the commit. */
  settle: (act: number) => () => void = () => () => undefined;
  /** Says which rule a row would break that the tables have not taken. @throws Refused where one does */
  explain: Explain = () => undefined;
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
    sameLabelMeant: boolean | null = null,
  ): Done<T> | null {
    return this.runChosen(() => ({ kind, subject, why, undoes, sameLabelMeant }), work);
  }

  /**
   * Like run, for an act that is chosen by what is there: in its own transaction, so that nobody writes in between.
   * @param choose says what act it is to be; may throw Refused
   */
  runChosen<C extends Chosen, T>(choose: () => C, work: (act: OpenAct, chosen: C) => T): Done<T> | null {
    if (this.#open) throw new Error('an act is open already');
    const { db } = this.rows;
    this.#open = true;
    try {
      db.exec('BEGIN IMMEDIATE');
      const chosen = choose();
      const { kind, subject, why, undoes } = chosen;
      const uid = this.newId();
      const { seconds, offset } = storedMoment(this.clock.now());
      const { lastInsertRowid } = this.rows
        .prepare('INSERT INTO act (uid, kind, at, at_off, subject, why, undoes) VALUES (?, ?, ?, ?, ?, ?, ?)')
        .run(uid, kind, seconds, offset, subject.slice(0, 500), why, undoes);
      const key = Number(lastInsertRowid);
      this.rows.prepare('UPDATE open_act SET act = ? WHERE one = 1').run(key);
      const value = work(new OpenAct(key, uid, this.rows, this.newId, this.explain), chosen);
      this.rows.writeWaiting?.();
      this.rows.prepare('UPDATE open_act SET act = NULL WHERE one = 1').run();
      if (!this.#changedAnything(key)) {
        db.exec('ROLLBACK');
        return null;
      }
      this.ask(key, chosen);
      const settled = this.settle(key);
      // From here on it can't be taken back.
      this.rows.look = null;
      db.exec('COMMIT');
      this.kept += 1;
      settled();
      return { act: { key, uid }, value };
    } catch (error) {
      if (db.inTransaction) db.exec('ROLLBACK');
      throw error;
    } finally {
      this.rows.writeWaiting = null;
      this.#open = false;
    }
  }

  #changedAnything(act: number): boolean {
    const made = this.rows.prepare('SELECT 1 FROM record WHERE made_in = ? LIMIT 1').get(act);
    return (made ?? this.rows.prepare('SELECT 1 FROM journal WHERE act = ? LIMIT 1').get(act)) !== undefined;
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
    sameLabelMeant: boolean | null = null,
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
}
