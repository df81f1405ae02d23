// From remembered rows to what is recorded in one act, or to a sentence for each cell that can't be read. Pure. Problems are
// keyed by row and column: '2.seed'. Nothing is guessed: an empty cell is not noted, in every figure.
import type { RememberedJars } from '../../core/contract';
import { cutOut, findAmounts } from '../../core/quantities/quantities';
import { readField } from '../parts/field-text';
import { OUTCOME_FIELDS } from '../../core/ledger/jar-fields';
import type { DaysMade, Reader, Writer } from '../parts/reading';
import { lineOrNull, Taking, type Problems } from '../parts/taking';
import { daysOf } from './batch-days';
import { nextLetter } from './batch-text';
import { outcomeText, readOutcome, saysAnything, type OutcomeText } from './outcome-text';
import { resolved, type Asked, type HereJar, type Resolved } from './remember-seeds';
import { namedSeeds, toldRows, type RememberText, type ToldRow } from './remember-text';

type Batch = RememberedJars['batches'][number];
type Jar = RememberedJars['jars'][number];
type Amount = NonNullable<Jar['seedings'][number]['amount']>;

/** A row, and where its jar stands among the batches. */
interface PlacedRow extends ToldRow {
  readonly letter: string;
  readonly place: HereJar;
}

const WHEN =
  'Say about when, such as “14 Mar”, “about 15 Jan”, “mid January” or “between 3 and 9 Jan”; a year alone will do.';

/** Rows of the same day are jars of one batch; a jar without a letter takes the next. */
function placed(rows: readonly ToldRow[], reader: Reader, taking: Taking): readonly PlacedRow[] {
  let jars = 0;
  const days: { readonly key: string; readonly made: DaysMade; readonly letters: string[] }[] = [];
  return rows.flatMap((row) => {
    const read = reader.made(row.cells.day);
    if (!read.ok) taking.say(`${row.at}.day`, read.sentence);
    const made = read.ok ? read.value : null;
    if (made === null) {
      taking.say(`${row.at}.day`, WHEN);
      return [];
    }
    const { first } = daysOf(made);
    if (first > reader.today) taking.say(`${row.at}.day`, 'This day is still to come. Correct the day.');
    const key = JSON.stringify(made);
    if (!days.some((one) => one.key === key)) days.push({ key, made, letters: [] });
    const batch = days.findIndex((one) => one.key === key);
    const letters = days[batch]?.letters ?? [];
    const letter = row.cells.jar.toLowerCase() || nextLetter(letters.map((one) => ({ letter: one })));
    if (letter.length > 20) taking.say(`${row.at}.jar`, 'Keep the letter short: at most 20 characters.');
    if (letters.includes(letter))
      taking.say(`${row.at}.jar`, `Another jar of this day is “${letter}” already. Choose another letter.`);
    letters.push(letter);
    const place = { batch, place: jars++, letter, dayTyped: row.cells.day, made };
    return [{ ...row, letter, place }];
  });
}

/** What was typed with an amount in it: "2 tbsp oat bran", "oat bran 2 tbsp", "inulin". */
function withAmount(text: string, reader: Reader): { readonly name: string; readonly amount: Amount | null } {
  // Where it stands is all that is asked here: the reader says how much it is.
  const [found] = findAmounts(text, { spoons: 'metric' });
  if (found === undefined) return { name: text.trim(), amount: null };
  const read = reader.amount(found.text);
  const name = cutOut(text, [found]).replace(/\bof\b|[(),:;]/gi, ' ').replace(/\s+/g, ' ').trim(); // prettier-ignore
  return { name, amount: read.ok ? read.value : null };
}

const PLAIN = /^(?:plain|none|nothing|no|-|–|—|0)$/i;

function additionsOf({ at, cells }: ToldRow, reader: Reader, taking: Taking): Jar['additions'] {
  if (cells.stirredIn === '' || PLAIN.test(cells.stirredIn)) return [];
  return cells.stirredIn.split(/\s*[+;]\s*|\s*,\s+|\s+and\s+/i).flatMap((one) => {
    if (one.trim() === '') return [];
    const { name, amount } = withAmount(one, reader);
    if (name === '')
      taking.say(`${at}.stirredIn`, `Say what ${one.trim()} was of, such as “2 tbsp oat bran”.`);
    return [{ name, planned: null, actual: amount, package: null }];
  });
}

const DEGREES = /(-?\d+(?:[.,]\d+)?)\s*(?:°\s*([CF])?|([CF])\b)/i;

/** "36 h, 38 C": how long, and how warm; null where neither is told. */
function holdOf({ at, cells }: ToldRow, reader: Reader, taking: Taking): Batch['holds'][number] | null {
  if (cells.warmth === '') return null;
  const warm = DEGREES.exec(cells.warmth);
  const rest = cells.warmth.replace(DEGREES, ' ').replace(/\bat\b|[@,;/]/gi, ' ').replace(/\s+/g, ' ').trim(); // prettier-ignore
  const hours = taking.take(`${at}.warmth`, reader.hours(rest));
  const planned = warm === null ? null : taking.take(`${at}.warmth`, reader.temperature(warm[0].trim()));
  return { startedAt: null, endedAt: null, hours, planned, probe: null, readings: [], note: null };
}

const both = (answer: 'yes' | 'no') => ({ sour: answer, setAtTakeOut: answer }) as const;
/** What may be typed of the gate, in the words of the sheet; the longer ones first. */
const GATE: readonly (readonly [RegExp, Partial<Pick<OutcomeText, 'sour' | 'setAtTakeOut'>>])[] = [
  [/^(?:y|yes|ok|both|all well)$/, both('yes')],
  [/^(?:n|no|neither)$/, both('no')],
  [/\bnot sour\b/, { sour: 'no' }],
  [/\b(?:not set|did not set|never set|loose|no curd)\b/, { setAtTakeOut: 'no' }],
  [/^(?:[^n]|n(?!ot))*\b(?:sour|clean)\b/, { sour: 'yes' }],
  [/^(?:[^n]|n(?!ot))*\b(?:set|holds|held|curd)\b/, { setAtTakeOut: 'yes' }],
];

/** The answers of the gate; null where the words are none. */
export function gateOf(typed: string): Partial<Pick<OutcomeText, 'sour' | 'setAtTakeOut'>> | null {
  const parts = typed
    .toLowerCase()
    .split(/\s*[,;/]\s*|\s+(?:and|but)\s+/)
    .filter((one) => one !== '');
  const read = parts.map((part) => GATE.find(([says]) => says.test(part.trim()))?.[1]);
  return read.includes(undefined) ? null : Object.assign({}, ...read);
}

function outcomeOf({ at, cells }: ToldRow, reader: Reader, writer: Writer, taking: Taking): Jar['outcome'] {
  const gate = gateOf(cells.gate);
  if (gate === null)
    taking.say(`${at}.gate`, 'Type “yes”, “no”, or which: “sour”, “not sour”, “holds”, “not set”.');
  const word = readField(OUTCOME_FIELDS.setWord.kind, cells.setWord, reader);
  const setWord = taking.take(`${at}.setWord`, word);
  const text: OutcomeText = {
    ...outcomeText(null, null, writer),
    ...gate,
    setWord: (setWord ?? '') as OutcomeText['setWord'],
    note: cells.note,
  };
  const { outcome, problems } = readOutcome(text, reader);
  for (const sentence of problems.values()) taking.say(`${at}.note`, sentence);
  return saysAnything(outcome) ? outcome : null;
}

const isPieces = (one: Resolved): boolean => one.kind === 'source' || one.kind === 'new source';

function seedingsOf(
  row: PlacedRow,
  { seeds, either }: SeedsRead,
  reader: Reader,
  taking: Taking,
): Jar['seedings'] {
  const pieces = seeds.length > 0 && seeds.every(isPieces);
  const amount = taking.take(
    `${row.at}.seedAmount`,
    reader.amount(row.cells.seedAmount, pieces ? 'pieces' : undefined),
  );
  if (amount !== null && seeds.length === 0)
    taking.say(
      `${row.at}.seed`,
      'Say which jar or product this amount was taken from, or “?” and leave the amount empty.',
    );
  if (amount?.unit === 'pieces' && !pieces && seeds.length > 0)
    taking.say(
      `${row.at}.seedAmount`,
      'A jar is taken from by volume or weight, such as “3 tbsp”, not in pieces.',
    );
  return seeds.flatMap((seed): Jar['seedings'] => {
    const none = { fromJar: null, portion: null, part: null, source: null, package: null };
    // How much of it is told of one seed, or of one of two; of several that all went in nobody said how much of each.
    const own = { amount: seeds.length === 1 || either ? amount : null, either: either ? 1 : null };
    switch (seed.kind) {
      case 'here':
        return [{ ...none, ...own, fromHere: seed.place }];
      case 'jar':
        return [{ ...none, ...own, fromJar: seed.id }];
      case 'source':
        return [{ ...none, ...own, source: seed.id }];
      case 'new source':
        return [{ ...none, ...own, newSource: seed.label }];
      case 'wrong':
        taking.say(`${row.at}.seed`, seed.sentence);
        return [];
    }
  });
}

/** What a row's seeds are. */
interface SeedsRead {
  readonly seeds: readonly Resolved[];
  readonly either: boolean;
}

/** A whole text that is the name of something is that, whatever words are in it; else its parts are looked for. */
function seedsOf(
  row: PlacedRow,
  here: readonly HereJar[],
  asked: ReadonlyMap<string, Asked>,
  text: RememberText,
): SeedsRead {
  const find = (name: string): Resolved => resolved(name, row.place, here, asked, text.products);
  const { names, either } = namedSeeds(row.cells.seed);
  const whole = names.length > 1 ? find(row.cells.seed) : null;
  return whole !== null && whole.kind !== 'wrong'
    ? { seeds: [whole], either: false }
    : { seeds: names.map(find), either };
}

/** What a row was understood as, to be read beside it. */
export interface ReadRow extends SeedsRead {
  readonly at: number;
  readonly letter: string;
  readonly made: DaysMade;
}

export interface RememberRead {
  readonly entry: RememberedJars | null;
  readonly problems: Problems;
  readonly rows: readonly ReadRow[];
}

/** Names that the ledger has to be asked about. */
export const namesIn = (text: RememberText): readonly string[] => [
  ...new Set(
    toldRows(text).flatMap(({ cells }) => {
      const { names } = namedSeeds(cells.seed);
      return names.length > 1 ? [...names, cells.seed] : names;
    }),
  ),
];

/** Reads the rows. @param asked what the ledger said to their names */
export function readRemember(
  text: RememberText,
  asked: ReadonlyMap<string, Asked>,
  reader: Reader,
  writer: Writer,
): RememberRead {
  const taking = new Taking();
  const rows = placed(toldRows(text), reader, taking);
  const here = rows.map(({ place }) => place);
  const batches: Batch[] = [];
  const jars: Jar[] = [];
  const read = rows.map((row): ReadRow => {
    const { batch: at, made } = row.place;
    const told = seedsOf(row, here, asked, text);
    const batch = (batches[at] ??= { ...made, word: null, note: null, holds: [] });
    jars.push({
      batch: at,
      letter: row.letter,
      ...vesselAndMilk(row, reader),
      hold: holdIn(batch.holds, holdOf(row, reader, taking)),
      additions: additionsOf(row, reader, taking),
      seedings: seedingsOf(row, told, reader, taking),
      outcome: outcomeOf(row, reader, writer, taking),
    });
    return { at: row.at, letter: row.letter, made, ...told };
  });
  const entry = { batches, jars, sameLabelMeant: text.sameLabelMeant };
  return {
    entry: taking.problems.size === 0 && batches.length > 0 ? entry : null,
    problems: taking.problems,
    rows: read,
  };
}

/** What of a jar's own fields a row tells: its milk. */
function vesselAndMilk({ cells }: ToldRow, reader: Reader) {
  const { name, amount } = withAmount(cells.milk, reader);
  return {
    milk: lineOrNull(name), milkAmount: amount, milkPackage: null, vessel: null, finalVolume: null, finalVolumeKnown: null,
    countPerMl: null, onShelf: null, goneOn: null, note: null,
  }; // prettier-ignore
}

/** The place of a hold among those of a batch: jars of which the same is told stood together. */
function holdIn(holds: Batch['holds'], hold: Batch['holds'][number] | null): number | null {
  if (hold === null) return null;
  const at = holds.findIndex((one) => JSON.stringify(one) === JSON.stringify(hold));
  return at >= 0 ? at : holds.push(hold) - 1;
}
