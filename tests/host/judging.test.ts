// What rests on the judgement of every line waits for it, and holds up nothing else: with the real worker; order is told by what
// came first, never by a clock.
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { LedgerHost, LedgerThreads } from '../../main/host';
import { judgedOf, judgeMore } from '../../main/ledger/judged';
import { built } from '../ledger/built';
import { must, newFile, NOW, openSession } from '../ledger/ledger-files';

let threads: LedgerThreads;
beforeAll(async () => {
  threads = new LedgerThreads(pathToFileURL(await built('main/ledger-worker.ts')));
}, 60_000);
afterAll(() => threads.end());

/** A ledger of one line of 40 batches. */
function oneLine(): string {
  const file = newFile();
  const session = openSession(file, 'create');
  const day = (number: number): string =>
    new Date(Date.UTC(2020, 0, 1) + number * 86_400_000).toISOString().slice(0, 10);
  const rows = Array.from(
    { length: 40 },
    (_, at) => `${day(at)},${at === 0 ? 'Blue Tin' : day(at - 1)},firm`,
  );
  const bytes = new TextEncoder().encode(['date,seed,set', ...rows].join('\n'));
  must(session, 'notes.bringIn', { file: { name: 'notes.csv', bytes } });
  session.close();
  return file;
}

it('the family is drawn, jars are opened and more is recorded while the lines are judged', async () => {
  const host = new LedgerHost(
    threads,
    { file: oneLine(), mode: 'open', now: NOW, timeZone: 'Europe/Berlin', version: '0' },
    () => undefined,
  );
  const ended: string[] = [];
  const asked = (name: 'today.list' | 'app.state' | 'family.drawing' | 'shelf.get') =>
    host.call(name, name === 'family.drawing' ? { spacing: null } : {}).then((result) => {
      expect({ name, result }).toMatchObject({ result: { ok: true } });
      ended.push(name);
    });
  await Promise.all([asked('today.list'), asked('shelf.get'), asked('app.state'), asked('family.drawing')]);
  expect(ended).toEqual(['app.state', 'family.drawing', 'today.list', 'shelf.get']);
  // Closing waits for what was asked.
  const late = Promise.all([host.call('today.list', {}), host.close()]);
  expect((await late)[0]).toMatchObject({ ok: true });
});

it('what was judged in steps is not judged again', () => {
  const session = openSession(oneLine());
  let steps = 1;
  while (judgeMore(session.ledger)) steps++;
  expect(steps).toBeGreaterThan(4);
  const { all } = judgedOf(session.ledger);
  expect(all.judgedAnew).toHaveLength(1);
  must(session, 'today.list', {});
  expect(all.judgedAnew).toHaveLength(1);
  expect(judgeMore(session.ledger)).toBe(false);
  session.close();
});
