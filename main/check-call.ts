// Parses every request and every reply against the contract; turns what is wrong into a refusal. Pure.
import type { z } from 'zod';
import { type CallName, type Parsed, type Result, contract } from '../core/contract';
import { CALLS } from '../core/call-names';
import { plainIssue } from '../core/plain-issue';

/** Whether a name is one of the contract's. */
export const isCallName = (name: string): name is CallName => (CALLS as readonly string[]).includes(name);

/** The request with its defaults filled in, or why it can't be taken. */
export function checkInput<N extends CallName>(name: N, input: unknown): Result<Parsed<N>> {
  const parsed = contract[name].input.safeParse(input);
  if (parsed.success) return { ok: true, value: parsed.data as Parsed<N> };
  return { ok: false, error: { code: 'invalid', params: invalidInput(name, parsed.error, input) } };
}

/**
 * What the refusal 'invalid' says: where the first thing is wrong, and what.
 * @param whole what it is called where it is wrong as a whole
 */
export function invalidInput(
  whole: string,
  { issues: [first] }: z.ZodError,
  input: unknown,
): { path: string; problem: string } {
  const path = first?.path.map(String).join('.') ?? '';
  return { path: path === '' ? whole : path, problem: first ? plainIssue(first, input) : 'not understood' };
}

/** Calls whose files may be paths for a headless caller; the page's way to a file is the system's dialog. */
const OPENING: readonly string[] = [
  'ledger.open',
  'ledger.create',
  'ledger.fromArchive',
] satisfies readonly CallName[];

/**
 * Whether a request of the page names a file by its path. The page may be anything that got into it: it hands over bytes
 * the keeper chose, or asks for the system's dialog (`file: null`), and never says which file to read or to make.
 */
export function namesPath(name: CallName, input: unknown): boolean {
  if (typeof input !== 'object' || input === null) return false;
  if (OPENING.includes(name)) return Object.values(input).some((file) => file !== null);
  const isPath = (file: unknown): boolean => typeof file === 'object' && file !== null && 'path' in file;
  if ('folder' in input && (typeof input.folder === 'string' || isPath(input.folder))) return true;
  // A call may take a file for each probe of a run.
  const runs: unknown[] = 'runs' in input && Array.isArray(input.runs) ? input.runs : [];
  return [input, ...runs].some(
    (one) => typeof one === 'object' && one !== null && 'file' in one && isPath(one.file),
  );
}

/** The reply if it keeps to the contract; where it doesn't, the program is at fault: said on stderr and refused. */
export function checkReply(name: CallName, result: Result<unknown>): Result<unknown> {
  if (!result.ok) return result;
  const parsed = contract[name].reply.safeParse(result.value);
  if (parsed.success) return { ok: true, value: parsed.data };
  const where = parsed.error.issues.slice(0, 3).map((one) => `${one.path.join('.')}: ${one.message}`);
  process.stderr.write(`jarline: the reply of ${name} breaks the contract: ${where.join('; ')}\n`);
  return { ok: false, error: { code: 'unexpected', params: { ref: `reply of ${name}` } } };
}
