// What a field says when it is left waits for the press that left it: words that appear between the pointer's going down and
// its coming up move the page under it, and what was pressed is missed.
let down = false;
window.addEventListener('pointerdown', () => (down = true), true);
for (const end of ['pointerup', 'pointercancel']) window.addEventListener(end, () => (down = false), true);

/** Does it once the pointer, if it is down, has come up and what it pressed has been told. */
export function afterPress(act: () => void): void {
  if (!down) return act();
  const later = (): void => {
    window.removeEventListener('pointerup', later, true);
    window.removeEventListener('pointercancel', later, true);
    // The click follows the pointer's coming up.
    setTimeout(act);
  };
  window.addEventListener('pointerup', later, true);
  window.addEventListener('pointercancel', later, true);
}
