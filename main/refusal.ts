// How a handler says no: thrown inside, data outside. Also turns the errors of SQLite and of the system into such
// refusals, by code.
import { statfsSync } from 'node:fs';
import { dirname } from 'node:path';
import { SqliteError } from 'better-sqlite3';
import type { Refusal } from '../core/contract';
import type { RefusalCode } from '../core/sentences';

/** Thrown by handlers for everything a keeper can mend; the session turns it into a reply. */
export class Refused extends Error {
  readonly refusal: Refusal;
  constructor(code: RefusalCode, params: Refusal['params'] = {}) {
    super(code);
    this.refusal = { code, params };
  }
}

/** What SQLite's error means for the keeper; null where it is a fault of the program. */
function codeOfSqlite(code: string): RefusalCode | null {
  if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED')) return 'busy';
  if (code === 'SQLITE_FULL') return 'disk full';
  if (code.startsWith('SQLITE_READONLY') || code.startsWith('SQLITE_PERM')) return 'read-only';
  if (code.startsWith('SQLITE_CORRUPT')) return 'damaged';
  if (code === 'SQLITE_NOTADB') return 'not a ledger';
  if (code.startsWith('SQLITE_IOERR') || code.startsWith('SQLITE_CANTOPEN')) return 'disk trouble';
  return null;
}

/** The system's errors (errno names) that have a sentence. */
const SYSTEM: Readonly<Record<string, RefusalCode>> = {
  ENOSPC: 'disk full', EDQUOT: 'disk full',
  EACCES: 'read-only', EPERM: 'read-only', EROFS: 'read-only',
  ENOENT: 'no such file', ENOTDIR: 'no such file', ELOOP: 'no such file', EISDIR: 'is a folder',
  ENAMETOOLONG: 'name too long',
  EIO: 'disk trouble', ENXIO: 'disk trouble', ENODEV: 'disk trouble', ESTALE: 'disk trouble', EFBIG: 'disk trouble',
  EBUSY: 'disk trouble', EAGAIN: 'disk trouble', ETXTBSY: 'disk trouble', ENOTCONN: 'disk trouble',
  EHOSTDOWN: 'disk trouble', EREMOTEIO: 'disk trouble', ETIMEDOUT: 'disk trouble', ENOLCK: 'disk trouble',
  EMFILE: 'disk trouble', ENFILE: 'disk trouble',
}; // prettier-ignore

/** Less than this is no room (bytes): a page of the log and of its index. */
const LEAST_ROOM = 64 * 1024;

/** Whether the disk that a file lies on is full: SQLite says of the index of its log only that it could not be written. */
function isFull(file: string): boolean {
  try {
    const { bavail, bsize } = statfsSync(dirname(file));
    return bavail * bsize < LEAST_ROOM;
  } catch {
    // Not to be asked: then it is trouble, and said to be.
    return false;
  }
}

/**
 * What an error means for the keeper; null where it is a fault of the program.
 * @param file the ledger it was about, where the error itself names none
 */
export function refusalOf(error: unknown, file?: string): Refused | null {
  if (error instanceof Refused) return error;
  const sqlite = error instanceof SqliteError;
  // The rules of the tables, reached only where the check before them has a gap: say what holds, change nothing.
  if (sqlite && error.code.startsWith('SQLITE_CONSTRAINT'))
    return new Refused('rule', { rule: error.message });
  const { code: errno, path } = error as NodeJS.ErrnoException;
  const code = sqlite ? codeOfSqlite(error.code) : (SYSTEM[errno ?? ''] ?? null);
  if (code === null) return null;
  const about = file ?? path;
  const full = code === 'disk trouble' && about !== undefined && isFull(about);
  return new Refused(full ? 'disk full' : code, about === undefined ? {} : { file: about });
}

/** As refusalOf, to be thrown: the error itself where it is a fault of the program. */
export const refusedFor = (error: unknown, file: string): unknown => refusalOf(error, file) ?? error;
