// The home screen in the real window: what is drawn, how it is walked, and how little is mounted.
import type { ElectronApplication, Locator, Page } from '@playwright/test';
import { complaintsOfAxe } from './axe';
import { readsUnderWay } from './late';
import { expect, test } from './window';

const tree = (page: Page): Locator => page.getByRole('tree', { name: /The family/ });
const jars = (page: Page): Locator => tree(page).getByRole('treeitem');
const drawn = (page: Page): Locator => page.locator('svg.jars');
const labels = (page: Page): Locator => page.locator('.jar-label');
const pane = (page: Page): Locator => page.getByRole('complementary', { name: 'About this jar' });

/** Waits until labels are written: they come after the jars themselves. */
async function shown(page: Page): Promise<void> {
  await expect(jars(page).first()).toBeVisible();
  await expect(labels(page).first()).toBeVisible();
  await page.evaluate(() => document.fonts.ready);
  await settled(page);
  // Scores come after the jars, and mark those they belong to.
  await expect(drawn(page)).toHaveAttribute('data-judged', 'true');
}
/** The view is settled once nothing has moved for as long as that takes; two frames later all of it is drawn. */
async function settled(page: Page): Promise<void> {
  await expect(page.locator('.family-stage')).not.toHaveClass(/moving/);
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
}
const renders = async (page: Page): Promise<number> =>
  Number(await drawn(page).getAttribute('data-jar-renders'));
/** The same once nothing that was still being read draws any more: on a busy machine that comes after the family is shown. */
async function restingRenders(app: ElectronApplication, page: Page): Promise<number> {
  let before = -1;
  await expect
    .poll(
      async () => {
        const waiting = await readsUnderWay(app);
        const now = await renders(page);
        const same = waiting === 0 && now === before;
        before = now;
        return same;
      },
      { intervals: [400] },
    )
    .toBe(true);
  return before;
}
const mountedKeys = (page: Page): Promise<string[]> =>
  jars(page).evaluateAll((all) => all.map((jar) => jar.getAttribute('data-key') ?? ''));
const boxes = (locator: Locator) =>
  locator.evaluateAll((all) =>
    all.map((one) => {
      const { left, right, top, bottom, height } = one.getBoundingClientRect();
      return { text: one.textContent ?? '', left, right, top, bottom, height };
    }),
  );

async function drag(page: Page, dx: number, dy: number): Promise<void> {
  const box = await page.locator('.family-stage').boundingBox();
  if (!box) throw new Error('no stage');
  const [x, y] = [box.x + box.width - 120, box.y + box.height - 30];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + dx / 2, y + dy / 2);
  await page.mouse.move(x + dx, y + dy);
  await page.mouse.up();
  await settled(page);
}

/** By key: the how-manieth row from the top a jar stands in. */
const rowOrder = (map: Map<string, number>): number[] => {
  const sorted = [...new Set([...map.values()].map(Math.round))].toSorted((a, b) => a - b);
  return [...map]
    .toSorted(([a], [b]) => Number(a) - Number(b))
    .map(([, top]) => sorted.indexOf(Math.round(top)));
};

test.describe('sixty jars, fitted', () => {
  test.use({ seed: async ({ sixty }, use) => use(sixty) });
  for (const width of [800, 1600]) {
    test.describe(`${width} px wide`, () => {
      test.use({ size: { width, height: 1000 } });

      test('no two labels overlap, and all lettering is at least 15 px', async ({ page }) => {
        await shown(page);
        expect(await jars(page).count()).toBe(60);
        const written = await boxes(labels(page));
        expect(written.length).toBeGreaterThan(width === 800 ? 15 : 30);
        const overlaps = written.flatMap((a, i) =>
          written
            .slice(i + 1)
            .filter(
              (b) => a.left < b.right && b.left < a.right && a.top < b.bottom - 1 && b.top < a.bottom - 1,
            )
            .map((b) => `${a.text} / ${b.text}`),
        );
        expect(overlaps).toEqual([]);
        // Found and measured in one go: what is drawn anew in between has no size.
        const sizes = await page.evaluate(() =>
          [...document.querySelectorAll<SVGTextElement>('.jar-label, .numeral')].map(
            (text) => Number.parseFloat(getComputedStyle(text).fontSize) * (text.getScreenCTM()?.a ?? 0),
          ),
        );
        expect(Math.min(...sizes)).toBeGreaterThanOrEqual(15);
        if (width === 1600) {
          const numerals = await page.locator('.numeral').evaluateAll((all) =>
            all.map((text) => {
              const matrix = (text as SVGTextElement).getScreenCTM();
              return Number.parseFloat(getComputedStyle(text).fontSize) * (matrix?.a ?? 0);
            }),
          );
          expect(Math.min(...numerals)).toBeGreaterThanOrEqual(28);
        }
      });
    });
  }

  for (const colorScheme of ['light', 'dark'] as const) {
    test.describe(colorScheme, () => {
      test.use({ colorScheme, size: { width: 1600, height: 1000 } });
      test('drawing, pane, signs and table hold to the accessibility rules', async ({ page }) => {
        await shown(page);
        await jars(page).last().click();
        await expect(pane(page).getByRole('heading', { name: 'What seeded it' })).toBeVisible();
        await page.mouse.move(5, 5);
        await page.getByRole('button', { name: 'Signs' }).click();
        expect(await complaintsOfAxe(page), 'drawing, pane and signs').toEqual([]);
        await page.getByRole('button', { name: 'Signs' }).click();
        await page.getByRole('button', { name: 'Table' }).click();
        await expect(page.getByRole('row').nth(3)).toBeVisible();
        expect(await complaintsOfAxe(page), 'table').toEqual([]);
      });
    });
  }

  test('is walked by keyboard: to the seed, to what it seeded, along the column, and opened', async ({
    page,
  }) => {
    await shown(page);
    const focused = (name: string): Promise<string | null> =>
      page.evaluate((attribute) => document.activeElement?.getAttribute(attribute) ?? null, name);
    await jars(page).first().focus();
    await page.keyboard.press('Home');
    expect(await focused('aria-level')).toBe('1');
    expect(await focused('aria-label')).toMatch(/generation 1,.*started from first source/);
    const roots = Number(await focused('aria-setsize'));
    expect(roots).toBe(await tree(page).locator('[aria-level="1"]').count());
    await page.keyboard.press('ArrowRight');
    expect(await focused('aria-level')).toBe('2');
    const second = await focused('data-key');
    await page.keyboard.press('ArrowDown');
    expect(await focused('data-key')).not.toBe(second);
    expect(await focused('aria-label')).toContain('generation 2');
    await page.keyboard.press('ArrowUp');
    expect(await focused('data-key')).toBe(second);
    await page.keyboard.press('ArrowLeft');
    expect(await focused('aria-level')).toBe('1');
    await page.keyboard.press('End');
    expect(await page.locator('[role=treeitem][tabindex="0"]').count()).toBe(1);
    const label = (await focused('aria-label'))?.split(',')[0] ?? '?';
    await page.keyboard.press('Enter');
    await expect(pane(page).getByRole('heading', { name: label, exact: true })).toBeVisible();
    await page.keyboard.press('Escape');
    await expect(pane(page)).toHaveCount(0);
  });

  test('lights descent both ways and leaves the rest dim', async ({ page }) => {
    await shown(page);
    const middle = tree(page).locator('[aria-level="4"]').first();
    await middle.hover();
    await expect(middle).toHaveClass(/lit/);
    const lit = await page.locator('.jar.lit').count();
    expect(lit).toBeGreaterThanOrEqual(4);
    expect(lit).toBeLessThan(60);
    // The rest steps back without fading: hollow jars, soft numerals, nothing see-through.
    const dim = page.locator('.jars .jar:not(.lit)').first();
    await expect(dim).toHaveCSS('opacity', '1');
    const soft = await page.evaluate(() => {
      const probe = document.body.appendChild(document.createElement('span'));
      probe.className = 'soft';
      const { color } = getComputedStyle(probe);
      probe.remove();
      return color;
    });
    await expect(dim.locator('.numeral')).toHaveCSS('fill', soft);
    await expect(page.locator('.jar-label:not(.lit)').first()).toHaveCSS('fill', soft);
    await page.mouse.move(5, 5);
    await expect(page.locator('.jar.lit')).toHaveCount(0);
  });

  test('a line that nobody named is named in the strip, without leaving the family', async ({ page }) => {
    await shown(page);
    const strip = page.locator('.spoken');
    await strip.getByRole('button', { name: /^Name it/ }).click();
    await page.getByLabel('Name of this line').fill('Kitchen line');
    await page.keyboard.press('Enter');
    await expect(strip).toContainText('Kitchen line: ');
    await expect(page.locator('.lane-head').filter({ hasText: 'Kitchen line' })).toBeVisible();
    await page.keyboard.press('Control+z');
    await expect(strip.getByRole('button', { name: /^Name it/ })).toBeVisible();
  });

  test('finds a jar by part of its label and shows the way back', async ({ page }) => {
    await shown(page);
    await page.keyboard.press('/');
    await expect(page.getByRole('combobox', { name: /Find a jar/ })).toBeFocused();
    await page.keyboard.type('a');
    await expect(page.getByText('More jars fit')).toBeVisible();
    await page.keyboard.press('Control+a');
    await page.keyboard.type('13 jan');
    await expect(page.getByText('More jars fit')).toHaveCount(0);
    await expect(page.getByRole('option').first()).toContainText('13 Jan');
    const found = (await page.getByRole('option').first().locator('strong').textContent()) ?? '';
    expect(found, 'with its year').toMatch(/ 20\d\d [a-d]$/);
    const wanted = found.replace(/ 20\d\d/, '');
    const before = await page.locator('.family-stage').evaluate((one) => one.style.getPropertyValue('--k'));
    await page.keyboard.press('Enter');
    await expect(pane(page).getByRole('heading', { name: wanted, exact: true })).toBeVisible();
    await expect(pane(page).locator('.way-back')).toContainText(wanted);
    await expect(jars(page).and(page.locator('.selected'))).toBeFocused();
    const after = await page.locator('.family-stage').evaluate((one) => one.style.getPropertyValue('--k'));
    expect(Number(after), 'a found jar is not made smaller').toBeGreaterThanOrEqual(Number(before) - 1e-9);
  });

  test('lays the same rows on the calendar, and the same jars in a table', async ({ page }) => {
    await shown(page);
    const rows = async (): Promise<Map<string, number>> =>
      new Map(
        await jars(page).evaluateAll((all) =>
          all.map((jar) => [jar.getAttribute('data-key') ?? '', jar.getBoundingClientRect().top] as const),
        ),
      );
    const before = await rows();
    await page.getByRole('button', { name: 'Calendar' }).click();
    await settled(page);
    await expect(page.locator('.family-months .month-line').first()).toBeAttached();
    const after = await rows();
    expect(rowOrder(after)).toEqual(rowOrder(before));
    await page.getByRole('button', { name: 'Table' }).click();
    const table = page.getByRole('table');
    await expect(table).toHaveAttribute('aria-rowcount', '61');
    await table.getByRole('button', { name: 'Generation' }).click();
    await expect(table.getByRole('columnheader', { name: 'Generation' })).toHaveAttribute(
      'aria-sort',
      'ascending',
    );
    await expect(table.getByRole('row').nth(1).getByRole('cell').first()).toHaveText('1');
  });

  test('the newest jar is named with what stands against it', async ({ page }) => {
    await shown(page);
    await expect(page.getByRole('treeitem', { name: /^26 Apr a\b.*\bset aside\b/ })).toBeAttached();
    await expect(page.locator('.family-newest')).toContainText('26 Apr a, set aside: not food, not seed');
  });

  test('a pan renders no jar again, and zoom and fit come back to the same', async ({ app, page }) => {
    await shown(page);
    // A display's own pointer rests somewhere, and a jar that the pan brings under it would be lit: no jar is to be pointed at.
    await tree(page).evaluate((drawing: SVGElement) => (drawing.style.pointerEvents = 'none'));
    await page.mouse.move(1, 1);
    await expect(drawn(page)).not.toHaveClass(/lighting/);
    await page.keyboard.press('+');
    await settled(page);
    const at = await restingRenders(app, page);
    const first = await boxes(jars(page));
    await drag(page, 60, -40);
    expect(await renders(page)).toBe(at);
    const moved = await boxes(jars(page));
    expect(Math.round((moved[0]?.left ?? 0) - (first[0]?.left ?? 0))).toBe(60);
    await page.keyboard.press('0');
    await settled(page);
    const fitted = await boxes(jars(page));
    await page.keyboard.press('+');
    await page.keyboard.press('0');
    await settled(page);
    const again = await boxes(jars(page));
    expect(Math.abs((fitted[0]?.left ?? 0) - (again[0]?.left ?? 1e9))).toBeLessThan(1);
  });
});

test.describe('a narrow window', () => {
  test.use({ seed: async ({ sixty }, use) => use(sixty), size: { width: 800, height: 900 } });

  test('the pane covers no jar that was in sight: the drawing makes room, and takes it back', async ({
    page,
  }) => {
    await shown(page);
    await page.keyboard.press('+');
    await settled(page);
    const stage = await page.locator('.family-stage').boundingBox();
    if (!stage) throw new Error('no stage');
    const inSight = async (right: number): Promise<Set<string>> =>
      new Set(
        (
          await jars(page).evaluateAll((all) =>
            all.map((jar) => {
              const {
                left,
                right: end,
                top,
                bottom,
              } = (jar.querySelector('.body') ?? jar).getBoundingClientRect();
              return { key: jar.getAttribute('data-key') ?? '', left, end, top, bottom };
            }),
          )
        )
          .filter(
            (jar) =>
              jar.left < right &&
              jar.end > stage.x &&
              jar.top < stage.y + stage.height &&
              jar.bottom > stage.y,
          )
          .map(({ key }) => key),
      );
    const before = await inSight(stage.x + stage.width);
    expect(before.size).toBeGreaterThan(10);
    await page.keyboard.press('End');
    await settled(page);
    const shownBefore = await inSight(stage.x + stage.width);
    const zoom = await page.locator('.family-stage').evaluate((one) => one.style.getPropertyValue('--k'));
    await page.keyboard.press('Enter');
    await expect(pane(page).getByRole('heading', { name: 'What seeded it' })).toBeVisible();
    await settled(page);
    const covering = await pane(page).boundingBox();
    if (!covering) throw new Error('no pane');
    const after = await inSight(covering.x);
    expect([...shownBefore].filter((key) => !after.has(key))).toEqual([]);
    await page.keyboard.press('Escape');
    await settled(page);
    expect(await page.locator('.family-stage').evaluate((one) => one.style.getPropertyValue('--k'))).toBe(
      zoom,
    );
  });

  test('a found jar comes to the middle, and no pull leaves the window without a jar', async ({ page }) => {
    await shown(page);
    const stage = await page.locator('.family-stage').boundingBox();
    if (!stage) throw new Error('no stage');
    for (const [dx, dy] of [
      [-3000, 0],
      [6000, 0],
      [0, -3000],
      [0, 6000],
      [-3000, -3000],
    ] as const) {
      for (let turn = 0; turn < 3; turn += 1) await drag(page, dx, dy);
      const left = (await boxes(jars(page))).filter(
        (jar) =>
          jar.left >= stage.x && jar.right <= stage.x + stage.width &&
          jar.top >= stage.y && jar.bottom <= stage.y + stage.height + 1,
      ); // prettier-ignore
      expect(left.length, `pulled by ${dx}, ${dy}`).toBeGreaterThan(0);
    }
    await page.keyboard.press('/');
    await page.keyboard.type('13 jan');
    await expect(page.getByRole('option').first()).toContainText('13 Jan');
    await page.keyboard.press('Enter');
    await expect(pane(page).getByRole('heading', { level: 2 })).toContainText('13 Jan');
    await settled(page);
    const [jar] = await boxes(jars(page).and(page.locator('.selected')));
    const covering = await pane(page).boundingBox();
    if (!jar || !covering) throw new Error('no jar chosen');
    expect(jar.left).toBeGreaterThan(stage.x);
    expect(jar.right).toBeLessThan(covering.x);
  });
});

test.describe('a hundred thousand jars', () => {
  test.describe.configure({ timeout: 240_000 });
  test.use({ seed: async ({ hundredThousand }, use) => use(hundredThousand) });

  test('mounts at most 600 at any zoom, and a pan renders no unchanged jar', async ({ app, page }) => {
    await expect(page.locator('.family-newest')).toContainText('100,000 jars.', { timeout: 120_000 });
    await expect(jars(page).first()).toBeAttached({ timeout: 60_000 });
    const seen: number[] = [];
    const count = async (): Promise<void> => {
      await settled(page);
      seen.push(await jars(page).count());
    };
    await count();
    // The first look shows jars one can read, with their numerals.
    await expect(drawn(page)).toHaveAttribute('data-drawn', 'jars');
    // Its generations have three digits.
    const numerals = await boxes(page.locator('.jars .numeral'));
    expect(Math.min(...numerals.map(({ height }) => height))).toBeGreaterThanOrEqual(20);
    await page.keyboard.press('0');
    await count();
    await expect(drawn(page)).toHaveAttribute('data-drawn', 'marks');
    await page.keyboard.press('End');
    for (let step = 0; step < 24; step += 1) {
      await page.keyboard.press('-');
      await count();
    }
    for (let step = 0; step < 30; step += 1) {
      await page.keyboard.press('+');
      await count();
    }
    expect(Math.max(...seen)).toBeLessThanOrEqual(600);

    // Back to a zoom at which many are seen.
    for (let step = 0; step < 7; step += 1) await page.keyboard.press('-');
    // Pointing and the keyboard's focus light jars, which renders them: none is to have either.
    await tree(page).evaluate((drawing: SVGElement) => {
      drawing.style.pointerEvents = 'none';
      if (document.activeElement instanceof SVGElement) document.activeElement.blur();
    });
    await page.mouse.move(1, 1);
    await settled(page);
    const rendered = await restingRenders(app, page);
    const before = new Set(await mountedKeys(page));
    await drag(page, 300, 160);
    const after = await mountedKeys(page);
    const fresh = after.filter((key) => !before.has(key)).length;
    expect(after.length).toBeGreaterThan(20);
    // A jar that comes in is rendered bare, and once more when its label is here. No other jar is.
    await expect.poll(() => renders(page)).toBeLessThanOrEqual(rendered + 2 * fresh);
  });
});
