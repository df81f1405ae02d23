// The rows of a sheet as they are handed on: cells, and the line that each row starts on.

/** " ": columns held apart by runs of spaces, looked for where no other fits. */
export type Separator = ',' | ';' | '\t' | '|' | ' ';

/** What stands in a longer cell is text, never a day, a seed or an amount: readers see its beginning only. */
export const LONGEST_CELL = 300;
/** What stands beyond so many cells of a row is one cell. */
const MOST_CELLS = 1000;
/** Empty rows that are listed; of more of them only the number is told. */
export const MOST_EMPTY = 100;

export interface Row {
  /** Line of the file the row starts on, the first being 1. */
  readonly line: number;
  /** Which jar of the line, where one line tells of several. */
  readonly part?: string;
  /** Of a cell longer than LONGEST_CELL its beginning. */
  readonly cells: readonly string[];
  /** The whole text of cells that are longer, by column. */
  readonly long?: ReadonlyMap<number, string>;
}

export interface Table {
  readonly separator: Separator;
  /** Of rows with nothing in them the first hundred. */
  readonly rows: readonly Row[];
  /** How many more rows with nothing in them there are. */
  readonly moreEmpty: number;
  /** Called for each row where all are gone through; may throw to stop. */
  readonly look?: (() => void) | undefined;
}

/** A row of cells, however many and long they are. */
export function rowOf(line: number, cells: readonly string[]): Row {
  const beyond = cells.slice(MOST_CELLS).join(' ').trim();
  const kept = cells.length > MOST_CELLS ? [...cells.slice(0, MOST_CELLS), beyond] : cells;
  if (!kept.some((cell) => cell.length > LONGEST_CELL)) return { line, cells: kept };
  const long = kept.flatMap((cell, at) => (cell.length > LONGEST_CELL ? [[at, cell] as const] : []));
  return { line, cells: kept.map((cell) => cell.slice(0, LONGEST_CELL)), long: new Map(long) };
}

const isBlank = (row: Row): boolean => !row.long && row.cells.every((cell) => !/\S/.test(cell));

/** Rows as they are listed: of those with nothing in them the first ones. */
export function listed(rows: readonly Row[]): Pick<Table, 'rows' | 'moreEmpty'> {
  let empty = 0;
  const kept = rows.filter((row) => {
    if (!isBlank(row)) return true;
    empty += 1;
    return empty <= MOST_EMPTY;
  });
  return { rows: kept, moreEmpty: Math.max(0, empty - MOST_EMPTY) };
}

/** A table without the blank columns before its first. */
export function withoutMargin(table: Table): Table {
  let margin = Infinity;
  for (const { cells, long } of table.rows) {
    if (margin === 0) return table;
    const first = cells.findIndex((cell, at) => long?.has(at) === true || /\S/.test(cell));
    if (first >= 0) margin = Math.min(margin, first);
  }
  if (margin === 0 || margin === Infinity) return table;
  const rows = table.rows.map((row): Row => {
    const long = new Map([...(row.long ?? [])].map(([at, text]) => [at - margin, text] as const));
    return { ...row, cells: row.cells.slice(margin), ...(long.size > 0 ? { long } : {}) };
  });
  return { ...table, rows };
}
