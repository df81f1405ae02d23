// A keeper's spreadsheet as bytes → text: whatever a spreadsheet program saves. Nothing is written here.
import { readFileSync, statSync } from 'node:fs';
import { basename } from 'node:path';
import type { Parsed } from '../../core/contract';
import { Refused } from '../refusal';
import { sheetText, type SheetText } from './spreadsheet';

const MOST_BYTES = 20 * 1024 * 1024;

export interface NotesText {
  /** The file's own name, without folders. */
  readonly name: string;
  readonly text: string;
  readonly encoding: string;
  /** The encoding follows from the bytes alone: nothing in the file declares it. */
  readonly encodingAssumed: boolean;
  /** Of a workbook: which sheet it is of, and those that have anything in them. */
  readonly workbook?: Pick<SheetText, 'sheet' | 'sheets' | 'alike' | 'begins'>;
}

const startsWith = (bytes: Uint8Array, ...signature: readonly number[]): boolean =>
  signature.every((byte, at) => bytes[at] === byte);

/** Older 8-bit encodings, and the letters and marks that keepers' notes have in them. */
const OLDER: readonly (readonly [string, RegExp])[] = [
  ['windows-1252', /[äöüßÄÖÜéèêëàâçîïôûùáíóúñåæøÉÅØãõ°½¼¾–’“”€]/g],
  ['macintosh', /[äöüßÄÖÜéèêëàâçîïôûùáíóúñåæøÉÅØãõ°–’“”€]/g],
  ['windows-1250', /[łŁżŻśŚęĘąĄćĆńŃźŹóÓ°–’“”€]/g],
];

function decode(bytes: Uint8Array): Pick<NotesText, 'text' | 'encoding' | 'encodingAssumed'> {
  const as = (encoding: string): string => new TextDecoder(encoding).decode(bytes);
  if (startsWith(bytes, 0xef, 0xbb, 0xbf))
    return { text: as('utf-8'), encoding: 'UTF-8', encodingAssumed: false };
  if (startsWith(bytes, 0xff, 0xfe))
    return { text: as('utf-16le'), encoding: 'UTF-16', encodingAssumed: false };
  if (startsWith(bytes, 0xfe, 0xff))
    return { text: as('utf-16be'), encoding: 'UTF-16', encodingAssumed: false };
  // UTF-16 without its mark: half the bytes of plain letters are zero.
  const sample = bytes.subarray(0, 4000);
  const zeros = [0, 0];
  for (const [at, byte] of sample.entries()) if (byte === 0) zeros[at % 2] = (zeros[at % 2] ?? 0) + 1;
  const [even = 0, odd = 0] = zeros;
  const half = sample.length / 2;
  if (odd > half * 0.6 && even < half * 0.1)
    return { text: as('utf-16le'), encoding: 'UTF-16', encodingAssumed: true };
  if (even > half * 0.6 && odd < half * 0.1)
    return { text: as('utf-16be'), encoding: 'UTF-16', encodingAssumed: true };
  if (bytes.includes(0)) throw new Refused('notes not text');
  try {
    return {
      text: new TextDecoder('utf-8', { fatal: true }).decode(bytes),
      encoding: 'UTF-8',
      encodingAssumed: false,
    };
  } catch (error) {
    // A TypeError is how the decoder says that the bytes are not UTF-8.
    if (!(error instanceof TypeError)) throw error;
  }
  let best = { text: '', encoding: '', score: -1 };
  for (const [encoding, letters] of OLDER) {
    const text = as(encoding);
    const score = text.match(letters)?.length ?? 0;
    if (score > best.score) best = { text, encoding, score };
  }
  return { text: best.text, encoding: best.encoding, encodingAssumed: true };
}

/**
 * The text of bytes that a spreadsheet program saved, as text or as a workbook.
 * @param sheet the sheet of a workbook that the keeper chose
 * @throws Refused 'notes is a spreadsheet', 'notes is a document', 'notes not text', 'notes too large', 'notes empty'
 */
export function notesText(name: string, bytes: Uint8Array, sheet?: string): NotesText {
  if (bytes.length > MOST_BYTES) throw new Refused('notes too large', { file: name });
  if (startsWith(bytes, 0x50, 0x4b, 0x03, 0x04)) {
    const { text, ...workbook } = sheetText(name, bytes, sheet);
    return { name, text, encoding: 'UTF-8', encodingAssumed: false, workbook };
  }
  if (startsWith(bytes, 0xd0, 0xcf, 0x11, 0xe0)) throw new Refused('notes is a spreadsheet', { file: name });
  if (startsWith(bytes, 0x25, 0x50, 0x44, 0x46)) throw new Refused('notes is a document', { file: name });
  if (bytes.length === 0) throw new Refused('notes empty', { file: name });
  return { name, ...decode(bytes) };
}

/** Reads the file of a call: bytes from the window, a path only headless. @throws Refused as above, 'notes not found' */
export function readNotesFile(file: Parsed<'notes.preview'>['file'], sheet?: string): NotesText {
  if ('bytes' in file) return notesText(basename(file.name), file.bytes, sheet);
  let bytes: Uint8Array;
  try {
    const about = statSync(file.path);
    if (!about.isFile()) throw new Refused('notes not found', { file: file.path });
    if (about.size > MOST_BYTES) throw new Refused('notes too large', { file: file.path });
    bytes = readFileSync(file.path);
  } catch (error) {
    if (error instanceof Refused) throw error;
    throw new Refused('notes not found', { file: file.path });
  }
  return notesText(basename(file.path), bytes, sheet);
}
