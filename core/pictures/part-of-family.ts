// A part of the family's drawing: only some of its jars, with no empty columns or rows between them. Pure.
import type { Drawing } from '../contract';

/** One jar as it is placed on paper: grid steps, and what is shown of it. */
export interface PaperJar {
  /** Index in the drawing that it was taken from. */
  readonly index: number;
  readonly x: number;
  readonly y: number;
  readonly lane: number;
  readonly seeds: readonly { readonly index: number; readonly share: number }[];
}

/** What is drawn of a family on paper. */
export interface PaperFamily {
  readonly jars: readonly PaperJar[];
  /** Lanes of which a jar is in it, the first first, with their first row. */
  readonly lanes: readonly { readonly lane: number; readonly row: number }[];
  readonly columns: number;
  readonly rows: number;
}

/** Each seed of each jar with its share; shares unknown are shown equal. */
function seedsIn(drawing: Drawing): Map<number, { index: number; share: number }[]> {
  const found = new Map<number, { index: number; share: number }[]>();
  const add = (child: number, index: number, share: number): void => {
    const seeds = found.get(child) ?? [];
    seeds.push({ index, share });
    found.set(child, seeds);
  };
  drawing.parent.forEach((seed, child) => seed >= 0 && add(child, seed, drawing.parentShare[child] ?? NaN));
  drawing.otherChild.forEach((child, at) =>
    add(child, drawing.otherSeed[at] ?? 0, drawing.otherShare[at] ?? NaN),
  );
  for (const seeds of found.values())
    for (const seed of seeds) if (!Number.isFinite(seed.share)) seed.share = 1 / seeds.length;
  return found;
}

/** By value its place among those that occur. */
const ranks = (values: readonly number[]): Map<number, number> =>
  new Map([...new Set(values)].toSorted((a, b) => a - b).map((value, at) => [value, at]));

/** The jars with those keys as they stand beside each other once the others are left out. */
export function partOfFamily(drawing: Drawing, keys: ReadonlySet<number>): PaperFamily {
  const indices = [...drawing.keys.keys()].filter((index) => keys.has(drawing.keys[index] ?? -1));
  const kept = new Set(indices);
  const seeds = seedsIn(drawing);
  const rowOf = ranks(indices.map((index) => drawing.y[index] ?? 0));
  const first = Math.min(...indices.map((index) => drawing.x[index] ?? 0));
  const jars = indices.map((index): PaperJar => ({
    index,
    x: (drawing.x[index] ?? 0) - first,
    y: rowOf.get(drawing.y[index] ?? 0) ?? 0,
    lane: drawing.lane[index] ?? 0,
    seeds: (seeds.get(index) ?? []).filter((seed) => kept.has(seed.index)),
  }));
  const lanes = new Map<number, number>();
  for (const { lane, y } of jars) lanes.set(lane, Math.min(lanes.get(lane) ?? Infinity, y));
  return {
    jars,
    lanes: [...lanes].map(([lane, row]) => ({ lane, row })).toSorted((a, b) => a.row - b.row),
    columns: jars.length === 0 ? 0 : Math.max(...jars.map(({ x }) => x)) + 1,
    rows: rowOf.size,
  };
}
