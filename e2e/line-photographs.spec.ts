// Photographs side by side along a line: one a generation, at one size.
import type { Page } from '@playwright/test';
import { complaintsOfAxe } from './axe';
import { recordBatch } from './recording';
import { expect, test } from './window';

test.use({ seed: 'empty' });

async function photograph(page: Page, jar: string, colour: string): Promise<void> {
  const answer = await page.evaluate(
    async ([id, fill]) => {
      const canvas = new OffscreenCanvas(60, 40);
      const pen = canvas.getContext('2d');
      if (!pen) throw new Error('no pen');
      pen.fillStyle = fill;
      pen.fillRect(0, 0, 60, 40);
      const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.95 });
      const bytes = new Uint8Array(await blob.arrayBuffer());
      return window.jarline.call['photograph.add']({ jar: id, bytes, caption: null });
    },
    [jar, colour] as const,
  );
  expect(answer.ok).toBe(true);
}

test('one a generation, of a jar made beside it where the jar on the way has none', async ({ page }) => {
  const first = await recordBatch(page, '2026-05-02', ['a'], { product: 'Blue Tin' });
  const second = await recordBatch(page, '2026-05-09', ['a', 'b'], { jar: first.jars[0] ?? '' });
  const third = await recordBatch(page, '2026-05-16', ['a'], { jar: second.jars[0] ?? '' });
  await photograph(page, first.jars[0] ?? '', '#eeddaa');
  await photograph(page, second.jars[1] ?? '', '#ddcc99');
  await photograph(page, third.jars[0] ?? '', '#ccbb88');
  await page.getByRole('treeitem', { name: /^16 May a/ }).click();
  await page.getByRole('button', { name: '3 photographs along its line, side by side' }).click();
  const dialog = page.getByRole('dialog', { name: 'Generation by generation' });
  await expect(dialog.getByRole('listitem')).toHaveText([
    /2 May a\s*1/,
    /9 May b\s*2, made beside it/,
    /16 May a\s*3/,
  ]);
  const sizes = await dialog
    .getByRole('img')
    .evaluateAll((all) => all.map((one) => `${one.clientWidth} × ${one.clientHeight}`));
  expect(new Set(sizes).size).toBe(1);
  expect(await complaintsOfAxe(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
});
