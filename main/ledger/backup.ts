// Checked copies beside the ledger, which of them stay, and the ways out when a ledger is damaged. A damaged file is
// never changed: it is put aside whole before anything takes its place.
import { constants, copyFileSync, existsSync, readdirSync, rmSync, statSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { basename, dirname, extname, join, resolve } from 'node:path';
import Database from 'better-sqlite3';
import { type Clock, stampOf } from './clock';
import { copyChecked, inspect, lookInto, numbered } from './open';
import { flush, ownName, putOver } from './place';
import { backupFolder } from './worker-protocol';
import { Refused, refusalOf } from '../refusal';
import { backupsToRemove, newestFirst } from './retention';

export interface Backup {
  readonly file: string;
  /** A moment, UTC, as the clock was then. */
  readonly madeAt: string;
  readonly jars: number;
}

/** What a ledger holds, to tell which of two copies is the newer. */
export interface Holding {
  readonly uid: string;
  readonly acts: number;
  /** Id of the last act; null where there is none. */
  readonly last: string | null;
}

interface Copy extends Holding {
  readonly file: string;
  readonly madeAt: string;
}

const STAMP = /-(\d{4})(\d{2})(\d{2})T(\d{2})(\d{2})(\d{2})Z(?:-\d+)?\.sqlite$/;

/** The moment in a backup's name, or null for a file that is not a backup of ours. */
function madeAt(name: string): string | null {
  const parts = STAMP.exec(name);
  return parts ? `${parts[1]}-${parts[2]}-${parts[3]}T${parts[4]}:${parts[5]}:${parts[6]}Z` : null;
}

const stemOf = (file: string): string => basename(file, extname(file));

/** The path of a file to be made beside others, without its ending: the stamp after the stem (numbered adds the rest). */
const stamped = (folder: string, stem: string, clock: Clock): string =>
  join(folder, `${stem}-${stampOf(clock.milliseconds())}`);

/** What an open ledger holds. */
export function holdingOf(db: Database.Database): Holding {
  const last = db.prepare('SELECT key, uid FROM act ORDER BY key DESC LIMIT 1').get() as
    { key: number; uid: string } | undefined;
  const uid = String(db.prepare('SELECT uid FROM ledger WHERE own = 1').pluck().get());
  return { uid, acts: last?.key ?? 0, last: last?.uid ?? null };
}

/** The same of a file, or null where it can't be read: it may be damaged, or no ledger. */
function holdingIn(file: string): Holding | null {
  try {
    return lookInto(file, holdingOf);
  } catch (error) {
    // Whatever is wrong with the file, it is no copy to go by.
    if (error instanceof Database.SqliteError || refusalOf(error)) return null;
    throw error;
  }
}

/** What the copies held that were looked at last, under what tells each as it was then. */
let lookedAt: ReadonlyMap<string, Holding> = new Map();

/** What tells a file from others and from itself before a change; null for one that has a log, which may hold more. */
function asItIs(file: string): string | null {
  const stat = statSync(file, { bigint: true, throwIfNoEntry: false });
  if (stat === undefined || existsSync(`${file}-wal`)) return null;
  return [file, stat.dev, stat.ino, stat.size, stat.mtimeNs, stat.ctimeNs].join(' ');
}

/** What copies hold, each looked into once for as long as it stays as it is: it is asked daily, of all that there are. */
function holdingsIn(files: readonly string[]): (Holding | null)[] {
  const looked = new Map<string, Holding>();
  const found = files.map((file) => {
    const key = asItIs(file);
    const holding = lookedAt.get(key ?? '') ?? holdingIn(file);
    // What could not be read may be read the next time.
    if (key !== null && holding !== null) looked.set(key, holding);
    return holding;
  });
  lookedAt = looked;
  return found;
}

/**
 * Copies beside a ledger that can be read, the newest first by what they hold: the stamp in a name is only what the clock
 * said.
 * @param uid the ledger's own; another ledger's that lay here before is left out. null where it can't be told
 */
export function copiesOf(file: string, uid: string | null): Copy[] {
  const folder = backupFolder(file);
  if (!existsSync(folder)) return [];
  const order = (copy: Copy): { madeAt: number; acts: number } => ({
    acts: copy.acts,
    madeAt: Date.parse(copy.madeAt),
  });
  const named = readdirSync(folder).flatMap((name) => {
    const at = madeAt(name);
    return at === null ? [] : [{ file: join(folder, name), madeAt: at }];
  });
  const holdings = holdingsIn(named.map(({ file: copy }) => copy));
  return named
    .flatMap((copy, index) => {
      const holding = holdings[index] ?? null;
      return holding === null || (uid !== null && holding.uid !== uid) ? [] : [{ ...holding, ...copy }];
    })
    .toSorted((a, b) => newestFirst(order(a), order(b)) || (a.file < b.file ? 1 : -1));
}

/** Backups of a damaged ledger that are whole and of a version we know, newest first. */
export function goodBackups(file: string): Backup[] {
  return copiesOf(file, holdingIn(file)?.uid ?? null).flatMap((copy) => {
    try {
      const jars = inspect(copy.file, (db) =>
        Number(db.prepare("SELECT count(*) FROM jar WHERE state IN ('made', 'lost')").pluck().get()),
      );
      return [{ file: copy.file, madeAt: copy.madeAt, jars }];
    } catch (error) {
      if (refusalOf(error, copy.file)) return [];
      throw error;
    }
  });
}

/** A backup beside what an open ledger holds now. */
export interface Beside extends Backup {
  /** Keys of the acts of now that it does not hold, the latest first. */
  readonly gone: readonly number[];
  /** How many acts it holds that are not there now. */
  readonly again: number;
}

/**
 * The good backups of an open ledger beside what it holds. Two copies of a ledger hold the same acts up to where they part,
 * so that is looked for by halves.
 */
export function backupsBeside(db: Database.Database, file: string): Beside[] {
  const idHere = db.prepare('SELECT uid FROM act WHERE key = ?').pluck();
  const after = db.prepare('SELECT key FROM act WHERE key > ? ORDER BY key DESC').pluck();
  return goodBackups(file).map((backup) =>
    lookInto(backup.file, (copy) => {
      const idThere = copy.prepare('SELECT uid FROM act WHERE key = ?').pluck();
      let [common, most] = [0, Number(copy.prepare('SELECT coalesce(max(key), 0) FROM act').pluck().get())];
      while (common < most) {
        const middle = Math.ceil((common + most) / 2);
        if (idThere.get(middle) === idHere.get(middle)) common = middle;
        else most = middle - 1;
      }
      const again = Number(copy.prepare('SELECT count(*) FROM act WHERE key > ?').pluck().get(common));
      return { ...backup, gone: after.all(common) as number[], again };
    }),
  );
}

/** Makes a checked copy of an open ledger and removes copies that need not stay. */
export function makeBackup(
  db: Database.Database,
  file: string,
  clock: Clock,
): { file: string; bytes: number } {
  const made = copyChecked(db, numbered(stamped(backupFolder(file), stemOf(file), clock)));
  // Copies made before a migration stay with the others and go like them.
  const all = copiesOf(file, holdingOf(db).uid).map((copy) => ({
    name: copy.file,
    madeAt: Date.parse(copy.madeAt),
    acts: copy.acts,
  }));
  // Another program may be doing the same.
  for (const name of backupsToRemove(all, clock.milliseconds()))
    if (name !== made) rmSync(name, { force: true });
  return { file: made, bytes: statSync(made).size };
}

/**
 * Keeps all that an open ledger holds, for a ledger whose own file is no longer where it was: beside that place, or where
 * its folder is gone as near to it as can be, or with the keeper's own files.
 * @returns where it lies
 * @throws what kept it from the last of these places
 */
export function saveBeside(db: Database.Database, file: string, clock: Clock): string {
  let near = dirname(file);
  while (!existsSync(near)) near = dirname(near);
  let trouble: unknown;
  for (const folder of new Set([near, homedir(), tmpdir()])) {
    try {
      return copyChecked(db, numbered(stamped(folder, `${stemOf(file)}-kept`, clock)));
    } catch (error) {
      trouble = error;
    }
  }
  throw trouble;
}

const COMPANIONS = ['', '-wal', '-shm'] as const;

/** Copies a damaged file with its companions beside itself. @returns where to */
export function copyAside(file: string, clock: Clock): string {
  for (const aside of numbered(stamped(dirname(file), `${stemOf(file)}-damaged`, clock))) {
    if (existsSync(aside)) continue;
    const made: string[] = [];
    try {
      for (const companion of COMPANIONS) {
        if (!existsSync(file + companion)) continue;
        copyFileSync(file + companion, aside + companion, constants.COPYFILE_EXCL);
        made.push(aside + companion);
      }
      return aside;
    } catch (error) {
      for (const name of made) rmSync(name, { force: true });
      // Another program took the name meanwhile: the next one.
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
    }
  }
  throw new Error('there is always a next name');
}

/**
 * Puts a whole ledger in the place of a damaged one, which is kept beside it. Where that can't be done all is as before.
 * @param make writes the whole ledger to a file; is given the copy of the damaged one too
 * @returns where the damaged one lies now, with its companions
 */
export function replaceDamaged(
  file: string,
  clock: Clock,
  make: (part: string, aside: string) => void,
): string {
  const aside = copyAside(file, clock);
  const copied = COMPANIONS.filter((end) => existsSync(aside + end));
  const part = ownName(file);
  try {
    make(part, aside);
    flush(part);
    // A log of the old file must not be read as one of the new.
    for (const log of [`${file}-wal`, `${file}-shm`]) rmSync(log, { force: true });
    putOver(part, file);
    return aside;
  } catch (error) {
    // What is not in its place any more stays in the copy.
    for (const end of COMPANIONS) if (existsSync(file + end)) rmSync(aside + end, { force: true });
    throw error;
  } finally {
    rmSync(part, { force: true });
    // Reading the copy makes what the file did not have.
    for (const end of COMPANIONS) if (!copied.includes(end)) rmSync(aside + end, { force: true });
  }
}

/**
 * Puts a copy of a backup in the place of a ledger in order.
 * @param letGo makes a backup of what is there and closes it: called once the copy is whole
 * @throws Refused 'not a backup'; what kept it from being put there: then all is as before, or closed
 */
export function putBack(file: string, backup: string, letGo: () => void): void {
  if (!goodBackups(file).some((one) => one.file === resolve(backup)))
    throw new Refused('not a backup', { file: backup });
  const part = ownName(file);
  try {
    copyFileSync(backup, part);
    flush(part);
    letGo();
    for (const log of [`${file}-wal`, `${file}-shm`]) rmSync(log, { force: true });
    putOver(part, file);
  } finally {
    rmSync(part, { force: true });
  }
}

/**
 * Puts the newest good backup in the place of a damaged ledger, which is kept beside it.
 * @throws Refused 'no backup'
 */
export function restoreNewest(file: string, clock: Clock): void {
  const [newest] = goodBackups(file);
  if (!newest) throw new Refused('no backup');
  replaceDamaged(file, clock, (part) => copyFileSync(newest.file, part));
}
