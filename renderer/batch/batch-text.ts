// What stands in the fields of a batch form: text as typed, nothing understood yet. This is what a draft keeps.
// Pure. Reading it is batch-entry.ts; filling it from an earlier batch is batch-repeat.ts.

import type { JAR_FIELDS, TextOf } from '../../core/ledger/jar-fields';
import { nextNumber } from './numbered-jars';

/** A seeding as typed: what was picked (or the text typed towards it) and how much. */
export interface SeedText {
  readonly picked: {
    /** A new source is a product that the ledger doesn't have yet: it is made when the form is recorded. */
    readonly kind: 'jar' | 'source' | 'new source';
    /** Empty for a new source, which its label names. */
    readonly id: string;
    /** With the portion's name, where one is picked: "30 Nov a · freezer cubes". */
    readonly label: string;
    /** What is picked is a portion kept in cubes or pieces, so a bare number counts them. */
    readonly pieces?: boolean;
  } | null;
  /** Text in the picker: kept while nothing is picked, so that it survives too. */
  readonly find: string;
  readonly amount: string;
  readonly part: '' | 'whey' | 'curd' | 'mixed';
  readonly portion: string;
  readonly package: string;
}

export interface AdditionText {
  readonly name: string;
  readonly planned: string;
  readonly actual: string;
  readonly package: string;
}

/** Milk and vessel: what is the same in most jars of a batch. */
export interface MilkText {
  readonly milk: string;
  readonly milkAmount: string;
  readonly milkPackage: string;
  readonly vessel: string;
  readonly finalVolume: string;
  readonly finalVolumeKnown: TextOf<(typeof JAR_FIELDS)['finalVolumeKnown']['kind']>;
}
/** Those that are typed, in the order of their rows. */
export const MILK_FIELDS = ['milk', 'milkAmount', 'vessel', 'finalVolume'] as const;

export interface HoldText {
  readonly started: string;
  readonly ended: string;
  readonly hours: string;
  readonly planned: string;
  readonly probe: '' | 'air' | 'bath' | 'jar';
  readonly note: string;
}

export interface Recipe {
  readonly milk: MilkText;
  readonly seeds: readonly SeedText[];
  readonly additions: readonly AdditionText[];
  /** Index in holds. */
  readonly hold: number;
  readonly state: 'planned' | 'made';
  readonly shelf: 'kept' | 'gone' | '';
}

/** One jar: null, or a field left out, wherever it is as all jars are. An empty field of its own is not noted. */
export interface JarText {
  readonly letter: string;
  readonly note: string;
  readonly milk: Partial<MilkText> | null;
  readonly seeds: readonly SeedText[] | null;
  /** By row: the first goes over the first of all jars. */
  readonly additions: readonly Partial<AdditionText>[] | null;
  readonly hold: number | null;
  readonly state: 'planned' | 'made' | null;
}

export interface BatchText {
  readonly date: string;
  readonly word: string;
  readonly note: string;
  readonly holds: readonly HoldText[];
  readonly all: Recipe;
  /** How many jars, as typed: `jars` follows it as soon as it is a number. */
  readonly count: string;
  readonly jars: readonly JarText[];
}

export const noSeed: SeedText = { picked: null, find: '', amount: '', part: '', portion: '', package: '' };
export const noAddition: AdditionText = { name: '', planned: '', actual: '', package: '' };
export const noHold: HoldText = { started: '', ended: '', hours: '', planned: '', probe: '', note: '' };
export const noMilk: MilkText = {
  milk: '',
  milkAmount: '',
  milkPackage: '',
  vessel: '',
  finalVolume: '',
  finalVolumeKnown: '',
};

/** a … z, then aa, ab …: the letter of the jar at an index. */
export function letterAt(index: number): string {
  const last = String.fromCharCode(97 + (index % 26));
  return index < 26 ? last : letterAt(Math.floor(index / 26) - 1) + last;
}

/** The first letter no jar has yet, without regard to case; of jars that are numbered, the number after their last. */
export function nextLetter(jars: readonly Pick<JarText, 'letter'>[]): string {
  const taken = new Set(jars.map((jar) => jar.letter.trim().toLowerCase()));
  const numbered = nextNumber(jars.map(({ letter }) => letter));
  if (numbered !== null) return numbered;
  let index = 0;
  while (taken.has(letterAt(index))) index += 1;
  return letterAt(index);
}

export const plainJar = (letter: string): JarText => ({
  letter,
  note: '',
  milk: null,
  seeds: null,
  additions: null,
  hold: null,
  state: null,
});

/** An empty form: one jar, one hold, one row for a seed and one for an addition. */
export function emptyBatch(date: string): BatchText {
  return {
    date,
    word: '',
    note: '',
    holds: [noHold],
    all: { milk: noMilk, seeds: [noSeed], additions: [noAddition], hold: 0, state: 'made', shelf: 'kept' },
    count: '1',
    jars: [plainJar('a')],
  };
}

/** The same batch with other jars, and their number in its field. */
export const withJars = (text: BatchText, jars: readonly JarText[]): BatchText => ({
  ...text,
  jars,
  count: String(jars.length),
});

/** The same batch with this many jars: new ones take the next letters, the last ones go first. */
export function withJarCount(text: BatchText, count: number): BatchText {
  const jars = text.jars.slice(0, count);
  while (jars.length < count) jars.push(plainJar(nextLetter(jars)));
  return withJars(text, jars);
}

/** The same batch without one hold: jars that stood in it go to the first, and later ones keep theirs. */
export function withoutHold(text: BatchText, index: number): BatchText {
  const moved = (hold: number): number => (hold === index ? 0 : hold > index ? hold - 1 : hold);
  return {
    ...text,
    holds: text.holds.filter((_, at) => at !== index),
    all: { ...text.all, hold: moved(text.all.hold) },
    jars: text.jars.map((jar) => ({ ...jar, hold: jar.hold === null ? null : moved(jar.hold) })),
  };
}

/** How many rows of things stirred in a batch has: as many as all jars have, or one that has most. */
export const additionRows = ({ all, jars }: Pick<BatchText, 'all' | 'jars'>): number =>
  Math.max(1, all.additions.length, ...jars.map(({ additions }) => additions?.length ?? 0));

/**
 * What is stirred into one jar in one row. An amount for all goes with a jar's own name; where neither names anything the
 * jar is plain, unless no jar does: then the amount stands alone, to be asked about.
 */
function additionOf(text: BatchText, jar: JarText, row: number): AdditionText {
  const all = text.all.additions[row] ?? noAddition;
  const own = jar.additions?.[row];
  if (own === undefined && all.name.trim() !== '') return all;
  const merged = { ...all, ...own };
  if (isPlainWord(merged.name) && !own?.planned && !own?.actual && own?.name !== undefined)
    return { ...noAddition, name: merged.name };
  const named = text.jars.some(({ additions }) => (additions?.[row]?.name ?? '').trim() !== '');
  return merged.name.trim() === '' && named && !own?.planned && !own?.actual ? noAddition : merged;
}

/** What one jar comes to: its own values where it differs, else those of all. */
export function recipeOf(text: BatchText, jar: JarText): Recipe {
  return {
    milk: { ...text.all.milk, ...jar.milk },
    seeds: jar.seeds ?? text.all.seeds,
    additions:
      jar.additions?.length === 0
        ? []
        : Array.from({ length: additionRows(text) }, (_, row) => additionOf(text, jar, row)),
    hold: jar.hold ?? text.all.hold,
    state: jar.state ?? text.all.state,
    shelf: text.all.shelf,
  };
}

/** A seed row with another jar or source picked: pieces don't carry over to a jar, nor a spoon of curd to a product. */
export function pickSeed(
  seed: SeedText,
  picked: SeedText['picked'],
  /** What was kept apart of the jar, where that is picked: its own part stands for the seed's. */
  portion: { readonly id: string; readonly part: SeedText['part'] } | null = null,
): SeedText {
  const sameKind =
    picked === null ||
    seed.picked === null ||
    (seed.picked.kind === picked.kind && (seed.picked.pieces ?? false) === (picked.pieces ?? false));
  // A bare number counts pieces. Of a jar it says nothing, also where the field was emptied before it was picked.
  const counted = /^[\d.,\s]+$/.test(seed.amount);
  const bareOfJar = counted && picked?.kind === 'jar' && picked.pieces !== true;
  return {
    ...seed,
    picked,
    find: '',
    portion: portion?.id ?? '',
    package: '',
    amount: sameKind && !bareOfJar ? seed.amount : '',
    part: portion?.part || (sameKind ? seed.part : ''),
  };
}

const sameSeed = (a: SeedText, b: SeedText): boolean =>
  a.picked?.kind === b.picked?.kind &&
  a.picked?.id === b.picked?.id &&
  a.picked?.label === b.picked?.label &&
  a.find === b.find &&
  a.portion === b.portion;

/**
 * The batch with these seeds for all its jars. A jar that differs only in how much of it went in follows what the seed is
 * changed to, also while that is typed: one that is picked anew reaches every jar that had the one before.
 */
export function withSharedSeeds(text: BatchText, seeds: readonly SeedText[]): BatchText {
  const before = text.all.seeds;
  const follow = (own: SeedText): SeedText => {
    const at = before.findIndex((one) => sameSeed(one, own));
    const now = seeds[at];
    if (now === undefined || seeds.length !== before.length || sameSeed(now, own)) return own;
    const portion = now.portion === '' ? null : { id: now.portion, part: now.part };
    return { ...pickSeed(own, now.picked, portion), find: now.find };
  };
  return {
    ...text,
    all: { ...text.all, seeds },
    jars: text.jars.map((jar) => (jar.seeds === null ? jar : { ...jar, seeds: jar.seeds.map(follow) })),
  };
}

/** Whether nothing at all stands in a row, so that it can be left out without losing anything. */
export const isEmptySeed = (seed: SeedText): boolean =>
  seed.picked === null && seed.find.trim() === '' && seed.amount.trim() === '';
/** Words for a jar into which nothing was stirred. */
const PLAIN = /^(none|nothing|no|nil|plain|no fibre|no fiber|no addition|without|-+|–|—|0)$/;

const isPlainWord = (name: string): boolean => PLAIN.test(name.trim().toLowerCase().replace(/\.$/, ''));

/** "none" is no addition: the jar is plain. With an amount beside it, it is the name of something. */
export const saysPlain = ({ name, planned, actual }: AdditionText): boolean =>
  isPlainWord(name) && planned.trim() === '' && actual.trim() === '';

export const isEmptyAddition = (addition: AdditionText): boolean =>
  addition.name.trim() === '' && addition.planned.trim() === '' && addition.actual.trim() === '';

/** Which jar of a recorded batch it is, as its fields hold it. */
export interface JarPlaceText<State extends string = 'made' | 'planned'> {
  readonly letter: string;
  readonly state: State;
  /** Id of a hold of the batch, or '' where it is not said. */
  readonly hold: string;
}
