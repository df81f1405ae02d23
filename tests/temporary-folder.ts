// Every file that the tests make lies in one folder, which goes when they are over. It lies in memory where the machine has
// a file system there: nothing that is tested outlives a power cut, and waiting for a disk took a third of the time.
import { existsSync, mkdtempSync, rmSync, statfsSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const MEMORY = '/dev/shm';
/** What the files of a run take at most, and as much again. */
const ROOM = 2 ** 31;

/** Where temporary files go: the folder that TMPDIR names, else memory where there is room, else the system's own. */
function place(): string {
  if (process.env['TMPDIR'] || process.platform !== 'linux') return tmpdir();
  if (!existsSync(MEMORY)) return tmpdir();
  const { bavail, bsize } = statfsSync(MEMORY);
  return bavail * bsize >= ROOM ? MEMORY : tmpdir();
}

/**
 * Run by vitest and by playwright once, before their workers start: these inherit where temporary files go.
 * @returns what is done at the end
 */
export default function useTemporaryFolder(): () => void {
  const folder = mkdtempSync(join(place(), 'jarline-tests-'));
  // What is built there finds the packages.
  symlinkSync(join(import.meta.dirname, '../node_modules'), join(folder, 'node_modules'));
  for (const name of ['TMPDIR', 'TEMP', 'TMP']) process.env[name] = folder;
  // Programs that tests start one after another are compiled once: that is a third of what a short one takes.
  process.env['NODE_COMPILE_CACHE'] = join(folder, 'compiled');
  return () => rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
}
