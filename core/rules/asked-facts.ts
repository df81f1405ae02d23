// What the rule book is asked about: the facts of one act as they stand after it, and the neighbours its rules need. A
// loader makes this of rows (main/ledger/rules/load.ts), or of the plan of an import (core/rules/plan-facts.ts). Keys
// are the ledger's, or below zero for what is only planned.
import type { Amount } from '../ledger/basics';
import type { Portion } from '../ledger/records';
import type { LabelParts } from '../lineage/labels';
import { middleDay } from '../quantities/day-ranges';
import { lastWord } from '../ledger/whereabouts';

/** Of an amount, what rules compare. */
export type Measured = Pick<Amount, 'value' | 'unit'>;

export interface JarFact {
  readonly key: number;
  readonly batch: number;
  /** The day its batch was made, YYYY-MM-DD; null where it is not known. */
  readonly day: string | null;
  /** The earliest and the latest day it can have been made on: that day, or a range; null where nothing is known of it. */
  readonly first: string | null;
  readonly last: string | null;
  readonly word: string | null;
  readonly letter: string;
  readonly state: 'planned' | 'made' | 'not made' | 'mistake' | 'lost';
  /** What it holds; null where that is not known. */
  readonly volume: Measured | null;
  /** Key of the act that marked it as entered by mistake; null where it stands. */
  readonly mistakeIn: number | null;
}

export interface SeedingFact {
  readonly key: number;
  readonly jar: number;
  readonly fromJar: number | null;
  readonly portion: number | null;
  /** Null where it is not known, and of one that may have been another. */
  readonly amount: Measured | null;
  /** Key of the act that first wrote it. Told only where its seed was entered by mistake. */
  readonly writtenIn: number | null;
}

export interface PortionFact extends Pick<Portion, 'part' | 'place' | 'pieces' | 'reserve'> {
  readonly key: number;
  readonly jar: number;
  /** The portion that it was split off; null where it was taken from the jar itself. */
  readonly ofPortion: number | null;
  readonly keptOn: string;
  readonly amount: Measured | null;
}

/** What became of a jar, or of a portion of it, by key in the order of entry. */
export interface MovementFact {
  readonly key: number;
  readonly jar: number;
  readonly portion: number | null;
  readonly kind:
    'fridge' | 'freezer' | 'thawed' | 'opened' | 'eaten' | 'given' | 'discarded' | 'gone' | 'still there';
  /** Null where nobody said when. */
  readonly day: string | null;
  /** The moment, where one was given. */
  readonly at: string | null;
  readonly amount: Measured | null;
  readonly pieces: number | null;
}

/** A time in warmth. Moments are ISO 8601 with their offset. */
export interface HoldFact {
  readonly key: number;
  readonly began: string | null;
  readonly ended: string | null;
  /** How long, where only the length is known. */
  readonly hours: number | null;
}

/** A jar in a hold: from when to when, or as long as the hold where neither is known. */
export interface StayFact {
  readonly key: number;
  readonly jar: number;
  readonly hold: number;
  readonly came: string | null;
  readonly went: string | null;
}

/** Warmth was missing: from when to when, or for so many hours. */
export interface InterruptionFact {
  readonly hold: number;
  readonly began: string | null;
  readonly ended: string | null;
  readonly hours: number | null;
}

export interface ObservationFact {
  readonly key: number;
  readonly jar: number;
  /** The portion that was looked at; null for the jar itself. */
  readonly portion: number | null;
  /** The day it was seen, where one was given. */
  readonly day: string | null;
  /** The moment, where one was given. */
  readonly at: string | null;
  /** The day on which it was told, by the act's own clock. Told only where days of being open are. */
  readonly toldOn: string | null;
  readonly daysOpen: number | null;
  readonly acidity: readonly number[];
  readonly setAfterHours: number | null;
  readonly setByHours: number | null;
  readonly setAtTakeOut: boolean | null;
  /** It tells of the jar out of warmth: at take-out or after; or, with no time said, how it set or tasted. */
  readonly out: boolean;
  /** For how long warmth was missing, as this jar's keeper answered it. */
  readonly powerCutHours: number | null;
}

/** Something told of a jar, or of a portion of it, that only one that was made can have had. */
export interface ToldFact {
  readonly jar: number;
  /** "tasted": what can't have been done with it. */
  readonly what: string;
}

export interface PackageFact {
  readonly key: number;
  readonly name: string;
  readonly of: 'source' | 'milk' | 'addition';
  readonly source: number | null;
  readonly boughtOn: string | null;
  readonly openedOn: string | null;
}

/** So much of a package into a jar. `source` is what it stands for as a seed. */
export interface UseFact {
  readonly jar: number;
  readonly package: number;
  readonly as: 'source' | 'milk' | 'addition';
  readonly source: number | null;
}

export interface Facts {
  /** Jars that are asked about: all that belongs to them is here. Of their seeds and of what they seeded, the jar itself. */
  readonly touched: ReadonlySet<number>;
  readonly jars: ReadonlyMap<number, JarFact>;
  /** Into and out of the jars asked about, by key. */
  readonly seedings: readonly SeedingFact[];
  /** All seedings among jars of the days on which a jar asked about was seeded by one of its own day. */
  readonly sameDay: readonly Pick<SeedingFact, 'jar' | 'fromJar'>[];
  readonly portions: ReadonlyMap<number, PortionFact>;
  readonly movements: readonly MovementFact[];
  readonly holds: ReadonlyMap<number, HoldFact>;
  readonly stays: readonly StayFact[];
  readonly interruptions: readonly InterruptionFact[];
  readonly observations: readonly ObservationFact[];
  /** Laboratory results, servings and photographs. */
  readonly told: readonly ToldFact[];
  readonly packages: ReadonlyMap<number, PackageFact>;
  readonly uses: readonly UseFact[];
  /** What a jar is called in a sentence. */
  readonly label: (jar: JarFact) => string;
}

/** The jar behind a key of the same facts. */
export function jarIn(facts: Pick<Facts, 'jars'>, key: number): JarFact {
  const jar = facts.jars.get(key);
  if (!jar) throw new Error(`the facts name a jar ${key} that they don't hold`);
  return jar;
}

type Made = Pick<JarFact, 'day' | 'first' | 'last' | 'state'>;

/** Where only a range of days is known, the day in its middle, as the label of a jar that has a name tells it. */
export const aboutDay = ({ day, first, last, state }: Made): string | null =>
  day !== null || first === null || last === null || state === 'lost'
    ? null
    : middleDay({ from: first, to: last });

/** What a jar's label is made of. */
export const labelParts = (jar: Made & Pick<JarFact, 'word' | 'letter'>): LabelParts => ({
  madeOn: jar.day,
  about: aboutDay(jar),
  word: jar.word,
  letter: jar.letter,
});

/** For a sentence that names the first or the last day of a range as the day a jar was made. */
export const earliest = ({ day }: Pick<JarFact, 'day'>): { readonly earliest?: true } =>
  day === null ? { earliest: true } : {};
export const latest = ({ day }: Pick<JarFact, 'day'>): { readonly latest?: true } =>
  day === null ? { latest: true } : {};

/** Seedings whose seed is a jar. */
export function* fromJars(facts: Facts): Generator<SeedingFact & { readonly fromJar: number }> {
  for (const seeding of facts.seedings) {
    if (seeding.fromJar !== null) yield seeding as SeedingFact & { readonly fromJar: number };
  }
}

/** What is said to have been done with a jar: "it was not … on that day". */
export const MOVED_WORDS: Readonly<Record<MovementFact['kind'], string>> = {
  fridge: 'put into the fridge',
  freezer: 'frozen',
  thawed: 'thawed',
  opened: 'opened',
  eaten: 'eaten',
  given: 'given away',
  discarded: 'discarded',
  gone: 'gone',
  'still there': 'there',
};

/** What ended jars and portions by the last word on them. By jar and portion, the jar itself under null. */
export function endOf(facts: Facts): (jar: number, portion: number | null) => MovementFact | null {
  const moved = new Map<string, MovementFact[]>();
  const place = (jar: number, portion: number | null): string => `${jar} ${portion ?? ''}`;
  for (const movement of facts.movements) {
    const key = place(movement.jar, movement.portion);
    const there = moved.get(key);
    if (there) there.push(movement);
    else moved.set(key, [movement]);
  }
  const ends = new Map([...moved].map(([key, list]) => [key, lastWord(list).ended]));
  return (jar, portion) => ends.get(place(jar, portion)) ?? null;
}
