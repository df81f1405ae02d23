// npm run package:try: makes the unpacked package and lives with it, untouched as it is: a ledger begun, a jar recorded, closed,
// opened again; one that the oldest version wrote, opened by a double click; a jar's file; another program's start.
// Driven from outside, by Chromium's own port: the fuses of the package leave no inspector to ask by.
import { spawn, spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { onNode24 } from './node.mjs';
import { launch, notice, Refused, root } from './places.mjs';

const KEPT = join(root, 'tests/ledger/version-3.sqlite.gz');
const MOST_MS = 60_000;

/** @throws Refused with what was expected */
function holds(what, found, wanted) {
  if (JSON.stringify(found) !== JSON.stringify(wanted))
    throw new Refused(`${what}: ${JSON.stringify(found)} in place of ${JSON.stringify(wanted)}.`);
  notice(`the package: ${what}`);
}

/** Waits until a question about the page is answered as wished. */
async function until(what, ask, wanted) {
  const end = Date.now() + MOST_MS;
  let found;
  do {
    found = await ask();
    if (JSON.stringify(found) === JSON.stringify(wanted)) break;
    await new Promise((done) => setTimeout(done, 100));
  } while (Date.now() < end);
  holds(what, found, wanted);
}

/** The package's window, as a keeper starts it. */
async function opened(executable, args) {
  const { chromium } = await import('@playwright/test');
  const program = spawn(executable, ['--remote-debugging-port=0', ...args], {
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  const ended = new Promise((done) => program.once('close', done));
  const address = await new Promise((found, failed) => {
    let said = '';
    program.stderr.on('data', (bytes) => {
      said += bytes;
      const [, url] = /DevTools listening on (ws:\S+)/.exec(said) ?? [];
      if (url) found(url);
    });
    program.once('close', () => failed(new Refused(`the package ended before it was up: ${said}`)));
  });
  const browser = await chromium.connectOverCDP(address);
  const [context] = browser.contexts();
  const page = context.pages()[0] ?? (await context.waitForEvent('page'));
  await page.locator('main.screen:not([aria-busy])').waitFor({ timeout: MOST_MS });
  const call = (name, input = {}) =>
    page.evaluate(([asked, given]) => globalThis.jarline.call[asked](given), [name, input]);
  const value = async (name, input) => {
    const answer = await call(name, input);
    if (!answer.ok) throw new Refused(`${name}: ${JSON.stringify(answer.error)}`);
    return answer.value;
  };
  return {
    page,
    value,
    /** By its window, as a keeper closes it. */
    async close() {
      // The connection goes down with the window that it closes.
      await page.close({ runBeforeUnload: true }).catch((error) => {
        if (!/closed/.test(String(error))) throw error;
      });
      holds('closes with its window', await ended, 0);
    },
  };
}

const JAR = {
  letter: 'a', state: 'made', vessel: null, finalVolume: null, finalVolumeKnown: null, milk: 'milk', milkAmount: null, milkPackage: null,
  countPerMl: null, onShelf: null, goneOn: null, note: null, hold: null, additions: [], seedings: [], outcome: null,
}; // prettier-ignore
const BATCH = { madeOn: '2026-03-01', word: null, note: null, holds: [], jars: [JAR], sameLabelMeant: false, draft: null }; // prettier-ignore

/** Begun, recorded, closed, opened again: still there. */
async function live(start) {
  let program = await start();
  await program.page.getByRole('button', { name: 'Start an empty ledger' }).click();
  await until(
    'begins a ledger by its button',
    async () => (await program.value('app.state')).ledger?.jars,
    0,
  );
  const made = await program.value('batch.record', BATCH);
  await program.page.getByRole('treeitem', { name: /^1 Mar a/ }).waitFor({ timeout: MOST_MS });
  holds('records a jar and draws it', made.jars.length, 1);
  await program.close();
  program = await start();
  holds('has it when it is opened again', (await program.value('app.state')).ledger.jars, 1);
  holds('in order', (await program.value('jar.get', { id: made.jars[0] })).record.jar.letter, 'a');
  return program;
}

/** What a double click does while the window is open: the program is started again with the file. */
function doubleClick(executable, args, file) {
  const second = spawnSync(executable, [...args, file], { encoding: 'utf8', timeout: MOST_MS });
  holds('a second start leaves it to the window that is open', second.status, 0);
}

await launch(() =>
  onNode24(async () => {
    const { machineFlags } = await import('./runtime.mjs');
    const { useDisplay } = await import('./display.mjs');
    const made = spawnSync(process.execPath, [join(root, 'main/launch/package.mjs')], {
      stdio: ['ignore', 2, 2],
    });
    if (made.status !== 0) throw new Refused('the package could not be made; why stands above.');
    const executable = join(root, 'release/linux-unpacked/jarline');
    const stop = await useDisplay();
    const data = mkdtempSync(join(tmpdir(), 'jarline-package-'));
    const args = [`--user-data-dir=${join(data, 'data')}`, ...machineFlags()];
    try {
      mkdirSync(join(data, 'data'));
      const program = await live(() => opened(executable, args));
      const old = join(data, 'old.jarline');
      writeFileSync(old, gunzipSync(readFileSync(KEPT)));
      doubleClick(executable, args, old);
      await until(
        'opens a ledger of the oldest version by a double click, all of its jars there',
        async () => (await program.value('app.state')).ledger?.jars,
        5,
      );
      const { backups } = await program.value('ledger.backups');
      holds('kept a copy of it as it was', backups.length > 0, true);
      const file = join(data, 'a jar.jarline-jar');
      copyFileSync(join(root, 'package.json'), file);
      doubleClick(executable, args, file);
      await program.page.getByRole('dialog', { name: 'Receive a jar' }).getByRole('alert').waitFor({ timeout: MOST_MS });
      notice('the package: shows a jar’s file that is none, with its reason');
      await program.close();
    } finally {
      stop();
      rmSync(data, { recursive: true, force: true, maxRetries: 5 });
    }
    notice('all of it held, in the package itself');
  }),
); // prettier-ignore
