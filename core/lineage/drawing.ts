// The whole family as columns to draw from: where each jar stands, what it hangs from, what else seeded it. Positions are
// grid steps; the screen makes pixels of them.
import { SET_WORDS, type SetWord } from '../ledger/records';
import type { Drawing } from '../contract';
import { dayNumber, layAlongCalendar } from './calendar';
import type { Family } from './family-version';
import { compareJars, seedJars } from './primary-seed';
import { layRows } from './rows';

/** What the drawing shows of jars and sources beyond their lineage; asked once for each. */
export interface Looks {
  /** By jar key. */
  jar(key: number): {
    readonly setWord: SetWord | null;
    readonly outcomeKnown: boolean;
    readonly onShelf: boolean | null;
  };
  /** Printed name of the line founded by a batch. */
  lineName(batch: number): string;
  /** Designations of the strains a source declares. */
  strainsOf(source: number): readonly string[];
}

export const FLAGS = {
  spoiled: 1,
  onHold: 2,
  look: 4,
  onShelf: 8,
  outcomeKnown: 16,
  lost: 32,
  weak: 64,
  atLeast: 128,
} as const;

const UNKNOWN_SET_WORD = 255;
const WEAK_UP_TO = SET_WORDS.indexOf('soft');

/**
 * Columns of a drawing; index i is one jar, in order of key.
 *
 * A jar hangs from its deepest seed (then the larger share, the earlier day, the label), so that its column is its
 * generation; its other seeds are ribbons that move nothing. Rows are the same in both spacings.
 */
export function drawFamily(family: Family, looks: Looks, spacing: 'generation' | 'calendar'): Drawing {
  const { columns } = family;
  const slots = columns.jars
    .flatMap((jar, slot) => (jar ? [slot] : []))
    .toSorted((a, b) => (columns.index.keyOf[a] as number) - (columns.index.keyOf[b] as number));
  const size = slots.length;
  const indexOf = new Int32Array(columns.jars.length).fill(-1);
  slots.forEach((slot, i) => {
    indexOf[slot] = i;
  });

  const keys = new Int32Array(size);
  const parent = new Int32Array(size).fill(-1);
  const parentShare = new Float64Array(size);
  const generation = new Int32Array(size);
  const setWord = new Uint8Array(size).fill(UNKNOWN_SET_WORD);
  const flags = new Uint8Array(size);
  const other: { child: number; seed: number; share: number }[] = [];
  for (let i = 0; i < size; i++) {
    const slot = slots[i] as number;
    const key = columns.index.keyOf[slot] as number;
    keys[i] = key;
    generation[i] = columns.deepest[slot] as number;
    seedJars(columns, slot).forEach((seed, rank) => {
      const at = indexOf[seed.slot] as number;
      if (rank === 0) {
        parent[i] = at;
        parentShare[i] = seed.share;
      } else other.push({ child: i, seed: at, share: seed.share });
    });
    const look = looks.jar(key);
    const word = look.setWord === null ? -1 : SET_WORDS.indexOf(look.setWord);
    if (word >= 0) setWord[i] = word;
    flags[i] = flagsOf(family, key, look, word);
  }

  const order = Int32Array.from(
    slots.toSorted((a, b) => compareJars(columns, a, b)),
    (slot) => indexOf[slot] as number,
  );
  const y = layRows(order, parent, generation);
  const { x, ticks } =
    spacing === 'calendar'
      ? layAlongCalendar(
          slots.map((slot) => columns.jars[slot]?.madeOn ?? null),
          parent,
          y,
          byGeneration(generation),
        )
      : { x: Float64Array.from(generation, (deepest) => deepest - 1), ticks: [] };
  return {
    spacing,
    keys,
    x,
    y,
    parent,
    parentShare,
    generation,
    days: Float64Array.from(slots, (slot) => {
      const madeOn = columns.jars[slot]?.madeOn ?? null;
      return madeOn === null ? NaN : dayNumber(madeOn);
    }),
    setWord,
    flags,
    otherChild: Int32Array.from(other, ({ child }) => child),
    otherSeed: Int32Array.from(other, ({ seed }) => seed),
    otherShare: Float64Array.from(other, ({ share }) => share),
    founders: foundersOf(family, looks, indexOf),
    width: x.reduce((most, at) => Math.max(most, at), 0) + (size > 0 ? 1 : 0),
    height: y.reduce((most, at) => Math.max(most, at), 0) + (size > 0 ? 1 : 0),
    ticks: [...ticks],
  };
}

function flagsOf(family: Family, key: number, look: ReturnType<Looks['jar']>, word: number): number {
  const jar = family.jar(key);
  const level = family.cautionLevelOf(key);
  return (
    (jar.spoiled ? FLAGS.spoiled : 0) |
    (level === 'on hold' ? FLAGS.onHold : 0) |
    (level === 'look' ? FLAGS.look : 0) |
    (look.onShelf === true ? FLAGS.onShelf : 0) |
    (look.outcomeKnown ? FLAGS.outcomeKnown : 0) |
    (jar.lost ? FLAGS.lost : 0) |
    (word >= 0 && word <= WEAK_UP_TO ? FLAGS.weak : 0) |
    (family.generationOf(key).atLeast ? FLAGS.atLeast : 0)
  );
}

/** Indices with seeds before what they seeded: a jar is always deeper than its seeds. */
function byGeneration(generation: Int32Array): Int32Array {
  return Int32Array.from(generation.keys()).toSorted(
    (a, b) => (generation[a] as number) - (generation[b] as number) || a - b,
  );
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
