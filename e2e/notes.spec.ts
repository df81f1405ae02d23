// Bringing in a spreadsheet, in the real window: preview, rematching, mending in place, answering, cancelling.
import { truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { complaintsByDayAndNight, complaintsOfAxe } from './axe';
import { expect, test } from './window';

test.use({ seed: 'empty' });

const kitchen = join(import.meta.dirname, '../tests/notes/kitchen-notes.csv');

async function openNotes(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Bring in a spreadsheet' }).click();
  await expect(page.getByRole('heading', { name: 'Bring in a spreadsheet' })).toBeVisible();
}
const choose = (
  page: Page,
  file: string | { name: string; mimeType: string; buffer: Buffer },
): Promise<void> => page.getByLabel('Choose a file').setInputFiles(file);
const csv = (name: string, text: string) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });

test.describe('from the three doors', () => {
  test.use({ seed: 'none' });

  test('the kitchen notes come in; what stayed aside is mended and comes in after them', async ({ page }) => {
    await openNotes(page);
    await choose(page, kitchen);
    await expect(page.getByRole('heading', { name: 'kitchen-notes.csv' })).toBeFocused();
    await expect(page.getByText('44 rows to come in, 1 aside and 1 empty.')).toBeVisible();
    await expect(page.locator('.columns').getByLabel('Started from')).toHaveValue('seed');
    await expect(page.getByText('fizzy?').first()).toBeVisible();

    await page.getByRole('button', { name: 'Bring in 44 rows' }).click();
    // The truth that was handed over with the notes: 44 jars; two sources named in them.
    await expect(
      page.getByRole('heading', { name: /^44 jars, \d+ seedings and 2 sources came in\.$/ }),
    ).toBeFocused();
    await expect(page.getByText(/^Row 47 stays aside: /)).toBeVisible();

    await page.getByRole('button', { name: 'Mend what stayed aside' }).click();
    await expect(page.getByText('1 aside, 44 already here and 1 empty.')).toBeVisible();
    const temperature = page.locator('.mend').getByLabel('Temp');
    await temperature.fill('101 F');
    await temperature.press('Enter');
    await expect(page.getByText('Mended: read as “101 F”.')).toBeVisible();
    await expect(temperature).toBeFocused();
    const seed = page.locator('.mend').getByLabel('Started from');
    await seed.fill('12/30/25 a');
    await seed.press('Enter');
    await page.getByRole('button', { name: 'Bring in 1 row' }).click();
    await expect(page.getByRole('heading', { name: '1 jar and 1 seeding came in.' })).toBeVisible();
    await page.getByRole('button', { name: 'See the family' }).click();
    await expect(page.getByRole('button', { name: 'Family', exact: true })).toHaveAttribute(
      'aria-current',
      'page',
    );
    await expect(page.getByText(/45 jars/)).toBeVisible();
  });

  test('nothing comes into the invented ledger; one button leads to a ledger of one’s own', async ({
    page,
  }) => {
    await page.getByRole('button', { name: 'Look around' }).click();
    await expect(page.getByText('Invented notes')).toBeVisible();
    // In the bar it makes room for what is said of the invented notes.
    await page.keyboard.press('Alt+7');
    await expect(page.getByText('This is the invented ledger.')).toBeVisible();
    await expect(page.getByLabel('Choose a file')).toHaveCount(0);
    expect(await complaintsOfAxe(page)).toEqual([]);
    await page.getByRole('button', { name: 'Leave it and bring in my notes' }).click();
    await choose(page, kitchen);
    await page.getByRole('button', { name: 'Bring in 44 rows' }).click();
    await expect(page.getByRole('heading', { name: /^44 jars/ })).toBeVisible();
    const state = await page.evaluate(() => window.jarline.call['app.state']({}));
    expect(state.ok && [state.value.ledger?.demo, state.value.ledger?.jars]).toEqual([false, 44]);
  });
});

test('a question that would bring in more rows than are in hand is what there is to press first', async ({
  page,
}) => {
  await page.getByRole('button', { name: 'Bring in a spreadsheet' }).click();
  const rows = ['The Heirloom,', '2026-01-01 a,40 ml', '2026-01-02 a,40 ml', '8 caps Blue Tin,'];
  const text = `date,jar,seed,amount\n${rows.map((row, at) => `2026-01-0${at + 1},a,${row}\n`).join('')}`;
  await choose(page, csv('led.csv', text));
  const leading = page.getByRole('region', { name: 'One answer first' });
  await expect(leading.getByText('Your answer can bring in 3 rows that wait for it.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Bring in 1 row' })).not.toHaveClass(/primary/);
  expect(await complaintsOfAxe(page)).toEqual([]);
  await leading.getByRole('button', { name: 'A culture somebody gave me' }).click();
  await expect(leading).toHaveCount(0);
  await page.getByRole('button', { name: 'Bring in 4 rows' }).click();
  await expect(page.getByRole('heading', { name: /^4 jars/ })).toBeVisible();
});

test('what is left for later waits where a file is chosen, after a restart as well, and is answered there', async ({
  page,
}) => {
  await openNotes(page);
  await choose(
    page,
    csv('later.csv', 'Date,Jar,From,Note\n2026-03-12,a,10 capsules Blue Tin,odd but nice\n'),
  );
  await page.getByRole('button', { name: 'Bring in 1 row' }).click();
  await expect(page.getByRole('heading', { name: 'One note is not answered' })).toBeVisible();
  await page.reload();
  await page.getByRole('button', { name: 'Bring in notes' }).click();
  await expect(page.getByRole('heading', { name: 'Bring in a spreadsheet' })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'One note is not answered' })).toBeVisible();
  await page.getByRole('button', { name: /^Look first.*odd but nice/ }).click();
  await expect(page.getByRole('heading', { name: 'One note is not answered' })).toHaveCount(0);
});

test('what rows say is listed before they come in, what may tell of spoilage first, and answered there', async ({
  page,
}) => {
  await openNotes(page);
  const rows = ['2026-03-12,a,10 capsules Blue Tin,lovely', '2026-03-13,a,10 capsules Blue Tin,pink streaks'];
  await choose(
    page,
    csv('said.csv', `Date,Jar,From,Note\n${rows.join('\n')}\n2026-03-14,a,10 capsules Blue Tin,smooth\n`),
  );
  const said = page.getByRole('region', { name: 'What the rows say' });
  await expect(said.getByRole('group').first()).toContainText('pink streaks');
  await said
    .getByRole('group', { name: /pink streaks/ })
    .getByText('Discard', { exact: true })
    .click();
  // The answer is read before anything is measured: what it urged goes.
  await expect(said.locator('.urgent')).toHaveCount(0);
  // What says nothing of safety stands behind one line, and what answers many stays where it is once it has.
  await expect(said.getByText('lovely')).toHaveCount(0);
  await said.getByRole('button', { name: '2 rows say nothing of safety' }).click();
  await expect(said.getByRole('group')).toHaveCount(3);
  const all = said.getByRole('button', { name: 'All 2 others are fine' });
  const stood = await all.boundingBox();
  await all.click();
  const answered = said.getByRole('button', { name: 'All 2 are answered' });
  await expect(answered).toBeDisabled();
  expect(await answered.boundingBox()).toMatchObject({ x: stood?.x, y: stood?.y });
  expect(await complaintsOfAxe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Bring in 3 rows' }).click();
  await expect(page.getByRole('heading', { name: /^3 jars/ })).toBeVisible();
  const unread = await page.evaluate(() => window.jarline.call['remarks.list']({}));
  expect(unread.ok && unread.value.unread).toBe(0);
});

test('undoing takes it all back, and the file can come in again', async ({ page }) => {
  await openNotes(page);
  await choose(page, csv('one.csv', 'Date,Jar,From\n2026-03-14,a,10 capsules Blue Tin\n'));
  await page.getByRole('button', { name: 'Bring in 1 row' }).click();
  await expect(page.getByRole('heading', { name: '1 jar, 1 seeding and 1 source came in.' })).toBeVisible();
  await page.getByRole('button', { name: 'Another file' }).click();
  await choose(page, csv('one.csv', 'Date,Jar,From\n2026-03-14,a,10 capsules Blue Tin\n'));
  await expect(page.getByText('1 already here.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Nothing to bring in' })).toBeDisabled();
  await page.keyboard.press('Control+z');
  await expect(page.getByRole('button', { name: 'Bring in 1 row' })).toBeEnabled();
});

test('a row that now says spoiled is asked about first, taken over, and holds what hangs on it', async ({
  page,
}) => {
  const start = 'Date,Jar,From,Set,Notes\n2026-03-01,a,10 capsules Blue Tin,firm,\n';
  await openNotes(page);
  await choose(page, csv('jars.csv', `${start}2026-03-08,a,2026-03-01 a,firm,\n`));
  await page.getByRole('button', { name: 'Bring in 2 rows' }).click();
  await page.getByRole('button', { name: 'Another file' }).click();

  const longer = `${start}2026-03-08,a,2026-03-01 a,firm,went pink threw it out\n2026-03-12,a,2026-03-08 a,firm,fizzy?\n`;
  await choose(page, csv('jars.csv', longer));
  const urgent = page.locator('.ask').first();
  await expect(urgent).toContainText(
    'Row 3: the notes now say that 8 Mar 2026 a spoiled (pink). The ledger says firm. Take it over? Row 4 hangs on it and would be set aside.',
  );
  expect(await complaintsOfAxe(page)).toEqual([]);
  await page.getByLabel('Take it over').check();
  await page.getByRole('button', { name: 'Bring in 1 row, change 1 jar' }).click();
  await expect(
    page.getByRole('heading', { name: '1 jar and 1 seeding came in. 1 jar was changed as you answered.' }),
  ).toBeFocused();
  await expect(page.getByText('1 question stays open; bring the file in again to answer it.')).toBeVisible();
  await expect(page.getByRole('listitem').filter({ hasText: /^Row 4: It says “fizzy\?”/ })).toBeVisible();

  await page.getByRole('button', { name: 'Another file' }).click();
  await choose(page, csv('jars.csv', longer));
  await expect(page.locator('.ask')).toHaveCount(1);
  await page.getByLabel('It was fine').check();
  await page.getByRole('button', { name: 'Change 1 jar' }).click();
  await expect(page.getByRole('heading', { name: '1 jar was changed as you answered.' })).toBeVisible();
  await expect(page.getByText('stays open')).toHaveCount(0);
});

test('a changed row without a letter is asked about: the same jar, or another one', async ({ page }) => {
  const start = 'Date,From,Set,pH\n2026-03-01,10 capsules Blue Tin,firm,\n';
  await openNotes(page);
  await choose(page, csv('jars.csv', `${start}2026-03-08,2026-03-01,firm,\n`));
  await page.getByRole('button', { name: 'Bring in 2 rows' }).click();
  await page.getByRole('button', { name: 'Another file' }).click();

  await choose(page, csv('jars.csv', `${start}2026-03-08,2026-03-01,very firm,4.4\n`));
  const asked = page.locator('.ask');
  await expect(asked).toContainText(
    'By its day and its place in the file it is 8 Mar 2026 a, and it now differs: set very firm here, firm in the ledger; pH 4.4 here, blank in the ledger. Is it the same jar, or another one?',
  );
  await expect(page.getByRole('button', { name: 'Nothing to bring in' })).toBeDisabled();
  expect(await complaintsOfAxe(page)).toEqual([]);
  await page.getByLabel('Another jar: bring it in').check();
  await expect(page.getByRole('button', { name: 'Bring in 1 row' })).toBeEnabled();
  await page.getByLabel('The same jar: take it over').check();
  await page.getByRole('button', { name: 'Change 1 jar' }).click();
  await expect(page.getByRole('heading', { name: '1 jar was changed as you answered.' })).toBeFocused();

  await page.getByRole('button', { name: 'Another file' }).click();
  await choose(page, csv('jars.csv', `${start}2026-03-08,2026-03-01,very firm,4.4\n`));
  await expect(page.getByText('2 already here.')).toBeVisible();
  await expect(asked).toHaveCount(0);
});

test('a column that only its cells tell is looked at first; what was chosen holds for the next file', async ({
  page,
}) => {
  const start = 'Day,Jar,From,Zeug\n2026-03-01,a,10 capsules Blue Tin,36 h\n';
  await openNotes(page);
  await choose(page, csv('jars.csv', start));
  const right = page.getByRole('button', { name: 'It is right' });
  await expect(page.getByText(/^Look at these columns first/)).toBeVisible();
  await right.click();
  await expect(right).toBeDisabled();
  expect(await complaintsOfAxe(page)).toEqual([]);
  await page.getByRole('button', { name: 'Bring in 1 row' }).click();
  await page.getByRole('button', { name: 'Another file' }).click();

  await choose(page, csv('jars.csv', `${start}2026-03-08,a,2026-03-01 a,34 h\n`));
  await expect(page.getByText(/^What you chose for an earlier file/)).toBeVisible();
  await expect(right).toHaveCount(0);
  await page.getByRole('button', { name: 'Decide anew' }).click();
  await expect(right).toBeEnabled();
});

test('the headings of the rows stand over their columns', async ({ page }) => {
  await openNotes(page);
  await choose(page, kitchen);
  await expect(page.getByRole('button', { name: 'Bring in 44 rows' })).toBeEnabled();
  const table = page.getByRole('table');
  const left = async (row: string): Promise<number[]> =>
    table
      .locator(`${row} :is(th, td)`)
      .evaluateAll((cells) => cells.map((cell) => Math.round(cell.getBoundingClientRect().left)));
  const heads = await left('thead tr');
  expect(heads.length).toBe(4);
  expect(await left('tbody tr:first-child')).toEqual(heads);
});

test('a date that can be read in two ways is asked about, and nothing comes in before', async ({ page }) => {
  await openNotes(page);
  await choose(
    page,
    csv(
      'short.csv',
      'Date,Jar,Started from,How it set\n3/4/2026,a,Blue Tin,firm\n5/4/2026,a,3/4/2026 a,firm\n',
    ),
  );
  await expect(page.getByRole('heading', { name: 'One thing first' })).toBeVisible();
  await expect(page.getByRole('button', { name: 'Answer first' })).toBeDisabled();
  await page.getByLabel('The day first').check();
  await expect(page.getByRole('button', { name: 'Bring in 2 rows' })).toBeEnabled();
  await expect(page.getByRole('rowheader', { name: '2', exact: true })).toBeVisible();
  await expect(page.getByRole('cell', { name: '3 Apr 2026 a' }).first()).toBeVisible();
  await page.getByLabel('The month first').check();
  await expect(page.getByRole('cell', { name: '4 Mar 2026 a' }).first()).toBeVisible();
});

test('a paste, and everything after it, by keyboard alone', async ({ page }) => {
  await openNotes(page);
  await page.getByLabel('paste them here').focus();
  await page.keyboard.insertText(
    'Date\tJar\tStarted from\tSet\n2026-03-14\ta\tBlue Tin\tfirm\n2026-03-20\ta\t2026-03-14 a\tfirm\n',
  );
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'pasted notes.tsv' })).toBeFocused();
  await expect(page.getByRole('button', { name: 'Bring in 2 rows' })).toBeEnabled();
  await page.keyboard.press('Tab');
  await expect(page.getByRole('button', { name: 'Bring in 2 rows' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: '2 jars, 2 seedings and 1 source came in.' })).toBeFocused();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect(page.getByText(/^2 jars\./)).toBeVisible();
});

test('text pasted anywhere on the page is read as a file', async ({ page }) => {
  await openNotes(page);
  await page.evaluate(() => {
    const data = new DataTransfer();
    data.setData('text/plain', 'Date\tJar\tFrom\n2026-03-14\ta\tBlue Tin\n');
    document.body.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
    );
  });
  await expect(page.getByRole('button', { name: 'Bring in 1 row' })).toBeEnabled();
});

test('what is typed outlives a new preview, and another meaning can be chosen for a column', async ({
  page,
}) => {
  await openNotes(page);
  await choose(
    page,
    csv(
      'odd.csv',
      'Date,Jar,From,Temp,Smack\n2026-03-14,a,Blue Tin,1010F,firm\n2026-03-20,a,2026-03-14 a,101F,soft\n',
    ),
  );
  const warm = page.locator('.mend').getByLabel('Temp');
  await expect(warm).toHaveValue('1010F');
  await warm.fill('10');
  // It is asked about above as well, as a column that only its cells told.
  const smack = page.getByRole('region', { name: 'What the columns mean' }).getByLabel('Smack');
  await smack.selectOption('how it set');
  await expect(smack).toHaveValue('set');
  await expect(warm).toHaveValue('10');
  await page.getByRole('button', { name: 'Family', exact: true }).click();
  await page.getByRole('button', { name: 'Bring in notes' }).click();
  await expect(page.getByRole('heading', { name: 'odd.csv' })).toBeVisible();
  await expect(smack).toHaveValue('set');
  await page.getByLabel(/^“Blue Tin” was taken as a product/).selectOption('A culture somebody gave me');
  await expect(page.getByLabel(/^“Blue Tin” was taken as a received culture/)).toHaveValue('culture');
});

test('a file that is too large is refused before it is read', async ({ program, page }) => {
  const huge = join(program.dataFolder, 'huge.csv');
  writeFileSync(huge, '');
  truncateSync(huge, 21 * 1024 * 1024);
  await openNotes(page);
  await choose(page, huge);
  await expect(page.getByRole('alert')).toContainText(
    'huge.csv is 21 MB, and 20 MB at most can come in at once.',
  );
});

/** Two rows of each day, from 1990 on. */
const dayOf = (row: number): string =>
  new Date(Date.UTC(1990, 0, 1 + Math.floor(row / 2))).toISOString().slice(0, 10);
const letterOf = (row: number): string => 'ab'[row % 2] ?? '';

test('20,000 rows stay usable, and stopping while they come in leaves the ledger as it was', async ({
  page,
}) => {
  // It waits twice for what takes a busy machine up to a minute.
  test.setTimeout(180_000);
  // Two jars a day, each from the same letter of the day before; one row in ten stays aside.
  const lines = Array.from({ length: 20_000 }, (_, at) => {
    const seed = at < 2 ? 'Blue Tin' : `${dayOf(at - 2)} ${letterOf(at)}`;
    return `${dayOf(at)},${letterOf(at)},${seed},firm,${at % 10 ? '101F' : '1010F'}`;
  });
  await openNotes(page);
  await choose(page, csv('long.csv', `Date,Jar,Started from,Set,Temp\n${lines.join('\n')}\n`));
  await expect(page.getByText('1 to 50 of 20,000 rows')).toBeVisible({ timeout: 60_000 });
  expect(await page.evaluate(() => document.querySelectorAll('*').length)).toBeLessThan(2500);
  await page
    .getByRole('navigation', { name: 'Pages of rows' })
    .last()
    .getByRole('button', { name: 'Later' })
    .click();
  await expect(page.getByText('51 to 100 of 20,000 rows')).toBeVisible();

  await page.getByRole('button', { name: /^Bring in [\d,]+ rows$/ }).click();
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByRole('alert')).toContainText('Stopped. Nothing came in', { timeout: 60_000 });
  const state = await page.evaluate(() => window.jarline.call['app.state']({}));
  expect(state.ok && state.value.ledger?.jars).toBe(0);
});

test.describe('800 wide', () => {
  test.use({ size: { width: 800, height: 900 } });

  test('the screens hold to the accessibility rules, by day and by night', async ({ page }) => {
    await openNotes(page);
    expect(await complaintsByDayAndNight(page)).toEqual([]);
    await choose(page, kitchen);
    await expect(page.getByRole('button', { name: 'Bring in 44 rows' })).toBeEnabled();
    expect(await complaintsByDayAndNight(page)).toEqual([]);
    await page.getByRole('button', { name: 'Bring in 44 rows' }).click();
    await expect(page.getByRole('heading', { name: /came in\.$/ })).toBeVisible();
    expect(await complaintsByDayAndNight(page)).toEqual([]);
  });
});
