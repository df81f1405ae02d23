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

test('a package without price or size is asked for them where costs stand, and the menu leads there', async ({
  page,
  app,
}) => {
  const kept = await page.evaluate(async () => {
    const { call } = window.jarline;
    const answer = await call['package.list']({});
    const bag = answer.ok ? answer.value.packages.find(({ name }) => name.startsWith('acacia')) : undefined;
    if (!bag) return null;
    const { left: _left, uses: _uses, ...of } = bag;
    const saved = await call['package.save']({
      package: { ...of, name: 'corner acacia', price: null, size: null },
    });
    return saved.ok;
  });
  expect(kept).toBe(true);
  await app.evaluate(({ Menu }) => Menu.getApplicationMenu()?.getMenuItemById('screen.costs')?.click());
  const missing = page.getByRole('list', { name: 'Packages without price or size' });
  await expect(missing).toContainText('corner acacia price and size not noted');
  await missing.getByLabel('Price of corner acacia').fill('6.10');
  await missing.getByLabel('Size of corner acacia').fill('250 g');
  await missing.getByRole('button', { name: 'Note it' }).click();
  await expect(missing).toHaveCount(0);
  const { packages } = await page.evaluate(async () => {
    const answer = await window.jarline.call['package.list']({});
    return answer.ok ? answer.value : { packages: [] };
  });
  expect(packages.find(({ name }) => name === 'corner acacia')).toMatchObject({
    price: { minor: 610 },
    size: { value: 250, unit: 'g' },
  });
});
