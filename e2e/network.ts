// Every test in the window counts what would go out: requests of the page, and sockets, datagrams and names that the main process
// asks for. There is none; main/walls.ts refuses what a page asks for, and nothing in the main process asks.
import type { ElectronApplication, Page } from '@playwright/test';

/** What main/page-protocol.ts serves, and what a document holds itself. */
const OWN = /^(?:app|data|blob|devtools):/;

/** Said on the main process's stderr for each, so that it is a complaint of the test at hand. */
export const WENT_OUT = 'went out';

/** Counts from now on. @param complain told of each request of the page */
export async function watchNetwork(
  app: ElectronApplication,
  page: Page,
  complain: (text: string) => void,
): Promise<void> {
  page.on('request', (request) => {
    if (!OWN.test(request.url())) complain(`${WENT_OUT}: ${request.url()}`);
  });
  await app.evaluate((_electron, says) => {
    const [net, dgram, dns] = ['net', 'dgram', 'dns'].map(
      (name) => process.getBuiltinModule(name) as unknown as Record<string, { prototype: Record<string, unknown> }>,
    );
    const watch = (of: Record<string, unknown> | undefined, method: string, what: string): void => {
      const before = of?.[method] as ((...given: unknown[]) => unknown) | undefined;
      if (!of || !before) throw new Error(`no ${method} to watch`);
      of[method] = function (this: unknown, ...given: unknown[]) {
        process.stderr.write(`${says}: ${what}\n`);
        return before.apply(this, given);
      };
    };
    watch(net?.['Socket']?.prototype, 'connect', 'a socket was connected');
    watch(dgram?.['Socket']?.prototype, 'send', 'a datagram was sent');
    watch(dns as Record<string, unknown> | undefined, 'lookup', 'a name was looked up');
  }, WENT_OUT);
} // prettier-ignore
