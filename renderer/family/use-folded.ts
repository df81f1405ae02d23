// The family as it is laid out in this window: all lanes whole, or, where it is too low for that, one of them whole and
// the others folded to the line that goes on.
import { useMemo } from 'react';
import type { Drawing } from '../../core/contract';
import type { Size } from '../parts/use-size';
import { folded, mustFold } from './fold';
import { newestOfLane, type Placed, placedIn } from './lanes';
import { newestOf } from './newest';
import { foldRoom } from './rooms';

interface Laid {
  readonly laid: Drawing;
  readonly size: Size | null;
  readonly asTable: boolean;
  /** The lane that the keeper turned to. */
  readonly pressed: number | null;
}

export interface Folded {
  readonly drawing: Placed;
  readonly newest: number;
  /** The lane that is whole, and how many jars lie folded below each; null where none is folded. */
  readonly open: number | null;
  readonly mates: Uint16Array | null;
}

export function useFolded({ laid, size, asTable, pressed }: Laid): Folded {
  const folding = useMemo(() => size !== null && mustFold(laid, foldRoom(size)), [laid, size]);
  const open = pressed ?? laid.lane[newestOf(laid)] ?? 0;
  const fold = useMemo(
    () => (folding && !asTable ? folded(laid, open) : null),
    [folding, asTable, laid, open],
  );
  const width = size?.width ?? 0;
  const drawing = useMemo(() => placedIn(fold?.drawing ?? laid, width), [fold, laid, width]);
  const newest = useMemo(
    () => (fold === null ? newestOf(drawing) : newestOfLane(drawing, open)),
    [drawing, fold, open],
  );
  return { drawing, newest, open: fold === null ? null : open, mates: fold?.mates ?? null };
}
