// The whole family as columns to draw from: where each jar stands, what it hangs from, what else seeded it. Positions are
// grid steps; the screen makes pixels of them.
import { FLAG } from '../shapes/drawing-flags';
import { SET_WORDS } from '../ledger/jar-fields';
import type { SetWord } from '../ledger/records';
import type { Drawing } from '../contract';
import { layAlongCalendar } from './calendar';
import { type FamilyColumns, UNKNOWN_DAY } from './counting';
import type { Family } from './family-version';
import { UNKNOWN_PAST_NAME } from './labels';
import { compareJars } from './jar-order';
import { seedJars } from './primary-seed';
import { layRows, type Rows } from './drawing-rows';
import { openingSpacing } from './opening-spacing';
import type { FamilyJar } from './lineage-shapes';

/** What the drawing shows of jars and sources beyond their lineage; asked once for each. */
export interface Looks {
  /** By jar key. */
  jar(key: number): {
    readonly setWord: SetWord | null;
    readonly outcomeKnown: boolean;
    readonly onShelf: boolean | null;
  };
  /**
   * Whether something of a jar may still be there: only then does it say that it is to be looked at, so that the sign still tells
   * something long after one jar spoiled. Asked of jars with such a caution alone.
   */
  mayBeThere(key: number): boolean;
  /** Printed name of the line founded by a batch, and its permanent id. */
  lineName(batch: number): string;
  lineId(batch: number): string;
  /** Designations of the strains a source declares. */
  strainsOf(source: number): readonly string[];
}

const UNKNOWN_SET_WORD = 255;
const WEAK_UP_TO = SET_WORDS.indexOf('soft');

/**
 * Columns of a drawing; index i is one jar, in order of key.
 *
 * A jar hangs from its deepest seed (then the larger share, the earlier day, the label), so that its column is its
 * generation; its other seeds are ribbons that move nothing. Rows are the same in both spacings.
 * @param wanted null: the spacing that shows the newest jars of all lines that are alive
 */
export function drawFamily(family: Family, looks: Looks, wanted: 'generation' | 'calendar' | null): Drawing {
  const { columns } = family;
  const slots = slotsByKey(columns);
  const indexOf = new Int32Array(columns.jars.length).fill(-1);
  slots.forEach((slot, i) => {
    indexOf[slot] = i;
  });
  const seeds = seedsOf(columns, slots, indexOf);
  const generation = slots.map((slot) => columns.deepest[slot] as number);
  const day = slots.map((slot) => columns.day[slot] as number);
  const days = inFloats(day, (one) => (one === UNKNOWN_DAY ? NaN : one));
  const order = inOrder(columns, slots).map((slot) => indexOf[slot] as number);
  const { parent } = seeds;
  const { laneOf, roots } = lanesOf(columns, slots, order, parent);
  const { row: y, ...rows } = layRows({
    order,
    parent,
    column: generation,
    day,
    laneOf,
    lanes: roots.length,
  });
  const spacing = wanted ?? openingSpacing({ lane: rows.lane, generation, day }, roots.length);
  const { x, ticks } =
    spacing === 'calendar'
      ? layAlongCalendar(days, parent, y, rows.seedsFirst)
      : { x: inFloats(generation, (deepest) => deepest - 1), ticks: [] };
  return {
    spacing,
    keys: slots.map((slot) => columns.index.keyOf[slot] as number),
    x,
    y,
    ...seeds,
    generation,
    days,
    lane: rows.lane,
    ...looksOf(family, looks, slots),
    founders: foundersOf(family, looks, indexOf),
    lanes: headsOf(family, looks, roots, rows, x),
    width: slots.length > 0 ? mostOf(x) + 1 : 0,
    height: slots.length > 0 ? mostOf(y) + 1 : 0,
    ticks: [...ticks],
  };
}

/** Typed arrays have no map to another kind, and their `from` walks an iterator: ten times slower. */
function inFloats(from: Int32Array, to: (value: number) => number): Float64Array<ArrayBuffer> {
  const floats = new Float64Array(from.length);
  for (let i = 0; i < from.length; i++) floats[i] = to(from[i] as number);
  return floats;
}

function mostOf(values: Float64Array): number {
  let most = 0;
  for (const value of values) if (value > most) most = value;
  return most;
}

function slotsByKey({ jars, index }: FamilyColumns): Int32Array<ArrayBuffer> {
  const slots = new Int32Array(jars.length);
  let found = 0;
  let sorted = true;
  for (let slot = 0; slot < jars.length; slot++) {
    if (!jars[slot]) continue;
    const last = found > 0 ? (index.keyOf[slots[found - 1] as number] as number) : -Infinity;
    if ((index.keyOf[slot] as number) < last) sorted = false;
    slots[found++] = slot;
  }
  const all = slots.slice(0, found);
  return sorted ? all : all.toSorted((a, b) => (index.keyOf[a] as number) - (index.keyOf[b] as number));
}

/** The same slots in the order jars are met in: mostly that of their keys, and then nothing has to be sorted. */
function inOrder(columns: FamilyColumns, slots: Int32Array<ArrayBuffer>): Int32Array<ArrayBuffer> {
  for (let i = 1; i < slots.length; i++)
    if (compareJars(columns, slots[i - 1] as number, slots[i] as number) > 0)
      return slots.toSorted((a, b) => compareJars(columns, a, b));
  return slots;
}

type Seeds = Pick<Drawing, 'parent' | 'parentShare' | 'otherChild' | 'otherSeed' | 'otherShare'>;

/** What each jar hangs from, and its other seeds. */
function seedsOf(columns: FamilyColumns, slots: Int32Array, indexOf: Int32Array): Seeds {
  const parent = new Int32Array(slots.length).fill(-1);
  const parentShare = new Float64Array(slots.length);
  const child: number[] = [];
  const seed: number[] = [];
  const share: number[] = [];
  for (let i = 0; i < slots.length; i++) {
    const slot = slots[i] as number;
    const from = columns.seedSlots[slot] as readonly number[];
    if (from.length === 1) {
      // Nearly all jars: nothing to weigh against anything.
      parent[i] = (from[0] as number) < 0 ? -1 : (indexOf[from[0] as number] as number);
      parentShare[i] = (from[0] as number) < 0 ? 0 : 1;
      continue;
    }
    const [first, ...others] = seedJars(columns, slot);
    if (!first) continue;
    parent[i] = indexOf[first.slot] as number;
    parentShare[i] = first.share;
    for (const other of others) {
      child.push(i);
      seed.push(indexOf[other.slot] as number);
      share.push(other.share);
    }
  }
  return {
    parent,
    parentShare,
    otherChild: Int32Array.from(child),
    otherSeed: Int32Array.from(seed),
    otherShare: Float64Array.from(share),
  };
}

/**
 * A lane for each batch of founders, and for each batch of jars whose past is unknown; in the order of their days.
 * @returns by index the lane of each jar that hangs from none, and for each lane the slot of its first such jar
 */
function lanesOf(
  columns: FamilyColumns,
  slots: Int32Array,
  order: Int32Array,
  parent: Int32Array,
): { readonly laneOf: Int32Array; readonly roots: readonly number[] } {
  const laneOf = new Int32Array(slots.length);
  const roots: number[] = [];
  const known = new Map<string, number>();
  for (const i of order) {
    if ((parent[i] as number) >= 0) continue;
    const slot = slots[i] as number;
    const name = `${columns.jars[slot]?.batch} ${founds(columns, slot)}`;
    let lane = known.get(name);
    if (lane === undefined) {
      known.set(name, (lane = roots.length));
      roots.push(slot);
    }
    laneOf[i] = lane;
  }
  return { laneOf, roots };
}

/** Whether a jar that hangs from none founds a line: its past is known. */
const founds = (columns: FamilyColumns, slot: number): boolean => columns.lineSet[slot] !== 0;

function headsOf(
  { columns }: Family,
  looks: Looks,
  roots: readonly number[],
  rows: Omit<Rows, 'row'>,
  x: Float64Array,
): Drawing['lanes'] {
  const leftmost = new Float64Array(roots.length).fill(Infinity);
  rows.lane.forEach((lane, i) => {
    if ((x[i] as number) < (leftmost[lane] as number)) leftmost[lane] = x[i] as number;
  });
  return roots.map((slot, lane) => {
    const jar = columns.jars[slot] as FamilyJar;
    const known = founds(columns, slot);
    return {
      line: known ? looks.lineId(jar.batch) : null,
      name: known ? looks.lineName(jar.batch) : UNKNOWN_PAST_NAME,
      founded: jar.madeOn,
      top: rows.top[lane] as number,
      bottom: rows.bottom[lane] as number,
      level: rows.level[lane] as number,
      x: leftmost[lane] as number,
    };
  });
}

/** How each jar is drawn. */
function looksOf(family: Family, looks: Looks, slots: Int32Array): Pick<Drawing, 'setWord' | 'flags'> {
  const { columns } = family;
  const setWord = new Uint8Array(slots.length).fill(UNKNOWN_SET_WORD);
  const flags = new Uint8Array(slots.length);
  for (let i = 0; i < slots.length; i++) {
    const slot = slots[i] as number;
    const jar = columns.jars[slot] as FamilyJar;
    const look = looks.jar(jar.key);
    const word = look.setWord === null ? -1 : SET_WORDS.indexOf(look.setWord);
    if (word >= 0) setWord[i] = word;
    const level = family.cautionLevelAt(slot);
    flags[i] =
      (jar.spoiled ? FLAG.spoiled : 0) |
      (level === 'set aside' ? FLAG.setAside : 0) |
      (level === 'look' && looks.mayBeThere(jar.key) ? FLAG.look : 0) |
      (look.onShelf === true ? FLAG.onShelf : 0) |
      (look.outcomeKnown ? FLAG.outcomeKnown : 0) |
      (jar.lost ? FLAG.lost : 0) |
      (word >= 0 && word <= WEAK_UP_TO ? FLAG.weak : 0) |
      (columns.atLeast[slot] ? FLAG.atLeast : 0);
  }
  return { setWord, flags };
}

function foundersOf(family: Family, looks: Looks, indexOf: Int32Array): Drawing['founders'] {
  return family.lines.map((line) => {
    const sources = new Set(
      line.founders.flatMap((key) => family.seedsOf(key).flatMap((s) => s.source ?? [])),
    );
    return {
      line: looks.lineName(line.batch),
      jars: line.founders.map((key) => indexOf[family.columns.slot(key)] as number),
      sources: [...sources]
        .toSorted((a, b) => a - b)
        .map((key) => ({
          name: family.source(key)?.name ?? '',
          strains: [...looks.strainsOf(key)],
          culture: family.source(key)?.culture ?? false,
        })),
    };
  });
}
