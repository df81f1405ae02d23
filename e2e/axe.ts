// Runs axe-core in the page as it stands. The script is put in through the inspector, so the page's own policy holds.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type * as Axe from 'axe-core';
import type { Page } from '@playwright/test';

declare const axe: typeof Axe;

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
/** WCAG 2.2 A and AA, and what axe thinks well of. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** @param only of those rules the ones of a category; left out: all */
async function complaints(page: Page, only?: 'cat.color'): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(source);
  return page.evaluate(
    async ([tags, category]) => {
      const others = axe.getRules(tags).filter((rule) => category && !rule.tags.includes(category));
      // Nor does anybody read "2026-04-22T18:30:00+01:00".
      const stored = document.body.innerText.match(/\d{4}-\d\d-\d\dT\d\d\S*/g) ?? [];
      const { violations } = await axe.run(document, {
        runOnly: tags,
        rules: Object.fromEntries(others.map(({ ruleId }) => [ruleId, { enabled: false }])),
        // What holds is not looked up again for a report: only what does not is told.
        resultTypes: ['violations'],
      });
      return [
        ...stored.map((moment) => `a moment is shown as it is stored: ${moment}`),
        ...violations.flatMap(({ id, help, nodes }) =>
          nodes.map(({ html }) => `${id}: ${help}: ${html.slice(0, 160)}`),
        ),
      ];
    },
    [TAGS, only] as const,
  );
}

/** What axe finds on the screen that is shown: one line for each element. */
export const complaintsOfAxe = (page: Page): Promise<string[]> => complaints(page);

/**
 * The same by day, and by night what is about colours: nothing else of a page changes with them. Leaves the page as by day.
 */
export async function complaintsByDayAndNight(page: Page): Promise<string[]> {
  const found = await complaints(page);
  await page.emulateMedia({ colorScheme: 'dark' });
  await settledColours(page);
  found.push(...(await complaints(page, 'cat.color')).map((line) => `at night: ${line}`));
  await page.emulateMedia({ colorScheme: 'light' });
  await settledColours(page);
  return found;
}

/** A colour on its way to another one is neither. */
const settledColours = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    const moving = document.getAnimations().filter((one) => one instanceof CSSTransition);
    await Promise.allSettled(moving.map((one) => one.finished));
  });
