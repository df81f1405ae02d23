// Reads that come late, as on a busy machine: what then moves under the keeper's hand, and waiting until none is under way.
// With JARLINE_LATE=MS each read's reply waits so long, each kind of read a little differently, so that they come in any order.
import { appendFileSync } from 'node:fs';
import type { ElectronApplication, Page } from '@playwright/test';
import { READS, type ReadName } from '../core/call-names';

/** How late reads are, or 0. */
export const LATE_MS = Number(process.env['JARLINE_LATE'] ?? 0);

type Handler = (...all: unknown[]) => Promise<unknown>;
/** Of the main process: electron's own list of what answers the page, and what is kept of it here. */
interface Answering {
  readonly _invokeHandlers: Map<string, Handler>;
}
interface Kept {
  underWay: number;
  letGo: () => void;
}

/** Counts the reads under way, and makes them late where that is asked for; once for a running program. */
export async function watchReads(app: ElectronApplication): Promise<void> {
  await app.evaluate(
    ({ ipcMain }, { reads, ms }) => {
      const { _invokeHandlers: handlers } = ipcMain as unknown as Answering;
      const kept = globalThis as unknown as Kept;
      kept.underWay = 0;
      for (const [at, name] of reads.entries()) {
        const answers = handlers.get(name)!;
        handlers.set(name, async (...all) => {
          kept.underWay += 1;
          try {
            const reply = await answers(...all);
            if (ms > 0) await new Promise((done) => setTimeout(done, ms * (1 + (at % 3) / 4)));
            return reply;
          } finally {
            kept.underWay -= 1;
          }
        });
      }
    },
    { reads: READS, ms: LATE_MS },
  );
}

/** How many of the page's reads have no answer yet. */
export const readsUnderWay = (app: ElectronApplication): Promise<number> =>
  app.evaluate(() => (globalThis as unknown as Kept).underWay);

/** Keeps back what one kind of read answers. @returns lets go of it, and of what is asked from then on */
export async function holdBack(app: ElectronApplication, name: ReadName): Promise<() => Promise<void>> {
  await app.evaluate(({ ipcMain }, held) => {
    const { _invokeHandlers: handlers } = ipcMain as unknown as Answering;
    const answers = handlers.get(held)!;
    const letGo = new Promise<void>((done) => {
      (globalThis as unknown as Kept).letGo = done;
    });
    handlers.set(held, async (...all) => {
      const reply = await answers(...all);
      await letGo;
      return reply;
    });
    void letGo.then(() => handlers.set(held, answers));
  }, name);
  return () => app.evaluate(() => (globalThis as unknown as Kept).letGo());
}

/** From now on the page keeps what moved by itself: a button, a link or a field that stays, with no press or key just before. */
export async function watchMoves(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const PRESSED = 'button, a[href], input, select, textarea, summary, [role=option], [tabindex="0"]';
    const moved: string[] = [];
    Object.assign(window, { moved });
    const inWords = (node: Element): string =>
      `${node.tagName.toLowerCase()} “${(node.getAttribute('aria-label') ?? node.textContent).trim().slice(0, 60)}”`;
    interface Shift extends PerformanceEntry {
      readonly hadRecentInput: boolean;
      readonly sources: readonly { node: Node | null; previousRect: DOMRect; currentRect: DOMRect }[];
    }
    new PerformanceObserver((list) => {
      for (const shift of list.getEntries() as Shift[]) {
        for (const { node, previousRect: from, currentRect: to } of shift.hadRecentInput
          ? []
          : shift.sources) {
          const held =
            node instanceof Element ? (node.matches(PRESSED) ? node : node.querySelector(PRESSED)) : null;
          if (held === null || !(node instanceof Element)) continue;
          const by = `${Math.round(to.x - from.x)} right, ${Math.round(to.y - from.y)} down`;
          moved.push(
            `[${document.querySelector('h1')?.textContent ?? ''}] ${inWords(held)} in ${inWords(node)}: ${by}`,
          );
        }
      }
    }).observe({ type: 'layout-shift', buffered: true });
  });
}

/** Adds to test-results/moved.txt what moved since the page was loaded anew: a window's very first page is not watched. */
export async function keepMoves(page: Page, title: string): Promise<void> {
  const moved = await page.evaluate(() => (window as unknown as { moved?: string[] }).moved ?? []);
  for (const one of moved) appendFileSync('test-results/moved.txt', `${title}: ${one}\n`);
}
