// New facts of an import wait to be written together: one statement for many rows costs little more than one for a single row.
// They are written before anything else is asked of the ledger, so nobody sees that they waited.
import Database from 'better-sqlite3';
import { FACT_KINDS } from '../../../core/ledger/facts/all-facts';
import type { Rows } from './fact-rows';
import { columnsOf, type FactKind, tableOf, type Value } from './tables';

/** So many facts wait at most. */
const MOST = 1024;
/** Rows of one statement. Few sizes, so that few statements are prepared. */
const CHUNKS = [64, 8, 1] as const;

interface Row {
  readonly key: number;
  readonly values: readonly Value[];
}

/** Writes one fact whose record is there. @throws what the tables say against it */
type WriteOne = (kind: FactKind, row: Row) => void;

export class Waiting {
  readonly #rows: Rows;
  readonly #act: number;
  readonly #writeOne: WriteOne;
  /** The key of the next record; records of other programs can't come in between, since a transaction is open. */
  #next: number;
  #records: Row[] = [];
  #facts = new Map<FactKind, Row[]>();

  constructor(rows: Rows, act: number, writeOne: WriteOne) {
    this.#rows = rows;
    this.#act = act;
    this.#writeOne = writeOne;
    this.#next = rows.count("SELECT seq FROM sqlite_sequence WHERE name = 'record'") + 1;
  }

  /** @param values of `columnsOf` the kind @returns the key that it will have */
  add(kind: FactKind, uid: string, values: readonly Value[]): number {
    const key = this.#next++;
    this.#records.push({ key, values: [uid, tableOf(kind), this.#act] });
    const row = { key, values };
    const others = this.#facts.get(kind);
    if (others) others.push(row);
    else this.#facts.set(kind, [row]);
    if (this.#records.length >= MOST) this.write();
    return key;
  }

  /** Writes all that waits. @throws what the tables say against the first row that they would not take */
  write(): void {
    if (this.#records.length === 0) return;
    const [records, facts] = [this.#records, this.#facts];
    this.#records = [];
    this.#facts = new Map();
    this.#insert('record', ['uid', 'kind', 'made_in'], records);
    // What is pointed at before what points at it.
    for (const kind of FACT_KINDS) {
      const rows = facts.get(kind) ?? [];
      try {
        this.#insert(tableOf(kind), columnsOf(kind), rows);
      } catch (error) {
        if (error instanceof Database.SqliteError) this.#findRefused(kind, rows);
        throw error;
      }
    }
  }

  /** One by one: which of them the tables refuse. */
  #findRefused(kind: FactKind, rows: readonly Row[]): void {
    const isThere = this.#rows.prepare(`SELECT 1 FROM ${tableOf(kind)} WHERE key = ?`);
    for (const row of rows) if (isThere.get(row.key) === undefined) this.#writeOne(kind, row);
  }

  #insert(table: string, columns: readonly string[], rows: readonly Row[]): void {
    const one = `(?${', ?'.repeat(columns.length)})`;
    let from = 0;
    for (const size of CHUNKS) {
      if (rows.length - from < size) continue;
      const statement = this.#rows.prepare(
        `INSERT INTO ${table} (key, ${columns.join(', ')}) VALUES ${Array.from({ length: size }, () => one).join(', ')}`,
      );
      for (; rows.length - from >= size; from += size) {
        const values: Value[] = [];
        for (const row of rows.slice(from, from + size)) values.push(row.key, ...row.values);
        statement.run(values);
      }
    }
  }
}
