// Keys of every form: Enter moves to the next field, Ctrl+Enter records, Escape leaves it unless a field used it.
import type { KeyboardEvent } from 'react';

const TABBABLE =
  'input:not([disabled]), select:not([disabled]), textarea:not([disabled]), button:not([disabled]), summary, [tabindex="0"]';

/** What Tab would reach inside a form, in order; of a radio group only the one that is checked. */
function stops(form: HTMLElement): HTMLElement[] {
  return [...form.querySelectorAll<HTMLElement>(TABBABLE)].filter((element) => {
    if (element.tabIndex < 0 || !element.checkVisibility()) return false;
    if (!(element instanceof HTMLInputElement) || element.type !== 'radio') return true;
    const group = [...form.querySelectorAll<HTMLInputElement>('input[type="radio"]')].filter(
      (radio) => radio.name === element.name,
    );
    return element === (group.find((radio) => radio.checked) ?? group[0]);
  });
}

/**
 * Moves to the next stop after `from`, selecting what stands in it so that typing replaces it. Passes over what must
 * not be pressed by a hand that presses Enter again: taking away, and adding a row while the last one is empty.
 */
export function focusNext(form: HTMLElement, from: Element): void {
  const all = stops(form);
  const radios = from instanceof HTMLInputElement && from.type === 'radio' ? from.name : null;
  const at = all.findIndex(
    (element) =>
      element === from || (radios !== null && element instanceof HTMLInputElement && element.name === radios),
  );
  const next = all.slice(at + 1).find((element) => element.dataset['enter'] !== 'pass');
  next?.focus();
  if (next instanceof HTMLInputElement && next.type === 'text') next.select();
}

/**
 * What a form does with a key that no field used itself (a field that did has prevented its default).
 * @param leave on Escape, where the form can be left: what was typed is kept and stands there again
 */
export function formKeys(event: KeyboardEvent<HTMLElement>, record: () => void, leave?: () => void): void {
  if (event.key === 'Escape' && leave && !event.defaultPrevented && !event.nativeEvent.isComposing) {
    // Escape in a question asked over the form answers the question.
    if (event.target instanceof Element && event.target.closest('dialog') !== null) return;
    event.preventDefault();
    leave();
    return;
  }
  if (event.key !== 'Enter' || event.defaultPrevented || event.nativeEvent.isComposing) return;
  if (event.ctrlKey || event.metaKey) {
    event.preventDefault();
    record();
    return;
  }
  const from = event.target;
  if (!(from instanceof HTMLInputElement || from instanceof HTMLSelectElement)) return;
  event.preventDefault();
  focusNext(event.currentTarget, from);
}

/** Puts the keyboard on the first field of a form that has just opened. */
export function focusFirst(form: HTMLElement | null): void {
  if (form && !form.contains(document.activeElement)) stops(form)[0]?.focus();
}

/** Puts the keyboard on the first field that is wrong. Call after the problems are on the page. */
export function focusFirstProblem(form: HTMLElement | null): void {
  form?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
}
