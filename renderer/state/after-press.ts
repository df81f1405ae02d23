// What would move the page waits for a press that is under way: what moves between the pointer's going down and its coming
// up is not what was aimed at, and the press is missed. So waits what a field says when it is left, and what a read brings.

/** A pointer held longer than this drags or rests, and holds nothing up; nor does one whose coming up is never told. */
const LONGEST_PRESS_MS = 1000;

const waiting: (() => void)[] = [];
let down = false;
let timer = 0;

function overIn(ms: number): void {
  window.clearTimeout(timer);
  timer = window.setTimeout(() => {
    down = false;
    for (const act of waiting.splice(0)) act();
  }, ms);
}

function begin(): void {
  down = true;
  overIn(LONGEST_PRESS_MS);
}
// The click follows the pointer's coming up.
const end = (): void => overIn(0);

/** Hears of every press, before anything else does. */
export function watchPresses(): void {
  window.addEventListener('pointerdown', begin, true);
  window.addEventListener('pointerup', end, true);
  window.addEventListener('pointercancel', end, true);
}

/** Does it at once, or if the pointer is down, once it has come up and what it pressed has been told. */
export function afterPress(act: () => void): void {
  if (down) waiting.push(act);
  else act();
}

/** Resolves once no press is under way. */
export const pressOver = (): Promise<void> => new Promise(afterPress);
