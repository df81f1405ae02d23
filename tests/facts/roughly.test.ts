// A made jar of which only a range of days is known ("about mid January"), through the contract: what it is called, where it
// stands, what can be said of it, and that no figure is made of a day that nobody knows.
import { expect, it } from 'vitest';
import { checkLedger } from '../rules/ledger-check';
import {
  batchOf,
  fromJar,
  fromSource,
  must,
  newSession,
  plainJar,
  plainSource,
  refusalOf,
  stateOf,
} from '../ledger/ledger-files';

const LAYOUT = {
  page: { width: 210, height: 297 }, rows: 4, columns: 2, label: { width: 99, height: 67 }, margin: { top: 12, left: 5 },
  gap: { across: 2, down: 0 }, skip: 0,
}; // prettier-ignore

const about = (from: string, to: string, jars: Parameters<typeof batchOf>[1], more = {}) =>
  batchOf(null, jars, { madeFrom: from, madeTo: to, ...more });

/** A source, a batch made about 6 January, one made on the 20th from its jar, and one made about the end of January from that. */
function backfilled() {
  const session = newSession();
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  const first = must(
    session,
    'batch.record',
    about('2026-01-03', '2026-01-09', [plainJar('a', { seedings: [fromSource(source)] }), plainJar('b')]),
  );
  const [a = ''] = first.jars;
  const exact = must(
    session,
    'batch.record',
    batchOf('2026-01-20', [plainJar('a', { seedings: [fromJar(a)] })]),
  );
  const late = must(
    session,
    'batch.record',
    about('2026-01-22', '2026-02-04', [
      plainJar('a', { seedings: [fromJar(exact.jars[0] ?? '')], onShelf: true }),
    ]),
  );
  return { session, source, first, a, exact, late, last: late.jars[0] ?? '' };
}

it('is called about the middle of its days, in every reply, and found by that', () => {
  const { session, first, a, exact, late, last } = backfilled();
  const family = must(session, 'family.get', {});
  expect(family.jars.map(({ label, madeOn, madeBetween }) => [label, madeOn, madeBetween])).toEqual([
    ['about 6 Jan a', null, { from: '2026-01-03', to: '2026-01-09' }],
    ['about 6 Jan b', null, { from: '2026-01-03', to: '2026-01-09' }],
    ['20 Jan a', '2026-01-20', null],
    ['about 28 Jan a', null, { from: '2026-01-22', to: '2026-02-04' }],
  ]);
  expect(family.jars.map(({ generation }) => generation.deepest)).toEqual([1, 1, 2, 3]);
  const jar = must(session, 'jar.get', { id: a });
  expect([jar.view.madeOn, jar.madeBetween]).toEqual([null, { from: '2026-01-03', to: '2026-01-09' }]);
  const { batch } = must(session, 'batch.get', { id: first.batch });
  expect(batch).toMatchObject({ madeOn: null, madeFrom: '2026-01-03', madeTo: '2026-01-09' });
  const list = (input: object) => must(session, 'batch.list', { before: null, limit: 200, ...input } as never);
  const all = list({}).batches;
  expect(all.map(({ label }) => label)).toEqual(['about 28 Jan', '20 Jan', 'about 6 Jan']);
  // Page by page the same.
  const paged = [list({ limit: 1 }).batches[0]];
  for (let before = paged[0]; before; before = paged.at(-1)) {
    const [next] = list({ limit: 1, before: { madeOn: before.madeOn, id: before.id } }).batches;
    if (!next) break;
    paged.push(next);
  }
  expect(paged).toEqual(all);
  const found = (text: string) => must(session, 'jar.find', { text, limit: 9, notAfter: null });
  expect(found('about 6 jan a').named?.id).toBe(a);
  expect(found('6 Jan a').jars[0]?.id).toBe(a);
  expect(found('6 Jan a').named).toBeNull();
  expect(found('about 20 Jan a').jars).toEqual([]);
  expect(found('about 6 Jan a').jars[0]?.says).toContain('made between 3 Jan 2026 and 9 Jan 2026');
  expect(must(session, 'jar.find', { text: 'a', limit: 9, notAfter: '2026-01-21' }).jars.map(({ id }) => id).slice(0, 2)).toEqual([exact.jars[0], a]);
  expect(must(session, 'line.list', {}).lines[0]).toMatchObject({ name: 'about 6 Jan 2026', founded: null, newestBatch: late.batch });
  expect(must(session, 'history.list', { record: { kind: 'jar', id: last }, before: null, limit: 9 }).acts[0]?.says).toContain('about 28 Jan a');
  expect(checkLedger(session.ledger.db, '2026-03-14')).toEqual([]);
}); // prettier-ignore

it('a range becomes a day and a day a range, and what can’t be is refused with the day that is sure', () => {
  const { session, source, first, a, exact } = backfilled();
  const before = stateOf(session);
  const correct = (id: string, changes: object) => ({ id, changes });
  const refused = (changes: object, id = first.batch) => refusalOf(session, 'batch.correct', correct(id, changes));
  expect(refused({ madeFrom: '2026-01-21', madeTo: '2026-01-25' }).sentence).toBe(
    'about 23 Jan a was made on 21 Jan 2026 at the earliest, after 20 Jan a (20 Jan 2026), so it can’t have seeded it. Correct a date or choose another seed.',
  );
  expect(refused({ madeFrom: '2026-01-09', madeTo: '2026-01-03' }).code).toBe('range of days');
  expect(refused({ madeFrom: '2026-01-09' , madeTo: null }).code).toBe('range of days');
  expect(refused({ madeOn: '2026-01-05', madeFrom: '2026-01-03', madeTo: '2026-01-09' }).code).toBe('range of days');
  expect(refused({ madeOn: null }, exact.batch).code).toBe('day not known');
  expect(refusalOf(session, 'batch.record', about('2026-02-03', '2026-02-09', [plainJar('a', { state: 'planned' })])).code).toBe('made on no day');
  expect(refusalOf(session, 'batch.record', about('2026-01-05', '2026-01-07', [plainJar('a', { seedings: [fromSource(source)] })])).code).toBe('same label');
  expect(refusalOf(session, 'batch.record', about('2027-01-05', '2027-01-07', [plainJar('a')])).code).toBe('day to come');
  expect(stateOf(session)).toBe(before);
  must(session, 'batch.correct', correct(first.batch, { madeOn: '2026-01-05' }));
  expect(must(session, 'jar.get', { id: a }).view).toMatchObject({ label: '5 Jan a', madeOn: '2026-01-05', madeBetween: null });
  must(session, 'batch.correct', correct(first.batch, { madeFrom: '2026-01-01', madeTo: '2026-01-31' }));
  expect(must(session, 'jar.get', { id: a }).view).toMatchObject({ label: 'about 16 Jan a', madeOn: null });
  must(session, 'batch.correct', correct(first.batch, { word: 'oat' }));
  expect(must(session, 'jar.get', { id: a }).view.label).toBe('about 16 Jan oat a');
  for (let undone = 0; undone < 3; undone++) must(session, 'act.undo', { act: null });
  expect(must(session, 'jar.get', { id: a }).view.label).toBe('about 6 Jan a');
  must(session, 'batch.addJar', { batch: first.batch, jar: { ...plainJar('c'), hold: null }, sameLabelMeant: false });
  expect(checkLedger(session.ledger.db, '2026-03-14')).toEqual([]);
}); // prettier-ignore

it('what seeded a jar of a range was made before what that seeded', () => {
  const { session, source } = backfilled();
  const twenty = must(session, 'batch.record', batchOf('2026-01-20', [plainJar('s', { seedings: [fromSource(source)] })])).jars[0] ?? '';
  const range = must(session, 'batch.record', about('2026-01-01', '2026-01-31', [plainJar('r', { seedings: [fromJar(twenty)] })])).jars[0] ?? '';
  const child = (day: string) => batchOf(day, [plainJar('x', { seedings: [fromJar(range)] })]);
  expect(refusalOf(session, 'batch.record', child('2026-01-10')).sentence).toBe(
    '20 Jan s was made on 20 Jan 2026, after 10 Jan x (10 Jan 2026), so it can’t have seeded it, by way of about 16 Jan r. Correct a date or choose another seed.',
  );
  const made = must(session, 'batch.record', child('2026-01-22'));
  // Nor when a day is moved at either end.
  expect(refusalOf(session, 'batch.correct', { id: made.batch, changes: { madeOn: '2026-01-19' } }).code).toBe('seed made later');
  const above = must(session, 'jar.get', { id: twenty }).batch;
  expect(refusalOf(session, 'batch.correct', { id: above, changes: { madeOn: '2026-01-23' } }).code).toBe('seed made later');
  must(session, 'batch.correct', { id: above, changes: { madeOn: '2026-01-22' } });
  expect(checkLedger(session.ledger.db, '2026-03-14')).toEqual([]);
}); // prettier-ignore

it('no figure is made of a day that nobody knows', () => {
  const { session, exact, last } = backfilled();
  const [{ id: line } = { id: '' }] = must(session, 'line.list', {}).lines;
  // How long its seed waited is not known: no such figure.
  const figures = JSON.stringify(must(session, 'judgement.jar', { jar: exact.jars[0] ?? '' }));
  expect(figures).not.toContain('days in the fridge');
  const told = must(session, 'judgement.line', { line }).batches.map(({ madeOn, label }) => [madeOn, label]);
  expect(told).toEqual([[null, 'about 6 Jan 2026'], ['2026-01-20', '20 Jan 2026'], [null, 'about 28 Jan 2026']]);
  // It may be offered, with its age as the range it is: 22 Jan and 4 Feb to 14 Mar are 51 and 38 days.
  const next = JSON.stringify(must(session, 'advice.next', { line: null }));
  expect(next).toContain('38 to 51 days');
  const drawing = must(session, 'family.drawing', { spacing: 'calendar' });
  expect([...drawing.x].every((x, i) => drawing.parent[i] === -1 || x > (drawing.x[drawing.parent[i] ?? 0] ?? 0))).toBe(true);
  expect(must(session, 'jar.get', { id: last }).figures.some((figure) => JSON.stringify(figure).includes('2026-01-28'))).toBe(false);
}); // prettier-ignore

it('goes with a hand-over, on a label and on the shelf as the range it is, counted from its first day', () => {
  const session = newSession();
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  const [jar = ''] = must(session, 'batch.record', about('2026-03-03', '2026-03-09', [plainJar('a', { seedings: [fromSource(source)], onShelf: true })])).jars;
  // Unopened jars are eaten within 14 days: from 3 March on until the 17th.
  const { about: told } = must(session, 'handOver.about', { jar, include: [] });
  expect(told).toMatchObject({ label: 'about 6 Mar a', madeOn: null, madeBetween: { from: '2026-03-03', to: '2026-03-09' }, seedBy: '2026-03-17' });
  const { items } = must(session, 'shelf.get', {});
  expect(items.map(({ label, madeOn, age }) => [label, madeOn, age])).toEqual([['about 6 Mar a', null, null]]);
  const { html } = must(session, 'label.sheet', { jars: [jar], kind: 'shelf', layout: LAYOUT });
  const words = [...html.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) => text).join(' ');
  expect(words).toContain('Made between 3 Mar 2026 and 9 Mar 2026');
}); // prettier-ignore
