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

test('an appliance is proven by the files of a run, chosen for a hold, and a check of the meter is noted', async ({
  page,
}) => {
  const hold = await inWarmth(page);
  await page.getByRole('complementary').getByRole('button', { name: 'Appliances and checks' }).click();
  await page.getByRole('button', { name: 'New appliance' }).click();
  await page.keyboard.type('Blue bath');
  await page.keyboard.press('Control+Enter');
  const bath = page.getByRole('article', { name: 'Blue bath' });
  await bath.getByRole('button', { name: 'Prove it by a run' }).click();
  const start = Date.UTC(2026, 4, 18, 18) / 1000;
  const csv = (level: number, hours: number): Buffer => {
    const rows = Array.from({ length: 30 * 12 }, (_, i) => `${new Date((start + i * 300) * 1000).toISOString().slice(0, 16).replace('T', ' ')},${(level - 18 * Math.exp(-i / 12 / hours)).toFixed(1)}`); // prettier-ignore
    return Buffer.from(['Time,Temperature °C', ...rows].join('\n'));
  };
  for (const [name, level, hours] of [['centre.csv', 38, 0.1], ['edge.csv', 37.5, 0.1], ['jar.csv', 37.8, 0.9]] as const)
    await bath.getByLabel(/probe’s file…$/).setInputFiles({ name, mimeType: 'text/csv', buffer: csv(level, hours) }); // prettier-ignore
  await expect(bath.getByLabel('jar.csv')).toHaveValue('jar');
  await bath.getByRole('group', { name: 'Were all its places filled?' }).getByText('Yes').click();
  await bath.getByRole('button', { name: 'Keep the run' }).click();
  await expect(bath.getByText(/^Proven: it settles at 38\.0 °C/)).toBeVisible();
  await page.getByRole('button', { name: 'Note a check of the meter' }).click();
  await page.keyboard.type('4.3');
  await page.keyboard.press('Control+Enter');
  await expect(page.getByRole('region', { name: 'Checks of tools' })).toContainText(
    'it proves nothing until it is calibrated',
  );
  expect(await complaintsByDayAndNight(page)).toEqual([]);
  await page.getByRole('button', { name: 'Back to the holds' }).click();
  await hold.getByLabel('Stands in').selectOption('Blue bath');
  await expect(hold.getByRole('heading', { name: 'Set to 38 °C, in Blue bath' })).toBeVisible();
});

test('a laboratory’s result stands beside its jar', async ({ page }) => {
  const { jars } = await recordBatch(page, '2026-05-10', ['a'], { product: 'Blue Tin' });
  expect(jars).toHaveLength(1);
  await page.keyboard.press('Alt+1');
  await page.getByRole('treeitem', { name: /^10 May a\b/ }).click();
  const pane = page.getByRole('complementary', { name: 'About this jar' });
  await pane.getByRole('button', { name: 'Add a result' }).click();
  await expect(pane.getByLabel('What was measured')).toBeFocused();
  await pane.getByLabel('Value').fill('250 million');
  await pane.getByLabel('Laboratory', { exact: true }).fill('the district laboratory');
  await pane.getByLabel('Sampled on').fill('12 May');
  await page.keyboard.press('Control+Enter');
  await expect(
    pane.getByText('count 250,000,000 CFU/mL, the district laboratory, 12 May 2026'),
  ).toBeVisible();
  await page.keyboard.press('Control+z');
  await expect(pane.getByText(/250,000,000/)).toHaveCount(0);
});

test('a batch recorded today is in warmth though nobody noted its start, and is looked at once it is taken out', async ({
  page,
}) => {
  await recordBatch(page, '2026-05-20', ['a', 'b'], { product: 'Blue Tin' });
  await page.keyboard.press('Alt+2');
  await page.getByRole('button', { name: /^20 May/ }).click();
  await expect(page.getByText(/^In warmth until about .*21:00/)).toBeVisible();
  await expect(page.getByText(/^Its start is taken as 09:00, when it was recorded/)).toBeVisible();
  await expect(page.getByLabel('Set, jar a')).toHaveCount(0);
  await page.getByRole('button', { name: 'Taken out early' }).click();
  await expect(page.getByText('Look at 20 May a, b, and smell: then type what you saw.')).toBeVisible();
  await expect(page.getByLabel('Set, jar a')).toHaveAttribute('placeholder', 'look and smell first');
});
