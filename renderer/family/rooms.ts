// Where jars are to be seen in a stage, and where they are fitted. Pure.
import type { Size } from '../parts/use-size';
import type { Room } from './geometry';
import { KEPT_WIDTH } from './kept-marks';
import { isNarrow } from './lanes';

/** Room at the edges of the stage, in screen pixels. */
const GUTTER = 178;
const ABOVE = { narrow: 84, wide: 45 } as const;
const MONTHS = 30;
const KEPT_FREE_FROM = 1400;

/** The pane's width; a wide window keeps it free when the family is fitted, so that opening it moves nothing. */
export const paneWidth = (size: Size): number => (size.width >= 1200 ? 368 : Math.min(320, size.width * 0.4));

/** What takes some of the stage: an open pane, months above the jars, what is kept at the lines' ends. */
export interface Taken {
  readonly pane: boolean;
  readonly months: boolean;
  readonly kept: boolean;
}

/** `room`: where jars can be seen now; `fitRoom`: where they are fitted, whether or not a pane is open. */
export function roomsIn(size: Size, { pane, months, kept }: Taken): { room: Room; fitRoom: Room } {
  const narrow = isNarrow(size.width);
  const edges = {
    left: narrow ? 0 : GUTTER,
    top: (narrow ? ABOVE.narrow : ABOVE.wide) + (months ? MONTHS : 0),
    bottom: size.height,
  };
  const free = size.width - paneWidth(size);
  return {
    room: { ...edges, right: pane ? free : size.width },
    fitRoom: {
      ...edges,
      right: size.width >= KEPT_FREE_FROM ? free : size.width - (kept && !narrow ? KEPT_WIDTH : 0),
    },
  };
}

/** The room that lanes have in a window of that size, while no pane is open. */
export const foldRoom = (size: Size): Room => roomsIn(size, { pane: false, months: false, kept: false }).room;
