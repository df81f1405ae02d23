// Shared by the writers: what belongs to one jar (what seeded it, what was stirred in, what was seen) as rows.
import type { BatchEntry } from '../../../core/contract';
import type { Outcome } from '../../../core/ledger/records';
import {
  addAddition, type AdditionEntry, addSeeding, changeAddition, changeSeeding, removeAddition, removeSeeding, type SeedingEntry,
} from '../entries/kept-entries'; // prettier-ignore
import type { Rooted } from '../entries/keyed';
import type { JarEntry } from '../entries/jar-entry';
import { addSource } from '../entries/larder-entries';
import type { OpenAct } from '../facts/open-act';
import type { KnownJar } from '../family-index';
import type { Ledger } from '../ledger';
import { refuseJarName } from '../jar-names';
import { Refused } from '../../refusal';

type TypedSeeding = BatchEntry['jars'][number]['seedings'][number];

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
  return addSource(act, { name });
}

/**
 * A seeding with keys. A product that is new is made under the act.
 * @throws Refused 'one seed', 'not found', 'portion of another jar', 'package of something else', 'name of a jar'
 */
export function seedingRow(ledger: Ledger, act: OpenAct, jar: number, entry: TypedSeeding): SeedingEntry {
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
 * Puts new entries in place of old ones, keeping those that stay the same thing so that the history reads as a
 * correction and not as an exchange.
 */
function replace<T>(
  old: readonly Rooted<T>[],
  next: readonly T[],
  sameThing: (row: T, told: T) => boolean,
  ways: { change: (key: number, told: T) => void; remove: (key: number) => void; add: (told: T) => void },
): void {
  const left = new Set(old);
  const added: T[] = [];
  for (const told of next) {
    const same = [...left].find((row) => sameThing(row, told));
    if (same) {
      left.delete(same);
      ways.change(same.key, told);
    } else added.push(told);
  }
  for (const { key } of left) ways.remove(key);
  for (const told of added) ways.add(told);
}

/** @param sameThing whether an entry is what was there, told anew */
export function replaceSeedings(
  act: OpenAct,
  old: readonly Rooted<SeedingEntry>[],
  next: readonly SeedingEntry[],
  sameThing: (row: SeedingEntry, told: SeedingEntry) => boolean,
): void {
  replace(old, next, sameThing, {
    change: (key, told) => changeSeeding(act, key, told),
    remove: (key) => removeSeeding(act, key),
    add: (told) => addSeeding(act, told),
  });
}

/** What is called the same, in any case, stays the same thing. */
export function replaceAdditions(
  act: OpenAct,
  old: readonly Rooted<AdditionEntry>[],
  next: readonly AdditionEntry[],
): void {
  replace(old, next, (row, told) => row.name.toLowerCase() === told.name.toLowerCase(), {
    change: (key, told) => changeAddition(act, key, told),
    remove: (key) => removeAddition(act, key),
    add: (told) => addAddition(act, told),
  });
}

/** An outcome, unless a field of it goes only with another. @throws Refused 'invalid' */
export function refuseLoose(outcome: Omit<Outcome, 'jar'>): Omit<Outcome, 'jar'> {
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
  return outcome;
}

type Kept = Partial<Pick<JarEntry, 'onShelf' | 'goneOn'>>;

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
