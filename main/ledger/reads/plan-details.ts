// What is known of each jar of a plan beside its amounts: what its seed holds, how such jars came out, what it costs, and which seed
// still serves when the keeper is back.
import type { Parsed, Reply } from '../../../core/contract';
import { priceOf, type Taken } from '../../../core/advice/spent';
import { doublingsFromBoth, type Doublings, type PlannedJar } from '../../../core/plan/scaling';
import { usualSet } from '../../../core/plan/usual-set';
import { countPerPiece } from '../derived/family-of-rows';
import { ownPrices } from '../derived/own-prices';
import { sourceEntries } from '../entries/larder-entries';
import type { Ledger } from '../ledger';
import { getShelf } from './read-shelf';

type Asked = Parsed<'plan.batch'>;
type JarAsked = Asked['jars'][number];
type Package = Reply<'package.list'>['packages'][number];

/** What seeds a jar by what was told of it: mL of jars, CFU of pieces. */
export interface SeedOf {
  readonly ml: number;
  readonly count: number;
  readonly pastBestBefore: boolean;
  readonly pieces: boolean;
  /** Something of it is taken of a jar, or of what was kept of one. */
  readonly ofJar: boolean;
}

/** Null where its seeds are not told one by one. What a piece holds is as declared; undeclared pieces count as none. */
export function seedOf(ledger: Ledger, { seeds }: JarAsked, packages: readonly Package[]): SeedOf | null {
  if (seeds === null) return null;
  const sources = new Map(sourceEntries(ledger.rows).map((source) => [source.uid, source]));
  let [ml, count, past, pieces] = [0, 0, false, false];
  for (const { source, package: box, amount } of seeds) {
    if (amount === null) continue;
    if (source === null) {
      if (amount.unit === 'mL' || amount.unit === 'g') ml += amount.value;
      continue;
    }
    const entry = sources.get(source);
    const each = entry ? (countPerPiece(entry) ?? 0) : 0;
    pieces = true;
    count += amount.unit === 'CFU' ? amount.value : amount.unit === 'pieces' ? amount.value * each : 0;
    const best = packages.find(({ id }) => id === box)?.bestBefore ?? null;
    past ||= (best !== null && best < ledger.clock.today()) || entry?.guaranteed === 'manufacture';
  }
  // However much of it: what is taken of a jar makes no first batch.
  const ofJar = seeds.some(({ source }) => source === null);
  return { ml, count, pastBestBefore: past, pieces, ofJar };
}

export const doublingsOfSeed = (volume: number, { ml, count, pastBestBefore }: SeedOf): Doublings | null =>
  doublingsFromBoth(volume, ml, count, pastBestBefore);

const alike = (names: readonly string[]): string =>
  names
    .map((name) => name.trim().toLowerCase())
    .toSorted()
    .join('\n');

/** How the keeper's jars with the same things stirred in came out, first batches by themselves. */
export function expectedOf(
  { index }: Ledger,
  names: readonly string[],
  first: boolean,
): ReturnType<typeof usualSet> {
  const words = [...index.jars.values()].flatMap((jar) => {
    if (jar.setWord === null || !index.family.has(jar.key) || alike(jar.additions) !== alike(names))
      return [];
    const founding = index.family.seedsOf(jar.key).every(({ fromJar }) => fromJar === null);
    return founding === first ? [jar.setWord] : [];
  });
  return usualSet(words);
}

/** The newest of those that have what a price needs, else the newest. */
const newest = (some: readonly Package[]): Package | undefined =>
  some.findLast(({ price, size }) => price !== null && size !== null) ?? some.at(-1);

/** What a jar costs by its packages, or the newest of that name; a litre's price where the milk has none. Null: its milk has no price. */
export function costOf(
  ledger: Ledger,
  jar: JarAsked,
  planned: PlannedJar,
  packages: readonly Package[],
): { readonly minor: number; readonly atLeast: boolean; readonly currency: string } | null {
  const { milk: litre } = ownPrices(ledger);
  const named = (id: string | null, of: (one: Package) => boolean): Taken['package'] => {
    const found = packages.find((one) => one.id === id) ?? newest(packages.filter(of));
    return found
      ? { size: found.size, minor: found.price?.minor ?? null, currency: found.price?.currency ?? null }
      : null;
  };
  const taken = (
    what: Taken['what'],
    name: string,
    amount: Taken['amount'],
    box: Taken['package'],
  ): Taken => ({
    what,
    name,
    of: 0,
    jar: 0,
    amount,
    package: box,
  });
  const milk = priceOf(
    taken(
      'milk',
      'milk',
      { value: planned.milk, unit: 'mL' },
      jar.milkPackage === null && litre
        ? { size: { value: 1000, unit: 'mL' }, ...litre }
        : named(jar.milkPackage, ({ of }) => of === 'milk'),
    ),
  );
  if (typeof milk === 'string') return null;
  const others = planned.additions.map(({ name, value, unit }) => {
    const box = jar.additions?.find((one) => one.name === name)?.package ?? null;
    return priceOf(
      taken(
        'addition',
        name,
        { value, unit },
        named(
          box,
          (one) => one.of === 'addition' && one.name.trim().toLowerCase() === name.trim().toLowerCase(),
        ),
      ),
    );
  });
  const known = others.flatMap((price) =>
    typeof price === 'string' || price.currency !== milk.currency ? [] : [price.minor],
  );
  const minor = Math.round(known.reduce((sum, one) => sum + one, milk.minor));
  return { minor, atLeast: known.length < others.length, currency: milk.currency };
}

/** What is kept and may seed, the soonest to end last, and whether it still serves on that day. */
export function servesAfter(ledger: Ledger, back: string): Reply<'plan.batch'>['serves'] {
  return getShelf(ledger)
    .items.filter(
      ({ group, seedBy }) => seedBy !== null && group !== 'aside' && group !== 'discard' && group !== 'warm',
    )
    .map(({ id, name, seedBy }) => {
      const until = seedBy?.until ?? seedBy?.on ?? null;
      return { id, name, until, still: until !== null && until >= back };
    })
    .toSorted((a, b) => (b.until ?? '').localeCompare(a.until ?? ''));
}
