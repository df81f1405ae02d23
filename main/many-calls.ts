// `calls`: one JSON object a line in, one reply a line out, in order. The next line is read once the reply before is
// written, and a write is on the disk before its reply is: what was read back is kept.
import { z } from 'zod';
import type { CallName, Result } from '../core/contract';
import { invalidInput, isCallName } from './check-call';
import { beyondNumbers, parseJson, printed, roundedIn, withBytes } from './json-lines';
import { Refused } from './refusal';
import { linesOf, type Line } from './lines';
import { type NamedLedger, refusalFrom } from './named-ledger';
import { readMoment } from './options';

/** The longest line that is read, in bytes. */
const MOST_BYTES = 20 * 1024 * 1024;

const Asked = z.strictObject({
  name: z.string(),
  /** As JSON; absent: {}. */
  input: z.unknown().optional(),
  /** The moment the clock stands still at from this line on. */
  now: z.unknown().optional(),
  /** Anything; comes back with the reply. */
  id: z.unknown().optional(),
});

/** @throws Refused 'invalid', 'usage', 'unknown call', 'not among many' */
function readAsked(json: unknown, ledger: NamedLedger): { name: CallName; input: unknown } {
  const parsed = Asked.safeParse(json);
  if (!parsed.success) throw new Refused('invalid', invalidInput('line', parsed.error, json));
  const { name, input = {}, now } = parsed.data;
  const moment = now === undefined ? null : readMoment(now);
  if (moment?.ok) ledger.setNow(moment.value);
  if (!isCallName(name)) throw new Refused('unknown call', { name });
  if (moment && !moment.ok) throw new Refused('usage', { usage: moment.problem });
  if (name.startsWith('ledger.')) throw new Refused('not among many', { name });
  return { name, input: withBytes(input) };
}

/** The id of a line as it is to be printed, or null where it has none. @throws Refused 'invalid' */
function idOf(json: unknown): string | null {
  if (typeof json !== 'object' || json === null || !Object.hasOwn(json, 'id')) return null;
  try {
    return JSON.stringify((json as { id: unknown }).id);
  } catch (error) {
    // Brackets within brackets, some thousands deep.
    throw new Refused('invalid', {
      path: 'id',
      problem: error instanceof Error ? error.message : 'not understood',
    });
  }
}

function answerLine(ledger: NamedLedger, line: Line): { id: string | null; result: Result<unknown> } {
  let id: string | null = null;
  try {
    if ('problem' in line) throw new Refused(line.problem === 'too long' ? 'line too long' : 'line not text');
    const json = parseJson(line.text);
    const rounded = roundedIn(line.text);
    if (rounded?.split('.')[0] !== 'id') id = idOf(json);
    // As `call` says it, which is given the input alone.
    if (rounded !== null) throw beyondNumbers(rounded.replace(/^input(\.|$)/, ''));
    const { name, input } = readAsked(json, ledger);
    return { id, result: ledger.answer(name, input) };
  } catch (error) {
    return { id, result: refusalFrom(error) };
  }
}

export interface Reply {
  readonly ok: boolean;
  /** The line to print, with its line break. */
  readonly text: string;
}

/** A reply for each line, in order. A line is read, and its call made, when its reply is asked for. */
export async function* repliesTo(
  ledger: NamedLedger,
  pieces: AsyncIterable<Uint8Array>,
): AsyncGenerator<Reply> {
  for await (const line of linesOf(pieces, MOST_BYTES)) {
    const { id, result } = answerLine(ledger, line);
    const text = printed(result);
    yield { ok: result.ok, text: id === null ? text : `{"id":${id},${text.slice(1)}` };
  }
}
