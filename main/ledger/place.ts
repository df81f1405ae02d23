// Where a file really lies, and putting a new one there without ever writing over another: the file is made under a
// name of its own beside the place and takes its name in one step, once it is whole and on the disk.
import { randomBytes } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fsyncSync,
  linkSync,
  lstatSync,
  mkdirSync,
  openSync,
  readdirSync,
  readlinkSync,
  realpathSync,
  renameSync,
  rmdirSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { hostname } from 'node:os';
import { dirname, join, resolve } from 'node:path';

/** More links one behind the other than any system follows. */
const MOST_LINKS = 40;

/**
 * The file that a name leads to: a link is followed, also one to a file that is not there yet, so that a ledger's
 * companions lie beside the ledger and not beside the link. A name that is no link is left as it is, and so is one whose
 * links lead in a circle (opening it says so).
 */
export function realFile(named: string): string {
  let file = named;
  for (let links = 0; links < MOST_LINKS; links++) {
    try {
      if (!lstatSync(file).isSymbolicLink()) return file;
      // From the link's real folder: ".." in a link is not the ".." of the name by which that folder was reached.
      file = resolve(realpathSync(dirname(file)), readlinkSync(file));
    } catch {
      // Nothing there, or out of reach: whoever opens it says which.
      return file;
    }
  }
  return named;
}

/** A name beside a place that nobody else uses: it tells which process made it. */
export const ownName = (place: string): string =>
  `${place}.${hostname()
    .replaceAll(/[^\w-]/g, '_')
    .slice(0, 40)}.${process.pid}-${randomBytes(4).toString('hex')}.part`;

/** What tells a file from another that lies under the same name, and its bytes; null where none lies there. */
export function identityOf(file: string): { same: string; size: bigint } | null {
  const stat = statSync(file, { bigint: true, throwIfNoEntry: false });
  return stat ? { same: `${stat.dev}:${stat.ino}`, size: stat.size } : null;
}

/** Makes sure that a file's bytes are on the disk. */
export function flush(file: string): void {
  const handle = openSync(file, 'r+');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

/** Makes sure that the names in a folder are on the disk. Windows does so by itself and opens no folder. */
function flushNames(folder: string): void {
  if (process.platform === 'win32') return;
  const handle = openSync(folder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

const codeOf = (error: unknown): string | undefined => (error as NodeJS.ErrnoException).code;

/** Longer than two system calls take, also on a slow disk (ms). */
const TURN_MS = 10_000;

/** Where the disk has no second names for a file (FAT): one at a time looks and puts. */
function putInTurn(made: string, place: string): boolean {
  const turn = `${place}.turn`;
  for (;;) {
    try {
      mkdirSync(turn);
      break;
    } catch (error) {
      if (codeOf(error) !== 'EEXIST') throw error;
      if (existsSync(place)) return false;
      const since = statSync(turn, { throwIfNoEntry: false })?.mtimeMs;
      // Killed between the two calls below.
      if (since !== undefined && Date.now() - since > TURN_MS) rmSync(turn, { recursive: true, force: true });
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 20);
    }
  }
  try {
    if (existsSync(place)) return false;
    renameSync(made, place);
    return true;
  } finally {
    rmdirSync(turn);
  }
}

/**
 * Gives a file that is whole its place, unless something lies there: then that stays and the made file too.
 * @param link how a file gets a second name: for tests of disks that know no such thing
 * @returns whether it was put there
 */
export function putNew(made: string, place: string, link: typeof linkSync = linkSync): boolean {
  flush(made);
  try {
    link(made, place);
    rmSync(made);
  } catch (error) {
    const code = codeOf(error);
    if (code === 'EEXIST') return false;
    if (!['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK', 'EISDIR', 'EINVAL'].includes(code ?? ''))
      throw error;
    if (!putInTurn(made, place)) return false;
  }
  flushNames(dirname(place));
  return true;
}

/** Puts a whole file where another may lie, in one step. */
export function putOver(made: string, place: string): void {
  flush(made);
  renameSync(made, place);
  flushNames(dirname(place));
}

/** Long past the time that making a file takes (ms). */
const ABANDONED_AFTER_MS = 3_600_000;

/** Names that only this program gives, now and before the maker was told in them. */
const OWN =
  /\.(?:[\w-]+)\.\d+-[0-9a-f]{8}\.part(?:-journal|-wal|-shm)?$|-\d{8}T\d{6}Z(?:-\d+)?\.sqlite\.part(?:-journal)?$/;

/** Whether the process that made a file under a name of its own may still be at it. */
function mayBeAtIt(name: string): boolean {
  const [, host, pid] = /\.([\w-]+)\.(\d+)-[0-9a-f]{8}\.part/.exec(name) ?? [];
  if (host === undefined || !ownName('').startsWith(`.${host}.`)) return false;
  try {
    process.kill(Number(pid), 0);
    return true;
  } catch (error) {
    return codeOf(error) !== 'ESRCH';
  }
}

/**
 * Removes what a program that was killed while it made a file left in a folder under a name of its own. What may still be
 * under way stays: what is young, and what a process that still runs has made.
 */
export function removeAbandoned(folder: string): void {
  for (const name of readdirSync(folder)) {
    if (!OWN.test(name) || mayBeAtIt(name)) continue;
    const file = join(folder, name);
    // By the disk's clock on both sides: --now moves the ledger's own.
    const since = statSync(file, { throwIfNoEntry: false })?.mtimeMs;
    if (since !== undefined && Date.now() - since > ABANDONED_AFTER_MS) rmSync(file, { force: true });
  }
}

/** Writes a whole file where the system's dialog was told to, which has asked before it names one that is there. */
export function writeOver(file: string, bytes: Uint8Array): void {
  const part = ownName(file);
  try {
    writeFileSync(part, bytes, { flag: 'wx' });
    putOver(part, file);
  } finally {
    rmSync(part, { force: true });
  }
}
