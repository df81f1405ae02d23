// A workbook (.xlsx, .ods and their like) → the text of one of its sheets, each cell as it is meant: days and times as
// such whatever their format, figures in full, a value that several merged cells share in each of its rows. Nothing is
// written here.
import { crc32, inflateRawSync } from 'node:zlib';
import { read, SSF, utils, type CellObject, type WorkBook, type WorkSheet } from '@e965/xlsx';
import { Refused } from '../ledger/refusal';

/** What a workbook may hold once it is unpacked: a small file can unpack to anything. */
const MOST_UNPACKED = 200 * 1024 * 1024;
const MOST_ROWS = 200_000;
const MOST_COLUMNS = 1000;

export interface SheetText {
  readonly text: string;
  /** The sheet it is of, and all that have anything in them. */
  readonly sheet: string;
  readonly sheets: readonly string[];
}

/** A file within a zip archive, unpacked. */
interface Entry {
  readonly name: Uint8Array;
  readonly data: Uint8Array;
  readonly crc: number;
}

/**
 * The files of a zip archive (APPNOTE.TXT 6.3.10, sections 4.3.7, 4.3.12 and 4.3.16), unpacked by zlib, which ends on
 * damaged data, and each held against its checksum.
 * @param most bytes that they may come to, together
 * @throws Error where the archive is damaged or locked; RangeError where it is larger
 */
function unpack(bytes: Uint8Array, most: number): Entry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let end = bytes.length - 22;
  while (end >= 0 && view.getUint32(end, true) !== 0x06054b50) end -= 1;
  let at = view.getUint32(end + 16, true);
  let left = most;
  return Array.from({ length: view.getUint16(end + 10, true) }, (): Entry => {
    if (view.getUint32(at, true) !== 0x02014b50) throw new Error('no directory where one is said to be');
    const [flags, method, crc, packed] = [view.getUint16(at + 8, true), view.getUint16(at + 10, true), view.getUint32(at + 16, true), view.getUint32(at + 20, true)]; // prettier-ignore
    const [size, named, extra, comment] = [view.getUint32(at + 24, true), view.getUint16(at + 28, true), view.getUint16(at + 30, true), view.getUint16(at + 32, true)]; // prettier-ignore
    const local = view.getUint32(at + 42, true);
    const name = bytes.subarray(at + 46, at + 46 + named);
    at += 46 + named + extra + comment;
    if (size > left) throw new RangeError('too large');
    const from = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
    const raw = bytes.subarray(from, from + packed);
    if ((flags & 1) === 1 || (method !== 0 && method !== 8))
      throw new Error('locked, or packed in another way');
    const data = method === 8 ? inflateRawSync(raw, { maxOutputLength: Math.max(1, left) }) : raw;
    if (data.length !== size || crc32(data) !== crc) throw new Error('damaged');
    left -= size;
    return { name, data, crc };
  });
}

/** The same files in an archive that packs nothing. */
function packPlainly(entries: readonly Entry[]): Uint8Array {
  const length = entries.reduce((sum, { name, data }) => sum + 76 + 2 * name.length + data.length, 22);
  const bytes = new Uint8Array(length);
  const view = new DataView(bytes.buffer);
  let at = 0;
  const head = (signature: number, versions: number, { name, data, crc }: Entry): void => {
    view.setUint32(at, signature, true);
    for (let version = 0; version < versions; version += 1) view.setUint16(at + 4 + 2 * version, 20, true);
    const fields = at + 4 + 2 * versions;
    view.setUint16(fields, 0x0800, true); // names are UTF-8
    view.setUint32(fields + 8, crc, true);
    view.setUint32(fields + 12, data.length, true);
    view.setUint32(fields + 16, data.length, true);
    view.setUint16(fields + 20, name.length, true);
  };
  const starts = entries.map((entry) => {
    const start = at;
    head(0x04034b50, 1, entry);
    bytes.set(entry.name, at + 30);
    bytes.set(entry.data, at + 30 + entry.name.length);
    at += 30 + entry.name.length + entry.data.length;
    return start;
  });
  const directory = at;
  for (const [index, entry] of entries.entries()) {
    head(0x02014b50, 2, entry);
    view.setUint32(at + 42, starts[index] ?? 0, true);
    bytes.set(entry.name, at + 46);
    at += 46 + entry.name.length;
  }
  view.setUint32(at, 0x06054b50, true);
  view.setUint16(at + 8, entries.length, true);
  view.setUint16(at + 10, entries.length, true);
  view.setUint32(at + 12, at - directory, true);
  view.setUint32(at + 16, directory, true);
  return bytes;
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

/** Every row and column from the first on, so that a row's line is its number in the sheet. */
function textOf(sheet: WorkSheet, from1904: boolean): string {
  const rows = cellsOf(sheet, from1904);
  fillMerged(rows, sheet['!merges'] ?? []);
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
    // The library is handed nothing packed: its own unpacking goes round for ever on damaged data.
    const plain = packPlainly(unpack(bytes, MOST_UNPACKED));
    return read(plain, { type: 'array', cellNF: true, cellText: true, cellFormula: false, cellHTML: false, sheetRows: MOST_ROWS }); // prettier-ignore
  } catch (error) {
    const large = error instanceof RangeError && error.message === 'too large';
    throw new Refused(large ? 'notes too large' : 'notes is a spreadsheet', { file: name });
  }
}

/**
 * The text of one sheet of a workbook.
 * @param wanted the name of the sheet; left out or not there: the first that has anything in it
 * @throws Refused 'notes is a spreadsheet', 'notes too large', 'notes empty'
 */
export function sheetText(name: string, bytes: Uint8Array, wanted: string | undefined): SheetText {
  const book = open(name, bytes);
  const sheets = book.SheetNames.filter((sheet) => {
    const found = book.Sheets[sheet];
    return found?.['!ref'] !== undefined && Object.keys(found).some((key) => !key.startsWith('!'));
  });
  const sheet = sheets.find((one) => one.toLowerCase() === wanted?.trim().toLowerCase()) ?? sheets[0];
  const found = sheet === undefined ? undefined : book.Sheets[sheet];
  if (sheet === undefined || !found) throw new Refused('notes empty', { file: name });
  return { text: textOf(found, book.Workbook?.WBProps?.date1904 === true), sheet, sheets };
}
