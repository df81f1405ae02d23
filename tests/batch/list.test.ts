// The list of batches: what each came from, and finding one by a word, its seed, a fibre or its day, page by page.
import { expect, it } from 'vitest';
import { batchOf, fromJar, must, newSession, plainJar, smallFamily } from '../ledger/ledger-files';

it('tells seeds, additions and generations, and finds by any of its words, across pages', () => {
  const session = newSession();
  const { jars } = smallFamily(session);
  const addition = { name: 'acacia fibre', planned: null, actual: null, package: null };
  must(session, 'batch.record', {
    ...batchOf('2026-03-12', [plainJar('a', { seedings: [fromJar(jars[1])], additions: [addition] })]),
    word: 'supper',
  });
  const found = (text: string) => must(session, 'batch.list', { before: null, limit: 50, text }).batches;
  const [newest] = found('');
  expect(newest).toMatchObject({ label: '12 Mar supper', seeds: ['5 Mar a'], additions: ['acacia fibre'] });
  expect(newest?.jars[0]).toMatchObject({ generation: 3, atLeast: false });
  expect(found('acacia').map(({ label }) => label)).toEqual(['12 Mar supper']);
  expect(found('SUPPER').map(({ label }) => label)).toEqual(['12 Mar supper']);
  expect(found('blue tin').map(({ label }) => label)).toEqual(['1 Mar']);
  expect(found('5 mar a').map(({ label }) => label)).toEqual(['12 Mar supper', '9 Mar', '5 Mar']);
  expect(found('2027')).toEqual([]);
  const page = must(session, 'batch.list', { before: null, limit: 1, text: '5 mar a' });
  expect(page.more).toBe(true);
  const [last] = page.batches;
  const next = must(session, 'batch.list', { before: last ? { madeOn: last.madeOn, id: last.id } : null, limit: 1, text: '5 mar a' }); // prettier-ignore
  expect(next.batches.map(({ label }) => label)).toEqual(['9 Mar']);
});

it('finds in the history of one record too', () => {
  const session = newSession();
  const { jars } = smallFamily(session);
  must(session, 'jar.correct', {
    id: jars[1],
    changes: { vessel: 'quart jar' },
    why: 'It was the tall one.',
  });
  const record = { kind: 'jar' as const, id: jars[1] };
  const list = (text: string) =>
    must(session, 'history.list', { record, before: null, limit: 9, text }).acts.map(({ says }) => says);
  expect(list('mar')).toEqual(['corrected 5 Mar a', 'recorded 5 Mar a']);
  expect(list('tall')).toEqual(['corrected 5 Mar a']);
  expect(list('9')).toEqual([]);
});
