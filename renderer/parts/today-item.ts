// Where a thing that today asks for is done, and what the button that leads there says.
import type { Reply } from '../../core/contract';
import { go } from '../state/store';

export type TodayItem = Reply<'today.list'>['items'][number];

const ACTS: Partial<Record<TodayItem['kind'], string>> = { look: 'Look now', 'take-out': 'Take out' };

export const todayAct = ({ kind }: TodayItem): string => ACTS[kind] ?? 'Show';

/** Goes to where it is done. */
export function goToItem({ of }: TodayItem): void {
  if (of.kind === 'hold') go('hold', of.id);
  else if (of.kind === 'tool') go('hold', 'appliances');
  else if (of.kind === 'source') go('sources');
  else go('shelf', of.id);
}
