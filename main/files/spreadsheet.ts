// A workbook (.xlsx, .ods and their like) → the text of one of its sheets, each cell as it is meant: days and times as
// such whatever their format, figures in full, a value that several merged cells share in each of its rows. Nothing is
// written here.
import { read, SSF, utils, type CellObject, type WorkBook, type WorkSheet } from '@e965/xlsx';
import { Refused } from '../refusal';
import { filesIn, sourceOf, unpackFile, zipOf } from './zip';

/** What a workbook may hold once it is unpacked: a small file can unpack to anything. */
const MOST_UNPACKED = 200 * 1024 * 1024;
const MOST_ROWS = 200_000;
const MOST_COLUMNS = 1000;

export interface SheetText {
  readonly text: string;
  /** The sheet it is of, and all that have anything in them. */
  readonly sheet: string;
  readonly sheets: readonly string[];
  /** Sheets with the same headings, a month or a year on each: they can be read one after the other. */
  readonly alike: readonly string[];
  /** Of several sheets, the line of the text on which the first row of each stands. */
  readonly begins: readonly { readonly sheet: string; readonly line: number }[];
}

/** In the place of a sheet's name: all that are laid out alike. */
export const ALL_ALIKE = '*';

/**
 * The same archive with nothing packed: the library's own unpacking goes round for ever on damaged data.
 * @throws Error where it is damaged or locked; RangeError where it is larger than anyone's notes
 */
function unpacked(bytes: Uint8Array): Uint8Array {
  const source = sourceOf(bytes);
  let left = MOST_UNPACKED;
  const files = filesIn(source).map((file) => {
    const data = unpackFile(source, file, left);
    left -= data.length;
    return [file.name, data] as const;
  });
  return zipOf(files, 'stored');
}

const two = (number: number): string => String(number).padStart(2, '0');

/** A number under a format of days or times: "2025-10-15", "2025-10-15 19:00", "19:00"; hours of a length as hours. */
function momentText(value: number, format: string, from1904: boolean): string {
  // "[h]:mm" counts on beyond a day: how long, not when.
  if (/\[h+\]/i.test(format)) return `${Number((value * 24).toFixed(4))} h`;
  const told = SSF.parse_date_code(value, { date1904: from1904 });
  if (!told) return String(value);
  const time = told.H + told.M + told.S > 0 || value < 1 ? `${two(told.H)}:${two(told.M)}` : '';
  const day = value < 1 ? '' : `${told.y}-${two(told.m)}-${two(told.d)}`;
  return `${day} ${time}`.trim();
}

/** What a cell shows, without what its format only rounds away. */
function cellText(cell: CellObject | undefined, from1904: boolean): string {
  if (!cell || cell.t === 'z' || cell.t === 'e') return cell?.t === 'e' ? (cell.w ?? '') : '';
  if (cell.t !== 'n') return String(cell.v ?? cell.w ?? '');
  const value = Number(cell.v);
  const format = typeof cell.z === 'string' ? cell.z : '';
  if (format !== '' && SSF.is_date(format)) return momentText(value, format, from1904);
  // A unit that the format adds is told: "38 °C", "5 %".
  const shown = (cell.w ?? '').trim();
  return /[^\d\s.,+-]/.test(shown) && !/^[-+]?[\d.,]+E/i.test(shown) ? shown : String(value);
}

/** Cells by row and column, as far as there are any: a sheet may say that it reaches to the last row there can be. */
function cellsOf(sheet: WorkSheet, from1904: boolean): string[][] {
  const rows: string[][] = [];
  for (const [name, cell] of Object.entries(sheet)) {
    if (name.startsWith('!')) continue;
    const { r, c } = utils.decode_cell(name);
    const text = c < MOST_COLUMNS ? cellText(cell as CellObject, from1904) : '';
    if (text !== '') (rows[r] ??= [])[c] = text;
  }
  return rows;
}

/** A value that cells one above the other share stands in each of their rows. */
function fillMerged(rows: string[][], merges: NonNullable<WorkSheet['!merges']>): void {
  let left = MOST_ROWS;
  for (const { s, e } of merges) {
    const value = rows[s.r]?.[s.c];
    if (value === undefined) continue;
    for (let r = s.r + 1; r <= Math.min(e.r, rows.length - 1) && left > 0; r += 1, left -= 1)
      (rows[r] ??= [])[s.c] ??= value;
  }
}

/** Cells as they are meant, every row from the first on. */
function filledCells(sheet: WorkSheet, from1904: boolean): string[][] {
  const rows = cellsOf(sheet, from1904);
  fillMerged(rows, sheet['!merges'] ?? []);
  return rows;
}

/** Sheets whose first row of three cells or more, their headings, is the same: the most that have one in common. */
function alikeOf(sheets: ReadonlyMap<string, readonly string[][]>): readonly string[] {
  const by = new Map<string, string[]>();
  for (const [name, rows] of sheets) {
    const head = rows.find((row) => (row ?? []).filter((cell) => cell?.trim()).length >= 3);
    const key = Array.from(head ?? [], (cell) => (cell ?? '').trim().toLowerCase()).join('|');
    if (head) by.set(key, [...(by.get(key) ?? []), name]);
  }
  const [most = []] = [...by.values()].toSorted((a, b) => b.length - a.length);
  return most.length > 1 ? most : [];
}

/** Every row and column from the first on, so that a row's line is its number in the sheet. */
function textOf(rows: readonly string[][]): string {
  // A line break within a cell would be a line of its own.
  const plain = (cell: string | undefined): string => {
    const text = (cell ?? '').replaceAll('\t', ' ').replace(/\s*[\r\n]+\s*/g, '; ');
    return text.includes('"') ? `"${text.replaceAll('"', '""')}"` : text;
  };
  return Array.from(rows, (row) => `${Array.from(row ?? [], plain).join('\t')}\n`).join('');
}

/** @throws Refused 'notes too large'; 'notes is a spreadsheet' where it is locked, damaged, or no workbook at all */
function open(name: string, bytes: Uint8Array): WorkBook {
  try {
    return read(unpacked(bytes), {
      type: 'array',
      cellNF: true,
      cellText: true,
      cellFormula: false,
      cellHTML: false,
      sheetRows: MOST_ROWS,
    });
  } catch (error) {
    const large = error instanceof RangeError && error.message === 'too large';
    throw new Refused(large ? 'notes too large' : 'notes is a spreadsheet', { file: name });
  }
}

/**
 * The text of one sheet of a workbook, or of all that are laid out alike, each below a line with its name.
 * @param wanted the name of the sheet, or ALL_ALIKE; left out or not there: the first that has anything in it
 * @throws Refused 'notes is a spreadsheet', 'notes too large', 'notes empty'
 */
export function sheetText(name: string, bytes: Uint8Array, wanted: string | undefined): SheetText {
  const book = open(name, bytes);
  const from1904 = book.Workbook?.WBProps?.date1904 === true;
  const sheets = new Map(
    book.SheetNames.flatMap((sheet) => {
      const found = book.Sheets[sheet];
      const some = found?.['!ref'] !== undefined && Object.keys(found).some((key) => !key.startsWith('!'));
      return some ? [[sheet, filledCells(found, from1904)] as const] : [];
    }),
  );
  const names = [...sheets.keys()];
  const alike = names.length > 1 ? alikeOf(sheets) : [];
  const asked = wanted?.trim().toLowerCase();
  const sheet = names.find((one) => one.toLowerCase() === asked);
  if (sheet === undefined && asked === ALL_ALIKE && alike.length > 0) {
    let text = '';
    let line = 1;
    const begins = alike.map((one) => {
      const rows = sheets.get(one) ?? [];
      const begin = { sheet: one, line: line + 1 };
      text += `${one.replaceAll('"', '')}\n${textOf(rows)}`;
      line += rows.length + 1;
      return begin;
    });
    return { text, sheet: ALL_ALIKE, sheets: names, alike, begins };
  }
  const chosen = sheet ?? names[0];
  if (chosen === undefined) throw new Refused('notes empty', { file: name });
  return { text: textOf(sheets.get(chosen) ?? []), sheet: chosen, sheets: names, alike, begins: [] };
}
