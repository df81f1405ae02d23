// Which lines a jar belongs to, as a number that stands for a set. Most jars share the set of their seed, so the few
// sets there are get stored once and a family of 100,000 jars keeps one integer per jar.

/** Sets of line keys (the key of the founding batch), each stored once. Grows only, so versions of a family share it. */
export class LineSets {
  readonly #lists: (readonly number[])[] = [[]];
  readonly #ids = new Map<string, number>([['', 0]]);
  readonly #unions = new Map<number, Map<number, number>>();

  /** The number of the set with this one line. */
  single(line: number): number {
    return this.#intern([line]);
  }

  /** The number of the union of two sets. 0 is the empty set. */
  union(a: number, b: number): number {
    if (a === b || b === 0) return a;
    if (a === 0) return b;
    const [low, high] = a < b ? [a, b] : [b, a];
    let known = this.#unions.get(low);
    if (!known) this.#unions.set(low, (known = new Map()));
    let id = known.get(high);
    if (id === undefined) {
      id = this.#intern([...new Set([...this.lines(low), ...this.lines(high)])].toSorted((x, y) => x - y));
      known.set(high, id);
    }
    return id;
  }

  /** The lines in a set, ascending. */
  lines(id: number): readonly number[] {
    return this.#lists[id] ?? [];
  }

  #intern(list: readonly number[]): number {
    const name = list.join(' ');
    let id = this.#ids.get(name);
    if (id === undefined) {
      id = this.#lists.length;
      this.#lists.push(list);
      this.#ids.set(name, id);
    }
    return id;
  }
}
