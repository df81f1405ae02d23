// Whatever JSON can carry is answered or refused by name, with a sentence; never as a fault of the program.
import fc from 'fast-check';
import { copyFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CALLS, type CallName } from '../../core/call-names';
import { contract, type Result } from '../../core/contract';
import { refusalSentence } from '../../core/sentences';
import { checkInput, checkReply } from '../../main/check-call';
import { HOST_CALLS, type WorkerCall } from '../../main/ledger/worker-protocol';
import type { Session } from '../../main/session';
import {
  must,
  newFile,
  newFolder,
  openSession,
  plainSource,
  smallFamily,
  unseen,
} from '../ledger/ledger-files';
import { inputsFor, type Known, nastyText } from './arbitrary';

const RUNS = Number(process.env['JARLINE_RUNS'] ?? 25);

interface World {
  readonly file: string;
  readonly known: Known;
}
let recorded: World | null = null;

/** A ledger with a record of each kind that can be made by hand: recorded once, and a copy of it for each that asks. */
function world(): { session: Session; known: Known } {
  recorded ??= recordWorld();
  const file = newFile();
  copyFileSync(recorded.file, file);
  return { session: openSession(file), known: recorded.known };
}

function recordWorld(): World {
  const home = newFile();
  const session = openSession(home, 'create');
  const { source, jars, batches } = smallFamily(session);
  const { id: portion } = must(session, 'portion.save', {
    portion: { id: null, jar: jars[0], part: 'whey', place: 'freezer', pieces: 6, amount: null, keptOn: '2026-03-02', goneOn: null, reserve: true, note: null },
  }); // prettier-ignore
  const { id: package_ } = must(session, 'package.save', {
    package: { id: null, of: 'source', source, name: 'a box', size: null, price: null, boughtOn: null, openedOn: null, bestBefore: null, note: null },
  }); // prettier-ignore
  const { hold } = must(session, 'batch.addHold', {
    batch: batches[0] ?? '', jars: [jars[0]],
    hold: { startedAt: '2026-03-01T20:00:00+01:00', endedAt: null, hours: null, planned: null, probe: null, readings: [], note: null },
  }); // prettier-ignore
  must(session, 'outcome.save', { jar: jars[1], outcome: { ...unseen, signs: ['pink'] }, onShelf: false });
  const { act, id: other } = must(session, 'source.save', plainSource('Meadow Pot'));
  const ids = [...jars, ...batches, source, other, portion, package_, hold, act, '00000000-0000-7000-8000-000000000000']; // prettier-ignore
  session.close();
  return { file: home, known: { ids, keys: [1, 2, 3, 4, 999] } };
}

const OUT = newFolder();
/** Calls that write a file where they are told to: here into a folder of the test's own, whatever the path says. */
function outOfTheWay(name: CallName, input: unknown): unknown {
  if (!name.endsWith('.write')) return input;
  const told = input as Record<'file' | 'folder', { path?: unknown } | string | undefined> | null;
  const field = told?.folder === undefined ? 'file' : 'folder';
  const at = told?.[field];
  const path = typeof at === 'object' && at !== null ? at.path : at;
  if (typeof path !== 'string') return input;
  return { ...(input as object), [field]: { path: join(OUT, 'x', path.replaceAll('..', '-')) } };
}

function answer(session: Session, name: CallName, input: unknown): Result<unknown> {
  const checked = checkInput(name, outOfTheWay(name, input));
  return checked.ok ? checkReply(name, session.answer(name as WorkerCall, checked.value)) : checked;
}

/** Answered, or refused by a name that says what is wrong. */
function expectNamed(result: Result<unknown>): void {
  if (result.ok) return;
  expect(result.error.code).not.toBe('unexpected');
  // The tables' own rules are for what no check before them has thought of.
  expect(result.error.code === 'rule' ? result.error : null).toBeNull();
  const sentence = refusalSentence(result.error);
  expect(sentence).toMatch(/^[^]{10,20000}[.…?]$/);
  expect(sentence).not.toMatch(/undefined|\[object|NaN|constraint|\bnull\b.*\bnull\b.*\bnull\b/);
}

const worker = CALLS.filter((name) => !(HOST_CALLS as readonly string[]).includes(name)) as WorkerCall[];

describe.each(worker)('%s', (name) => {
  it('is never unexpected', () => {
    const { session, known } = world();
    let taken = 0;
    fc.assert(
      fc.property(inputsFor(contract[name].input, known), (input) => {
        if (checkInput(name, input).ok) taken += 1;
        expectNamed(answer(session, name, input));
      }),
      { numRuns: RUNS },
    );
    expect(taken, 'too few inputs came past the contract').toBeGreaterThan(RUNS / 4);
    expect(session.ledger.db.pragma('foreign_key_check')).toEqual([]);
    session.close();
  }, 120_000);
});

it('what those left behind is still read by every call that takes nothing', () => {
  const { session, known } = world();
  const writes = worker.filter((name) => contract[name].kind === 'write');
  const all = fc.constantFrom(...writes).chain((name) => inputsFor(contract[name].input, known).map((input) => [name, input] as const)); // prettier-ignore
  fc.assert(
    fc.property(fc.array(all, { minLength: 5, maxLength: 20 }), (calls) => {
      for (const [name, input] of calls) answer(session, name, input);
      for (const name of worker) {
        if (contract[name].kind === 'read' && contract[name].input.safeParse({}).success)
          expect([name, answer(session, name, {})]).toEqual([name, expect.objectContaining({ ok: true })]);
      }
    }),
    { numRuns: 25 },
  );
  session.close();
}, 120_000);

it('notes with any cells are never unexpected', () => {
  const { session } = world();
  const cell = fc.oneof(nastyText, fc.constantFrom('1 Mar a', '10/15/25', 'a', 'A', '2 tbsp', 'Blue Tin', '', '1e400', '38')); // prettier-ignore
  const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
  fc.assert(
    fc.property(fc.array(fc.tuple(cell, cell, cell, cell, cell), { maxLength: 4 }), fc.string(), (rows, name) => {
      const table = [['Date', 'Jar', 'Seed', 'Hours', 'Note'], ...rows].map((row) => row.map(quoted).join(','));
      const bytes = new TextEncoder().encode(table.join('\r\n'));
      expectNamed(answer(session, 'notes.preview', { file: { name, bytes } }));
      expectNamed(answer(session, 'notes.bringIn', { file: { name, bytes } }));
    }),
    { numRuns: RUNS },
  );
  session.close();
}, 120_000); // prettier-ignore

it.each([
  ['outcome.save', '{"jar":"J","onShelf":null,"outcome":{"ph":1e400}}', 'outcome.ph: this is more than any number that is kept here'],
  ['draft.save', '{"key":"a\\u0000b","json":"{}"}', 'key: holds a character that can\'t be kept'],
  ['draft.save', '{"key":"\\ud800","json":"{}"}', 'key: holds a character that can\'t be kept'],
  ['jar.find', '{"text":"a","limit":1e400,"notAfter":null}', 'limit: this is more than any number that is kept here'],
  ['ledger.open', '{"file":"a\\u0000b"}', 'file: this holds a character that no name of a file has'],
  ['notes.preview', '{"file":{"path":"a\\u0000b"}}', 'path: this holds a character that no name of a file has'],
  ['jar.lost', '{"madeOn":"9999-12-31","label":null,"note":null}', 'madeOn: this is not a day'],
] as const)('%s %s says what is wrong', (name, json, says) => {
  const { session, known } = world();
  const input = JSON.parse(json.replace('"J"', `"${known.ids[0]}"`)) as Record<string, unknown>;
  if (name === 'outcome.save') input['outcome'] = { ...unseen, ...(input['outcome'] as object) };
  const result = answer(session, name, input);
  expect(result.ok ? 'accepted' : refusalSentence(result.error)).toContain(says);
  session.close();
}); // prettier-ignore

describe('the name of a file', () => {
  it('is never unexpected, whatever is in it', async () => {
    const { NamedLedger } = await import('../../main/named-ledger');
    const folder = newFolder();
    writeFileSync(join(folder, 'text.sqlite'), 'text');
    fc.assert(
      fc.property(nastyText, fc.constantFrom('ledger.open', 'ledger.create', 'notes.preview', 'notes.bringIn'), (text, name) => {
        const path = join(folder, 'x', text.replaceAll('..', '-'));
        const ledger = new NamedLedger(join(folder, 'none.sqlite'), '2026-03-14T18:30:00+01:00');
        expectNamed(ledger.answer(name, name.startsWith('notes') ? { file: { path } } : { file: path }));
        ledger.close();
      }),
      { numRuns: RUNS },
    ); // prettier-ignore
  }, 120_000);
});
