// An invented ledger, made in a program of its own: it needs all of Jarline's code, which a worker of tests would first put
// through a transformer file by file, and its hundred thousand jars would stay in the worker's memory.
import { spawnSync } from 'node:child_process';
import { join, resolve } from 'node:path';
import type { Wanted } from './synthetic-ledger';

const root = resolve(import.meta.dirname, '..');

/** @returns the path of a new ledger file in a folder of its own, to be removed by the caller */
export function madeLedger(wanted: Wanted): { file: string; folder: string } {
  const args = [join(root, 'main/launch/run.mjs'), 'e2e/write-ledger.ts', JSON.stringify(wanted)];
  const made = spawnSync(process.execPath, args, { cwd: root, encoding: 'utf8' });
  if (made.status !== 0) throw new Error(`no ledger was made: ${made.stderr}`);
  return JSON.parse(made.stdout) as { file: string; folder: string };
}
