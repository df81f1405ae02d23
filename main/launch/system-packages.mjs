// What a bare Debian-like machine lacks for a window: found by looking, installed where that is allowed, else named.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { hasDisplay } from './display.mjs';
import { notice, Refused } from './places.mjs';

const run = (command, args) =>
  spawnSync(command, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
/** Newer Debian carries some under another name, by which they are asked for first: the older one may be no more than a hint. */
const WINDOW_LIBRARIES = [
  ['libnss3'],
  ['libgtk-3-0t64', 'libgtk-3-0'],
  ['libgbm1'],
  ['libasound2t64', 'libasound2'],
];

function hasFonts(folder = '/usr/share/fonts') {
  if (!existsSync(folder)) return false;
  return readdirSync(folder, { recursive: true }).some((name) =>
    /\.(ttf|otf|pfb|woff2?)$/i.test(String(name)),
  );
}

/**
 * What is missing of what was found by looking, as lists of the names each package may have. Pure.
 * @param {{ display: boolean, xvfb: boolean, lddSays: string, fonts: boolean }} found whether there is a display or
 *   Xvfb to make one, what ldd says of the executable, whether any font is installed
 * @returns {string[][]}
 */
export function packagesMissing({ display, xvfb, lddSays, fonts }) {
  const missing = [];
  if (!display && !xvfb) missing.push(['xvfb']);
  if (/=> not found/.test(lddSays)) missing.push(...WINDOW_LIBRARIES);
  if (!fonts) missing.push(['fonts-dejavu-core']);
  return missing;
}

/**
 * Which of a package's names to install: the first that the system knows. Pure.
 * @param {readonly string[][]} missing
 * @param {(name: string) => boolean} isKnown
 * @returns {{ install: string[], unknown: string[][] }} what to install, and what goes by no name known there
 */
export function namesToInstall(missing, isKnown) {
  const install = missing.flatMap((either) => either.find(isKnown) ?? []);
  return { install, unknown: missing.filter((either) => !either.some(isKnown)) };
}

/** Whether apt has a package of that name, not only others that stand in for it. */
const isKnown = (name) =>
  run('apt-cache', ['show', '--no-all-versions', name]).stdout?.startsWith(`Package: ${name}\n`);

const look = (executable) =>
  packagesMissing({
    display: hasDisplay(),
    xvfb: !run('Xvfb', ['-help']).error,
    lddSays: run('ldd', [executable]).stdout ?? '',
    fonts: hasFonts(),
  });

/** @throws Refused with the packages' names where they are missing and can't be installed from here */
export function ensureSystemPackages(executable) {
  if (process.platform !== 'linux') return;
  const missing = look(executable);
  if (missing.length === 0) return;
  const names = missing.map((either) => either.join(' or '));
  const please = `These system packages are missing for a window: ${names.join(', ')}. Install them and run the command again.`;
  if (process.getuid() !== 0 || run('apt-get', ['--version']).error) throw new Refused(please);
  notice(`installing system packages: ${names.join(', ')} …`);
  if (run('apt-get', ['update', '-qq']).status !== 0)
    notice('the list of packages could not be renewed; trying with the one there is.');
  const { install, unknown } = namesToInstall(missing, isKnown);
  if (unknown.length > 0) throw new Refused(please);
  const done = spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...install], {
    stdio: ['ignore', 2, 2],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
  if (done.status !== 0 || look(executable).length > 0) throw new Refused(please);
}
