// From the text of a batch form to the entry that is recorded, or to one clear sentence for each field that is wrong.
// Pure. Problems are keyed by the field's path: 'date', 'all.milk.milkAmount', 'jars.0.seeds.1.amount', 'holds.0.hours'.
import { daysOf } from './batch-days';
import type { BatchEntry } from '../../core/contract';
import type { Amount } from '../../core/ledger/basics';
import { JAR_FIELDS } from '../../core/ledger/jar-fields';
import { readField } from '../parts/field-text';
import type { Reader } from '../parts/reading';
import { lineOrNull, orNull, Taking, type Problems } from '../parts/taking';
import {
  isEmptyAddition,
  MILK_FIELDS,
  saysPlain,
  isEmptySeed,
  recipeOf,
  type AdditionText,
  type BatchText,
  type HoldText,
  type MilkText,
  type SeedText,
} from './batch-text';

type EntryJar = BatchEntry['jars'][number];
type EntryHold = BatchEntry['holds'][number];

/** Where the problems of a field go: a path the field's name is put to, or a function of that name. */
type Path = string | ((field: string) => string);
const pathTo = (path: Path, field: string): string =>
  typeof path === 'string' ? `${path}.${field}` : path(field);

/** The milk and vessel of a jar. */
export function milkEntry(text: MilkText, path: Path, reader: Reader, taking: Taking) {
  const take = <T>(field: (typeof MILK_FIELDS)[number]): T | null =>
    taking.take(pathTo(path, field), readField(JAR_FIELDS[field].kind, text[field], reader)) as T | null;
  const finalVolume = take<Amount>('finalVolume');
  return {
    milk: take<string>('milk'),
    milkAmount: take<Amount>('milkAmount'),
    milkPackage: orNull(text.milkPackage),
    vessel: take<string>('vessel'),
    finalVolume,
    finalVolumeKnown: finalVolume === null ? null : orNull(text.finalVolumeKnown),
  };
}

/** Whether a bare number of this seed means pieces: of a product, or of what was kept in cubes. */
export const countsPieces = ({ picked }: SeedText): boolean =>
  picked !== null && (picked.kind !== 'jar' || picked.pieces === true);

/**
 * What is wrong with text that was left in a seed's picker.
 * @param matched something in the list fits it
 * @param refused what it stands for, where that can't be picked, and why
 */
export const unpickedSentence = (
  text: string,
  matched: boolean,
  refused?: { readonly label: string; readonly refused?: string } | undefined,
): string =>
  refused?.refused
    ? `${refused.label}: ${refused.refused}`
    : matched
      ? `No jar or product is picked for “${text.trim()}”. Choose one from the list.`
      : `No jar or product is called “${text.trim()}”. Choose one from the list, or add it there as a new product.`;

/** The seedings of a jar; rows with nothing in them are left out. */
export function seedEntries(
  seeds: readonly SeedText[],
  path: string,
  reader: Reader,
  taking: Taking,
): EntryJar['seedings'] {
  return seeds.flatMap((seed, index) => {
    if (isEmptySeed(seed)) return [];
    const at = `${path}.${index}`;
    const bare = countsPieces(seed) ? 'pieces' : undefined;
    const amount = taking.take(`${at}.amount`, reader.amount(seed.amount, bare));
    if (seed.picked === null) {
      taking.say(
        `${at}.find`,
        seed.find.trim() === ''
          ? 'Say which jar or product this amount was taken from.'
          : unpickedSentence(seed.find, true),
      );
      return [];
    }
    if (seed.picked.kind === 'jar' && amount?.unit === 'pieces' && !countsPieces(seed))
      taking.say(`${at}.amount`, 'A jar is taken from by volume or weight, such as “3 tbsp”, not in pieces.');
    return [
      {
        fromJar: seed.picked.kind === 'jar' ? seed.picked.id : null,
        portion: orNull(seed.portion),
        part: seed.picked.kind === 'jar' ? orNull(seed.part) : null,
        source: seed.picked.kind === 'source' ? seed.picked.id : null,
        ...(seed.picked.kind === 'new source' ? { newSource: seed.picked.label } : {}),
        package: orNull(seed.package),
        amount,
      },
    ];
  });
}

/** The additions of a jar; rows with nothing in them are left out. */
export function additionEntries(
  additions: readonly AdditionText[],
  path: Path,
  reader: Reader,
  taking: Taking,
  /** Of a jar that is only planned, whatever amount is typed is a plan. */
  plannedOnly = false,
): EntryJar['additions'] {
  return additions.flatMap((addition, index) => {
    if (isEmptyAddition(addition) || saysPlain(addition)) return [];
    const at = (field: string): string => pathTo(path, `${index}.${field}`);
    const name = lineOrNull(addition.name);
    if (name === null) taking.say(at('name'), 'Say what was stirred in, such as “potato starch”.');
    const planned = taking.take(at('planned'), reader.amount(addition.planned));
    const actual = taking.take(at('actual'), reader.amount(addition.actual));
    return [
      {
        name: name ?? '',
        planned: plannedOnly ? (planned ?? actual) : planned,
        actual: plannedOnly ? null : actual,
        package: orNull(addition.package),
      },
    ];
  });
}

/** One hold. `day` is the batch's day: a start typed as a time alone is on it. */
export function holdEntry(
  text: HoldText,
  path: string,
  day: string | null,
  reader: Reader,
  taking: Taking,
): EntryHold {
  const startedAt = taking.take(`${path}.started`, reader.moment(text.started, day));
  const endedAt = taking.take(`${path}.ended`, reader.moment(text.ended, null));
  const hours = taking.take(`${path}.hours`, reader.hours(text.hours));
  if (startedAt !== null && endedAt !== null) {
    const held = (Date.parse(endedAt) - Date.parse(startedAt)) / 3_600_000;
    if (held <= 0)
      taking.say(`${path}.ended`, 'The hold ends before it starts. Please correct one of the two times.');
    else if (hours !== null && Math.abs(held - hours) > 1)
      taking.say(
        `${path}.hours`,
        `From start to end is ${Math.round(held * 10) / 10} hours. Clear one of the three, or correct it.`,
      );
  }
  return {
    startedAt,
    endedAt,
    hours,
    planned: taking.take(`${path}.planned`, reader.temperature(text.planned)),
    probe: orNull(text.probe),
    readings: [],
    note: lineOrNull(text.note),
  };
}

/** As many as the contract takes in one batch. */
export const MOST_JARS = 60;
export const NO_SEED =
  'Say what seeded it: a jar or a product. Where nobody can say, choose “a jar nobody can name” from the list.';

/** Where no day was said. */
export const WHEN_MADE = 'Say on which day, such as “14 Mar”, or about when, such as “about 15 Jan”.';

/**
 * Reads a whole batch form.
 * @param options.sameLabelMeant the keeper was asked about two equal labels and meant it
 * @param options.draft key of the draft that is used up by recording
 * @returns the entry, or null with a sentence for each field that is wrong
 */
export function readBatch(
  text: BatchText,
  reader: Reader,
  options: { readonly sameLabelMeant: boolean; readonly draft: string | null },
): { readonly entry: BatchEntry | null; readonly problems: Problems } {
  const taking = new Taking();
  const made = taking.take('date', reader.made(text.date)) ?? taking.say('date', WHEN_MADE);
  const madeOn = made?.madeOn ?? null;
  const first = made && daysOf(made).first;
  // A hold is recorded even where nothing is known of it: jars not said to stand apart shared one, and it can be
  // filled in later.
  const holds = text.holds.map((hold, index) => holdEntry(hold, `holds.${index}`, madeOn, reader, taking));
  const count = taking.take('count', reader.whole(text.count, MOST_JARS));
  if (count !== text.jars.length) taking.say('count', `Say how many jars, from 1 to ${MOST_JARS}.`);

  const letters = new Map<string, number>();
  const jars = text.jars.map((jar, index): EntryJar => {
    const at = (own: boolean, part: string): string => (own ? `jars.${index}.${part}` : `all.${part}`);
    const recipe = recipeOf(text, jar);
    const letter = jar.letter.trim().toLowerCase();
    if (letter === '') taking.say(`jars.${index}.letter`, 'Give this jar a letter, such as “a”.');
    else if (letter.length > 20)
      taking.say(`jars.${index}.letter`, 'Keep the letter short: at most 20 characters.');
    else if (letters.has(letter))
      taking.say(
        `jars.${index}.letter`,
        `Another jar of this batch is “${letter}” already. Choose another letter.`,
      );
    letters.set(letter, index);
    /** '0.planned': of the jar where it has its own, else of all. */
    const additionPath = (field: string): string => {
      const [row = '', name = ''] = field.split('.');
      return at(Object.hasOwn(jar.additions?.[Number(row)] ?? {}, name), `additions.${field}`);
    };
    const seedings = seedEntries(recipe.seeds, at(jar.seeds !== null, 'seeds'), reader, taking);
    if (recipe.state === 'made' && recipe.seeds.every(isEmptySeed))
      taking.say(at(jar.seeds !== null, 'seeds.0.find'), NO_SEED);
    if (recipe.state === 'made' && first !== null && first > reader.today)
      taking.say('date', 'This day is still to come. Mark the jars as planned, or correct the day.');
    if (recipe.state === 'planned' && made !== null && madeOn === null)
      taking.say('date', 'What is planned is planned for a day. Say on which, such as “14 Mar”.');
    return {
      letter,
      ...milkEntry(
        recipe.milk,
        (field) => at(jar.milk !== null && Object.hasOwn(jar.milk, field), `milk.${field}`),
        reader,
        taking,
      ),
      countPerMl: null,
      onShelf: recipe.state === 'planned' || recipe.shelf === '' ? null : recipe.shelf === 'kept',
      goneOn: null,
      note: lineOrNull(jar.note),
      state: recipe.state,
      hold: recipe.hold < holds.length ? recipe.hold : null,
      additions: additionEntries(recipe.additions, additionPath, reader, taking),
      seedings,
      outcome: null,
    };
  });
  if (taking.problems.size > 0 || made === null) return { entry: null, problems: taking.problems };
  return {
    entry: { ...made, word: lineOrNull(text.word), note: lineOrNull(text.note), holds, jars, ...options },
    problems: taking.problems,
  };
}
