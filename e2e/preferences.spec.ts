// Preferences: sensible at the first start, one step away, applied at once everywhere, kept for the next start.
// 1 US tbsp is 14.79 mL, an Australian one 20 mL (core/quantities/spoons.ts names the sources); 38 °C is 100.4 °F.
import { complaintsOfAxe } from './axe';
import { recordBatch, toBatches, toHistory } from './recording';
import { expect, test } from './window';

test.use({ seed: 'empty' });

test('a choice is applied at once and kept for the next start', async ({ program }) => {
  const { page } = program;
  await recordBatch(page, '2026-05-10', ['a'], { product: 'Blue Tin' });
  await toBatches(page);
  await page.keyboard.press('Control+,');
  const panel = page.getByRole('dialog', { name: 'Preferences' });
  const place = panel.getByLabel('Measures, days and money as in');
  await expect(place).toHaveAccessibleDescription(
    'Warmth is 38 °C; milk in mL and litres; 3/4 is 3 Apr 2026; prices in EUR.',
  );
  expect(await complaintsOfAxe(page)).toEqual([]);
  await place.selectOption('United States');
  await expect(place).toHaveAccessibleDescription(
    'Warmth is 100.4 °F; milk in spoons, cups and quarts; 3/4 is Mar 4, 2026; prices in USD.',
  );
  await place.selectOption('Australia');
  await panel.getByText('Change one of these').click();
  await expect(panel.getByText('A tbsp is 20 mL, a tsp 5 mL, a cup 250 mL.')).toBeVisible();
  await panel.getByText('°F', { exact: true }).click();
  await expect(place).toHaveValue('own');
  await expect(place).toHaveAccessibleDescription(/^Warmth is 100.4 °F/);
  expect(await complaintsOfAxe(page)).toEqual([]);
  await panel.getByText('Month first', { exact: true }).click();
  await panel.getByText('Dark', { exact: true }).click();
  await panel.getByLabel('Currency').fill('aud');
  await expect(panel.getByText('Prices typed without one are in AUD.')).toBeVisible();
  await panel.getByLabel('Currency').fill('dollars');
  await expect(panel.getByText('Type the three letters of a currency')).toBeVisible();
  await panel.getByLabel('Days seed keeps in the fridge').fill('14');
  await panel.getByLabel('A line goes up to generation').fill('twelve');
  await expect(panel.getByText('Type a whole number from 1 to 1000')).toBeVisible();
  await panel.getByText('How long things keep').click();
  await expect(panel.getByLabel('Eat once open within')).toHaveValue('5');
  await panel.getByLabel('Eat once open within').fill('4');
  const lag = panel.getByLabel('A jar lags behind its bath by (hours)');
  await panel.getByText('How slowly a jar warms').click();
  await expect(lag).toHaveAccessibleDescription(
    /Left empty, the program measures it wherever one probe stood in a bath/,
  );
  await lag.fill('30 h');
  await expect(panel.getByText('Type hours from 0.05 to 24')).toBeVisible();
  await lag.fill('45 min');
  await panel.getByRole('button', { name: 'Close' }).click();
  await expect(page.locator('html')).toHaveAttribute('data-theme', 'dark');

  await page.keyboard.press('n');
  await expect(page.getByLabel('Made on')).toHaveValue('May 20, 2026');
  await page.getByLabel('How much milk').fill('2 tbsp');
  await expect(page.getByText('= 40 mL, Australian measure')).toBeVisible();
  await page.getByLabel('Planned warmth').fill('38 °C');
  await expect(page.getByText('= 100.4 °F, 38 °C')).toBeVisible();
  await page.getByRole('button', { name: 'Discard this entry' }).click();

  await program.close();
  await program.open();
  expect(await program.page.evaluate(() => window.jarline.call['app.state']({}))).toMatchObject({
    value: {
      preferences: {
        theme: 'dark', temperatures: '°F', volumes: 'metric', spoons: 'Australia', dates: 'month first', currency: 'AUD',
        seedFridgeDays: 14, mostGenerations: null, jarFollowsHours: 0.75,
      },
    },
  }); // prettier-ignore
  expect(await program.page.evaluate(() => window.jarline.call['shelf.get']({}))).toMatchObject({
    value: { limits: { eatOpened: 4, eatFridge: 14 } },
  });
});

test('a figure typed key by key is one choice, kept also when Escape closes the panel, and taken back in the history', async ({
  page,
}) => {
  await recordBatch(page, '2026-05-10', ['a'], { product: 'Blue Tin' });
  const lagNow = async (): Promise<unknown> => {
    const state = await page.evaluate(() => window.jarline.call['app.state']({}));
    return state.ok ? state.value.preferences.jarFollowsHours : state;
  };
  await page.keyboard.press('Control+,');
  const panel = page.getByRole('dialog', { name: 'Preferences' });
  const lag = panel.getByLabel('A jar lags behind its bath by (hours)');
  await panel.getByText('How slowly a jar warms').click();
  await expect(lag).toHaveValue('');
  await lag.pressSequentially('1.25');
  expect(await lagNow()).toBeNull();
  await page.keyboard.press('Escape');
  await expect(panel).toBeHidden();
  await expect.poll(lagNow).toBe(1.25);
  await toHistory(page);
  const chosen = page.getByRole('checkbox', { name: /^Choose to undo: .*preferences/i });
  await expect(chosen).toHaveCount(1);
  await chosen.check();
  await page.getByRole('button', { name: 'Undo it', exact: true }).click();
  await expect.poll(lagNow).toBeNull();
  await page.keyboard.press('Control+,');
  await panel.getByText('How slowly a jar warms').click();
  await expect(lag).toHaveValue('');
});

test.describe('where the system speaks as in the United States', () => {
  test.use({ systemLocale: 'en_US.UTF-8' });
  test('the first ledger begins with °F, their spoons, months first and dollars', async ({ page }) => {
    await page.getByRole('button', { name: 'Preferences' }).click();
    const panel = page.getByRole('dialog', { name: 'Preferences' });
    await expect(panel.getByLabel('Measures, days and money as in')).toHaveValue('USD');
    await panel.getByText('Change one of these').click();
    for (const name of ['°F', 'Spoons, cups and quarts', 'United States', 'Month first'])
      await expect(panel.getByRole('radio', { name })).toBeChecked();
    await expect(panel.getByLabel('Currency')).toHaveValue('USD');
  });
});
