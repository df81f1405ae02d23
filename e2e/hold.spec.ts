// A hold in the real window: from today on the strip to the last jar taken out, by keyboard where a hand would type.
import type { Locator, Page } from '@playwright/test';
import { complaintsByDayAndNight } from './axe';
import { recordBatch } from './recording';
import { expect, test } from './window';

test.use({ seed: 'empty' });

/** Three jars in warmth since 01:00, eight hours ago, for 31 h. */
async function inWarmth(page: Page): Promise<Locator> {
  const first = await recordBatch(page, '2026-05-10', ['a', 'b'], { product: 'Blue Tin' });
  const began = { startedAt: '2026-05-20T01:00:00+02:00', hours: 31 };
  await recordBatch(page, '2026-05-20', ['a', 'b', 'c'], { jar: first.jars[0]! }, began);
  await page.keyboard.press('Alt+1');
  const today = page.getByRole('region', { name: 'Today' });
  await today.getByRole('button', { name: /^Look now/ }).click();
  const hold = page.getByRole('article', { name: 'The hold of 20 May' });
  await expect(hold).toBeVisible();
  return hold;
}

test('the early look is typed along a row, and today goes on to what comes next', async ({ page }) => {
  const hold = await inWarmth(page);
  await expect(hold.getByText('Look now, until 13:00.')).toBeVisible();
  await hold.getByLabel('20 May a at the look').focus();
  await page.keyboard.type('starting, sour');
  await page.keyboard.press('Enter');
  await page.keyboard.type('as a');
  await page.keyboard.press('Enter');
  await page.keyboard.type('lose');
  await page.keyboard.press('Enter');
  // What is not read keeps what was typed, and says what can be.
  await expect(hold.getByRole('alert')).toContainText('Type what you see and smell');
  await expect(hold.getByLabel('20 May b at the look')).toHaveValue('as a');
  await page.keyboard.press('Control+a');
  await page.keyboard.type('loose pH 5.9');
  await page.keyboard.press('Control+Enter');
  await expect(page.getByText('Noted the look at 20 May a, b, c.')).toBeVisible();
  await expect(hold.getByLabel('20 May b at the look')).toHaveValue('starting, sour');
  await expect(hold.getByLabel('20 May c at the look')).toHaveValue('loose, pH 5.9');
  expect(await complaintsByDayAndNight(page)).toEqual([]);
  await page.keyboard.press('Alt+1');
  await expect(page.getByRole('region', { name: 'Today' })).toContainText(
    'Look at 24 h, due tomorrow at 01:00.',
  );
});

test('the power fails and is back, a jar is moved, one is taken out, then all: one press each, and undone', async ({
  page,
}) => {
  const hold = await inWarmth(page);
  await hold.getByRole('button', { name: 'Power cut' }).click();
  await expect(hold.getByRole('list', { name: 'What failed' })).toContainText('How long is not noted.');
  await hold.getByRole('button', { name: 'Power is back' }).click();
  await hold.getByRole('button', { name: /^Correct Power cut/ }).click();
  await page.getByLabel('From', { exact: true }).fill('6:00');
  await page.keyboard.press('Control+Enter');
  await expect(hold.getByRole('list', { name: 'What failed' })).toContainText('Power cut, 3 h, from 06:00.');
  await hold.getByRole('button', { name: /^20 May b/ }).click();
  await hold.getByRole('button', { name: 'Move b' }).click();
  await hold.getByRole('button', { name: 'To another warm place' }).click();
  await expect(hold.getByRole('button', { name: /^20 May b.*out/ })).toBeDisabled();
  await page.keyboard.press('Control+z');
  await expect(hold.getByRole('button', { name: /^20 May b/ })).toBeEnabled();
  await hold.getByRole('button', { name: /^20 May c/ }).click();
  await hold.getByRole('button', { name: 'Take out c' }).click();
  await expect(page.getByText(/^Taken out: 20 May c\. Look and smell first/)).toBeVisible();
  await hold.getByRole('button', { name: 'Take out now' }).click();
  await expect(hold.getByText('8 h', { exact: true })).toBeVisible();
  await expect(hold.getByRole('button', { name: /^Take out/ })).toHaveCount(0);
  await page.keyboard.press('Control+z');
  await expect(hold.getByRole('button', { name: 'Take out now' })).toBeVisible();
});

test('readings are typed, and a probe’s file tells what it holds before it is kept', async ({ page }) => {
  const hold = await inWarmth(page);
  await hold.getByRole('button', { name: 'Type a reading' }).click();
  await page.keyboard.type('37.4');
  await page.keyboard.press('Control+Enter');
  await expect(page.getByText('Noted the reading.')).toBeVisible();
  await hold.getByRole('button', { name: 'Bring in a file' }).click();
  const start = Date.UTC(2026, 4, 20, 1) / 1000;
  const lines = Array.from({ length: 85 }, (_, i) => {
    const at = new Date((start + i * 300) * 1000).toISOString().slice(0, 16).replace('T', ' ');
    return i > 40 && i < 60
      ? []
      : [`${at};${i === 30 ? '91,0' : (38 - 10 * Math.exp(-i / 9)).toFixed(1).replace('.', ',')}`];
  }).flat();
  const csv = ['Time;Bath °C', ...lines].join('\n');
  await hold
    .getByLabel('Choose a file')
    .setInputFiles({ name: 'bath.csv', mimeType: 'text/csv', buffer: Buffer.from(csv) });
  const told = hold.getByRole('region', { name: 'What the file tells' });
  await expect(told).toContainText('no bath and no jar warms and cools that fast');
  await expect(told).toContainText(/1 h 40 min from 0\d:20/);
  await hold.getByRole('button', { name: 'Bring them in' }).click();
  await expect(hold.getByText(/^Settled after /)).toBeVisible();
  await expect(hold.getByRole('img', { name: /^Readings of 20 May against the plan/ })).toBeVisible();
  expect(await complaintsByDayAndNight(page)).toEqual([]);
});
