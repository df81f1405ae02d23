// The drawing's tree as arrays: who hangs from whom, for walking, for the screen reader's numbers, and for lighting
// descent both ways (there all seeds count, not only the one a jar hangs from). Pure; linear in jars and seedings.

interface Columns {
  readonly y: Float64Array;
  readonly parent: Int32Array;
  readonly generation: Int32Array;
  readonly otherChild: Int32Array;
  readonly otherSeed: Int32Array;
}

/** Lists of indices packed one after another: list i runs from start[i] to start[i + 1]. */
interface Lists {
  readonly start: Int32Array;
  readonly items: Int32Array;
}

export interface Kin {
  /** Children in the tree, from the top row down. */
  readonly children: Lists;
  readonly roots: Int32Array;
  /** All other seedings, both ways. */
  readonly otherSeeds: Lists;
  readonly otherChildren: Lists;
  readonly parent: Int32Array;
  /** For the screen reader: depth in the tree from 1, place among siblings from 1. */
  readonly level: Int32Array;
  readonly place: Int32Array;
  /** Jars of a column from the top row down, and where each stands in its column. */
  readonly columns: ReadonlyMap<number, Int32Array>;
  readonly placeInColumn: Int32Array;
}

function listsOf(count: number, owner: Int32Array, item: (at: number) => number): Lists {
  const start = new Int32Array(count + 1);
  for (const one of owner) if (one >= 0) start[one + 1] = (start[one + 1] ?? 0) + 1;
  for (let i = 0; i < count; i += 1) start[i + 1] = (start[i + 1] ?? 0) + (start[i] ?? 0);
  const items = new Int32Array(start[count] ?? 0);
  const next = start.slice();
  owner.forEach((one, at) => {
    if (one < 0) return;
    const place = next[one] ?? 0;
    items[place] = item(at);
    next[one] = place + 1;
  });
  return { start, items };
}

/** One packed list, not copied. */
export const listOf = (lists: Lists, index: number): Int32Array =>
  lists.items.subarray(lists.start[index] ?? 0, lists.start[index + 1] ?? 0);

/** Builds all lists of a drawing. */
export function kinOf(drawing: Columns): Kin {
  const { y, parent, generation } = drawing;
  const count = parent.length;
  const byRow = (a: number, b: number): number => (y[a] ?? 0) - (y[b] ?? 0) || a - b;
  const children = listsOf(count, parent, (at) => at);
  for (let i = 0; i < count; i += 1) listOf(children, i).sort(byRow);
  const roots = Int32Array.from(parent.keys())
    .filter((index) => (parent[index] ?? -1) < 0)
    .toSorted(byRow);

  const level = new Int32Array(count);
  const place = new Int32Array(count);
  const waiting: number[] = [];
  const number = (siblings: Int32Array, depth: number): void =>
    siblings.forEach((index, at) => {
      level[index] = depth;
      place[index] = at + 1;
      waiting.push(index);
    });
  number(roots, 1);
  while (waiting.length > 0) {
    const index = waiting.pop() ?? 0;
    number(listOf(children, index), (level[index] ?? 0) + 1);
  }

  const gathered = new Map<number, number[]>();
  generation.forEach((column, index) => {
    const list = gathered.get(column);
    if (list) list.push(index);
    else gathered.set(column, [index]);
  });
  const columns = new Map<number, Int32Array>();
  const placeInColumn = new Int32Array(count);
  for (const [column, list] of gathered) {
    const sorted = Int32Array.from(list).toSorted(byRow);
    columns.set(column, sorted);
    sorted.forEach((index, at) => {
      placeInColumn[index] = at;
    });
  }
  return {
    children,
    roots,
    parent,
    level,
    place,
    columns,
    placeInColumn,
    otherSeeds: listsOf(count, drawing.otherChild, (at) => drawing.otherSeed[at] ?? 0),
    otherChildren: listsOf(count, drawing.otherSeed, (at) => drawing.otherChild[at] ?? 0),
  };
}

export type Step = 'seed' | 'descendant' | 'above' | 'below' | 'first' | 'newest';

/** Where a step leads from a jar; the jar itself where there is nothing that way. */
export function walk(
  kin: Kin,
  generation: Int32Array,
  y: Float64Array,
  from: number,
  step: Step,
  newest: number,
): number {
  const beside = (by: number): number => {
    const column = kin.columns.get(generation[from] ?? 0);
    return column?.[(kin.placeInColumn[from] ?? 0) + by] ?? from;
  };
  switch (step) {
    case 'seed': {
      const seed = kin.parent[from] ?? -1;
      return seed >= 0 ? seed : from;
    }
    case 'descendant': {
      // The child that leads on, else the nearest row.
      const rank = (child: number): number =>
        (listOf(kin.children, child).length > 0 ? 0 : 1e9) + Math.abs((y[child] ?? 0) - (y[from] ?? 0));
      return listOf(kin.children, from).reduce(
        (best, child) => (best === from || rank(child) < rank(best) ? child : best),
        from,
      );
    }
    case 'above':
      return beside(-1);
    case 'below':
      return beside(1);
    case 'first':
      return kin.roots[0] ?? from;
    case 'newest':
      return newest;
  }
}

/** Which jars are lit, by index. */
export type Lit = Uint8Array;

/** A jar, all it descends from and all that descends from it, over every seeding: 1 at each such index, else 0. */
export function litBy(kin: Kin, index: number): Lit {
  const lit = new Uint8Array(kin.parent.length);
  const waiting: number[] = [];
  const reach = (lists: readonly Lists[], parent: Int32Array | null): void => {
    const seen = new Uint8Array(lit.length);
    waiting.push(index);
    seen[index] = 1;
    while (waiting.length > 0) {
      const from = waiting.pop() ?? 0;
      lit[from] = 1;
      const meet = (other: number): void => {
        if (other < 0 || seen[other] === 1) return;
        seen[other] = 1;
        waiting.push(other);
      };
      if (parent) meet(parent[from] ?? -1);
      for (const list of lists) listOf(list, from).forEach(meet);
    }
  };
  reach([kin.otherSeeds], kin.parent);
  reach([kin.children, kin.otherChildren], null);
  return lit;
}

/** The focused jar and its nearest kin (at most `most`): mounted also when all else is marks. */
export function nearKin(kin: Kin, index: number, most: number): number[] {
  const parent = kin.parent[index] ?? -1;
  const siblings = parent >= 0 ? listOf(kin.children, parent) : kin.roots;
  const at = (kin.place[index] ?? 1) - 1;
  const near = siblings.subarray(Math.max(0, at - 4), at + 5);
  const all = [
    index,
    ...(parent >= 0 ? [parent] : []),
    ...near,
    ...listOf(kin.children, index).subarray(0, most),
  ];
  return [...new Set(all)].slice(0, most);
}
