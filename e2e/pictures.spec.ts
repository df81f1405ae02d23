// Not a test of anything: makes the pictures of `npm run screenshots`, each light and dark, in windows of several sizes;
// and of kitchens of several sizes every screen, those but the family's into test-results/pictures.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { DEMO_NOW, DEMO_TODAY } from '../core/demo/invented-larder';
import { openOutcome, toBatches, toHistory, toSources } from './recording';
import { twoYears } from './two-years';
import { type Settings, test } from './window';

/** Ledgers of so many jars, each made when a picture first asks for it. */
const made = new Map<number, string>();
const kitchenOf = (jars: number): Settings['seed'] => {
  if (jars === 0) return 'empty';
  const file = made.get(jars) ?? twoYears(jars).file;
  made.set(jars, file);
  return file;
};

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

/** The invented trial of 8 Feb. */
async function openTrial(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Trials', exact: true }).click();
  await page.getByRole('button', { name: /^8 Feb/ }).click();
  await page.getByRole('list', { name: 'Its jars' }).waitFor();
}

/** Another tasting of it. Its jars are eaten up by now; that is no matter for a picture. */
async function planTasting(page: Page): Promise<void> {
  await openTrial(page);
  await page.getByRole('button', { name: 'Plan another tasting' }).click();
  for (const letter of ['a', 'c', 'd']) await page.getByLabel(new RegExp(`^8 Feb ${letter},`)).check();
  await page.getByText(/can tell/).waitFor();
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
    await page.getByText(/^Over many lines /).waitFor();
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
    open: async (page) => void (await page.getByText('next seed').first().waitFor()),
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
    name: 'hold',
    seed: 'demo',
    now: DEMO_NOW,
    open: async (page) => {
      await page.keyboard.press('Alt+8');
      await page.getByRole('img', { name: /^Readings of 2 May/ }).waitFor();
    },
  },
  {
    name: 'shelf',
    seed: 'demo',
    now: `${DEMO_TODAY}T10:00:00+01:00`,
    open: async (page) => {
      await page.keyboard.press('Alt+3');
      await page.getByRole('region', { name: 'Fridge' }).waitFor();
    },
  },
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
    name: 'batch-plan',
    seed: 'demo',
    open: async (page) => {
      await toBatches(page);
      await page.keyboard.press('r');
      await page.getByRole('button', { name: 'Plan it' }).click();
      await page.getByRole('region', { name: 'The plan' }).waitFor();
    },
  },
  {
    name: 'making-card',
    seed: 'demo',
    open: async (page) => {
      await toBatches(page);
      await page.keyboard.press('r');
      await page.getByRole('button', { name: 'Keep it as a plan' }).click();
      await page.getByRole('button', { name: 'Making card' }).click();
      await page.getByRole('dialog', { name: /^Making card/ }).waitFor();
    },
  },
  {
    name: 'outcome',
    seed: 'demo',
    open: async (page) => {
      await toBatches(page);
      await page.getByRole('button', { name: /^22 Apr/ }).click();
      await openOutcome(page.getByRole('region', { name: '22 Apr a', exact: true }));
      await page.getByText('At take-out, before tasting').scrollIntoViewIfNeeded();
    },
  },
  { name: 'batch-spoiled', seed: 'demo', open: (page) => openBatch(page, /^1 Apr/) },
  { name: 'batch-set-aside', seed: 'demo', open: (page) => openBatch(page, /^8 Apr/) },
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
    name: 'help',
    seed: 'demo',
    open: async (page) => {
      await page.getByRole('button', { name: 'Help', exact: true }).click();
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
  {
    name: 'trials',
    seed: 'demo',
    open: async (page) => {
      await page.getByRole('button', { name: 'Trials', exact: true }).click();
      await page.getByRole('heading', { name: 'Trials' }).waitFor();
    },
  },
  {
    name: 'trial',
    seed: 'demo',
    open: openTrial,
  },
  {
    name: 'tasting-planned',
    seed: 'demo',
    open: planTasting,
  },
  {
    name: 'tasting-bowl',
    seed: 'demo',
    open: async (page) => {
      await planTasting(page);
      await page.getByRole('button', { name: 'Draw the codes' }).click();
      await page.getByRole('button', { name: 'All is poured: hide this' }).click();
      await page.getByRole('button', { name: 'Begin', exact: true }).click();
      await page.getByRole('heading', { name: /^Bowl 1 of/ }).waitFor();
    },
  },
  {
    name: 'tasting-result',
    seed: 'demo',
    open: async (page) => {
      await openTrial(page);
      await page.getByRole('button', { name: /^Look at it/ }).click();
      await page.getByRole('heading', { name: 'Which jar was which' }).waitFor();
    },
  },
  {
    name: 'costs',
    seed: 'demo',
    open: async (page) => {
      await toSources(page);
      await page.getByRole('button', { name: 'All costs' }).click();
    },
  },
];

const SMALL = { width: 800, height: 600 };
const USUAL = { width: 1280, height: 860 };
const WIDE = { width: 1600, height: 900 };
const TALL = { width: 800, height: 900 };

/** Of the home screen also as it is in the smallest window, and in the usual one. */
const sizesOf = (name: string): readonly Settings['size'][] =>
  name.startsWith('family') || name === 'help' ? [SMALL, USUAL, WIDE] : [TALL, WIDE];

/** Takes what is to be seen, light and dark. */
async function take(page: Page, name: string, width: number, folder: string): Promise<void> {
  await page.mouse.move(1, 1); // nothing pointed at
  await page.evaluate(() => document.fonts.ready);
  await page.locator('.spoken[aria-busy]').waitFor({ state: 'detached' });
  await page.waitForTimeout(400); // what is read after the first drawing stands in it
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    await page.waitForTimeout(100); // canvases are drawn anew
    const path = join(import.meta.dirname, folder, `${name}-${colorScheme}-${width}.png`);
    await page.screenshot({ path, animations: 'disabled' });
  }
}

for (const { name, seed, now, open } of PICTURES) {
  for (const size of sizesOf(name)) {
    test.describe(`${name}, ${size.width}`, () => {
      test.use({ seed, size, ...(now ? { now } : {}) });
      test('picture', async ({ page }) => {
        await open(page);
        await take(page, name, size.width, 'screenshots');
      });
    });
  }
}

/** Every screen, from the keys of the navigation. */
const SCREENS = [
  'Family',
  'Batch',
  'Warmth',
  'Shelf',
  'Vigour',
  'Trials',
  'Sources',
  'History',
  'Bring in notes',
];

/** Those of the family are kept; the others are only to be looked at. */
const folderOf = (screen: string): string =>
  screen === 'Family' ? 'screenshots' : '../test-results/pictures';

/* oxlint-disable no-empty-pattern -- playwright reads from the pattern which fixtures are asked for: none */
for (const jars of [0, 3, 60, 325]) {
  for (const size of [SMALL, USUAL, WIDE]) {
    test.describe(`kitchen of ${jars}, ${size.width}`, () => {
      test.use({ seed: async ({}, use) => use(kitchenOf(jars)), size });
      test('pictures of every screen', async ({ page }) => {
        for (const screen of SCREENS) {
          const name = `${screen.toLowerCase().replaceAll(' ', '-')}-of-${jars}`;
          await page.getByRole('button', { name: screen, exact: true }).click();
          await page.getByText('Opening…').waitFor({ state: 'detached' });
          await take(page, name, size.width, folderOf(screen));
        }
      });
    });
  }
}

// The same in lettering twice as large, and in the system's own colours. The window takes these pictures itself: of a
// magnified page the driver cuts a part.
test.describe('kitchen of 60, seen otherwise', () => {
  test.use({ seed: async ({}, use) => use(kitchenOf(60)), size: { width: 1600, height: 1000 } });
  for (const otherwise of ['twice as large', 'own colours', 'own colours, dark'] as const)
    test(otherwise, async ({ app, page }) => {
      await page.emulateMedia({
        forcedColors: otherwise.startsWith('own') ? 'active' : 'none',
        colorScheme: otherwise.endsWith('dark') ? 'dark' : 'light',
      });
      for (const screen of SCREENS) {
        await page.getByRole('button', { name: screen, exact: true }).click();
        await page.getByText('Opening…').waitFor({ state: 'detached' });
        const picture = await app.evaluate(
          async ({ BrowserWindow }, zoom) => {
            const [window] = BrowserWindow.getAllWindows();
            window?.webContents.setZoomFactor(zoom);
            await new Promise((done) => setTimeout(done, 900));
            return (await window?.webContents.capturePage())?.toPNG().toString('base64') ?? '';
          },
          otherwise === 'twice as large' ? 2 : 1,
        );
        const name = `${screen} ${otherwise}`.toLowerCase().replaceAll(/\W+/g, '-');
        const folder = join(import.meta.dirname, '../test-results/pictures');
        mkdirSync(folder, { recursive: true });
        writeFileSync(join(folder, `${name}.png`), Buffer.from(picture, 'base64'));
      }
    });
});
