// Counts work without a clock: how many things lists, maps and texts of the language go through meanwhile.

type Method = (...given: unknown[]) => unknown;
const each = (self: unknown): number => (self as { length: number }).length;
const one = (): number => 1;
const COUNTED: readonly (readonly [object, readonly string[], (self: unknown) => number])[] = [
  [Array.prototype, ['map', 'filter', 'flatMap', 'forEach', 'some', 'every', 'find', 'toSorted', 'reduce'], each],
  [Array.prototype, ['push'], one],
  [Map.prototype, ['get', 'set', 'has'], one],
  [String.prototype, ['replace', 'replaceAll', 'split', 'match', 'matchAll', 'trim', 'toLowerCase', 'normalize'], one],
  [RegExp.prototype, ['exec', 'test'], one],
];

/** @param work is given a function that tells what was counted so far */
export function counting<T>(work: (counted: () => number) => T): T {
  let count = 0;
  const back: (() => void)[] = [];
  for (const [prototype, names, weigh] of COUNTED) {
    const methods = prototype as Record<string, Method>;
    for (const name of names) {
      const own = methods[name];
      if (!own) throw new Error(`no ${name} to count`);
      methods[name] = function counted(this: unknown, ...given: unknown[]): unknown {
        count += weigh(this);
        return own.apply(this, given);
      };
      back.push(() => void (methods[name] = own));
    }
  }
  try {
    return work(() => count);
  } finally {
    for (const undo of back) undo();
  }
}
