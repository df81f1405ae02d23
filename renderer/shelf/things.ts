// What stands on which board. Pure.
import type { Reply } from '../../core/contract';

export type Shelf = Reply<'shelf.get'>;
export type Thing = Shelf['items'][number];

export interface Board {
  readonly title: string;
  readonly kind: 'cold' | 'past' | 'aside' | 'frozen' | 'warm' | 'dried';
  readonly things: readonly Thing[];
}

const isAside = ({ group }: Thing): boolean => group === 'aside' || group === 'discard';

/** The boards that hold something, each in the order of eating. What is no food stands apart, wherever it is kept. */
export function boardsOf(items: readonly Thing[]): Board[] {
  const at = (place: Thing['place']): readonly Thing[] =>
    items.filter((thing) => thing.place === place && thing.group !== 'past' && !isAside(thing));
  const boards: Board[] = [
    { title: 'Fridge', kind: 'cold', things: at('fridge') },
    { title: 'Set aside: not food, not seed', kind: 'aside', things: items.filter(isAside) },
    {
      title: 'Past its day: look and smell, or discard',
      kind: 'past',
      things: items.filter(({ group }) => group === 'past'),
    },
    { title: 'Freezer', kind: 'frozen', things: at('freezer') },
    { title: 'In warmth', kind: 'warm', things: at('warmth') },
    { title: 'Dried', kind: 'dried', things: at('dried') },
  ];
  return boards.filter(({ things }) => things.length > 0);
}

/** All of them, in the order in which the boards are read: how the keyboard walks. */
export const inWalkingOrder = (boards: readonly Board[]): readonly Thing[] =>
  boards.flatMap(({ things }) => things);
