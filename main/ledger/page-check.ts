// All of a ledger is checked once it is open, with calls between: of a small one only that its rows agree with its indexes is
// left by then (of single bits that are lost, opening tells four out of five), of a large one its pages too, a table at a time.
import type Database from 'better-sqlite3';
import { Refused, refusedFor } from '../refusal';

/** Bytes of a ledger of some ten thousand jars: the pages of a smaller one are checked in no time. */
export const CHECK_LATER_FROM = 16 * 1024 * 1024;

export class PageCheck {
  readonly #db: Database.Database;
  /** Tables that are to be checked; null: all of the file at once. */
  readonly #left: (string | null)[];
  readonly #opened: boolean;

  /** @param opened whether the pages were checked while it was opened */
  constructor(db: Database.Database, opened: boolean) {
    this.#db = db;
    this.#opened = opened;
    this.#left = opened
      ? [null]
      : (db.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all() as string[]);
  }

  /** Whether its pages are known to be whole, so that it may be recorded in. */
  get known(): boolean {
    return this.#opened || this.done;
  }

  /** Whether everything was found whole. */
  get done(): boolean {
    return this.#left.length === 0;
  }

  /** Checks all at once, or one more table with its indexes. @throws Refused 'damaged' */
  next(): void {
    const table = this.#left.pop();
    if (table === undefined) return;
    const file = this.#db.name;
    try {
      const check = table === null ? 'integrity_check(1)' : `integrity_check('${table}')`;
      const found = this.#db.pragma(check, { simple: true });
      if (found !== 'ok') throw new Refused('damaged', { file });
    } catch (error) {
      throw refusedFor(error, file);
    }
  }
}
