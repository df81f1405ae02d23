// Opening a ledger file, in an order that touches nothing before it is known to be ours, whole and not newer.
// See design.md *The ledger*; the pragmas and why each is set are listed at `PRAGMAS`.
import {
  accessSync,
  closeSync,
  constants,
  existsSync,
  mkdirSync,
  openSync,
  readdirSync,
  readSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { type Clock, stampOf } from './clock';
import { type Migration, migrations } from './migrations/index';
import { backupFolder } from './protocol';
import { Refused, refusalOfSqlite } from './refusal';

/** 'JarL' in ASCII: tells our files from others (file(1) shows it). */
export const APPLICATION_ID = 0x4a61724c;

/** Set on every connection and read back. */
export const PRAGMAS: readonly (readonly [name: string, set: string, reads: string | number])[] = [
  // Sees corrupt cells at once instead of following them.
  ['cell_size_check', 'ON', 1],
  // A file may come from elsewhere: its triggers may not call anything unsafe.
  ['trusted_schema', 'OFF', 0],
  ['foreign_keys', 'ON', 1],
  // What a statement with triggers may have to take back is kept in memory: on disk it doubles the time of an import.
  ['temp_store', 'MEMORY', 2],
  // Without it INSERT OR REPLACE walks past the delete triggers of acts and journal.
  ['recursive_triggers', 'ON', 1],
  ['busy_timeout', '5000', 5000],
  ['journal_mode', 'WAL', 'wal'],
  // NORMAL may lose the last commits when the power goes; set after WAL, since the switch changes it.
  ['synchronous', 'FULL', 2],
  ['checkpoint_fullfsync', 'ON', 1],
];

export interface OpenOptions {
  readonly clock: Clock;
  readonly newId: () => string;
  /** 'open': it must be a ledger already; 'create': it must not be there, or be an empty file. */
  readonly mode: 'open' | 'create';
  readonly demo: boolean;
  /** For tests of migrating. */
  readonly migrations?: readonly Migration[];
}

/** The header of an SQLite file (fileformat2, section 1.3), read without SQLite so that nothing is touched. */
function readHeader(file: string): { applicationId: number; version: number } | null {
  const head = Buffer.alloc(100);
  const handle = openSync(file, 'r');
  try {
    if (readSync(handle, head, 0, 100, 0) < 100) return null;
  } finally {
    closeSync(handle);
  }
  if (head.toString('latin1', 0, 16) !== 'SQLite format 3\0') return null;
  return { applicationId: head.readUInt32BE(68), version: head.readUInt32BE(60) };
}

/** Names of the triggers that stand in a ledger of a version; a missing one would let the journal be changed. */
function triggersOf(db: Database.Database): string {
  return db
    .prepare("SELECT name || char(10) || sql FROM sqlite_schema WHERE type = 'trigger' ORDER BY name")
    .pluck()
    .all()
    .join('\n');
}

function expectedTriggers(upTo: number, list: readonly Migration[]): string {
  const db = new Database(':memory:');
  try {
    for (const migration of list.slice(0, upTo)) db.exec(migration.sql);
    return triggersOf(db);
  } finally {
    db.close();
  }
}

/**
 * Looks at a file through a connection that can't write and refuses what is not a whole ledger of a version we know.
 * No byte of the file changes, and nothing new is left beside it.
 * @throws Refused 'not a ledger', 'newer ledger', 'damaged', 'read-only', 'disk trouble'
 */
export function inspect(file: string, list: readonly Migration[] = migrations): { version: number } {
  const header = readHeader(file);
  if (!header || header.applicationId !== APPLICATION_ID) throw new Refused('not a ledger', { file });
  if (header.version > list.length) throw new Refused('newer ledger', { file });
  // A reader of a write-ahead log makes these two files. Beside a refused file what was not there before goes again;
  // beside a good one they stay, since another process may be using them by now.
  const companions = [`${file}-wal`, `${file}-shm`].filter((companion) => !existsSync(companion));
  try {
    const db = new Database(file, { readonly: true });
    try {
      db.pragma('trusted_schema = OFF');
      db.pragma('cell_size_check = ON');
      // Asked again: a log that is not merged yet may say otherwise than the header.
      const version = Number(db.pragma('user_version', { simple: true }));
      if (version > list.length) throw new Refused('newer ledger', { file });
      // A program killed while it made the file leaves it ours and empty: as good as new.
      if (version < 1) {
        if (db.prepare('SELECT count(*) FROM sqlite_schema').pluck().get() !== 0)
          throw new Refused('damaged', { file });
        return { version: 0 };
      }
      if (db.pragma('quick_check(1)', { simple: true }) !== 'ok') throw new Refused('damaged', { file });
      if (triggersOf(db) !== expectedTriggers(version, list)) throw new Refused('altered ledger', { file });
      return { version };
    } finally {
      db.close();
    }
  } catch (error) {
    for (const companion of companions) rmSync(companion, { force: true });
    const refused = refusalOfSqlite(error);
    if (refused?.refusal.code === 'not a ledger') throw new Refused('damaged', { file });
    throw refused ? new Refused(refused.refusal.code as 'damaged', { file }) : error;
  }
}

function setPragmas(db: Database.Database): void {
  for (const [name, value, reads] of PRAGMAS) {
    db.pragma(`${name} = ${value}`);
    const now = db.pragma(name, { simple: true });
    // A network disk may refuse WAL; a ledger there would not be safe.
    if (now !== reads) throw new Refused('disk trouble', { file: db.name });
  }
}

/** Long past the time that a copy takes (ms). */
const ABANDONED_AFTER_MS = 3_600_000;

/** Removes what a program that was killed while it copied left behind. A copy that may still be under way stays. */
function removeUnfinished(folder: string): void {
  for (const name of readdirSync(folder)) {
    if (!/\.sqlite\.part(-journal)?$/.test(name)) continue;
    const file = join(folder, name);
    // By the disk's clock on both sides: --now moves the ledger's own.
    if (Date.now() - statSync(file).mtimeMs > ABANDONED_AFTER_MS) rmSync(file, { force: true });
  }
}

/**
 * A checked copy of the whole ledger: VACUUM INTO (a plain file copy would miss the write-ahead log), opened again
 * and checked before it counts.
 * @throws Refused 'disk full', 'disk trouble'; Error when the copy is not whole
 */
export function copyChecked(db: Database.Database, to: string): void {
  mkdirSync(dirname(to), { recursive: true });
  removeUnfinished(dirname(to));
  const part = `${to}.part`;
  rmSync(part, { force: true });
  try {
    db.prepare('VACUUM INTO ?').run(part);
    const copy = new Database(part, { readonly: true });
    try {
      if (
        copy.pragma('quick_check(1)', { simple: true }) !== 'ok' ||
        copy.pragma('user_version', { simple: true }) !== db.pragma('user_version', { simple: true })
      ) {
        throw new Error('a copy of the ledger is not whole');
      }
    } finally {
      copy.close();
    }
    renameSync(part, to);
  } finally {
    rmSync(part, { force: true });
  }
}

/** Runs what is pending in one transaction, after a checked copy of a ledger that holds something. */
function migrate(db: Database.Database, options: OpenOptions): void {
  const list = options.migrations ?? migrations;
  const version = Number(db.pragma('user_version', { simple: true }));
  const pending = list.slice(version);
  if (pending.length === 0) return;
  if (version > 0) {
    const name = `before-version-${list.length}-${stampOf(options.clock.milliseconds())}.sqlite`;
    copyChecked(db, join(backupFolder(db.name), name));
  }
  db.exec('BEGIN IMMEDIATE');
  try {
    for (const migration of pending) db.exec(migration.sql);
    if (version === 0) {
      db.prepare('INSERT INTO ledger (one, uid, demo, made_at) VALUES (1, ?, ?, ?)').run(
        options.newId(),
        Number(options.demo),
        options.clock.now(),
      );
    }
    if ((db.pragma('foreign_key_check') as unknown[]).length > 0) {
      throw new Error('a migration left a record pointing at nothing');
    }
    db.pragma(`user_version = ${list.length}`);
    db.exec('COMMIT');
  } catch (error) {
    db.exec('ROLLBACK');
    throw error;
  }
}

/**
 * Opens (or makes) a ledger and leaves it ready: checked, migrated, every pragma set and read back.
 * @throws Refused with a sentence for every file that can't be opened; such a file is left exactly as it was
 */
export function openLedger(file: string, options: OpenOptions): Database.Database {
  let size = -1;
  try {
    const stat = statSync(file);
    if (stat.isDirectory()) throw new Refused('is a folder', { file });
    if (!stat.isFile()) throw new Refused('not a ledger', { file });
    size = stat.size;
    accessSync(file, constants.R_OK | constants.W_OK);
    accessSync(dirname(file), constants.W_OK);
  } catch (error) {
    if (error instanceof Refused) throw error;
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') throw new Refused('read-only', { file });
    if (code === 'ENOTDIR' || code === 'ENAMETOOLONG') throw new Refused('no such file', { file });
    if (code !== 'ENOENT') throw error;
  }
  if (options.mode === 'open' && size < 0) throw new Refused('no such file', { file });
  if (options.mode === 'create' && size > 0) throw new Refused('file exists', { file });
  if (size > 0) inspect(file, options.migrations);
  try {
    if (size < 0) mkdirSync(dirname(file), { recursive: true });
    const db = new Database(file, { fileMustExist: size >= 0 });
    try {
      // Before there is a log: the file is known as ours from its first page on, whenever the program is killed.
      if (size <= 0) db.pragma(`application_id = ${APPLICATION_ID}`);
      setPragmas(db);
      migrate(db, options);
      return db;
    } catch (error) {
      db.close();
      throw error;
    }
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'EACCES' || code === 'EPERM' || code === 'EROFS') throw new Refused('read-only', { file });
    const refused = refusalOfSqlite(error);
    throw refused
      ? new Refused(refused.refusal.code as 'damaged', { ...refused.refusal.params, file })
      : error;
  }
}

/** An empty ledger that lies nowhere. */
export function openInMemory(options: Pick<OpenOptions, 'clock' | 'newId'>): Database.Database {
  const db = new Database(':memory:');
  db.pragma('foreign_keys = ON');
  db.pragma('recursive_triggers = ON');
  migrate(db, { ...options, mode: 'create', demo: false });
  return db;
}

/** Closes in order: statistics refreshed, the write-ahead log merged, so that the file alone is the ledger. */
export function closeLedger(db: Database.Database): void {
  if (!db.open) return;
  db.pragma('optimize');
  db.pragma('wal_checkpoint(TRUNCATE)');
  db.close();
}
