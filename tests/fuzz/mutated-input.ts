// Sheets, workbooks, exports of probes and square codes that are not as anybody meant them.
import { readFileSync } from 'node:fs';
import { utils, write } from '@e965/xlsx';
import jsQR from 'jsqr';
import makeCode from 'qrcode-generator';
import { codeInWords } from '../../core/lineage/short-codes';
import { mayDecode } from '../../core/pictures/claimed-size';
import { filesIn, sourceOf, unpackFile, zipOf } from '../../main/files/zip';
import type { Session } from '../../main/session';
import { askOf, emptyBeside } from '../archive/bare-calls';
import { everyKind } from '../archive/every-kind';
import { seededNumbers } from '../families';
import { DRESSES } from '../growth/exports';
import { must } from '../ledger/ledger-files';
import { type Below, inTime, judged, LONG, quotesLittle, type Tally } from './judge-case';
import { scratch } from './mutated-files';

export const INPUT_DOORS = ['notes', 'workbook', 'probe', 'code'] as const;
export type InputDoor = (typeof INPUT_DOORS)[number];

/** What stands in cells that nobody meant, or somebody did. */
const CELLS = [
  '', ' ', LONG, '\u0000', '\ud800', '\u202e', '=1+1', '=HYPERLINK("http://example.com","x")', "'; DROP TABLE jar; --", '<img src=x onerror=alert(1)>',
  '-1', '1e400', '1e308', '9007199254740993', 'NaN', '0.1', '½', '٣', '2026-02-30', '31.02.26', '9999-12-31', '0001-01-01', '13/13/13', '__proto__', 'a,b;c\td',
  '"', '""', 'a\nb', '🥛'.repeat(50), 'A', 'a', '10 capsules', 'from itself', 'spoiled', 'pink', '45', '1000000 h', '-300 °C', '٪', 'ａ', '\ufeff', '\u2028',
]; // prettier-ignore

/** A table as it is, with some cells, rows or columns put otherwise. */
function otherTable(table: readonly (readonly string[])[], below: Below): string[][] {
  const rows = table.map((row) => [...row]);
  for (let times = 1 + below(5); times > 0; times -= 1) {
    const at = below(rows.length);
    const row = rows[at] ?? [];
    const how = below(7);
    const cell = CELLS[below(CELLS.length)] ?? '';
    if (how === 0) rows.splice(at, 1);
    else if (how === 1) rows.splice(at, 0, [...(rows[below(rows.length)] ?? [])]);
    else if (how === 2) for (const one of rows) one.splice(below(1 + (rows[0]?.length ?? 0)), 0, cell);
    else if (how === 3) rows[at] = row.toReversed();
    else row[below(1 + row.length)] = cell;
  }
  return rows;
}

const quoted = (text: string): string =>
  /[",;\t\n\r]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
const csvOf = (rows: readonly (readonly string[])[], mark: string): Uint8Array<ArrayBuffer> =>
  new TextEncoder().encode(rows.map((row) => row.map(quoted).join(mark)).join('\n'));

/** A workbook whose parts are not as they were written, whole to look at. */
function otherParts(bytes: Uint8Array, below: Below): Uint8Array<ArrayBuffer> {
  const source = sourceOf(bytes);
  const files = filesIn(source).map((file): [Uint8Array, Uint8Array] => [file.name, unpackFile(source, file, 1e8)]);
  const at = below(files.length);
  const [name, data] = files[at] ?? [new Uint8Array(), new Uint8Array()];
  const text = new TextDecoder().decode(data);
  const numbers = [...text.matchAll(/\d+/g)];
  const number = numbers[below(Math.max(1, numbers.length))];
  const other = ['0', '-1', '99999999999', '1e9', 'A', '"'][below(6)] ?? '';
  const changed = number && below(2) === 0 ? text.slice(0, number.index) + other + text.slice(number.index + number[0].length) : null;
  files[at] = [name, changed === null ? scratch(data, below) : new TextEncoder().encode(changed)];
  return Uint8Array.from(zipOf(files, 'stored'));
} // prettier-ignore

/** What one case at a door does to a ledger. */
type Case = (below: Below, tally: Tally) => void;

interface Door {
  readonly one: Case;
  readonly close: () => void;
}

/** A sheet or a workbook: looked at first, then brought in. */
function sheetDoor(session: Session, asWorkbook: boolean): Door {
  const text = readFileSync('tests/notes/kitchen-notes.csv', 'utf8');
  const table = text.trim().split('\n').slice(0, 14).map((line) => line.split(',')); // prettier-ignore
  let ledger = emptyBeside(session.ledger);
  return {
    one: (below, tally) => {
      const rows = otherTable(table, below);
      let bytes: Uint8Array<ArrayBuffer>;
      if (asWorkbook) {
        const book = utils.book_new();
        utils.book_append_sheet(book, utils.aoa_to_sheet(rows.map((row) => row.map((cell) => cell.slice(0, 32_000)))), 'Sheet');
        const whole = new Uint8Array(write(book, { type: 'array', bookType: below(4) === 0 ? 'ods' : 'xlsx' }) as ArrayBuffer);
        const how = below(3);
        bytes = how === 0 ? scratch(whole, below) : how === 1 ? otherParts(whole, below) : whole;
      } else {
        bytes = csvOf(rows, [',', ';', '\t'][below(3)] ?? ',');
        if (below(4) === 0) bytes = scratch(bytes, below);
      }
      const file = { name: asWorkbook ? 'a.xlsx' : 'a.csv', bytes };
      const preview = judged(ledger, tally, () => askOf(ledger)('notes.preview', { file }));
      if (preview.ok) quotesLittle(preview.value);
      const done = judged(ledger, tally, () => askOf(ledger)('notes.bringIn', { file }));
      if (!done.ok) return;
      // Once more adds nothing.
      const again = judged(ledger, tally, () => askOf(ledger)('notes.bringIn', { file }));
      if (again.ok && (again.value as { jars: number }).jars > 0) throw new Error('the same file again added jars');
      ledger.close();
      ledger = emptyBeside(session.ledger);
    },
    close: () => ledger.close(),
  };
} // prettier-ignore

/** An export of a probe, in any dress. */
function probeDoor(session: Session): Door {
  const { holds } = must(session, 'hold.list', {});
  const hold = holds[0]?.id ?? '';
  const points = Array.from({ length: 30 }, (_, i) => ({ civil: 1_772_305_200 + i * 600, celsius: 20 + Math.min(18, i) }));
  const dressed = Object.values(DRESSES).map((dress) => dress(points, 60).split('\n').map((line) => line.split(/(?<=[,;\t|])/)));
  return {
    one: (below, tally) => {
      const rows = otherTable(dressed[below(dressed.length)] ?? [], below);
      const whole = new TextEncoder().encode(rows.map((row) => row.join('')).join('\n'));
      const file = { name: 'probe.csv', bytes: below(3) === 0 ? scratch(whole, below) : whole };
      const input = { hold, where: 'bath', file };
      const seen = judged(session.ledger, tally, () => askOf(session.ledger)('readings.preview', input));
      if (seen.ok) quotesLittle(seen.value);
      judged(session.ledger, tally, () => askOf(session.ledger)('readings.bringIn', input));
    },
    close: () => undefined,
  };
} // prettier-ignore

/** Pixels of a square code, some of them put otherwise, and what stands in it; files that claim to be pictures. */
function codeDoor(): Door {
  return {
    one: (below, tally) => {
      const words = below(3) === 0 ? `Code ${'7K3M-9QXV'.slice(0, below(10))}` : (CELLS[below(CELLS.length)] ?? '').slice(0, 400);
      const made = makeCode(0, 'M');
      made.addData(words === '' ? 'x' : [...words].map((letter) => (letter.charCodeAt(0) > 255 ? '?' : letter)).join(''), 'Byte');
      made.make();
      const [count, dot] = [made.getModuleCount(), 1 + below(4)];
      const side = (count + 8) * dot;
      const pixels = new Uint8ClampedArray(side * side * 4).fill(255);
      for (let y = 0; y < side; y += 1)
        for (let x = 0; x < side; x += 1) {
          const [row, column] = [Math.floor(y / dot) - 4, Math.floor(x / dot) - 4];
          const dark = row >= 0 && column >= 0 && row < count && column < count && made.isDark(row, column);
          const turned = below(200) === 0;
          if (dark !== turned) pixels.fill(0, (y * side + x) * 4, (y * side + x) * 4 + 3);
        }
      const read = inTime(tally, () => jsQR(pixels, side, side)?.data ?? null);
      const code = read === null ? null : codeInWords(read);
      if (code !== null && !/^[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4}$/.test(code)) throw new Error(`no code: ${code}`);
      if (read === null) tally.refused += 1;
      else tally.taken += 1;
      const head = [[0xff, 0xd8], [0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10], [...'RIFF....WEBPVP8X'].map((letter) => letter.charCodeAt(0))][below(3)] ?? [];
      inTime(tally, () => mayDecode(Uint8Array.from([...head, ...Array.from({ length: below(300) }, () => below(256))])));
    },
    close: () => undefined,
  };
} // prettier-ignore

const DOORS: Readonly<Record<InputDoor, (session: Session) => Door>> = {
  notes: (session) => sheetDoor(session, false),
  workbook: (session) => sheetDoor(session, true),
  probe: probeDoor,
  code: codeDoor,
};

/**
 * Tries so many mutated inputs at one door.
 * @param from number of the first case: the same number is the same case
 * @throws Error naming the case
 */
export function tryInputs(door: InputDoor, cases: number, from = 1): Tally {
  const session = everyKind();
  const { one, close } = DOORS[door](session);
  const tally: Tally = { refused: 0, taken: 0, slowest: 0 };
  for (let at = from; at < from + cases; at += 1) {
    const random = seededNumbers(at);
    try {
      one((most) => Math.floor(random() * most), tally);
    } catch (error) {
      const said = error instanceof Error ? (error.stack ?? '') : String(error);
      throw new Error(`case ${at} of ${door}: ${said}`, { cause: error });
    }
  }
  close();
  session.close();
  return tally;
}
