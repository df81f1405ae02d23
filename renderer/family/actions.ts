// The family screen's keys, for the table of actions. The drawing itself handles them.
import type { Action } from '../app/actions';

const here = (id: string, label: string, ...keys: string[]): Action => ({
  id: `family ${id}`,
  label,
  keys,
  where: 'family',
});

export const familyActions: readonly Action[] = [
  here('seed', 'To what seeded it', 'arrowleft'),
  here('descendant', 'To what it seeded', 'arrowright'),
  here('sibling', 'To the jar above or below', 'arrowup', 'arrowdown'),
  here('oldest', 'To the first jar', 'home'),
  here('newest', 'To the newest jar', 'end'),
  here('open', 'Show all about the jar', 'enter'),
  here('close', 'Close the pane', 'escape'),
  here('find', 'Find a jar by its label', '/', 'ctrl+f'),
  here('fit', 'Fit the whole family', '0'),
  here('in', 'Closer', '+'),
  here('out', 'Farther', '-'),
  here('pan', 'Move the drawing', 'shift+arrowleft', 'shift+arrowright', 'shift+arrowup', 'shift+arrowdown'),
];
