// What must hold of any case at any door: it is answered, or refused with a sentence, in time; nothing is kept of what was refused.
import { refusalSentence } from '../../core/sentences';
import type { Result } from '../../core/contract';
import type { Ledger } from '../../main/ledger/ledger';
import { troubles } from '../facts/facts-in-memory';

/** Below a number, by a seed. */
export type Below = (most: number) => number;

export interface Tally {
  refused: number;
  taken: number;
  slowest: number;
}

/** Processor time that a case may take (s): of this process, not of the clock. */
const MOST_SECONDS = 2;
/** No sentence quotes more of a cell. */
const MOST_QUOTED = 200;

export const LONG = 'x'.repeat(20_000);
const QUOTED_LONG = new RegExp(`x{${MOST_QUOTED + 1}}`);

const stateIn = ({ db }: Ledger): string => JSON.stringify(db.prepare('SELECT (SELECT count(*) FROM record), (SELECT count(*) FROM act), (SELECT count(*) FROM ledger)').raw().all()); // prettier-ignore

/** What takes too long is found, and whose case it was. @throws Error */
export function inTime<T>(tally: Tally, work: () => T): T {
  const started = process.cpuUsage();
  const value = work();
  const { user, system } = process.cpuUsage(started);
  const seconds = (user + system) / 1e6;
  tally.slowest = Math.max(tally.slowest, seconds);
  if (seconds > MOST_SECONDS) throw new Error(`it took ${seconds} s`);
  return value;
}

/**
 * One call, judged.
 * @returns what came of it
 * @throws Error with what is wrong where it is neither refused in order nor whole
 */
export function judged(ledger: Ledger, tally: Tally, work: () => Result<unknown>): Result<unknown> {
  const before = stateIn(ledger);
  const result = inTime(tally, work);
  if (result.ok) {
    tally.taken += 1;
    const wrong = stateIn(ledger) === before ? [] : troubles(ledger.db);
    if (wrong.length > 0) throw new Error(wrong.join('; '));
    return result;
  }
  tally.refused += 1;
  const sentence = refusalSentence(result.error);
  if (result.error.code === 'unexpected' || !/^[^]{10,2000}[.…?]$/.test(sentence)) throw new Error(`no sentence: ${sentence}`);
  if (QUOTED_LONG.test(sentence)) throw new Error(`a sentence quotes more than ${MOST_QUOTED} letters: ${sentence.slice(0, 300)}`);
  if (stateIn(ledger) !== before || ledger.db.inTransaction) throw new Error('it was refused and something was kept');
  return result;
} // prettier-ignore

/** A remark that is to be read and answered is shown whole: what would be cut off may be what speaks against its jar. */
const TO_BE_READ = /^ remarks \d+ text$/;

/** Of all that a reply says, no sentence quotes a cell at length. @throws Error */
export function quotesLittle(reply: unknown, where = ''): void {
  if (TO_BE_READ.test(where)) return;
  if (typeof reply === 'string' && / /.test(reply.trim()) && QUOTED_LONG.test(reply))
    throw new Error(`a sentence quotes more than ${MOST_QUOTED} letters:${where} ${reply.slice(0, 300)}`);
  if (typeof reply === 'object' && reply !== null && !ArrayBuffer.isView(reply)) for (const [name, one] of Object.entries(reply)) quotesLittle(one, `${where} ${name}`);
} // prettier-ignore
