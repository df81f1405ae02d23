// Which rows of a file are jars, with their cells mended and filled in from above; totals and remarks are left out and said.
import type { NoteColumn } from '../../contract';
import { plain, tidy } from '../../quantities/quantities';
import { cellDay, dayIn, findDay, serialDay } from '../../text/days';
import { isDitto } from '../cells/cell-words';
import type { Conventions } from '../conventions/file-habits';
import type { Column, Layout } from '../layout/column-meanings';
import { isSection, NO_LINE, NUMBERED_BATCH, yearOf } from '../layout/heading-lines';
import { JAR_HEADING } from '../layout/jar-heading';
import { hasTrait } from '../meanings';
import type { NotesInput } from '../notes-plan';
import type { Said } from '../said';
import { assumed, problem, question } from '../notes-says';
import type { Row } from '../table/table-rows';
import { type DayAbove, letterOf, readIdentity, tellDay } from './identity';
import { newRow, type NoteRow } from './note-row';
import { type Cell, LONGEST_NOTE, RowLog } from './row-cells';
import { ownCells, rowText } from './same-row';

const TOTALS =
  /^(?:grand )?(?:totals?|sum|min(?:imum)?|max(?:imum)?|subtotal|average|avg|mean|count|summe|gesamt\w*|durchschnitt|mittelwert|totaux|moyenne|totale|media|promedio|totaal|gemiddelde?|suma|razem|srednia|summa|snitt|i alt|gennemsnitt?|gjennomsnitt)\b/;

/** A cell's whole text; of one too long for what its column means nothing: that is asked about, and kept in the note. */
function wholeCell(row: Row, column: Column, log: RowLog): string {
  const long = row.long?.get(column.index);
  if (long !== undefined && long.length > LONGEST_NOTE) {
    log.problem(problem.cellTooLong(column.heading, long, long.length), { column, text: long });
    return '';
  }
  if (long === undefined || hasTrait(column.meaning, 'prose')) return long ?? row.cells[column.index] ?? '';
  if (column.meaning === 'ignore') return '';
  log.unread('long', question.cellTooLong(column.heading, long.trim(), long.length), { column, text: long });
  return '';
}

/** How a sheet is filled in, as far as its rows hang on it. */
interface Habits {
  /** Days stand in it as a spreadsheet's numbers. */
  readonly serials: boolean;
  /** Columns filled in once for all jars of a batch, as its day is. */
  readonly ofBatch: ReadonlySet<Column>;
}

/** Whether anything stands in a row where days stand. */
const tellsDay = ({ cells }: Row, { columns }: Layout): boolean =>
  columns.some(
    ({ meaning, index }) => ['date', 'label', 'start'].includes(meaning) && tidy(cells[index] ?? '') !== '',
  );

/** Columns where something stands in each row that has a day, and nothing in any row below that has none: cells merged over a batch. */
function columnsOfBatch(layout: Layout): ReadonlySet<Column> {
  const jars = layout.columns.find(({ meaning }) => meaning === 'jar');
  const shared = layout.columns.filter(
    ({ meaning }) =>
      (hasTrait(meaning, 'shared') || meaning === 'label') &&
      !['addition', 'addition amount', 'amount'].includes(meaning),
  );
  const open = new Set<Column>(jars ? shared : []);
  let dayless = 0;
  for (const row of layout.rows) {
    layout.look?.();
    if (open.size === 0) break;
    const stands = ({ index }: Column): boolean => tidy(row.cells[index] ?? '') !== '';
    if (!jars || !stands(jars)) continue;
    const dayed = tellsDay(row, layout);
    if (!dayed) dayless += 1;
    for (const column of open) if (stands(column) !== dayed) open.delete(column);
  }
  return dayless === 0 ? new Set() : open;
}

/** Cells of a row under their columns, after mending and ditto marks. */
function cellsOf(
  row: Row,
  above: readonly string[] | null,
  layout: Layout,
  answers: NotesInput['answers'],
  log: RowLog,
  { serials, ofBatch }: Habits,
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
    } else if (answer === undefined && above && ofBatch.has(column) && !tellsDay(row, layout)) {
      text = above[column.index] ?? '';
      log.assume(assumed.mergedCell(column.heading, tidy(text)));
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
      ({ meaning, index }) => hasTrait(meaning, 'day') && findDay(cells[index] ?? '') !== null,
    );
  if (!isSection(row) || !next || hasDay(next.cells)) return null;
  const text = row.cells.map(tidy).find((cell) => cell !== '') ?? '';
  const found = findDay(text);
  const read = found && dayIn(found, order);
  const number = NUMBERED_BATCH.exec(text)?.[1] ?? null;
  return read ? { ...tellDay(read, text), yearlessText: text, word: null, number, text } : null;
}

/** Why a line is no jar, in words: it is a total, or a remark; null where it is one. */
function noJar(row: Row, layout: Layout): string | null {
  const filled = layout.columns.filter(({ index }) => tidy(row.cells[index] ?? '') !== '');
  const [first] = filled;
  const text = filled.map(({ index }) => tidy(row.cells[index] ?? '')).join(' ');
  if (first && TOTALS.test(plain(row.cells[first.index] ?? ''))) return assumed.total(text);
  const has = (meaning: NoteColumn): boolean => filled.some((column) => column.meaning === meaning);
  // "Week 2", alone on its line, is no name of a jar.
  const alone = filled.length === 1 && !/^#?[\p{L}\p{N}]+$/u.test(text) && !JAR_HEADING.test(text);
  // "Best", "n=2" under the day tell none.
  const dayTold = filled.some(
    ({ meaning, index }) => meaning === 'date' && /\d/.test(row.cells[index] ?? ''),
  );
  // "next: 16 May" alone on its line is a plan.
  if (filled.length === 1 && first?.meaning === 'date' && cellDay(text) === null && serialDay(text) === null)
    return assumed.comment(text);
  const named = has('seed') || (has('jar') && !alone) || (filled.length >= 2 && (dayTold || has('label')));
  if (named || /\d{1,2}[/-]\d{1,2}|\d{1,2}\.\d{1,2}\.|^\d{4}-/.test(text)) return null;
  return assumed.comment(text || row.cells.map(tidy).join(' ').trim());
}

/** Whether the labels of a sheet are others than its letters: they name batches. */
function labelsApart({ columns, rows, look }: Layout): boolean {
  const [jar, label] = (['jar', 'label'] as const).map((wanted) =>
    columns.find(({ meaning }) => meaning === wanted),
  );
  if (!jar || !label) return false;
  return rows.some(({ cells }) => {
    look?.();
    const [letter, word] = [jar, label].map(({ index }) => letterOf(cells[index] ?? ''));
    return letter !== '' && word !== '' && letter !== word;
  });
}

/** Rows with the lines below them that only go on with their remarks: no day, no jar, no seed, and not at the line's beginning. */
function withContinuations(layout: Layout, said: Said[]): Row[] {
  const first = layout.columns.find(({ meaning }) => meaning !== 'ignore')?.index ?? 0;
  const out: Row[] = [];
  for (const row of layout.rows) {
    layout.look?.();
    const filled = layout.columns.filter(({ index }) => tidy(row.cells[index] ?? '') !== '');
    const before = out.at(-1);
    const goesOn =
      before !== undefined &&
      !row.long &&
      !before.long &&
      before.line === row.line - 1 &&
      before.part === undefined &&
      noJar(before, layout) === null &&
      filled.length > 0 &&
      filled.every(({ meaning, index }) => hasTrait(meaning, 'goes on') && index > first) &&
      row.cells.slice(layout.columns.length).every((cell) => tidy(cell) === '');
    if (!goesOn) {
      out.push(row);
      continue;
    }
    const cells = before.cells.map((cell, index) => {
      const more = tidy(row.cells[index] ?? '');
      return more === '' ? cell : tidy(cell) === '' ? more : `${cell}; ${more}`;
    });
    out[out.length - 1] = { ...before, cells };
    said.push({ row: row.line, sentence: assumed.goesOn(before.line) });
  }
  return out;
}

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
  const habits = { serials, ofBatch: columnsOfBatch(layout) };
  const apart = labelsApart(layout);
  let above: string[] | null = null;
  let dayAbove: DayAbove | null = null;
  let yearAbove: { readonly line: number; readonly text: string; readonly year: number } | null = null;
  /** The day as it was last written. */
  let dayWritten = '';
  const lines = withContinuations(layout, said);
  for (const [at, row] of lines.entries()) {
    input.look?.();
    const section = sectionDay(row, lines[at + 1], layout, conventions.order);
    const year = section ? null : yearOf(row);
    if (year !== null) yearAbove = { line: row.line, text: row.cells.map(tidy).join(' ').trim(), year };
    const why = section
      ? assumed.section(section.text)
      : year === null
        ? noJar(row, layout)
        : assumed.sectionYear(yearAbove?.text ?? '');
    if (section) [dayAbove, dayWritten] = [section, plain(section.text)];
    if (why !== null) {
      // That the name of the sheet tells the year is said of each day that has none.
      if (row.line !== NO_LINE || section) said.push({ row: row.line, sentence: why });
      continue;
    }
    for (const one of jarsOf(row, layout)) {
      const log = new RowLog(row.line);
      if (one.said !== null) log.assume(one.said);
      const { cells, texts } = cellsOf(one.row, above, layout, input.answers, log, habits);
      const identity = readIdentity(cells, log, conventions.order, dayAbove, apart);
      above = texts;
      const yearTold = identity.yearless !== null && identity.day === null ? (yearAbove?.year ?? null) : null;
      const dayHere = cells.find(({ column, text }) => column.meaning === 'date' && tidy(text) !== '');
      if (dayHere) dayWritten = plain(dayHere.text);
      const fromAbove = !dayHere && dayAbove !== null && identity.toldDay === dayAbove.toldDay;
      const number = fromAbove ? (dayAbove?.number ?? null) : null;
      dayAbove = identity.day !== null || identity.yearless !== null ? { ...identity, number } : dayAbove;
      const own = ownCells(one.row, layout, fromAbove ? dayWritten : '');
      rows.push(
        newRow({ id: one.id, row, log, cells, identity, own, yearTold }, rowText(own, null), input.hash),
      );
    }
  }
  return rows;
}
