// The pages of a large ledger are checked once it is open, a table at a time, so that the first answer need not wait for it.
import type Database from 'better-sqlite3';
import { Refused, refusedFor } from '../refusal';

/** Bytes of a ledger of some ten thousand jars: a smaller one is checked in no time. */
export const CHECK_LATER_FROM = 16 * 1024 * 1024;

export class PageCheck {
  readonly #db: Database.Database;
  readonly #left: string[];

  constructor(db: Database.Database) {
    this.#db = db;
    this.#left = db.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all() as string[];
  }

  /** Whether every table was found whole. */
  get done(): boolean {
    return this.#left.length === 0;
  }

  /** Checks one more table with its indexes. @throws Refused 'damaged' */
  next(): void {
    const table = this.#left.pop();
    if (table === undefined) return;
    const file = this.#db.name;
    try {
      const found = this.#db.pragma(`quick_check('${table}')`, { simple: true });
      if (found !== 'ok') throw new Refused('damaged', { file });
    } catch (error) {
      throw refusedFor(error, file);
    }
  }
}
