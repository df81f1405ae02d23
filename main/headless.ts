// The ledger without a window: `call NAME JSON --ledger FILE [--now MOMENT]`. Runs any call of the contract through the
// handlers the window uses and prints one JSON object on stdout and nothing else there. `schema [NAME]` prints what a
// record or a call looks like.
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { READS } from '../core/call-names';
import type { CallName, Refusal, Result } from '../core/contract';
import { jsonSchemas } from '../core/schemas/json-schemas';
import { refusalSentence } from '../core/sentences';
import packageFile from '../package.json';
import { checkInput, checkReply, isCallName } from './check-call';
import { localeOfSystem } from './locale';
import type { OpenMode, WorkerCall } from './ledger/protocol';
import { Refused } from './ledger/refusal';
import { Session, unexpected } from './ledger/session';
import { readOptions } from './options';

const USAGE = `call NAME 'JSON' --ledger FILE [--now MOMENT]
The JSON may also come as @FILE, or from standard input as -.
schema [NAME]: the JSON Schema of a record or a call, or of all of them.`;

/** @throws Refused 'usage', 'unknown schema' */
function schemas(names: readonly string[]): unknown {
  const [name] = names;
  const all = jsonSchemas();
  if (name === undefined) return all;
  if (names.length > 1) throw new Refused('usage', { usage: USAGE });
  const found = Object.entries<unknown>({ ...all.records, ...all.calls }).find(([one]) => one === name);
  if (!found) throw new Refused('unknown schema', { name });
  return found[1];
}

/** What is printed for a refusal: its code and its sentence. */
const shown = (error: Refusal): { code: string; sentence: string } => ({
  code: error.code,
  sentence: refusalSentence(error),
});

function readJson(text: string | undefined): unknown {
  const json =
    text === undefined || text === '' ? '{}'
    : text === '-' ? readFileSync(0, 'utf8')
    : text.startsWith('@') ? readFileSync(resolve(text.slice(1)), 'utf8')
    : text; // prettier-ignore
  try {
    return JSON.parse(json.replace(/^\uFEFF/, ''));
  } catch (error) {
    throw new Refused('invalid', {
      path: 'JSON',
      problem: error instanceof Error ? error.message : 'not understood',
    });
  }
}

interface Asked {
  readonly name: CallName;
  readonly input: unknown;
  readonly file: string | null;
  readonly now: string | null;
}

/** @throws Refused 'usage', 'unknown call', 'invalid' */
function readCommand(args: readonly string[]): Asked {
  const { positionals } = parseArgs({
    args: [...args],
    allowPositionals: true,
    strict: false,
    options: { ledger: { type: 'string' }, now: { type: 'string' } },
  });
  const [verb, name, json] = positionals;
  if (verb !== 'call' || name === undefined || positionals.length > 3)
    throw new Refused('usage', { usage: USAGE });
  if (!isCallName(name)) throw new Refused('unknown call', { name });
  let options: ReturnType<typeof readOptions>;
  try {
    options = readOptions(args);
  } catch (error) {
    throw new Refused('usage', { usage: error instanceof Error ? error.message : USAGE });
  }
  let input: unknown;
  try {
    input = readJson(json);
  } catch (error) {
    if (error instanceof Refused) throw error;
    throw new Refused('no such file', { file: json?.slice(1) ?? '' });
  }
  return { name, input, file: options.ledger === null ? null : resolve(options.ledger), now: options.now };
}

/** Which file a call is about, and how that is to be opened. */
function target({ name, file }: Asked, input: unknown): { file: string | null; mode: OpenMode } {
  const named = (input as { file?: string | null }).file;
  switch (name) {
    case 'ledger.open':
      return { file: named ? resolve(named) : file, mode: 'open' };
    case 'ledger.create':
      return { file: named ? resolve(named) : file, mode: 'create' };
    case 'ledger.openDemo':
      return { file, mode: 'demo' };
    default:
      return { file, mode: 'open' };
  }
}

function answer(asked: Asked): Result<unknown> {
  const { name } = asked;
  const checked = checkInput(name, asked.input);
  if (!checked.ok) return checked;
  const input: unknown = checked.value;
  const { file, mode } = target(asked, input);
  if (file === null) throw new Refused('no ledger named');
  if (name === 'ledger.leaveDemo') throw new Refused('not from here', { name });
  const there = existsSync(file);
  const reading = (READS as readonly string[]).includes(name) || name === 'notes.preview';
  // The first thing recorded makes the file; reading what is not there yet reads an empty ledger and makes nothing.
  const making =
    !there &&
    mode === 'open' &&
    !reading &&
    !['ledger.open', 'ledger.recover', 'ledger.backup'].includes(name);
  const session = new Session({
    file,
    mode: making ? 'create' : mode,
    now: asked.now,
    timeZone: Intl.DateTimeFormat().resolvedOptions().timeZone,
    locale: localeOfSystem(
      process.platform,
      process.env,
      () => Intl.DateTimeFormat().resolvedOptions().locale,
    ),
    version: packageFile.version,
  });
  let kept = !making;
  try {
    if (!there && reading) session.readAsEmpty();
    if (name === 'ledger.open' || name === 'ledger.create' || name === 'ledger.openDemo') {
      void session.ledger; // why it could not be opened
      return { ok: true, value: session.state() };
    }
    const result = session.answer(name as WorkerCall, input, {
      step: (done, total, says) => {
        if (process.stderr.isTTY)
          process.stderr.write(`\r${says} ${done}${total === null ? '' : ` of ${total}`}   `);
      },
    });
    kept ||= result.ok;
    return result;
  } finally {
    session.close();
    // A call that failed leaves no new ledger behind.
    if (!kept) for (const end of ['', '-wal', '-shm']) rmSync(`${file}${end}`, { force: true });
  }
}

/** Typed arrays print as plain arrays. */
const plain = (_key: string, value: unknown): unknown =>
  ArrayBuffer.isView(value) && !(value instanceof DataView) ? Array.from(value as Float64Array) : value;

function run(): Result<unknown> {
  try {
    const [verb, ...rest] = process.argv.slice(2);
    if (verb === 'schema') return { ok: true, value: schemas(rest) };
    const asked = readCommand(process.argv.slice(2));
    return checkReply(asked.name, answer(asked));
  } catch (error) {
    if (error instanceof Refused) return { ok: false, error: error.refusal };
    return { ok: false, error: { code: 'unexpected', params: { ref: unexpected(error) } } };
  }
}

const result = run();
const text = JSON.stringify(result.ok ? result : { ok: false, error: shown(result.error) }, plain);
// exitCode, not exit: a long reply into a pipe is written in the background.
process.exitCode = result.ok ? 0 : 1;
process.stdout.write(`${text}\n`);
