// The batch screen's keys, for the table of actions.
import { go } from '../state/store';
import type { Action } from '../state/action';

export const batchActions: readonly Action[] = [
  { id: 'batch new', label: 'New batch', keys: ['n'], where: 'batch', run: () => go('batch', 'new') },
  {
    id: 'batch repeat',
    label: 'Repeat the last batch',
    keys: ['r'],
    where: 'batch',
    run: () => go('batch', 'repeat'),
  },
  {
    id: 'batch remember',
    label: 'Remember earlier jars',
    keys: ['m'],
    where: 'batch',
    run: () => go('batch', 'remember'),
  },
  { id: 'batch record', label: 'Record what is typed', keys: ['ctrl+enter'], where: 'batch' },
];
