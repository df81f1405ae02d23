// Reading rows as records, with statements prepared once. Knows no call and changes nothing.
import type Database from 'better-sqlite3';
import type { RecordKind } from '../../core/ledger/records';
import { Refused } from './refusal';
import { type Columns, fromColumns, type Row, TABLES } from './tables';

/** What each kind is called in a sentence. */
export const KIND_WORDS: { readonly [K in RecordKind]: string } = {
  source: 'source',
  package: 'package',
  batch: 'batch',
  hold: 'hold',
  jar: 'jar',
  addition: 'addition',
  portion: 'portion',
  seeding: 'seeding',
  outcome: 'outcome',
  photograph: 'photograph',
  clearing: 'lifted caution',
  preferences: 'preferences',
  noteRow: 'row of notes',
  choice: 'choice of seed',
};

export class Rows {
  readonly #prepared = new Map<string, Database.Statement>();

  constructor(readonly db: Database.Database) {}

  /** A statement, prepared once for each text. */
  prepare(sql: string): Database.Statement {
    let statement = this.#prepared.get(sql);
    if (!statement) {
      statement = this.db.prepare(sql);
      this.#prepared.set(sql, statement);
    }
    return statement;
  }

  /** The record with that key, or undefined. */
  find<K extends RecordKind>(kind: K, key: number): Row<K> | undefined {
    const row = this.prepare(`SELECT * FROM ${TABLES[kind].table} WHERE key = ?`).get(key);
    return row === undefined ? undefined : fromColumns(kind, row as Columns);
  }

  /** The record with that key, which is known to be there. */
  get<K extends RecordKind>(kind: K, key: number): Row<K> {
    const row = this.find(kind, key);
    if (!row) throw new Error(`no ${kind} ${key}`);
    return row;
  }

  /** All records whose column (SQL name) equals the value, by key. */
  where<K extends RecordKind>(kind: K, column: string, value: number | string): Row<K>[] {
    return this.prepare(`SELECT * FROM ${TABLES[kind].table} WHERE ${column} = ? ORDER BY key`)
      .all(value)
      .map((row) => fromColumns(kind, row as Columns));
  }

  /** All records of a kind, by key, one at a time: a large ledger never lies in memory twice. */
  *all<K extends RecordKind>(kind: K): Generator<Row<K>> {
    // Not from the cache: a statement that is being iterated can't be used again before it ends.
    for (const row of this.db.prepare(`SELECT * FROM ${TABLES[kind].table} ORDER BY key`).iterate()) {
      yield fromColumns(kind, row as Columns);
    }
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
  keyOf(kind: RecordKind, uid: string): number {
    const key = this.prepare(`SELECT key FROM ${TABLES[kind].table} WHERE uid = ?`).pluck().get(uid);
    if (typeof key !== 'number') throw new Refused('not found', { kind: KIND_WORDS[kind] });
    return key;
  }

  /** Like keyOf, with null for null. */
  keyOrNull(kind: RecordKind, uid: string | null): number | null {
    return uid === null ? null : this.keyOf(kind, uid);
  }

  uidOf(kind: RecordKind, key: number): string {
    return String(this.prepare(`SELECT uid FROM ${TABLES[kind].table} WHERE key = ?`).pluck().get(key));
  }

  uidOrNull(kind: RecordKind, key: number | null): string | null {
    return key === null ? null : this.uidOf(kind, key);
  }
}
