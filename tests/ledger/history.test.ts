// The history in plain words: what each change was, days in the keeper's order, amounts as they were typed.
import { expect, it } from 'vitest';
import type { Reply } from '../../core/contract';
import type { Session } from '../../main/session';
import { batchOf, fromJar, must, newSession, plainJar, smallFamily, unseen } from './ledger-files';

type Act = Reply<'history.list'>['acts'][number];
const lastAct = (session: Session): Act => {
  const [act] = must(session, 'history.list', { record: null, before: null, limit: 1 }).acts;
  if (!act) throw new Error('no act');
  return act;
};
const told = (session: Session): string[] =>
  lastAct(session).changes.map(({ label, field, before, after }) =>
    field === null ? `${label}, added: ${after}` : `${label}, ${field}: ${before} → ${after}`,
  );

it('a correction reads as one: field, before, after', () => {
  const session = newSession();
  const { jars } = smallFamily(session);
  const saw = (setWord: 'soft' | 'firm', powerCut: boolean | null): void =>
    void must(session, 'outcome.save', {
      jar: jars[0], outcome: { ...unseen, setWord, powerCut }, onShelf: null,
    }); // prettier-ignore
  saw('soft', null);
  expect(told(session)).toEqual(['outcome of 1 Mar a, added: set word: soft']);
  saw('firm', false);
  expect(told(session)).toEqual([
    'outcome of 1 Mar a, set word: soft → firm',
    'outcome of 1 Mar a, power cut during the hold: null → no',
  ]);
});

it('amounts stay as they were typed, and days follow the keeper’s order', () => {
  const session = newSession();
  const { jars } = smallFamily(session);
  must(session, 'jar.correct', {
    id: jars[0],
    changes: {
      finalVolume: { value: 940, unit: 'mL', typed: '0,94 l' },
      goneOn: '2026-03-12',
      onShelf: false,
    },
  });
  const changes = (day: string): string[] => [
    '1 Mar a, final volume: 1 qt → 0,94 l',
    '1 Mar a, on the shelf: null → no',
    `1 Mar a, gone on: null → ${day}`,
  ];
  expect(told(session)).toEqual(changes('12 Mar 2026'));
  const { preferences } = must(session, 'app.state', {});
  const act = lastAct(session).act;
  must(session, 'preferences.save', { ...preferences, dates: 'month first' });
  const { acts } = must(session, 'history.list', { record: null, before: null, limit: 5 });
  expect(acts.find((one) => one.act === act)?.changes.at(-1)?.after).toBe('Mar 12, 2026');
});

it('a recorded batch tells what it is made of, and what seeded it by name', () => {
  const session = newSession();
  const { jars } = smallFamily(session);
  const portion = must(session, 'portion.save', {
    portion: {
      id: null, jar: jars[2], part: null, place: 'freezer', pieces: 4, amount: null, keptOn: '2026-03-10', goneOn: null,
      reserve: true, note: null,
    },
  }).id; // prettier-ignore
  expect(told(session)).toEqual([
    'portion of 9 Mar a, added: where it is kept: freezer; pieces: 4; kept since: 10 Mar 2026; kept back as seed: yes',
  ]);
  const hold = {
    startedAt: '2026-03-13T18:30:00+01:00', endedAt: null, hours: null, planned: { value: 38.33, unit: '°C' as const, typed: '101 F' },
    probe: null, readings: [], note: null,
  }; // prettier-ignore
  const seedings = [{ ...fromJar(jars[2]), portion }];
  must(
    session,
    'batch.record',
    batchOf('2026-03-13', [plainJar('a', { seedings, hold: 0 })], { holds: [hold] }),
  );
  expect(told(session)).toEqual([
    'batch of 13 Mar 2026, added: made on: 13 Mar 2026',
    'time in warmth, added: started: 13 Mar 2026 18:30; planned warmth: 101 F',
    '13 Mar a, added: hold: hold 1; final volume: 1 qt',
    'seed of 13 Mar a, added: from: 9 Mar a; from what was kept: freezer cubes; how much: 45 ml',
  ]);
});
