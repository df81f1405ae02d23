// Opening a ledger file, in an order that touches nothing before it is known to be ours, whole and not newer.
// See design.md *The ledger*; the pragmas and why each is set are listed at `PRAGMAS`.
import {
  accessSync,
  closeSync,
  constants,
  mkdirSync,
  openSync,
  readSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { type Clock, stampOf } from './clock';
import { FIRST_VERSION, latestOf, type Migration, migrations } from './migrations/all-migrations';
import { lostInLog } from './log-check';
import { identityOf, ownName, putNew, removeAbandoned } from './place';
import { storedMoment } from '../../core/ledger/stored-moments';
import { backupFolder } from './worker-protocol';
import { Refused, refusalOf, refusedFor } from '../refusal';

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
  /** A file of so many bytes or more is opened before its pages are checked (page-check.ts); left out: none is. */
  readonly checkLaterFrom?: number | undefined;
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

/** The version of the tables of an open file. */
const versionOf = (db: Database.Database): number => Number(db.pragma('user_version', { simple: true }));

/** Names of the triggers that stand in a ledger of a version; a missing one would let the journal be changed. */
function triggersOf(db: Database.Database): string {
  return db
    .prepare("SELECT name || char(10) || sql FROM sqlite_schema WHERE type = 'trigger' ORDER BY name")
    .pluck()
    .all()
    .join('\n');
}

/** The tables of a version with nothing in them, in memory, and the triggers that are among them. */
interface Blank {
  readonly db: Database.Database;
  readonly triggers: string;
}
const blanks = new WeakMap<readonly Migration[], Map<number, Blank>>();

/**
 * Made once for each version and kept: the schema is long, and for each connection SQLite reads all of it anew, which is
 * most of what opening a small ledger takes.
 */
function blankOf(upTo: number, list: readonly Migration[]): Blank {
  const known = blanks.get(list) ?? new Map<number, Blank>();
  blanks.set(list, known);
  const before = known.get(upTo);
  if (before !== undefined) return before;
  const db = new Database(':memory:');
  db.pragma('foreign_keys = ON');
  db.pragma('recursive_triggers = ON');
  db.pragma(`application_id = ${APPLICATION_ID}`);
  db.exec('BEGIN');
  for (const { version, sql } of list) if (version <= upTo) db.exec(sql);
  db.pragma(`user_version = ${upTo}`);
  db.exec('COMMIT');
  const blank = { db, triggers: triggersOf(db) };
  known.set(upTo, blank);
  return blank;
}

/** Files of before the first release hold other tables, and nobody keeps a ledger in one. @throws Refused 'older ledger' */
function refuseOlder(version: number, file: string): void {
  if (version > 0 && version < FIRST_VERSION) throw new Refused('older ledger', { file });
}

/** Bytes of a file; 0 where there is none. */
const sizeOf = (file: string): number => statSync(file, { throwIfNoEntry: false })?.size ?? 0;

/**
 * A connection that changes no byte of a file and leaves nothing beside it. A reader of a ledger needs a log, be
 * it empty: SQLite makes one and takes it away again by itself, under its locks, if the connection may write. Where a log
 * is there already that would merge it, so there the connection may not. Nothing is removed by us: a log that comes into
 * being meanwhile is another program's.
 * @param first what is asked at once; where it throws the connection is closed
 */
function openToLook(file: string, first: (db: Database.Database) => void): Database.Database {
  const db = new Database(file, { readonly: sizeOf(`${file}-wal`) > 0, fileMustExist: true });
  try {
    db.pragma('query_only = ON');
    db.pragma('trusted_schema = OFF');
    // As PRAGMAS has it, before the schema is read: with that change SQLite forgets what it has read.
    db.pragma('temp_store = MEMORY');
    // One state from the first question to the last, whatever others write meanwhile.
    db.exec('BEGIN');
    first(db);
    return db;
  } catch (error) {
    db.close();
    throw error;
  }
}

/** Works on a connection that changes no byte of a file and leaves nothing beside it. */
export function lookInto<T>(file: string, work: (db: Database.Database) => T): T {
  const db = openToLook(file, () => undefined);
  try {
    return work(db);
  } finally {
    db.close();
  }
}

/** Whether a file is so large that its pages are checked once it is open. */
export const isCheckedLater = (
  file: string,
  { checkLaterFrom = Infinity }: Pick<OpenOptions, 'checkLaterFrom'>,
): boolean => sizeOf(file) >= checkLaterFrom;

/** What a whole ledger of a version we know is asked. @throws Refused as inspect does, or what SQLite throws */
function assertWhole(db: Database.Database, file: string, list: readonly Migration[], pages: boolean): void {
  db.pragma('cell_size_check = ON');
  // Asked again: a log that is not merged yet may say otherwise than the header.
  const version = versionOf(db);
  if (version > latestOf(list)) throw new Refused('newer ledger', { file });
  refuseOlder(version, file);
  // A program killed while it made the file leaves it ours and empty: as good as new.
  if (version < 1) {
    if (db.prepare('SELECT count(*) FROM sqlite_schema').pluck().get() !== 0)
      throw new Refused('damaged', { file });
    return;
  }
  if (pages && db.pragma('quick_check(1)', { simple: true }) !== 'ok') throw new Refused('damaged', { file });
  if (triggersOf(db) !== blankOf(version, list).triggers) throw new Refused('altered ledger', { file });
}

/** As inspect. @returns the connection that looked, still looking */
function openInspected(file: string, list: readonly Migration[], pages: boolean): Database.Database {
  const header = readHeader(file);
  if (!header || header.applicationId !== APPLICATION_ID) throw new Refused('not a ledger', { file });
  if (header.version > latestOf(list)) throw new Refused('newer ledger', { file });
  refuseOlder(header.version, file);
  const lost = lostInLog(file);
  if (lost > 0) throw new Refused('log damaged', { file, lost });
  try {
    return openToLook(file, (db) => assertWhole(db, file, list, pages));
  } catch (error) {
    const refused = refusalOf(error, file);
    // The header says that it is one: then it is a ledger with something wrong in it.
    if (refused?.refusal.code === 'not a ledger') throw new Refused('damaged', { file });
    throw refused ?? error;
  }
}

/**
 * Looks at a file without changing it and refuses what is not a whole ledger of a version we know.
 * @param work asks more of it; version 0 is a file of ours that is still empty
 * @throws Refused 'not a ledger', 'newer ledger', 'older ledger', 'damaged', 'log damaged', 'read-only', 'disk trouble'
 */
export function inspect<T>(file: string, work: (db: Database.Database, version: number) => T): T {
  const db = openInspected(file, migrations, true);
  try {
    return work(db, versionOf(db));
  } finally {
    db.close();
  }
}

/**
 * Opens a file after a look at it, and by the connection that looked where that may write.
 * @param pages whether its pages are checked here
 * @throws Refused as inspect does
 */
function openChecked(file: string, list: readonly Migration[], pages: boolean): Database.Database {
  const named = identityOf(file)?.same;
  const db = openInspected(file, list, pages);
  // Checking takes long where the ledger is large: by now the name may be another file's.
  if (db.readonly || identityOf(file)?.same !== named) {
    db.close();
    return new Database(file, { fileMustExist: true });
  }
  db.exec('COMMIT');
  db.pragma('query_only = OFF');
  return db;
}

function setPragmas(db: Database.Database): void {
  for (const [name, value, reads] of PRAGMAS) {
    db.pragma(`${name} = ${value}`);
    const now = db.pragma(name, { simple: true });
    // A network disk may refuse WAL; a ledger there would not be safe.
    if (now !== reads) throw new Refused('disk trouble', { file: db.name });
  }
}

/**
 * A new file, whole before it has its name.
 * @param places where to, in order: the first where nothing lies is taken
 * @param write writes all of it, under a name that it is given
 * @returns where it lies
 * @throws Refused 'file exists', and whatever writing throws
 */
function putWhole(places: Iterable<string>, write: (part: string) => void): string {
  let last = '';
  for (const to of places) {
    last = to;
    if (sizeOf(to) > 0) continue;
    mkdirSync(dirname(to), { recursive: true });
    removeAbandoned(dirname(to));
    const part = ownName(to);
    try {
      write(part);
      if (putNew(part, to)) return to;
    } finally {
      rmSync(part, { force: true });
    }
  }
  throw new Refused('file exists', { file: last });
}

/**
 * A checked copy of the whole ledger: VACUUM INTO (a plain file copy would miss the write-ahead log), opened again
 * and checked before it counts.
 * @param places where to, in order: the first where nothing lies is taken
 * @returns where it lies
 * @throws Refused 'disk full', 'disk trouble', 'file exists'; Error when the copy is not whole
 */
export const copyChecked = (db: Database.Database, places: Iterable<string>): string =>
  putWhole(places, (part) => writeChecked(db, part));

/** As copyChecked, to a file that is nobody else's: it may be left unfinished. */
export function writeChecked(db: Database.Database, file: string): void {
  db.prepare('VACUUM INTO ?').run(file);
  const copy = new Database(file, { readonly: true });
  try {
    const asks = ['user_version', 'application_id'];
    if (
      copy.pragma('quick_check(1)', { simple: true }) !== 'ok' ||
      copy.pragma('application_id', { simple: true }) !== APPLICATION_ID ||
      asks.some((ask) => copy.pragma(ask, { simple: true }) !== db.pragma(ask, { simple: true }))
    ) {
      throw new Error('a copy of the ledger is not whole');
    }
  } finally {
    copy.close();
  }
}

/** Gives empty tables the name of a new ledger. */
function beginLedger(db: Database.Database, { clock, newId, demo }: Omit<OpenOptions, 'mode'>): void {
  const { seconds, offset } = storedMoment(clock.now());
  db.prepare('INSERT INTO ledger (key, uid, own, demo, made_at, made_at_off) VALUES (1, ?, 1, ?, ?, ?)').run(
    newId(),
    Number(demo),
    seconds,
    offset,
  );
}

/** Runs what is pending in one transaction, after a checked copy of a ledger that holds something. */
function migrate(db: Database.Database, options: Omit<OpenOptions, 'mode'>): void {
  const list = options.migrations ?? migrations;
  const before = versionOf(db);
  if (before >= latestOf(list)) return;
  if (before > 0) {
    const name = `before-version-${latestOf(list)}-${stampOf(options.clock.milliseconds())}`;
    copyChecked(db, numbered(join(backupFolder(db.name), name)));
  }
  db.exec('BEGIN IMMEDIATE');
  try {
    // Asked again where nobody else can write: another program may have been faster.
    const version = versionOf(db);
    for (const migration of list) if (migration.version > version) db.exec(migration.sql);
    if (version === 0) beginLedger(db, options);
    if ((db.pragma('foreign_key_check') as unknown[]).length > 0) {
      throw new Error('a migration left a record pointing at nothing');
    }
    db.pragma(`user_version = ${Math.max(version, latestOf(list))}`);
    db.exec('COMMIT');
  } catch (error) {
    if (db.inTransaction) db.exec('ROLLBACK');
    throw error;
  }
}

/** Names for one file after the other: the stem's own, then with a number. */
export function* numbered(stem: string): Generator<string> {
  yield `${stem}.sqlite`;
  for (let number = 2; ; number++) yield `${stem}-${number}.sqlite`;
}

/**
 * How large the file is; -1 where there is none.
 * @throws Refused for what is no file, or out of reach
 */
function look(file: string): number {
  try {
    const stat = statSync(file);
    if (stat.isDirectory()) throw new Refused('is a folder', { file });
    if (!stat.isFile()) throw new Refused('not a ledger', { file });
    accessSync(file, constants.R_OK | constants.W_OK);
    accessSync(dirname(file), constants.W_OK);
    return stat.size;
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === 'ENOENT') return -1;
    throw refusedFor(error, file);
  }
}

/**
 * How large the ledger file is, -1 where there is none, so that it can be made.
 * @throws Refused 'log without ledger' where the log of a ledger lies beside the place, but not the ledger: SQLite would
 *   throw the log away with what was recorded last, or take it for one of the new ledger
 */
export function lookForLedger(file: string): number {
  // In this order: a log is made after its ledger, so one that is there before nothing was found has lost it.
  const log = sizeOf(`${file}-wal`);
  const size = look(file);
  if (log > 0 && size <= 0) throw new Refused('log without ledger', { file, log: `${file}-wal` });
  return size;
}

/**
 * Opens (or makes) a ledger and leaves it ready: checked, migrated, every pragma set and read back.
 * @param file the file itself, no link to it (realFile)
 * @throws Refused with a sentence for every file that can't be opened; such a file is left exactly as it was
 */
export function openLedger(file: string, options: OpenOptions): Database.Database {
  try {
    let size = lookForLedger(file);
    if (options.mode === 'open' && size < 0) throw new Refused('no such file', { file });
    if (options.mode === 'create' && size > 0) throw new Refused('file exists', { file });
    const list = options.migrations ?? migrations;
    const known = size > 0;
    if (size < 0) {
      makeLedger(file, options);
      size = lookForLedger(file);
    }
    const db = known
      ? openChecked(file, list, !isCheckedLater(file, options))
      : new Database(file, { fileMustExist: true });
    try {
      // Before there is a log: the file is known as ours from its first page on, whenever the program is killed.
      if (size === 0) db.pragma(`application_id = ${APPLICATION_ID}`);
      setPragmas(db);
      migrate(db, options);
      return db;
    } catch (error) {
      db.close();
      throw error;
    }
  } catch (error) {
    throw refusedFor(error, file);
  }
}

/** Makes an empty ledger where nothing lies. @throws Refused 'file exists' where another program was faster */
function makeLedger(file: string, options: Omit<OpenOptions, 'mode'>): void {
  const bytes = emptyLedger(options);
  putWhole([file], (part) => writeFileSync(part, bytes, { flag: 'wx' }));
}

/** An empty ledger that lies nowhere. */
export function openInMemory(options: Omit<OpenOptions, 'mode'>): Database.Database {
  const db = new Database(emptyLedger(options));
  db.pragma('foreign_keys = ON');
  db.pragma('recursive_triggers = ON');
  return db;
}

/** The bytes of an empty ledger: the tables with its name in them. */
function emptyLedger(options: Omit<OpenOptions, 'mode'>): Buffer {
  const list = options.migrations ?? migrations;
  const { db } = blankOf(latestOf(list), list);
  db.exec('BEGIN');
  try {
    beginLedger(db, options);
    return db.serialize();
  } finally {
    db.exec('ROLLBACK');
  }
}

/**
 * Closes in order: statistics refreshed, the write-ahead log merged, so that the file alone is the ledger.
 * @throws what kept it from that; then it is closed all the same, and what was recorded is kept in the log
 */
export function closeLedger(db: Database.Database): void {
  if (!db.open) return;
  try {
    try {
      db.pragma('optimize');
    } finally {
      db.pragma('wal_checkpoint(TRUNCATE)');
    }
  } finally {
    db.close();
  }
}
