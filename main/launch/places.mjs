// Where things lie and how the launcher speaks. Old syntax and Node built-ins only: runs before anything is installed.
import { createHash } from 'node:crypto';
import { homedir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder that package.json lies in. */
export const root = resolve(dirname(fileURLToPath(import.meta.url)), '../..');

/** Kept between checkouts and outside node_modules, which `npm ci` empties: Node and a prepared runtime. */
export const cache = process.env.JARLINE_CACHE ? resolve(process.env.JARLINE_CACHE) : defaultCache();

function defaultCache() {
  if (process.platform === 'win32') {
    return join(process.env.LOCALAPPDATA || join(homedir(), 'AppData', 'Local'), 'jarline', 'cache');
  }
  if (process.platform === 'darwin') return join(homedir(), 'Library', 'Caches', 'jarline');
  return join(process.env.XDG_CACHE_HOME || join(homedir(), '.cache'), 'jarline');
}

/** Short and stable for this checkout: names its lock files in the cache. */
export const checkout = createHash('sha256').update(root).digest('hex').slice(0, 12);

/** Where the person stood who typed the command: npm itself moves to the root. */
export const typedFrom = process.env.INIT_CWD || process.cwd();

/** Says what is being done, on stderr: stdout carries replies only. */
export function notice(sentence) {
  process.stderr.write(`jarline: ${sentence}\n`);
}

/** Something the person has to mend: shown as one sentence, without a stack. */
export class Refused extends Error {}

/** Runs a launcher's work; a `Refused` ends it with its sentence and that exit code. */
export async function launch(work, refusedCode = 1) {
  try {
    await work();
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    notice(error.message);
    process.exitCode = refusedCode;
  }
}
