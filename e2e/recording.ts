// What the tests of recording begin with: batches recorded through the same calls as the window's.
import { expect, type Locator, type Page } from '@playwright/test';
import type { Input } from '../core/contract';

type Entry = Input<'batch.record'>;
const jar = (letter: string, addition: string | null): Entry['jars'][number] => ({
  letter,
  vessel: 'quart jar',
  finalVolume: { value: 946, unit: 'mL', typed: '946 ml' },
  finalVolumeKnown: 'filled to the vessel',
  milk: 'whole milk',
  milkAmount: { value: 946.352946, unit: 'mL', typed: '1 qt' },
  milkPackage: null,
  countPerMl: null,
  onShelf: true,
  goneOn: null,
  note: null,
  state: 'made',
  hold: 0,
  additions:
    addition === null
      ? []
      : [
          {
            name: addition,
            planned: { value: 29.5735295625, unit: 'mL', typed: '2 tbsp' },
            actual: null,
            package: null,
          },
        ],
  seedings: [],
  outcome: null,
});

/**
 * Records jars of one day, seeded from a jar or from a product made on the way. Replies their ids.
 * @param additions what is stirred into each jar (null: nothing); left out, potato starch into all
 */
export async function recordBatch(
  page: Page,
  madeOn: string,
  letters: readonly string[],
  seed: { readonly jar: string } | { readonly product: string },
  hold: Partial<Entry['holds'][number]> = {},
  additions: readonly (string | null)[] = letters.map(() => 'potato starch'),
): Promise<{ readonly batch: string; readonly jars: readonly string[] }> {
  const entry: Entry = {
    madeOn,
    word: null,
    note: null,
    holds: [
      {
        startedAt: null,
        endedAt: null,
        hours: 36,
        planned: { value: 38, unit: '°C', typed: '38 °C' },
        probe: 'bath',
        readings: [],
        note: null,
        ...hold,
      },
    ],
    jars: letters.map((letter, at) => jar(letter, additions[at] ?? null)),
    sameLabelMeant: false,
    draft: null,
  };
  return page.evaluate(
    async ([given, from]) => {
      const { call } = window.jarline;
      let source: string | null = null;
      if ('product' in from) {
        const saved = await call['source.save']({
          source: {
            id: null,
            name: from.product,
            form: 'capsules',
            strains: [],
            blendTotalPerPiece: null,
            guaranteed: null,
            receivedFrom: null,
            knownGenerations: null,
            note: null,
          },
        });
        if (!saved.ok) throw new Error(JSON.stringify(saved.error));
        source = saved.value.id;
      }
      const seeding = {
        fromJar: 'jar' in from ? from.jar : null,
        portion: null,
        part: null,
        source,
        package: null,
        amount:
          source === null
            ? { value: 44.36, unit: 'mL' as const, typed: '3 tbsp' }
            : { value: 10, unit: 'pieces' as const, typed: '10' },
      };
      const recorded = await call['batch.record']({
        ...given,
        jars: given.jars.map((one) => ({ ...one, seedings: [seeding] })),
      });
      if (!recorded.ok) throw new Error(JSON.stringify(recorded.error));
      return recorded.value;
    },
    [entry, seed] as const,
  );
}

/** Goes to a screen by its key, once the shell is there to hear it. */
export async function toScreen(page: Page, key: string, title: string): Promise<void> {
  const button = page.getByRole('button', { name: title, exact: true });
  await expect(button).toBeVisible();
  await page.keyboard.press(key);
  await expect(button).toHaveAttribute('aria-current', 'page');
}

/** Goes to the batch screen. */
export const toBatches = (page: Page): Promise<void> => toScreen(page, 'Alt+2', 'Batch');
/** Goes to the sources. */
export const toSources = (page: Page): Promise<void> => toScreen(page, 'Alt+5', 'Sources');
/** Goes to the history. */
export const toHistory = (page: Page): Promise<void> => toScreen(page, 'Alt+6', 'History');

/** A jar's More, which is there while no form is open in it. */
export const moreOf = (jar: Locator): Locator => jar.locator('summary', { hasText: /^More/ });
/** Presses what stands under it. */
export async function underMore(jar: Locator, name: string | RegExp): Promise<void> {
  const more = jar.locator('details').filter({ hasText: /^More of/ });
  if ((await more.getAttribute('open')) === null) await moreOf(jar).click();
  await more.getByRole('button', { name }).click();
}
/** Opens all answers of one jar. */
export const openOutcome = (jar: Locator): Promise<void> => underMore(jar, /^(?:Record|Correct) outcome/);
