// JSON as the headless host reads and prints it.
import type { Result } from '../core/contract';
import { refusalSentence } from '../core/sentences';
import { Refused } from './ledger/refusal';

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

/** Typed arrays print as plain arrays. */
const plain = (_key: string, value: unknown): unknown =>
  ArrayBuffer.isView(value) && !(value instanceof DataView) ? Array.from(value as Float64Array) : value;

/** A reply as one line: `{"ok":true,"value":…}`, or `{"ok":false,"error":{"code":…,"sentence":…}}`. */
export function printed(result: Result<unknown>): string {
  const shown = result.ok
    ? result
    : { ok: false, error: { code: result.error.code, sentence: refusalSentence(result.error) } };
  return `${JSON.stringify(shown, plain)}\n`;
}
