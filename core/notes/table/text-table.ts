// Text of a spreadsheet → cells, each row with the line of the file it starts on (RFC 4180, and what is seen besides:
// other separators, a "sep=" line, stray quotes, any line ends).
import Papa from 'papaparse';
import { withoutApostrophe } from '../../tables/table-text';
import { splitBySpaces } from './spaced-columns';
import { listed, MOST_EMPTY, rowOf, type Row, type Separator, type Table } from './table-rows';
import { TextRecords, type TextRecord } from './text-records';

export const SEPARATORS: readonly Separator[] = [',', ';', '\t', '|'];
/** Rows that the separator is chosen by, and the part of the text in which they are looked for. */
const SAMPLE = 200;
const SAMPLE_LENGTH = 1_000_000;
/** Records that are parsed at once: a few, since a mark that is missing is looked for to the end of them. */
const AT_ONCE = 50;

/** Called now and then with characters read; may throw to stop. */
export type Step = (done: number, total: number) => void;

const parsed = (records: readonly TextRecord[], delimiter: Separator): Row[] => {
  const text = records.map((record) => record.text).join('\n');
  const { data } = Papa.parse<string[]>(text, { delimiter, newline: '\n' });
  return records.map(({ line }, at) => rowOf(line, (data[at] ?? ['']).map(withoutApostrophe)));
};

/** What a line has in it that holds more than empty cells. */
const FILLED: Readonly<Record<Separator, RegExp>> = {
  ',': /[^\s,]/,
  ';': /[^\s;]/,
  '\t': /\S/,
  '|': /[^\s|]/,
  ' ': /\S/,
};

interface Split {
  readonly rows: readonly Row[];
  /** Lines without anything in them, beyond those that are listed. A file may be of nothing else: none is kept. */
  readonly moreEmpty: number;
}

/** @param most records after which to stop; blank ones don't count */
function split(
  text: string,
  separator: Separator,
  firstLine: number,
  width: number | null,
  most: number,
  step?: Step,
): Split {
  const records = new TextRecords(text, separator, firstLine, width);
  const rows: Row[] = [];
  let waiting: TextRecord[] = [];
  let [filled, empty, read, looked] = [0, 0, 0, 0];
  for (let record = records.next(); record && filled < most; record = records.next()) {
    read += record.text.length + 1;
    const isFilled = FILLED[separator].test(record.text);
    if (isFilled) filled += 1;
    else empty += 1;
    if (isFilled || empty <= MOST_EMPTY) waiting.push(record);
    if (waiting.length === AT_ONCE) {
      rows.push(...parsed(waiting, separator));
      waiting = [];
    }
    looked = (looked + 1) % AT_ONCE;
    if (looked === 0) step?.(read, text.length);
  }
  return { rows: [...rows, ...parsed(waiting, separator)], moreEmpty: Math.max(0, empty - MOST_EMPTY) };
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
  const beginning = body.slice(0, SAMPLE_LENGTH);
  const [best] = (named ? [named] : SEPARATORS)
    .map((separator) => {
      const rows = split(beginning, separator, firstLine, null, SAMPLE).rows.filter(({ cells }) =>
        cells.some((cell) => /\S/.test(cell)),
      );
      const parted = rows.filter(({ cells }) => cells.length > 1).length / Math.max(1, rows.length);
      return { separator, parted, ...agreement(rows) };
    })
    .toSorted((a, b) => b.score - a.score);
  const { separator, width, parted } = best ?? { separator: ',' as const, width: null, parted: 0 };
  // Hardly a line has a separator in it: perhaps spaces hold the columns apart.
  const spaced = !told && known === null && parted < 0.5 ? splitBySpaces(body, firstLine) : null;
  if (spaced) return spaced;
  const { rows, moreEmpty } = split(body, separator, firstLine, width, Infinity, step);
  const kept = listed(rows);
  return { separator, rows: kept.rows, moreEmpty: kept.moreEmpty + moreEmpty };
}
