// Costs in the window: prices typed where they are missing, one sentence, and where each figure comes from.
import { complaintsByDayAndNight } from './axe';
import { toSources } from './recording';
import { expect, test } from './window';

test.use({ seed: 'demo' });

test('a price of milk and one of the shop say what a cup costs, and are kept', async ({ page }) => {
  await toSources(page);
  await page.getByRole('button', { name: 'All costs' }).click();
  await expect(page.getByText('A jar costs 1.51 GBP.')).toBeVisible();
  await expect(page.getByText('Type what the shop asks')).toBeVisible();
  await page.getByLabel('A litre of milk').fill('1.20');
  await page.getByLabel('In the shop it costs').fill('3');
  await page.getByLabel('For how much').fill('500 mL');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/^A cup of your own costs .* less than the shop’s\.$/)).toBeVisible();
  await expect(page.getByRole('list', { name: 'A cup' })).toContainText('1.50 GBP');
  await expect(page.getByRole('region', { name: 'Yours' })).toContainText('shared among the good ones');
  expect(await complaintsByDayAndNight(page)).toEqual([]);
  await page.keyboard.press('Alt+1');
  await page.keyboard.press('Alt+9');
  await expect(page.getByLabel('A litre of milk')).toHaveValue('1.20');
});
