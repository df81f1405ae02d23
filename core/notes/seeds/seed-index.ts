// Jars that a seed may name, found by day, letter and name; and the shapes that reading a seed gives.
import type { Source } from '../../ledger/records';
import { cutOut, findAmounts, type AmountOptions, type FoundAmount } from '../../quantities/quantities';
import type { DayOrder } from '../../text/days';
import type { KnownJar, SeedPart } from '../named-seeds';
import type { Wrong } from '../notes-says';
import { unused, words } from '../cells/seed-words';

export interface SeedContext {
  readonly day: string;
  /** The id of the jar being seeded: "the only jar it fits" is never itself. */
  readonly self: string;
  /** The word of its line or batch: of two jars that a seed may name, the one of the same word is meant. */
  readonly word?: string | null;
  readonly order: DayOrder;
  readonly amounts: AmountOptions;
  readonly jars: SeedIndex;
  /** Plain names of products seen with pieces anywhere, or in the ledger. */
  readonly products: ReadonlySet<string>;
  /** Plain names of cultures in the ledger that were received from someone. */
  readonly cultures: ReadonlySet<string>;
  /** What these notes themselves teach, and nothing but its place says: plain name → as first written. */
  readonly taught: ReadonlyMap<string, string>;
  /** Names that start a line anywhere in the notes and can be no jar: plain name → as first written. */
  readonly bare: ReadonlyMap<string, string>;
  /** What the keeper said that a name is: "product", "culture" or "jar"; null where nothing was said. */
  readonly said: (name: string) => string | null;
  /** Names of products by their form: what “capsules” may mean. */
  readonly forms: ReadonlyMap<Source['form'], readonly string[]>;
  /** Which of several products the keeper said it was. */
  readonly chosen: (names: readonly string[]) => string | null;
  /** What the keeper said that a letter alone means, where several jars have it. */
  readonly letterAlone: string;
  /** The amount column counts pieces. */
  readonly piecesBeside: boolean;
  /** It holds a count, be it a bare figure. */
  readonly countBeside: boolean;
}

/** Jars of one day beyond these are found by their letter only. */
export const MOST_NAMED = 200;

/** Jars that go by the same day, letter or name. Asked about without going through all of them. */
export class Jars {
  readonly all: KnownJar[] = [];
  readonly #ids = new Set<string>();
  #byDay: KnownJar[] | null = null;
  readonly #byLetter = new Map<string, KnownJar[]>();
  /** Those with a batch's word, or a name of several words. */
  readonly named: KnownJar[] = [];

  add(jar: KnownJar): void {
    if (this.#ids.has(jar.id)) return;
    this.#ids.add(jar.id);
    this.all.push(jar);
    const there = this.#byLetter.get(jar.letter);
    if (there) there.push(jar);
    else this.#byLetter.set(jar.letter, [jar]);
    const named = jar.word !== null || jar.letter.includes(' ');
    if (named && this.named.length < MOST_NAMED) this.named.push(jar);
  }

  /** Of those made on a day or before it, without one, the first two: enough to tell whether there is only one. */
  upTo(day: string, without: string): readonly KnownJar[] {
    this.#byDay ??= this.all.toSorted((a, b) => (a.day < b.day ? -1 : 1));
    return this.#byDay.slice(0, 3).filter((jar) => jar.day <= day && jar.id !== without);
  }

  /** Those of the last day before another that has any. */
  lastBefore(day: string): readonly KnownJar[] {
    const last = this.all.reduce<string>(
      (most, jar) => (jar.day < day && jar.day > most ? jar.day : most),
      '',
    );
    return this.all.filter((jar) => jar.day === last);
  }

  letter(letter: string): readonly KnownJar[] {
    return this.#byLetter.get(letter) ?? NONE;
  }

  /** How many they are without one. */
  without(id: string): number {
    return this.all.length - (this.#ids.has(id) ? 1 : 0);
  }

  /** They without one; of very many all, for a sentence that names a few. */
  beside(id: string): readonly KnownJar[] {
    return this.all.length > MOST_NAMED ? this.all : this.all.filter((jar) => jar.id !== id);
  }

  /** The one there is beside another, or null where there are none or several. */
  onlyBeside(id: string): KnownJar | null {
    return this.without(id) === 1 ? (this.all.find((jar) => jar.id !== id) ?? null) : null;
  }
}
const NONE: readonly KnownJar[] = [];
export const NO_JARS = new Jars();

/** Known jars by day, by letter and by every text that means one. */
export class SeedIndex {
  readonly byDay = new Map<string, Jars>();
  readonly byAlias = new Map<string, Jars>();
  readonly byLetter = new Map<string, Jars>();
  /** By the line of the file that they stand on. */
  readonly byRow = new Map<number, KnownJar[]>();
  readonly days: string[];
  /** "10-15" → the days of every year that have jars, in order. */
  readonly byMonthDay = new Map<string, string[]>();

  constructor(jars: Iterable<KnownJar>) {
    const put = (map: Map<string, Jars>, key: string, jar: KnownJar): void => {
      const there = map.get(key) ?? new Jars();
      map.set(key, there);
      there.add(jar);
    };
    for (const jar of jars) {
      put(this.byDay, jar.day, jar);
      put(this.byLetter, jar.letter, jar);
      for (const alias of jar.aliases) put(this.byAlias, alias, jar);
      if (jar.line !== undefined) this.byRow.set(jar.line, [...(this.byRow.get(jar.line) ?? []), jar]);
    }
    this.days = [...this.byDay.keys()].toSorted();
    for (const day of this.days) {
      const there = this.byMonthDay.get(day.slice(5));
      if (there) there.push(day);
      else this.byMonthDay.set(day.slice(5), [day]);
    }
  }

  /** Whether a text without a day is the name of a jar. */
  names(text: string): boolean {
    return [words(text), unused(text)].some(
      (said) => said.length > 0 && (this.byAlias.has(said.join(' ')) || this.byLetter.has(said.join(' '))),
    );
  }

  /** Days before another, counted from its end: 1 is the day before it that has jars. */
  earlier(day: string, back: number): string | undefined {
    let [low, high] = [0, this.days.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((this.days[middle] ?? '') < day) low = middle + 1;
      else high = middle;
    }
    return this.days[low - back];
  }
}

/** One seed read, with what had to be assumed and the words left over. */
export type Resolved = { part: SeedPart; assumptions: string[]; leftOver: string[] };
/** A seed as read. */
export const seedOf = (
  from: SeedPart['from'],
  amount: FoundAmount | null,
  assumptions: string[] = [],
  leftOver: string[] = [],
): Resolved => ({ part: { from, amount }, assumptions, leftOver });
/** It, with more that is assumed, and more words left over. */
export const withMore = (seed: Resolved, assumption: string, ...leftOver: string[]): Resolved => ({
  ...seed,
  assumptions: [...seed.assumptions, assumption],
  leftOver: [...seed.leftOver, ...leftOver],
});
/** null: not of this kind. */
export type Tried =
  | Resolved
  | {
      problem: Wrong;
      /** One of them, if the keeper says which. */
      choices?: readonly string[];
      /** A letter alone names several jars. */
      letterAlone?: true;
    }
  | null;

/** The amount in a text, what stands around it, and whether there are several. */
export function pickAmount(
  text: string,
  context: SeedContext,
): { amount: FoundAmount | null; rest: string; several: boolean } {
  const found = findAmounts(text, context.amounts, true);
  if (found.length === 0) return { amount: null, rest: text, several: false };
  return { amount: found[0] ?? null, rest: cutOut(text, found), several: found.length > 1 };
}
