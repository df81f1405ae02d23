// Notes are read and brought in beside the ledger's own thread: what is asked meanwhile is answered from the state before,
// what would record waits and then runs. With the real worker; order is told by what came first, never by a clock.
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { AppState, Result } from '../../core/contract';
import { type JobWatch, LedgerHost, LedgerThreads } from '../../main/host';
import { built } from '../ledger/built';
import { batchOf, newFile, NOW, plainJar } from '../ledger/ledger-files';

let threads: LedgerThreads;
beforeAll(async () => {
  threads = new LedgerThreads(pathToFileURL(await built('main/ledger-worker.ts')));
}, 60_000);
afterAll(() => threads.end());

const hostOf = (file: string): LedgerHost =>
  new LedgerHost(
    threads,
    { file, mode: 'create', now: NOW, timeZone: 'Europe/Berlin', version: '0' },
    () => undefined,
  );

/** Rows of notes for that many jars, each seeded from the one before. */
function notes(jars: number): { file: { name: string; bytes: Uint8Array<ArrayBuffer> } } {
  const day = (number: number): string =>
    new Date(Date.UTC(1990, 0, 1) + number * 86_400_000).toISOString().slice(0, 10);
  const rows = Array.from(
    { length: jars },
    (_, jar) => `${day(jar)},${jar === 0 ? 'Blue Tin' : day(jar - 1)},firm`,
  );
  const bytes = new TextEncoder().encode(['date,seed,set', ...rows].join('\n'));
  return { file: { name: 'notes.csv', bytes } };
}

const jarsOf = (result: Result<unknown>): number | undefined =>
  result.ok ? (result.value as AppState).ledger?.jars : undefined;

/** Resolves once the job says the words. */
function whenSaid(words: string): { job: JobWatch; said: Promise<void>; cancel: () => void } {
  const cancel = new SharedArrayBuffer(4);
  let heard: () => void = () => undefined;
  const said = new Promise<void>((resolve) => (heard = resolve));
  return {
    job: { cancel, progress: (_done, _total, says) => (says === words ? heard() : undefined) },
    said,
    cancel: () => void Atomics.store(new Int32Array(cancel), 0, 1),
  };
}

it('reads answer from before an import, and what records waits behind it', async () => {
  const host = hostOf(newFile());
  await host.call('batch.record', batchOf('2026-03-01', [plainJar('a')]));
  const ended: string[] = [];
  const noting =
    (what: string) =>
    <Value>(value: Value): Value => {
      ended.push(what);
      return value;
    };
  const { job, said } = whenSaid('bringing in rows');
  const importing = host.call('notes.bringIn', notes(3000), job).then(noting('import'));
  await said;
  const writing = host.call('batch.record', batchOf('2026-03-02', [plainJar('b')])).then(noting('record'));
  const meanwhile = await host.call('app.state', {}).then(noting('read'));
  expect(jarsOf(meanwhile)).toBe(1);
  expect(await importing).toMatchObject({ ok: true, value: { jars: 3000 } });
  expect(await writing).toMatchObject({ ok: true });
  expect(ended).toEqual(['read', 'import', 'record']);
  expect(jarsOf(await host.call('app.state', {}))).toBe(3002);
  // The thread that keeps the ledger sees what the other one wrote: it can be taken back.
  expect(await host.call('act.undo', { act: null })).toMatchObject({ ok: true });
  expect(await host.call('act.undo', { act: null })).toMatchObject({ ok: true });
  expect(jarsOf(await host.call('app.state', {}))).toBe(1);
  await host.close();
}, 60_000);

it('reads and writes go on while a file is only looked at, and looking can be stopped', async () => {
  const host = hostOf(newFile());
  const { job, said, cancel } = whenSaid('reading rows');
  let looked = false;
  const looking = host.call('notes.preview', notes(3000), job).finally(() => (looked = true));
  await said;
  expect(await host.call('batch.record', batchOf('2026-03-01', [plainJar('a')]))).toMatchObject({ ok: true });
  expect(jarsOf(await host.call('app.state', {}))).toBe(1);
  expect(looked).toBe(false);
  cancel();
  expect(await looking).toEqual({ ok: false, error: { code: 'cancelled', params: {} } });
  await host.close();
}, 60_000);

it.each(['reading rows', 'bringing in rows'])(
  'an import that is stopped while %s leaves nothing',
  async (words) => {
    const host = hostOf(newFile());
    const { job, said, cancel } = whenSaid(words);
    const importing = host.call('notes.bringIn', notes(3000), job);
    await said;
    cancel();
    expect(await importing).toEqual({ ok: false, error: { code: 'cancelled', params: {} } });
    expect(jarsOf(await host.call('app.state', {}))).toBe(0);
    expect(await host.call('history.list', { record: null, before: null, limit: 5 })).toMatchObject({
      ok: true,
      value: { acts: [] },
    });
    await host.close();
  },
  60_000,
);

it('two imports come in one after the other', async () => {
  const host = hostOf(newFile());
  const both = await Promise.all([
    host.call('notes.bringIn', notes(200)),
    host.call('notes.bringIn', notes(300)),
  ]);
  expect(both).toMatchObject([
    { ok: true, value: { jars: 200 } },
    { ok: true, value: { jars: 100 } },
  ]);
  await host.close();
}, 60_000);

it('a ledger that is not open says so', async () => {
  const host = new LedgerHost(
    threads,
    { file: null, mode: 'open', now: NOW, timeZone: 'UTC', version: '0' },
    () => undefined,
  );
  expect(await host.call('notes.preview', notes(2))).toEqual({
    ok: false,
    error: { code: 'no ledger', params: {} },
  });
  await host.close();
}, 60_000);
