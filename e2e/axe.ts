// Runs axe-core in the page as it stands. The script is put in through the inspector, so the page's own policy holds.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from '@playwright/test';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface AxeResult {
  readonly violations: readonly {
    readonly id: string;
    readonly help: string;
    readonly nodes: readonly { readonly html: string }[];
  }[];
}

/** What axe finds against WCAG 2.2 A and AA on the screen that is shown: one line for each element. */
export async function complaintsOfAxe(page: Page): Promise<string[]> {
  await page.evaluate(source);
  const result = (await page.evaluate(
    `axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] })`,
  )) as AxeResult;
  return result.violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ html }) => `${id}: ${help}: ${html.slice(0, 160)}`),
  );
}
