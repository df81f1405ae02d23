// Warmth that failed is told of a hold, and stands against each jar that was in it then. Invented ledger, asked through the calls.
import { expect, it } from 'vitest';
import type { Input } from '../../core/contract';
import type { Session } from '../../main/session';
import { batchOf, fromJar, must, newSession, plainJar, smallFamily, unseen } from '../ledger/ledger-files';

const at = (day: number, time: string): string => `2026-03-${String(day).padStart(2, '0')}T${time}:00+01:00`;
const SET = {
  ...unseen,
  seenAt: 'take-out',
  setAtTakeOut: true,
  setWord: 'firm',
  ph: 4.3,
  phHow: 'meter',
} as const;

type Facts = Input<'facts.record'>['facts'];
type Stays = readonly { came?: string; went?: string }[];

/** Jars made on 9 March, each with its stay in one hold of 9 March 18:00 to 11 March 06:00. */
function held(stays: Stays, times: object = { began: at(9, '18:00'), ended: at(11, '06:00') }) {
  const session = newSession();
  const { jars: family } = smallFamily(session);
  const letters = ['d', 'e', 'f', 'g'].slice(0, stays.length);
  const { jars } = must(
    session,
    'batch.record',
    batchOf(
      '2026-03-09',
      letters.map((letter) => plainJar(letter, { seedings: [fromJar(family[1])] })),
    ),
  );
  const [hold = ''] = record(session, [
    { kind: 'hold', ref: 'night', ...times },
    ...jars.map((jar, index) => ({ kind: 'stay' as const, jar, hold: 'night', ...stays[index] })),
  ]);
  return { session, jars, hold };
}

const record = (session: Session, facts: Facts): string[] =>
  must(session, 'facts.record', { facts, why: null }).ids;
const against = (session: Session, jar = ''): string =>
  must(session, 'judgement.jar', { jar }).asSeed.join(' ');
const doubted = (session: Session, jar = ''): readonly string[] | undefined =>
  must(session, 'advice.next', { line: null }).ranking.find((one) => one.jar === jar)?.doubts;
const see = (session: Session, jar = '', more: object = {}): void =>
  void must(session, 'outcome.save', { jar, outcome: { ...SET, ...more }, onShelf: true });

it('counts for each jar that stood in the hold then, and for no other', () => {
  const { session, jars, hold } = held([
    {},
    { came: at(9, '18:00'), went: at(10, '01:00') },
    { came: at(10, '04:00') },
    { went: at(10, '03:00') },
  ]);
  for (const jar of jars) see(session, jar);
  for (const jar of jars) expect(against(session, jar)).toBe('');
  record(session, [
    { kind: 'interruption', hold, what: 'power', began: at(10, '02:00'), ended: at(10, '04:00') },
  ]);
  const [all, before, after, half] = jars.map((jar) => against(session, jar));
  expect(all).toMatch(/The power failed during the hold, for 2 hours/);
  expect([before, after]).toEqual(['', '']);
  expect(half).toMatch(/The power failed during the hold, for an hour/);
  // None of them tells of it itself, and one that was not there hears it from no other.
  expect(must(session, 'jar.get', { id: jars[0] ?? '' }).record.outcome).toMatchObject({ powerCut: null });
  expect(doubted(session, jars[0])?.join(' ')).toMatch(/The power failed/);
  expect(doubted(session, jars[1])).toEqual([]);
});

it('sums hours, and says none where those of one are not known', () => {
  const { session, jars, hold } = held([{}]);
  see(session, jars[0]);
  record(session, [
    { kind: 'interruption', hold, what: 'power', began: at(10, '02:00'), ended: at(10, '04:00') },
    { kind: 'interruption', hold, what: 'power', hours: 1.5 },
  ]);
  expect(against(session, jars[0])).toMatch(/The power failed during the hold, for 3\.5 hours/);
  const [open = ''] = record(session, [{ kind: 'interruption', hold, what: 'power' }]);
  expect(against(session, jars[0])).toMatch(/The power failed during the hold\. /);
  must(session, 'facts.remove', { kind: 'interruption', id: open, why: null });
  expect(against(session, jars[0])).toMatch(/for 3\.5 hours/);
});

it('without times counts for all its jars, and in a hold without times for all the same', () => {
  for (const times of [undefined, { hours: 36 }]) {
    const { session, jars, hold } = held(times ? [{}, {}] : [{ went: at(10, '01:00') }, {}], times);
    for (const jar of jars) see(session, jar);
    record(session, [{ kind: 'interruption', hold, what: 'heater', hours: 3 }]);
    for (const jar of jars)
      expect(against(session, jar)).toMatch(/heater failed during the hold, for 3 hours/);
  }
});

it('counts for a jar of which nothing was observed, and its outcome stays unknown', () => {
  const { session, jars, hold } = held([{}]);
  record(session, [{ kind: 'interruption', hold, what: 'power', hours: 5 }]);
  expect(against(session, jars[0])).toMatch(/The power failed during the hold, for 5 hours/);
  const { view, record: told } = must(session, 'jar.get', { id: jars[0] ?? '' });
  expect(view).toMatchObject({ outcomeKnown: false, setWord: null });
  expect(told.outcome).toBe(null);
});

it('never unsays the jar’s own answer', () => {
  const { session, jars, hold } = held([{}, {}]);
  see(session, jars[0], { powerCut: false });
  see(session, jars[1], { powerCut: true, powerCutHours: 7 });
  record(session, [{ kind: 'interruption', hold, what: 'power', hours: 5 }]);
  expect(against(session, jars[0])).toBe('');
  expect(against(session, jars[1])).toMatch(/for 7 hours/);
  expect(against(session, jars[1])).not.toMatch(/for 5 hours/);
});

it('is handed down: what descends from such a jar is looked at first', () => {
  const { session, jars, hold } = held([{}]);
  see(session, jars[0]);
  const next = must(
    session,
    'batch.record',
    batchOf('2026-03-11', [plainJar('a', { seedings: [fromJar(jars[0] ?? '')], outcome: SET })]),
  );
  expect(against(session, next.jars[0])).toBe('');
  record(session, [{ kind: 'interruption', hold, what: 'heater', hours: 5 }]);
  expect(against(session, next.jars[0])).toMatch(/9 Mar d.*heater.*for 5 hours/);
});
