// What the seeds of a file may be: its own jars and the ledger's, and the sources that file or ledger name.
import { dayName, exactDay } from '../../text/rough-days';
import type { Source } from '../../ledger/records';
import { jarLabel } from '../../lineage/labels';
import { findAmounts, plain, type AmountOptions } from '../../quantities/quantities';
import { STRONG } from '../cells/seed-words';
import { bareNumber } from '../conventions/bare-units';
import type { Conventions } from '../conventions/file-habits';
import { MASS_UNIT, VOLUME_UNIT } from '../layout/column-cells';
import { countsPieces } from '../layout/headings';
import type { LedgerView, NotesInput } from '../notes-plan';
import { labelKey } from '../rows/identity';
import { labelOf, type NoteRow } from '../rows/note-row';
import type { Cell } from '../rows/row-cells';
import type { KnownJar } from '../named-seeds';
import { namesAnswered, type OpenName } from './ask-sources';
import { SeedIndex } from './seed-index';
import { namesThatStart } from './names-that-start';
import { formsNamed, namedWithPieces, type NamedForm } from './seed-sources';

/** Sources that the rows of a file make known to each other, in whichever order they stand. */
export interface Taught {
  readonly products: Map<string, string>;
  readonly cultures: Set<string>;
}

export interface KnownSeeds {
  readonly jars: SeedIndex;
  /** Rows by their id, of jars that may seed others. */
  readonly byId: ReadonlyMap<string, NoteRow>;
  /** Plain names of products, seen with pieces anywhere or in the ledger. */
  readonly products: ReadonlySet<string>;
  readonly cultures: ReadonlySet<string>;
  readonly taught: Taught['products'];
  /** Products and cultures that are known without being taught. */
  readonly named: ReadonlySet<string>;
  /** Names that start a line and can be no jar: plain name → as first written. */
  readonly bare: ReadonlyMap<string, string>;
  /** Names of products by their form. */
  readonly forms: ReadonlyMap<Source['form'], readonly string[]>;
  /** Rows whose seed is a letter alone that several jars have. */
  readonly lettersAlone: NoteRow[];
  /** What the keeper said that names are, by their plain form. */
  readonly answered: ReadonlyMap<string, string>;
  /** Names that the keeper is asked about, by their plain form. */
  readonly open: Map<string, OpenName>;
}

type Formed = readonly NamedForm[];

/** What the words of the rows' own cells tell of products. */
export interface WordsOfSeeds {
  /** Plain names that stand with a count of pieces. */
  readonly counted: readonly string[];
  /** Names with the form that they are named in, in order. */
  readonly formed: Formed;
}

export function wordsOfSeeds(
  rows: readonly NoteRow[],
  { spoons, decimal }: Conventions,
  look: NotesInput['look'],
): WordsOfSeeds {
  const options = { spoons, decimal };
  const told = rows.map((row) => {
    look?.();
    return { counted: countedProducts(row, options), formed: formedProducts(row, options) };
  });
  return {
    counted: [...new Set(told.flatMap(({ counted }) => counted))],
    formed: told.flatMap(({ formed }) => formed),
  };
}

/** Everything that a seed of these rows may name. */
export function knownSeeds(
  rows: readonly NoteRow[],
  words: WordsOfSeeds,
  { ledger, look, answers }: Pick<NotesInput, 'ledger' | 'look' | 'answers'>,
  taught: Taught,
): KnownSeeds {
  const named = new Set(ledger.sources.map(({ name }) => plain(name)));
  const received = new Set(ledger.sources.flatMap(({ name, culture }) => (culture ? [plain(name)] : [])));
  const products = new Set([...named].filter((name) => !received.has(name)));
  for (const name of words.counted) {
    products.add(name);
    named.add(name);
  }
  const { jars, byId } = knownJars(rows, ledger);
  const bare = namesThatStart(rows, jars, look);
  const forms = formsOf(words.formed, ledger, named);
  const cultures = new Set([...received, ...taught.cultures]);
  return {
    jars,
    byId,
    products,
    cultures,
    taught: taught.products,
    named,
    bare,
    forms,
    lettersAlone: [],
    answered: namesAnswered(answers),
    open: new Map(),
  };
}

/** Whether the amount column of a row counts pieces, and whether it holds a count at all, be it a bare figure. */
export function besideSeeds(
  { cells }: NoteRow,
  options: AmountOptions,
): { piecesBeside: boolean; countBeside: boolean } {
  const amounts = cells.filter(({ column }) => column.meaning === 'amount');
  const piecesBeside = amounts.some(({ text }) =>
    findAmounts(text, options).some(({ amount }) => amount.unit === 'pieces'),
  );
  const counts = ({ column: { unit, heading }, text }: Cell): boolean =>
    bareNumber(text) !== null &&
    (countsPieces(heading) || !(unit !== null && (VOLUME_UNIT.test(unit) || MASS_UNIT.test(unit))));
  return { piecesBeside, countBeside: piecesBeside || amounts.some(counts) };
}

/** Names that stand with a count of pieces in a row, be it in a cell of its own: "Blue Tin" beside "10 caps". */
function countedProducts(row: NoteRow, options: AmountOptions): string[] {
  const { piecesBeside } = besideSeeds(row, options);
  return row.cells
    .filter(({ column }) => column.meaning === 'seed')
    .flatMap(({ text }) => [
      ...namedWithPieces(text, options),
      ...(piecesBeside && !/\d/.test(text) ? text.split(STRONG).map(plain) : []),
    ]);
}

/** Products that a row names by their form, also where the count stands in a cell of its own. */
function formedProducts(row: NoteRow, options: AmountOptions): Formed {
  const { cells } = row;
  const { countBeside } = besideSeeds(row, options);
  const of = (meaning: string): string[] =>
    cells.flatMap(({ column, text }) => (column.meaning === meaning && text.trim() !== '' ? [text] : []));
  const seeds = of('seed');
  const beside = of('amount').flatMap((text) => findAmounts(text, options).flatMap(({ form }) => form ?? []));
  const alone = seeds.length === 1 && beside.length === 1 && !/[\d+;&,]/.test(seeds[0] ?? '') ? seeds : [];
  return [
    ...seeds
      .flatMap((text) => formsNamed(text, options))
      .map((one) => (countBeside ? { ...one, whole: one.name } : one)),
    ...alone.flatMap((name) => beside.map((form) => ({ name: name.trim(), whole: name.trim(), form }))),
  ];
}

/** Products by the form that ledger and rows name them in, each spelled as it is first. */
function formsOf(formed: Formed, { sources }: LedgerView, known: ReadonlySet<string>): KnownSeeds['forms'] {
  const forms = new Map<Source['form'], Map<string, string>>();
  const told = formed.map(({ name, whole, form }) => ({ name: known.has(plain(name)) ? name : whole, form }));
  for (const { name, form } of [...sources, ...told]) {
    const names = forms.get(form) ?? new Map<string, string>();
    forms.set(form, names);
    if (!names.has(plain(name))) names.set(plain(name), name);
  }
  return new Map([...forms].map(([form, names]) => [form, [...names.values()]]));
}

/** The jars that a seed may name: of the rows, then of the ledger. */
function knownJars(rows: readonly NoteRow[], ledger: LedgerView): Pick<KnownSeeds, 'jars' | 'byId'> {
  const byId = new Map<string, NoteRow>();
  const known: KnownJar[] = [];
  const shadowed = new Set<string>();
  const registered = new Set<string>();
  for (const row of rows) {
    const { day, between, letter, word, aliases } = row.identity;
    if (day === null || letter === null || row.repeats !== null) continue;
    const key = labelKey(dayName(row.identity), word, letter);
    const uid = row.here ?? row.clash;
    if (registered.has(key) || (uid !== null && ledger.mistaken.has(uid))) continue;
    registered.add(key);
    byId.set(row.id, row);
    if (uid !== null) shadowed.add(uid);
    const label = labelOf(row);
    const from = between?.from ?? null;
    known.push({ id: row.id, day, from, letter, word, aliases, label, line: row.row.line });
  }
  for (const jar of ledger.jars) {
    const { uid, day, between, word, letter, planned } = jar;
    if (shadowed.has(uid) || day === null || planned) continue;
    const label = jarLabel({ madeOn: exactDay(jar), about: day, word, letter }, true);
    const from = between?.from ?? null;
    known.push({ id: `ledger:${uid}`, day, from, letter: letter.toLowerCase(), word, aliases: [], label });
  }
  return { jars: new SeedIndex(known), byId };
}
