// How a handler says no: thrown inside, data outside. Also turns SQLite's own errors into such refusals, by code.
import { SqliteError } from 'better-sqlite3';
import type { Refusal } from '../../core/contract';
import type { RefusalCode } from '../../core/sentences';

/** Thrown by handlers for everything a keeper can mend; the session turns it into a reply. */
export class Refused extends Error {
  readonly refusal: Refusal;
  constructor(code: RefusalCode, params: Refusal['params'] = {}) {
    super(code);
    this.refusal = { code, params };
  }
}

/** What SQLite's error means for the keeper; null where it is a fault of the program. */
export function refusalOfSqlite(error: unknown): Refused | null {
  if (!(error instanceof SqliteError)) return null;
  const { code } = error;
  if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED')) return new Refused('busy');
  if (code === 'SQLITE_FULL') return new Refused('disk full');
  if (code.startsWith('SQLITE_READONLY')) return new Refused('read-only');
  if (code.startsWith('SQLITE_CORRUPT')) return new Refused('damaged');
  if (code === 'SQLITE_NOTADB') return new Refused('not a ledger');
  if (code.startsWith('SQLITE_IOERR') || code.startsWith('SQLITE_CANTOPEN'))
    return new Refused('disk trouble');
  // The rules of the tables, reached only where the check before them has a gap: say what holds, change nothing.
  if (code === 'SQLITE_CONSTRAINT_TRIGGER') return new Refused('rule', { rule: error.message });
  return null;
}
