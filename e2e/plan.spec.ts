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

test.describe('in the invented ledger', () => {
  test.use({ seed: 'demo', now: '2026-05-04T15:00:00+01:00' });

  test('the plan is one line, with the rest a press behind it; a start that is pressed makes it a plan', async ({
    page,
  }) => {
    await toBatches(page);
    await page.keyboard.press('r');
    await expect(page.getByText('Start at 22:30, or tomorrow 06:30 to 10:30.')).toBeVisible();
    await page.getByRole('button', { name: 'Plan it' }).press('Enter');
    const plan = page.getByRole('region', { name: 'The plan' });
    await expect(plan).toContainText('Seed is 1 part in 20, about 4 doublings.');
    await plan.getByLabel('Milk at hand').fill('2 l');
    await expect(plan).toContainText('The milk at hand fills 2 of 3 jars.');
    await plan.getByLabel('Away until').fill('20 May');
    await expect(plan).toContainText(/When you are back on 20 May, .* will still serve as seed/);
    expect(await complaintsByDayAndNight(page)).toEqual([]);
    // One who sleeps late has other starts; they are kept.
    await plan.getByLabel('Awake until').fill('23:30');
    await plan.getByLabel('Awake from').press('Tab');
    await plan.getByLabel('Milk at hand').focus();
    await expect(page.getByText('Start 22:30 to 23:30, or tomorrow 06:30 to 11:30.')).toBeVisible();
    await plan.getByRole('button', { name: 'Begin 5 May 2026 06:30' }).click();
    await page.getByRole('button', { name: 'Plan 3 jars' }).click();
    await expect(page.getByText('to begin 5 May 2026 06:30')).toBeVisible();
    // Its card, large: letters before the seed.
    await page.getByRole('button', { name: 'Making card' }).click();
    const card = page.getByRole('dialog', { name: /^Making card: 5 May 2026/ });
    await expect(
      card.getByRole('checkbox', { name: /Put the letters on the jars first: a, b, c/ }),
    ).toBeVisible();
    await expect(card).toContainText(/At 24 h \(6 May at/);
    await card.getByRole('checkbox', { name: /^Clean and scald/ }).check();
    expect(await complaintsByDayAndNight(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await expect(card).toHaveCount(0);
  });
});
