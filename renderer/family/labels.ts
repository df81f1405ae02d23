// Which labels are written, and where: none may overlap another, nor lie on another jar. A view has one manner for all
// its labels, so that the eye learns once where to look. Pure; widths are measured by the caller.

import { BEND_ROOM, LABEL_HEIGHT } from './geometry';

export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}
/** over-left: above the jar, its end flush with the jar's right wall, clear of what leaves that wall. */
export type Side = 'under' | 'left' | 'over' | 'over-left';
/**
 * under: each in full under its jar. beside: each in full left of its jar, above the ribbon that comes in.
 * headed: the day once, with the uppermost of batch-mates that stand one under another; the others have their letter.
 * days: no room for letters, so the day stands for all of them; letters come with zooming in, pointing or the focus.
 */
export type Manner = 'under' | 'beside' | 'headed' | 'days';

export interface LabelPlace {
  readonly index: number;
  readonly label: string;
  /** The jar's outline, in screen pixels. */
  readonly jar: Box;
  /** Higher is written first. Equal ones: the later day, then the upper row. */
  readonly rank: number;
  readonly day: string;
  /** Its generation: a letter alone is understood only below its own batch's day. */
  readonly column: number;
  /**
   * What lies left of it: nothing, where its ribbon comes from below or level and no other passes on the way up; a
   * ribbon; or the slips of its sources.
   */
  readonly left: 'free' | 'ribbon' | 'slips';
}

const CELL = 96;
/** Up to this many rows further down a batch-mate still stands right under another. */
const NEXT_ROW = 1.3;
const GAP = 5;
/** Between two columns, where letters are written: one, and a breath on either side. */
const LETTER_ROOM = 25;
const BESIDE = 4;
/** A label left of its jar stands level with the lid, above the inlet. */
const RAISED = 3;

/** Boxes by grid cell, so that a test of overlap looks at neighbours only. */
class Taken {
  readonly #cells = new Map<string, { box: Box; owner: number }[]>();

  static *#keys(box: Box): Generator<string> {
    for (let x = Math.floor(box.left / CELL); x <= Math.floor(box.right / CELL); x += 1)
      for (let y = Math.floor(box.top / CELL); y <= Math.floor(box.bottom / CELL); y += 1) yield `${x} ${y}`;
  }

  add(box: Box, owner: number): void {
    for (const key of Taken.#keys(box)) {
      const cell = this.#cells.get(key);
      if (cell) cell.push({ box, owner });
      else this.#cells.set(key, [{ box, owner }]);
    }
  }

  isFree(box: Box, owner: number): boolean {
    for (const key of Taken.#keys(box)) {
      for (const other of this.#cells.get(key) ?? []) {
        if (
          other.owner !== owner &&
          box.left < other.box.right + GAP &&
          other.box.left - GAP < box.right &&
          box.top < other.box.bottom &&
          other.box.top < box.bottom
        )
          return false;
      }
    }
    return true;
  }
}

/** Lettering is lower than its line: so much of a label's box, above and below, is empty. */
const EMPTY = 4;

/** Half of a whole ribbon as it is seen when the family fits: a point of it is on its middle. */
const RIBBON_HALF = 3;

/** Points of ribbons by grid cell: whether one passes through a label's lettering. */
class Passing {
  readonly #cells = new Map<string, { readonly x: number; readonly y: number }[]>();

  constructor(points: readonly { readonly x: number; readonly y: number }[]) {
    for (const point of points) {
      const key = `${Math.floor(point.x / CELL)} ${Math.floor(point.y / CELL)}`;
      const cell = this.#cells.get(key);
      if (cell) cell.push(point);
      else this.#cells.set(key, [point]);
    }
  }

  crosses(box: Box): boolean {
    const [left, right] = [box.left - RIBBON_HALF, box.right + RIBBON_HALF];
    const [top, bottom] = [box.top + EMPTY, box.bottom - EMPTY];
    for (let x = Math.floor(left / CELL); x <= Math.floor(right / CELL); x += 1)
      for (let y = Math.floor(top / CELL); y <= Math.floor(bottom / CELL); y += 1)
        for (const point of this.#cells.get(`${x} ${y}`) ?? [])
          if (point.x > left && point.x < right && point.y > top && point.y < bottom) return true;
    return false;
  }
}

/** A label's batch ("14 Mar plain") and its letter ("b"). */
export function splitLabel(label: string): { batch: string; letter: string } {
  const at = label.lastIndexOf(' ');
  return at < 0 ? { batch: '', letter: label } : { batch: label.slice(0, at), letter: label.slice(at + 1) };
}

export interface Written {
  readonly text: string;
  readonly side: Side;
}

/** The box of a text at a side of its jar. */
export function labelBox(jar: Box, side: Side, width: number, height: number): Box {
  const left =
    side === 'left'
      ? jar.left - BESIDE - width
      : side === 'over-left'
        ? jar.right - width
        : (jar.left + jar.right - width) / 2;
  const top = side === 'left' ? jar.top - RAISED : side === 'under' ? jar.bottom + 1 : jar.top - height + 1;
  return { left, top, right: left + width, bottom: top + height };
}

/**
 * The one manner of a view.
 * @param column from one column to the next, and @param row from one row to the next, in screen pixels
 * @param jar a jar's outline on the screen
 * @param widest width of the widest label
 */
export function mannerOf(
  column: number,
  row: number,
  jar: { readonly width: number; readonly height: number },
  widest: number,
  height: number,
): Manner {
  if (row - jar.height >= height && column >= widest + GAP * 2) return 'under';
  const gap = column - jar.width;
  if (gap >= widest + BESIDE + GAP + BEND_ROOM) return 'beside';
  return gap >= LETTER_ROOM * (height / LABEL_HEIGHT) ? 'headed' : 'days';
}

/** Batch-mates that stand in rows one under another, from the top down. */
function runsOf(places: readonly LabelPlace[], row: number): LabelPlace[][] {
  const columns = new Map<string, LabelPlace[]>();
  for (const place of places) {
    const column = `${place.column} ${Math.round(place.jar.left)}`;
    const list = columns.get(column);
    if (list) list.push(place);
    else columns.set(column, [place]);
  }
  const runs: LabelPlace[][] = [];
  for (const list of columns.values()) {
    let above: LabelPlace | null = null;
    for (const place of list.toSorted((a, b) => a.jar.top - b.jar.top)) {
      const { batch } = splitLabel(place.label);
      const mates =
        above !== null &&
        batch !== '' &&
        batch === splitLabel(above.label).batch &&
        place.jar.top - above.jar.top <= row * NEXT_ROW;
      if (mates) runs.at(-1)?.push(place);
      else runs.push([place]);
      above = place;
    }
  }
  return runs;
}

const before = (a: LabelPlace, b: LabelPlace): number =>
  b.rank - a.rank || (a.day < b.day ? 1 : a.day > b.day ? -1 : a.column - b.column || a.jar.top - b.jar.top);

/** Sides for the day at the top of a run. */
const AT_TOP: Readonly<Record<LabelPlace['left'], readonly Side[]>> = {
  free: ['left', 'over', 'over-left'],
  ribbon: ['over', 'over-left', 'left'],
  slips: ['over', 'over-left'],
};

/** Sides for a whole label, the best first. */
function sidesOf(place: LabelPlace, manner: Manner): readonly Side[] {
  if (manner === 'under') return ['under', 'left'];
  if (place.left === 'slips') return ['over', 'over-left', 'under'];
  if (manner === 'beside' || place.left === 'free') return ['left', 'under'];
  return ['under', 'left'];
}

/**
 * The text written at each place, by index: in the view's manner where there is room, else at another side of the jar,
 * else nothing. A letter alone stands only in a run of batch-mates whose day is written.
 * @param row from one row to the next, in screen pixels
 * @param blocked boxes no label may lie on, each with the index of its owner (whose own label may touch it), or -1
 * @param ribbons points along the ribbons, in screen pixels: crossed only where there is no room beside them
 */
export function writtenLabels(
  places: readonly LabelPlace[],
  blocked: readonly { readonly box: Box; readonly owner: number }[],
  manner: Manner,
  row: number,
  height: number,
  measure: (text: string) => number,
  ribbons: readonly { readonly x: number; readonly y: number }[] = [],
): Map<number, Written> {
  const taken = new Taken();
  const passing = new Passing(ribbons);
  for (const { box, owner } of blocked) taken.add(box, owner);
  const written = new Map<number, Written>();
  const put = (place: LabelPlace, text: string, sides: readonly Side[], mayCross = true): boolean => {
    const free = sides
      .map((side) => ({ side, box: labelBox(place.jar, side, measure(text), height) }))
      .filter(({ box }) => taken.isFree(box, place.index));
    const best = free.find(({ box }) => !passing.crosses(box)) ?? (mayCross ? free[0] : undefined);
    if (!best) return false;
    taken.add(best.box, place.index);
    written.set(place.index, { text, side: best.side });
    return true;
  };
  // The chosen and the focused jar's label is written in any case; what comes after makes room for it.
  for (const place of places.filter(({ rank }) => rank > 0).toSorted(before)) {
    if (put(place, place.label, sidesOf(place, manner))) continue;
    taken.add(labelBox(place.jar, 'under', measure(place.label), height), place.index);
    written.set(place.index, { text: place.label, side: 'under' });
  }
  if (manner === 'under' || manner === 'beside') {
    for (const place of places.filter(({ index }) => !written.has(index)).toSorted(before))
      put(place, place.label, sidesOf(place, manner));
    return written;
  }
  const runs = runsOf(places, row)
    .map((run) => ({ run, first: run.toSorted(before)[0] }))
    .toSorted((a, b) => (a.first && b.first ? before(a.first, b.first) : 0));
  const dated = runs.filter(({ run }) => {
    const [top] = run;
    const last = run.at(-1);
    if (!top || !last || written.has(top.index)) return top !== undefined;
    const whole = (place: LabelPlace): string =>
      manner === 'days' && run.length > 1 ? splitLabel(place.label).batch : place.label;
    // The day belongs at the top of the run; where it has no room there, at its foot.
    const atTop = AT_TOP[top.left];
    const atFoot = (mayCross: boolean): boolean =>
      !written.has(last.index) && put(last, whole(last), ['under'], mayCross);
    return put(top, whole(top), atTop, false) || atFoot(false) || put(top, whole(top), atTop) || atFoot(true);
  });
  if (manner === 'days') return written;
  for (const { run } of dated)
    for (const place of run)
      if (!written.has(place.index)) put(place, splitLabel(place.label).letter, ['left']);
  return written;
}
