// Notices that another day has begun: at midnight, after the machine slept, after its clock was set. No electron here.

/** How often the day is looked at (ms): a timer set to midnight would miss sleep and a clock that was set. */
const LOOK_EVERY_MS = 30_000;

export interface DayWatch {
  /** Looks at once: the machine has just woken up. */
  readonly look: () => void;
  readonly stop: () => void;
}

/**
 * @param today the civil day it is, YYYY-MM-DD
 * @param changed called once for each change of it
 * @param every starts a timer that repeats; answers how to end it
 */
export function watchDay(
  today: () => string,
  changed: () => void,
  every: (ms: number, work: () => void) => () => void,
): DayWatch {
  let known = today();
  const look = (): void => {
    const now = today();
    if (now === known) return;
    known = now;
    changed();
  };
  return { look, stop: every(LOOK_EVERY_MS, look) };
}
