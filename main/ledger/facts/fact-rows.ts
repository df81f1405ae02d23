// Reading rows as facts, with statements prepared once. Knows no call and changes nothing.
import type Database from 'better-sqlite3';
import { Refused } from '../../refusal';
import { type Columns, type FactKind, fromColumns, kindOf, type Row, tableOf } from './tables';

/** What each kind is called in a sentence. */
export const KIND_WORDS: { readonly [K in FactKind]: string } = {
  source: 'source',
  strain: 'strain',
  package: 'package',
  appliance: 'appliance',
  toolCheck: 'check of a tool',
  carries: 'allergen',
  setting: 'setting',
  batch: 'batch',
  jar: 'jar',
  milk: 'milk',
  addition: 'addition',
  portion: 'portion',
  seeding: 'seeding',
  use: 'use of a package',
  hold: 'hold',
  stay: 'stay',
  interruption: 'interruption',
  series: 'series of readings',
  observation: 'observation',
  acidity: 'pH',
  photograph: 'photograph',
  remark: 'remark',
  sign: 'sign',
  movement: 'movement',
  reason: 'reason',
  lift: 'lifted caution',
  liftKnew: 'what was known',
  choice: 'choice of seed',
  labResult: 'laboratory result',
  trial: 'trial',
  treatment: 'treatment',
  session: 'tasting',
  taster: 'taster',
  tasterAvoids: 'allergen of a taster',
  serving: 'serving',
  mark: 'mark',
  noteFile: 'file of notes',
  noteRow: 'row of notes',
  noteAnswer: 'answer about notes',
  reminderDone: 'reminder',
  received: 'received form',
  preferences: 'preferences',
};

export class Rows {
  readonly #prepared = new Map<string, Database.Statement>();
  readonly #db: Database.Database;
  /** Writes what an import has let wait (waiting.ts): called before anything is asked. */
  writeWaiting: (() => void) | null = null;
  /** Ends a job that the keeper has cancelled: called before anything is asked, until a commit begins. @throws Refused */
  look: (() => void) | null = null;

  constructor(db: Database.Database) {
    this.#db = db;
  }

  get db(): Database.Database {
    this.look?.();
    this.writeWaiting?.();
    return this.#db;
  }

  /** A statement, prepared once for each text; to be run before another is asked for. */
  prepare(sql: string): Database.Statement {
    this.look?.();
    this.writeWaiting?.();
    let statement = this.#prepared.get(sql);
    if (!statement) {
      statement = this.#db.prepare(sql);
      this.#prepared.set(sql, statement);
    }
    return statement;
  }

  /** Lets all prepared statements go, so that each is prepared anew. */
  forget(): void {
    this.#prepared.clear();
  }

  // CROSS JOIN keeps the order: the fact is found first, then its record by key.
  #select(kind: FactKind, where: string): string {
    return `SELECT t.*, r.uid FROM ${tableOf(kind)} t CROSS JOIN record r ON r.key = t.key ${where}`;
  }

  /** The fact with that key, or undefined. */
  find<K extends FactKind>(kind: K, key: number): Row<K> | undefined {
    const row = this.prepare(this.#select(kind, 'WHERE t.key = ?')).get(key);
    return row === undefined ? undefined : fromColumns(kind, row as Columns);
  }

  /** The fact with that key, which is known to be there. */
  get<K extends FactKind>(kind: K, key: number): Row<K> {
    const row = this.find(kind, key);
    if (!row) throw new Error(`no ${kind} ${key}`);
    return row;
  }

  /** All facts whose column (SQL name) equals the value, in the order in which they were entered. */
  where<K extends FactKind>(kind: K, column: string, value: number | string): Row<K>[] {
    return this.prepare(this.#select(kind, `WHERE t.${column} = ? ORDER BY t.key`))
      .all(value)
      .map((row) => fromColumns(kind, row as Columns));
  }

  /** All facts of a kind, one at a time: a large ledger never lies in memory twice. */
  *all<K extends FactKind>(kind: K): Generator<Row<K>> {
    // Not from the cache: a statement that is being iterated can't be used again before it ends.
    for (const row of this.db.prepare(this.#select(kind, 'ORDER BY t.key')).iterate()) {
      yield fromColumns(kind, row as Columns);
    }
  }

  /** A row's columns as they are now, without the id; undefined where it is gone. */
  columnsNow(kind: FactKind, key: number): Columns | undefined {
    return this.prepare(`SELECT * FROM ${tableOf(kind)} WHERE key = ?`).get(key) as Columns | undefined;
  }

  count(sql: string, ...values: (string | number)[]): number {
    return Number(
      this.prepare(sql)
        .pluck()
        .get(...values) ?? 0,
    );
  }

  /**
   * The key behind a permanent id.
   * @throws Refused 'not found'
   */
  keyOf(kind: FactKind, uid: string): number {
    const key = this.prepare('SELECT key FROM record WHERE uid = ? AND kind = ? AND gone_in IS NULL')
      .pluck()
      .get(uid, tableOf(kind));
    if (typeof key !== 'number') throw new Refused('not found', { kind: KIND_WORDS[kind] });
    return key;
  }

  /** Like keyOf, with null for null. */
  keyOrNull(kind: FactKind, uid: string | null): number | null {
    return uid === null ? null : this.keyOf(kind, uid);
  }

  /** Kind and key behind an id, also of what is gone; undefined where there never was such a record. */
  recordOf(uid: string): { kind: FactKind; key: number; gone: boolean } | undefined {
    const found = this.prepare('SELECT key, kind, gone_in FROM record WHERE uid = ?').get(uid) as
      { key: number; kind: string; gone_in: number | null } | undefined;
    return found && { kind: kindOf(found.kind), key: found.key, gone: found.gone_in !== null };
  }

  /** The kind of the record with that key. */
  kindOfKey(key: number): FactKind {
    return kindOf(String(this.prepare('SELECT kind FROM record WHERE key = ?').pluck().get(key)));
  }

  /** The id of a record, also of one that is gone. */
  uidOf(_kind: FactKind, key: number): string {
    return String(this.prepare('SELECT uid FROM record WHERE key = ?').pluck().get(key));
  }

  uidOrNull(kind: FactKind, key: number | null): string | null {
    return key === null ? null : this.uidOf(kind, key);
  }
}
