// What the jars of a batch differ in: what a trial of them would compare. A trial tells of one thing only where it is the only one.

interface StirredIn {
  readonly name: string;
  /** null: not noted. */
  readonly value: number | null;
  readonly unit: string | null;
  /** As it is printed. */
  readonly printed: string | null;
}

/** What is noted of one jar. */
export interface Compared {
  readonly jar: number;
  /** null: not noted. */
  readonly milk: string | null;
  /** What seeded it, in words; '' where nothing is noted. */
  readonly seed: string;
  readonly additions: readonly StirredIn[];
}

export type Differing = 'stirred in' | 'amount' | 'milk' | 'seed';

export interface Treated {
  readonly jar: number;
  readonly name: string;
  /** How much, where it is a matter of how much. */
  readonly dose: number | null;
  readonly plain: boolean;
}

export interface Difference {
  readonly what: Differing;
  /** Of which addition it is a matter of how much. */
  readonly of: string | null;
  readonly treatments: readonly Treated[];
  /** What else they differ in: a difference may come from that as well. */
  readonly also: readonly Differing[];
}

export const PLAIN = 'plain';
const folded = (name: string): string => name.trim().toLowerCase();
const several = (values: readonly string[]): boolean => new Set(values.map(folded)).size > 1;
const stirredIn = ({ additions }: Compared): string =>
  additions.length === 0 ? PLAIN : additions.map(({ name }) => name.trim()).toSorted().join(' and '); // prettier-ignore

/** Jars that hold one and the same addition, or none, in amounts of one unit that are not all the same. */
function byAmount(jars: readonly Compared[]): Omit<Difference, 'also'> | null {
  const all = jars.flatMap(({ additions }) => additions);
  const [first] = all;
  if (!first || several(all.map(({ name }) => name)) || jars.some(({ additions }) => additions.length > 1))
    return null;
  if (all.some(({ value, unit }) => value === null || unit !== first.unit)) return null;
  // Beside a plain jar, one amount is a matter of whether, not of how much.
  if (new Set(all.map(({ value }) => value)).size < 2) return null;
  const treatments = jars.map(({ jar, additions: [one] }) => ({
    jar,
    name: one ? `${one.printed ?? `${one.value} ${one.unit}`} ${first.name.trim()}` : PLAIN,
    dose: one?.value ?? 0,
    plain: one === undefined,
  }));
  return { what: 'amount', of: first.name.trim(), treatments };
}

/**
 * What jars differ in: what was stirred in comes before the milk and the seed, since that is what is tasted for.
 * @returns null where nothing that is noted tells them apart, or there are fewer than two
 */
export function differenceOf(jars: readonly Compared[]): Difference | null {
  if (jars.length < 2) return null;
  const milk = several(jars.map((one) => one.milk ?? ''));
  const seed = several(jars.map((one) => one.seed));
  const also = (but: Differing): Differing[] => [
    ...(milk && but !== 'milk' ? ['milk' as const] : []),
    ...(seed && but !== 'seed' ? ['seed' as const] : []),
  ];
  const amount = byAmount(jars);
  if (amount) return { ...amount, also: also('amount') };
  const by = (what: Differing, nameOf: (one: Compared) => string): Difference => ({
    what,
    of: null,
    treatments: jars.map((one) => ({ jar: one.jar, name: nameOf(one), dose: null, plain: one.additions.length === 0 })),
    also: also(what),
  }); // prettier-ignore
  if (several(jars.map(stirredIn))) return by('stirred in', stirredIn);
  if (milk) return by('milk', (one) => one.milk?.trim() ?? 'milk not noted');
  if (seed) return by('seed', (one) => one.seed || 'seed not noted');
  return null;
}
