// Checked copies beside the ledger, which of them stay, and the ways out when a ledger is damaged. A damaged file is
// never changed: it is put aside whole before anything takes its place.
import {
  copyFileSync,
  closeSync,
  existsSync,
  fsyncSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import Database from 'better-sqlite3';
import { type Clock, stampOf } from './clock';
import { copyChecked, inspect } from './open';
import { backupFolder } from './protocol';
import { Refused } from './refusal';
import { backupsToRemove, type Kept } from './retention';

export interface Backup {
  readonly file: string;
  /** A moment, UTC. */
  readonly madeAt: string;
  readonly jars: number;
}

const STAMP = /-(\d{4})(\d{2})(\d{2})T(\d{2})(\d{2})(\d{2})Z(?:-\d+)?\.sqlite$/;

/** The moment in a backup's name, or null for a file that is not a backup of ours. */
function madeAt(name: string): string | null {
  const parts = STAMP.exec(name);
  return parts ? `${parts[1]}-${parts[2]}-${parts[3]}T${parts[4]}:${parts[5]}:${parts[6]}Z` : null;
}

const stemOf = (file: string): string => basename(file, extname(file));

/** A name that is not taken: the stamp, with a number where two are made in one second. */
function freeName(folder: string, stem: string, clock: Clock): string {
  const stamp = `${stem}-${stampOf(clock.milliseconds())}`;
  for (let number = 1; ; number++) {
    const name = join(folder, number === 1 ? `${stamp}.sqlite` : `${stamp}-${number}.sqlite`);
    if (!existsSync(name)) return name;
  }
}

/** Backups beside a ledger, newest first, whether whole or not. */
export function backupNames(file: string): { file: string; madeAt: string }[] {
  const folder = backupFolder(file);
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .flatMap((name) => {
      const at = madeAt(name);
      return at === null ? [] : [{ file: join(folder, name), madeAt: at }];
    })
    .toSorted((a, b) => (a.madeAt < b.madeAt ? 1 : a.madeAt > b.madeAt ? -1 : a.file < b.file ? 1 : -1));
}

/** Backups that are whole and of a version we know, newest first. */
export function goodBackups(file: string): Backup[] {
  return backupNames(file).flatMap((backup) => {
    try {
      inspect(backup.file);
    } catch (error) {
      if (error instanceof Refused) return [];
      throw error;
    }
    const db = new Database(backup.file, { readonly: true });
    try {
      const jars = db.prepare("SELECT count(*) FROM jar WHERE state IN ('made', 'lost')").pluck().get();
      return [{ ...backup, jars: Number(jars) }];
    } finally {
      db.close();
    }
  });
}

/** Makes a checked copy of an open ledger and removes copies that need not stay. */
export function makeBackup(
  db: Database.Database,
  file: string,
  clock: Clock,
): { file: string; bytes: number } {
  const to = freeName(backupFolder(file), stemOf(file), clock);
  copyChecked(db, to);
  // Copies made before a migration stay with the others and go like them.
  const all: Kept[] = backupNames(file).map((one) => ({ name: one.file, madeAt: Date.parse(one.madeAt) }));
  for (const name of backupsToRemove(all, clock.milliseconds())) if (name !== to) rmSync(name);
  return { file: to, bytes: statSync(to).size };
}

const COMPANIONS = ['', '-wal', '-shm'] as const;

/** Copies a damaged file with its companions beside itself. @returns where to */
export function copyAside(file: string, clock: Clock): string {
  const aside = freeName(dirname(file), `${stemOf(file)}-damaged`, clock);
  for (const companion of COMPANIONS) {
    if (existsSync(file + companion)) copyFileSync(file + companion, aside + companion);
  }
  return aside;
}

/** Puts a whole ledger file where another lies: on disk first, then in place in one step. */
export function putInPlace(whole: string, file: string): void {
  const part = `${file}.part`;
  copyFileSync(whole, part);
  const handle = openSync(part, 'r+');
  fsyncSync(handle);
  closeSync(handle);
  // A log of the old file must not be read as one of the new.
  rmSync(`${file}-wal`, { force: true });
  rmSync(`${file}-shm`, { force: true });
  renameSync(part, file);
}

/**
 * Puts the newest good backup in the place of a damaged ledger, which is kept beside it.
 * @throws Refused 'no backup'
 */
export function restoreNewest(file: string, clock: Clock): { from: string; aside: string } {
  const [newest] = goodBackups(file);
  if (!newest) throw new Refused('no backup');
  const aside = copyAside(file, clock);
  putInPlace(newest.file, file);
  return { from: newest.file, aside };
}
