// Lanes folded to their level line, for a window too low for all of them: one lane is whole, of each other only the path that
// goes on is drawn, with as many dots below a jar as were made beside it. Pure.
import type { Drawing } from '../../core/contract';
import { geometryOf, GOOD_ZOOM, type Room, WHOLE_FROM } from './geometry';
import { isNarrow, placedIn } from './lanes';

export interface Folded {
  readonly drawing: Drawing;
  /** By index in the drawing: how many jars are folded away below it. */
  readonly mates: Uint16Array;
}

/** Least height of a row, in drawing pixels. */
const ROW = 68;

/** Whether lanes have to be folded: what is drawn whole in that room could not be read, and what can be read does not fit. */
export function mustFold(drawing: Drawing, room: Room): boolean {
  const width = room.right;
  if (!isNarrow(width) || drawing.lanes.length < 2) return false;
  const placed = placedIn(drawing, width);
  if (geometryOf(placed, room).fit.k >= WHOLE_FROM) return false;
  return placed.height * ROW * GOOD_ZOOM > room.bottom - room.top;
}

/** @param open index of the lane that stays whole */
export function folded(drawing: Drawing, open: number): Folded {
  const { lane, x, y, keys } = drawing;
  const level = (at: number): number => drawing.lanes[at]?.level ?? 0;
  const keep: number[] = [];
  for (let i = 0; i < keys.length; i += 1) {
    const own = lane[i] ?? 0;
    if (own === open || y[i] === level(own)) keep.push(i);
  }
  const now = new Int32Array(keys.length).fill(-1);
  keep.forEach((index, at) => {
    now[index] = at;
  });
  const of = (index: number): number => (index < 0 ? -1 : (now[index] ?? -1));

  // Each lane ends where the longest does: its newest end is what is looked for. Days keep their places on the calendar.
  const rights = new Float64Array(drawing.lanes.length);
  for (let i = 0; i < keys.length; i += 1)
    rights[lane[i] ?? 0] = Math.max(rights[lane[i] ?? 0] ?? 0, x[i] ?? 0);
  const longest = Math.max(0, ...rights);
  const shift = (at: number): number => (drawing.spacing === 'calendar' ? 0 : longest - (rights[at] ?? 0));

  let top = 0;
  const lanes = drawing.lanes.map((one, at) => {
    const rows = at === open ? one.bottom - one.top + 1 : 1;
    const moved = {
      ...one,
      top,
      bottom: top + rows - 1,
      level: at === open ? top + one.level - one.top : top,
      x: one.x + shift(at),
    };
    top += rows;
    return moved;
  });
  const row = (index: number): number => {
    const at = lane[index] ?? 0;
    const [before, after] = [drawing.lanes[at], lanes[at]];
    return at === open ? (y[index] ?? 0) - (before?.top ?? 0) + (after?.top ?? 0) : (after?.level ?? 0);
  };

  const mates = new Uint16Array(keep.length);
  const standsAt = new Map(keep.map((index) => [`${lane[index]} ${x[index]}`, of(index)]));
  for (let i = 0; i < keys.length; i += 1) {
    const under = of(i) < 0 ? standsAt.get(`${lane[i]} ${x[i]}`) : undefined;
    if (under !== undefined) mates[under] = (mates[under] ?? 0) + 1;
  }
  const others = Array.from(drawing.otherChild.keys()).filter(
    (at) => of(drawing.otherChild[at] ?? -1) >= 0 && of(drawing.otherSeed[at] ?? -1) >= 0,
  );
  const ints = (from: Int32Array): Int32Array<ArrayBuffer> =>
    Int32Array.from(keep, (index) => from[index] ?? 0);
  const reals = (from: Float64Array): Float64Array<ArrayBuffer> =>
    Float64Array.from(keep, (index) => from[index] ?? 0);
  const bytes = (from: Uint8Array): Uint8Array<ArrayBuffer> =>
    Uint8Array.from(keep, (index) => from[index] ?? 0);
  return {
    mates,
    drawing: {
      ...drawing,
      keys: ints(drawing.keys),
      x: Float64Array.from(keep, (index) => (x[index] ?? 0) + shift(lane[index] ?? 0)),
      y: Float64Array.from(keep, row),
      lane: ints(lane),
      parent: Int32Array.from(keep, (index) => of(drawing.parent[index] ?? -1)),
      parentShare: reals(drawing.parentShare),
      generation: ints(drawing.generation),
      days: reals(drawing.days),
      setWord: bytes(drawing.setWord),
      flags: bytes(drawing.flags),
      otherChild: Int32Array.from(others, (at) => of(drawing.otherChild[at] ?? -1)),
      otherSeed: Int32Array.from(others, (at) => of(drawing.otherSeed[at] ?? -1)),
      otherShare: Float64Array.from(others, (at) => drawing.otherShare[at] ?? 0),
      founders: drawing.founders.map((one) => ({ ...one, jars: one.jars.map(of).filter((at) => at >= 0) })),
      lanes,
      height: top,
    },
  };
}
