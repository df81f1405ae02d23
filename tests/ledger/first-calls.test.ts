// First calls racing on a ledger that is not there yet: whoever comes second finds what the first has kept.
import { spawn } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { built } from './built';
import { batchOf, footprint, must, newFile, NOW, openSession, plainJar, plainSource } from './ledger-files';
import { runs } from '../runs';

let program = '';
beforeAll(async () => {
  program = await built('main/headless.ts');
}, 60_000);

interface Reply {
  readonly ok: boolean;
  readonly value?: { act?: string; ledger?: { uid: string } };
  readonly error?: { code: string; sentence: string };
}

function call(file: string, name: string, input: unknown): Promise<Reply> {
  return new Promise((done, failed) => {
    const child = spawn(
      process.execPath,
      [program, 'call', name, JSON.stringify(input), '--ledger', file, '--now', NOW],
      { stdio: ['ignore', 'pipe', 'inherit'] },
    );
    let said = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => (said += text));
    child.on('error', failed);
    child.on('close', () => done(JSON.parse(said) as Reply));
  });
}

/** The acts that a file holds. */
function actsIn(file: string): Set<unknown> {
  const session = openSession(file);
  const acts = session.ledger.db.prepare('SELECT uid FROM act').pluck().all();
  expect(session.ledger.db.pragma('integrity_check', { simple: true })).toBe('ok');
  session.close();
  return new Set(acts);
}

/** A write that is kept, one that is refused, one that keeps a draft, a look: each as its own program. */
const kinds: readonly ((file: string, number: number) => Promise<Reply>)[] = [
  (file, number) => call(file, 'source.save', plainSource(`Tin ${number}`)),
  (file) => call(file, 'batch.record', batchOf('2026-03-20', [plainJar('a')])),
  (file) => call(file, 'family.get', {}),
  (file, number) => call(file, 'batch.record', batchOf('2026-03-02', [plainJar(`k${number}`)])),
  (file) => call(file, 'act.undo', { act: null }),
  (file, number) => call(file, 'draft.save', { key: `d${number}`, json: '{}' }),
];

/** Races of a kind. */
const ROUNDS = runs(1);

describe('many first calls at once', () => {
  it.each([
    ['where nothing lies', false, 0],
    ['where an empty file lies', true, 2],
  ])(
    '%s: every act that was acknowledged is there afterwards',
    async (_where, empty, from) => {
      for (let round = from; round < from + ROUNDS; round++) {
        const file = newFile();
        if (empty) writeFileSync(file, '');
        // Each round begins with another kind, so that each is the first of all at times.
        const calls = Array.from({ length: 12 }, (_, number) => kinds[(number + round) % kinds.length]);
        const replies = await Promise.all(calls.map((one, number) => one?.(file, number)));
        const kept = replies.flatMap((reply) => (reply?.ok ? [reply.value?.act] : [])).filter(Boolean);
        const acts = actsIn(file);
        expect(kept.filter((act) => !acts.has(act))).toEqual([]);
        expect(acts.size).toBe(kept.length);
        expect(kept.length).toBeGreaterThanOrEqual(4);
        const codes = replies.flatMap((reply) => (reply?.ok ? [] : [reply?.error?.code]));
        // An undo that is overtaken finds nothing to do, or something newer in its way.
        // Where an empty file lies, a look that comes first is told so.
        const meant = ['day to come', 'nothing to undo', 'nothing changed', 'undone already', 'stands on it', ...(empty ? ['empty file'] : [])]; // prettier-ignore
        expect(codes.filter((code) => !meant.includes(code ?? ''))).toEqual([]);
        const session = openSession(file);
        expect(must(session, 'draft.list', {}).drafts.length).toBe(2);
        session.close();
        expect(readdirSync(dirname(file))).toEqual(['ledger.sqlite']);
      }
    },
    120_000,
  );

  it('of which every one is refused leave nothing behind', async () => {
    const file = newFile();
    await Promise.all(
      Array.from({ length: 6 }, (_, number) => kinds[[1, 2, 4][number % 3] ?? 1]?.(file, number)),
    );
    expect(readdirSync(dirname(file))).toEqual([]);
  });

  it('making the ledger: one makes it, the others are told', async () => {
    for (let round = 0; round < ROUNDS; round++) {
      const file = newFile();
      const replies = await Promise.all([
        ...Array.from({ length: 5 }, () => call(file, 'ledger.create', { file: null })),
        call(file, 'ledger.openDemo', {}),
        call(file, 'source.save', plainSource('Tin')),
      ]);
      const makers = replies.slice(0, 6);
      expect(makers.filter(({ ok }) => ok).length).toBeLessThanOrEqual(1);
      for (const one of makers) if (!one.ok) expect(one.error?.code).toBe('file exists');
      const write = replies[6];
      expect(write?.ok || write?.error?.code).toBe(true);
      const made = makers.find(({ ok }) => ok)?.value?.ledger?.uid;
      const session = openSession(file);
      if (made !== undefined) expect(session.ledger.about.uid).toBe(made);
      expect(
        session.ledger.db.prepare('SELECT 1 FROM act WHERE uid = ?').get(write?.value?.act),
      ).toBeTruthy();
      session.close();
      expect(readdirSync(dirname(file))).toEqual(['ledger.sqlite']);
    }
  }, 120_000);
});

it('a log whose ledger is gone is not taken for one of a new ledger', async () => {
  const file = newFile();
  // What a killed program leaves where its ledger was moved away meanwhile.
  const other = openSession(newFile(), 'create');
  must(other, 'source.save', plainSource('Tin'));
  writeFileSync(`${file}-wal`, readFileSync(`${other.ledger.file}-wal`));
  other.close();
  const before = footprint(dirname(file));
  for (const [name, input] of [
    ['source.save', plainSource('Tin')],
    ['family.get', {}],
    ['ledger.create', { file: null }],
  ] as const) {
    const reply = await call(file, name, input);
    expect(reply.error?.code).toBe('log without ledger');
    expect(reply.error?.sentence).toContain(`${file}-wal`);
  }
  writeFileSync(file, '');
  expect((await call(file, 'source.save', plainSource('Tin'))).error?.code).toBe('log without ledger');
  expect(footprint(dirname(file))).toEqual({ ...before, 'ledger.sqlite': expect.any(String) });
});
