// Text of a spreadsheet → cells, each row with the line of the file it starts on (RFC 4180, and what is seen besides:
// other separators, a "sep=" line, stray quotes, any line ends). Each character is looked at a fixed number of times.
import { splitBySpaces } from './spaced-columns';

/** " ": columns held apart by runs of spaces, looked for where no other fits. */
export type Separator = ',' | ';' | '\t' | '|' | ' ';
export const SEPARATORS: readonly Separator[] = [',', ';', '\t', '|'];

/** What stands in a longer cell is text, never a day, a seed or an amount: readers see its beginning only. */
export const LONGEST_CELL = 300;
/** What stands beyond so many cells of a row is one cell. */
const MOST_CELLS = 1000;
/** Rows that the separator is chosen by, and the part of the text in which they are looked for. */
const SAMPLE = 200;
const SAMPLE_LENGTH = 1_000_000;
/** Columns of spaces are looked for in files up to this length, written by hand. */
const MOST_ALIGNED = 1_000_000;

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

/** Empty rows that are listed; of more of them only the number is told. */
export const MOST_EMPTY = 100;

/** Called now and then with characters read; may throw to stop. */
export type Step = (done: number, total: number) => void;
const STEP_ROWS = 2000;

/** What is looked for from a place on, found once until it is passed. */
class Finder {
  #at = -1;
  constructor(
    readonly text: string,
    readonly wanted: string,
  ) {}
  /** Where it stands next, the text's length where it does no more. Places asked for only rise. */
  from(place: number): number {
    if (this.#at < place) {
      const found = this.text.indexOf(this.wanted, place);
      this.#at = found < 0 ? this.text.length : found;
    }
    return this.#at;
  }
}

/** Splits text with one separator, row after row. */
class Splitter {
  readonly #separators: Finder;
  readonly #breaks: Finder;
  #at = 0;

  /** @param width cells of most rows, where that is known */
  constructor(
    readonly text: string,
    readonly separator: string,
    public line: number,
    readonly width: number | null,
  ) {
    this.#separators = new Finder(text, separator);
    this.#breaks = new Finder(text, '\n');
  }

  get at(): number {
    return this.#at;
  }

  /** The next row, or null at the end. */
  next(): Row | null {
    if (this.#at >= this.text.length) return null;
    const { line } = this;
    const cells: string[] = [];
    let long: Map<number, string> | undefined;
    for (;;) {
      const cell = cells.length < MOST_CELLS ? this.#cell() : this.#rest();
      if (cell.length > LONGEST_CELL) (long ??= new Map()).set(cells.length, cell);
      cells.push(cell.length > LONGEST_CELL ? cell.slice(0, LONGEST_CELL) : cell);
      if (this.text[this.#at] !== this.separator) break;
      this.#at += 1;
    }
    this.#at += 1;
    this.line += 1;
    return long ? { line, cells, long } : { line, cells };
  }

  /** The rest of the line, its separators as spaces. */
  #rest(): string {
    const start = this.#at;
    this.#at = this.#breaks.from(start);
    return this.text.slice(start, this.#at).replaceAll(this.separator, ' ').trim();
  }

  #cell(): string {
    let open = this.#at;
    while (this.text[open] === ' ') open += 1;
    if (this.text[open] === '"') {
      const quoted = this.#quoted(open);
      if (quoted !== null) return quoted;
    }
    const start = this.#at;
    this.#at = Math.min(this.#separators.from(start), this.#breaks.from(start));
    return this.text.slice(start, this.#at);
  }

  /**
   * The quoted cell that opens at a place, and on to behind it; null where the quote is a stray one: it never closes,
   * words follow its closing, or it runs over lines that are rows by themselves.
   */
  #quoted(open: number): string | null {
    const { text } = this;
    let close = text.indexOf('"', open + 1);
    while (close >= 0 && text[close + 1] === '"') close = text.indexOf('"', close + 2);
    if (close < 0) return null;
    let end = close + 1;
    while (text[end] === ' ') end += 1;
    if (end < text.length && text[end] !== '\n' && text[end] !== this.separator) return null;
    const lines = this.#linesBetween(open, close);
    if (lines === null) return null;
    this.line += lines;
    this.#at = end;
    return text.slice(open + 1, close).replaceAll('""', '"');
  }

  /** Line breaks from one quote to the other; null where all lines they stand on would be rows, as wide as the others. */
  #linesBetween(open: number, close: number): number | null {
    const { text } = this;
    let from = text.indexOf('\n', open);
    if (from < 0 || from > close) return 0;
    const parts = (start: number, end: number): number => text.slice(start, end).split(this.separator).length;
    const wanted = parts(text.lastIndexOf('\n', open) + 1, from);
    let rows = wanted >= 3 && (this.width === null || wanted === this.width);
    let breaks = 0;
    while (from >= 0 && from < close) {
      breaks += 1;
      const next = text.indexOf('\n', from + 1);
      rows &&= parts(from + 1, next < 0 ? text.length : next) === wanted;
      from = next;
    }
    return rows ? null : breaks;
  }
}

const isBlank = (row: Row): boolean => !row.long && row.cells.every((cell) => !/\S/.test(cell));

/** @param most filled rows after which to stop */
function split(splitter: Splitter, most: number, step?: Step): Pick<Table, 'rows' | 'moreEmpty'> {
  const rows: Row[] = [];
  let filled = 0;
  let empty = 0;
  for (let row = splitter.next(); row; row = filled < most ? splitter.next() : null) {
    const blank = isBlank(row);
    if (blank) empty += 1;
    else filled += 1;
    if (!blank || empty <= MOST_EMPTY) rows.push(row);
    if ((filled + empty) % STEP_ROWS === 0) step?.(splitter.at, splitter.text.length);
  }
  return { rows, moreEmpty: Math.max(0, empty - MOST_EMPTY) };
}

/** The commonest number of cells of rows, and how well rows agree on one: that width, times the rows that have it. */
function agreement(rows: readonly Row[]): { width: number | null; score: number } {
  const widths = new Map<number, number>();
  for (const row of rows) {
    if (row.cells.length > 1) widths.set(row.cells.length, (widths.get(row.cells.length) ?? 0) + 1);
  }
  let [best, score, most]: [number | null, number, number] = [null, 0, 0];
  for (const [width, count] of widths) {
    score = Math.max(score, Math.min(width, 6) * count);
    if (count > most) [best, most] = [width, count];
  }
  return { width: best, score };
}

/** Line ends as "\n"; marks of order and of control that show nothing as spaces, or gone. */
const cleaned = (text: string): string =>
  text
    .replace(/^\uFEFF/, '')
    .replace(/\r\n?/g, '\n')
    .replace(/[\u2028\u2029\v\f]/g, ' ')
    // eslint-disable-next-line no-control-regex
    .replace(/[\0-\x08\x0e-\x1f\x7f]/g, '');

/**
 * Reads a table from text. The separator is what a "sep=" line says, else the one that splits most rows into the same
 * number of columns.
 * @param known the separator, where it is known
 */
export function readTable(text: string, step?: Step, known: Separator | null = null): Table {
  let body = cleaned(text);
  let firstLine = 1;
  const told = /^"?sep=(.)"?[;,\t]*\n/i.exec(body.slice(0, 20));
  if (told) {
    body = body.slice(told[0].length);
    firstLine = 2;
  }
  const named = known ?? SEPARATORS.find((separator) => separator === told?.[1]);
  let best: { separator: Separator; width: number | null; score: number; parted: number } | null = null;
  for (const separator of named ? [named] : SEPARATORS) {
    const splitter = new Splitter(body.slice(0, SAMPLE_LENGTH), separator, firstLine, null);
    const rows = split(splitter, SAMPLE).rows.filter((row) => !isBlank(row));
    const { width, score } = agreement(rows);
    const parted = rows.filter(({ cells }) => cells.length > 1).length / Math.max(1, rows.length);
    if (score > (best?.score ?? -1)) best = { separator, width, score, parted };
  }
  const { separator, width, parted } = best ?? { separator: ',' as const, width: null, parted: 0 };
  // Hardly a line has a separator in it: perhaps spaces hold the columns apart.
  const spaced =
    !told && known === null && parted < 0.5 && body.length < MOST_ALIGNED
      ? splitBySpaces(body, firstLine)
      : null;
  if (spaced) return { separator: ' ', ...spaced };
  return { separator, ...split(new Splitter(body, separator, firstLine, width), Infinity, step) };
}
