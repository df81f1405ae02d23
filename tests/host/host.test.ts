// One call, one reply, always: with real worker threads that behave badly.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, expect, it, vi } from 'vitest';
import { LedgerHost } from '../../main/host';
import { isCancelled } from '../../main/ledger/worker-protocol';

const folder = mkdtempSync(join(tmpdir(), 'jarline-host-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

let made = 0;
/** A host of a worker with that body for each message. */
function hostOf(body: string, changed: () => void = () => undefined): LedgerHost {
  const file = join(folder, `worker-${++made}.mjs`);
  writeFileSync(
    file,
    `import { parentPort } from 'node:worker_threads';\nparentPort.on('message', (message) => { ${body} });\n`,
  );
  const start = { file: null, mode: 'open', now: null, timeZone: 'UTC', version: '0' } as const;
  return new LedgerHost(pathToFileURL(file), start, changed);
}

const stopped = { ok: false, error: { code: 'ledger stopped', params: {} } };
const ANSWER = `if (message.kind === 'close') process.exit(0);
  parentPort.postMessage({ kind: 'reply', id: message.id, result: { ok: true, value: { sources: [] } } });`;

it('answers, in whatever order the worker does', async () => {
  const host = hostOf(ANSWER);
  const replies = await Promise.all([host.call('source.list', {}), host.call('source.list', {})]);
  expect(replies).toEqual([
    { ok: true, value: { sources: [] } },
    { ok: true, value: { sources: [] } },
  ]);
  await host.close();
  expect(host.alive).toBe(false);
});

it('refuses what was asked when the worker dies in the middle, and what is asked after', async () => {
  vi.spyOn(process.stderr, 'write').mockReturnValue(true);
  const host = hostOf(`throw new Error('on purpose')`);
  const replies = await Promise.all([host.call('source.list', {}), host.call('draft.list', {})]);
  expect(replies).toEqual([stopped, stopped]);
  expect(await host.call('source.list', {})).toEqual(stopped);
  expect(host.alive).toBe(false);
  vi.restoreAllMocks();
});

it('refuses when the worker exits without a word', async () => {
  const host = hostOf(`process.exit(3)`);
  expect(await host.call('source.list', {})).toEqual(stopped);
});

it('refuses when there is no worker to start', async () => {
  vi.spyOn(process.stderr, 'write').mockReturnValue(true);
  const start = { file: null, mode: 'open', now: null, timeZone: 'UTC', version: '0' } as const;
  const host = new LedgerHost(pathToFileURL(join(folder, 'none.mjs')), start, () => undefined);
  expect(await host.call('source.list', {})).toEqual(stopped);
  vi.restoreAllMocks();
});

it('lets no reply through that breaks the contract', async () => {
  const said = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
  const host = hostOf(`if (message.kind === 'close') process.exit(0);
    parentPort.postMessage({ kind: 'reply', id: message.id, result: { ok: true, value: { sources: [], secret: 1 } } });`);
  expect(await host.call('source.list', {})).toMatchObject({ ok: false, error: { code: 'unexpected' } });
  expect(said).toHaveBeenCalledWith(expect.stringContaining('source.list'));
  await host.close();
  vi.restoreAllMocks();
});

it('lets no request through that breaks the contract', async () => {
  const host = hostOf(ANSWER);
  expect(await host.call('source.list', { more: 1 })).toMatchObject({
    ok: false,
    error: { code: 'invalid' },
  });
  await host.close();
});

it('passes on progress and changes, and the flag that cancels', async () => {
  let changes = 0;
  const host = hostOf(
    `if (message.kind === 'close') process.exit(0);
     const { id, cancel } = message;
     parentPort.postMessage({ kind: 'progress', id, done: 1, total: 2, says: 'half' });
     parentPort.postMessage({ kind: 'changed' });
     Atomics.wait(new Int32Array(cancel), 0, 0, 5000);
     parentPort.postMessage({ kind: 'reply', id, result: { ok: false, error: { code: 'cancelled', params: {} } } });`,
    () => (changes += 1),
  );
  const cancel = new SharedArrayBuffer(4);
  const heard: unknown[] = [];
  const reply = await host.call(
    'ledger.backup',
    {},
    {
      cancel,
      progress: (...given) => {
        heard.push(given);
        Atomics.store(new Int32Array(cancel), 0, 1);
        Atomics.notify(new Int32Array(cancel), 0);
      },
    },
  );
  expect(reply).toEqual({ ok: false, error: { code: 'cancelled', params: {} } });
  expect(heard).toEqual([[1, 2, 'half']]);
  expect(changes).toBe(1);
  expect(isCancelled(cancel)).toBe(true);
  expect(isCancelled(null)).toBe(false);
  await host.close();
});
