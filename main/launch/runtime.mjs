// Finds an Electron to run: the one asked for, the installed one, electron's own download, or last a stand-in.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { withLock } from './lock.mjs';
import { notice, Refused, root } from './places.mjs';
import { prepareStandIn, standInDist } from '../../e2e/stand-in/stand-in.mjs';

const EXECUTABLES = { darwin: 'Electron.app/Contents/MacOS/Electron', win32: 'electron.exe' };
const electronPackage = join(root, 'node_modules/electron');

function look(dist, source) {
  const executable = join(dist, EXECUTABLES[process.platform] ?? 'electron');
  return existsSync(executable) ? { executable, dist, source } : undefined;
}

const official = () => look(join(electronPackage, 'dist'), 'official');
const standIn = () => look(standInDist, 'stand-in');

/** electron's own installer. Behind some firewalls its download hangs rather than fails, hence the limit. */
function download() {
  notice("fetching Electron with its package's own installer …");
  const done = spawnSync(process.execPath, [join(electronPackage, 'install.js')], {
    stdio: 'ignore',
    timeout: 180000,
  });
  return done.status === 0;
}

/**
 * The Electron to run. Needs the dependencies installed; may take minutes the first time.
 * @returns {{ executable: string, dist: string, source: 'asked for' | 'official' | 'stand-in' }}
 * @throws Refused where none can be had
 */
export function findRuntime() {
  const asked = process.env.ELECTRON_OVERRIDE_DIST_PATH;
  if (asked) {
    const runtime = look(resolve(asked), 'asked for');
    if (!runtime) throw new Refused(`ELECTRON_OVERRIDE_DIST_PATH names a folder without Electron: ${asked}`);
    return runtime;
  }
  return (
    official() ??
    standIn() ??
    withLock('runtime', () => {
      const found = official() ?? standIn() ?? (download() ? official() : undefined);
      if (found) return found;
      prepareStandIn();
      return standIn();
    })
  );
}

/** Flags every start needs on this machine. As root Chromium's own sandbox can't start; `sandbox: true` still holds. */
export function machineFlags() {
  return process.getuid && process.getuid() === 0 ? ['--no-sandbox', '--disable-gpu'] : [];
}
