// Text in a field of a jar, read and written by the field's kind (core/ledger/jar-fields.ts). Pure.
import type { Amount } from '../../core/ledger/basics';
import { type FieldKind, TANGS, WHEYS } from '../../core/ledger/jar-fields';
import { readTang, readWhey } from '../../core/text/look-words';
import type { Read, Reader, Writer } from './reading';
import { lineOrNull } from './taking';

/** Zero hours and zero days are real here: an opened jar seen on its first day. */
const zeroOr = (text: string, read: Read<number>): Read<number> =>
  /^\s*0+\s*(?:h|d|days?|hours?)?\s*$/i.test(text) ? { ok: true, value: 0, echo: null } : read;

/** Other words for these, as people say them: "sour" is a clear tang. */
const MEANT = new Map<readonly string[], (text: string) => string | null>([
  [TANGS, readTang],
  [WHEYS, readWhey],
]);

/** One of a few words, whatever its case. */
function wordOf(text: string, words: readonly string[]): Read<string> {
  const typed = text.trim().toLowerCase();
  if (typed === '') return { ok: true, value: null, echo: null };
  const value = words.find((one) => one === typed) ?? MEANT.get(words)?.(typed) ?? undefined;
  return value === undefined
    ? { ok: false, sentence: `Type one of: ${words.join(', ')}.` }
    : { ok: true, value, echo: null };
}

/** What typed text comes to; empty text is unknown. */
export function readField(kind: FieldKind, text: string, reader: Reader): Read<unknown> {
  switch (kind) {
    case 'line':
    case 'prose':
      return { ok: true, value: lineOrNull(text), echo: null };
    case 'amount':
      return reader.amount(text);
    case 'volume':
      return reader.amount(text, 'volume');
    case 'count':
      return reader.count(text);
    case 'hours':
      return reader.hours(text);
    case 'hours from zero':
      return zeroOr(text, reader.hours(text));
    case 'days from zero':
      return zeroOr(text, reader.whole(text, 365));
    case 'pH':
      return reader.ph(text);
    case 'yes or no': {
      const read = wordOf(text, ['yes', 'no']);
      return read.ok && read.value !== null ? { ...read, value: read.value === 'yes' } : read;
    }
    default:
      return wordOf(text, kind);
  }
}

/** A recorded value as text to be typed over: as it was typed, else exactly. Unknown is empty. */
export function writeField(kind: FieldKind, value: unknown, writer: Writer): string {
  if (value === null || value === undefined) return '';
  if (kind === 'amount' || kind === 'volume') return writer.amount(value as Amount);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return typeof value === 'number' ? writer.number(value) : String(value);
}
