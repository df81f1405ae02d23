// A row for every jar, so that a line runs level: the path that goes on, to the jar made last, is one straight row;
// batch-mates and branches stand above and below it in their order, packed as closely as the columns allow.
//
// One pass from the newest jars back to the founders, over typed arrays. What hangs from a jar is a block, and all that
// matters of a block is its two contours: the lowest and the highest row it takes in each column, kept as linked runs of
// columns, each a step from the run before. To pack one block against another, the two facing contours are walked
// together as far as the shorter goes; what was walked is covered then and never walked again, so that all of it is
// linear. (Threaded contours: Reingold & Tilford 1981, IEEE TSE SE-7(2):223-228; here without their centring.)

/** What the rows rest on. Jars by index; those that hang from no other are in a lane given for them. */
export interface Hanging {
  /** All jars; those that hang from the same one stand in this order from top to bottom. */
  readonly order: Int32Array;
  /** For each jar the jar it hangs from, or -1. */
  readonly parent: Int32Array;
  /** For each jar its generation: larger than its parent's, maybe by more than one. */
  readonly column: Int32Array;
  /** For each jar its day as a number; of an unknown day less than any. What goes on is what was made last. */
  readonly day: Int32Array;
  /** For each jar that hangs from none its lane, from 0; not read for the others. */
  readonly laneOf: Int32Array;
  readonly lanes: number;
}

/** Rows from the top, in steps of one jar, and the lanes they make: each a band of rows, in their order. */
export interface Rows {
  readonly row: Float64Array<ArrayBuffer>;
  /** For each jar its lane. */
  readonly lane: Int32Array<ArrayBuffer>;
  /** For each lane its first and last row, and the row of the path that goes on. A lane without jars is 0, -1, 0. */
  readonly top: Int32Array<ArrayBuffer>;
  readonly bottom: Int32Array<ArrayBuffer>;
  readonly level: Int32Array<ArrayBuffer>;
  /** All jars, each after what it hangs from. */
  readonly seedsFirst: Int32Array<ArrayBuffer>;
}

/** No jar, no run. */
const NONE = -1;

/** Who hangs from whom, as linked lists. A lane is the node after the last jar from which its founders hang. */
interface Lists {
  readonly first: Int32Array;
  readonly next: Int32Array;
  readonly before: Int32Array;
  /** All nodes, each after what it hangs from. */
  readonly nodes: Int32Array<ArrayBuffer>;
}

function listsOf({ order, parent, laneOf, lanes }: Hanging): Lists {
  const jars = parent.length;
  const first = new Int32Array(jars + lanes).fill(NONE);
  const next = new Int32Array(jars).fill(NONE);
  const before = new Int32Array(jars).fill(NONE);
  for (let i = jars - 1; i >= 0; i--) {
    const jar = order[i] as number;
    const own = parent[jar] as number;
    const above = own >= 0 ? own : jars + (laneOf[jar] as number);
    const after = first[above] as number;
    next[jar] = after;
    if (after !== NONE) before[after] = jar;
    first[above] = jar;
  }
  const nodes = new Int32Array(jars + lanes);
  let met = 0;
  for (let lane = 0; lane < lanes; lane++) nodes[met++] = jars + lane;
  for (let at = 0; at < met; at++) {
    for (let jar = first[nodes[at] as number] as number; jar !== NONE; jar = next[jar] as number) nodes[met++] = jar; // prettier-ignore
  }
  return { first, next, before, nodes };
}

/** How far each path goes: the latest day below a node, and the generation of the jar it ends with. */
class Paths {
  readonly #latest: Int32Array;
  readonly #depth: Int32Array;

  constructor(
    readonly hanging: Hanging,
    readonly lists: Lists,
  ) {
    this.#latest = new Int32Array(lists.nodes.length);
    this.#depth = new Int32Array(lists.nodes.length);
  }

  /**
   * The child that a node's path goes on to: the one above the latest day, then the deepest jar, then the first. All
   * that hangs from the node must have been asked for already.
   */
  goesOn(node: number): number {
    const { day, column } = this.hanging;
    const { first, next } = this.lists;
    const isJar = node < day.length;
    let best = NONE;
    let bestDay = isJar ? (day[node] as number) : 0;
    let bestDepth = isJar ? (column[node] as number) : 0;
    for (let child = first[node] as number; child !== NONE; child = next[child] as number) {
      const childDay = this.#latest[child] as number;
      const childDepth = this.#depth[child] as number;
      if (best !== NONE && (childDay < bestDay || (childDay === bestDay && childDepth <= bestDepth)))
        continue;
      best = child;
      bestDay = childDay;
      bestDepth = childDepth;
    }
    // A jar of a later day than all that is known below it: what it seeded is of unknown days.
    this.#latest[node] = isJar ? Math.max(bestDay, day[node] as number) : bestDay;
    this.#depth[node] = bestDepth;
    return best;
  }
}

/**
 * One side of all blocks. A run of columns at one row is named by a jar; it begins where the run before it ends, the
 * first one right of what the block hangs from: so a ribbon that skips columns keeps its row free.
 */
class Contour {
  readonly next: Int32Array;
  /** Rows from this run to the next. */
  readonly step: Int32Array;
  /** For each block its first and its last run, and the row of the last against the jar the block is named by. */
  readonly head: Int32Array;
  readonly tail: Int32Array;
  readonly tailRow: Int32Array;

  /** @param to last column of each run: that of the jar it is named by */
  constructor(readonly to: Int32Array) {
    this.next = new Int32Array(to.length);
    this.step = new Int32Array(to.length);
    this.head = new Int32Array(to.length);
    this.tail = new Int32Array(to.length);
    this.tailRow = new Int32Array(to.length);
  }
}

/** The block that is being put together: its runs against the row that its path goes on in. */
class Growing {
  head = NONE;
  headRow = 0;
  tail = NONE;
  tailRow = 0;

  constructor(readonly of: Contour) {}

  begin(block: number): void {
    this.head = this.of.head[block] as number;
    this.headRow = 0;
    this.tail = this.of.tail[block] as number;
    this.tailRow = this.of.tailRow[block] as number;
  }

  /** Puts a jar before all of it. */
  close(jar: number): void {
    const { of } = this;
    if (this.head !== NONE && this.headRow === 0) of.head[jar] = this.head;
    else {
      of.head[jar] = jar;
      of.next[jar] = this.head;
      of.step[jar] = this.headRow;
    }
    of.tail[jar] = this.head === NONE ? jar : this.tail;
    of.tailRow[jar] = this.head === NONE ? 0 : this.tailRow;
  }
}

/**
 * Packs a block against one side of what is there, as near as it goes.
 * @param near the side it comes to lie on; @param far the other side
 * @param out 1: further down; -1: further up
 * @returns its row against that of the path that goes on
 */
function pack(block: number, near: Growing, far: Growing, out: 1 | -1): number {
  const a = near.of;
  const b = far.of;
  let run = near.head;
  let row = near.headRow;
  let own = b.head[block] as number;
  let ownRow = 0;
  let most = -Infinity;
  while (run !== NONE && own !== NONE) {
    const apart = out * (row - ownRow);
    if (apart > most) most = apart;
    const end = a.to[run] as number;
    const ownEnd = b.to[own] as number;
    if (end <= ownEnd) {
      row += a.step[run] as number;
      run = a.next[run] as number;
    }
    if (ownEnd <= end) {
      ownRow += b.step[own] as number;
      own = b.next[own] as number;
    }
  }
  const at = out * (most + 1);
  // On this side the block covers what was there, and what reaches further goes on behind it; on the other it is covered.
  const blockTail = a.tail[block] as number;
  const blockTailRow = at + (a.tailRow[block] as number);
  near.head = a.head[block] as number;
  near.headRow = at;
  if (run === NONE) {
    near.tail = blockTail;
    near.tailRow = blockTailRow;
  } else {
    a.next[blockTail] = run;
    a.step[blockTail] = row - blockTailRow;
  }
  if (own !== NONE) {
    b.next[far.tail] = own;
    b.step[far.tail] = at + ownRow - far.tailRow;
    far.tail = b.tail[block] as number;
    far.tailRow = at + (b.tailRow[block] as number);
  }
  return at;
}

/** For each jar its row against what it hangs from. */
function packAll(hanging: Hanging, lists: Lists): Int32Array {
  const { column } = hanging;
  const paths = new Paths(hanging, lists);
  const { next, before, nodes } = lists;
  const offset = new Int32Array(column.length);
  const upper = new Growing(new Contour(column));
  const lower = new Growing(new Contour(column));
  for (let at = nodes.length - 1; at >= 0; at--) {
    const node = nodes[at] as number;
    const goesOn = paths.goesOn(node);
    if (goesOn === NONE) upper.head = lower.head = NONE;
    else {
      upper.begin(goesOn);
      lower.begin(goesOn);
      for (let jar = before[goesOn] as number; jar !== NONE; jar = before[jar] as number)
        offset[jar] = pack(jar, upper, lower, -1);
      for (let jar = next[goesOn] as number; jar !== NONE; jar = next[jar] as number)
        offset[jar] = pack(jar, lower, upper, 1);
    }
    if (node < column.length) {
      upper.close(node);
      lower.close(node);
    }
  }
  return offset;
}

/**
 * Lays out all rows.
 *
 * Siblings keep their order; the child whose descent has the latest day (then the deepest jar, then the first) stands in
 * the row of its parent. Two jars of one column are at least a row apart. A jar moves no jar of another lane but as a
 * whole, with its lane.
 */
export function layRows(hanging: Hanging): Rows {
  const { parent, laneOf, lanes } = hanging;
  const jars = parent.length;
  const lists = listsOf(hanging);
  const offset = packAll(hanging, lists);
  const row = new Float64Array(jars);
  const lane = new Int32Array(jars);
  const top = new Int32Array(lanes);
  const bottom = new Int32Array(lanes).fill(-1);
  const level = new Int32Array(lanes);
  for (let at = lanes; at < lists.nodes.length; at++) {
    const jar = lists.nodes[at] as number;
    const seed = parent[jar] as number;
    const own = (seed >= 0 ? (row[seed] as number) : 0) + (offset[jar] as number);
    const of = seed >= 0 ? (lane[seed] as number) : (laneOf[jar] as number);
    row[jar] = own;
    lane[jar] = of;
    if (own < (top[of] as number)) top[of] = own;
    if (own > (bottom[of] as number)) bottom[of] = own;
  }
  let taken = 0;
  for (let of = 0; of < lanes; of++) {
    const high = (bottom[of] as number) - (top[of] as number) + 1;
    level[of] = taken - (top[of] as number);
    top[of] = taken;
    bottom[of] = taken + high - 1;
    taken += high;
  }
  for (let jar = 0; jar < jars; jar++)
    row[jar] = (row[jar] as number) + (level[lane[jar] as number] as number);
  return { row, lane, top, bottom, level, seedsFirst: lists.nodes.subarray(lanes) };
}
