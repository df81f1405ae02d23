// One at a time: two commands in one checkout must not install or build into each other.
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { cache, notice, Refused } from './places.mjs';

const pause = new Int32Array(new SharedArrayBuffer(4));

function isAlive(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code === 'EPERM';
  }
}

function readHolder(file) {
  try {
    return Number(readFileSync(file, 'utf8')) || 0;
  } catch {
    return 0; // let go between two looks
  }
}

/** Runs `work` (synchronous) while no other process holds the lock of that name; waits up to ten minutes. */
export function withLock(name, work) {
  const file = join(cache, 'locks', `${name}.lock`);
  mkdirSync(join(cache, 'locks'), { recursive: true });
  const started = Date.now();
  for (let told = false; ;) {
    try {
      writeFileSync(file, String(process.pid), { flag: 'wx' });
      break;
    } catch (error) {
      if (error.code !== 'EEXIST') throw error;
    }
    const holder = readHolder(file);
    if (holder > 0 && !isAlive(holder)) {
      rmSync(file, { force: true }); // its process ended without tidying up
      continue;
    }
    if (Date.now() - started > 600000)
      throw new Refused(`Another Jarline command (process ${holder}) takes too long.`);
    if (!told && Date.now() - started > 1000) {
      notice(`waiting for another Jarline command (process ${holder}) …`);
      told = true;
    }
    Atomics.wait(pause, 0, 0, 50);
  }
  try {
    return work();
  } finally {
    rmSync(file, { force: true });
  }
}
