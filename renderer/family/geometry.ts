// From grid steps to the drawing's own pixels: how big a jar is, how far apart columns and rows lie, and which part of
// the drawing a window shows. Pure.
import type { Drawing } from '../../core/contract';
import { JAR } from '../../core/pictures/jar-outline';

/** Below this zoom a jar is too small to be read as one. */
export const READABLE_ZOOM = 0.3;
/** At this zoom a numeral is 28 px high and well inside its jar. */
export const GOOD_ZOOM = 0.66;
/** A family that fits at this zoom or closer opens whole: its numerals can still be 28 px high. */
export const WHOLE_FROM = 0.49;
/** As close as a family opens: ten generations beside a gutter in a window of 1280. */
const ALONE_ZOOM = 0.9;
/** What the head of a lane below takes, in screen pixels. */
const NEXT_HEAD = 120;
/** Any farther, and a jar is no longer seen to be one. */
const FARTHEST = 0.16;
const COLUMN = { least: 92, usual: 104, most: 200 } as const;
const ROW = { least: 68, usual: 72, most: 84 } as const;
/** From the outermost jars to the edge of their room, in screen pixels; on the left ribbons come in from the packets. */
export const MARGIN = 24;
export const LEAD = 58;

/** The part of the window in which jars are to be seen: what lies over its edges is left out. */
export interface Room {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}
/** Screen x = k · drawing x + tx. */
export interface View {
  readonly k: number;
  readonly tx: number;
  readonly ty: number;
}
/** Where jars stand, in grid steps. */
export interface Places {
  readonly x: Float64Array;
  readonly y: Float64Array;
}
export interface Geometry {
  /** Drawing pixels from one column, or row, to the next. */
  readonly columnStep: number;
  readonly rowStep: number;
  /** The view that shows everything; where `whole` is false, at the least zoom its first jars. */
  readonly fit: View;
  readonly whole: boolean;
  readonly least: number;
  readonly most: number;
  /** Extent in drawing pixels, jar outlines included. */
  readonly width: number;
  readonly height: number;
}
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/**
 * Steps and the fitting view for a drawing in a room. The steps stretch a little, so that a wide family fills a narrow
 * room downwards and a tall one fills a wide room sideways: the jars stay as large as can be.
 */
export function geometryOf(drawing: Pick<Drawing, 'width' | 'height'>, room: Room): Geometry {
  const columns = Math.max(1, drawing.width);
  const rows = Math.max(1, drawing.height);
  const wide = Math.max(160, room.right - room.left - LEAD - MARGIN);
  const high = Math.max(120, room.bottom - room.top - MARGIN);
  const whole = Math.min(
    wide / (JAR.width + (columns - 1) * COLUMN.least),
    high / (JAR.height + (rows - 1) * ROW.least),
    1.1,
  );
  const k = Math.max(whole, FARTHEST);
  // One that opens at its newest end, closer than it fits, keeps together what belongs together.
  const most =
    k < WHOLE_FROM ? { column: COLUMN.usual, row: ROW.usual } : { column: COLUMN.most, row: ROW.most };
  const columnStep = clamp((wide / k - JAR.width) / Math.max(1, columns - 1), COLUMN.least, most.column);
  const rowStep = clamp((high / k - JAR.height) / Math.max(1, rows - 1), ROW.least, most.row);
  const width = (columns - 1) * columnStep + JAR.width;
  const height = (rows - 1) * rowStep + JAR.height;
  return {
    columnStep,
    rowStep,
    width,
    height,
    whole: whole >= FARTHEST,
    fit: {
      k,
      tx: room.left + LEAD,
      ty: room.top + Math.max(0, high - height * k) * 0.25,
    },
    least: Math.min(k, 0.5),
    most: 3,
  };
}

/** Where the newest jar stands, the first and last row of its lane, and the last column of any other lane. */
export interface Newest {
  readonly x: number;
  readonly y: number;
  readonly top: number;
  readonly bottom: number;
  readonly others?: number;
}

/** A batch's jars stand apart where their row is crowded: all of them are to be seen. */
const BATCH_WIDE = 1.5;
/** So many columns farther right another line may end and be seen still, beside the newest jar: as many as set lines apart. */
const ENDS_NEAR = 8;

interface Lanes extends Pick<Drawing, 'x' | 'y' | 'lane'> {
  readonly lanes: readonly { readonly top: number; readonly bottom: number; readonly right: number }[];
}

/** @param newest index of the newest jar */
export function newestPlace(drawing: Lanes, newest: number): Newest {
  const y = drawing.y[newest] ?? 0;
  const at = drawing.lane[newest] ?? 0;
  const lane = drawing.lanes[at];
  const others = drawing.lanes.reduce(
    (most, { right }, other) => (other === at ? most : Math.max(most, right)),
    -Infinity,
  );
  const own = drawing.x[newest] ?? 0;
  const batch = lane && lane.right > own && lane.right - own <= BATCH_WIDE ? lane.right : own;
  const x = others > batch && others - batch <= ENDS_NEAR ? others : batch;
  return { x, y, top: lane?.top ?? y, bottom: lane?.bottom ?? y, others };
}

/** The newest end of the family at a zoom: the newest jar at the right, its lane in the middle. */
export function newestEnd(geometry: Geometry, room: Room, newest: Newest, k: number): View {
  const right = (newest.x * geometry.columnStep + JAR.width) * k;
  const tx = Math.min(room.left + LEAD, room.right - MARGIN - right);
  const high = room.bottom - room.top;
  const [top, bottom] = [
    newest.top * geometry.rowStep * k,
    (newest.bottom * geometry.rowStep + JAR.height) * k,
  ];
  const middle =
    bottom - top <= high ? (top + bottom) / 2 : (newest.y * geometry.rowStep + JAR.height / 2) * k;
  // Not past the family's own upper and lower ends.
  const ty = clamp(
    room.top + high / 2 - middle,
    Math.min(room.top, room.bottom - geometry.height * k - MARGIN),
    room.top + Math.max(0, high - geometry.height * k) * 0.25,
  );
  return { k, tx, ty };
}

/** The view a family opens with: all of it where its numerals can be read, else its newest end, of all lanes if they can be. */
export function openingView(geometry: Geometry, room: Room, newest: Newest): View {
  if (geometry.fit.k >= WHOLE_FROM) return geometry.fit;
  const allRows = (room.bottom - room.top - MARGIN) / geometry.height;
  const k = allRows < WHOLE_FROM ? GOOD_ZOOM : Math.min(GOOD_ZOOM, allRows);
  const view = newestEnd(geometry, room, newest, k);
  const othersEnd = ((newest.others ?? Infinity) * geometry.columnStep + JAR.width) * k + view.tx;
  if (othersEnd > room.left) return view;
  // All other lanes ended before what is seen: this one has the room to itself, but for the next one's head.
  const rows = (newest.bottom - newest.top) * geometry.rowStep + JAR.height;
  const close = clamp((room.bottom - room.top - NEXT_HEAD) / rows, k, ALONE_ZOOM);
  return newestEnd(geometry, room, newest, close);
}

/** All of it, or where that is too much to be told apart as much of its newest end as can be. */
export const fittingView = (geometry: Geometry, room: Room, newest: Newest): View =>
  geometry.whole ? geometry.fit : newestEnd(geometry, room, newest, geometry.fit.k);

/** The view after zooming to `k` with the screen point (x, y) staying where it is. */
export function zoomAt(view: View, geometry: Geometry, k: number, x: number, y: number): View {
  const next = clamp(k, geometry.least, geometry.most);
  const ratio = next / view.k;
  return { k: next, tx: x - (x - view.tx) * ratio, ty: y - (y - view.ty) * ratio };
}

/** Of a family larger than its room at most this part of the room is left empty; a smaller one stays wholly in it. */
const EMPTY = 0.35;

function within(at: number, extent: number, low: number, high: number): number {
  const room = high - low;
  if (extent <= room) return clamp(at, low, high - extent);
  return clamp(at, high - extent - room * EMPTY, low + room * EMPTY);
}

/**
 * Keeps the family in its room: none of it can be pushed out of sight, and wherever there are gaps in it at least one
 * jar is seen whole, well inside.
 */
export function keepInSight(view: View, geometry: Geometry, places: Places, room: Room): View {
  const { k } = view;
  const tx = within(view.tx, geometry.width * k, room.left + MARGIN / 2, room.right - MARGIN / 2);
  const ty = within(view.ty, geometry.height * k, room.top, room.bottom - MARGIN / 2);
  const inset = {
    x: Math.min(60, (room.right - room.left) / 6),
    y: Math.min(40, (room.bottom - room.top) / 6),
  };
  const [left, right] = [room.left + inset.x, room.right - inset.x - JAR.width * k];
  const [top, bottom] = [room.top + inset.y, room.bottom - inset.y - JAR.height * k];
  const [stepX, stepY] = [geometry.columnStep * k, geometry.rowStep * k];
  let [least, dx, dy] = [Infinity, 0, 0];
  for (let i = 0; i < places.x.length; i += 1) {
    const x = (places.x[i] ?? 0) * stepX + tx;
    const y = (places.y[i] ?? 0) * stepY + ty;
    const offX = x < left ? left - x : x > right ? right - x : 0;
    const offY = y < top ? top - y : y > bottom ? bottom - y : 0;
    const off = Math.abs(offX) + Math.abs(offY);
    if (off >= least) continue;
    [least, dx, dy] = [off, offX, offY];
    if (off === 0) break;
  }
  // A family no larger than the insets moves by nothing: it is in sight already.
  const small = geometry.width * k <= inset.x * 2 || geometry.height * k <= inset.y * 2;
  return small || least === Infinity ? { k, tx, ty } : { k, tx: tx + dx, ty: ty + dy };
}

const into = (at: number, low: number, high: number): number => clamp(at, low, Math.max(low, high)) - at;

/** The view moved as little as needed so that a jar lies well inside the room. */
export function bringIn(view: View, room: Room, x: number, y: number): View {
  const margin = Math.min(90, (room.right - room.left) / 5);
  const dx = into(x * view.k + view.tx, room.left + margin, room.right - margin - JAR.width * view.k);
  const dy = into(y * view.k + view.ty, room.top + 12, room.bottom - 28 - JAR.height * view.k);
  return dx === 0 && dy === 0 ? view : { k: view.k, tx: view.tx + dx, ty: view.ty + dy };
}

/**
 * Whether the view may go back to `home` once a pane is closed, after a jar was walked to: only where that jar is in sight
 * there too. null: no pane took room.
 */
export const mayGoHome = (home: View | null, room: Room, x: number, y: number): boolean =>
  home === null || bringIn(home, room, x, y) === home;

/** The view with a jar in the middle of its room, close enough to be read. */
export function middleOn(view: View, room: Room, x: number, y: number): View {
  const k = view.k < READABLE_ZOOM * 1.4 ? GOOD_ZOOM : view.k;
  return {
    k,
    tx: (room.left + room.right) / 2 - (x + JAR.width / 2) * k,
    ty: (room.top + room.bottom) / 2 - (y + JAR.height / 2) * k,
  };
}

/** Screen box of all jars of which anything is seen in a room; null where none is. */
export function boxInView(view: View, geometry: Geometry, places: Places, room: Room): Box | null {
  const [wide, high] = [JAR.width * view.k, JAR.height * view.k];
  const box = { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity };
  for (let i = 0; i < places.x.length; i += 1) {
    const left = (places.x[i] ?? 0) * geometry.columnStep * view.k + view.tx;
    const top = (places.y[i] ?? 0) * geometry.rowStep * view.k + view.ty;
    if (left + wide <= room.left || left >= room.right || top + high <= room.top || top >= room.bottom)
      continue;
    box.left = Math.min(box.left, left);
    box.right = Math.max(box.right, left + wide);
    box.top = Math.min(box.top, top);
    box.bottom = Math.max(box.bottom, top + high);
  }
  return box.left === Infinity ? null : box;
}

/**
 * The view in which all that was seen is seen still, in a smaller room: the same where nothing would be covered, else
 * moved aside, else drawn smaller.
 */
export function makeRoom(view: View, seen: Box | null, room: Room): View {
  if (seen === null) return view;
  // A day above a jar is wider than the jar.
  const pad = 16;
  const [wide, high] = [room.right - room.left - 2 * pad, room.bottom - room.top - pad];
  const ratio = Math.min(1, wide / (seen.right - seen.left), high / (seen.bottom - seen.top));
  const at = (value: number, origin: number): number => (value - origin) * ratio;
  const left = into(seen.left, room.left + pad, room.right - pad - (seen.right - seen.left) * ratio);
  const top = into(seen.top, room.top, room.bottom - pad - (seen.bottom - seen.top) * ratio);
  return {
    k: view.k * ratio,
    tx: seen.left + left + at(view.tx, seen.left),
    ty: seen.top + top + at(view.ty, seen.top),
  };
}
