// Spreadsheets as they are: days, times, figures and merged cells of a workbook as they are meant. The workbooks are written
// with the library that reads them; what their numbers mean is from ECMA-376, part 1, 18.17.4.1 (serial day 1 is 1 January
// 1900; in the 1904 system day 0 is 1 January 1904) and 18.8.30 (formats 9, 14, 20, 22, 46).
import { utils, write, type WorkBook } from '@e965/xlsx';
import { describe, expect, it } from 'vitest';
import { refusals } from '../../core/sentences';
import { notesText } from '../../main/files/notes-file';
import { Refused } from '../../main/refusal';
import { Session } from '../../main/session';
import { newFile, NOW } from '../ledger/ledger-files';
import { read } from './read';

const bytesOf = (book: WorkBook, bookType: 'xlsx' | 'ods' = 'xlsx'): Uint8Array =>
  new Uint8Array(write(book, { type: 'array', bookType, compression: true }) as ArrayBuffer);
type Cell = string | number | { readonly v: number; readonly z: string };
function book(sheets: Readonly<Record<string, readonly (readonly Cell[])[]>>): WorkBook {
  const made = utils.book_new();
  for (const [name, rows] of Object.entries(sheets)) {
    const cells = rows.map((row) => row.map((cell) => (typeof cell === 'object' ? { t: 'n', ...cell } : cell)));
    utils.book_append_sheet(made, utils.aoa_to_sheet(cells), name);
  }
  return made;
}
const HEAD = ['Date', 'Jar', 'Seed', 'Amount', 'Hours', 'Temp', 'pH', 'Notes'];
const day = (v: number): Cell => ({ v, z: 'm/d/yy' });
const NOTES: readonly (readonly Cell[])[] = [
  HEAD,
  [day(45945), 'a', '8 caps Blue Tin', '', 36, { v: 38, z: '0.0" °C"' }, { v: 4.4, z: '0' }, 'firm "enough", really'],
  [day(45949), 'a', day(45945), '3 tbsp', { v: 1.5, z: '[h]:mm' }, { v: 37.5, z: '0.0" °C"' }, { v: 4.35, z: '0.0' }, 'two\nlines'],
];
const reading = (bytes: Uint8Array, sheet?: string) => {
  const { text, workbook } = notesText('notes.xlsx', bytes, sheet);
  return { ...read(text, { separator: '\t' }), workbook };
};
const refusal = (bytes: Uint8Array): string => {
  try {
    notesText('notes.xlsx', bytes);
    return 'none';
  } catch (error) {
    if (error instanceof Refused) return error.refusal.code;
    throw error;
  }
};

describe('a workbook', () => {
  it.each([
    ['May 2025', ['5', '12'], ['2025-05-05', '2025-05-12']],
    ['Mai', ['5', '12'], ['2025-05-05', '2025-05-12']],
    ['2024', ['5 May', '12 May'], ['2024-05-05', '2024-05-12']],
    ['Season 2024_25', ['28 Dec', '4 Jan'], ['2024-12-28', '2025-01-04']],
    ['5 May 2025', ['', ''], ['2025-05-05', '2025-05-05']],
    // Days that are whole need no name.
    ['May 2023', ['2025-06-01', '2025-06-08'], ['2025-06-01', '2025-06-08']],
    ['Notes', ['5 May', '12 May'], ['2025-05-05', '2025-05-12']],
  ])('the name of its sheet may tell the time of its rows: %s', (title, days, made) => {
    const text = `Date,Jar,Seed,Amount\n${days.map((one, at) => `${one},${'ab'[at]},8 caps Blue Tin,\n`).join('')}`;
    const { plan, preview } = read(text, { title });
    expect([plan.jars.map((jar) => jar.madeOn), preview.problems]).toEqual([made, []]);
    expect(preview.assumptions.every(({ row }) => row !== 0)).toBe(true);
  });

  it.each(['xlsx', 'ods'] as const)('%s: days, lengths, units and figures in full', (kind) => {
    const { plan, preview } = reading(bytesOf(book({ Notes: NOTES }), kind));
    expect(preview.problems).toEqual([]);
    expect(plan.jars.map(({ line, madeOn, hold, outcome, seedings }) => [line, madeOn, hold?.hours, hold?.planned?.value, outcome?.ph, seedings[0]?.fromRow ?? seedings[0]?.source])).toEqual([
      [2, '2025-10-15', 36, 38, 4.4, 'Blue Tin'],
      [3, '2025-10-19', 36, 37.5, 4.35, 'row:2'],
    ]);
    expect(plan.jars[1]?.fields.note).toMatch(/two; lines/);
    expect(plan.jars[0]?.fields.note).toMatch(/firm "enough", really/);
  });

  it('a day with its time, a time alone, a share, and days counted from 1904', () => {
    const made = book({ Notes: [['When', 'At', 'Share', 'Bare'], [{ v: 45945.79166666667, z: 'm/d/yy h:mm' }, { v: 0.5, z: 'h:mm' }, { v: 0.05, z: '0%' }, 0.1 + 0.2]] });
    expect(notesText('n.xlsx', bytesOf(made)).text.split('\n')[1]).toBe('2025-10-15 19:00\t12:00\t5%\t0.30000000000000004');
    const older = book({ Notes: [['When'], [day(44483)]] });
    older.Workbook = { WBProps: { date1904: true } };
    expect(notesText('n.xlsx', bytesOf(older)).text.split('\n')[1]).toBe('2025-10-15');
  });

  it('a value that merged cells share is told of each of their rows', () => {
    const rows = [['Date', 'Jar', 'Seed'], [day(45945), 'a', '8 caps Blue Tin'], ['', 'b', ''], ['', 'c', '']];
    const made = book({ Notes: rows });
    const sheet = made.Sheets['Notes'];
    if (sheet) sheet['!merges'] = [{ s: { r: 1, c: 0 }, e: { r: 3, c: 0 } }, { s: { r: 1, c: 2 }, e: { r: 3, c: 2 } }];
    const { plan } = reading(bytesOf(made));
    expect(plan.jars.map(({ madeOn, letter, seedings }) => [madeOn, letter, seedings[0]?.source])).toEqual(['a', 'b', 'c'].map((letter) => ['2025-10-15', letter, 'Blue Tin']));
  });

  it('tells its sheets that have anything in them, and reads the one that is chosen', () => {
    const bytes = bytesOf(book({ Prices: [['Milk', 'Price'], ['whole', '2']], Empty: [], Notes: NOTES }));
    expect(reading(bytes, 'notes').workbook).toEqual({ sheet: 'Notes', sheets: ['Prices', 'Notes'], alike: [], begins: [] });
    expect(reading(bytes, 'notes').plan.jars.length).toBe(2);
  });

  it('is bounded in size', () => {
    const bytes = bytesOf(book({ Notes: NOTES }));
    // What it unpacks to is told in its directory: 4 GB there is refused before anything is unpacked.
    const bomb = bytes.slice();
    const at = bomb.findIndex((_, place) => bomb[place] === 0x50 && bomb[place + 1] === 0x4b && bomb[place + 2] === 1 && bomb[place + 3] === 2);
    new DataView(bomb.buffer).setUint32(at + 24, 0xfffffff0, true);
    expect(refusal(bomb)).toBe('notes too large');
  });

  it('of several sheets the keeper is asked which one it is, and nothing is read before', () => {
    const session = new Session({ file: newFile(), mode: 'create', now: NOW, timeZone: 'Europe/Berlin', version: '0' });
    const file = { name: 'notes.xlsx', bytes: bytesOf(book({ Prices: [['Milk', 'Price'], ['whole', '2']], Notes: NOTES })) };
    const preview = session.answer('notes.preview', { file });
    expect(preview).toMatchObject({ ok: true, value: { rows: [], questions: [{ id: 'sheet', blocks: true, choices: [{ value: 'Prices' }, { value: 'Notes' }] }] } });
    expect(session.answer('notes.bringIn', { file })).toMatchObject({ ok: false, error: { code: 'ambiguous', params: { id: 'sheet' } } });
    expect(session.answer('notes.bringIn', { file, answers: { sheet: 'Notes' } })).toMatchObject({ ok: true, value: { jars: 2 } });
    session.close();
  });

  it('sheets that are laid out alike, a year on each, may be read one after the other', () => {
    const session = new Session({ file: newFile(), mode: 'create', now: NOW, timeZone: 'Europe/Berlin', version: '0' });
    const head = ['Date', 'Jar', 'Seed', 'Set'];
    const sheets = { Prices: [['Milk', 'Price'], ['whole', '2']], 2024: [head, ['12 Nov', 'a', '8 caps Blue Tin', 'firm']], 2025: [head, ['3 Jan', 'a', '12 Nov a', 'soft'], ['9 Jan', 'a', '3 Jan a', 'firm']] };
    const file = { name: 'years.xlsx', bytes: bytesOf(book(sheets)) };
    const preview = session.answer('notes.preview', { file });
    const choices = [{ value: '*', label: 'All 2 with the same headings, one after the other (2024, 2025)' }, { value: '2024' }, { value: '2025' }, { value: 'Prices' }];
    expect(preview).toMatchObject({ ok: true, value: { questions: [{ id: 'sheet', choices: expect.arrayContaining(choices.map((choice) => expect.objectContaining(choice))) }] } });
    const together = session.answer('notes.preview', { file, answers: { sheet: '*' } });
    expect(JSON.stringify(together)).toContain('Rows are counted on from sheet to sheet: the first of “2024” is row 2, the first of “2025” is row 5.');
    expect(session.answer('notes.bringIn', { file, answers: { sheet: '*' } })).toMatchObject({ ok: true, value: { jars: 3 } });
    const days = session.answer('batch.list', { before: null, limit: 9, text: '' });
    expect(days).toMatchObject({ ok: true, value: { batches: [{ madeOn: '2025-01-09', seeds: ['3 Jan a'] }, { madeOn: '2025-01-03', seeds: ['12 Nov a'] }, { madeOn: '2024-11-12' }] } });
    session.close();
  });

  it('what is no workbook ends in a sentence', () => {
    const bytes = bytesOf(book({ Notes: NOTES }));
    for (const cut of [4, 30, 200, bytes.length - 30, bytes.length - 1]) expect(Object.keys(refusals)).toContain(refusal(bytes.slice(0, cut)));
    expect(refusal(bytesOf(book({ Empty: [] })))).toBe('notes empty');
    for (let at = 40; at < bytes.length; at += 97) {
      const broken = bytes.slice();
      broken[at] = (broken[at] ?? 0) ^ 0xff;
      expect(['none', ...Object.keys(refusals).filter((code) => code !== 'unexpected')]).toContain(refusal(broken));
    }
  });
});
