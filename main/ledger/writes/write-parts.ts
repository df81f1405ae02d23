// Shared by the writers: what belongs to one jar (what seeded it, what was stirred in, what was seen) as rows.
import type { BatchEntry } from '../../../core/contract';
import type { Outcome } from '../../../core/ledger/records';
import type { OpenAct } from '../acts';
import type { KnownJar } from '../family-index';
import type { Ledger } from '../ledger';
import { refuseJarName } from '../jar-names';
import { Refused } from '../refusal';
import type { Row, Stored } from '../projection/records';

export type SeedingEntry = BatchEntry['jars'][number]['seedings'][number];
export type AdditionEntry = BatchEntry['jars'][number]['additions'][number];

/** The jar behind an id. @throws Refused 'not found' */
export function jarOf(ledger: Ledger, uid: string): KnownJar {
  return ledger.index.jar(ledger.rows.keyOf('jar', uid));
}

/** The jar behind an id, unless it is a stub. @throws Refused 'not found', 'is a mistake' */
export function standingJar(ledger: Ledger, uid: string): KnownJar {
  const jar = jarOf(ledger, uid);
  if (jar.state === 'mistake') throw new Refused('is a mistake', { jar: jar.label });
  return jar;
}

/** @throws Refused 'not found', 'package of something else' */
export function packageKey(
  ledger: Ledger,
  uid: string | null,
  of: 'source' | 'milk' | 'addition',
  source: number | null = null,
): number | null {
  if (uid === null) return null;
  const found = ledger.rows.get('package', ledger.rows.keyOf('package', uid));
  const fits = found.of === of && (of !== 'source' || found.source === null || found.source === source);
  if (!fits) throw new Refused('package of something else', { name: found.name });
  return found.key;
}

/**
 * The product of that name, in any case; made here where there is none, so that it is undone with what it seeded.
 * @throws Refused 'name of a jar', 'invalid'
 */
function sourceNamed(ledger: Ledger, act: OpenAct, name: string | null): number {
  if (name === null) throw new Refused('invalid', { path: 'newSource', problem: 'is empty' });
  const same = [...ledger.rows.all('source')].find((one) => one.name.toLowerCase() === name.toLowerCase());
  if (same) return same.key;
  refuseJarName(ledger, name);
  return act.insert('source', {
    name, form: null, strains: [], blendTotalPerPiece: null, guaranteed: null, receivedFrom: null,
    knownGenerations: null, note: null,
  }).key; // prettier-ignore
}

/**
 * A seeding with keys. A product that is new is made under the act.
 * @throws Refused 'one seed', 'not found', 'portion of another jar', 'package of something else', 'name of a jar'
 */
export function seedingRow(
  ledger: Ledger,
  act: OpenAct,
  jar: number,
  entry: SeedingEntry,
): Stored['seeding'] {
  const given = [entry.fromJar !== null, entry.source !== null, entry.newSource !== undefined];
  if (given.filter(Boolean).length !== 1) throw new Refused('one seed');
  const fromJar = entry.fromJar === null ? null : jarOf(ledger, entry.fromJar);
  const source =
    entry.newSource === undefined
      ? ledger.rows.keyOrNull('source', entry.source)
      : sourceNamed(ledger, act, entry.newSource);
  const portion = ledger.rows.keyOrNull('portion', entry.portion);
  if (portion !== null) {
    if (!fromJar) throw new Refused('one seed');
    if (ledger.rows.get('portion', portion).jar !== fromJar.key) {
      throw new Refused('portion of another jar', { jar: fromJar.label });
    }
  }
  return {
    jar,
    fromJar: fromJar?.key ?? null,
    portion,
    part: entry.part,
    source,
    package: packageKey(ledger, entry.package, 'source', source),
    amount: entry.amount,
  };
}

/**
 * Puts new rows in place of old ones, keeping the rows that stay the same thing so that the history reads as a
 * correction and not as an exchange.
 */
export function replaceRows<K extends 'seeding' | 'addition'>(
  act: OpenAct,
  kind: K,
  old: readonly Row<K>[],
  next: readonly Stored[K][],
  sameThing: (row: Row<K>, record: Stored[K]) => boolean,
  insert: (record: Stored[K]) => void,
): void {
  const left = new Set(old);
  const added: Stored[K][] = [];
  for (const record of next) {
    const same = [...left].find((row) => sameThing(row, record));
    if (same) {
      left.delete(same);
      act.update(kind, same.key, record);
    } else added.push(record);
  }
  for (const row of left) act.remove(kind, row.key);
  for (const record of added) insert(record);
}

/** @throws Refused 'invalid' */
export function outcomeRow(jar: number, outcome: Omit<Outcome, 'jar'>): Stored['outcome'] {
  if (outcome.openedDays !== null && outcome.seenAt !== 'after opening') {
    throw new Refused('invalid', {
      path: 'openedDays',
      problem: 'only goes with a sign that was seen after opening',
    });
  }
  if (outcome.powerCutHours !== null && outcome.powerCut !== true) {
    throw new Refused('invalid', {
      path: 'powerCutHours',
      problem: 'only goes with a power cut',
    });
  }
  return { jar, ...outcome };
}

type Kept = Partial<Pick<Row<'jar'>, 'onShelf' | 'goneOn'>>;

/**
 * What is said of a jar's place, with what follows from it: a jar that is back on the shelf is gone on no day, and one that
 * is gone on a day is not on the shelf.
 * @throws Refused 'on the shelf and gone' where both are said at once: one movement can't tell both
 */
export function shelfOrGone(label: string, said: Kept): Kept {
  const gone = said.goneOn !== undefined && said.goneOn !== null;
  if (said.onShelf === true && gone) throw new Refused('on the shelf and gone', { jar: label });
  if (said.onShelf === true) return { ...said, goneOn: null };
  return gone ? { ...said, onShelf: false } : said;
}

/** Labels of jars of one batch, short: "14 Mar a, b, c". */
export function labelsInShort(jars: readonly { readonly label: string; readonly letter: string }[]): string {
  return jars.map((jar, index) => (index === 0 ? jar.label : jar.letter)).join(', ');
}
