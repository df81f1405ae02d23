// The family screen's keys, for the table of actions. Walking inside the drawing is handled there; it is listed here for
// the help.
import type { Action } from '../state/action';
import type { Step } from './kin';

/** What part of the whole family is in the window: from 0, its left and upper end, to 1. */
export interface Seen {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

let seen: Seen = { left: 0, right: 1, top: 0, bottom: 1 };
let watcher: (seen: Seen) => void = () => undefined;

/** What the mounted screen does on a key; filled in by its parts while they are shown. */
export const familyControl = {
  fit: (): void => undefined,
  closer: (): void => undefined,
  farther: (): void => undefined,
  pan: (_dx: number, _dy: number): void => undefined,
  /** Puts a place of the whole family (each from 0 to 1) into the middle. */
  centre: (_x: number, _y: number): void => undefined,
  /** From the keyboard's jar to another, whether or not the drawing has the focus. */
  step: (_to: Step): void => undefined,
  /** Shows all about the keyboard's jar. */
  open: (): void => undefined,
  /** The stage tells what is in the window, at most once a frame; the map watches. Neither renders for it. */
  tell: (now: Seen): void => {
    seen = now;
    watcher(now);
  },
  watch: (watch: (seen: Seen) => void): (() => void) => {
    watcher = watch;
    watch(seen);
    return () => {
      if (watcher === watch) watcher = () => undefined;
    };
  },
  find: (): void => undefined,
  close: (): void => undefined,
};

const STEP = 120;
const where = 'family';
const pan = (id: string, label: string, key: string, dx: number, dy: number): Action => ({
  id: `family pan ${id}`,
  label,
  keys: [`shift+${key}`],
  where,
  run: () => familyControl.pan(dx, dy),
});

export const familyActions: readonly Action[] = [
  { id: 'family seed', label: 'To what seeded it', keys: ['arrowleft'], where },
  { id: 'family descendant', label: 'To what it seeded', keys: ['arrowright'], where },
  { id: 'family beside', label: 'To the jar above or below', keys: ['arrowup', 'arrowdown'], where },
  {
    id: 'family first',
    label: 'To the first jar',
    keys: ['home'],
    where,
    run: () => familyControl.step('first'),
  },
  {
    id: 'family newest',
    label: 'To the newest jar',
    keys: ['end'],
    where,
    run: () => familyControl.step('newest'),
  },
  {
    id: 'family open',
    label: 'Show all about the jar',
    keys: ['enter', 'space'],
    where,
    run: () => familyControl.open(),
  },
  {
    id: 'family close',
    label: 'Close what is open',
    keys: ['escape'],
    where,
    run: () => familyControl.close(),
  },
  {
    id: 'family find',
    label: 'Find a jar by its label',
    keys: ['/', 'ctrl+f'],
    where,
    run: () => familyControl.find(),
  },
  { id: 'family fit', label: 'Fit the whole family', keys: ['0'], where, run: () => familyControl.fit() },
  { id: 'family in', label: 'Closer', keys: ['+', 'shift++'], where, run: () => familyControl.closer() },
  { id: 'family out', label: 'Farther', keys: ['-'], where, run: () => familyControl.farther() },
  pan('left', 'See what lies left', 'arrowleft', STEP, 0),
  pan('right', 'See what lies right', 'arrowright', -STEP, 0),
  pan('up', 'See what lies above', 'arrowup', 0, STEP),
  pan('down', 'See what lies below', 'arrowdown', 0, -STEP),
];
