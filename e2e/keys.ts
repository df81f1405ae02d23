// A keeper's hands on the keyboard: every press counts, a typed character too.
import type { Page } from '@playwright/test';

/** Types and counts. Nothing is done with the pointer. */
export class Keys {
  count = 0;
  readonly #page: Page;
  constructor(page: Page) {
    this.#page = page;
  }

  async press(...keys: readonly string[]): Promise<void> {
    for (const key of keys) {
      this.count += 1;
      await this.#page.keyboard.press(key);
    }
  }

  async type(text: string): Promise<void> {
    for (const character of text) {
      this.count += 1;
      await this.#page.keyboard.type(character);
    }
  }
}

/** The accessible name of what has the keyboard. */
export function focused(page: Page): Promise<string> {
  return page.evaluate(() => {
    const element = document.activeElement;
    const labels = element instanceof HTMLInputElement ? element.labels : null;
    return (
      element?.getAttribute('aria-label') ??
      labels?.[0]?.textContent ??
      element?.textContent ??
      ''
    ).trim();
  });
}
