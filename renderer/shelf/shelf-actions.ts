// The shelf's keys, for the table of actions. Walking is handled by the boards themselves; it is listed here for the help.
import type { Action } from '../state/action';

export const shelfActions: readonly Action[] = [
  {
    id: 'shelf walk',
    label: 'Go along the shelf, in the order of eating',
    keys: ['arrowleft', 'arrowright'],
    where: 'shelf',
  },
  { id: 'shelf ends', label: 'To its first or last', keys: ['home', 'end'], where: 'shelf' },
  { id: 'shelf verbs', label: 'To what can be done with it', keys: ['enter'], where: 'shelf' },
];
