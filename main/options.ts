// What was asked for on the command line. Pure.
import { parseArgs } from 'node:util';
import { isDay, Moment } from '../core/ledger/basics';

export interface Options {
  /** Open a throwaway copy of the invented ledger. */
  readonly demo: boolean;
  /** Come up, print ok, end: for trying a package. */
  readonly smoke: boolean;
  readonly ledger: string | null;
  /** The moment the clock stands still at. */
  readonly now: string | null;
  readonly userData: string | null;
  /** What is no option: files to open may be among it. */
  readonly words: readonly string[];
}

/** A moment that a clock can stand still at, or the sentence that says why not. */
export function readMoment(given: unknown): { ok: true; value: string } | { ok: false; problem: string } {
  const { data } = Moment.safeParse(given);
  if (data !== undefined && isDay(data.slice(0, 10)) && !Number.isNaN(Date.parse(data)))
    return { ok: true, value: data };
  return {
    ok: false,
    problem: `--now needs a moment such as 2026-03-14T18:30:00+01:00, not “${String(given)}”.`,
  };
}

/**
 * Reads the program's own options; Chromium's are passed over.
 * @throws an Error with a sentence where a value can't be used
 */
export function readOptions(args: readonly string[]): Options {
  const { values, positionals } = parseArgs({
    args: [...args],
    strict: false,
    allowPositionals: true,
    options: {
      demo: { type: 'boolean' },
      smoke: { type: 'boolean' },
      ledger: { type: 'string' },
      now: { type: 'string' },
      'user-data-dir': { type: 'string' },
    },
  });
  const text = (name: string): string | null => {
    const value = values[name];
    if (value === undefined) return null;
    if (typeof value !== 'string' || value === '') throw new Error(`--${name} needs a value.`);
    return value;
  };
  const now = text('now');
  const moment = now === null ? null : readMoment(now);
  if (moment?.ok === false) throw new Error(moment.problem);
  return {
    demo: values['demo'] === true,
    smoke: values['smoke'] === true,
    ledger: text('ledger'),
    now,
    userData: text('user-data-dir'),
    words: positionals,
  };
}
