// How jars are named that carry numbers, and how such names go on: "s39.1, s39.2", then "s40.1"; "17a, 17b", then "18a"; "k17,
// k18", then "k19". Pure. Where no rule is seen a jar is a, b, c, and keeps its name when the batch is made again.

interface Numbered {
  /** Before the number that goes on from batch to batch. */
  readonly stem: string;
  readonly number: number;
  /** What tells the jars of one batch apart: ".1", "a"; empty where each jar has a number of its own. */
  readonly own: string;
}

/** "s39.1" is s, 39 and ".1"; "17a" is 17 and "a"; "k17" is k and 17. Null of a name without a number. */
function numbered(name: string): Numbered | null {
  const parts = /^(\D*?)(\d{1,6})((?:[.\-_/ ]\d{1,3})|(?:[.\-_/ ]?[a-z]))?$/i.exec(name.trim());
  return parts === null
    ? null
    : { stem: (parts[1] ?? '').toLowerCase(), number: Number(parts[2]), own: (parts[3] ?? '').toLowerCase() };
}

/** All of them, where they follow one rule: one stem, and either all with an own mark or all without. */
function allNumbered(names: readonly string[]): readonly Numbered[] | null {
  const read = names.map(numbered);
  const [first] = read;
  if (!first || read.some((one) => one === null || one.stem !== first.stem)) return null;
  const all = read as readonly Numbered[];
  const marked = all.filter(({ own }) => own !== '').length;
  return marked === 0 || marked === all.length ? all : null;
}

const written = ({ stem, number, own }: Numbered): string => `${stem}${number}${own}`;

/** A mark one further: ".2" after ".1", "b" after "a"; null after "z". */
function nextMark(own: string): string | null {
  const digits = /\d+$/.exec(own)?.[0];
  if (digits !== undefined) return own.slice(0, -digits.length) + String(Number(digits) + 1);
  const letter = own.at(-1) ?? '';
  return letter >= 'z' ? null : own.slice(0, -1) + String.fromCharCode(letter.charCodeAt(0) + 1);
}

/** The name of a jar more, beside jars that are numbered; null where they follow no such rule. */
export function nextNumber(names: readonly string[]): string | null {
  const all = allNumbered(names);
  const last = all?.at(-1);
  if (!all || !last) return null;
  const taken = new Set(all.map(written));
  for (let next: Numbered = last; ;) {
    const own = next.own === '' ? '' : nextMark(next.own);
    if (own === null) return null;
    next = { ...next, own, number: own === '' ? next.number + 1 : next.number };
    if (!taken.has(written(next))) return written(next);
  }
}

/** Whether names of a batch go on from batch to batch, so that what is named in the ledger has to be known. */
export const goOn = (names: readonly string[]): boolean => {
  const all = allNumbered(names);
  // Jars that are 1, 2, 3 in each batch are counted anew.
  return (
    all !== null && (all.every(({ own }) => own !== '') || Math.min(...all.map((one) => one.number)) > 1)
  );
};

/**
 * Names of a batch that is made again, in their order.
 * @param known names of the ledger's jars: a number that was given is not given twice
 */
export function namesAgain(names: readonly string[], known: readonly string[]): readonly string[] {
  const all = allNumbered(names);
  if (all === null || !goOn(names)) return names;
  const [{ stem, own } = { stem: '', own: '' }] = all;
  const numbers = [...names, ...known].flatMap((name) => {
    const one = numbered(name);
    return one !== null && one.stem === stem && (one.own === '') === (own === '') ? [one.number] : [];
  });
  const highest = numbers.reduce((most, one) => Math.max(most, one), 0);
  const first = all.reduce((least, { number }) => Math.min(least, number), Infinity);
  return all.map((one) => written({ ...one, number: highest + 1 + one.number - first }));
}
