// Rows of jars as they are remembered, or as they stand on a sheet of paper: text as typed, a row for each jar. Pure. The columns are
// those of the printed sheet (core/says/rows-says.ts), in its order.
import { isDitto } from '../../core/notes/cells/cell-words';

/** In the order of the columns. */
export const COLUMNS = [
  'day',
  'jar',
  'seed',
  'seedAmount',
  'stirredIn',
  'milk',
  'warmth',
  'gate',
  'setWord',
  'note',
] as const;
export type Column = (typeof COLUMNS)[number];
export type RowText = Readonly<Record<Column, string>>;

export interface RememberText {
  readonly rows: readonly RowText[];
  /** Names that are new products, as the keeper said. */
  readonly products: readonly string[];
  /** Two equal labels were asked about, and meant. */
  readonly sameLabelMeant: boolean;
}

const emptyRow = Object.fromEntries(COLUMNS.map((column) => [column, ''])) as RowText;
/** A handful. */
const ROWS = 4;
const MOST_ROWS = 60;

export const emptyRemember: RememberText = {
  rows: Array.from({ length: ROWS }, () => emptyRow),
  products: [],
  sameLabelMeant: false,
};

export const isEmptyRow = (row: RowText): boolean => COLUMNS.every((column) => row[column].trim() === '');

/** The text with another word in a cell; the last row that is typed in is followed by one more. */
export function withCell(text: RememberText, at: number, column: Column, value: string): RememberText {
  const rows = text.rows.with(at, { ...text.rows[at]!, [column]: value });
  const last = rows.at(-1);
  const more = last !== undefined && !isEmptyRow(last) && rows.length < MOST_ROWS;
  return { ...text, sameLabelMeant: false, rows: more ? [...rows, emptyRow] : rows };
}

/** A row that is typed in, with its place, and what a mark for "as above" stands for. */
export interface ToldRow {
  readonly at: number;
  readonly cells: RowText;
}

/** The rows that are typed in. An empty day is that of the row above; in every other cell nothing is not noted. */
export function toldRows({ rows }: Pick<RememberText, 'rows'>): readonly ToldRow[] {
  const told: ToldRow[] = [];
  for (const [at, row] of rows.entries()) {
    if (isEmptyRow(row)) continue;
    const above = told.at(-1)?.cells ?? emptyRow;
    const cells = Object.fromEntries(
      COLUMNS.map((column) => {
        const typed = row[column].trim();
        const asAbove = isDitto(typed) || (column === 'day' && typed === '');
        return [column, asAbove ? above[column] : typed];
      }),
    ) as RowText;
    told.push({ at, cells });
  }
  return told;
}

/** What a seed's cell names: one thing, several that all went in, or one of several of which nobody is sure; nothing where nobody knows. */
export interface NamedSeeds {
  readonly names: readonly string[];
  readonly either: boolean;
}

const UNSURE =
  /[,;(\s]*(?:\bnot sure(?: which)?|\bi think|\bmaybe|\bperhaps|\bprobably|\bone of (?:the two|them))[)\s.]*$/i;
const NOBODY = /^(?:\?+|unknown|not known|not noted|nobody knows|don.?t know|no idea)$/i;
const ANOTHER_WORD = /^(?:one of|either)\s+/i;

/** "a or b, not sure", "Blue Tin + Meadow Pot", "?" */
export function namedSeeds(typed: string): NamedSeeds {
  const said = typed.trim().replace(UNSURE, '').trim();
  const bare = said.replace(/\s*\?+$/, '').replace(ANOTHER_WORD, '');
  if (bare === '' || NOBODY.test(said)) return { names: [], either: false };
  const or = bare
    .split(/\s+or\s+|\s*\|\s*/i)
    .map((one) => one.trim().replace(/[,;]$/, ''))
    .filter((one) => one !== '');
  if (or.length > 1) return { names: or, either: true };
  const all = bare.split(/\s*[+&;]\s*|\s+and\s+|\s*,\s+/i).map((one) => one.trim());
  return { names: all.filter((one) => one !== ''), either: false };
}
