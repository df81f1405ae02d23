// Trials in the window: a batch made a trial, tasted by keyboard, one taster at a time, killed on the way, revealed at the end.
import type { Page } from '@playwright/test';
import { complaintsByDayAndNight } from './axe';
import { recordBatch, toBatches, toScreen } from './recording';
import { expect, test } from './window';

test.use({ seed: 'empty' });

/** Four jars of one seed with what was stirred in, out of warmth, looked at: all sour and clean. */
async function lookedAt(page: Page): Promise<void> {
  const { jars } = await recordBatch(page, '2026-05-10', ['a', 'b', 'c', 'd'], { product: 'Blue Tin' }, {}, [null, null, 'acacia fibre', 'chicory inulin']);
  await page.evaluate(async (ids) => {
    const facts = ids.map((one) => ({ kind: 'observation' as const, jar: one, stage: 'take-out' as const, looked: true, sour: true, setState: 'set' as const, setWord: 'firm' as const }));
    const seen = await window.jarline.call['facts.record']({ facts });
    if (!seen.ok) throw new Error(JSON.stringify(seen.error));
  }, jars);
} // prettier-ignore

test('a batch is tasted by keyboard, goes on where it was after a kill, and is told in one sentence', async ({
  program,
}) => {
  let { page } = program;
  await lookedAt(page);
  await toBatches(page);
  await page.getByRole('button', { name: 'Taste these' }).click();
  await expect(page.getByRole('heading', { name: 'They differ in what was stirred in.' })).toBeVisible();
  await page.getByRole('button', { name: 'Make it a trial' }).click();
  await expect(page.getByRole('heading', { name: 'Not tasted yet.' })).toBeVisible();
  await page.getByRole('button', { name: 'Plan a tasting' }).click();

  // What can't tell is said before anyone tastes.
  const form = page.getByRole('form', { name: 'Tasting of 10 May' });
  await form.getByLabel('10 May b, plain').uncheck();
  await form.getByLabel('10 May d, chicory inulin').uncheck();
  await form.getByLabel('A taster', { exact: true }).fill('taster A');
  await form.getByLabel('One more taster').first().fill('taster B');
  await expect(form.getByText('Two tasters and two jars can never tell: it takes six tasters.')).toBeVisible();
  await expect(form.getByText(/49 for 70, 20 for 80, 12 for 90/)).toBeVisible();
  await form.getByLabel('10 May d, chicory inulin').check();
  await expect(form.getByText(/^Two tasters and three jars can never tell/)).toBeVisible();
  expect(await complaintsByDayAndNight(page)).toEqual([]);
  await form.getByRole('button', { name: 'Draw the codes' }).click();

  // Each jar goes into a bowl for each taster, under codes of three digits.
  await expect(page.getByRole('heading', { name: 'Pour the bowls' })).toBeVisible();
  await expect(page.getByText(/^taster [AB], bowl [123]$/)).toHaveCount(6);
  await page.keyboard.press('Enter');

  const turn = page.getByRole('heading', { name: /^taster [AB]$/ });
  const first = (await turn.textContent()) ?? '';
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Bowl 1 of 3' })).toBeVisible();
  await page.getByLabel('Creamy').check();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Bowl 2 of 3' })).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'Bowl 3 of 3' })).toBeVisible();
  await page.keyboard.press('Enter');
  const placed = page.getByRole('list', { name: 'From liked most to liked least' });
  await page.keyboard.press('Enter');
  await expect(placed.getByRole('button', { name: /^\d{3}, placed/ })).toHaveCount(1);
  const best = (await placed.getByRole('button').first().textContent()) ?? '';
  // What is being marked is kept within half a second.
  const keptOrder = (): Promise<string[]> =>
    page.evaluate(async () => {
      const drafts = await window.jarline.call['draft.list']({});
      return drafts.ok ? drafts.value.drafts.map(({ json }) => JSON.stringify((JSON.parse(json) as { text: { order: unknown } }).text.order)) : [];
    }); // prettier-ignore
  await expect.poll(keptOrder).toEqual([`[[${best.slice(0, 3)}]]`]);
  await program.kill();
  await program.open();
  ({ page } = program);
  await toScreen(page, 'Alt+0', 'Trials');
  await page.getByRole('button', { name: /Being tasted: none of two has marked/ }).click();
  await page.getByRole('button', { name: /^Go on tasting/ }).click();
  const again = page.getByRole('list', { name: 'From liked most to liked least' });
  await expect(again.getByRole('button', { name: `${best.slice(0, 3)}, placed` })).toBeVisible();
  const left = page.getByRole('group', { name: 'Bowls without a place' });
  await left.getByRole('button').first().press('Enter');
  await expect(left.getByRole('button')).toHaveCount(1);
  await page.keyboard.press('Enter');
  // The last two are as good as each other.
  await again.getByRole('button', { name: /^as good as/ }).last().click();
  expect(await complaintsByDayAndNight(page)).toEqual([]);
  await page.getByRole('button', { name: 'Done' }).press('Enter');

  await expect(page.getByRole('heading', { name: first === 'taster A' ? 'taster B' : 'taster A' })).toBeVisible();
  await page.keyboard.press('Enter');
  for (const at of [1, 2, 3]) {
    await expect(page.getByRole('heading', { name: `Bowl ${at} of 3` })).toBeVisible();
    await page.keyboard.press('Enter');
  }
  for (const to of [2, 1, 0]) {
    await page.keyboard.press('Enter');
    await expect(left.getByRole('button')).toHaveCount(to);
  }
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { name: 'All have tasted' })).toBeVisible();
  await page.keyboard.press('Enter');

  await expect(page.getByRole('heading', { level: 1 })).toHaveText('This tasting does not tell which is better: chance alone does as much.');
  await expect(page.getByText('Two tasters and three jars can never tell', { exact: false })).toBeVisible();
  const which = page.getByRole('region', { name: 'Which jar was which' });
  await expect(which.getByRole('listitem')).toHaveCount(3);
  await expect(which).toContainText('creamy once');
  await page.getByText('How this was worked out').click();
  await expect(page.getByText('Friedman’s Q')).toBeVisible();
  expect(await complaintsByDayAndNight(page)).toEqual([]);
  // Each step is an act: what was revealed is hidden again, and it can be marked anew.
  await page.locator('body').press('Control+z');
  await expect(page.getByRole('heading', { name: 'All have tasted' })).toBeVisible();
}); // prettier-ignore
