// The command line of the ledger without a window. `call NAME JSON --ledger FILE [--now MOMENT]` runs a call of the contract through the
// handlers the window uses and prints one JSON object on stdout and nothing else there; `calls` does so for each line of
// standard input; `schema [NAME]` prints what a record or a call looks like.
import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { addAbortSignal, type Readable, type Writable } from 'node:stream';
import { parseArgs } from 'node:util';
import type { Result } from '../core/contract';
import { archiveSchema, handOverSchema, jsonSchemas } from '../core/schemas/json-schemas';
import { checkedSentence, findingSentence } from '../core/says/check-says';
import { refusalSentence } from '../core/sentences';
import { isCallName } from './check-call';
import { checkLedgerFile } from './check-ledger';
import { beyondNumbers, parseJson, printed, roundedIn, withBytes } from './json-lines';
import { Refused } from './refusal';
import { repliesTo } from './many-calls';
import { NamedLedger, refusalFrom } from './named-ledger';
import { type Options, readOptions } from './options';

const USAGE = `call NAME 'JSON' --ledger FILE [--now MOMENT]
The JSON may also come as @FILE, or from standard input as -.
calls --ledger FILE [--now MOMENT]: one {"name", "input", "now"?, "id"?} a line from standard input, one reply a line.
check --ledger FILE: looks through a ledger and its backups, says what it finds and changes nothing.
schema [NAME]: the JSON Schema of a record or a call, of archive or hand-over, or of all of them.`;

/** @throws Refused 'usage', 'unknown schema' */
function schemas(names: readonly string[]): unknown {
  const [name] = names;
  const all = jsonSchemas();
  if (name === undefined) return all;
  if (names.length > 1) throw new Refused('usage', { usage: USAGE });
  if (name === 'archive') return archiveSchema();
  if (name === 'hand-over') return handOverSchema();
  const found = Object.entries<unknown>({ ...all.records, ...all.calls }).find(([one]) => one === name);
  if (!found) throw new Refused('unknown schema', { name });
  return found[1];
}

/** @throws Refused 'usage' */
function optionsOf(args: readonly string[]): Options {
  try {
    return readOptions(args);
  } catch (error) {
    throw new Refused('usage', { usage: error instanceof Error ? error.message : USAGE });
  }
}

/** @throws Refused 'usage' */
function ledgerNamed(args: readonly string[]): NamedLedger {
  const { ledger, now } = optionsOf(args);
  return new NamedLedger(ledger === null ? null : resolve(ledger), now);
}

/** @throws Refused 'invalid', 'no such file' */
function readInput(given: string | undefined): unknown {
  if (given === undefined || given === '') return {};
  let text = given;
  try {
    if (given === '-') text = readFileSync(0, 'utf8');
    else if (given.startsWith('@')) text = readFileSync(resolve(given.slice(1)), 'utf8');
  } catch {
    throw new Refused('no such file', { file: given.slice(1) });
  }
  const json = parseJson(text);
  const rounded = roundedIn(text);
  if (rounded !== null) throw beyondNumbers(rounded);
  return withBytes(json);
}

/**
 * What stands on the command line beside the options. An option that there is not, or that is said twice, is never passed
 * over: a moment mistyped as `--nwo` would be recorded as now.
 * @throws Refused 'usage'
 */
function wordsOf(args: readonly string[]): string[] {
  const { positionals, tokens } = parseArgs({
    args: [...args],
    allowPositionals: true,
    strict: false,
    tokens: true,
    options: { ledger: { type: 'string' }, now: { type: 'string' } },
  });
  const seen = new Set<string>();
  for (const token of tokens) {
    if (token.kind !== 'option') continue;
    const known = token.name === 'ledger' || token.name === 'now';
    if (!known) throw new Refused('usage', { usage: `There is no ${token.rawName}.\n${USAGE}` });
    if (seen.has(token.name))
      throw new Refused('usage', { usage: `${token.rawName} stands there twice.\n${USAGE}` });
    seen.add(token.name);
  }
  return positionals;
}

/** @throws Refused 'usage', 'unknown call', 'invalid', 'no such file' */
function call(args: readonly string[]): Result<unknown> {
  const [, name, json, ...more] = wordsOf(args);
  if (name === undefined || more.length > 0) throw new Refused('usage', { usage: USAGE });
  if (!isCallName(name)) throw new Refused('unknown call', { name });
  const ledger = ledgerNamed(args);
  const result = ledger.answer(name, readInput(json));
  ledger.close();
  return result;
}

/** Where lines are read from and replies go: the program's own streams, or a test's. */
export interface Streams {
  readonly stdin: Readable;
  readonly stdout: Writable;
}

/** Says in plain lines what a look through a ledger finds. @returns the exit code. @throws Refused as the file is */
async function check(args: readonly string[], stdout: Writable): Promise<number> {
  if (wordsOf(args).length > 1) throw new Refused('usage', { usage: USAGE });
  const { ledger } = optionsOf(args);
  if (ledger === null) throw new Refused('no ledger named');
  const { findings, ...counts } = checkLedgerFile(resolve(ledger));
  await write(
    stdout,
    `${[...findings.map(findingSentence), checkedSentence(findings.length, counts)].join('\n')}\n`,
  );
  return Number(findings.length > 0);
}

/** Settles once the text is written; rejects where nobody reads it. */
const write = (to: Writable, text: string): Promise<void> =>
  new Promise((done, failed) => {
    to.write(text, (error) => (error ? failed(error) : done()));
  });

/** How long a reply that is on its way may still take when the program is asked to end (ms). */
const GRACE_MS = 1000;

/** Aborted once the program is asked to end, after the reply that is on its way. */
function endAsked(stdout: Writable): { signal: AbortSignal; over: () => void } {
  const asked = new AbortController();
  const end = (): void => {
    if (stdout.writableLength === 0) asked.abort();
    else setTimeout(() => asked.abort(), GRACE_MS);
  };
  const signals = ['SIGTERM', 'SIGINT', 'SIGHUP'] as const;
  for (const signal of signals) process.on(signal, end);
  const over = (): void => signals.forEach((signal) => void process.off(signal, end));
  return { signal: asked.signal, over };
}

/** Answers standard input line by line. @returns the exit code. @throws Refused 'usage', 'no ledger named' */
async function calls(args: readonly string[], { stdin, stdout }: Streams): Promise<number> {
  if (wordsOf(args).length > 1) throw new Refused('usage', { usage: USAGE });
  const ledger = ledgerNamed(args);
  const trouble = ledger.trouble();
  if (trouble?.refusal.code === 'no ledger named') throw trouble;
  const { signal: end, over } = endAsked(stdout);
  const ended = new Promise<never>((_done, failed) =>
    end.addEventListener('abort', () => failed(end.reason)),
  );
  ended.catch(() => undefined);
  let allOk = true;
  try {
    for await (const { ok, text } of repliesTo(ledger, addAbortSignal(end, stdin))) {
      allOk &&= ok;
      await Promise.race([write(stdout, text), ended]);
    }
  } catch (error) {
    // Nobody reads any more, or it was asked to end, with a reply perhaps still under way.
    const unread = (error as NodeJS.ErrnoException).code === 'EPIPE';
    if (!unread && !end.aborted) throw error;
    if (unread || stdout.writableLength > 0) allOk = false;
  } finally {
    ledger.close();
    over();
  }
  return trouble ? 2 : Number(!allOk);
}

/** Runs what was typed after the program's name. @returns the exit code */
export async function runCommand(args: readonly string[], streams: Streams): Promise<number> {
  const [verb, ...rest] = args;
  let result: Result<unknown>;
  try {
    switch (verb) {
      case 'schema':
        result = { ok: true, value: schemas(rest) };
        break;
      case 'call':
        result = call(args);
        break;
      case 'calls':
        return await calls(args, streams);
      case 'check':
        return await check(args, streams.stdout);
      default:
        throw new Refused('usage', { usage: USAGE });
    }
  } catch (error) {
    result = refusalFrom(error);
  }
  if (verb === 'check' && !result.ok) {
    // A check speaks to people.
    await write(streams.stdout, `${refusalSentence(result.error)}\n`);
    return 2;
  }
  await write(streams.stdout, printed(result));
  if (result.ok) return 0;
  return verb === 'calls' || result.error.code === 'usage' ? 2 : 1;
}
