// One call, one reply, always: with real worker threads that behave badly.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, expect, it, vi } from 'vitest';
import { LedgerHost, LedgerThreads } from '../../main/host';
import { isCancelled } from '../../main/ledger/worker-protocol';

const folder = mkdtempSync(join(tmpdir(), 'jarline-host-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const start = { file: null, mode: 'open', now: null, timeZone: 'UTC', version: '0' } as const;
let made = 0;
/** Threads of a worker with that body for each message. */
function threadsOf(body: string): LedgerThreads {
  const file = join(folder, `worker-${++made}.mjs`);
  const imports = `import { parentPort, threadId } from 'node:worker_threads';`;
  writeFileSync(file, `${imports}\nparentPort.on('message', (message) => { ${body} });\n`);
  return new LedgerThreads(pathToFileURL(file));
}
const hostOf = (body: string, changed: () => void = () => undefined): LedgerHost =>
  new LedgerHost(threadsOf(body), start, changed);

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
  const none = new LedgerThreads(pathToFileURL(join(folder, 'none.mjs')));
  const host = new LedgerHost(none, start, () => undefined);
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

it('a thread whose ledger is closed opens the next one; nothing of it reaches whoever had it before', async () => {
  // It tells which thread it is, and after closing goes on saying that something changed, as no worker should.
  const threads = threadsOf(`
    if (message.kind === 'end') parentPort.close();
    if (message.kind === 'open') parentPort.postMessage({ kind: 'changed' });
    if (message.kind === 'close') parentPort.postMessage({ kind: 'closed' });
    if (message.kind === 'call' && message.name === 'draft.list') process.exit(3);
    const error = { code: 'unexpected', params: { ref: String(threadId) } };
    if (message.kind === 'call') parentPort.postMessage({ kind: 'reply', id: message.id, result: { ok: false, error } });`);
  const heard = [0, 0, 0, 0];
  const hosts: LedgerHost[] = [];
  const begin = (): LedgerHost => {
    const at = hosts.length;
    hosts.push(new LedgerHost(threads, start, () => (heard[at]! += 1)));
    return hosts[at]!;
  };
  const thread = async (host: LedgerHost): Promise<unknown> => {
    const reply = await host.call('source.list', {});
    return reply.ok ? reply : reply.error.params['ref'];
  };
  const first = begin();
  const one = await thread(first);
  await first.close();
  const second = begin();
  const third = begin();
  expect(await thread(second)).toBe(one);
  expect(await thread(third)).not.toBe(one);
  expect(await thread(first)).toEqual(undefined);
  expect(await first.call('source.list', {})).toEqual(stopped);
  expect(first.alive).toBe(false);
  expect(heard).toEqual([0, 1, 0, 0]);
  // One that died is not used again.
  expect(await second.call('draft.list', {})).toEqual(stopped);
  await third.close();
  const fourth = begin();
  expect([one, undefined]).not.toContain(await thread(fourth));
  await fourth.close();
  await threads.end();
});
