// Words about a batch, a hold or a photograph that the keeper has read as *discard* are about each jar in it. Invented.
import { expect, it } from 'vitest';
import type { Session } from '../../main/session';
import { batchOf, fromJar, must, newFile, openSession, plainJar, smallFamily } from '../ledger/ledger-files';

const spoiled = (session: Session): string[] =>
  must(session, 'family.get', {}).jars.flatMap((jar) => (jar.spoiled ? [jar.label] : []));

/** A family with 10 Mar a, b and c, of which a and b stood in one hold, b twice. */
function ledger(file = newFile()) {
  const session = openSession(file, 'create');
  const { jars } = smallFamily(session);
  const seedings = [fromJar(jars[1])];
  const made = must(
    session,
    'batch.record',
    batchOf('2026-03-10', ['a', 'b', 'c'].map((letter) => plainJar(letter, { seedings }))), // prettier-ignore
  );
  const [a = '', b = ''] = made.jars;
  const [hold = ''] = must(session, 'facts.record', {
    facts: [
      { kind: 'hold', ref: 'night' },
      { kind: 'stay', jar: a, hold: 'night' },
      { kind: 'stay', jar: b, hold: 'night', came: '2026-03-10T18:00:00+01:00', went: '2026-03-10T20:00:00+01:00' },
      { kind: 'stay', jar: b, hold: 'night', came: '2026-03-10T21:00:00+01:00', went: '2026-03-11T06:00:00+01:00' },
    ],
    why: null,
  }).ids; // prettier-ignore
  return { session, file, batch: made.batch, hold, jars: made.jars };
}

const words = (session: Session, about: object, readAs: string | null): string =>
  must(session, 'facts.record', {
    facts: [{ kind: 'remark', ...about, text: 'all of it smelled wrong', readAs }] as never,
    why: null,
  }).ids[0] ?? '';

it.each([
  ['batch', ['10 Mar a', '10 Mar b', '10 Mar c']],
  ['hold', ['10 Mar a', '10 Mar b']],
] as const)('on a %s reach all its jars, at once and when the ledger is read again', (kind, labels) => {
  const { session, file, ...ids } = ledger();
  const remark = words(session, { [kind]: ids[kind] }, 'discard');
  expect(spoiled(session)).toEqual(labels);
  expect(must(session, 'jar.get', { id: ids.jars[0] ?? '' }).record.outcome?.spoiledSaid).toBe(true);
  session.close();
  const again = openSession(file);
  expect(spoiled(again)).toEqual(labels);
  must(again, 'facts.correct', { kind: 'remark', id: remark, changes: { readAs: 'fine' }, why: null });
  expect(spoiled(again)).toEqual([]);
  again.close();
});

it('that are read otherwise reach none; unread, plain words of spoilage stop each jar until they are answered', () => {
  const { session, batch, hold } = ledger();
  for (const readAs of ['fine', 'look']) {
    words(session, { batch }, readAs);
    words(session, { hold }, readAs);
  }
  expect(spoiled(session)).toEqual([]);
  words(session, { hold }, null);
  expect(must(session, 'family.get', {}).jars.flatMap(({ label, discard }) => (discard === 'remark' ? [label] : []))).toEqual(['10 Mar a', '10 Mar b']); // prettier-ignore
});

it('on a photograph reach its jar', () => {
  const { session, jars } = ledger();
  const { acts, rows } = session.ledger;
  acts.mustRun('photograph.attach' as never, '', null, (act) =>
    act.insert('photograph', {
      jar: rows.keyOf('jar', jars[1] ?? ''), sha: 'a'.repeat(64), width: 1, height: 1,
    }),
  ); // prettier-ignore
  const [picture] = must(session, 'photograph.list', { jar: jars[1] ?? '' }).photographs;
  words(session, { photograph: picture?.id }, 'discard');
  expect(spoiled(session)).toEqual(['10 Mar b']);
});
