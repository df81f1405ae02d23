// Which of the forms on the screen of sources is open.
import type { Source } from '../../core/ledger/records';

export type Editing =
  | { readonly kind: 'source'; readonly id: string | null }
  | { readonly kind: 'package'; readonly id: string | null; readonly of: string; readonly name: string };

export interface Forms {
  readonly editing: Editing | null;
  readonly onEdit: (editing: Editing) => void;
  readonly onDone: () => void;
  readonly sources: readonly Source[];
}
