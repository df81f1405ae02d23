// The first run: three doors; and the way out when a ledger can't be opened.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { complaintsOfAxe } from './axe';
import { expect, test } from './window';

test.describe('three doors', () => {
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
    await expect(page.getByText('Invented notes, to look around in')).toBeVisible();
    await expect(page.getByRole('button', { name: 'Family' })).toHaveAttribute('aria-current', 'page');
  });

  test('the second leads to bringing in notes', async ({ page }) => {
    await page.getByRole('button', { name: 'Bring in a spreadsheet' }).click();
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
