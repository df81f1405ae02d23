// When a backup is due by itself: asked once the window has settled, and then each hour for as long as the ledger is open.

/** After the window has settled: the copy holds up calls for a moment. */
const FIRST_AFTER_MS = 60_000;
/** How often is asked whether a day has passed: a timer of a day would miss sleep and a clock that was set. */
const EVERY_MS = 3_600_000;

/**
 * @param backUp makes a backup where one is due
 * @param after starts a timer; answers how to end it
 * @returns ends it
 */
export function watchBackups(
  backUp: () => void,
  after: (ms: number, work: () => void) => () => void,
): () => void {
  let end = after(FIRST_AFTER_MS, again);
  function again(): void {
    end = after(EVERY_MS, again);
    backUp();
  }
  return () => end();
}
