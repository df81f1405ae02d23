// Which ledger is open: from the first start through the demo to the keeper's own, and back at the next start.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import type { AppState, Result } from '../core/contract';
import { recordBatch } from './recording';
import { expect, type Program, test } from './window';

const root = resolve(import.meta.dirname, '..');

const call = (program: Program, name: string, input: unknown = {}): Promise<Result<AppState>> =>
  program.page.evaluate(
    ([asked, given]) =>
      (window.jarline.call as unknown as Record<string, (input: unknown) => Promise<unknown>>)[
        asked as string
      ]?.(given) as Promise<never>,
    [name, input],
  );
const ledgerOf = async (program: Program): Promise<AppState['ledger']> => {
  const state = await call(program, 'app.state');
  return state.ok ? state.value.ledger : null;
};
const demoFolders = (program: Program): string[] =>
  readdirSync(program.dataFolder).filter((name) => name.startsWith('jarline-demo-'));

test('first no ledger, then the demo, then the keeper’s own, which the next start opens again', async ({
  program,
}) => {
  expect(await ledgerOf(program)).toBeNull();

  const before = demoFolders(program);
  expect(await call(program, 'ledger.openDemo')).toMatchObject({
    ok: true,
    value: { ledger: { demo: true } },
  });
  expect(demoFolders(program).length).toBe(before.length + 1);
  expect(await call(program, 'ledger.leaveDemo')).toMatchObject({ ok: true, value: { ledger: null } });
  expect(demoFolders(program)).toEqual(before);
  expect(await call(program, 'ledger.leaveDemo')).toMatchObject({ ok: false, error: { code: 'no demo' } });

  const own = join(program.dataFolder, 'jarline.sqlite');
  expect(await call(program, 'ledger.create', { file: null })).toMatchObject({
    ok: true,
    value: { ledger: { file: own, demo: false } },
  });
  const uid = (await ledgerOf(program))?.uid;
  await call(program, 'jar.lost', { madeOn: null, label: 'the first', note: null });
  await call(program, 'ledger.openDemo');
  expect((await ledgerOf(program))?.demo).toBe(true);

  await program.close();
  expect(demoFolders(program)).toEqual(before);
  await program.open();
  expect(await ledgerOf(program)).toMatchObject({ uid, file: own, demo: false, jars: 1 });
});

// A keeper's own ledger has been there before each of these.
test.describe('with a ledger', () => {
  test.use({ seed: 'empty' });

  test('the system’s dialog chooses a file; a file that is no ledger is refused and the open one stays', async ({
    program,
  }) => {
    const other = join(program.ledgerFolder, 'other.sqlite');
    await program.app.evaluate(({ dialog }, file) => {
      dialog.showSaveDialog = async () => ({ canceled: false, filePath: file });
    }, other);
    expect(await call(program, 'ledger.create', { file: null })).toMatchObject({
      ok: true,
      value: { ledger: { file: other } },
    });
    expect(existsSync(other)).toBe(true);
    expect(await call(program, 'ledger.create', { file: null })).toMatchObject({
      error: { code: 'file exists' },
    });
    const choose = (name: string): Promise<void> =>
      program.app.evaluate(
        ({ dialog }, file) => {
          dialog.showOpenDialog = async () => ({ canceled: false, filePaths: [file] });
        },
        join(program.dataFolder, name),
      );
    await choose('none.sqlite');
    expect(await call(program, 'ledger.open', { file: null })).toMatchObject({
      error: { code: 'no such file' },
    });

    await choose('jarline.json');
    expect(await call(program, 'ledger.open', { file: null })).toMatchObject({
      error: { code: 'ledger refused' },
    });
    expect(basename((await ledgerOf(program))?.file ?? '')).toBe('other.sqlite');

    await program.app.evaluate(({ dialog }) => {
      dialog.showOpenDialog = async () => ({ canceled: true, filePaths: [] });
    });
    expect(await call(program, 'ledger.open', { file: null })).toMatchObject({
      ok: true,
      value: { ledger: { file: other } },
    });
  });

  test('what is recorded headless while the window is open shows in it', async ({ program, now }) => {
    const file = (await ledgerOf(program))?.file ?? '';
    const heard = program.page.evaluate(
      () => new Promise((done) => window.jarline.on.changed((payload) => done(payload))),
    );
    const headless = join(import.meta.dirname, '../dist/main/headless.js');
    const input = JSON.stringify({ madeOn: '2026-05-10', label: 'from outside', note: null });
    const args = [headless, 'call', 'jar.lost', input, '--ledger', file, '--now', now];
    const recorded = spawnSync(process.execPath, args, { encoding: 'utf8' });
    expect(JSON.parse(recorded.stdout)).toMatchObject({ ok: true });
    expect(await heard).toEqual({});
    expect((await ledgerOf(program))?.jars).toBe(1);
    // And the other way: the window records on, and headless reads it.
    expect(await call(program, 'jar.lost', { madeOn: null, label: 'from inside', note: null })).toMatchObject(
      {
        ok: true,
      },
    );
    const read = spawnSync(process.execPath, [headless, 'call', 'app.state', '{}', '--ledger', file], {
      encoding: 'utf8',
    });
    expect(JSON.parse(read.stdout)).toMatchObject({ value: { ledger: { jars: 2 } } });
  });

  test('the theme chosen in the menu is the window’s from its first moment at the next start', async ({
    program,
  }) => {
    const dark = (): Promise<boolean> =>
      program.app.evaluate(({ nativeTheme }) => nativeTheme.shouldUseDarkColors);
    await program.app.evaluate(({ Menu }) =>
      Menu.getApplicationMenu()?.getMenuItemById('theme.dark')?.click(),
    );
    await expect.poll(dark).toBe(true);
    await program.close();
    await program.open();
    expect(await dark()).toBe(true);
    expect(
      await program.app.evaluate(({ BrowserWindow }) =>
        BrowserWindow.getAllWindows()[0]?.getBackgroundColor().toLowerCase(),
      ),
    ).toBe('#1c2125');
  });

  test('a ledger and a jar’s file opened by a double click, while the program runs, are opened in its window', async ({
    program,
  }) => {
    const { page, dataFolder } = program;
    /** What the program hears then: a second start with the file, as `npm run package:try` makes one. */
    const doubleClick = (file: string): Promise<void> =>
      program.app.evaluate(
        ({ app }, [folder = '', path = '']) =>
          void app.emit('second-instance', {}, [process.execPath, folder, '--no-sandbox', path], '/'),
        [root, file],
      );
    await call(program, 'ledger.create', { file: null });
    const mine = (await ledgerOf(program))?.file ?? '';
    const { jars } = await recordBatch(page, '2026-05-10', ['a'], { product: 'Blue Tin' });
    const [theirs, given] = [join(dataFolder, 'theirs.jarline'), join(dataFolder, 'given.jarline-jar')];
    const saveAs = (to: string): Promise<void> =>
      program.app.evaluate(({ dialog }, filePath) => {
        dialog.showSaveDialog = async () => ({ canceled: false, filePath });
      }, to);
    await saveAs(given);
    expect(await call(program, 'handOver.write', { jar: jars[0], file: { name: 'a' } })).toMatchObject({
      ok: true,
    });
    await saveAs(theirs);
    await call(program, 'ledger.create', { file: null });

    await doubleClick(given);
    const receive = page.getByRole('dialog', { name: 'Receive a jar' });
    await expect(receive.getByRole('heading', { name: '10 May a' })).toBeVisible();
    expect((await ledgerOf(program))?.jars).toBe(0);
    await receive.getByRole('button', { name: 'Close' }).click();

    await doubleClick(mine);
    await expect.poll(async () => (await ledgerOf(program))?.file).toBe(mine);
    // As macOS tells of one.
    await program.app.evaluate(
      ({ app }, path) => void app.emit('open-file', { preventDefault: () => undefined }, path),
      theirs,
    );
    await expect.poll(async () => (await ledgerOf(program))?.file).toBe(theirs);
    // What is neither is refused with its reason, and the open ledger stays.
    await doubleClick(join(import.meta.dirname, 'lifecycle.spec.ts'));
    await expect(page.locator('.message')).toContainText(/lifecycle\.spec\.ts is not a Jarline ledger/);
    expect((await ledgerOf(program))?.file).toBe(theirs);
  });
});
