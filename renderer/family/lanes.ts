// The lanes of a drawing laid out for a window: room between them for days and heads, and what each head has room for.
// Pure.
import type { Drawing } from '../../core/contract';
import { dayLabel } from '../../core/lineage/labels';
import { JAR } from '../../core/pictures/jar-outline';
import type { Geometry, Room, View } from './geometry';

/** In a window narrower than this a lane's head lies above it, else in a gutter left of all lanes. */
const NARROW = 1000;
export const isNarrow = (width: number): boolean => width < NARROW;

/** Rows between two lanes: for the days above each, and in a narrow window for its head too. */
const BETWEEN = { narrow: 2, wide: 1 } as const;
/** Rows that a head with so many packets needs beside its lane. */
const leastRows = (packets: number): number => (packets === 0 ? 1.25 : 2 + Math.min(3, packets));

export interface Lane {
  readonly line: string | null;
  readonly name: string;
  readonly founded: string | null;
  /** Rows from the top, room between lanes counted: where its band begins, first and last row, the level one, its end. */
  readonly start: number;
  readonly top: number;
  readonly bottom: number;
  readonly level: number;
  readonly end: number;
  /** Its first and its last column. */
  readonly x: number;
  readonly right: number;
  /** What its founding jars were started from. */
  readonly packets: Drawing['founders'][number]['sources'];
  /** Indices of its founding jars. */
  readonly founders: readonly number[];
}

/** Lines without a name of their own are called by their founding day: not said twice. */
export const namedByDay = ({ name, founded }: Lane): boolean =>
  founded !== null && name === dayLabel(founded, true);

/** A drawing with room between its lanes: `y` and `height` count it. */
export type Placed = Omit<Drawing, 'lanes'> & { readonly lanes: Lane[] };

/** On which side of the room all jars of a lane lie, where none of them is in it. */
export type Away = 'left' | 'right' | null;

export const lanesAway = (
  lanes: readonly Lane[],
  { columnStep }: Pick<Geometry, 'columnStep'>,
  { k, tx }: View,
  { left, right }: Pick<Room, 'left' | 'right'>,
): Away[] =>
  lanes.map((lane) => {
    if ((lane.right * columnStep + JAR.width) * k + tx < left) return 'left';
    return lane.x * columnStep * k + tx > right ? 'right' : null;
  });

/** Spreads the lanes for a window of that width. */
export function placedIn(drawing: Drawing, width: number): Placed {
  const narrow = isNarrow(width);
  const founding = new Map(
    drawing.founders.flatMap((founder) =>
      founder.jars[0] === undefined ? [] : [[drawing.lane[founder.jars[0]] ?? -1, founder] as const],
    ),
  );
  const rights = new Float64Array(drawing.lanes.length);
  drawing.lane.forEach((lane, i) => {
    rights[lane] = Math.max(rights[lane] ?? 0, drawing.x[i] ?? 0);
  });
  const shift = new Float64Array(drawing.lanes.length);
  let room = 0;
  const lanes = drawing.lanes.map((lane, at): Lane => {
    const founder = founding.get(at);
    const packets = founder?.sources ?? [];
    if (at > 0) room += narrow ? BETWEEN.narrow : BETWEEN.wide;
    shift[at] = room;
    const rows = lane.bottom - lane.top + 1;
    const high = narrow ? rows : Math.max(rows, leastRows(packets.length));
    // A lane lower than its head stands in the middle of it.
    const slack = Math.floor((high - rows) / 2);
    shift[at] = room + slack;
    room += high - rows;
    const own = shift[at];
    return {
      line: lane.line,
      name: lane.name,
      founded: lane.founded,
      x: lane.x,
      right: rights[at] ?? 0,
      start: lane.top + own - slack,
      top: lane.top + own,
      bottom: lane.bottom + own,
      level: lane.level + own,
      end: lane.top + own - slack + high,
      packets,
      founders: founder?.jars ?? [],
    };
  });
  const y = new Float64Array(drawing.y.length);
  for (let i = 0; i < y.length; i += 1) y[i] = (drawing.y[i] ?? 0) + (shift[drawing.lane[i] ?? 0] ?? 0);
  return { ...drawing, y, lanes, height: drawing.height + room };
}

/** How much of a head there is room for: its name alone, what it is called, its day, its packets. */
export type Detail = 'name' | 'standing' | 'day' | 'packets';

export interface PlacedHead {
  readonly lane: number;
  readonly detail: Detail;
  /** Top of the head, and the last place it may slide down to while its lane passes, in drawing pixels. */
  readonly y: number;
  readonly last: number;
  readonly height: number;
  /** Right of its lane's last jar, in drawing pixels, where there is no room above the lane; else at the window's edge. */
  readonly x: number | null;
}

/** Heights of a head's parts, in screen pixels. */
export const HEAD = { name: 40, standing: 21, day: 22, packet: 47, gap: 6 } as const;

const heightOf = (detail: Detail, packets: number): number =>
  HEAD.name +
  (detail === 'name' ? 0 : HEAD.standing) +
  (detail === 'day' || detail === 'packets' ? HEAD.day : 0) +
  (detail === 'packets' ? HEAD.gap + packets * HEAD.packet : 0);

const DETAILS: readonly Detail[] = ['packets', 'day', 'standing', 'name'];

/**
 * The heads in the gutter at a zoom: each beside its lane, its packets level with the path that goes on, with as much as
 * there is room for; where lanes are lower than a name, every so many.
 * @param inlet where a ribbon comes into a jar, from the top of its row, in drawing pixels
 */
export function headsAt(
  lanes: readonly Lane[],
  { rowStep }: Pick<Geometry, 'rowStep'>,
  k: number,
  inlet: number,
): PlacedHead[] {
  const heads: PlacedHead[] = [];
  let free = -Infinity;
  lanes.forEach((lane, at) => {
    const from = Math.max(free, (lane.start - 0.5) * rowStep * k);
    const to = lane.end * rowStep * k;
    const packets = lane.packets.length;
    const detail = DETAILS.find(
      (one) => (one !== 'packets' || packets > 0) && heightOf(one, packets) <= to - from,
    );
    if (detail === undefined) return;
    const height = heightOf(detail, packets);
    const below = detail === 'packets' ? (packets * HEAD.packet) / 2 : 0;
    const wanted = (lane.level * rowStep + inlet) * k + below - height;
    const top = Math.min(Math.max(wanted, from), to - height);
    free = top + height;
    heads.push({ lane: at, detail, y: top / k, last: (to - height) / k, height, x: null });
  });
  return heads;
}

/** A head in one low line, and the days above a lane in one line. */
const LOW = { head: 28, days: 21 } as const;

/** Of a narrow window: each head in one line above its lane and its days, lower where there is less room; far out, where its line ends. */
export function headsOver(
  lanes: readonly Lane[],
  { columnStep, rowStep }: Pick<Geometry, 'columnStep' | 'rowStep'>,
  k: number,
): PlacedHead[] {
  const between = BETWEEN.narrow * rowStep * k;
  const full = lanes.length === 1 || between >= 42 + HEAD.name;
  const [days, height] = full ? [42, HEAD.name] : [LOW.days, LOW.head];
  const above = full || between >= days + height;
  let free = -Infinity;
  return lanes.flatMap((lane, at): PlacedHead[] => {
    const top = above
      ? lane.top * rowStep * k - days - height
      : (lane.level + 0.6) * rowStep * k - height / 2;
    if (top < free) return [];
    free = top + height;
    const x = above ? null : (lane.right + 1) * columnStep;
    return [
      {
        lane: at,
        detail: full ? 'packets' : above ? 'day' : 'standing',
        y: top / k,
        last: top / k,
        height,
        x,
      },
    ];
  });
}

/** Lanes of which something is in the room, the one nearest its middle first. */
export function lanesInRoom(drawing: Placed, { rowStep }: Geometry, view: View, room: Room): number[] {
  const middle = (room.top + room.bottom) / 2;
  const off = (at: number): number => {
    const lane = drawing.lanes[at];
    if (!lane) return Infinity;
    const [top, bottom] = [
      lane.top * rowStep * view.k + view.ty,
      (lane.bottom * rowStep + JAR.height) * view.k + view.ty,
    ];
    if (bottom < room.top || top > room.bottom) return Infinity;
    return Math.max(0, top - middle, middle - bottom);
  };
  return drawing.lanes
    .map((_, at) => ({ at, off: off(at) }))
    .filter((one) => one.off < Infinity)
    .toSorted((a, b) => a.off - b.off)
    .map(({ at }) => at);
}

/** Index of the jar made last in a lane: the latest day, then the deepest. */
export function newestOfLane({ lane, days, generation }: Placed, at: number): number {
  let best = -1;
  for (let i = 0; i < lane.length; i += 1) {
    if (lane[i] !== at) continue;
    const by = (days[i] || -1e9) - (days[best] || -1e9) || (generation[i] ?? 0) - (generation[best] ?? 0);
    if (best < 0 || by > 0) best = i;
  }
  return Math.max(0, best);
}
