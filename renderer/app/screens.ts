// The screens there are, in the order of the navigation. A screen that is not here does not exist yet.
import type { ComponentType } from 'react';
import { batchActions } from '../batch/batch-actions';
import { BatchScreen } from '../batch/batch-screen';
import { CostsScreen } from '../costs/costs-screen';
import { familyActions } from '../family/family-actions';
import { Family } from '../family/family-screen';
import { BringIn } from '../notes/notes';
import { HoldScreen } from '../hold/hold-screen';
import { HistoryScreen } from '../history/history-screen';
import { shelfActions } from '../shelf/shelf-actions';
import { ShelfScreen } from '../shelf/shelf-screen';
import { SourcesScreen } from '../sources/sources-screen';
import { TrialsScreen } from '../trials/trials-screen';
import { VigourScreen } from '../vigour/vigour-screen';
import type { Action } from '../state/action';

export interface Screen {
  readonly id: string;
  readonly title: string;
  /** Chords that go there from anywhere, as core/actions writes them: "alt+1". */
  readonly keys: readonly string[];
  readonly component: ComponentType;
  /** The screen that leads to it, where the navigation does not. */
  readonly within?: string;
  /** Its own entries for the table of keys. */
  readonly actions?: readonly Action[];
}

export const screens: readonly Screen[] = [
  { id: 'family', title: 'Family', keys: ['alt+1'], component: Family, actions: familyActions },
  { id: 'batch', title: 'Batch', keys: ['alt+2'], component: BatchScreen, actions: batchActions },
  { id: 'hold', title: 'Warmth', keys: ['alt+8'], component: HoldScreen },
  { id: 'shelf', title: 'Shelf', keys: ['alt+3'], component: ShelfScreen, actions: shelfActions },
  { id: 'vigour', title: 'Vigour', keys: ['alt+4'], component: VigourScreen },
  { id: 'trials', title: 'Trials', keys: ['alt+0'], component: TrialsScreen },
  { id: 'sources', title: 'Sources', keys: ['alt+5'], component: SourcesScreen },
  { id: 'history', title: 'History', keys: ['alt+6'], component: HistoryScreen },
  { id: 'notes', title: 'Bring in notes', keys: ['alt+7'], component: BringIn },
  { id: 'costs', title: 'Costs', keys: ['alt+9'], component: CostsScreen, within: 'sources' },
];
