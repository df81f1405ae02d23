// Not a test of anything: makes the pictures of `npm run screenshots`, each light and dark, 800 and 1600 px wide.
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { DEMO_TODAY } from '../core/demo/larder';
import { toBatches, toHistory, toSources } from './recording';
import { type Settings, test } from './window';

interface Picture {
  readonly name: string;
  readonly seed: Settings['seed'];
  /** The day it is; without one, that of the other tests. */
  readonly now?: string;
  /** From the start to what is to be seen. */
  readonly open: (page: Page) => Promise<void>;
}

async function openBatch(page: Page, name: RegExp): Promise<void> {
  await toBatches(page);
  await page.getByRole('button', { name }).click();
  await page.getByRole('region').first().waitFor();
}

/** A part of the vigour screen, by its heading. */
const vigour = (
  name: string,
  heading: string | null,
  more: (page: Page) => Promise<void> = async () => {},
): Picture => ({
  name,
  seed: 'demo',
  now: `${DEMO_TODAY}T10:00:00+01:00`,
  open: async (page) => {
    await page.getByRole('button', { name: 'Vigour' }).click();
    await page.getByRole('heading', { name: 'What to seed from next' }).waitFor();
    await page.getByText(/^Over many lines a fresh start pays/).waitFor();
    if (heading) await page.getByRole('heading', { name: heading }).evaluate((one) => one.scrollIntoView());
    await more(page);
  },
});

/** Add a line here for another picture. */
const PICTURES: readonly Picture[] = [
  {
    name: 'start',
    seed: 'none',
    open: async (page) => void (await page.getByRole('button').first().waitFor()),
  },
  {
    name: 'family',
    seed: 'demo',
    open: async (page) =>
      void (await page
        .getByRole('treeitem', { name: /advised as the next seed/ })
        .first()
        .waitFor()),
  },
  {
    name: 'family-pane',
    seed: 'demo',
    open: async (page) => {
      await page.getByRole('treeitem', { name: /^22 Apr b/ }).click();
      await page.getByRole('heading', { name: 'What seeded it' }).waitFor();
    },
  },
  {
    name: 'family-calendar',
    seed: 'demo',
    open: async (page) => {
      await page.getByRole('button', { name: 'Calendar' }).click();
      await page.locator('.month-line').first().waitFor();
    },
  },
  vigour('vigour', null),
  vigour('vigour-next', 'What to seed from next'),
  vigour('vigour-restart', 'When a fresh start pays'),
  vigour('vigour-worked', null, async (page) => {
    await page.getByRole('button', { name: 'How this was worked out' }).click();
  }),
  vigour('vigour-batch', null, async (page) => {
    await page.getByRole('button', { name: /^14 Dec 2025/ }).click();
    await page
      .getByRole('region', { name: /^Batch of/ })
      .getByRole('button', { name: /14 Dec c/ })
      .click();
    await page.getByRole('heading', { name: 'What was seen' }).waitFor();
    await page
      .getByRole('region', { name: /^Batch of/ })
      .evaluate((one) => one.scrollIntoView({ block: 'end' }));
  }),
  {
    name: 'notes',
    seed: 'none',
    open: async (page) => {
      await page.getByRole('button', { name: 'Bring in a spreadsheet' }).click();
      const notes = join(import.meta.dirname, '../tests/notes/kitchen-notes.csv');
      await page.getByLabel('Choose a file').setInputFiles(notes);
      await page.getByRole('button', { name: 'Bring in 44 rows' }).waitFor();
    },
  },
  {
    name: 'new-batch',
    seed: 'demo',
    open: async (page) => {
      await toBatches(page);
      await page.keyboard.press('r');
      await page.getByRole('combobox', { name: 'Seeded from' }).fill('apr');
      await page.getByRole('option').first().waitFor();
    },
  },
  {
    name: 'outcome',
    seed: 'demo',
    open: async (page) => {
      await toBatches(page);
      await page.getByRole('button', { name: /^22 Apr/ }).click();
      await page.getByRole('button', { name: 'Correct outcome' }).first().click();
      await page.getByText('At take-out, before tasting').scrollIntoViewIfNeeded();
    },
  },
  { name: 'batch-spoiled', seed: 'demo', open: (page) => openBatch(page, /^1 Apr/) },
  { name: 'batch-on-hold', seed: 'demo', open: (page) => openBatch(page, /^8 Apr/) },
  { name: 'batch-cubes', seed: 'demo', open: (page) => openBatch(page, /^11 Mar/) },
  {
    name: 'batch-add-jar',
    seed: 'demo',
    open: async (page) => {
      await openBatch(page, /^11 Mar/);
      await page.getByRole('button', { name: 'Add a jar' }).click();
    },
  },
  {
    name: 'portion-as-seed',
    seed: 'demo',
    open: async (page) => {
      await toBatches(page);
      await page.keyboard.press('n');
      await page.getByRole('combobox', { name: 'Seeded from' }).fill('30 nov');
      await page
        .getByRole('option', { name: /freezer cubes/ })
        .first()
        .waitFor();
    },
  },
  {
    name: 'history',
    seed: 'demo',
    open: async (page) => {
      await toHistory(page);
      await page.getByText('What changed').nth(1).click();
      await page.getByText('What changed').nth(2).click();
    },
  },
  {
    name: 'preferences',
    seed: 'demo',
    open: async (page) => {
      await page.getByRole('button', { name: 'Preferences' }).click();
    },
  },
  {
    name: 'sources',
    seed: 'demo',
    open: async (page) => {
      await toSources(page);
      await page.getByRole('heading', { name: 'Blue Tin' }).waitFor();
    },
  },
];

for (const { name, seed, now, open } of PICTURES) {
  for (const colorScheme of ['light', 'dark'] as const) {
    for (const width of [800, 1600]) {
      test.describe(`${name}, ${colorScheme}, ${width}`, () => {
        test.use({ seed, colorScheme, size: { width, height: 900 }, ...(now ? { now } : {}) });
        test('picture', async ({ page }) => {
          await open(page);
          await page.mouse.move(1, 1); // nothing pointed at
          await page.evaluate(() => document.fonts.ready);
          const path = join(import.meta.dirname, 'screenshots', `${name}-${colorScheme}-${width}.png`);
          await page.screenshot({ path, animations: 'disabled' });
        });
      });
    }
  }
}
