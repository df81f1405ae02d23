// A batch that is planned, and made with one key. What goes in, and when to start: common practice, no source.
import { complaintsByDayAndNight } from './axe';
import { recordBatch, toBatches } from './recording';
import { expect, test } from './window';

test.use({ seed: 'empty' });

test('a plan is kept, made with one key, and what was typed over it stands beside it; a swapped jar is not made', async ({
  page,
}) => {
  const { jars } = await recordBatch(page, '2026-05-14', ['a', 'b'], { product: 'Blue Tin' });
  await toBatches(page);
  await page.keyboard.press('r');
  await page.getByRole('combobox', { name: 'Seeded from' }).fill('14 May');
  await page.getByRole('option', { name: /^14 May a/ }).click();
  await page.getByLabel('How much of it').fill('3 tbsp');
  await page.getByRole('button', { name: 'Keep it as a plan' }).click();
  const made = page.getByRole('button', { name: 'Made as planned' });
  await expect(made).toBeVisible();
  expect(await complaintsByDayAndNight(page)).toEqual([]);
  const planned = await page.evaluate(async () => (await window.jarline.call['family.get']({})).ok);
  expect(planned).toBe(true);

  // One jar was swapped, and less went into the other than planned.
  await page.getByLabel('Amount, jar a').fill('1 tbsp');
  await page.getByRole('button', { name: 'Not made: jar b' }).click();
  await expect(page.getByRole('button', { name: 'Made, as typed over the plan' })).toBeVisible();
  await page.getByLabel('Amount, jar a').press('Control+Enter');
  await expect(page.getByText('planned, but not made')).toBeVisible();
  await expect(page.getByText('1 tbsp potato starch (planned 2 tbsp)')).toBeVisible();
  await expect(made).toHaveCount(0);

  // One key makes all of another, from wherever the page is read.
  await page.getByRole('button', { name: 'New batch' }).click();
  await page.getByRole('combobox', { name: 'Seeded from' }).fill('14 May');
  await page.getByRole('option', { name: /^14 May b/ }).click();
  await page.getByLabel('How much of it').fill('3 tbsp');
  await page.getByLabel('Name for this batch (optional)').fill('second');
  await page.getByRole('button', { name: 'Keep it as a plan' }).click();
  await expect(made).toBeVisible();
  await page.keyboard.press('Control+Enter');
  await expect(made).toHaveCount(0);
  await expect(page.getByText('on the shelf').or(page.getByText('in warmth')).first()).toBeVisible();
  expect(jars).toHaveLength(2);
});
