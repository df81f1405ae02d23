// Which ledger is open in the window, with the real worker: what happens to its file behind the program's back, and what
// two programs do to each other's.
import { copyFileSync, existsSync, mkdirSync, readdirSync, renameSync, unlinkSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { beforeAll, expect, it, vi } from 'vitest';
import type { AppState, CallName, Result } from '../../core/contract';
import { refusalSentence } from '../../core/sentences';
import { OpenLedger } from '../../main/open-ledger';
import { built } from '../ledger/built';
import { must, newFile, NOW, openSession, plainSource } from '../ledger/ledger-files';

let workerFile: URL;
beforeAll(async () => {
  workerFile = pathToFileURL(await built('main/ledger-worker.ts'));
}, 60_000);

const opened = (file: string | null, changed: () => void = () => undefined): OpenLedger =>
  new OpenLedger(
    {
      workerFile, version: '0', timeZone: 'Europe/Berlin', now: () => NOW, locale: () => null, defaultFile: null, changed,
      doors: { chooseFile: () => Promise.resolve(null), showFolder: () => undefined, pdfOf: async () => new Uint8Array(), onPaper: async () => false, askCamera: async () => false },
      remember: () => undefined,
    },
    file,
  ); // prettier-ignore

async function value(ledger: OpenLedger, name: CallName, input: unknown): Promise<AppState> {
  const result = await ledger.call(name, input);
  if (!result.ok) throw new Error(refusalSentence(result.error));
  return result.value as AppState;
}
const codeOf = (result: Result<unknown>): string => (result.ok ? 'ok' : result.error.code);

it('a replaced file is noticed while nobody asks; the window is told, and opens what lies there when asked again', async () => {
  const file = newFile();
  const made = openSession(file, 'create');
  must(made, 'source.save', plainSource('Old Tin'));
  made.close();
  copyFileSync(file, `${file}.older`);
  let told = 0;
  const ledger = opened(file, () => (told += 1));
  await value(ledger, 'source.save', plainSource('New Tin'));
  await vi.waitFor(() => expect(told).toBeGreaterThan(0));
  told = 0;
  renameSync(`${file}.older`, file);
  await vi.waitFor(() => expect(told).toBeGreaterThan(0), 10_000);
  const state = await value(ledger, 'app.state', {});
  expect(state.ledger).toBeNull();
  expect(state.trouble?.sentence).toContain('Another file took the place of');
  expect(codeOf(await ledger.call('source.save', plainSource('Tin')))).toBe('ledger replaced');
  const [copy = ''] = readdirSync(dirname(file)).filter((name) => name.includes('-kept-'));
  expect((await value(ledger, 'ledger.open', { file })).ledger).toMatchObject({ file, sources: 1 });
  expect((await value(ledger, 'ledger.open', { file: join(dirname(file), copy) })).ledger?.sources).toBe(2);
  await ledger.close();
}, 60_000);

it('a deleted ledger is not made anew by opening it again', async () => {
  const file = newFile();
  const ledger = opened(file);
  await value(ledger, 'source.save', plainSource('Tin'));
  unlinkSync(file);
  expect(codeOf(await ledger.call('ledger.open', { file }))).toBe('no such file');
  expect((await value(ledger, 'app.state', {})).trouble?.sentence).toContain('moved or deleted');
  await ledger.close();
  expect(existsSync(file)).toBe(false);
}, 60_000);

it('the same file opened twice is one ledger, in one program and in two', async () => {
  const file = newFile();
  const [one, two] = [opened(file), opened(file)] as const;
  const [first, second] = await Promise.all([one, two].map((ledger) => value(ledger, 'app.state', {})));
  expect(first?.ledger?.uid).toBe(second?.ledger?.uid);
  await Promise.all(
    [one, two].flatMap((ledger, program) =>
      [1, 2, 3, 4].map((number) => value(ledger, 'source.save', plainSource(`Tin ${program}${number}`))),
    ),
  );
  expect((await value(one, 'ledger.open', { file })).ledger?.sources).toBe(8);
  expect((await value(two, 'app.state', {})).ledger?.sources).toBe(8);
  await one.close();
  expect((await value(two, 'source.save', plainSource('Last Tin'))) as object).toBeTruthy();
  await two.close();
  expect(readdirSync(dirname(file))).toEqual(['ledger.sqlite']);
}, 60_000);

it('leaving the invented ledger removes no one else’s', async () => {
  const [one, two] = [opened(null), opened(null)] as const;
  const files = await Promise.all([one, two].map(async (ledger) => (await value(ledger, 'ledger.openDemo', {})).ledger?.file ?? ''));
  expect(new Set(files).size).toBe(2);
  await value(one, 'ledger.leaveDemo', {});
  expect(files.map((file) => existsSync(file))).toEqual([false, true]);
  expect((await value(two, 'app.state', {})).ledger?.demo).toBe(true);
  await Promise.all([one.close(), two.close()]);
  expect(files.map((file) => existsSync(file))).toEqual([false, false]);
}, 60_000); // prettier-ignore

it('the invented ledger opened again is as it was made: what was recorded in it is gone, and it is left as before', async () => {
  const ledger = opened(null);
  const first = (await value(ledger, 'ledger.openDemo', {})).ledger;
  const drawn = await ledger.call('family.drawing', { spacing: 'calendar' });
  expect((await value(ledger, 'source.save', plainSource('Tin'))) as object).toBeTruthy();
  expect((await value(ledger, 'app.state', {})).ledger?.sources).toBe((first?.sources ?? 0) + 1);
  const again = (await value(ledger, 'ledger.openDemo', {})).ledger;
  expect(again).toEqual({ ...first, file: again?.file });
  expect(again?.file).not.toBe(first?.file);
  expect(existsSync(first?.file ?? '')).toBe(false);
  expect(await ledger.call('family.drawing', { spacing: 'calendar' })).toEqual(drawn);
  expect(await value(ledger, 'ledger.leaveDemo', {})).toMatchObject({ ledger: null, trouble: null });
  expect(existsSync(again?.file ?? '')).toBe(false);
  await ledger.close();
}, 60_000);

it('where there can be no ledger that is said, and what is open stays open', async () => {
  const file = newFile();
  const ledger = opened(file);
  await value(ledger, 'app.state', {});
  mkdirSync(join(dirname(file), 'folder'));
  for (const [name, at, code] of [
    ['ledger.create', join(file, 'x.sqlite'), 'ledger refused'],
    ['ledger.create', join(dirname(file), `${'n'.repeat(300)}.sqlite`), 'ledger refused'],
    ['ledger.create', file, 'file exists'],
    ['ledger.open', join(dirname(file), 'folder'), 'ledger refused'],
    ['ledger.open', join(dirname(file), 'none.sqlite'), 'no such file'],
  ] as const)
    expect([name, at, codeOf(await ledger.call(name, { file: at }))]).toEqual([name, at, code]);
  expect((await value(ledger, 'app.state', {})).ledger?.file).toBe(file);
  await ledger.close();
}, 60_000);
