// What a bare Debian-like machine lacks for a window: found by looking, installed where that is allowed, else named.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { hasDisplay } from './display.mjs';
import { notice, Refused } from './places.mjs';

const run = (command, args) =>
  spawnSync(command, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
/** Newer Debian carries some under a second name. */
const WINDOW_LIBRARIES = [
  ['libnss3'],
  ['libgtk-3-0', 'libgtk-3-0t64'],
  ['libgbm1'],
  ['libasound2', 'libasound2t64'],
];

function hasFonts(folder = '/usr/share/fonts') {
  if (!existsSync(folder)) return false;
  return readdirSync(folder, { recursive: true }).some((name) =>
    /\.(ttf|otf|pfb|woff2?)$/i.test(String(name)),
  );
}

/** What is missing, as lists of the names each package may have. */
function missingPackages(executable) {
  const missing = [];
  if (!hasDisplay() && run('Xvfb', ['-help']).error) missing.push(['xvfb']);
  if (/not found/.test(run('ldd', [executable]).stdout ?? '')) missing.push(...WINDOW_LIBRARIES);
  if (!hasFonts()) missing.push(['fonts-dejavu-core']);
  return missing;
}

/** @throws Refused with the packages' names where they are missing and can't be installed from here */
export function ensureSystemPackages(executable) {
  if (process.platform !== 'linux') return;
  const missing = missingPackages(executable);
  if (missing.length === 0) return;
  const names = missing.map((either) => either.join(' or '));
  const please = `These system packages are missing for a window: ${names.join(', ')}. Install them and run the command again.`;
  if (process.getuid() !== 0 || run('apt-get', ['--version']).error) throw new Refused(please);
  notice(`installing system packages: ${names.join(', ')} …`);
  run('apt-get', ['update', '-qq']);
  const known = missing.map((either) => either.find((name) => run('apt-cache', ['show', name]).status === 0));
  const wanted = known.filter((name) => name !== undefined);
  const done = spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...wanted], {
    stdio: ['ignore', 2, 2],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
  if (done.status !== 0 || missingPackages(executable).length > 0) throw new Refused(please);
}
