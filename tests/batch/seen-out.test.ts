// A look while a jar stands in warmth does not tell how it came out: the page goes on asking, and the look is kept when that is
// answered. Invented.
import { expect, it } from 'vitest';
import { isSeenOut } from '../../core/ledger/seen-out';
import { batchOf, fromSource, must, newSession, plainJar, plainSource, unseen } from '../ledger/ledger-files';

it('how a jar came out is known by what was seen of it then, not by an early look or a power cut', () => {
  const early = { ...unseen, earlyCheckHours: 12, earlySet: 'starting' as const, earlySour: true, earlyPh: 5.2 };
  expect(isSeenOut(null)).toBe(false);
  expect(isSeenOut(unseen)).toBe(false);
  expect(isSeenOut({ ...early, powerCut: true, powerCutHours: 2, note: 'a windy night' })).toBe(false);
  expect(isSeenOut({ ...early, setAtTakeOut: false })).toBe(true);
  expect(isSeenOut({ ...early, signs: ['fuzz'] })).toBe(true);
  expect(isSeenOut({ ...early, ph: 4.3 })).toBe(true);
  expect(isSeenOut({ ...early, sour: true })).toBe(true);
}); // prettier-ignore

it('after an early look a jar is drawn as one of which nobody knows how it came out', () => {
  const session = newSession();
  session.setNow('2026-03-14T06:00:00+01:00');
  const seedings = [fromSource(must(session, 'source.save', plainSource('Blue Tin')).id)];
  const holds = [{ startedAt: '2026-03-14T06:00:00+01:00', endedAt: null, hours: 36, planned: null, probe: null, readings: [], note: null }];
  const { jars } = must(session, 'batch.record', batchOf('2026-03-14', [plainJar('a', { seedings, hold: 0 })], { holds }));
  const [{ hold } = { hold: '' }] = must(session, 'hold.now', {}).holds;
  session.setNow('2026-03-14T18:00:00+01:00');
  must(session, 'hold.look', { hold, jars: [{ jar: jars[0] ?? '', set: 'starting', sour: true, ph: null }] });
  expect(must(session, 'jar.get', { id: jars[0] ?? '' }).view).toMatchObject({ outcomeKnown: false });
  session.close();
}); // prettier-ignore
