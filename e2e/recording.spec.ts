// Recording by hand in the real window: counted by key presses, checked field by field. Amounts: 1 US tbsp is
// 14.78676478125 mL, 1 US quart 946.352946 mL (NIST Handbook 44, appendix C); pH 4.6: 88 FR 22907.
import type { Page } from '@playwright/test';
import { focused, Keys } from './keys';
import { openOutcome, recordBatch, toBatches } from './recording';
import { holdBack } from './late';
import { expect, test } from './window';

test.use({ seed: 'empty' });

test('the first batch of four jars with three fibres, by keyboard alone, in at most 60 key presses', async ({
  page,
}) => {
  const keys = new Keys(page);
  await keys.press('Alt+2');
  await expect(page.getByRole('heading', { name: 'Batches' })).toBeVisible();
  await keys.press('n');
  await expect(page.getByLabel('How many jars')).toBeFocused();
  await expect(page.getByLabel('Made on')).toHaveValue('20 May 2026');
  await keys.type('4');
  await keys.press('Enter');
  await keys.type('Blue Tin');
  await expect(page.getByRole('option', { name: /Add “Blue Tin” as a new product/ })).toBeVisible();
  await keys.press('ArrowDown', 'Enter');
  await expect(page.getByLabel('How many pieces')).toBeFocused();
  await keys.type('10');
  // Down the entries for all, then along the jars: the first stays plain.
  await keys.press('Enter');
  await expect(page.getByLabel('Stirred in', { exact: true })).toBeFocused();
  await keys.press('Enter');
  expect(await focused(page)).toBe('Stirred in, jar a');
  await keys.press('Enter');
  for (const [letter, whole] of [
    ['o', 'oat bran'],
    ['i', 'inulin'],
    ['a', 'acacia fibre'],
  ] as const) {
    await keys.type(letter);
    await expect(page.locator(':focus')).toHaveValue(whole);
    await keys.press('Enter');
  }
  expect(await focused(page)).toBe('Amount');
  await keys.type('3 tbsp');
  await expect(page.getByText('= 45 mL, metric')).toBeVisible();
  await keys.press('Enter');
  await keys.type('w');
  await keys.press('Enter');
  await keys.type('1 qt');
  await keys.press('Enter');
  await keys.type('q');
  await keys.press('ArrowDown', 'ArrowDown');
  expect(await focused(page)).toBe('Held for');
  await keys.type('36');
  await keys.press('Enter');
  await keys.type('38,2 °C');
  await expect(page.getByText('= 38.2 °C, 100.8 °F')).toBeVisible();
  // All of it is in the window at once.
  const scrolled = await page.locator('main').evaluate((main) => main.scrollHeight - main.clientHeight);
  expect(scrolled).toBeLessThanOrEqual(0);
  await keys.press('Control+Enter');
  await expect(page.getByRole('heading', { name: '20 May 2026', exact: true })).toBeVisible();
  const jar = (letter: string) => page.getByRole('region', { name: `20 May ${letter}`, exact: true });
  for (const [letter, fibre] of [
    ['b', '3 tbsp oat bran'],
    ['c', '3 tbsp inulin'],
    ['d', '3 tbsp acacia fibre'],
  ] as const) {
    await expect(jar(letter)).toContainText('10 of Blue Tin');
    await expect(jar(letter)).toContainText(fibre);
    await expect(jar(letter)).toContainText('1 qt whole milk');
  }
  await expect(jar('a')).toContainText('plain');
  test.info().annotations.push({ type: 'key presses', description: String(keys.count) });
  expect(keys.count).toBeLessThanOrEqual(60);
});

test('a repeat batch of four jars, by keyboard alone, in at most 12 key presses', async ({ page }) => {
  const first = await recordBatch(page, '2026-05-10', ['a', 'b', 'c', 'd'], { product: 'Blue Tin' });
  await recordBatch(page, '2026-05-14', ['a', 'b', 'c', 'd'], { jar: first.jars[1]! });
  const keys = new Keys(page);
  await keys.press('Alt+2');
  await expect(page.getByText('4 jars').first()).toBeVisible();
  await keys.press('r');
  await expect(page.getByLabel('Seeded from')).toBeFocused();
  await expect(page.getByLabel('Made on')).toHaveValue('20 May 2026');
  // The advised seed stands there already, with the verdict that advises it; typing takes another.
  await expect(page.getByLabel('Seeded from')).toHaveValue(/^1[04] May [a-d]$/);
  await expect(page.getByRole('list', { name: 'What is advised' })).toContainText(/go on from 1[04] May/i);
  await keys.type('14 may c');
  await keys.press('Enter');
  await expect(page.getByLabel('Seeded from')).toHaveValue('14 May c');
  await keys.press('Control+Enter');
  await expect(page.getByRole('heading', { name: '20 May 2026' })).toBeVisible();
  for (const letter of ['a', 'b', 'c', 'd']) {
    const jar = page.getByRole('region', { name: `20 May ${letter}`, exact: true });
    await expect(jar).toContainText('3 tbsp of 14 May c');
    await expect(jar).toContainText('1 qt whole milk');
    await expect(jar).toContainText('2 tbsp potato starch');
  }
  test.info().annotations.push({ type: 'key presses', description: String(keys.count) });
  expect(keys.count).toBeLessThanOrEqual(12);
});

test('four earlier jars are remembered on one sheet, by keyboard alone, in at most 12 key presses a jar', async ({
  page,
}) => {
  await recordBatch(page, '2026-05-10', ['a'], { product: 'Blue Tin' });
  const keys = new Keys(page);
  await keys.press('Alt+2');
  await expect(page.getByRole('button', { name: /^10 May/ })).toBeVisible();
  await keys.press('m');
  await expect(page.getByLabel('Day, or about when, row 1')).toBeFocused();
  // Down the column of days, then from the foot up and along.
  await keys.type('mid jan');
  await keys.press('ArrowDown', 'ArrowDown', 'ArrowDown');
  await keys.type('2/2');
  await keys.press('Tab', 'Tab');
  expect(await focused(page)).toBe('Seeded from, row 4');
  await keys.type('a or b');
  await keys.press('ArrowUp', 'ArrowUp', 'ArrowUp');
  await keys.type('b');
  await expect(page.locator(':focus')).toHaveValue('Blue Tin');
  await keys.press('ArrowDown', '"', 'ArrowDown', '"', 'Tab', 'Tab', 'Tab', 'Tab', 'Tab', 'Tab');
  await keys.press('f', 'ArrowUp', 's', 'ArrowUp', 'f', 'ArrowDown', 'ArrowDown', 'ArrowDown', 'f');
  await expect(
    page.getByText('2 Feb 2026 a, from about 15 Jan a or about 15 Jan b, not sure which'),
  ).toBeVisible();
  await keys.press('Control+Enter');
  test.info().annotations.push({ type: 'key presses', description: String(keys.count) });
  expect(keys.count).toBeLessThanOrEqual(4 * 12);
  await expect(page.getByText('Recorded from memory. What was left empty is not noted.')).toBeVisible();
  await page.getByRole('button', { name: /^2 Feb/ }).click();
  const jar = page.getByRole('region', { name: '2 Feb a', exact: true });
  await expect(jar).toContainText('about 15 Jan a or about 15 Jan b, not sure which');
  await page.keyboard.press('Control+z');
  await expect(page.getByRole('button', { name: /^(?:about 15 Jan|2 Feb)/ })).toHaveCount(0);
});

test('a batch of which only about the day is known, and its day once that is found', async ({ page }) => {
  await toBatches(page);
  await page.keyboard.press('n');
  const day = page.getByLabel('Made on');
  await day.fill('about 15 Jan');
  await expect(page.getByText('= between 12 Jan 2026 and 18 Jan 2026, year assumed')).toBeVisible();
  await page.getByRole('combobox', { name: 'Seeded from' }).fill('Blue Tin');
  await page.getByRole('option', { name: /Add “Blue Tin” as a new product/ }).click();
  await page.keyboard.press('Control+Enter');
  await expect(page.getByRole('region', { name: 'about 15 Jan a', exact: true })).toBeVisible();
  await page.getByRole('button', { name: 'Correct day, word, note' }).click();
  await expect(day).toHaveValue('between 12 Jan 2026 and 18 Jan 2026');
  await day.fill('13 Jan');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await expect(page.getByRole('region', { name: '13 Jan a', exact: true })).toBeVisible();
});

test('what is typed while a seed is still looked up stays, and so does the cursor', async ({ app, page }) => {
  await recordBatch(page, '2026-05-10', ['a'], { product: 'Blue Tin' });
  await toBatches(page);
  await page.keyboard.press('r');
  const seed = page.getByRole('combobox', { name: 'Seeded from' });
  const amount = page.getByLabel('How much of it');
  await expect(seed).toBeFocused();
  const letGo = await holdBack(app, 'jar.find');
  await seed.fill('10 may a');
  await page.keyboard.press('Enter');
  await amount.fill('3 tbsp');
  await letGo();
  await expect(seed).toHaveValue('10 May a');
  await expect(amount).toHaveValue('3 tbsp');
  await expect(amount).toBeFocused();
});

test('a word that is typed faster than it is drawn comes out as it was typed', async ({ page }) => {
  await recordBatch(page, '2026-05-10', ['a'], { product: 'Blue Tin' });
  await toBatches(page);
  await page.keyboard.press('n');
  const fibre = page.getByLabel('Stirred in', { exact: true });
  await fibre.focus();
  // All keys within one frame, as from a quick hand on a busy machine.
  const typed = await page.evaluate(() => {
    for (const letter of 'inulin') document.execCommand('insertText', false, letter);
    return document.activeElement instanceof HTMLInputElement ? document.activeElement.value : null;
  });
  expect(typed).toBe('inulin');
  await expect(fibre).toHaveValue('inulin');
});

test('one jar differs in its seed, and a bad amount is said under its field with nothing lost', async ({
  page,
}) => {
  await recordBatch(page, '2026-05-10', ['a', 'b'], { product: 'Blue Tin' });
  await toBatches(page);
  await page.keyboard.press('r');
  await page.getByRole('combobox', { name: 'Seeded from' }).fill('10 may a');
  await page.keyboard.press('Enter');
  await page.getByLabel('How much of it').fill('3 spoonz');
  await page.keyboard.press('Control+Enter');
  await expect(page.getByText('This is not read as an amount.')).toBeVisible();
  await expect(page.getByLabel('How much of it')).toBeFocused();
  await expect(page.getByLabel('How much of it')).toHaveValue('3 spoonz');
  await expect(page.getByRole('combobox', { name: 'Seeded from' })).toHaveValue('10 May a');
  await page.getByLabel('How much of it').fill('¼ cup');
  await expect(page.getByText('= 62.5 mL, metric')).toBeVisible();

  await page.getByRole('button', { name: /^More: another seed/ }).click();
  await page.getByRole('button', { name: 'Seed it otherwise: jar b' }).click();
  const second = page.getByRole('group', { name: 'Jar b' });
  await second.getByRole('combobox', { name: 'Seeded from' }).fill('10 may b');
  await page.keyboard.press('Enter');
  await expect(second.getByLabel('How much of it')).toBeFocused();
  await second.getByLabel('How much of it').fill('100 ml');
  await page.keyboard.press('Control+Enter');
  await expect(page.getByRole('region', { name: '20 May a', exact: true })).toContainText(
    '¼ cup of 10 May a',
  );
  await expect(page.getByRole('region', { name: '20 May b', exact: true })).toContainText(
    '100 ml of 10 May b',
  );
});

test('Escape leaves a form, and what was typed stands there again', async ({ page }) => {
  await recordBatch(page, '2026-05-10', ['a'], { product: 'Blue Tin' });
  await toBatches(page);
  await page.keyboard.press('n');
  await page.getByLabel('How many jars').fill('3');
  // The first Escape is the list's, which hangs open under its field; the next one is the form's.
  await page.getByRole('combobox', { name: 'Seeded from' }).fill('10 may');
  const list = page.getByRole('listbox', { name: 'Suggestions' });
  await expect(list).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(list).toHaveCount(0);
  await expect(page.getByRole('form', { name: 'New batch' })).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('form', { name: 'New batch' })).toHaveCount(0);
  await page.getByRole('button', { name: 'Go on with the new batch' }).click();
  await expect(page.getByLabel('How many jars')).toHaveValue('3');
  await expect(page.getByRole('combobox', { name: 'Seeded from' })).toHaveValue('10 may');
  // A plain jar is said with one press, and "none" is no addition.
  const plain = page.getByRole('button', { name: 'Plain: nothing stirred in, jar b' });
  await page.getByLabel('Stirred in', { exact: true }).fill('oat bran');
  await expect(plain).toHaveAttribute('aria-pressed', 'false');
  await plain.click();
  await expect(page.getByLabel('Stirred in, jar b', { exact: true })).toHaveValue('plain');
  await page.getByLabel('Stirred in, jar c', { exact: true }).fill('none');
  await expect(page.getByRole('button', { name: 'Plain: nothing stirred in, jar c' })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
});

test('two equal labels are asked about before they are recorded', async ({ page }) => {
  const first = await recordBatch(page, '2026-05-10', ['a'], { product: 'Blue Tin' });
  await recordBatch(page, '2026-05-20', ['a'], { jar: first.jars[0]! });
  await toBatches(page);
  await page.keyboard.press('r');
  const seed = page.getByRole('combobox', { name: 'Seeded from' });
  await seed.fill('10 may');
  await page.keyboard.press('Enter');
  await expect(seed).toHaveValue('10 May a');
  await page.keyboard.press('Control+Enter');
  const question = page.getByRole('dialog', { name: 'Two jars with the same label?' });
  await expect(question).toContainText('20 May a');
  await question.getByRole('button', { name: 'Change the label' }).click();
  await page.getByLabel('Letter').fill('b');
  await page.keyboard.press('Control+Enter');
  await expect(page.getByRole('region', { name: '20 May b', exact: true })).toBeVisible();
});

test('the take-out gate stands before tasting, and a spoiled jar can’t be picked as seed', async ({
  page,
}) => {
  const { batch } = await recordBatch(page, '2026-05-16', ['a', 'b'], { product: 'Blue Tin' });
  await toBatches(page);
  await page.getByRole('button', { name: /^16 May/ }).click();
  const jar = page.getByRole('region', { name: '16 May a', exact: true });
  await openOutcome(jar);
  const form = page.getByRole('form', { name: 'Outcome of 16 May a' });
  await expect(form.getByText('Answer these questions before anyone tastes it.')).toBeVisible();
  await expect(form.getByRole('group', { name: 'Tang' })).toHaveCount(0);

  const set = form.getByRole('group', { name: 'Was it set at the end of the hold?' });
  await set.getByText('No', { exact: true }).click();
  await form.getByRole('checkbox', { name: 'None of these' }).check();
  await expect(form.getByText('Discard: not food, not seed.')).toBeVisible();
  await expect(form.getByRole('group', { name: 'Tang' })).toHaveCount(0);

  await form.getByLabel('pH', { exact: true }).fill('4.2');
  await form.getByText('Strip', { exact: true }).click();
  await expect(form.getByText('A strip can’t decide')).toBeVisible();
  await expect(form.getByText('Discard: not food, not seed.')).toBeVisible();
  await form.getByText('Meter', { exact: true }).click();
  // A meter that was not checked proves nothing.
  await expect(form.getByText('Discard: not food, not seed.')).toBeVisible();
  await form
    .getByRole('group', { name: /^Meter checked/ })
    .getByText('Yes', { exact: true })
    .click();
  await expect(form.getByText('Nothing here speaks against tasting.')).toBeVisible();
  await expect(form.getByRole('group', { name: 'Tang' })).toBeVisible();

  await form.getByText('Early check, 6 to 12 hours in').click();
  await form.getByRole('group', { name: 'Set by then?' }).getByText('Loose', { exact: true }).click();
  await expect(form.getByText('acid that comes later does not undo a toxin')).toBeVisible();

  await form.getByText('A purple or brown tint').click();
  await form.getByText('Pink', { exact: true }).click();
  await expect(form.getByText('Do not taste it, and do not use it as seed.')).toBeVisible();
  await page.keyboard.press('Control+Enter');
  await expect(jar.getByText('Spoiled: not food, not seed.')).toBeVisible();

  await page.keyboard.press('r');
  const seed = page.getByRole('combobox', { name: 'Seeded from' });
  await seed.fill('16 may a');
  const condemned = page.getByRole('option', { name: /16 May a/ });
  await expect(condemned).toHaveAttribute('aria-disabled', 'true');
  await condemned.click({ force: true });
  await expect(seed).toHaveValue('16 may a');
  await seed.fill('16 may b');
  await page.keyboard.press('Enter');
  const asked = page.getByRole('dialog', { name: 'This jar is set aside' });
  await asked.getByRole('button', { name: 'Pick another' }).click();
  await expect(seed).toHaveValue('16 may b');
  expect(batch).toBeTruthy();
});

test('text that fits nothing makes no product by itself: the field says so, and adding one is a choice', async ({
  page,
}) => {
  await recordBatch(page, '2026-05-16', ['a'], { product: 'Blue Tin' });
  await toBatches(page);
  await page.keyboard.press('n');
  const seed = page.getByRole('combobox', { name: 'Seeded from' });
  const sources = (): Promise<number> =>
    page.evaluate(async () => {
      const answer = await window.jarline.call['source.list']({});
      return answer.ok ? answer.value.sources.length : -1;
    });
  const says = page.getByText('No jar or product is called “nonsuch”.');
  for (const key of ['Tab', 'Enter']) {
    await seed.fill('');
    await seed.pressSequentially('nonsuch');
    await seed.press(key);
    await expect(says).toBeVisible();
    await expect(seed).toHaveValue('nonsuch');
    expect(await sources()).toBe(1);
  }
  await expect(page.getByRole('option', { name: /Add “nonsuch”/ })).toBeVisible();
  await seed.press('ArrowDown');
  await seed.press('Enter');
  await expect(page.getByLabel('How many pieces')).toBeFocused();
  await expect(says).toHaveCount(0);
  // It comes with the batch, so that it is undone with it.
  expect(await sources()).toBe(1);
  await page.keyboard.press('Control+Enter');
  await expect(page.getByRole('heading', { name: /^20 May 2026/ })).toBeVisible();
  expect(await sources()).toBe(2);
});

test('set and above pH 4.6 is uncertain by meter and by strip, and the fibre makes it no better', async ({
  page,
}) => {
  await recordBatch(page, '2026-05-16', ['a'], { product: 'Blue Tin' });
  await toBatches(page);
  await page.getByRole('button', { name: /^16 May/ }).click();
  const jar = page.getByRole('region', { name: '16 May a', exact: true });
  await openOutcome(jar);
  await jar.getByRole('group', { name: 'Was it set' }).getByText('Yes', { exact: true }).click();
  await jar.getByRole('group', { name: 'Does it smell sour' }).getByText('Yes', { exact: true }).click();
  await jar.getByRole('checkbox', { name: 'None of these' }).check();
  // It has potato starch: sour and thick is not enough, and a checked meter is asked for.
  await expect(jar.getByText(/^What was stirred in may have thickened it/)).toBeVisible();
  await expect(jar.getByRole('group', { name: 'Tang' })).toHaveCount(0);
  await jar.getByLabel('pH', { exact: true }).fill('5.8');
  for (const how of ['Strip', 'Meter']) {
    await jar.getByText(how, { exact: true }).click();
    await expect(jar.getByText('Uncertain: not sour enough. Nobody tastes it on this.')).toBeVisible();
    await expect(
      jar.getByText(/the acid is not there yet. Do not taste on this. Hold it longer/),
    ).toBeVisible();
    await expect(jar.getByText('Nothing here speaks against tasting.')).toHaveCount(0);
  }
  await jar.getByText('A purple or brown tint').click();
  await expect(jar.getByText('Uncertain: not sour enough.')).toBeVisible();
  await expect(jar.getByRole('group', { name: 'Tang' })).toHaveCount(0);
  await page.keyboard.press('Control+Enter');
  await expect(jar.getByText(/^Sour and clean, curd holds; pH by meter/)).toBeVisible();
  await expect(page.getByLabel('pH, jar a')).toHaveValue('5.8');
});

const all = (page: Page) =>
  page.getByRole('button', { name: /All sour and clean, curd holds, nothing seen, no power cut/ });

test('four jars that turned out well are one press and a row of words, in at most 14 key presses', async ({
  page,
}) => {
  await recordBatch(page, '2026-05-16', ['a', 'b', 'c', 'd'], { product: 'Blue Tin' });
  await toBatches(page);
  await page.getByRole('button', { name: /^16 May/ }).click();
  await expect(page.getByText('Look at 4 jars, and smell: then type what you saw.')).toBeVisible();
  // Nothing is typed, still less tasted, before the gate is answered; a locked cell says so and swallows its keys.
  const locked = page.getByLabel('Set, jar a');
  await locked.click({ force: true });
  await page.keyboard.type('mnr');
  await expect(locked).toHaveValue('');
  await expect(locked).toHaveAttribute('placeholder', 'look and smell first');
  await expect(page.getByRole('heading', { name: '16 May 2026' })).toBeVisible();
  await expect(page.getByLabel('Tang, jar a')).toHaveCount(0);
  await all(page).focus();
  const keys = new Keys(page);
  await keys.press('Enter');
  await expect(page.getByLabel('Set, jar a')).toBeFocused();
  for (const [key, word] of [
    ['f', 'firm'],
    ['v', 'very firm'],
    ['p', 'spoonable'],
    ['s', 'soft'],
  ] as const) {
    await keys.type(key);
    await expect(page.locator(':focus')).toHaveValue(word);
    await keys.press('Enter');
  }
  expect(await focused(page)).toBe('pH, jar a');
  await keys.type('43');
  await expect(page.locator(':focus')).toHaveValue('4.3');
  // Potato starch thickens by itself: only a checked meter speaks for such a jar, so it is not tasted yet.
  await expect(page.getByLabel('Tang, jar a')).toHaveCount(0);
  await expect(page.getByText(/^a, b, c, d: What was stirred in may have thickened it/)).toBeVisible();
  await keys.press('Control+Enter');
  await expect(page.getByRole('region', { name: '16 May d', exact: true })).toContainText('curd holds');
  await expect(page.getByLabel('Set, jar d')).toHaveValue('soft');
  await expect(page.getByLabel('pH, jar a')).toHaveValue('4.3');
  expect(keys.count).toBeLessThanOrEqual(14);
  // One act: one undo takes all four back.
  await page.getByRole('heading', { name: '16 May 2026' }).press('Control+z');
  await expect(page.getByText('Outcome unknown so far.')).toHaveCount(4);
});

test('a jar that differs is answered in its own column, and keeps what was typed of it while the others are recorded', async ({
  page,
}) => {
  await recordBatch(page, '2026-05-16', ['a', 'b', 'c'], { product: 'Blue Tin' });
  await toBatches(page);
  await page.getByRole('button', { name: /^16 May/ }).click();
  await all(page).click();
  await page.getByLabel('Set, all jars').fill('firm');
  await page.getByLabel('Smell, jar c').fill('of yeast');
  await page.getByRole('button', { name: 'Answer only this jar: jar c' }).click();
  await expect(page.getByLabel('Smell, jar c')).toHaveValue('of yeast');
  await expect(page.getByLabel('Smell, jar c')).toHaveAttribute('aria-disabled', 'true');
  await page.getByRole('button', { name: 'Record 2 jars' }).click();
  await expect(page.getByText('Outcome unknown so far.')).toHaveCount(1);
  await expect(page.getByLabel('Smell, jar c')).toHaveValue('of yeast');

  // Its own answers, then what was seen; a sign is said as what it is.
  await page.getByLabel('Set at the end, jar c').fill('no');
  await page.getByLabel('Sour and clean, jar c').fill('no');
  await page.getByLabel('Signs seen, jar c').fill('blue');
  await page.keyboard.press('Control+Enter');
  await expect(page.getByText(/^Type “none”, or what you saw: pink/)).toBeVisible();
  await page.getByLabel('Signs seen, jar c').fill('pink, foam');
  await page.keyboard.press('Control+Enter');
  const jar = page.getByRole('region', { name: '16 May c', exact: true });
  await expect(jar.getByText('Spoiled: not food, not seed.')).toBeVisible();
  await expect(page.getByLabel('Smell, jar c')).toHaveValue('of yeast');
});

test('a correction typed in cells is one act with its reason, undone as one; one entry is typed for all', async ({
  page,
}) => {
  await recordBatch(page, '2026-05-16', ['a', 'b'], { product: 'Blue Tin' });
  await toBatches(page);
  await page.getByRole('button', { name: /^16 May/ }).click();
  await page.getByRole('button', { name: /^Correct milk, vessel/ }).click();
  await page.getByLabel('Vessel, all jars').fill('pint jar');
  await page.getByLabel('Amount, jar b').fill('3 spoonz');
  await page.keyboard.press('Control+Enter');
  await expect(page.getByText('This is not read as an amount.')).toBeVisible();
  await page.getByLabel('Amount, jar b').fill('3 tbsp');
  await page.getByLabel('Why it is corrected').fill('The tall jars were full.');
  await page.keyboard.press('Control+Enter');
  await expect(page.getByRole('region', { name: '16 May b', exact: true })).toContainText(
    '3 tbsp potato starch',
  );
  await expect(page.getByRole('region', { name: '16 May a', exact: true })).toContainText('pint jar');
  await expect(page.getByRole('button', { name: 'Save the changes' })).toHaveCount(0);
  await page.getByRole('heading', { name: '16 May 2026' }).press('Control+z');
  await expect(page.getByLabel('Vessel, jar a')).toHaveValue('quart jar');
  await expect(page.getByLabel('Amount, jar b')).toHaveValue('2 tbsp');
});
