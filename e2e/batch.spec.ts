// A recorded batch, opened: cautions beside its jars, one more jar or hold, seed from what was kept apart, photographs.
// What to do about a caution, and that a power cut is asked about: common practice, no source.
import type { Locator, Page } from '@playwright/test';
import { complaintsOfAxe } from './axe';
import { moreOf, openOutcome, recordBatch, toBatches, toHistory, underMore } from './recording';
import { expect, test } from './window';

test.use({ seed: 'empty' });

const jarOf = (page: Page, label: string): Locator => page.getByRole('region', { name: label, exact: true });
const openBatch = async (page: Page, name: RegExp): Promise<void> => {
  await toBatches(page);
  await page.getByRole('button', { name }).click();
};

test.describe('in the invented ledger', () => {
  // In one window: a day of its own costs a start.
  test.describe.configure({ mode: 'default' });
  test.use({ seed: 'demo', now: '2026-04-25T10:00:00+02:00' });

  test('a set-aside jar says so beside its outcome, with how it is touched and what to do', async ({
    page,
  }) => {
    await toBatches(page);
    await expect(page.getByRole('button', { name: /^8 Apr/ })).toContainText('2 set aside');
    await page.getByRole('button', { name: /^8 Apr/ }).click();
    const jar = jarOf(page, '8 Apr a');
    await expect(jar.getByText('Set aside', { exact: true })).toBeVisible();
    // What stands on both is said once, above them.
    const caution = page.getByRole('region', { name: 'Caution on a, b' });
    await expect(caution).toContainText('a, b: Set aside: seeded from 1 Apr c');
    await expect(caution).toContainText('Because of 1 Apr c, which spoiled.');
    await expect(caution).toContainText('Nobody eats it, and nothing is seeded from it');

    // Whatever is answered at the gate, it does not invite anyone to taste.
    await openOutcome(jar);
    await expect(jar.getByText('Set aside: nobody tastes it, whatever is answered here.')).toBeVisible();
    await expect(jar.getByText('Nothing here speaks against tasting.')).toHaveCount(0);
    await jar.getByRole('button', { name: 'Leave it as it was' }).click();

    await caution.getByRole('button', { name: 'Lift with a reason' }).click();
    await caution
      .getByLabel('Why is it all right to use?')
      .fill('Seed was taken a week before it was opened.');
    // A reason for one of them only.
    await caution.getByRole('checkbox', { name: /^8 Apr b/ }).uncheck();
    await caution.getByRole('button', { name: 'Lift it' }).click();
    await expect(jar).toContainText('Lifted: set aside: seeded from 1 Apr c.');
    await expect(jar.getByText('Set aside', { exact: true })).toHaveCount(0);
    const other = jarOf(page, '8 Apr b');
    await expect(other.getByText('Set aside', { exact: true })).toBeVisible();
    await expect(other).toContainText('Set aside: seeded from 1 Apr c');
  });

  test('a spoiled jar looks it, and a thawed cube shows as one', async ({ page }) => {
    await openBatch(page, /^1 Apr/);
    const spoiled = jarOf(page, '1 Apr c');
    await expect(spoiled.getByText('Spoiled', { exact: true })).toBeVisible();
    await expect(spoiled).toContainText('Spoiled: not food, not seed.');
    const hatch = await spoiled.evaluate((jar) => getComputedStyle(jar, '::before').backgroundImage);
    expect(hatch).toContain('repeating-linear-gradient');
    expect(await complaintsOfAxe(page)).toEqual([]);

    await openBatch(page, /^11 Mar/);
    await expect(jarOf(page, '11 Mar c')).toContainText(/3 tbsp of 26 Nov a\s· freezer cubes/);
  });

  test('a spoiled jar is not kept back, and is taken back only with a reason, told what falls away', async ({
    page,
  }) => {
    await openBatch(page, /^1 Apr/);
    const spoiled = jarOf(page, '1 Apr c');
    await expect(moreOf(spoiled)).toBeVisible();
    await expect(spoiled.getByRole('button', { name: 'Keep some back' })).toHaveCount(0);
    await expect(spoiled).not.toContainText('nothing more said');
    await underMore(spoiled, 'Entered by mistake');
    const asked = page.getByRole('dialog', { name: '1 Apr c: entered by mistake?' });
    await expect(asked).toContainText(/\d+ jars are no longer set aside: .*8 Apr a/);
    const struck = await asked
      .getByRole('heading')
      .evaluate((heading) => getComputedStyle(heading).textDecorationLine);
    expect(struck).toBe('none');
    await asked.getByRole('button', { name: 'Take it back' }).click();
    await expect(asked.getByText('Write a few words.')).toBeVisible();
    expect(await complaintsOfAxe(page)).toEqual([]);
    await asked.getByLabel('Why was it a mistake?').fill('Noted under the wrong jar.');
    await asked.getByRole('button', { name: 'Take it back' }).click();
    await expect(spoiled).toHaveCount(0);
    await toHistory(page);
    await expect(page.getByText('Why: Noted under the wrong jar.')).toBeVisible();
  });

  test('a set-aside jar says so by the seed field however it came there, and recording asks for a reason', async ({
    page,
  }) => {
    await openBatch(page, /^8 Apr/);
    const id = await page.evaluate(async () => {
      const family = await window.jarline.call['family.get']({});
      return family.ok ? family.value.jars.find(({ label }) => label === '8 Apr a')?.id : undefined;
    });
    expect(id).toBeTruthy();
    await page.getByRole('button', { name: 'Family', exact: true }).click();
    await page.getByRole('treeitem', { name: /^8 Apr a/ }).press('Enter');
    await page.getByRole('button', { name: 'Seed from this' }).click();
    await expect(page.getByRole('combobox', { name: 'Seeded from' })).toHaveValue('8 Apr a');
    await expect(page.getByText('8 Apr a is set aside because of 1 Apr c, which spoiled.')).toBeVisible();
    await page.getByLabel('How much of it').fill('3 tbsp');
    await page.keyboard.press('Control+Enter');
    const asked = page.getByRole('dialog', { name: 'Seed from it all the same?' });
    await expect(asked).toContainText('8 Apr a is set aside because of 1 Apr c');
    await asked.getByRole('button', { name: 'Record with this reason' }).click();
    await expect(asked.getByText('Write a few words.')).toBeVisible();
    await asked.getByRole('button', { name: 'Pick another seed' }).click();
    await expect(jarOf(page, '25 Apr a')).toHaveCount(0);
    await page.keyboard.press('Control+Enter');
    await asked.getByLabel('Why may it be used?').fill('Seed was taken before 1 Apr c was opened.');
    await asked.getByRole('button', { name: 'Record with this reason' }).click();
    await expect(jarOf(page, '25 Apr a')).toContainText('3 tbsp of 8 Apr a');
    await toHistory(page);
    await expect(page.getByText('Why: Seed was taken before 1 Apr c was opened.')).toBeVisible();
  });

  test('cubes are offered while some are left, counted, and remembered with their part', async ({ page }) => {
    await toBatches(page);
    await page.keyboard.press('n');
    await page.getByLabel('Made on').fill('25 Apr');
    const seed = page.getByRole('combobox', { name: 'Seeded from' });
    await seed.fill('26 nov');
    await page.getByRole('option', { name: /26 Nov a\s· freezer cubes 5 left/ }).click();
    await page.getByLabel('How many cubes').fill('2');
    await expect(page.getByText('= 2 pieces')).toBeVisible();
    await page.getByLabel('Part of it').selectOption('Curd');
    await page.keyboard.press('Control+Enter');
    await expect(jarOf(page, '25 Apr a')).toContainText(/2 of 26 Nov a\s· freezer cubes, curd/);

    await page.keyboard.press('n');
    await seed.fill('26 nov');
    await expect(page.getByRole('option', { name: /26 Nov a\s· freezer cubes 3 left/ })).toBeVisible();
  });
});

test('one more jar and another hold are added to a recorded batch', async ({ page, program }) => {
  await recordBatch(page, '2026-05-10', ['a', 'b'], { product: 'Blue Tin' });
  await openBatch(page, /^10 May/);
  await page.getByRole('button', { name: 'Add a jar' }).click();
  const form = page.getByRole('form', { name: 'One more jar of 10 May 2026' });
  await expect(form.getByLabel('Letter')).toHaveValue('c');
  await expect(form.getByRole('combobox', { name: 'Seeded from' })).toHaveValue('Blue Tin');
  await form.getByLabel('Letter').fill('B');
  await page.keyboard.press('Control+Enter');
  await expect(form.getByText('Another jar of this batch is “b” already.')).toBeVisible();
  await form.getByLabel('Letter').fill('odd');
  await form.getByLabel('Vessel', { exact: true }).fill('short jar');
  await new Promise((done) => {
    setTimeout(done, 600);
  });
  await program.kill();

  await program.open();
  const again = program.page;
  await toBatches(again);
  await again.getByRole('button', { name: /^Go on with the one more jar/ }).click();
  await expect(again.getByLabel('Letter')).toHaveValue('odd');
  await again.getByLabel('Letter').press('Control+Enter');
  await expect(jarOf(again, '10 May odd')).toContainText('short jar');
  await expect(jarOf(again, '10 May odd')).toContainText('10 of Blue Tin');

  await again.getByRole('button', { name: 'Add another hold' }).click();
  await again.getByLabel('Held for').fill('30');
  await again.getByRole('checkbox', { name: '10 May odd' }).check();
  await again.keyboard.press('Control+Enter');
  await expect(again.getByText('Hold 2.')).toBeVisible();
  // Nothing unfinished is left behind by either.
  expect(await again.evaluate(() => window.jarline.call['draft.list']({}))).toEqual({
    ok: true,
    value: { drafts: [] },
  });
  await toHistory(again);
  await expect(again.getByText('Added a time in warmth of 10 May a, b, odd', { exact: true })).toBeVisible();
  await expect(again.getByText(/^Added 10 May odd from /)).toBeVisible();
});

test('a power cut is asked about, also in the other jars of the hold', async ({ page }) => {
  await recordBatch(page, '2026-05-16', ['a', 'b'], { product: 'Blue Tin' });
  await openBatch(page, /^16 May/);
  const jar = jarOf(page, '16 May a');
  await openOutcome(jar);
  await jar.getByRole('group', { name: 'Was it set' }).getByText('Yes', { exact: true }).click();
  await jar.getByRole('group', { name: 'Does it smell sour' }).getByText('Yes', { exact: true }).click();
  await jar.getByRole('checkbox', { name: 'None of these' }).check();
  await jar.getByRole('group', { name: 'Bubbles' }).getByText('None', { exact: true }).click();
  // It has potato starch: its being thick says nothing, and the meter is asked for.
  await expect(jar.getByText(/^What was stirred in may have thickened it/)).toBeVisible();
  await jar.getByRole('group', { name: 'Did the power fail' }).getByText('Yes', { exact: true }).click();
  await jar.getByLabel('For how many hours').fill('3');
  await expect(jar.getByText('The power failed during the hold, for 3 hours.')).toBeVisible();
  await expect(jar.getByText('Uncertain. Ask before anyone tastes it.')).toBeVisible();
  await jar.getByRole('group', { name: 'Bubbles' }).getByText('Foam: discard').click();
  await expect(jar.getByText('Discard this jar: not food, not seed.')).toBeVisible();
  await expect(jar.getByRole('checkbox', { name: 'None of these' })).not.toBeChecked();
  await jar.getByRole('group', { name: 'Bubbles' }).getByText('Fine bubbles').click();
  await page.keyboard.press('Control+Enter');
  await expect(moreOf(jar)).toBeVisible();
  await expect(jarOf(page, '16 May b')).toContainText('16 May a, from the same hold, tells of it.');
});

/** A small red picture, drawn in the page and handed over as a keeper would: dropped or pasted. */
const handOver = (section: Locator, how: 'drop' | 'paste'): Promise<void> =>
  section.evaluate(async (element, kind) => {
    const canvas = new OffscreenCanvas(60, 40);
    const pen = canvas.getContext('2d');
    if (!pen) throw new Error('no pen');
    pen.fillStyle = '#cc2200';
    pen.fillRect(0, 0, 60, 40);
    const list = new DataTransfer();
    list.items.add(
      new File([await canvas.convertToBlob({ type: 'image/png' })], 'top.png', { type: 'image/png' }),
    );
    element.dispatchEvent(
      kind === 'drop'
        ? new DragEvent('drop', { dataTransfer: list, bubbles: true, cancelable: true })
        : new ClipboardEvent('paste', { clipboardData: list, bubbles: true, cancelable: true }),
    );
  }, how);

test('photographs are dropped and pasted, captioned, taken away, and brought back by undo', async ({
  page,
}) => {
  await recordBatch(page, '2026-05-10', ['a'], { product: 'Blue Tin' });
  await openBatch(page, /^10 May/);
  const section = page.getByRole('region', { name: 'Photographs of 10 May a' });
  await handOver(section, 'drop');
  await expect(page.getByRole('img', { name: '10 May a, photograph 1' })).toBeVisible();
  await handOver(section, 'paste');
  const second = page.getByRole('img', { name: '10 May a, photograph 2' });
  await expect(second).toBeVisible();

  await section.getByRole('button', { name: 'Caption of 10 May a, photograph 1' }).click();
  await section.getByLabel('What it shows').fill('The top, level and white');
  await page.keyboard.press('Control+Enter');
  const captioned = page.getByRole('img', { name: 'The top, level and white' });
  await expect(captioned).toBeVisible();
  await expect(section.getByRole('figure').first()).toContainText('The top, level and white');

  // It opens as large as the window allows, and Escape closes it.
  await section.getByRole('button', { name: 'Open The top, level and white' }).click();
  const large = page.getByRole('dialog', { name: 'The top, level and white' });
  await expect(large.getByRole('img')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(large).toHaveCount(0);

  await section.getByRole('button', { name: 'Remove 10 May a, photograph 1' }).click();
  await expect(captioned).toHaveCount(0);
  await expect(page.getByRole('img')).toHaveCount(1);
  await page.getByRole('heading', { name: '10 May a', exact: true }).press('Control+z');
  await expect(captioned).toBeVisible();
  // What is dropped and is no picture is refused with a sentence.
  await section.evaluate((element) => {
    const list = new DataTransfer();
    list.items.add(new File(['rows'], 'notes.csv', { type: 'text/csv' }));
    element.dispatchEvent(new DragEvent('drop', { dataTransfer: list, bubbles: true, cancelable: true }));
  });
  await expect(page.getByRole('alert')).toContainText('Only pictures can be added here.');
});

test('an empty ledger says where to begin; what was said goes by itself and lies over nothing', async ({
  page,
}) => {
  await toBatches(page);
  await expect(page.getByText('No batch is recorded yet.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Repeat the last' })).toHaveCount(0);
  await recordBatch(page, '2026-05-16', ['a'], { product: 'Blue Tin' });
  await expect(page.getByRole('button', { name: 'Repeat the last' })).toBeVisible();
  await page.getByRole('button', { name: /^16 May/ }).click();
  await openOutcome(jarOf(page, '16 May a'));
  const tick = (): Promise<string> =>
    page
      .getByRole('checkbox', { name: 'Pink' })
      .evaluate((box) => getComputedStyle(box, '::before').visibility);
  expect(await tick()).toBe('hidden');
  await page.getByRole('checkbox', { name: 'Pink' }).check();
  expect(await tick(), 'a tick that shows without colour').toBe('visible');
  await page.keyboard.press('Control+Enter');
  const said = page.locator('.message', { hasText: 'Recorded the outcome of 16 May a.' });
  await expect(said).toBeVisible();
  const covered = await page.evaluate(() => {
    const slip = document.querySelector('.message')?.getBoundingClientRect();
    const screen = document.querySelector('main')?.getBoundingClientRect();
    return slip && screen ? slip.top < screen.bottom : null;
  });
  expect(covered, 'it lies below the screen').toBe(false);
  await expect(page.getByRole('button', { name: /^16 May/ })).toContainText('one jar · 1 spoiled');
  await expect(said).toHaveCount(0, { timeout: 12_000 });
  // What is said in the family lies left too, above the tools: none of them is covered.
  await page.keyboard.press('Alt+1');
  await page.keyboard.press('Control+z');
  const slip = page.locator('.message:not(.empty)').first();
  await expect(slip).toBeVisible();
  const [there, tools] = [await slip.boundingBox(), await page.locator('.family-tools').boundingBox()];
  expect(there?.x).toBeLessThan(40);
  expect((there?.y ?? 0) + (there?.height ?? 0)).toBeLessThanOrEqual(tools?.y ?? 0);
});
