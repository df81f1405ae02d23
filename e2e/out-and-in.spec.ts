// A jar travels with its ancestry, and the whole ledger goes out and comes back, by the window's own panels.
import { mkdtempSync, readdirSync, readFileSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import type { Reply } from '../core/contract';
import type { HandOver } from '../core/hand-over/hand-over-format';
import { shortCode } from '../core/lineage/short-codes';
import { complaintsByDayAndNight } from './axe';
import { madeLedger } from './made-ledger';
import { recordBatch } from './recording';
import { expect, type Program, test } from './window';

test.use({ seed: 'empty' });

const familyOf = (page: Page): Promise<Reply<'family.get'>> =>
  page.evaluate(async () => {
    const family = await window.jarline.call['family.get']({});
    if (!family.ok) throw new Error(JSON.stringify(family.error));
    return family.value;
  });

/** Two batches, the later jar with a remark that nobody has read. @returns the later jar's id */
async function fill(page: Page): Promise<string> {
  const { jars } = await recordBatch(page, '2026-05-10', ['a', 'b'], { product: 'Blue Tin' });
  const next = await recordBatch(page, '2026-05-13', ['a'], { jar: jars[0] ?? '' });
  await page.evaluate(
    ([jar = '']) =>
      window.jarline.call['facts.record']({ facts: [{ kind: 'remark', jar, text: 'a little odd on top' }] }),
    next.jars,
  );
  return next.jars[0] ?? '';
}

/** From now on the system's dialogs answer with a place of the test's own. */
const answerDialogs = (program: Program, save: string, open = save): Promise<void> =>
  program.app.evaluate(
    ({ dialog }, [to, from]) => {
      dialog.showSaveDialog = async () => ({ canceled: to === '', filePath: to ?? '' });
      dialog.showOpenDialog = async () => ({ canceled: from === '', filePaths: [from ?? ''] });
    },
    [save, open] as const,
  );
const chooseInMenu = (program: Program, item: string): Promise<void> =>
  program.app.evaluate(({ Menu }, id) => {
    Menu.getApplicationMenu()?.getMenuItemById(id)?.click();
  }, item);

async function openPane(page: Page, label: string): Promise<void> {
  await page.keyboard.press('Alt+1');
  await page.getByRole('treeitem', { name: new RegExp(`^${label}`) }).click();
  await expect(page.getByRole('complementary', { name: 'About this jar' })).toContainText(label);
}

test('a jar is handed over once its remark is answered; the file comes into another ledger, shown first', async ({
  program,
}) => {
  const { page } = program;
  const jar = await fill(page);
  await openPane(page, '13 May a');
  await page.getByRole('button', { name: 'Hand it over' }).click();
  const give = page.getByRole('dialog', { name: 'Hand over 13 May a' });
  await expect(give.getByRole('alert')).toContainText('a little odd on top');
  await give.getByRole('button', { name: /^Fine/ }).click();
  await expect(give.getByText('this jar and 1 before it')).toBeVisible();
  await expect(give).toContainText('Blue Tin');
  await expect(give).toContainText('Stays here: tasters');
  expect(await complaintsByDayAndNight(page)).toEqual([]);
  await page.screenshot({ path: test.info().outputPath('give.png') });

  const folder = mkdtempSync(join(program.dataFolder, 'out-'));
  const file = join(folder, 'jar.json');
  // Thought better of: nothing is written, and the panel stays.
  await answerDialogs(program, '');
  await give.getByLabel('Whom it goes to').fill('Robin from the club');
  await give.getByRole('button', { name: 'Save the file…' }).click();
  await expect(give.getByRole('button', { name: 'Save the file…' })).toBeEnabled();
  await answerDialogs(program, file);
  await give.getByRole('button', { name: 'Save the file…' }).click();
  await expect(give).toHaveCount(0);
  await expect(page.locator('.message')).toContainText(file);
  expect(readFileSync(file, 'utf8')).not.toContain('Robin');
  const pane = page.getByRole('complementary', { name: 'About this jar' });
  await expect(pane).toContainText(/Given to Robin from the club on \d+ May 2026\./);
  // Spoiled after all: whoever has it is to be told.
  await page.evaluate(
    (spoiled) =>
      window.jarline.call['facts.record']({
        facts: [
          { kind: 'observation', ref: 'seen', jar: spoiled, stage: 'take-out' },
          { kind: 'sign', observation: 'seen', sign: 'pink', answer: 'seen' },
        ],
      }),
    jar,
  );
  await expect(pane).toContainText('Tell whom it was given to: Robin from the club');
  await page.screenshot({ path: test.info().outputPath('given.png') });
  const later = join(folder, 'later.json');
  await answerDialogs(program, later);
  await pane.getByRole('button', { name: 'Save what is known now…' }).click();
  await expect(page.locator('.message')).toContainText(later);

  // Another keeper's ledger.
  await answerDialogs(program, join(folder, 'theirs.sqlite'));
  await chooseInMenu(program, 'ledger.create');
  await expect.poll(async () => (await familyOf(page)).jars.length).toBe(0);
  await chooseInMenu(program, 'receive');
  const receive = page.getByRole('dialog', { name: 'Receive a jar' });
  await receive.locator('input[type=file]').setInputFiles({ name: 'a.json', mimeType: 'application/json', buffer: Buffer.from('{}') }); // prettier-ignore
  await expect(receive.getByRole('alert')).toContainText('It is no hand-over of a jar');
  await receive.locator('input[type=file]').setInputFiles(file);
  await expect(receive.getByRole('heading', { name: '13 May a' })).toBeVisible();
  expect((await familyOf(page)).jars).toEqual([]);
  expect(await complaintsByDayAndNight(page)).toEqual([]);
  await page.screenshot({ path: test.info().outputPath('receive.png') });
  const hours = receive.getByLabel('Hours out of the cold on its way here');
  await hours.fill('soon');
  await expect(receive.getByRole('button', { name: 'Take it in' })).toBeDisabled();
  await hours.fill('1,5');
  await receive.getByRole('button', { name: 'Take it in' }).click();
  await expect.poll(async () => (await familyOf(page)).jars.map(({ label }) => label)).toEqual(['10 May a', '13 May a']); // prettier-ignore
  expect((await familyOf(page)).jars.at(-1)?.id).toBe(jar);
  // Once more adds nothing.
  await receive.locator('input[type=file]').setInputFiles(file);
  await expect(receive.getByText('All of it is in your ledger already.')).toBeVisible();
  await expect(receive.getByRole('button', { name: 'Take it in' })).toBeDisabled();

  // Both keepers wrote down another vessel: they stand side by side, and the keeper decides.
  const vessel = (): Promise<string | null> =>
    page.evaluate(async (id) => {
      const found = await window.jarline.call['jar.get']({ id });
      return found.ok ? found.value.record.jar.vessel : 'not found';
    }, jar);
  await page.evaluate((id) => window.jarline.call['jar.correct']({ id, changes: { vessel: 'my jug' } }), jar);
  const theirs = JSON.parse(readFileSync(file, 'utf8')) as HandOver;
  const other = { ...theirs, records: theirs.records.map((one) => (one.id === jar ? { ...one, homeForm: one.homeForm + 3, form: { ...one.form, vessel: 'their crock' } } : one)) }; // prettier-ignore
  await receive.locator('input[type=file]').setInputFiles({ name: 'b.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(other)) }); // prettier-ignore
  await expect(receive).toContainText('1 says otherwise than yours');
  await receive.getByRole('button', { name: 'Take it in' }).click();
  const sides = receive.getByRole('listitem').filter({ hasText: 'their crock' });
  await expect(sides).toContainText('my jug');
  expect(await vessel()).toBe('my jug');
  await sides.getByRole('button', { name: /^Take theirs/ }).click();
  await expect(sides).toHaveCount(0);
  expect(await vessel()).toBe('their crock');
});

test('everything goes out as an archive and as tables, and the archive opens as a new ledger', async ({
  program,
}) => {
  const { page } = program;
  await fill(page);
  const before = await familyOf(page);
  const folder = mkdtempSync(join(program.dataFolder, 'out-'));
  await page.getByRole('button', { name: 'Preferences' }).click();
  await page.getByRole('button', { name: 'Take everything out…' }).click();
  const out = page.getByRole('dialog', { name: 'Take everything out' });
  expect(await complaintsByDayAndNight(page)).toEqual([]);
  await page.screenshot({ path: test.info().outputPath('out.png') });
  const archive = join(folder, 'all.zip');
  await answerDialogs(program, archive);
  await out.getByRole('button', { name: 'Write an archive…' }).click();
  await expect(page.locator('.message')).toContainText(archive);
  const tables = join(folder, 'tables');
  await answerDialogs(program, tables);
  await out.getByRole('button', { name: 'Write tables…' }).click();
  await expect(page.locator('.message')).toContainText(tables);
  expect(readFileSync(join(tables, 'jars.csv'), 'utf8')).toContain('2026-05-13 a');
  await answerDialogs(program, join(folder, 'again.sqlite'), archive);
  await out.getByRole('button', { name: /^Open an archive/ }).click();
  await expect(out).toHaveCount(0);
  await expect(page.locator('.message')).toContainText('The archive is open');
  expect(await familyOf(page)).toEqual(before);
});

test('going back to a backup shows what would be gone, and is gone back from in the same place', async ({
  program,
}) => {
  const { page } = program;
  const jar = await fill(page);
  const early = await familyOf(page);
  await page.evaluate(() => window.jarline.call['ledger.backup']({}));
  await recordBatch(page, '2026-05-16', ['a', 'b'], { jar });
  const late = await familyOf(page);
  await chooseInMenu(program, 'backups');
  const panel = page.getByRole('dialog', { name: 'Go back to a backup' });
  await expect(panel.getByRole('listitem').first()).toContainText('3 jars');
  await expect(panel).toContainText('1 thing that was done since would be gone:');
  await expect(panel).toContainText('recorded 16 May a');
  expect(await complaintsByDayAndNight(page)).toEqual([]);
  await page.screenshot({ path: test.info().outputPath('go-back.png') });
  await panel.getByRole('button', { name: /^Go back to/ }).click();
  await expect(page.locator('.message')).toContainText('What it held until now is a backup too');
  await expect(panel).toContainText('1 thing that only it holds would be there again.');
  expect(await familyOf(page)).toEqual(early);
  await panel.getByRole('button', { name: /^Go back to/ }).click();
  await expect(panel).toContainText('would be gone:');
  expect(await familyOf(page)).toEqual(late);
});

test('an archive of thousands of jars says how far it is, is stopped leaving nothing, and is written when asked again', async ({
  program,
}) => {
  const { page } = program;
  const { file: made, folder: madeIn } = madeLedger({ jars: 4000, shape: 'bushy', daysApart: 2 });
  const to = mkdtempSync(join(program.dataFolder, 'out-'));
  const file = join(program.dataFolder, 'large.sqlite');
  renameSync(made, file);
  rmSync(madeIn, { recursive: true });
  // Where nothing is judged meanwhile: the archive begins at once.
  await chooseInMenu(program, 'screen.history');
  await answerDialogs(program, '', file);
  await chooseInMenu(program, 'ledger.open');
  await expect(page.getByRole('main')).toContainText('Brought in');
  await chooseInMenu(program, 'out');
  const out = page.getByRole('dialog', { name: 'Take everything out' });
  await answerDialogs(program, join(to, 'all.zip'));
  // Pressed in the page, as soon as it is told how far it is: on a quick machine all of it takes a second.
  const seen = page.evaluate(
    () =>
      new Promise<string>((told) => {
        const look = new MutationObserver(() => {
          const bar = document.querySelector<HTMLProgressElement>('.out-panel progress[max]');
          if (bar === null) return;
          look.disconnect();
          told(`${bar.getAttribute('aria-label')} ${bar.max > 10_000}`);
          bar.parentElement?.querySelector('button')?.click();
        });
        look.observe(document.body, { subtree: true, childList: true, attributes: true });
      }),
  );
  await out.getByRole('button', { name: 'Write an archive…' }).click();
  expect(await seen).toBe('writing records true');
  await expect(out.getByRole('progressbar')).toHaveCount(0);
  expect(readdirSync(to)).toEqual([]);
  await out.getByRole('button', { name: 'Write an archive…' }).click();
  await expect(page.locator('.message')).toContainText('all.zip', { timeout: 30_000 });
  expect(readdirSync(to)).toEqual(['all.zip']);
});

test('labels are looked at, for the shelf and for giving, and saved as a PDF; the code on them finds the jar', async ({
  program,
}) => {
  const { page } = program;
  const { jars } = await recordBatch(page, '2026-05-10', ['a', 'b'], { product: 'Blue Tin' });
  await openPane(page, '10 May a');
  await page.getByRole('button', { name: 'Label', exact: true }).click();
  const labels = page.getByRole('dialog', { name: 'Labels for 10 May a' });
  await labels.getByLabel('For all jars of its batch').check();
  await labels.getByRole('radio', { name: 'Giving it away' }).check();
  const sheet = labels.getByAltText('The first sheet, as it will be printed');
  await expect(sheet).toHaveAttribute('src', /Home-made/);
  await expect
    .poll(() => sheet.evaluate((image: HTMLImageElement) => image.naturalWidth))
    .toBeGreaterThan(100);
  expect(await complaintsByDayAndNight(page)).toEqual([]);
  await page.screenshot({ path: test.info().outputPath('labels.png') });
  await sheet.screenshot({ path: test.info().outputPath('sheet.png') });
  const file = join(mkdtempSync(join(program.dataFolder, 'out-')), 'labels.pdf');
  await answerDialogs(program, file);
  await labels.getByRole('button', { name: 'Save as PDF…' }).click();
  await expect(page.locator('.message')).toContainText(file);
  const pdf = readFileSync(file, 'latin1');
  expect(pdf.startsWith('%PDF-')).toBe(true);
  expect(pdf.match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
  // A4 in points.
  expect(pdf).toMatch(/\/MediaBox\s*\[0 0 59[45][.\d]* 84[12][.\d]*\]/);
  await labels.getByRole('button', { name: 'Close' }).click();
  await page.getByLabel('Find a jar by part of its label').fill(shortCode(jars[1] ?? ''));
  await expect(page.getByRole('option')).toHaveCount(1);
  await expect(page.getByRole('option')).toContainText('10 May 2026 b');
});

test('a photograph of a label, or the code under it, finds its jar; a picture of something else finds none', async ({
  program,
}) => {
  const { page } = program;
  const { jars } = await recordBatch(page, '2026-05-10', ['a', 'b'], { product: 'Blue Tin' });
  await openPane(page, '10 May b');
  await page.getByRole('button', { name: 'Label', exact: true }).click();
  const sheet = page.getByAltText('The first sheet, as it will be printed');
  await expect(sheet).toHaveAttribute('src', /10%20May%20b/);
  const photograph = await sheet.screenshot();
  await page.getByRole('dialog').getByRole('button', { name: 'Close' }).click();
  await page
    .getByRole('complementary', { name: 'About this jar' })
    .getByRole('button', { name: 'Close' })
    .click();

  await chooseInMenu(program, 'find');
  const find = page.getByRole('dialog', { name: 'Find a jar by its label' });
  const choose = find.getByLabel('Choose a photograph…');
  await choose.setInputFiles({
    name: 'not.jpg',
    mimeType: 'image/jpeg',
    buffer: Buffer.from('no picture at all'),
  });
  await expect(find.getByRole('alert')).toContainText('can’t be read as a picture');
  const plain = await find.screenshot();
  await choose.setInputFiles({ name: 'plain.png', mimeType: 'image/png', buffer: plain });
  await expect(find.getByRole('alert')).toContainText('No square code');
  expect(await complaintsByDayAndNight(page)).toEqual([]);
  await choose.setInputFiles({ name: 'label.png', mimeType: 'image/png', buffer: photograph });
  await expect(find).toHaveCount(0);
  await expect(page.getByRole('complementary', { name: 'About this jar' })).toContainText('10 May b');

  await chooseInMenu(program, 'find');
  await find.getByLabel('Or the code under it').fill('7K3M-9QXV');
  await find.getByRole('button', { name: 'Find it' }).click();
  await expect(find.getByRole('alert')).toContainText('No jar of this ledger has the code');
  await find.getByLabel('Or the code under it').fill(shortCode(jars[0] ?? '').toLowerCase());
  await find.getByRole('button', { name: 'Find it' }).click();
  await expect(page.getByRole('complementary', { name: 'About this jar' })).toContainText('10 May a');
});

test('a line goes out as a PDF, the family as SVG, PNG and PDF, all of it as one page with small photographs', async ({
  program,
}) => {
  const { page } = program;
  const { jars } = await recordBatch(page, '2026-05-10', ['a', 'b'], { product: 'Blue Tin' });
  await recordBatch(page, '2026-05-13', ['a'], { jar: jars[0] ?? '' });
  await page.evaluate(async (jar) => {
    const canvas = new OffscreenCanvas(900, 600);
    canvas.getContext('2d')?.fillRect(0, 0, 500, 300);
    const bytes = new Uint8Array(await (await canvas.convertToBlob({ type: 'image/jpeg' })).arrayBuffer());
    await window.jarline.call['photograph.add']({ jar, bytes, caption: null });
  }, jars[1] ?? '');
  const folder = mkdtempSync(join(program.dataFolder, 'out-'));
  await page.keyboard.press('Alt+1');
  await chooseInMenu(program, 'reports');
  const out = page.getByRole('dialog', { name: 'Print, or save to be read elsewhere' });
  const save = async (button: string, name: string): Promise<string> => {
    const file = join(folder, name);
    await answerDialogs(program, file);
    await out.getByRole('button', { name: button }).click();
    await expect(page.locator('.message')).toContainText(name);
    return file;
  };
  const line = readFileSync(await save('Save as PDF…', 'line.pdf'), 'latin1');
  expect(line).toMatch(/^%PDF-[^]*\/MediaBox\s*\[0 0 59[45][.\d]* 84[12][.\d]*\]/);
  await out.getByRole('radio', { name: 'The family as a picture' }).check();
  const drawn = out.getByAltText('The family as it will be drawn');
  await expect
    .poll(() => drawn.evaluate((image: HTMLImageElement) => image.naturalWidth))
    .toBeGreaterThan(200);
  expect(await complaintsByDayAndNight(page)).toEqual([]);
  expect(readFileSync(await save('Save as SVG…', 'family.svg'), 'utf8')).toMatch(
    /^<svg [^]*13 May a[^]*<\/svg>\n$/,
  );
  const png = readFileSync(await save('Save as PNG…', 'family.png'));
  expect(png.subarray(1, 4).toString()).toBe('PNG');
  // Twice as fine as the drawing: width in the header's first four bytes (ISO/IEC 15948, 11.2.2).
  expect(png.readUInt32BE(16)).toBe(
    2 * (await drawn.evaluate((image: HTMLImageElement) => image.naturalWidth)),
  );
  expect(readFileSync(await save('Save as PDF…', 'family.pdf'), 'latin1')).toMatch(/^%PDF-/);
  await out.getByRole('radio', { name: 'One page for a telephone' }).check();
  const html = readFileSync(await save('Save the page…', 'all.html'), 'utf8');
  const [, photograph = ''] = /src="data:image\/jpeg;base64,([^"]+)"/.exec(html) ?? [];
  expect(Buffer.from(photograph, 'base64').length).toBeGreaterThan(500);
  expect(html).toContain('13 May a');
  await out.getByRole('radio', { name: 'Whom to tell' }).check();
  expect(readFileSync(await save('Save as PDF…', 'told.pdf'), 'latin1')).toMatch(/^%PDF-/);
});
