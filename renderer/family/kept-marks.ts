// Where what is kept back stands: right of its line's last jar, level with the path that goes on. Pure.
import { JAR } from '../../core/pictures/jar-outline';
import { type Geometry, MARGIN, type Room, type View } from './geometry';
import type { Placed } from './lanes';
import type { Now } from '../parts/use-now';

/** Room right of the jars for it, in screen pixels. */
export const KEPT_WIDTH = 204;
/** Height of one, in screen pixels. */
const KEPT_HEIGHT = 112;

export interface KeptAt {
  readonly lane: number;
  /** Upper left corner, in drawing pixels. */
  readonly x: number;
  readonly y: number;
  readonly kept: Now['kept'];
  /** Kept too, and not shown for want of room. */
  readonly more: number;
}

/** @param first ids that come first: the advised seed must be seen */
export function keptAt(
  drawing: Placed,
  { columnStep, rowStep }: Pick<Geometry, 'columnStep' | 'rowStep'>,
  k: number,
  kept: Now['kept'],
  first: ReadonlySet<string>,
): KeptAt[] {
  if (kept.length === 0) return [];
  const laneOf = new Map(Array.from(drawing.keys, (key, index) => [key, drawing.lane[index] ?? 0]));
  return drawing.lanes.flatMap((lane, at): KeptAt[] => {
    const own = kept
      .filter(({ key }) => laneOf.get(key) === at)
      .toSorted((a, b) => Number(first.has(b.id)) - Number(first.has(a.id)));
    if (own.length === 0) return [];
    const room = Math.max(1, Math.floor(((lane.end - lane.start) * rowStep * k) / KEPT_HEIGHT));
    const shown = own.slice(0, room);
    // In the middle of the path that goes on, but never above its lane.
    const high = (shown.length * KEPT_HEIGHT) / (rowStep * k);
    const top = Math.max(lane.start - 0.4, Math.min(lane.level + 0.5 - high / 2, lane.end - high));
    return [
      {
        lane: at,
        x: lane.right * columnStep + JAR.width + MARGIN / k,
        y: top * rowStep,
        kept: shown,
        more: own.length - shown.length,
      },
    ];
  });
}

/** Those that the pane does not cut through: half a card says nothing. */
export const keptInRoom = (all: readonly KeptAt[], { k, tx }: View, { right }: Room): KeptAt[] =>
  all.filter(({ x }) => {
    const left = x * k + tx;
    return left + KEPT_WIDTH <= right || left > right;
  });
