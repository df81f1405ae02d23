// A jar travels with its ancestry, and the whole ledger goes out and comes back, by the window's own panels.
import { mkdtempSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import type { Reply } from '../core/contract';
import { shortCode } from '../core/lineage/short-codes';
import { complaintsByDayAndNight } from './axe';
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
  await receive.getByRole('button', { name: 'Take it in' }).click();
  await expect.poll(async () => (await familyOf(page)).jars.map(({ label }) => label)).toEqual(['10 May a', '13 May a']); // prettier-ignore
  expect((await familyOf(page)).jars.at(-1)?.id).toBe(jar);
  // Once more adds nothing.
  await receive.locator('input[type=file]').setInputFiles(file);
  await expect(receive.getByText('All of it is in your ledger already.')).toBeVisible();
  await expect(receive.getByRole('button', { name: 'Take it in' })).toBeDisabled();
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
  await expect(page.getByRole('option')).toContainText('10 May b');
});
