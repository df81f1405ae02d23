// The home screen under a keeper's hands: a caution lifted, a batch seeded from a jar, and windows that are narrow, zoomed,
// still, or in the system's own colours.
import { join } from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { complaintsOfAxe } from './axe';
import { focused } from './keys';
import { recordBatch } from './recording';
import { expect, test } from './window';

test.use({ seed: 'empty' });

const jars = (page: Page): Locator => page.getByRole('treeitem');
const pane = (page: Page): Locator => page.getByRole('complementary', { name: 'About this jar' });
const stage = (page: Page): Locator => page.locator('.family-stage');

/** Waits until labels are written: they come after the jars themselves. */
async function shown(page: Page): Promise<void> {
  await expect(jars(page).first()).toBeVisible();
  await expect(page.locator('.jar-label').first()).toBeVisible();
  await page.evaluate(() => document.fonts.ready);
  await expect(stage(page)).not.toHaveClass(/moving/);
}

/** How much of the window the drawing has, and whether the page is wider than its window. */
async function shareOfWindow(page: Page): Promise<{ height: number; overflows: boolean }> {
  return page.evaluate(() => ({
    height: (document.querySelector('.family-stage')?.clientHeight ?? 0) / window.innerHeight,
    overflows: document.documentElement.scrollWidth > window.innerWidth,
  }));
}

/** Words of the strip that are cut off. */
const stripCutOff = (page: Page): Promise<string[]> =>
  page
    .locator('.spoken-words p')
    .evaluateAll((all) =>
      all
        .filter((one) => one.scrollHeight > one.clientHeight + 1 || one.scrollWidth > one.clientWidth + 1)
        .map((one) => one.textContent ?? ''),
    );

const firstSetAside = (page: Page): Locator => page.getByRole('treeitem', { name: /set aside/ }).first();

test.describe('the invented ledger', () => {
  test.use({ seed: 'demo' });

  test('a caution is lifted only with a reason, the keyboard stays with the jar, and undo puts it back', async ({
    page,
  }) => {
    await shown(page);
    await firstSetAside(page).click();
    const lift = pane(page).getByRole('button', { name: 'Lift with a reason' }).first();
    await lift.click();
    const reason = pane(page).getByLabel('Why is it all right to use?');
    await expect(reason).toBeFocused();
    await pane(page).getByRole('button', { name: 'Keep the caution' }).click();
    await expect(lift).toBeFocused();
    await lift.click();
    await pane(page).getByRole('button', { name: 'Lift it' }).click();
    await expect(pane(page).getByRole('alert')).toContainText('Write a few words');
    await expect(pane(page)).toContainText('Lifting says nothing about whether the jar is safe');
    await reason.fill('It stood in another hold, and was seeded with a clean spoon before.');
    await pane(page).getByRole('button', { name: 'Lift it' }).click();
    await expect(pane(page).getByText(/^Lifted: /)).toBeVisible();
    await expect(pane(page)).toContainText('seeded with a clean spoon before');
    await expect(page.getByText(/^The caution because of .* is lifted/)).toBeVisible();
    await expect(pane(page).getByRole('heading', { level: 2 })).toBeFocused();
    await page.keyboard.press('Control+z');
    await expect(pane(page).getByText(/^Lifted: /)).toHaveCount(0);
  });

  test('one reason lifts the caution on every jar that is marked; the spoiled jar at its root is a link', async ({
    page,
  }) => {
    await shown(page);
    await firstSetAside(page).click();
    await pane(page).getByRole('button', { name: 'Lift with a reason' }).first().click();
    const others = pane(page).getByRole('group', { name: /does the same reason hold for them/ });
    await others.getByRole('button', { name: 'Mark all' }).click();
    const boxes = await others.getByRole('checkbox').count();
    expect(boxes).toBeGreaterThan(1);
    await pane(page)
      .getByLabel('Why is it all right to use?')
      .fill('Looked at and smelled one by one: clean.');
    await pane(page).getByRole('button', { name: 'Lift it' }).click();
    await expect(page.getByText(`is lifted on ${boxes + 1} jars, with your reason kept.`)).toBeVisible();
    await page.keyboard.press('Control+z');
    await expect(pane(page).getByText(/^Lifted: /)).toHaveCount(0);
    const root = pane(page)
      .getByText(/^Because of .*which spoiled/)
      .first()
      .getByRole('button');
    const label = (await root.textContent()) ?? '';
    await root.click();
    await expect(pane(page).getByRole('heading', { level: 2 })).toContainText(label);
  });

  test('the pane shows the jar’s photograph and what is kept of it; its name stays while the rest scrolls', async ({
    page,
  }) => {
    await shown(page);
    await page.evaluate(async () => {
      const { call } = window.jarline;
      const family = await call['family.get']({});
      const jar = family.ok ? family.value.jars.find(({ label }) => label === '30 Nov a') : undefined;
      const sheet = new OffscreenCanvas(320, 200);
      const pen = sheet.getContext('2d');
      if (!jar || !pen) throw new Error('no jar to photograph');
      pen.fillRect(40, 40, 80, 80);
      const jpeg = await sheet.convertToBlob({ type: 'image/jpeg' });
      const bytes = new Uint8Array(await jpeg.arrayBuffer());
      const added = await call['photograph.add']({ jar: jar.id, bytes, caption: 'Whey at the wall' });
      if (!added.ok) throw new Error(JSON.stringify(added.error));
    });
    await page.getByRole('treeitem', { name: /^30 Nov a\b/ }).click();
    await expect(pane(page).getByRole('img', { name: 'Whey at the wall' })).toBeVisible();
    await expect(pane(page)).toContainText(/Kept of it: .*freezer cubes since 3 Dec 2025/);
    const name = pane(page).getByRole('heading', { level: 2 });
    const before = await name.boundingBox();
    await pane(page)
      .locator('.pane-body')
      .evaluate((body) => body.scrollTo(0, 10_000));
    expect(await name.boundingBox()).toEqual(before);
    const [head, body] = [await pane(page).locator('.pane-head').boundingBox(), await pane(page).locator('.pane-body').boundingBox()]; // prettier-ignore
    expect((head?.y ?? 0) + (head?.height ?? 0)).toBeLessThanOrEqual((body?.y ?? 0) + 0.5);
  });

  test('a batch is seeded from the pane, and stands in the family one generation on', async ({ page }) => {
    await shown(page);
    const before = await page.locator('.family-newest').textContent();
    const jar = page.getByRole('treeitem', { name: /^19 Apr a, generation 14\b/ });
    await jar.click();
    await pane(page).getByRole('button', { name: 'Seed from this' }).click();
    await expect(page.getByRole('heading', { name: 'New batch' })).toBeVisible();
    await expect(page.locator('main')).toContainText('19 Apr a');
    await page.keyboard.press('Control+Enter');
    await expect(page.getByRole('heading', { name: /^20 May 2026/ })).toBeVisible();
    await page.keyboard.press('Alt+1');
    await shown(page);
    await expect(page.getByRole('treeitem', { name: /^20 May a, generation 15\b/ })).toBeAttached();
    await expect(page.locator('.family-newest')).toContainText('generation 15, seeded by 19 Apr a');
    expect(await page.locator('.family-newest').textContent()).not.toBe(before);
  });

  test('closing the pane gives the keyboard back to its jar, in the drawing and in the table', async ({
    page,
  }) => {
    await shown(page);
    const jar = page.getByRole('treeitem', { name: /^19 Apr a\b/ });
    await jar.click();
    await pane(page).getByRole('button', { name: 'Close' }).click();
    await expect(jar).toBeFocused();
    await page.getByRole('button', { name: 'Table' }).click();
    const row = page.getByRole('row').getByRole('button', { name: '19 Apr 2026 c', exact: true });
    await row.click();
    await expect(pane(page).getByRole('heading', { level: 2 })).toHaveText('19 Apr c');
    const [table, over] = [await page.locator('.family-table').boundingBox(), await pane(page).boundingBox()];
    expect((table?.x ?? 0) + (table?.width ?? 0)).toBeLessThanOrEqual(over?.x ?? 0);
    await pane(page).getByRole('button', { name: 'Close' }).click();
    await expect(row).toBeFocused();
  });

  for (const width of [800, 1280])
    test.describe(`${width} px wide`, () => {
      test.use({ size: { width, height: 860 } });
      test('undoing moves nothing in the menu row, which is one line; a zero is plain', async ({ page }) => {
        await shown(page);
        const row = () =>
          page.locator('.bar').evaluate((bar) => ({
            height: bar.clientHeight,
            over: bar.scrollWidth - bar.clientWidth,
            buttons: [...bar.querySelectorAll('button')].map((one) => {
              const { left, top, right } = one.getBoundingClientRect();
              return [one.firstChild?.textContent, left, top, right].join(' ');
            }),
          }));
        const before = await row();
        expect(before.height).toBeLessThanOrEqual(60);
        expect(before.over).toBe(0);
        await page.keyboard.press('Control+z');
        await expect(page.locator('.message')).not.toHaveClass(/empty/);
        expect(await row()).toEqual(before);
        await page.keyboard.press('Control+Shift+z');
        // The middle of a slashed zero is ink.
        const ink = await page.evaluate(async () => {
          const face = getComputedStyle(document.body).fontFamily;
          await document.fonts.load(`400 200px ${face}`, '0');
          const canvas = document.createElement('canvas');
          [canvas.width, canvas.height] = [200, 240];
          const pen = canvas.getContext('2d');
          if (!pen) return null;
          pen.font = `400 200px ${face}`;
          pen.textAlign = 'center';
          pen.fillText('0', 100, 200);
          const column = Array.from({ length: 240 }, (_, y) => pen.getImageData(100, y, 1, 1).data[3] ?? 0);
          const edges = column.filter((one, y) => one > 127 !== (column[y - 1] ?? 0) > 127).length;
          return { edges, middle: pen.getImageData(100, 133, 1, 1).data[3] };
        });
        expect(ink).toEqual({ edges: 4, middle: 0 });
      });
    });

  test('after the key of the family, End and Enter find and open the newest jar', async ({ page }) => {
    await page.keyboard.press('Alt+2');
    await expect(page.getByRole('heading', { name: 'Batches' })).toBeVisible();
    await page.keyboard.press('Alt+1');
    await shown(page);
    await page.keyboard.press('End');
    await expect(page.locator('.jar:focus')).toHaveAttribute('aria-label', /^2 May c,/);
    await page.keyboard.press('Alt+2');
    await page.keyboard.press('Alt+1');
    await shown(page);
    await page.keyboard.press('Enter');
    await expect(pane(page).getByRole('heading', { level: 2 })).toHaveText('2 May c');
  });

  test('closing a dialog gives the keyboard back, and the help lists each key once, with the words', async ({
    page,
  }) => {
    await shown(page);
    const keys = page.getByRole('button', { name: 'Help', exact: true });
    await keys.click();
    const dialog = page.getByRole('dialog', { name: 'Help' });
    for (const group of await dialog.locator('section').all()) {
      const chords = await group.locator('kbd').allTextContents();
      expect(new Set(chords).size, (await group.locator('h3').textContent()) ?? '').toBe(chords.length);
    }
    await expect(dialog).toContainText('To what seeded it');
    const closer = dialog.locator('dl > div').filter({ has: page.getByText('Closer', { exact: true }) });
    await expect(closer.locator('kbd')).toHaveText(['+']);
    for (const word of [
      'generation',
      'doublings',
      'share',
      'line',
      'hold',
      'set aside',
      'vigour',
      'standing',
    ])
      await expect(dialog.locator('dt').getByText(word, { exact: true }), word).toBeVisible();
    expect(await complaintsOfAxe(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await expect(dialog).toHaveCount(0);
    await expect(keys).toBeFocused();
    await keys.click();
    await dialog.getByRole('button', { name: /^2\. Seed/ }).click();
    await expect(dialog).toHaveCount(0);
    await expect(page.getByLabel('Made on')).toBeVisible();
  });

  test('with the system’s own colours, jars, lettering and what is chosen stay', async ({ page }) => {
    await page.emulateMedia({ forcedColors: 'active' });
    await shown(page);
    const colours = await page.evaluate(() => {
      const probe = document.body.appendChild(document.createElement('span'));
      const read = (colour: string): string => {
        probe.style.color = colour;
        return getComputedStyle(probe).color;
      };
      const system = {
        text: read('CanvasText'),
        canvas: read('Canvas'),
        chosen: read('Highlight'),
        dim: read('GrayText'),
      };
      probe.remove();
      return system;
    });
    expect(colours.text).not.toBe(colours.canvas);
    for (const part of ['.numeral', '.jar-label', '.jar .lid'])
      await expect(page.locator(part).first(), part).toHaveCSS('fill', colours.text);
    for (const part of ['.jar .body', '.ribbon'])
      await expect(page.locator(part).first(), part).toHaveCSS('stroke', colours.text);
    await expect(page.locator('.jar .contents').first()).toHaveCSS('fill', colours.canvas);
    await expect(page.getByRole('button', { name: 'Generations' })).toHaveCSS('outline-style', 'solid');
    await page.getByRole('treeitem', { name: /^19 Apr a\b/ }).click();
    await expect(page.locator('.jar.selected .ring')).toHaveCSS('stroke', colours.chosen);
    await expect(page.locator('.ribbon.lit').first()).toHaveCSS('stroke', colours.chosen);
    await page.mouse.move(5, 5);
    await expect(page.locator('.jars .jar:not(.lit) .numeral').first()).toHaveCSS('fill', colours.dim);
    await expect(page.locator('.jar-label:not(.lit)').first()).toHaveCSS('fill', colours.dim);
  });

  test('where the system asks for stillness, nothing moves by itself', async ({ page }) => {
    await page.emulateMedia({ reducedMotion: 'reduce' });
    await shown(page);
    await page.getByRole('treeitem', { name: /^19 Apr a\b/ }).click();
    await expect(pane(page).getByRole('heading', { level: 2 })).toBeVisible();
    const moving = await page.evaluate(() =>
      [...document.querySelectorAll('*')]
        .filter((element) => {
          const style = getComputedStyle(element);
          return (
            style.animationName !== 'none' ||
            (style.transitionDuration !== '0s' && style.transitionProperty !== 'none')
          );
        })
        .map((element) => element.className.toString()),
    );
    expect(moving).toEqual([]);
    expect(await page.evaluate(() => document.getAnimations().length)).toBe(0);
  });

  for (const width of [1000, 1280, 1600])
    test.describe(`${width} px wide`, () => {
      test.use({ size: { width, height: 900 } });
      test('one strip stands above the drawing: what to do, why, and the button that does it', async ({
        page,
      }) => {
        await shown(page);
        const strip = page.getByRole('region', { name: /^What is advised for/ });
        await expect(strip).toHaveCount(1);
        await expect(strip.getByRole('button', { name: /^(Seed from|Start afresh)/ })).toBeVisible();
        // What stands against the newest jar is named, and the jar is a link.
        await expect(strip.getByRole('button', { name: /^2 May [abc]$/ }).first()).toBeVisible();
        // What is kept back stands at its line's end, and glows there where it is advised; today nothing runs or is due.
        await expect(page.getByRole('list', { name: 'Kept back' }).first()).toContainText('next seed');
        await expect(page.getByRole('region', { name: 'Today' })).toHaveText(
          /^(?:A reminder|\d+ reminders)$/,
        );
        expect(await stripCutOff(page)).toEqual([]);
        const top = async (selector: string): Promise<number> =>
          (await page.locator(selector).boundingBox())?.y ?? 0;
        const above = (await top('.family-stage')) - (await top('.screen'));
        expect(above).toBeLessThan(80);
        expect((await shareOfWindow(page)).height).toBeGreaterThan(0.75);
      });
    });

  test.describe('1600 px wide', () => {
    test.use({ size: { width: 1600, height: 900 } });
    test('no ribbon passes through the lettering of a whole label', async ({ page }) => {
      await shown(page);
      await page.mouse.move(5, 5);
      const crossed = await page.evaluate(() => {
        const ribbons = [...document.querySelectorAll<SVGPathElement>('.ribbons .ribbon')].flatMap((path) => {
          const matrix = path.getScreenCTM();
          const length = path.getTotalLength();
          return matrix === null
            ? []
            : Array.from({ length: 80 }, (_, at) =>
                path.getPointAtLength((length * at) / 79).matrixTransform(matrix),
              );
        });
        return [...document.querySelectorAll('.jar-label')]
          .filter((label) => (label.textContent ?? '').length > 1)
          .filter((label) => {
            const { left, right, top, bottom } = label.getBoundingClientRect();
            return ribbons.some(({ x, y }) => x > left + 1 && x < right - 1 && y > top + 5 && y < bottom - 5);
          })
          .map((label) => label.textContent);
      });
      expect(crossed).toEqual([]);
    });

    test('choosing the table moves no button; spoiled and held rows are marked beside their labels', async ({
      page,
    }) => {
      await shown(page);
      const places = async (): Promise<unknown[]> => {
        const found: unknown[] = [];
        for (const name of ['Generations', 'Calendar', 'Table', 'Signs'])
          found.push(await page.getByRole('button', { name, exact: true }).boundingBox());
        return found;
      };
      const before = await places();
      await page.getByRole('button', { name: 'Table' }).click();
      await expect(page.getByRole('table')).toBeVisible();
      expect(await places()).toEqual(before);
      await expect(page.getByRole('button', { name: 'Fit' })).toHaveCount(0);
      await expect(page.getByRole('rowheader', { name: /^8 Apr 2026 a\b.*set aside/ })).toBeVisible();
      await expect(page.getByRole('rowheader', { name: /^1 Apr 2026 c\b.*spoiled/ })).toBeVisible();
      await expect(page.getByRole('rowheader', { name: /^19 Apr 2026 a\b/ })).not.toContainText(
        /hold|spoiled/,
      );
    });
  });

  test('the lids of set-aside jars and of jars to look at differ in outline, and the signs name both', async ({
    page,
  }) => {
    await shown(page);
    const held = await page.getByRole('treeitem', { name: /set aside/ }).count();
    expect(held).toBeGreaterThan(0);
    await expect(page.locator('.jars .lid.barred')).toHaveCount(held);
    await page.getByRole('button', { name: 'Signs' }).click();
    const sign = (says: RegExp): Locator => page.locator('.family-legend li').filter({ hasText: says });
    await expect(sign(/set aside, because/).locator('.lid.barred')).toHaveCount(1);
    await expect(sign(/look at it before/).locator('.lid-dot')).toHaveCount(1);
    await expect(sign(/look at it before/).locator('.lid.barred')).toHaveCount(0);
    const width = async (says: RegExp): Promise<number> =>
      (await sign(says).locator('.lid').boundingBox())?.width ?? 0;
    expect(await width(/set aside, because/)).toBeGreaterThan(1.2 * (await width(/look at it before/)));
  });

  test('a set-aside jar is no first choice as seed, and a spoiled one none, with the reason', async ({
    page,
  }) => {
    await shown(page);
    await page.getByRole('treeitem', { name: /^8 Apr b\b/ }).click();
    await expect(pane(page).getByText('Set aside: seeded from 1 Apr c')).toBeVisible();
    await expect(pane(page).getByRole('button', { name: 'Seed from this' })).not.toHaveClass(/primary/);
    await page.getByRole('treeitem', { name: /^1 Apr c\b/ }).click();
    await expect(pane(page)).toContainText('No batch can be seeded from it: it spoiled');
    await expect(pane(page).getByRole('button', { name: 'Seed from this' })).toHaveCount(0);
  });

  test('a jar that descends from one set aside says so, though no caution is on it', async ({ page }) => {
    await shown(page);
    // 8 Apr a is set aside; lifting what 15 Apr a carries itself leaves its descent.
    await page.getByRole('treeitem', { name: /^15 Apr a\b/ }).click();
    await expect(pane(page).getByRole('heading', { level: 2 })).toHaveText('15 Apr a');
    await pane(page).getByRole('button', { name: 'Lift with a reason' }).first().click();
    await pane(page).getByLabel('Why is it all right to use?').fill('Written down for the test.');
    await pane(page).getByRole('button', { name: 'Lift it' }).click();
    await expect(pane(page).getByText(/^Lifted: /)).toBeVisible();
    await expect(pane(page).getByText('Descends from 8 Apr a, which is set aside.')).toBeVisible();
    await expect(pane(page).getByRole('button', { name: 'Seed from this' })).not.toHaveClass(/primary/);
  });

  test.describe('800 px wide', () => {
    test.use({ size: { width: 800, height: 900 } });
    test('the drawing has most of the window, and the strip is two lines', async ({ page }) => {
      await shown(page);
      const { height, overflows } = await shareOfWindow(page);
      expect(height).toBeGreaterThan(0.75);
      expect(overflows).toBe(false);
      await expect(page.getByRole('region', { name: /^What is advised for/ })).toHaveCount(1);
      expect((await page.locator('.spoken').boundingBox())?.height ?? 99).toBeLessThan(64);
    });
  });

  test.describe('800 × 600', () => {
    test.use({ size: { width: 800, height: 600 } });
    test('nothing in the bar lies over anything else, nor is cut off, also with words a quarter or twice as large', async ({ app, page }) => {
      await shown(page);
      const faults = (): Promise<string[]> => page.evaluate(() => {
        const all = [...document.querySelectorAll<HTMLElement>('.bar .button, .demo > span')].filter((one) => one.offsetWidth > 0);
        const boxes = all.map((one) => ({ says: one.innerText, cut: one.scrollWidth > one.clientWidth + 1 && one.tagName === 'BUTTON', ...one.getBoundingClientRect().toJSON() }));
        return boxes.flatMap((box, at) => [
          ...(box.cut || box.right > window.innerWidth ? [`cut off: ${box.says}`] : []),
          ...boxes.slice(at + 1).flatMap((other) =>
            box.left < other.right - 1 && other.left < box.right - 1 && box.top < other.bottom && other.top < box.bottom ? [`${box.says} / ${other.says}`] : [],
          ),
        ]);
      });
      for (const zoom of [1, 1.25, 2]) {
        await app.evaluate(({ BrowserWindow }, factor) => BrowserWindow.getAllWindows()[0]?.webContents.setZoomFactor(factor), zoom);
        await expect.poll(() => page.evaluate(() => window.innerWidth)).toBe(800 / zoom);
        await expect.poll(faults, { message: `at ${zoom}` }).toEqual([]);
      }
    }); // prettier-ignore
    test('stays usable: the drawing has two thirds of the window, every control is in it', async ({
      page,
    }) => {
      await shown(page);
      const { height, overflows } = await shareOfWindow(page);
      expect(height).toBeGreaterThan(2 / 3);
      expect(overflows).toBe(false);
      for (const button of await page.locator('.bar .button:visible, .family-tools .button:visible').all()) {
        const box = await button.boundingBox();
        expect(box && box.x >= 0 && box.x + box.width <= 800 && box.y + box.height <= 600).toBe(true);
        expect(box?.height ?? 0).toBeGreaterThanOrEqual(40);
      }
      await page.getByRole('treeitem', { name: /^22 Apr b\b/ }).click();
      await expect(pane(page).getByRole('button', { name: 'Close' })).toBeInViewport();
      await expect(page.locator('.jar.selected')).toBeInViewport();
    });
  });

  test.describe('1600 px wide at 200 % zoom', () => {
    test.use({ size: { width: 1600, height: 1000 } });
    test('is the narrow window, in larger lettering: nothing is cut off', async ({ app, page }) => {
      await shown(page);
      await app.evaluate(({ BrowserWindow }) =>
        BrowserWindow.getAllWindows()[0]?.webContents.setZoomFactor(2),
      );
      await expect.poll(() => page.evaluate(() => window.innerWidth)).toBeLessThanOrEqual(800);
      await shown(page);
      const { height, overflows } = await shareOfWindow(page);
      expect(overflows).toBe(false);
      expect(height).toBeGreaterThan(0.4);
      await page.keyboard.press('/');
      expect(await focused(page)).toMatch(/Find a jar/);
      await page.keyboard.type('19 apr a');
      await expect(page.getByRole('option').first()).toContainText('19 Apr 2026 a');
      await page.keyboard.press('Enter');
      await expect(pane(page).getByRole('heading', { level: 2 })).toHaveText('19 Apr a');
      await expect(page.locator('.jar.selected')).toBeInViewport();
      expect(await complaintsOfAxe(page)).toEqual([]);
    });
  });
});

test.describe('a batch in warmth', () => {
  test.use({ seed: 'empty' });
  test('stands in a tub, reads so everywhere, and today says what it asks for', async ({ page }) => {
    const first = await recordBatch(page, '2026-05-10', ['a', 'b'], { product: 'Blue Tin' });
    const began = { startedAt: '2026-05-20T01:00:00+02:00', hours: 31 };
    await recordBatch(page, '2026-05-20', ['a', 'b'], { jar: first.jars[0]! }, began);
    await page.keyboard.press('Alt+1');
    await shown(page);
    await expect(page.getByRole('treeitem', { name: /^20 May [ab], .*, in warmth$/ })).toHaveCount(2);
    await expect(page.getByRole('treeitem', { name: /^10 May a, .*, on the shelf/ })).toHaveCount(1);
    await expect(page.locator('.tub')).toHaveCount(1);
    const today = page.getByRole('region', { name: 'Today' });
    await expect(today).toContainText('Look at 20 May by 13:00.');
    expect(await complaintsOfAxe(page)).toEqual([]);
    await page.getByRole('treeitem', { name: /^20 May a/ }).click();
    await expect(pane(page).getByRole('banner').or(pane(page).locator('.pane-head'))).toContainText(
      'in warmth',
    );
    await today.getByRole('button', { name: /^Look now/ }).click();
    await expect(page.getByRole('article', { name: 'The hold of 20 May' })).toContainText(
      'left. Out tomorrow at 08:00',
    );
    await page.getByRole('button', { name: 'Its batch' }).click();
    await expect(page.getByRole('region', { name: '20 May a', exact: true })).toContainText('in warmth');
    await expect(page.getByRole('article')).toContainText('bath set to 38 °C');
  });
});

test('every screen of an empty ledger starts the job', async ({ page }) => {
  for (const [key, button] of [
    ['Alt+1', 'Record the first batch'],
    ['Alt+2', /batch/i],
    ['Alt+3', /batch/i],
    ['Alt+4', /batch/i],
    ['Alt+5', /source/i],
    ['Alt+6', /batch/i],
  ] as const) {
    await page.keyboard.press(key);
    await expect(page.getByRole('main').getByRole('button', { name: button }).first(), key).toBeVisible();
  }
});

test('a slip whose strains nobody noted says so', async ({ page }) => {
  await page.getByRole('button', { name: 'Bring in a spreadsheet' }).click();
  const notes = join(import.meta.dirname, '../tests/notes/kitchen-notes.csv');
  await page.getByLabel('Choose a file').setInputFiles(notes);
  await page.getByRole('button', { name: /^Bring in \d+ rows/ }).click();
  await expect(page.getByRole('button', { name: 'Family', exact: true })).toBeVisible();
  await page.keyboard.press('Alt+1');
  await shown(page);
  await expect(page.locator('.packet').first()).toContainText('strains not noted');
});

test('a jar topped up from capsules has a small slip at its inlet, and says so', async ({ page }) => {
  const first = await recordBatch(page, '2026-05-10', ['a'], { product: 'Blue Tin' });
  const next = await recordBatch(page, '2026-05-14', ['a', 'b'], { jar: first.jars[0] ?? '' });
  await page.evaluate(
    async ([jar, from]) => {
      const { call } = window.jarline;
      const sources = await call['source.list']({});
      const source = sources.ok ? sources.value.sources[0]?.id : undefined;
      if (source === undefined) throw new Error('no source');
      const none = { portion: null, part: null, package: null };
      const set = await call['seeding.set']({
        jar,
        seedings: [
          {
            ...none,
            fromJar: from,
            source: null,
            amount: { value: 44.36, unit: 'mL', typed: '3 tbsp' },
          },
          { ...none, fromJar: null, source, amount: { value: 2, unit: 'pieces', typed: '2' } },
        ],
        why: 'topped up',
        draft: null,
      });
      if (!set.ok) throw new Error(JSON.stringify(set.error));
    },
    [next.jars[1] ?? '', first.jars[0] ?? ''] as const,
  );
  await page.keyboard.press('Alt+1');
  await shown(page);
  await expect(page.locator('.top-up')).toHaveCount(1);
  const jar = page.getByRole('treeitem', { name: /^14 May b, .*also seeded by Blue Tin/ });
  await expect(jar).toBeVisible();
  const [slip, box] = [await page.locator('.top-up .slip').boundingBox(), await jar.boundingBox()];
  if (!slip || !box) throw new Error('not drawn');
  expect(slip.x).toBeLessThan(box.x + box.width / 3);
  expect(slip.y).toBeGreaterThan(box.y);
  expect(slip.y + slip.height).toBeLessThan(box.y + box.height + 4);
});
