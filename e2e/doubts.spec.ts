// What must not slip by: a spoiled jar under its own name, a lift that is older than what is known, spoilage in words,
// days that can't be. What such words mean: common practice, no source.
import type { Locator, Page } from '@playwright/test';
import { complaintsOfAxe } from './axe';
import { moreOf, openOutcome, recordBatch, toBatches, underMore } from './recording';
import { expect, test } from './window';

test.use({ seed: 'empty' });

const jarOf = (page: Page, label: string): Locator => page.getByRole('region', { name: label, exact: true });
const openBatch = async (page: Page, name: RegExp): Promise<void> => {
  await toBatches(page);
  await page.getByRole('button', { name }).click();
};
const sourceNames = (page: Page): Promise<readonly string[]> =>
  page.evaluate(async () => {
    const listed = await window.jarline.call['source.list']({});
    if (!listed.ok) throw new Error(JSON.stringify(listed.error));
    return listed.value.sources.map(({ name }) => name);
  });

test.describe('in the invented ledger', () => {
  test.use({ seed: 'demo' });

  test('a spoiled jar typed by its name is said to be spoiled, and nothing new goes by that name', async ({
    page,
  }) => {
    const before = await sourceNames(page);
    await toBatches(page);
    await page.keyboard.press('n');
    const seed = page.getByLabel('Seeded from');
    await seed.fill('1 apr C');
    const option = page.getByRole('option', { name: /^1 Apr c/ }).first();
    await expect(option).toContainText('Spoiled: not food, not seed. It can’t be picked.');
    await expect(page.getByRole('option', { name: /as a new product/ })).toHaveCount(0);
    await expect(page.getByRole('option', { name: /A jar nobody can name/ })).toHaveCount(0);
    // Enter takes no other jar for it, and the row itself says why.
    await seed.press('Enter');
    await seed.press('ArrowDown');
    await seed.press('Enter');
    await expect(page.locator('.message', { hasText: '1 Apr c: Spoiled: not food' }).first()).toBeVisible();
    await expect(seed).toHaveValue('1 apr C');
    await seed.press('Tab');
    await expect(page.locator('.field-problem', { hasText: '1 Apr c: Spoiled' })).toBeVisible();
    await page.screenshot({ path: test.info().outputPath('spoiled-seed.png') });
    expect(await sourceNames(page)).toEqual(before);
  });

  test('a good jar typed by its name is picked, and a product is added only with the batch', async ({
    page,
  }) => {
    const before = await sourceNames(page);
    await toBatches(page);
    await page.keyboard.press('n');
    const seed = page.getByLabel('Seeded from');
    await seed.fill('15 Apr a');
    await expect(page.getByRole('option', { name: /^15 Apr a/ }).first()).toBeVisible();
    await expect(page.getByRole('option', { name: /as a new product/ })).toHaveCount(0);
    await seed.fill('Green Box');
    await page.getByRole('option', { name: /Add “Green Box” as a new product/ }).click();
    await expect(seed).toHaveValue('Green Box');
    expect(await sourceNames(page)).toEqual(before);
    await page.keyboard.press('Control+Enter');
    await expect(page.getByRole('heading', { name: /^20 May 2026/ })).toBeVisible();
    expect(await sourceNames(page)).toContain('Green Box');
    await page.keyboard.press('Control+z');
    await expect.poll(() => sourceNames(page)).toEqual(before);
  });

  test('a lift made for less than is known now no longer counts, and its words are said', async ({
    page,
  }) => {
    await openBatch(page, /^8 Apr/);
    const held = jarOf(page, '8 Apr a');
    const caution = page.getByRole('region', { name: 'Caution on a, b' });
    await caution.getByRole('button', { name: 'Lift with a reason' }).click();
    await caution.getByLabel('Why is it all right to use?').fill('Seed was taken before it was opened.');
    // What is said of several jars is lifted on several.
    await expect(caution.getByRole('checkbox', { name: /^8 Apr b/ })).toBeChecked();
    await caution.getByRole('button', { name: 'Lift it' }).click();
    await expect(held).toContainText('Lifted: set aside: seeded from 1 Apr c.');
    await expect(jarOf(page, '8 Apr b')).toContainText('Lifted: set aside: seeded from 1 Apr c.');

    await openBatch(page, /^1 Apr/);
    const spoiled = jarOf(page, '1 Apr c');
    await openOutcome(spoiled);
    await spoiled.getByRole('checkbox', { name: 'Black' }).check();
    await page.keyboard.press('Control+Enter');
    await expect(moreOf(spoiled)).toBeVisible();

    await openBatch(page, /^8 Apr/);
    await expect(caution).toContainText('a, b: Set aside: seeded from 1 Apr c');
    await expect(caution).toContainText(
      'It was lifted before. More is known of 1 Apr c since then, so that no longer counts. The words were: “Seed was taken before it was opened.”',
    );
    await caution.screenshot({ path: test.info().outputPath('lifted-before.png') });
    expect(await complaintsOfAxe(page)).toEqual([]);
    await page.keyboard.press('Control+z');
    await expect(held).toContainText('Lifted: set aside: seeded from 1 Apr c.');
  });
});

test('words that tell of spoilage are asked about once, and the answer is kept', async ({ page }) => {
  await recordBatch(page, '2026-05-16', ['a', 'b'], { product: 'Blue Tin' });
  await openBatch(page, /^16 May/);
  const jar = jarOf(page, '16 May a');
  await openOutcome(jar);
  await jar.getByLabel('Colour').fill('pink streaks');
  await jar.getByRole('textbox', { name: 'Smell' }).fill('clean');
  await page.keyboard.press('Control+Enter');
  const question = page.getByRole('dialog', { name: 'Is it spoiled?' });
  await expect(question).toContainText('You wrote “pink streaks”.');
  await page.screenshot({ path: test.info().outputPath('spoilage-question.png') });
  expect(await complaintsOfAxe(page)).toEqual([]);
  // Going back loses nothing.
  await page.keyboard.press('Escape');
  await expect(question).toHaveCount(0);
  await expect(jar.getByLabel('Colour')).toHaveValue('pink streaks');
  await page.keyboard.press('Control+Enter');
  await question.getByRole('button', { name: 'No, it is something else' }).click();
  await expect(question.getByRole('alert')).toContainText('Say in a few words what it is.');
  await question.getByLabel('If not, what is it?').fill('raspberry syrup');
  await question.getByRole('button', { name: 'No, it is something else' }).click();
  await expect(page.getByLabel('Remark, jar a')).toHaveValue('raspberry syrup');
  // The answer is kept as one: nothing stops the jar.
  await expect(jar).not.toContainText('neither food nor seed');
  // Asked once: recording it again asks nothing.
  await openOutcome(jar);
  await jar.getByRole('textbox', { name: 'Smell' }).fill('milky');
  await page.keyboard.press('Control+Enter');
  await expect(moreOf(jar)).toBeVisible();

  const other = jarOf(page, '16 May b');
  await openOutcome(other);
  await other.getByLabel('Note on the outcome').fill('no foam, but black mould on top');
  await page.keyboard.press('Control+Enter');
  await expect(question).toContainText('You wrote “black mould on top”.');
  await question.getByRole('button', { name: 'Yes, it is spoiled' }).click();
  await expect(other).toContainText('Spoiled: not food, not seed.');
  await expect(other).toContainText('Seen: black, fuzz.');
  await expect(jar).toContainText('Set aside');
});

test('a day that can’t be is refused in the form, with everything typed still there', async ({ page }) => {
  await recordBatch(page, '2026-05-16', ['a'], { product: 'Blue Tin' });
  await openBatch(page, /^16 May/);
  const jar = jarOf(page, '16 May a');
  await underMore(jar, /^Keep some back/);
  await jar.getByLabel('How much').fill('120 ml');
  await jar.getByLabel('Kept since').fill('10 May 2026');
  await page.keyboard.press('Control+Enter');
  await expect(jar.getByRole('alert')).toContainText('so nothing of it was kept on 10 May 2026');
  await expect(jar.getByLabel('How much')).toHaveValue('120 ml');
  await jar.getByLabel('Kept since').fill('17 May 2026');
  await page.keyboard.press('Control+Enter');
  await expect(jar).toContainText('kept since');
});

test('not set at take-out and firm after the chill is said to contradict', async ({ page }) => {
  await recordBatch(page, '2026-05-16', ['a'], { product: 'Blue Tin' });
  await openBatch(page, /^16 May/);
  const jar = jarOf(page, '16 May a');
  await openOutcome(jar);
  await jar.getByRole('button', { name: 'I am writing this down later' }).click();
  await jar.getByRole('group', { name: 'Set', exact: true }).getByText('Firm', { exact: true }).click();
  await jar.getByRole('group', { name: 'Was it set' }).getByText('No', { exact: true }).click();
  await expect(jar.getByText('it was not set at the end of the hold, and that it is firm')).toBeVisible();
  await page.keyboard.press('Control+Enter');
  await expect(jar).toContainText(
    'Not set, and no pH at or below 4.6 shown by a meter that was checked that day. Discard',
  );
});
