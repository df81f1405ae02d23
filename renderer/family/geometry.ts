// From grid steps to the drawing's own pixels: how big a jar is, how far apart columns and rows lie. Pure.
import type { Drawing } from '../../core/contract';

/** A jar with its lid, in drawing pixels (one screen pixel each at zoom 1). */
export const JAR = { width: 62, height: 66, inletY: 44 } as const;
/** A ribbon that brings the whole of a jar's seed. */
export const RIBBON_WIDTH = 12;
/** Room for lettering below a jar, in screen pixels. */
export const LABEL_HEIGHT = 21;
export const STRIP_HEIGHT = 48;
export const STRIP_GAP = 10;
/** A label strip's width, and its distance from the jars it founded, in screen pixels. */
export type StripSize = { readonly width: number; readonly reach: number };
export const stripSize = (size: Size): StripSize =>
  size.width < 1000 ? { width: 112, reach: 48 } : { width: 158, reach: 78 };
/** Room for the column heads above the drawing, in screen pixels. */
export const HEAD_ROOM = 64;
/** The band that the heads themselves take of it. */
const HEAD_BAND = 42;
const PAD = 22;
const EDGE = 6;
/** Right of the last column. */
const MARGIN = 40;
/** A label left of its jar, in screen pixels; and what a ribbon needs before it to bend in. */
const LABEL_WIDTH = 72;
export const BEND_ROOM = 38;
/** Below this zoom a jar is too small to be read as one. */
export const READABLE_ZOOM = 0.3;
const LEAST_COLUMN = 92;
/** A zoom at which a jar's numeral is 28 px high and well inside it. */
const GOOD_ZOOM = 0.66;

export interface Size {
  readonly width: number;
  readonly height: number;
}
/** Screen x = k · drawing x + tx. */
export interface View {
  readonly k: number;
  readonly tx: number;
  readonly ty: number;
}
export interface Geometry {
  /** Drawing pixels from one column, or row, to the next. */
  readonly columnStep: number;
  readonly rowStep: number;
  /** How far before a jar its ribbon runs level, so that the label above it crosses nothing. */
  readonly tail: number;
  /** The view that shows everything. */
  readonly fit: View;
  /** What of the height is in sight when everything fits, below the column heads: label strips keep within it. */
  readonly sight: { readonly top: number; readonly bottom: number };
  readonly least: number;
  readonly most: number;
  /** Extent in drawing pixels, jar outlines included. */
  readonly width: number;
  readonly height: number;
}

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));

/**
 * Steps and the fitting view for a drawing in a viewport. The steps stretch, within limits, so that a wide family fills
 * a narrow window downwards and a tall one fills a wide window sideways: the jars stay as large as can be.
 */
export function geometryOf(drawing: Pick<Drawing, 'width' | 'height'>, size: Size): Geometry {
  const columns = Math.max(1, drawing.width);
  const rows = Math.max(1, drawing.height);
  const strip = stripSize(size);
  const left = strip.width + strip.reach + PAD;
  const room = {
    width: Math.max(160, size.width - left - MARGIN),
    height: Math.max(120, size.height - HEAD_ROOM - PAD),
  };
  const byWidth = room.width / (JAR.width + (columns - 1) * LEAST_COLUMN);
  // Labels lie under their jars where the rows leave room for that at a good size, else beside them.
  const withLabels = (room.height - rows * LABEL_HEIGHT) / (rows * (JAR.height + 6));
  const beside = room.height / (rows * (JAR.height + 8));
  const k = clamp(
    Math.min(byWidth, withLabels >= GOOD_ZOOM ? withLabels : Math.min(beside, GOOD_ZOOM)),
    0.0001,
    1.3,
  );
  const columnStep = clamp(
    (room.width / k - JAR.width) / Math.max(1, columns - 1),
    LEAST_COLUMN,
    k < READABLE_ZOOM ? 320 : Math.max(210, 168 / k),
  );
  const rowStep = clamp(
    room.height / k / rows,
    JAR.height + 8,
    k < READABLE_ZOOM ? 92 : Math.max(150, 118 / k),
  );
  const width = (columns - 1) * columnStep + JAR.width;
  const height = (rows - 1) * rowStep + JAR.height;
  const slack = { x: room.width - width * k, y: room.height - height * k - LABEL_HEIGHT };
  const gap = (columnStep - JAR.width) * k;
  const under = (rowStep - JAR.height) * k >= LABEL_HEIGHT;
  const tail = under ? 0 : clamp(gap - BEND_ROOM, Math.min(14, gap * 0.35), LABEL_WIDTH) / k;
  const ty = HEAD_ROOM + Math.max(0, slack.y) * 0.4;
  return {
    columnStep,
    rowStep,
    tail,
    width,
    height,
    fit: { k, tx: left + Math.max(0, slack.x) * 0.4, ty },
    sight: { top: (HEAD_BAND - ty) / k, bottom: (size.height - EDGE - ty) / k },
    least: Math.min(k, 1) * 0.7,
    most: 3,
  };
}

/** The view after zooming to `k` with the screen point (x, y) staying where it is. */
export function zoomAt(view: View, geometry: Geometry, k: number, x: number, y: number): View {
  const next = clamp(k, geometry.least, geometry.most);
  const ratio = next / view.k;
  return { k: next, tx: x - (x - view.tx) * ratio, ty: y - (y - view.ty) * ratio };
}

/** Keeps at least a jar's width of the family inside the window, so that it can't be lost. */
export function keepInSight(view: View, geometry: Geometry, size: Size): View {
  const keep = 90;
  return {
    k: view.k,
    tx: clamp(view.tx, keep - geometry.width * view.k, size.width - keep),
    ty: clamp(view.ty, HEAD_ROOM + keep - geometry.height * view.k, size.height - keep),
  };
}

const into = (at: number, low: number, high: number): number => clamp(at, low, Math.max(low, high)) - at;

/** The view moved as little as needed so that a jar lies well inside the window. */
export function bringIn(view: View, size: Size, x: number, y: number): View {
  const margin = { x: Math.min(150, size.width / 4), top: HEAD_ROOM + 24, bottom: 60 };
  const left = x * view.k + view.tx;
  const top = y * view.k + view.ty;
  const dx = into(left, margin.x, size.width - margin.x - JAR.width * view.k);
  const dy = into(top, margin.top, size.height - margin.bottom - JAR.height * view.k);
  return dx === 0 && dy === 0 ? view : { k: view.k, tx: view.tx + dx, ty: view.ty + dy };
}

/** Screen box of one jar's outline. */
export function jarBox(
  x: number,
  y: number,
  view: View,
): { left: number; top: number; right: number; bottom: number } {
  const left = x * view.k + view.tx;
  const top = y * view.k + view.ty;
  return { left, top, right: left + JAR.width * view.k, bottom: top + JAR.height * view.k };
}
