// The shelf in the window: walked and used by keyboard, what is asked first, and nothing that axe or the eye stumbles over.
import { DEMO_NOW } from '../core/demo/invented-larder';
import { complaintsByDayAndNight } from './axe';
import { expect, test } from './window';

test.use({ seed: 'demo', now: DEMO_NOW });

test('jars stand in the order of eating, are walked by keyboard, and each verb is one press that can be undone', async ({
  page,
}) => {
  await page.keyboard.press('Alt+3');
  const fridge = page.getByRole('region', { name: 'Fridge' });
  const first = fridge.getByRole('button').first();
  await expect(first).toHaveAttribute('aria-pressed', 'true');
  const name = (await first.locator('.shelf-name').textContent()) ?? '';
  await expect(page.getByText(`Eat ${name} first`)).toBeVisible();
  const about = page.getByRole('complementary', { name: /^About (?!these)/ });
  await expect(about.getByRole('heading', { level: 2 })).toHaveText(name);
  expect(await complaintsByDayAndNight(page)).toEqual([]);

  await first.focus();
  await page.keyboard.press('ArrowRight');
  const second = fridge.getByRole('button').nth(1);
  await expect(second).toBeFocused();
  await expect(about.getByRole('heading', { level: 2 })).not.toHaveText(name);
  await page.keyboard.press('End');
  await expect(second).not.toBeFocused();
  await page.keyboard.press('Home');
  await expect(first).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(about.getByRole('button', { name: /^Seed from it/ })).toBeFocused();

  await about.getByLabel(`How much of ${name} is eaten`).fill('200 mL');
  await page.keyboard.press('Enter');
  await expect(first).toContainText('700 mL');
  await expect(about).toContainText('opened 3 May');
  // In a field Ctrl Z is the field's own.
  await first.focus();
  await page.keyboard.press('Control+z');
  await expect(first).toContainText('900 mL');

  await about.getByRole('button', { name: /^Freeze/ }).click();
  await expect(page.getByRole('region', { name: 'Freezer' })).toContainText(`12 cubes of ${name}`);
  await expect(first.locator('.shelf-name')).not.toHaveText(name);
});

test('what is kept for seed is asked about before it is opened, and what is set aside is only discarded', async ({
  page,
}) => {
  await page.keyboard.press('Alt+3');
  const about = page.getByRole('complementary', { name: /^About (?!these)/ });
  const fridge = page.getByRole('region', { name: 'Fridge' });
  await fridge.getByRole('button', { name: /^22 Apr a/ }).click();
  await about.getByRole('button', { name: /^Keep for seed/ }).click();
  // It stands among what is kept for seed now.
  const kept = fridge.getByRole('button', { name: /^22 Apr a ?, .*seed by/ });
  await kept.click();
  await about.getByRole('button', { name: /^Open/ }).click();
  const question = page.getByRole('dialog', { name: 'It is kept for seed' });
  await expect(question).toContainText('take the seed first');
  await page.keyboard.press('Escape');
  await expect(question).toBeHidden();

  const aside = page.getByRole('region', { name: 'Set aside: not food, not seed' });
  await aside.getByRole('button').first().click();
  await expect(about.getByRole('button', { name: /^Eat/ })).toHaveCount(0);
  await expect(about.getByRole('button', { name: /^Discard/ })).toBeVisible();
  await about.getByRole('button', { name: 'Some of it was eaten already' }).click();
  await expect(about).toContainText('say what was eaten and when');
  expect(await complaintsByDayAndNight(page)).toEqual([]);
});
