// A photograph as a telephone makes it, with the place it was taken in it: what is stored holds the picture alone.
// Segments and tags by JEITA CP-3451 (Exif 2.3) and ITU-T T.81, from memory.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { recordBatch, toBatches } from './recording';
import { expect, test } from './window';

test.use({ seed: 'empty' });

/** A picture of 60 × 40, drawn in the page: its left half red, its right half blue. */
async function drawn(page: Page): Promise<Buffer> {
  const bytes = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(60, 40);
    const pen = canvas.getContext('2d');
    if (!pen) throw new Error('no pen');
    pen.fillStyle = '#ff0000';
    pen.fillRect(0, 0, 30, 40);
    pen.fillStyle = '#0000ff';
    pen.fillRect(30, 0, 30, 40);
    const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.95 });
    return [...new Uint8Array(await blob.arrayBuffer())];
  });
  return Buffer.from(bytes);
}

const MAKER = 'Invented Camera 7';

/** An Exif segment: orientation 6 (turned a quarter to the right), a maker, 52° 31' 12" N, 13° 24' 36" E. */
function exif(): Buffer {
  const tiff = Buffer.alloc(400);
  let free = 160;
  const rest = (bytes: Buffer): number => {
    const at = free;
    bytes.copy(tiff, at);
    free += bytes.length + (bytes.length % 2);
    return at;
  };
  const entry = (at: number, tag: number, type: number, count: number, value: number): void => {
    tiff.writeUInt16BE(tag, at);
    tiff.writeUInt16BE(type, at + 2);
    tiff.writeUInt32BE(count, at + 4);
    if (type === 3) tiff.writeUInt16BE(value, at + 8);
    else tiff.writeUInt32BE(value, at + 8);
  };
  const degrees = (...values: number[]): number => {
    const bytes = Buffer.alloc(24);
    values.forEach((value, i) => {
      bytes.writeUInt32BE(value, i * 8);
      bytes.writeUInt32BE(1, i * 8 + 4);
    });
    return rest(bytes);
  };
  tiff.write('MM\0*', 0, 'latin1');
  tiff.writeUInt32BE(8, 4);
  tiff.writeUInt16BE(3, 8);
  entry(10, 0x010f, 2, MAKER.length + 1, rest(Buffer.from(`${MAKER}\0`)));
  entry(22, 0x0112, 3, 1, 6);
  entry(34, 0x8825, 4, 1, 60); // the GPS directory
  tiff.writeUInt16BE(4, 60);
  entry(62, 1, 2, 2, 0x4e000000); // N
  entry(74, 2, 5, 3, degrees(52, 31, 12));
  entry(86, 3, 2, 2, 0x45000000); // E
  entry(98, 4, 5, 3, degrees(13, 24, 36));
  const content = Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff.subarray(0, free)]);
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(content.length + 2, 2);
  return Buffer.concat([head, content]);
}

test('the place it was taken is gone from what is stored, and the picture stands upright', async ({
  page,
  program,
}) => {
  const { jars } = await recordBatch(page, '2026-05-10', ['a'], { product: 'Blue Tin' });
  const plain = await drawn(page);
  const taken = Buffer.concat([plain.subarray(0, 2), exif(), plain.subarray(2)]);
  expect(taken.includes(MAKER) && taken.includes('Exif')).toBe(true);

  // As it comes it is refused: only what was drawn anew in the page gets in.
  const asItCame = await page.evaluate(
    ([jar, bytes]) =>
      window.jarline.call['photograph.add']({ jar, bytes: new Uint8Array(bytes), caption: null }),
    [jars[0]!, [...taken]] as const,
  );
  expect(asItCame).toMatchObject({ ok: false, error: { code: 'no re-encoder' } });

  await toBatches(page);
  await page.getByRole('button', { name: /^10 May/ }).click();
  const add = page.getByLabel('Add a photograph of 10 May a');
  await add.setInputFiles({ name: 'IMG_0001.JPG', mimeType: 'image/jpeg', buffer: taken });
  const shown = page.getByRole('img', { name: '10 May a, photograph 1' });
  await expect(shown).toBeVisible();

  const folder = join(program.ledgerFolder, 'jarline-photographs');
  const [name = '', ...others] = readdirSync(folder);
  expect(others).toEqual([]);
  const stored = readFileSync(join(folder, name));
  expect(name).toBe(`${createHash('sha256').update(stored).digest('hex')}.jpg`);
  for (const trace of ['Exif', 'MM\0*', MAKER, 'GPS', 'http://ns.adobe.com']) {
    expect(stored.includes(Buffer.from(trace, 'latin1')), trace).toBe(false);
  }
  // Not even to be written to: what a hash names never changes.
  expect(statSync(join(folder, name)).mode & 0o222).toBe(0);

  // Turned as the camera meant it: 40 wide, 60 high, red above blue.
  const seen = await shown.evaluate(async (image: HTMLImageElement) => {
    await image.decode();
    const canvas = new OffscreenCanvas(image.naturalWidth, image.naturalHeight);
    const pen = canvas.getContext('2d');
    pen?.drawImage(image, 0, 0);
    const at = (x: number, y: number): number[] => [...(pen?.getImageData(x, y, 1, 1).data ?? [])];
    return { width: image.naturalWidth, height: image.naturalHeight, top: at(20, 10), bottom: at(20, 50) };
  });
  expect([seen.width, seen.height]).toEqual([40, 60]);
  const [top, bottom] = [seen.top, seen.bottom] as const;
  expect(top[0]! > 200 && top[2]! < 60, `above: ${top.join()}`).toBe(true);
  expect(bottom[2]! > 200 && bottom[0]! < 60, `below: ${bottom.join()}`).toBe(true);

  // The same picture again is one file, kept twice as a record.
  await add.setInputFiles({ name: 'again.jpg', mimeType: 'image/jpeg', buffer: taken });
  await expect(page.getByRole('img', { name: '10 May a, photograph 2' })).toBeVisible();
  expect(readdirSync(folder)).toEqual([name]);
});

test('a picture is dropped or pasted on its jar', async ({ page }) => {
  await recordBatch(page, '2026-05-10', ['a', 'b'], { product: 'Blue Tin' });
  const bytes = [...(await drawn(page))];
  await toBatches(page);
  await page.getByRole('button', { name: /^10 May/ }).click();
  const place = page.getByRole('region', { name: 'Photographs of 10 May b' });
  /** The event that a hand makes, with the picture in it. */
  const bring = (type: 'drop' | 'paste', on: Locator, name = 'jar.jpg', kind = 'image/jpeg'): Promise<void> =>
    on.evaluate((element, [what, file, mime, picture]) => {
      const data = new DataTransfer();
      data.items.add(new File([new Uint8Array(picture)], file, { type: mime }));
      const event = what === 'drop' ? new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }) : new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true });
      element.dispatchEvent(event);
    }, [type, name, kind, bytes] as const);
  await bring('drop', place);
  await expect(page.getByRole('img', { name: '10 May b, photograph 1' })).toBeVisible();
  await bring('paste', place);
  await expect(page.getByRole('img', { name: '10 May b, photograph 2' })).toBeVisible();
  // With the keyboard on nothing it goes to the jar under the pointer.
  await place.hover();
  await bring('paste', page.locator('body'));
  await expect(page.getByRole('img', { name: '10 May b, photograph 3' })).toBeVisible();
  await expect(page.getByRole('img', { name: /^10 May a/ })).toHaveCount(0);
  await bring('drop', place, 'list.txt', 'text/plain');
  await expect(place.getByRole('alert')).toHaveText('Only pictures can be added here.');
}); // prettier-ignore

test.describe('with a camera', () => {
  test('a photograph is taken after a yes that is good for once, and nothing happens after a no', async ({ app, page, program }) => {
    program.forgive(/permission|Permission/);
    await recordBatch(page, '2026-05-10', ['a'], { product: 'Blue Tin' });
    await toBatches(page);
    await page.getByRole('button', { name: /^10 May/ }).click();
    /** What the system's dialog is answered with, and how often it was shown. */
    const answer = (button: number): Promise<void> =>
      app.evaluate(({ dialog }, response) => {
        const asked = globalThis as { askedCamera?: number };
        dialog.showMessageBox = () => {
          asked.askedCamera = (asked.askedCamera ?? 0) + 1;
          return Promise.resolve({ response, checkboxChecked: false });
        };
      }, button);
    const asked = (): Promise<number> => app.evaluate(() => (globalThis as { askedCamera?: number }).askedCamera ?? 0);
    const take = page.getByRole('button', { name: 'Take one of 10 May a with the camera' });
    const view = page.getByRole('dialog', { name: 'Camera: 10 May a' });
    await answer(1);
    await take.click();
    await expect.poll(asked).toBe(1);
    await expect(view).toBeHidden();
    await answer(0);
    await take.click();
    await view.getByRole('button', { name: 'Take the photograph' }).click();
    await expect(page.getByRole('img', { name: '10 May a, photograph 1' })).toBeVisible();
    await expect(view).toBeHidden();
    expect(await asked()).toBe(2);
    // The yes is used up: nothing in the page gets the camera by itself.
    const again = await page.evaluate(() => navigator.mediaDevices.getUserMedia({ video: true }).then(() => 'granted', () => 'refused'));
    expect(again).toBe('refused');
    // Left without a photograph it goes off too.
    await take.click();
    await expect(view).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(view).toBeHidden();
    await expect(page.getByRole('img')).toHaveCount(1);
  });
}); // prettier-ignore

test('what is no picture, and what is too large, is refused with a sentence', async ({ page, program }) => {
  const { jars } = await recordBatch(page, '2026-05-10', ['a'], { product: 'Blue Tin' });
  await toBatches(page);
  await page.getByRole('button', { name: /^10 May/ }).click();
  const add = page.getByLabel('Add a photograph of 10 May a');
  await add.setInputFiles({ name: 'list.txt', mimeType: 'image/png', buffer: Buffer.from('no picture') });
  await expect(page.getByRole('alert')).toContainText('can’t be read as a picture');
  const big = join(program.dataFolder, 'big.jpg');
  writeFileSync(big, '');
  truncateSync(big, 20 * 1024 * 1024 + 1);
  await add.setInputFiles(big);
  await expect(page.getByRole('alert')).toContainText('larger than 20 MB');
  const past = await page.evaluate(
    (jar) =>
      window.jarline.call['photograph.add']({
        jar,
        bytes: new Uint8Array(20 * 1024 * 1024 + 1),
        caption: null,
      }),
    jars[0]!,
  );
  expect(past).toMatchObject({ ok: false, error: { code: 'photograph too large' } });
  expect(readdirSync(program.ledgerFolder)).not.toContain('jarline-photographs');
});
