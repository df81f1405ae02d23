// What the system is told of while the program runs, with the clock moved: each thing once; after a restart what fell due
// meanwhile, with how late. Invented.
import { expect, it } from 'vitest';
import { noticer, type Notice } from '../../main/notices';
import { batchOf, fromSource, must, newSession, plainJar, plainSource } from '../ledger/ledger-files';

it('tells of a look and of the take-out once each, and after a restart of what was missed', async () => {
  const session = newSession();
  session.setNow('2026-03-14T06:00:00+01:00');
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  const holds = [{ startedAt: '2026-03-14T06:00:00+01:00', endedAt: null, hours: 36, planned: null, probe: null, readings: [], note: null }]; // prettier-ignore
  must(session, 'batch.record', batchOf('2026-03-14', [plainJar('a', { seedings: [fromSource(source)], hold: 0 })], { holds })); // prettier-ignore
  let told: readonly string[] = [];
  let shown: Notice[] = [];
  // A new noticer is a program started anew; what was told is kept beside it.
  const start = () =>
    noticer({
      today: () => Promise.resolve(must(session, 'today.list', {}).items),
      told: () => told,
      keep: (ids) => (told = ids),
      show: (notice) => shown.push(notice),
    });
  const at = async (moment: string, look: () => Promise<void>): Promise<string[]> => {
    session.setNow(moment);
    shown = [];
    // Twice at once, as a change and the minute may fall together.
    await Promise.all([look(), look()]);
    return shown.map(({ title, body }) => `${title} ${body}`);
  };
  const look = start();
  expect(await at('2026-03-14T07:00:00+01:00', look)).toEqual([]);
  expect(await at('2026-03-14T12:00:00+01:00', look)).toEqual(['Look at 14 Mar by 18:00. 30 h left.']);
  expect(await at('2026-03-14T12:01:00+01:00', look)).toEqual([]);
  expect(await at('2026-03-14T12:02:00+01:00', start())).toEqual([]);
  // Not running for a day and a half.
  expect(await at('2026-03-15T21:10:00+01:00', start())).toEqual([
    'Take 14 Mar out. The take-out was due 3 h ago, at 18:00.',
  ]);
  expect(await at('2026-03-15T21:11:00+01:00', look)).toEqual([]);
  // Without a ledger of the keeper's own nothing is told.
  shown = [];
  await noticer({ today: () => Promise.resolve(null), told: () => [], keep: () => undefined, show: (one) => shown.push(one) })(); // prettier-ignore
  expect(shown).toEqual([]);
  session.close();
});
