// npm start: brings what is missing, builds, and opens the window.
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { isAbsolute, join, resolve } from 'node:path';
import { displayTrouble } from './display.mjs';
import { onNode24 } from './node.mjs';
import { launch, notice, Refused, root, typedFrom } from './places.mjs';

const USAGE = 'npm start -- [--demo] [--ledger FILE] [--now MOMENT] [--user-data-dir FOLDER] [--smoke]';
const FLAGS = ['--demo', '--smoke'];
const PATHS = ['--ledger', '--user-data-dir'];

/** Checks what was typed; paths are taken from where it was typed. */
function windowArguments(typed) {
  const result = [];
  for (let i = 0; i < typed.length; i++) {
    const [name, given] = typed[i].split(/=(.*)/s);
    if (FLAGS.includes(name) && given === undefined) result.push(name);
    else if (name === '--now' || PATHS.includes(name)) {
      const value = given ?? typed[++i];
      if (!value) throw new Refused(`${name} needs a value. Usage: ${USAGE}`);
      result.push(
        `${name}=${PATHS.includes(name) && !isAbsolute(value) ? resolve(typedFrom, value) : value}`,
      );
    } else throw new Refused(`${typed[i]} is not known. Usage: ${USAGE}`);
  }
  return result;
}

await launch(async () => {
  const given = windowArguments(process.argv.slice(2));
  const trouble = displayTrouble();
  if (trouble) throw new Refused(trouble);
  await onNode24(async () => {
    const { ensureDependencies } = await import('./dependencies.mjs');
    const { ensureBuilt } = await import('./build.mjs');
    const { findRuntime, machineFlags } = await import('./runtime.mjs');
    ensureDependencies();
    ensureBuilt();
    const runtime = findRuntime();
    if (runtime.source === 'stand-in') notice('running on the stand-in Electron of development and tests.');
    // The invented ledger leaves nothing behind, and the keeper's own data alone.
    const passing = given.includes('--demo') && !given.some((one) => one.startsWith('--user-data-dir'));
    const data = passing ? mkdtempSync(join(tmpdir(), 'jarline-data-')) : undefined;
    if (data) given.push(`--user-data-dir=${data}`);
    const env = { ...process.env };
    delete env.ELECTRON_RUN_AS_NODE;
    const child = spawn(runtime.executable, [root, ...given, ...machineFlags()], { stdio: 'inherit', env });
    for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal));
    process.exitCode = await new Promise((done, failed) => {
      child.on('error', failed);
      child.on('close', (code, signal) => done(signal ? 1 : code));
    });
    if (data) rmSync(data, { recursive: true, force: true, maxRetries: 5 });
  });
});
