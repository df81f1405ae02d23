// Whether some of a jar or a portion is still kept, by the last word on it.
import { lastWord } from '../../../core/ledger/whereabouts';
import type { Row as FactRow } from '../facts/tables';
import { dayOf } from '../facts/day-of-row';

export type Moved = Pick<FactRow<'movement'>, 'kind' | 'day' | 'at' | 'amount' | 'pieces'>;

export interface Whereabouts {
  /** Null where nobody said. */
  readonly onShelf: boolean | null;
  readonly goneOn: string | null;
}

export const wordOn = <T extends Moved>(moved: readonly T[]) =>
  lastWord(moved.map((row) => ({ ...row, row, day: dayOf(row) })));

export function whereabouts(moved: readonly Moved[]): Whereabouts {
  const { ended, there } = wordOn(moved);
  if (ended) return { onShelf: false, goneOn: ended.day };
  return { onShelf: there ? true : null, goneOn: null };
}
