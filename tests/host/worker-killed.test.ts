// The real worker, ended in the middle of a long import: nothing unfinished is kept, and the next call opens it again.
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import { beforeAll, expect, it, vi } from 'vitest';
import type { AppState, Result } from '../../core/contract';
import { OpenLedger } from '../../main/open-ledger';
import { built } from '../ledger/built';
import { batchOf, newFile, NOW, plainJar } from '../ledger/ledger-files';

let workerFile: URL;
beforeAll(async () => {
  workerFile = pathToFileURL(await built('main/ledger-worker.ts'));
}, 60_000);

/** Rows of notes for that many jars, each seeded from the one before. */
function notes(jars: number): Uint8Array<ArrayBuffer> {
  const rows = ['date,seed,set'];
  const day = (number: number): string =>
    new Date(Date.UTC(1990, 0, 1) + number * 86_400_000).toISOString().slice(0, 10);
  for (let jar = 0; jar < jars; jar++) {
    rows.push(`${day(jar)},${jar === 0 ? 'Blue Tin' : day(jar - 1)},firm`);
  }
  return new TextEncoder().encode(rows.join('\n'));
}

const jarsOf = (result: Result<unknown>): number | undefined =>
  result.ok ? (result.value as AppState).ledger?.jars : undefined;

it('loses only what was under way', async () => {
  vi.spyOn(process.stderr, 'write').mockReturnValue(true);
  const workers: Worker[] = [];
  const { postMessage } = Worker.prototype;
  vi.spyOn(Worker.prototype, 'postMessage').mockImplementation(function (this: Worker, ...given) {
    if (!workers.includes(this)) workers.push(this);
    postMessage.apply(this, given);
  });
  const file = newFile();
  const ledger = new OpenLedger(
    {
      workerFile,
      version: '0',
      timeZone: 'Europe/Berlin',
      now: () => NOW,
      locale: () => null,
      defaultFile: null,
      doors: {
        chooseFile: () => Promise.resolve(null),
        showFolder: () => undefined,
        askCamera: async () => false,
        pdfOf: async () => new Uint8Array(),
        onPaper: async () => false,
      },
      changed: () => undefined,
      remember: () => undefined,
    },
    file,
  );
  await ledger.call('batch.record', batchOf('2026-03-01', [plainJar('a')]));
  let ended = false;
  const answer = await ledger.call(
    'notes.bringIn',
    { file: { name: 'notes.csv', bytes: notes(6000) } },
    {
      cancel: null,
      progress: (done, _total, says) => {
        if (ended || says !== 'bringing in rows' || done === 0) return;
        ended = true;
        void workers.at(-1)?.terminate();
      },
    },
  );
  expect(ended).toBe(true);
  expect(answer).toEqual({ ok: false, error: { code: 'ledger stopped', params: {} } });
  expect(jarsOf(await ledger.call('app.state', {}))).toBe(1);
  expect(workers.length).toBe(2);
  // And once more in one go, with nothing of the first time in the way.
  expect(
    await ledger.call('notes.bringIn', { file: { name: 'notes.csv', bytes: notes(300) } }),
  ).toMatchObject({
    ok: true,
    value: { jars: 300 },
  });
  expect(jarsOf(await ledger.call('app.state', {}))).toBe(301);
  await ledger.close();
  vi.restoreAllMocks();
}, 60_000);
