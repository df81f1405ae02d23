// Where the headings of a table stand (on one line or two, below titles, or nowhere), and which lines are rows.
import type { NoteColumn } from '../../contract';
import { plain, tidy } from '../../quantities/quantities';
import { cellDay, findDay } from '../../text/days';
import { isNumber } from './column-cells';
import { bareHeading, headingMeaning, isUnit } from './headings';
import type { Said } from '../said';
import { isKeyLine, withKeyLines } from './key-lines';
import { JAR_HEADING } from './jar-heading';
import { assumed } from '../notes-says';
import type { Row, Table } from '../table/table-rows';

const MOST_HEADING_LINES = 25;
/** Of a longer heading the beginning is its name. */
const LONGEST_HEADING = 120;
/** Nothing, or a rule drawn with dashes. */
const isEmpty = (row: Row): boolean =>
  !row.long &&
  row.cells.every((cell) => cell === '' || (/^[-=_:+\s]*$/.test(tidy(cell)) && tidy(cell).length !== 1));
const isDataCell = (text: string): boolean => isNumber(text) || cellDay(text) !== null || /\d/.test(text);

function headingScore(row: Row): number {
  let score = 0;
  for (const cell of row.cells) {
    if (tidy(cell) === '' || cell.length > 60) continue;
    if (cellDay(cell) || isNumber(cell)) {
      // "1, 2, 3" may head the columns of jars.
      score -= /^\d{1,2}$/.test(tidy(cell)) ? 0.3 : 1;
      continue;
    }
    const found = headingMeaning(cell);
    if (found) score += found.sure === 3 ? 1 : 0.6;
  }
  return score;
}

/** The row of headings, or null where the first full row is already one of jars. */
function findHeadings(rows: readonly Row[]): Row | null {
  const scores = rows.slice(0, MOST_HEADING_LINES).map(headingScore);
  const best = Math.max(...scores, 0);
  // Headings that come again further down may tell more.
  const at = best > 1.5 ? scores.findIndex((score) => score >= best * 0.7) : -1;
  if (at >= 0) return rows[at] ?? null;
  const wide = rows.filter((row) => row.cells.filter((cell) => tidy(cell) !== '').length > 2);
  const [first, ...others] = wide;
  // Words we don't know, and no figures in them, above rows that have figures: headings all the same.
  if (
    first &&
    others.length > 0 &&
    !first.cells.some(isDataCell) &&
    others.slice(0, 5).every((row) => row.cells.some(isDataCell))
  )
    return first;
  return null;
}

/** A second line of headings: nothing but units and words of headings, no figures, no days. */
function isSecondLine(row: Row | undefined): row is Row {
  const cells = row?.cells.map(tidy).filter(Boolean) ?? [];
  if (cells.length < 2 || cells.some((cell) => isDataCell(cell) || cell.length > 30)) return false;
  const told = cells.filter((cell) => isUnit(cell) || headingMeaning(cell) !== null);
  return told.length >= 2 && told.length >= cells.length * 0.6;
}

/**
 * One heading out of two lines of them: "Starter" above "ml" is "Starter (ml)".
 * @param spans the upper one stands above several: it names the group, and what is known by itself needs no more
 */
function joinHeadings(above: string, below: string, spans: boolean): string {
  if (below === '' || above === '') return above || below;
  const own = spans ? headingMeaning(below)?.meaning : undefined;
  if (own !== undefined && !OF_A_GROUP.has(own)) return below;
  return isUnit(below) ? `${above} (${below})` : `${above} ${below}`;
}
/** What is told of many things: of which, the heading of the group says. */
const OF_A_GROUP: ReadonlySet<NoteColumn> = new Set(['amount', 'date', 'jar', 'label', 'note']);

/** "Batch 3 - 19 Jan 2026" above its rows: seeds may go by the number. */
export const NUMBERED_BATCH = /\b(?:batch|charge|ansatz|lot)\s*(?:no\.?|nr\.?|#)?\s*(\d{1,4})\b/iu;

/** A line with one cell that holds a day and more: it heads the rows below. */
export function isSection(row: Row): boolean {
  const cells = row.cells.map(tidy).filter(Boolean);
  const [only] = cells;
  if (cells.length !== 1 || only === undefined) return false;
  const found = findDay(only);
  if (!found) return false;
  // "2 May b" is a jar.
  const rest = plain(`${only.slice(0, found.start)} ${only.slice(found.end)}`.replace(NUMBERED_BATCH, ' '));
  return !/(?:^|[^\p{L}\p{N}])[\p{L}\p{N}](?![\p{L}\p{N}])/u.test(rest);
}

/** The year that a line with nothing else on it tells, "2025", "Season 2025/26"; null where it tells none, or a day. */
export function yearOf(row: Row): number | null {
  let only = '';
  for (const cell of row.cells) {
    const text = tidy(cell);
    // Most rows say more than that, which their first cells tell.
    if (text !== '' && only !== '') return null;
    only ||= text;
  }
  const year =
    only.length <= 60 && !findDay(only) ? /(?<![\d.,])(?:199\d|20\d\d)(?!\d)/.exec(only)?.[0] : undefined;
  return year === undefined ? null : Number(year);
}

/** "May 2025", "Mai", with nothing else on its line: the month of bare days below it; '' where it is none. */
export function monthAlone(row: Row): string {
  const [only = '', ...others] = row.cells.map(tidy).filter(Boolean);
  const month = /^\p{L}{3,12}\.?(?:\s+'?(?:\d{4}|\d{2}))?$/u.test(only) && findDay(`1 ${only}`) !== null;
  return others.length === 0 && month ? only : '';
}

/** Whether a line tells a day, a month or a year of the rows below it. */
export const tellsTime = (row: Row): boolean =>
  isSection(row) || yearOf(row) !== null || monthAlone(row) !== '';

export interface Headed {
  /** Null where the file has no headings. */
  readonly headings: Row | null;
  /** As written, each once; "Column 3" where nothing is written. */
  readonly names: readonly string[];
  readonly rows: readonly Row[];
  readonly emptyLines: readonly number[];
  readonly assumptions: readonly Said[];
}

const toldIn = (row: Row): string[] => row.cells.map(tidy).filter(Boolean);

/** "Date | 2 May 2025" on a line of its own is a day for the rows below, as "Batch of 2 May 2025" is. */
function keyedDay(row: Row): Row {
  const [word = '', day = '', ...others] = toldIn(row);
  const keyed =
    others.length === 0 &&
    cellDay(word) === null &&
    cellDay(day) !== null &&
    headingMeaning(word)?.meaning === 'date';
  return keyed ? { line: row.line, cells: [`${word} ${day}`] } : row;
}

/** Whether a line is one of headings: words alone, most of them known. @param least how many are to be known for sure */
function headsColumns(row: Row, least: number): boolean {
  const cells = toldIn(row);
  if (cells.length < least || cells.some((cell) => /\d/.test(cell) || cell.length > 40)) return false;
  const sure = cells.filter((cell) => headingMeaning(cell)?.sure === 3);
  return sure.length >= least && sure.length >= cells.length / 2;
}

/** The one place among headings that means a thing for sure; -1: none does, or several do. */
function onlyPlaceOf(meaning: NoteColumn | undefined, names: readonly string[]): number {
  const places = names.flatMap((name, at) => {
    const found = headingMeaning(name);
    return found?.sure === 3 && found.meaning === meaning ? [at] : [];
  });
  return places.length === 1 && meaning !== 'note' ? (places[0] ?? -1) : -1;
}

/** Where the cells below a second line of headings belong among the columns of the first, be it in other words; new ones are added. */
function placesOf(row: Row, names: string[]): number[] {
  const own = row.cells.map(tidy);
  return own.map((cell) => {
    if (cell === '') return -1;
    const same = names.findIndex((name) => bareHeading(name) === bareHeading(cell));
    const meaning = headingMeaning(cell)?.meaning;
    const there = same >= 0 || onlyPlaceOf(meaning, own) < 0 ? same : onlyPlaceOf(meaning, names);
    return there >= 0 ? there : names.push(cell) - 1;
  });
}

const tellsSeeds = (row: Row): boolean => {
  const meanings = row.cells.map((cell) => headingMeaning(cell)?.meaning);
  return (
    meanings.includes('seed') && (['date', 'label', 'jar'] as const).some((one) => meanings.includes(one))
  );
};

/** The cells of a row under the columns of the first headings. */
function placed(row: Row, places: readonly number[], width: number): Row {
  const cells = Array.from({ length: width }, () => '');
  const long = new Map<number, string>();
  for (const [at, cell] of row.cells.entries()) {
    // What stands beyond the headings stays beyond them.
    const place = places[at] ?? -1;
    const to = place >= 0 ? place : cell.trim() === '' ? null : cells.push('') - 1;
    if (to === null) continue;
    cells[to] = cell;
    const whole = row.long?.get(at);
    if (whole !== undefined) long.set(to, whole);
  }
  return { ...row, cells, ...(long.size > 0 ? { long } : {}) };
}

/**
 * The rows below the headings. Headings that are repeated, and titles of the blocks that they head, are left out and said;
 * under headings of its own a block is brought to the columns of the first, and one that names no seeds is another table.
 * @param names of the columns; those that only a later block has are added
 */
function rowsBelow(
  rows: readonly Row[],
  headings: Row,
  names: string[],
  assumptions: Said[],
  look: Table['look'],
): Row[] {
  const wanted = headings.cells.map(bareHeading).join('|');
  const first = bareHeading(headings.cells[0] ?? '');
  const again = (row: Row): boolean =>
    bareHeading(row.cells[0] ?? '') === first && row.cells.map(bareHeading).join('|') === wanted;
  const others = (row: Row, before: Row | undefined): boolean =>
    headsColumns(row, 2) &&
    (tellsSeeds(row)
      ? headsColumns(row, 3)
      : before === undefined || before.line < row.line - 1 || toldIn(before).length === 1);
  const say = (row: Row, sentence: string): void => void assumptions.push({ row: row.line, sentence });
  let places: number[] | 'none' | null = null;
  let join: Joining | null = null;
  const out: Row[] = [];
  for (const [at, row] of rows.entries()) {
    look?.();
    const next = rows[at + 1];
    const after = next && tellsTime(next) ? rows[at + 2] : next;
    const text = toldIn(row).join(' ');
    if (again(row)) {
      [places, join] = [null, null];
      say(row, assumed.headingsAgain());
      continue;
    }
    if (
      toldIn(row).length === 1 &&
      !tellsTime(row) &&
      !isKeyLine(row) &&
      after !== undefined &&
      (again(after) || others(after, row))
    ) {
      say(row, assumed.titles(text));
      continue;
    }
    if (others(row, rows[at - 1])) {
      join = tellsSeeds(row) ? null : joining(row, names, out);
      places = tellsSeeds(row) ? placesOf(row, names) : 'none';
      say(
        row,
        join
          ? assumed.tableJoined(text)
          : places === 'none'
            ? assumed.otherTable(text)
            : assumed.headingsAgain(),
      );
      continue;
    }
    if (join && joined(row, join, out)) continue;
    if (places === 'none') say(row, assumed.line(text));
    else out.push(places === null ? row : placed(row, places, names.length));
  }
  return out;
}

/** How the lines of another table are told to belong to rows above: by what stands in a column of both. */
interface Joining {
  /** The column of the rows above. */
  readonly to: number;
  /** Where each cell of the other table goes, and where what they share stands in it. */
  readonly places: readonly number[];
  readonly own: number;
  /** Rows above by what stands there; null where several have it. */
  readonly rows: ReadonlyMap<string, number | null>;
}

/** How another table, headed so, tells more of rows above; null where no column of both names them. */
function joining(headings: Row, names: string[], rows: readonly Row[]): Joining | null {
  const bare = names.map(bareHeading);
  const own = headings.cells.findIndex((cell) => {
    const meaning = headingMeaning(cell)?.meaning;
    return (
      (meaning === 'jar' || meaning === 'label' || meaning === 'date') && bare.includes(bareHeading(cell))
    );
  });
  if (own < 0) return null;
  const to = bare.indexOf(bareHeading(headings.cells[own] ?? ''));
  const found = new Map<string, number | null>();
  for (const [at, { cells }] of rows.entries()) {
    const key = plain(cells[to] ?? '');
    if (key !== '') found.set(key, found.has(key) ? null : at);
  }
  return { to, own, places: placesOf(headings, names), rows: found };
}

/** Joins a line of another table to its row, where it has one and says nothing against it. @returns whether it did */
function joined(row: Row, { places, own, rows }: Joining, out: Row[]): boolean {
  const at = rows.get(plain(row.cells[own] ?? '')) ?? -1;
  const there = out[at];
  if (!there || row.long) return false;
  const cells = [...there.cells];
  for (const [index, cell] of row.cells.entries()) {
    const place = places[index] ?? -1;
    if (tidy(cell) === '') continue;
    if (place < 0 || (tidy(cells[place] ?? '') !== '' && plain(cells[place] ?? '') !== plain(cell)))
      return false;
    while (cells.length <= place) cells.push('');
    cells[place] = cell;
  }
  out[at] = { ...there, cells };
  return true;
}

/** Letters or numbers that stand above several columns each, where two do at least: jars by these alone. */
function lettersOver(above: readonly string[]): ReadonlySet<string> {
  const over = above.map(tidy);
  const letters = over.filter((cell, at) => /^(?:\p{L}|\d{1,2})$/u.test(cell) && (over[at + 1] ?? '') === '');
  return new Set(letters.length > 1 ? letters : []);
}

/** What stands above the headings: over a column without one it is its heading, over those of one jar it names the jar. */
function headingsOver(headings: Row, over: Row | undefined): { cells: string[]; used: boolean } {
  const above =
    // One blank line may stand between.
    over && over.line >= headings.line - 2 && !isSection(over) && toldIn(over).length > 1 ? over.cells : [];
  // Counted once: held against each other, a sheet of a thousand columns has a million pairs.
  const times = new Map<string, number>();
  for (const bare of headings.cells.map(bareHeading)) times.set(bare, (times.get(bare) ?? 0) + 1);
  const twice = (name: string): boolean => name !== '' && (times.get(bareHeading(name)) ?? 0) > 1;
  const letters = lettersOver(above);
  let jar = '';
  let group = '';
  let used = false;
  const cells = Array.from({ length: Math.max(headings.cells.length, above.length) }, (_, index) => {
    const [below, upper] = [tidy(headings.cells[index] ?? ''), tidy(above[index] ?? '')];
    if (upper !== '')
      [jar, group] = letters.has(upper) || JAR_HEADING.test(upper) ? [upper, ''] : ['', upper];
    // "Date" and "Jar" below "Seed", and again below "Jar": what stands above tells them apart.
    const over = jar !== '' ? jar : twice(below) && headingMeaning(group)?.meaning === 'seed' ? group : '';
    const name = below === '' ? upper : over === '' ? below : `${over} ${below}`;
    used ||= name !== below;
    return name;
  });
  return { cells, used };
}

/** The names of columns, each once. */
function namesOf(upper: readonly string[], second: Row | null, rows: readonly Row[]): string[] {
  // Columns without a heading and without a cell are the spreadsheet's margin.
  const used = (cells: readonly string[]): number => cells.findLastIndex((cell) => tidy(cell) !== '') + 1;
  const headed = Math.max(used(upper), used(second?.cells ?? []));
  const width =
    upper.length > 0 ? headed : rows.reduce((most, row) => Math.max(most, used(row.cells)), headed);
  const seen = new Map<string, number>();
  const lower = (index: number): string => tidy(second?.cells[index] ?? '');
  const goesOn = (index: number): boolean => tidy(upper[index] ?? '') === '' && lower(index) !== '';
  let group = '';
  return Array.from({ length: width }, (_, index) => {
    const spans = goesOn(index) || goesOn(index + 1);
    if (!goesOn(index)) group = tidy(upper[index] ?? '');
    const written = joinHeadings(group, lower(index), spans);
    const name = written.slice(0, LONGEST_HEADING) || `Column ${index + 1}`;
    const count = (seen.get(plain(name)) ?? 0) + 1;
    seen.set(plain(name), count);
    return count === 1 ? name : `${name} #${count}`;
  });
}

const NONE: ReadonlySet<Row> = new Set();

/** The line of what stands on none: the name of the sheet. */
export const NO_LINE = 0;

/**
 * Parts a table into headings and rows; titles, units and repeated headings are said.
 * @param title of the sheet: where it tells the time of its rows, it stands above them
 */
export function readHeadingLines(table: Table, title = ''): Headed {
  const assumptions: Said[] = [];
  const name: Row = { line: NO_LINE, cells: [title.replaceAll('_', ' ')] };
  const filled = [
    ...(tellsTime(name) ? [name] : []),
    ...table.rows
      .filter((row) => !isEmpty(row))
      .map((row) => {
        table.look?.();
        return keyedDay(row);
      }),
  ];
  const emptyLines = table.rows.filter(isEmpty).map((row) => row.line);
  if (table.moreEmpty > 0) assumptions.push({ row: null, sentence: assumed.moreEmpty(table.moreEmpty) });
  const headings = findHeadings(filled);
  if (!headings && filled.length > 0) assumptions.push({ row: null, sentence: assumed.noHeadings() });
  const above = headings ? filled.slice(0, filled.indexOf(headings)) : [];
  // "Batch of 2 May 2025" above the headings is the day of the rows below them.
  const sections = above.filter((row, _, all) =>
    [(one: Row) => yearOf(one) !== null, isSection, (one: Row) => monthAlone(one) !== ''].some(
      (tells) => all.findLast(tells) === row,
    ),
  );
  const upper = headings ? headingsOver(headings, above.at(-1)) : { cells: [], used: false };
  const rest = headings ? filled.slice(filled.indexOf(headings) + 1) : filled;
  const [next] = rest;
  const second = headings && isSecondLine(next) ? next : null;
  if (second) {
    const units = second.cells.every((cell) => tidy(cell) === '' || isUnit(cell));
    const said = toldIn(second).join(', ');
    assumptions.push({
      row: second.line,
      sentence: units ? assumed.unitsBelow(said) : assumed.headingsBelow(said),
    });
  }
  const own = second ? rest.slice(1) : rest;
  const named = [...upper.cells];
  const below = headings ? rowsBelow(own, headings, named, assumptions, table.look) : own;
  const { rows: keyed, used } = headings
    ? withKeyLines(below, above, named, assumptions, table.look)
    : { rows: below, used: NONE };
  for (const row of above)
    if (!sections.includes(row) && !used.has(row) && !(upper.used && row === above.at(-1)))
      assumptions.push({ row: row.line, sentence: assumed.titles(toldIn(row).join(' ')) });
  const rows = [...sections.filter((row) => !used.has(row)), ...keyed];
  return { headings, names: namesOf(named, second, rows), rows, emptyLines, assumptions };
}

/** Rows of a sheet that lies on its side: one for each thing told of a jar. */
const MOST_SIDEWAYS = 100;

/** A table whose headings run down its first column, with a jar in each further one, turned: line 3 is its third column. */
export function upright(table: Table): Table {
  if (!runsSideways(table)) return table;
  const width = table.rows.reduce((most, { cells }) => Math.max(most, cells.length), 0);
  const rows = Array.from({ length: width }, (_, column): Row => {
    const long = new Map(
      table.rows.flatMap((row, at) =>
        row.long?.has(column) ? [[at, row.long.get(column) ?? ''] as const] : [],
      ),
    );
    const cells = table.rows.map((row) => row.cells[column] ?? '');
    return { line: column + 1, cells, ...(long.size > 0 ? { long } : {}) };
  });
  return { ...table, rows };
}

/** Whether a line holds nothing but days, a jar's each, beside a corner where nothing stands. */
const daysAcross = (table: Table): boolean =>
  table.rows.some(({ cells: [corner = '', ...days] }) => {
    const told = days.filter((cell) => tidy(cell) !== '');
    return tidy(corner) === '' && told.length > 1 && told.every((cell) => findDay(cell) !== null);
  });

/** Whether the headings run down the first column, with a jar in each further one. */
function runsSideways(table: Table): boolean {
  const first = table.rows.map(({ cells }) => tidy(cells[0] ?? '')).filter(Boolean);
  if (first.length > MOST_HEADING_LINES) return false;
  const told = new Set(
    first.flatMap((cell) => (isDataCell(cell) ? [] : (headingMeaning(cell)?.meaning ?? []))),
  );
  if (told.size < 3 || told.size < first.length * 0.6 || !(told.has('date') || daysAcross(table)))
    return false;
  return table.rows.slice(0, MOST_SIDEWAYS).every((row) => headingScore(row) < told.size);
}
