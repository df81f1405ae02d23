// The first run: three doors; and the way out when a ledger can't be opened.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { complaintsOfAxe } from './axe';
import { expect, test } from './window';

test.describe('three doors', () => {
  // In one window, which most of them leave as it is.
  test.describe.configure({ mode: 'default' });

  for (const colorScheme of ['light', 'dark'] as const) {
    test.describe(colorScheme, () => {
      test.use({ colorScheme, size: { width: 800, height: 860 } });

      test('say what Jarline is for, with the caution, and hold to the accessibility rules', async ({
        page,
      }) => {
        await expect(page.getByRole('heading', { name: 'Jarline' })).toBeVisible();
        for (const door of ['Look around', 'Bring in a spreadsheet', 'Start an empty ledger'])
          await expect(page.getByRole('button', { name: door })).toBeVisible();
        await expect(page.getByText('No figure here is a food-safety test')).toBeVisible();
        expect(await complaintsOfAxe(page)).toEqual([]);
      });
    });
  }

  test('the first leads to the invented jars, by keyboard alone', async ({ page }) => {
    await page.getByRole('button', { name: 'Look around' }).waitFor();
    await page.keyboard.press('Tab');
    await expect(page.getByRole('button', { name: 'Look around' })).toBeFocused();
    await page.keyboard.press('Enter');
    await expect(page.getByText('Invented notes')).toBeVisible();
    await expect(page.getByRole('button', { name: 'Family', exact: true })).toHaveAttribute(
      'aria-current',
      'page',
    );
    await page.getByRole('button', { name: 'Leave', exact: true }).click();
    await expect(page.getByRole('button', { name: 'Look around' })).toBeVisible();
  });

  test('the second asks for the file at once; behind it are the other ways to bring in notes', async ({
    page,
  }) => {
    const asked = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Bring in a spreadsheet' }).click();
    await asked;
    await expect(page.getByRole('heading', { name: 'Bring in a spreadsheet' })).toBeVisible();
    await expect(page.getByLabel('Choose a file')).toBeAttached();
  });

  test('the third starts an empty ledger, which is there again at the next start', async ({
    program,
    page,
  }) => {
    await page.getByRole('button', { name: 'Start an empty ledger' }).click();
    await expect(page.getByRole('navigation', { name: 'Screens' })).toBeVisible();
    await program.close();
    await program.open();
    await expect(program.page.getByRole('navigation', { name: 'Screens' })).toBeVisible();
    await expect(program.page.getByRole('button', { name: 'Start an empty ledger' })).toHaveCount(0);
  });
});

test.describe('a file that is no ledger', () => {
  const folder = mkdtempSync(join(tmpdir(), 'jarline-e2e-foreign-'));
  const file = join(folder, 'letter.sqlite');
  writeFileSync(file, 'Dear club, this is a letter and not a ledger.\n'.repeat(200));
  test.afterAll(() => rmSync(folder, { recursive: true, force: true }));
  test.use({ seed: file });

  test('is named, left alone, and another can be chosen', async ({ page }) => {
    await expect(page.getByRole('heading', { name: 'This file is not a ledger' })).toBeVisible();
    await expect(page.getByRole('button', { name: 'Show the folder' })).toBeVisible();
    await expect(page.getByRole('button', { name: 'Open another' })).toBeVisible();
    await expect(page.getByRole('button', { name: 'Open the backup' })).toHaveCount(0);
    expect(await complaintsOfAxe(page)).toEqual([]);
  });
});

test.describe('a damaged ledger', () => {
  test.use({ seed: 'empty' });

  test('is told of, and the newest good backup opens with its jars', async ({ program, page }) => {
    const recorded = await page.evaluate(async () => {
      const lost = await window.jarline.call['jar.lost']({
        madeOn: '2026-03-14',
        label: 'the blue lid',
        note: null,
      });
      const copied = await window.jarline.call['ledger.backup']({});
      return [lost.ok, copied.ok];
    });
    expect(recorded).toEqual([true, true]);
    await program.close();

    const file = join(program.ledgerFolder, 'jarline.sqlite');
    const bytes = readFileSync(file);
    bytes.fill(0x5a, 4096 + 200); // all but the first page, which still says what the file is
    writeFileSync(file, bytes);
    program.forgive(/damaged|malformed/);
    await program.open();
    const again = program.page;
    await expect(again.getByRole('heading', { name: 'This ledger is damaged' })).toBeVisible();
    await expect(again.getByText('with 1 jar.')).toBeVisible();
    await expect(again.getByRole('button', { name: 'Save what can be read' })).toBeVisible();
    expect(await complaintsOfAxe(again)).toEqual([]);
    expect(readFileSync(file).equals(bytes)).toBe(true);
    await again.getByRole('button', { name: 'Open the backup' }).click();
    await expect(again.getByText(/One jar|1 jar/)).toBeVisible();
  });
});
