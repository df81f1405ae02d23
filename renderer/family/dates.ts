// What is written beside the jars: the day of each batch that goes on once, above its lane; the days of branches below or
// beside them; a letter at each jar. None may lie on another, nor on a jar. Pure; widths are measured by the caller.
import { dayLabel } from '../../core/lineage/labels';
import type { Box } from './geometry';

/** One mounted jar, in screen pixels; of a label "14 Mar plain b" the batch is "14 Mar plain". */
export interface LabelPlace {
  readonly index: number;
  readonly label: string;
  readonly madeOn: string | null;
  /** Its outline. */
  readonly jar: Box;
  readonly lane: number;
  /** The lane's name: a batch called by it says only its day. */
  readonly line: string;
  /** Whether it stands in the row of its lane that goes on. */
  readonly level: boolean;
  /** Advised as the next seed, itself or what is kept of it: said below or above it, where there is room. */
  readonly seed: 'itself' | 'kept back' | null;
}

/** One text: its anchor is the middle of its upper edge, or its left end where it stands at the side of a jar. */
export interface Written {
  readonly key: string;
  readonly text: string;
  readonly at: 'above' | 'side' | 'above seed';
  readonly x: number;
  readonly y: number;
  /** Jars it is said of: lit with any of them. */
  readonly jars: readonly number[];
}

/** A line of lettering, in screen pixels. */
export const LINE = 20;
const GAP = 6;
/** From a jar's wall to the letter at its side, and how far below its lid it begins. */
const BESIDE = 3;
/** How far the glow of an advised seed reaches beyond its jar. */
const GLOW = 6;

const CELL = 96;

/** Boxes by grid cell, so that a test of overlap looks at neighbours only. */
class Taken {
  readonly #cells = new Map<string, Box[]>();

  static *#keys(box: Box): Generator<string> {
    for (let x = Math.floor(box.left / CELL); x <= Math.floor(box.right / CELL); x += 1)
      for (let y = Math.floor(box.top / CELL); y <= Math.floor(box.bottom / CELL); y += 1) yield `${x} ${y}`;
  }

  add(box: Box): void {
    for (const key of Taken.#keys(box)) {
      const cell = this.#cells.get(key);
      if (cell) cell.push(box);
      else this.#cells.set(key, [box]);
    }
  }

  isFree(box: Box, apart = 0): boolean {
    for (const key of Taken.#keys(box))
      for (const other of this.#cells.get(key) ?? [])
        if (
          box.left < other.right + apart &&
          other.left - apart < box.right &&
          box.top < other.bottom &&
          other.top < box.bottom
        )
          return false;
    return true;
  }
}

/** A label's batch ("14 Mar plain") and its letter ("b"). */
export function splitLabel(label: string): { batch: string; letter: string } {
  const at = label.lastIndexOf(' ');
  return at < 0 ? { batch: '', letter: label } : { batch: label.slice(0, at), letter: label.slice(at + 1) };
}

const yearOf = ({ madeOn }: LabelPlace): string => madeOn?.slice(0, 4) ?? '';

/** The batch's day and word without a year, whether or not its label has one. */
function dayOf(place: LabelPlace): { readonly day: string; readonly whole: string } {
  const { batch } = splitLabel(place.label);
  if (place.madeOn === null) return { day: batch, whole: batch };
  const whole = batch.replace(` ${yearOf(place)}`, '');
  const own = ` ${place.line}`;
  return {
    // A jar of a range of days stands in their middle, and says "about".
    day: `${batch.startsWith('about ') ? 'about ' : ''}${dayLabel(place.madeOn, false)}`,
    whole: whole.endsWith(own) ? whole.slice(0, -own.length) : whole,
  };
}

/** Batch-mates that stand one under another in one column of a lane, from the top down. */
function runsOf(places: readonly LabelPlace[], row: number): LabelPlace[][] {
  const columns = new Map<string, LabelPlace[]>();
  for (const place of places) {
    const column = `${place.lane} ${Math.round(place.jar.left)}`;
    const list = columns.get(column);
    if (list) list.push(place);
    else columns.set(column, [place]);
  }
  const runs: LabelPlace[][] = [];
  for (const list of columns.values()) {
    let above: LabelPlace | null = null;
    for (const place of list.toSorted((a, b) => a.jar.top - b.jar.top)) {
      const mates = above !== null && sameBatch(place, above) && place.jar.top - above.jar.top <= row * 1.3;
      if (mates) runs.at(-1)?.push(place);
      else runs.push([place]);
      above = place;
    }
  }
  return runs;
}

const middle = (jar: Box): number => (jar.left + jar.right) / 2;

interface Sheet {
  /** From one row to the next, in screen pixels. */
  readonly row: number;
  /** Free between a jar's right wall and the next column. */
  readonly beside: number;
  /** Lower edge of the days above each lane; null where its level row lies too far below: there days stand at the jars. */
  readonly foot: readonly (number | null)[];
  /** Lines between two lanes: with two a year stands below its day, with one beside it. */
  readonly lines: 1 | 2;
  /** The lettering's size against 15.5 px. */
  readonly scale: number;
  /** Days left of this are out of the window: the first one right of it says its year. */
  readonly from: number;
  /** The window's right edge: what is said of a seed does not run over it. */
  readonly to: number;
  readonly measure: (text: string) => number;
}

/**
 * All that is written, each where it lies on nothing else.
 *
 * The days above a lane are thinned out from the newest back; the year stands below a day where it is another than that
 * of the day before it in its lane, and below the first in the window.
 */
export function writtenLabels(places: readonly LabelPlace[], sheet: Sheet): Written[] {
  const taken = new Taken();
  for (const { jar } of places) taken.add(jar);
  const runs = runsOf(places, sheet.row);
  const main = runs.filter((run) => run.some(({ level }) => level));
  const written = daysAbove(main, sheet, taken);
  for (const place of places) if (place.seed) written.push(...seedWords(place, sheet, taken));
  const above = new Map(
    main.flatMap(([first]) =>
      first && sheet.foot[first.lane] !== null ? [[columnOf(first), first] as const] : [],
    ),
  );
  for (const run of runs) {
    const [first] = run;
    if (!first) continue;
    // What stands above its column says the day of its mates too; a branch of another day says its own, with the year
    // where that is another than the one written to the left of it.
    const own = above.get(columnOf(first));
    const head = own ?? nearestLeft(main, first);
    const dated = own !== undefined && sameBatch(own, first);
    const { whole } = dayOf(first);
    const isFirst =
      head === undefined ||
      (own === undefined && head.jar.left < sheet.from && first.jar.left >= sheet.from && main.includes(run));
    const text = !isFirst && yearOf(head) === yearOf(first) ? whole : `${whole} ${yearOf(first)}`;
    const said = dated || branchDay(run, text.trim(), sheet, taken, written);
    for (const place of run) {
      const { letter } = splitLabel(place.label);
      const texts = said || place !== first ? [letter] : [`${text} ${letter}`, letter];
      written.push(...besideJar(place, texts, sheet, taken));
    }
  }
  return written;
}

const columnOf = (place: LabelPlace | undefined): string =>
  place === undefined ? '' : `${place.lane} ${Math.round(place.jar.left)}`;

const sameBatch = (a: LabelPlace, b: LabelPlace): boolean =>
  a.madeOn === b.madeOn && splitLabel(a.label).batch === splitLabel(b.label).batch;

/** The batch that goes on in the nearest column left of a jar. */
function nearestLeft(main: readonly (readonly LabelPlace[])[], of: LabelPlace): LabelPlace | undefined {
  let best: LabelPlace | undefined;
  for (const [first] of main)
    if (first && first.lane === of.lane && first.jar.left < of.jar.left)
      if (best === undefined || first.jar.left > best.jar.left) best = first;
  return best;
}

/** The first of some texts that has room at the upper right of a jar. */
function besideJar(place: LabelPlace, texts: readonly string[], sheet: Sheet, taken: Taken): Written[] {
  const left = place.jar.right + BESIDE + (place.seed === null ? 0 : GLOW * sheet.scale);
  const { top } = place.jar;
  const text = texts.find((one) => {
    const wide = sheet.measure(one);
    return (
      wide + left - place.jar.right + 2 <= sheet.beside &&
      taken.isFree({ left, right: left + wide, top, bottom: top + LINE * sheet.scale })
    );
  });
  if (text === undefined) return [];
  taken.add({ left, right: left + sheet.measure(text), top, bottom: top + LINE * sheet.scale });
  return [{ key: `letter ${place.index}`, text, at: 'side', x: left, y: top, jars: [place.index] }];
}

function seedWords(place: LabelPlace, sheet: Sheet, taken: Taken): Written[] {
  const text = place.seed === 'kept back' ? 'next seed, kept back' : 'next seed';
  const line = LINE * sheet.scale;
  const half = sheet.measure(text) / 2;
  const own = middle(place.jar);
  const end = sheet.to - half - GAP;
  const x = place.jar.left < sheet.to ? Math.min(own, Math.max(end, place.jar.left)) : own;
  const glow = GLOW * sheet.scale;
  const top = [place.jar.bottom + glow, place.jar.top - glow - line].find((one) =>
    taken.isFree({ left: x - half, right: x + half, top: one, bottom: one + line }),
  );
  if (top === undefined) return [];
  taken.add({ left: x - half, right: x + half, top, bottom: top + line });
  return [{ key: `seed ${place.index}`, text, at: 'above seed', x, y: top, jars: [place.index] }];
}

/** The days of the batches that go on, in a row above each lane, and their years. */
function daysAbove(main: readonly (readonly LabelPlace[])[], sheet: Sheet, taken: Taken): Written[] {
  const byLane = new Map<number, (readonly LabelPlace[])[]>();
  for (const run of main) {
    const lane = run[0]?.lane ?? 0;
    const list = byLane.get(lane);
    if (list) list.push(run);
    else byLane.set(lane, [run]);
  }
  return [...byLane].flatMap(([lane, runs]) => {
    const foot = sheet.foot[lane] ?? null;
    if (foot === null) return [];
    const left = ([first]: readonly LabelPlace[]): number => first?.jar.left ?? 0;
    const inOrder = runs.toSorted((a, b) => left(a) - left(b));
    const newest = inOrder.pop();
    const before = inOrder.at(-1)?.[0];
    // The newest is always written; of the others those that have room, from the left.
    const written = newest ? dayAbove(newest, before ? yearOf(before) : '', foot, sheet, taken) : [];
    let year = '';
    for (const run of inOrder) {
      const own = dayAbove(run, year, foot, sheet, taken);
      written.push(...own);
      if (own.length > 0 && run[0] && middle(run[0].jar) >= sheet.from) year = yearOf(run[0]);
    }
    return written;
  });
}

/** One of them, with its year where `before` is another; nothing where it has no room. */
function dayAbove(
  run: readonly LabelPlace[],
  before: string,
  foot: number,
  sheet: Sheet,
  taken: Taken,
): Written[] {
  const [head] = run;
  if (!head) return [];
  const { day, whole } = dayOf(head);
  const x = middle(head.jar);
  const year = x < sheet.from || yearOf(head) === before ? '' : yearOf(head);
  const below = sheet.lines === 2;
  const line = LINE * sheet.scale;
  const top = foot - sheet.lines * line;
  const text = (below || year === '' ? [whole, day] : [`${day} ${year}`]).find((one) => {
    const half = Math.max(sheet.measure(one), below ? sheet.measure(year) : 0) / 2;
    return taken.isFree({ left: x - half, right: x + half, top, bottom: foot }, GAP);
  });
  if (text === undefined) return [];
  const half = Math.max(sheet.measure(text), below ? sheet.measure(year) : 0) / 2;
  taken.add({ left: x - half, right: x + half, top, bottom: foot });
  const jars = run.map(({ index }) => index);
  const written: Written[] = [{ key: `day ${head.index}`, text, at: 'above', x, y: top, jars }];
  if (below && year !== '')
    written.push({ key: `year ${head.index}`, text: year, at: 'above', x, y: foot - line, jars });
  return written;
}

/** The day of a branch, under its last jar or over its first; false where neither has room. */
function branchDay(
  run: readonly LabelPlace[],
  text: string,
  sheet: Sheet,
  taken: Taken,
  written: Written[],
): boolean {
  const [first, last] = [run[0], run.at(-1)];
  if (!first || !last || text === '') return false;
  const line = LINE * sheet.scale;
  const half = sheet.measure(text) / 2;
  const x = middle(last.jar);
  for (const top of [last.jar.bottom + 1, first.jar.top - line]) {
    const box = { left: x - half, right: x + half, top, bottom: top + line };
    if (!taken.isFree(box, 2)) continue;
    taken.add(box);
    const jars = run.map(({ index }) => index);
    written.push({ key: `branch ${first.index}`, text, at: 'above', x, y: top, jars });
    return true;
  }
  return false;
}
