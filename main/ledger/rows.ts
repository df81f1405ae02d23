// Reading records, each put together from its facts (projection/forms.ts), with statements prepared once. Knows no call and
// changes nothing.
import type Database from 'better-sqlite3';
import type { RecordKind } from '../../core/ledger/records';
import { Rows as FactRows } from './facts/fact-rows';
import { type FactKind, fromColumns, type Columns } from './facts/tables';
import { FORMS, type Form, type RootedKind } from './projection/forms';
import { observedOf, outcomeFrom } from './projection/outcome';
import { askedOf } from './projection/put';
import type { Row } from './projection/records';
import { Refused } from './refusal';

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

/** The fact at the root of a record; a jar's outcome goes by the jar. */
export const rootOf = (kind: RecordKind): FactKind => (kind === 'outcome' ? 'jar' : FORMS[kind].root);

/** Where a record hangs on another and the fact at its root doesn't say so in a column of that name. */
const OTHERWISE: Readonly<Record<string, string>> = {
  'jar hold': 'key IN (SELECT jar FROM stay WHERE hold = ?)',
  'clearing of': 'of_jar = ?',
};

export class Rows {
  /** The facts themselves. */
  readonly facts: FactRows;

  constructor(db: Database.Database) {
    this.facts = new FactRows(db);
  }

  get db(): Database.Database {
    return this.facts.db;
  }

  /** A statement, prepared once for each text. */
  prepare(sql: string): Database.Statement {
    return this.facts.prepare(sql);
  }

  #outcome(jar: number): Row<'outcome'> | undefined {
    const seen = outcomeFrom(observedOf(askedOf(this.facts), jar));
    return seen === null ? undefined : { jar, ...seen, key: jar, uid: this.facts.uidOf('jar', jar) };
  }

  #record<K extends RootedKind>(kind: K, root: { readonly key: number; readonly uid: string }): Row<K> {
    const { read } = FORMS[kind] as unknown as Form<K>;
    const record = read(this.facts, root as never);
    return { ...record, key: root.key, uid: root.uid } as Row<K>;
  }

  /** The record with that key, or undefined. */
  find<K extends RecordKind>(kind: K, key: number): Row<K> | undefined {
    if (kind === 'outcome') return this.#outcome(key) as Row<K> | undefined;
    const root = this.facts.find(rootOf(kind), key);
    return root && (this.#record(kind as RootedKind, root) as unknown as Row<K>);
  }

  /** The record with that key, which is known to be there. */
  get<K extends RecordKind>(kind: K, key: number): Row<K> {
    const row = this.find(kind, key);
    if (!row) throw new Error(`no ${kind} ${key}`);
    return row;
  }

  /** All records that hang on another, or whose column (SQL name) equals a value, in the order of entry. */
  where<K extends RecordKind>(kind: K, column: string, value: number | string): Row<K>[] {
    if (kind === 'outcome') {
      const outcome = this.#outcome(Number(value));
      return outcome ? [outcome as unknown as Row<K>] : [];
    }
    const root = rootOf(kind);
    const otherwise = OTHERWISE[`${kind} ${column}`];
    const roots = otherwise
      ? this.#rootsWhere(root, otherwise, value)
      : this.facts.where(root, column, value);
    return roots.map((one) => this.#record(kind as RootedKind, one) as unknown as Row<K>);
  }

  #rootsWhere(root: FactKind, where: string, value: number | string): { key: number; uid: string }[] {
    const table = root === 'noteRow' ? 'note_row' : root;
    return this.prepare(
      `SELECT t.*, r.uid FROM ${table} t CROSS JOIN record r ON r.key = t.key WHERE t.${where} ORDER BY t.key`,
    )
      .all(value)
      .map((columns) => fromColumns(root, columns as Columns));
  }

  /** All records of a kind, in the order of entry. */
  *all<K extends RootedKind>(kind: K): Generator<Row<K>> {
    for (const key of this.prepare(`SELECT key FROM ${FORMS[kind].root} ORDER BY key`).pluck().all())
      yield this.get(kind, Number(key));
  }

  count(sql: string, ...values: (string | number)[]): number {
    return this.facts.count(sql, ...values);
  }

  /**
   * The key behind a permanent id.
   * @throws Refused 'not found'
   */
  keyOf(kind: RecordKind, uid: string): number {
    const found = this.facts.recordOf(uid);
    if (!found || found.gone || found.kind !== rootOf(kind))
      throw new Refused('not found', { kind: KIND_WORDS[kind] });
    return found.key;
  }

  /** Like keyOf, with null for null. */
  keyOrNull(kind: RecordKind, uid: string | null): number | null {
    return uid === null ? null : this.keyOf(kind, uid);
  }

  uidOf(kind: RecordKind, key: number): string {
    return this.facts.uidOf(rootOf(kind), key);
  }

  uidOrNull(kind: RecordKind, key: number | null): string | null {
    return key === null ? null : this.uidOf(kind, key);
  }
}
