// The stages of `npm test`, in their order. Each runs tools of node_modules under Node 24; its words go to stderr.
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { ensureBuilt } from './build.mjs';
import { useDisplays } from './display.mjs';
import { root } from './places.mjs';
import { findRuntime } from './runtime.mjs';
import { ensureSystemPackages } from './system-packages.mjs';

const FORMAT = ['--check', '--log-level', 'warn'];
const reports = join(root, 'test-results');

/** Runs a package's own script; true if it is content. */
function tool(script, args, env = {}) {
  const done = spawnSync(process.execPath, [join(root, 'node_modules', script), ...args], {
    cwd: root,
    stdio: ['ignore', 2, 2],
    env: { ...process.env, ...env },
  });
  return done.status === 0;
}

/**
 * Runs tools beside one another, as many as the machine has cores, and tells each one's words in one piece.
 * @param {readonly [script: string, args: string[]][]} wanted
 * @returns {Promise<boolean>} whether all are content: none is left out because another was not
 */
async function toolsTogether(wanted) {
  const waiting = [...wanted];
  let content = true;
  const work = async () => {
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      const [script, args] = next;
      const child = spawn(process.execPath, [join(root, 'node_modules', script), ...args], {
        cwd: root,
        stdio: ['ignore', 'pipe', 'pipe'],
      });
      const said = [];
      for (const stream of [child.stdout, child.stderr]) stream.on('data', (bytes) => said.push(bytes));
      const [code] = await once(child, 'close');
      process.stderr.write(Buffer.concat(said));
      if (code !== 0) content = false;
    }
  };
  await Promise.all(Array.from({ length: availableParallelism() }, work));
  return content;
}

/** Windows tried side by side: one more than cores, since part of a window's time goes by in waiting, not in computing. */
const WINDOWS = availableParallelism() + 1;

const nothing = { passed: 0, failed: 0, skipped: [] };

function readReport(file) {
  return existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : undefined;
}

/** Some tests start the built program: the headless host, the worker. */
function vitest(name, args) {
  ensureBuilt();
  const file = join(reports, `${name}.json`);
  mkdirSync(reports, { recursive: true });
  rmSync(file, { force: true });
  const ok = tool('vitest/vitest.mjs', [
    'run',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${file}`,
    ...args,
  ]);
  const report = readReport(file);
  if (!report) return { ok, ...nothing };
  const skipped = report.testResults
    .flatMap((one) => one.assertionResults)
    .filter((one) => !['passed', 'failed'].includes(one.status))
    .map((one) => one.fullName);
  return { ok, passed: report.numPassedTests, failed: report.numFailedTests, skipped };
}

async function playwright(args) {
  ensureBuilt();
  const runtime = findRuntime();
  ensureSystemPackages(runtime.executable);
  const file = join(reports, 'playwright.json');
  rmSync(file, { force: true });
  const { env, stop } = await useDisplays(WINDOWS);
  const ok = tool(
    '@playwright/test/cli.js',
    ['test', '--config', 'e2e/playwright.config.ts', '--project=window', ...args],
    { ...env, PLAYWRIGHT_JSON_OUTPUT_FILE: file },
  );
  stop();
  const report = readReport(file);
  if (!report) return { ok, ...nothing };
  const { expected, flaky, unexpected } = report.stats;
  const titles = (suite) => [
    ...suite.specs
      .filter((one) => one.tests.some((test) => test.status === 'skipped'))
      .map((one) => one.title),
    ...(suite.suites ?? []).flatMap(titles),
  ];
  return { ok, passed: expected + flaky, failed: unexpected, skipped: report.suites.flatMap(titles) };
}

const check = (work) => async () => ({ ok: await work(), ...nothing });

/**
 * @type {readonly { name: string, run: (files: string[]) => unknown }[]}
 * `files` narrow vitest and playwright down to what was named on the command line.
 */
export const STAGES = [
  {
    name: 'types',
    // Each folder by its own settings, above all core, which stays pure; the others read what it declares, not its code anew.
    run: check(() => tool('typescript/bin/tsc', ['-b'])),
  },
  {
    name: 'lint',
    run: check(() =>
      toolsTogether([
        // The formatter uses one core: two of it, each for about half of what there is.
        ['prettier/bin/prettier.cjs', [...FORMAT, '.', '!core/**', '!main/**']],
        ['prettier/bin/prettier.cjs', [...FORMAT, 'core', 'main']],
        ['oxlint/bin/oxlint', ['--deny-warnings']],
      ]),
    ),
  },
  { name: 'imports', run: () => vitest('imports', ['tests/architecture']) },
  {
    name: 'build',
    run: check(() => {
      ensureBuilt();
      return true;
    }),
  },
  {
    name: 'vitest',
    run: (files) => vitest('vitest', files.length > 0 ? files : ['--exclude', 'tests/architecture/**']),
  },
  { name: 'package', run: check(() => tool('../main/launch/package.mjs', [])) },
  { name: 'playwright', run: (files) => playwright(files) },
];
