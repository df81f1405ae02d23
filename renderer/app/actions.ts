// Everything the keyboard can do, in one table: it feeds the shortcuts, the help panel, the menu and the tests.
import { currentPlace, go, redo, undo } from '../state/store';
import type { Action } from '../state/action';
import { screens } from './screens';

/** Opens or closes the preferences; set by the shell. */
export const preferencesSwitch = { toggle: (): void => undefined };

/** Opens or closes the help; set by the shell. */
export const helpSwitch = { toggle: (): void => undefined };

const everywhere: readonly Action[] = [
  ...screens.map((screen) => ({
    id: `go ${screen.id}`,
    label: `Go to ${screen.title}`,
    keys: screen.keys,
    where: 'everywhere',
    run: () => go(screen.id),
  })),
  { id: 'undo', label: 'Undo', keys: ['ctrl+z'], where: 'everywhere', run: () => void undo() },
  {
    id: 'redo',
    label: 'Redo',
    keys: ['ctrl+shift+z', 'ctrl+y'],
    where: 'everywhere',
    run: () => void redo(),
  },
  {
    id: 'help',
    label: 'Help: the job, the words, the keys',
    keys: ['f1', 'shift+?'],
    where: 'everywhere',
    run: () => helpSwitch.toggle(),
  },
  {
    id: 'preferences',
    label: 'Preferences',
    keys: ['ctrl+,'],
    where: 'everywhere',
    run: () => preferencesSwitch.toggle(),
  },
];

const byScreen = (): readonly Action[] => screens.flatMap((screen) => screen.actions ?? []);

/** All actions: those that work everywhere, then each screen's own. */
export const actions = (): readonly Action[] => [...everywhere, ...byScreen()];

/** A key press as the table writes it: "ctrl+shift+z". The command key counts as ctrl. */
function chordOf(event: Pick<KeyboardEvent, 'key' | 'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey'>): string {
  const parts = [
    event.ctrlKey || event.metaKey ? 'ctrl' : '',
    event.altKey ? 'alt' : '',
    event.shiftKey ? 'shift' : '',
    event.key.toLowerCase(),
  ];
  return parts.filter(Boolean).join('+');
}

/** Whether keys pressed there are text. */
export const isTyping = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.matches('input, textarea, select, [contenteditable]');

/** Runs the action a key press stands for. Plain letters and undo stay with a field while someone types in it. */
function onKey(event: KeyboardEvent, screen: string): void {
  // Enter and the space bar press what the keyboard is on; of a screen they are only while it is on nothing.
  if (/^(Enter| )$/.test(event.key) && event.target !== document.body) return;
  if (event.defaultPrevented || document.querySelector('dialog[open]') !== null) return;
  const chord = chordOf(event);
  const action = actions().find(
    (one) => one.run && one.keys.includes(chord) && (one.where === 'everywhere' || one.where === screen),
  );
  if (!action?.run) return;
  const letterOrUndo = !/^(ctrl|alt)\+|^f\d/.test(chord) || ['undo', 'redo'].includes(action.id);
  if (letterOrUndo && isTyping(event.target)) return;
  event.preventDefault();
  action.run();
}

/**
 * Listens to the keyboard. From before the first drawing, not from an effect of it: a key pressed while the page opens
 * counts like any other.
 */
export function listenToKeys(): void {
  window.addEventListener('keydown', (event) => onKey(event, currentPlace().screen));
}

/** The keys of an action in print: "Ctrl Z". */
export function printKeys(chord: string): string {
  const names: Record<string, string> = { arrowleft: '←', arrowright: '→', arrowup: '↑', arrowdown: '↓' };
  return chord
    .split(/\+(?=.)/)
    .filter((part, at, all) => !(part === 'shift' && /^[?+]$/.test(all[at + 1] ?? '')))
    .map(
      (part) =>
        names[part] ?? (part.length > 1 ? part[0]?.toUpperCase() + part.slice(1) : part.toUpperCase()),
    )
    .join(' ');
}
