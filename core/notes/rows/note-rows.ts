// The rows of a file as jars: which rows are jars, which came in before, and what each jar is called.
import type { NoteColumn } from '../../contract';
import type { Amount } from '../../ledger/basics';
import { jarLabel } from '../../lineage/labels';
import { plain, tidy } from '../../quantities/quantities';
import { type Cell, type RowFacts, RowLog } from './row-cells';
import type { Conventions } from '../conventions/file-conventions';
import { dayIn, findDay, serialDay } from '../cells/days';
import { isSection } from '../layout/heading-lines';
import {
  type DayAbove,
  type Identity,
  fillYears,
  labelKey,
  Letters,
  readIdentity,
  tellDay,
} from './identity';
import type { Column, Layout } from '../layout/column-meanings';
import type { Said } from '../said';
import { type OtherColumns, throughOtherColumns } from './other-columns';
import { type OwnCells, ownCells, rowText } from './same-row';
import type { LedgerJar, NotesInput } from '../notes-plan';
import { pairByPlace } from './same-place';
import { LONGEST_NOTE } from './row-cells';
import { assumed, problem, question } from '../notes-says';
import type { SeedPart } from '../seeds/seed-index';
import type { Row } from '../table/text-table';
import { isDitto } from '../cells/cell-words';

/** One row of a jar while the file is read. */
export interface NoteRow {
  /** Its line, and its letter where one line is several jars. */
  readonly id: string;
  readonly row: Row;
  readonly log: RowLog;
  readonly cells: readonly Cell[];
  readonly identity: Identity;
  readonly own: OwnCells;
  readonly rawText: string;
  raw: string;
  occurrence: number;
  /** uid of the jar it already is. */
  here: string | null;
  /** It was known only by the columns that were there before: which are new, or gone. */
  other: OtherColumns | null;
  /** It reads as it did when it came in. */
  readSame: boolean;
  /** The label is taken in the ledger by a jar this row is not, or not any more. */
  clash: string | null;
  repeats: number | null;
  /** It names no letter: which jar it changed from is told by its day and place alone. */
  guessed: boolean;
  /** It changed, and the keeper said to take it over. */
  taken: boolean;
  facts: RowFacts | null;
  seeds: { part: SeedPart; amount: Amount | null }[];
}

const TOTALS =
  /^(?:grand )?(?:totals?|sum|subtotal|average|avg|mean|count|summe|gesamt\w*|durchschnitt|mittelwert|totaux|moyenne|totale|media|promedio|totaal|gemiddelde?|suma|razem|srednia|summa|snitt|i alt|gennemsnitt?|gjennomsnitt)\b/;

/** Columns whose cells may be as long as a note. */
const PROSE: ReadonlySet<NoteColumn> = new Set([
  'note',
  'texture',
  'smell',
  'colour',
  'whey',
  'tang',
  'set',
  'spoiled',
]);

/** A cell's whole text; of one too long for what its column means nothing: that is asked about, and kept in the note. */
function wholeCell(row: Row, column: Column, log: RowLog): string {
  const long = row.long?.get(column.index);
  if (long !== undefined && long.length > LONGEST_NOTE) {
    log.problem(problem.cellTooLong(column.heading, long, long.length), column.heading, long);
    return '';
  }
  if (long === undefined || PROSE.has(column.meaning)) return long ?? row.cells[column.index] ?? '';
  if (column.meaning === 'ignore') return '';
  log.ask('long', question.cellTooLong(column.heading, long.trim(), long.length));
  log.keep(column.heading, long);
  return '';
}

/** Cells of a row under their columns, after mending and ditto marks. */
function cellsOf(
  row: Row,
  above: readonly string[] | null,
  layout: Layout,
  answers: NotesInput['answers'],
  log: RowLog,
  serials: boolean,
): { cells: Cell[]; texts: string[] } {
  const texts: string[] = [];
  const cells = layout.columns.map((column): Cell => {
    const answer = answers[`cell:${row.line}:${column.heading}`];
    let text = answer ?? wholeCell(row, column, log);
    if (answer === '') log.assume(assumed.mendedBlank(column.heading, row.cells[column.index] ?? ''));
    if (tidy(text) !== '' && isDitto(text) && above && tidy(above[column.index] ?? '') !== '') {
      const value = above[column.index] ?? '';
      log.assume(assumed.ditto(column.heading, text.trim(), tidy(value)));
      text = value;
    }
    texts[column.index] = text;
    if (column.meaning === 'seed' && serials) {
      text = text.replace(/(?<![\d.,])\d{5}(?![\d.,])/g, (number) => {
        const day = serialDay(number);
        if (day !== null) log.assume(assumed.serial(number, day));
        return day ?? number;
      });
    }
    return { column, text };
  });
  const beyond = row.cells.slice(layout.columns.length);
  const extra = beyond
    .map((cell, at) => tidy(row.long?.get(layout.columns.length + at) ?? cell))
    .filter(Boolean)
    .join(' ');
  if (extra !== '') {
    log.assume(assumed.extraCells(extra));
    log.note.push(extra);
  }
  return { cells: cells.filter(({ column }) => column.meaning !== 'ignore'), texts };
}

const SEVERAL = /^\p{L}\d?(?:(?:\s*[,;+&/]\s*|\s+(?:and|und|et|y|e|og|och|en|i)\s+)\p{L}\d?)+$/iu;
const NUMBERS = /^\d{1,3}(?:(?:\s*[,;+&]\s*|\s+(?:and|und|et|y|e|og|och|en|i)\s+)\d{1,3})+$/iu;
const FROM_TO = /^([a-z])\s*(?:-|to|bis)\s*([a-z])$/i;

/** The letters of a cell that names several jars, or none. */
function lettersOf(text: string): string[] {
  const clean = tidy(text)
    .replace(/^(?:jars?|gl(?:ä|ae)ser|pots)\s+/i, '')
    .replace(/\s*,\s*(?:and|und|et|y|e)\s+/i, ', ');
  const range = FROM_TO.exec(clean);
  if (range) {
    const [first, last] = [range[1], range[2]].map((letter) => letter?.toLowerCase().charCodeAt(0) ?? 0);
    if (first !== undefined && last !== undefined && last > first)
      return Array.from({ length: last - first + 1 }, (_, at) => String.fromCharCode(first + at));
  }
  if (!SEVERAL.test(clean) && !NUMBERS.test(clean)) return [];
  const letters = clean
    .toLowerCase()
    .split(/[\s,;+&/]+/)
    .filter((word) => !/^(?:and|und|et|og|och|en)$/.test(word));
  return new Set(letters).size === letters.length ? letters : [];
}

/** A line as the jars it names: one, or one for each letter of "a, b, c". */
function jarsOf(row: Row, layout: Layout): { id: string; row: Row; said: string | null }[] {
  const column = layout.columns.find(({ meaning }) => meaning === 'jar');
  const text = column ? (row.cells[column.index] ?? '') : '';
  const letters = lettersOf(text);
  if (!column || letters.length < 2)
    return [{ id: `row:${row.line}${row.part === undefined ? '' : `:${row.part}`}`, row, said: null }];
  const said = assumed.severalJars(tidy(text), letters);
  return letters.map((letter, at) => ({
    id: `row:${row.line}:${letter}`,
    row: { ...row, cells: row.cells.map((cell, index) => (index === column.index ? letter : cell)) },
    said: at === 0 ? said : null,
  }));
}

/** The day of a line that heads the rows below it, or null: those have days of their own, or it tells none. */
function sectionDay(
  row: Row,
  next: Row | undefined,
  layout: Layout,
  order: Conventions['order'],
): (DayAbove & { text: string }) | null {
  const hasDay = (cells: Row['cells']): boolean =>
    layout.columns.some(
      ({ meaning, index }) =>
        ['date', 'start', 'label', 'jar'].includes(meaning) && findDay(cells[index] ?? '') !== null,
    );
  if (!isSection(row) || !next || hasDay(next.cells)) return null;
  const text = row.cells.map(tidy).find((cell) => cell !== '') ?? '';
  const found = findDay(text);
  const read = found && dayIn(found, order);
  return read ? { ...tellDay(read, text), yearlessText: text, word: null, text } : null;
}

/** Why a line is no jar, in words: it is a total, or a remark; null where it is one. */
function noJar(row: Row, layout: Layout): string | null {
  const filled = layout.columns.filter(({ index }) => tidy(row.cells[index] ?? '') !== '');
  const [first] = filled;
  const text = filled.map(({ index }) => tidy(row.cells[index] ?? '')).join(' ');
  if (first && TOTALS.test(plain(row.cells[first.index] ?? ''))) return assumed.total(text);
  const has = (meaning: NoteColumn): boolean => filled.some((column) => column.meaning === meaning);
  const named = has('seed') || has('jar') || (filled.length >= 2 && (has('date') || has('label')));
  if (named || /\d{1,2}[./-]\d{1,2}|^\d{4}-/.test(text)) return null;
  return assumed.comment(text || row.cells.map(tidy).join(' ').trim());
}

/** A row before anything is known of it but what stands in it. */
const newRow = (known: Pick<NoteRow, 'id' | 'row' | 'log' | 'cells' | 'identity' | 'own'>): NoteRow => ({
  ...known,
  rawText: rowText(known.own, null),
  raw: '',
  occurrence: 1,
  here: null,
  other: null,
  readSame: false,
  clash: null,
  repeats: null,
  guessed: false,
  taken: false,
  facts: null,
  seeds: [],
});

/** Rows of jars; totals and remarks that belong to no jar are left out and said. */
export function collectRows(
  layout: Layout,
  conventions: Conventions,
  input: NotesInput,
  said: Said[],
): NoteRow[] {
  const rows: NoteRow[] = [];
  // Where days are a spreadsheet's numbers, seeds name them so too.
  const serials = layout.columns.some(
    ({ meaning, index }) =>
      ['date', 'label', 'start'].includes(meaning) &&
      layout.rows.some((row) => serialDay(row.cells[index] ?? '') !== null),
  );
  let above: string[] | null = null;
  let dayAbove: DayAbove | null = null;
  /** The day as it was last written. */
  let dayWritten = '';
  for (const [at, row] of layout.rows.entries()) {
    input.look?.();
    const section = sectionDay(row, layout.rows[at + 1], layout, conventions.order);
    const why = section ? assumed.section(section.text) : noJar(row, layout);
    if (section) [dayAbove, dayWritten] = [section, plain(section.text)];
    if (why !== null) {
      said.push({ row: row.line, sentence: why });
      continue;
    }
    for (const one of jarsOf(row, layout)) {
      const log = new RowLog(row.line);
      if (one.said !== null) log.assume(one.said);
      const { cells, texts } = cellsOf(one.row, above, layout, input.answers, log, serials);
      const identity = readIdentity(cells, log, conventions.order, dayAbove);
      above = texts;
      const dayHere = cells.find(({ column, text }) => column.meaning === 'date' && tidy(text) !== '');
      if (dayHere) dayWritten = plain(dayHere.text);
      const fromAbove = !dayHere && dayAbove !== null && identity.toldDay === dayAbove.toldDay;
      dayAbove = identity.day !== null || identity.yearless !== null ? identity : dayAbove;
      const own = ownCells(one.row, layout, fromAbove ? dayWritten : '');
      rows.push(newRow({ id: one.id, row, log, cells, identity, own }));
    }
  }
  return rows;
}

/**
 * Finds what came in before, gives years and letters, and sets equal labels apart.
 * @param factsOf what the cells of a row tell, without a word said about it
 */
export function nameRows(
  rows: readonly NoteRow[],
  layout: Layout,
  input: NotesInput,
  factsOf: (row: NoteRow) => RowFacts,
): void {
  const { ledger } = input;
  const uids = new Map(ledger.jars.map((jar) => [jar.uid, jar]));
  const counts = new Map<string, number>();
  for (const row of rows) {
    input.look?.();
    row.raw = input.hash(row.rawText);
    row.occurrence = (counts.get(row.raw) ?? 0) + 1;
    counts.set(row.raw, row.occurrence);
    row.here = ledger.raw.get(`${row.raw}:${row.occurrence}`) ?? null;
    if (row.here === null && row.occurrence > 1 && row.identity.letter !== null)
      row.here = ledger.raw.get(`${row.raw}:1`) ?? null;
  }
  throughOtherColumns(rows, layout, input);
  fillYears(
    rows.map((row) => ({
      identity: row.identity,
      log: row.log,
      known: (row.here === null ? null : uids.get(row.here)?.day) ?? null,
    })),
    input.today,
  );

  for (const [row, jar] of pairByPlace(rows, input, factsOf)) {
    row.guessed = true;
    row.identity.letter = jar.letter.toLowerCase();
  }

  giveLetters(rows, input.ledger, uids);
  setApart(rows, input);
}

/** Letters for rows that name none: the jar's in the ledger, else the first that is free on its day. */
function giveLetters(
  rows: readonly NoteRow[],
  ledger: NotesInput['ledger'],
  uids: ReadonlyMap<string, LedgerJar>,
): void {
  const taken = new Map<string, Letters>();
  const takenOn = (day: string | null, word: string | null): Letters => {
    const key = `${day}|${plain(word ?? '')}`;
    const there = taken.get(key) ?? new Letters();
    taken.set(key, there);
    return there;
  };
  for (const jar of ledger.jars) takenOn(jar.day, jar.word).take(jar.letter.toLowerCase());
  for (const { identity } of rows)
    if (identity.letter !== null) takenOn(identity.day, identity.word).take(identity.letter);
  for (const { identity, log, here } of rows) {
    if (identity.letter !== null) continue;
    identity.letter =
      (here === null ? null : uids.get(here)?.letter) ?? takenOn(identity.day, identity.word).next();
    takenOn(identity.day, identity.word).take(identity.letter);
    if (identity.longName !== null) {
      log.assume(assumed.named(identity.longName, identity.letter));
      log.note.push(identity.longName);
    } else log.assume(assumed.letter(identity.letter));
  }
}

/** Rows whose label another row or the ledger has: repeated, or to be told apart. */
function setApart(rows: readonly NoteRow[], input: NotesInput): void {
  const { ledger } = input;
  const inLedger = new Map(ledger.jars.map((jar) => [labelKey(jar.day, jar.word, jar.letter), jar.uid]));
  const byLabel = new Map<string, NoteRow[]>();
  for (const row of rows) {
    const { day, word, letter } = row.identity;
    if (day === null || letter === null) continue;
    const key = labelKey(day, word, letter);
    const there = byLabel.get(key);
    if (there) there.push(row);
    else byLabel.set(key, [row]);
    if (row.here === null) row.clash = inLedger.get(key) ?? null;
    if (day > input.today) row.log.problem(problem.dayFuture(day, input.today));
  }
  for (const same of byLabel.values()) {
    if (same.length < 2) continue;
    const [first] = same;
    if (!first) continue;
    if (same.every((row) => row.rawText === first.rawText)) {
      for (const row of same.slice(1)) {
        row.repeats = first.row.line;
        row.log.assume(assumed.repeated(first.row.line));
      }
      continue;
    }
    const sentence = problem.sameLabel(
      labelOf(first),
      same.map((one) => one.row.line),
    );
    for (const row of same) if (row.here === null) row.log.problem(sentence);
  }
}

export const labelOf = ({ identity }: NoteRow): string =>
  jarLabel({ madeOn: identity.day, word: identity.word, letter: identity.letter ?? '?' }, true);
