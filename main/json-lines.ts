// JSON as the headless host reads and prints it.
import type { Result } from '../core/contract';
import { callSentence } from '../core/sentences';
import { Refused } from './refusal';

/** @throws Refused 'invalid' */
export function parseJson(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    throw new Refused('invalid', {
      path: 'JSON',
      problem: error instanceof Error ? error.message : 'not understood',
    });
  }
}

/** What is said of a number that would not be kept as it is written. @param path from roundedIn */
export const beyondNumbers = (path: string): Refused =>
  new Refused('invalid', {
    path: path === '' ? 'JSON' : path,
    problem: `this is a number beyond ${Number.MAX_SAFE_INTEGER}, which can’t be kept as it is written`,
  });

/** Without one of these no number in it can be that large. */
const LARGE = /\d{16}|\d[eE]/;
const NUMBER = /-?\d[\d.eE+-]*/y;

/** Where a string of a JSON text ends: at the first quote before which an even number of backslashes stands. */
function endOfString(text: string, start: number): number {
  for (let end = text.indexOf('"', start + 1); ; end = text.indexOf('"', end + 1)) {
    let slashes = 0;
    while (text[end - 1 - slashes] === '\\') slashes++;
    if (slashes % 2 === 0) return end;
  }
}

/**
 * Where the first number stands that is too large to be told from the next, as "input.seedings.0.amount".
 * @param text JSON that was parsed
 * @returns null where there is none
 */
export function roundedIn(text: string): string | null {
  if (!LARGE.test(text)) return null;
  const path: (string | number)[] = [];
  let named = '';
  for (let at = 0; at < text.length; at++) {
    const last = path.length - 1;
    const within = path[last];
    switch (text[at]) {
      case '[':
      case '{':
        path.push(text[at] === '[' ? 0 : '');
        break;
      case ']':
      case '}':
        path.pop();
        break;
      case ':':
        path[last] = JSON.parse(named) as string;
        break;
      case ',':
        if (typeof within === 'number') path[last] = within + 1;
        break;
      case '"': {
        const end = endOfString(text, at);
        named = typeof within === 'string' ? text.slice(at, end + 1) : '';
        at = end;
        break;
      }
      default: {
        NUMBER.lastIndex = at;
        const [number] = NUMBER.exec(text) ?? [];
        if (number === undefined) break;
        if (Math.abs(Number(number)) > Number.MAX_SAFE_INTEGER) return path.join('.');
        at += number.length - 1;
      }
    }
  }
  return null;
}

const isByte = (one: unknown): boolean => Number.isInteger(one) && Number(one) >= 0 && Number(one) <= 255;

/** A request read from JSON, which has no typed arrays: a list of bytes by the name of `bytes` is what it says. */
export function withBytes(input: unknown): unknown {
  if (typeof input !== 'object' || input === null || Array.isArray(input)) return input;
  const { bytes, file } = input as { bytes?: unknown; file?: unknown };
  const own =
    Array.isArray(bytes) && bytes.every(isByte) ? { bytes: Uint8Array.from(bytes as number[]) } : {};
  const inside = typeof file === 'object' && file !== null ? { file: withBytes(file) } : {};
  return { ...input, ...own, ...inside };
}

/** Typed arrays print as plain arrays. */
const plain = (_key: string, value: unknown): unknown =>
  ArrayBuffer.isView(value) && !(value instanceof DataView) ? Array.from(value as Float64Array) : value;

/** A reply as one line: `{"ok":true,"value":…}`, or `{"ok":false,"error":{"code":…,"sentence":…}}`. */
export function printed(result: Result<unknown>): string {
  const shown = result.ok
    ? result
    : { ok: false, error: { code: result.error.code, sentence: callSentence(result.error) } };
  return `${JSON.stringify(shown, plain)}\n`;
}
