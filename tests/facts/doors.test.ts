// Calls for what facts could say and no call did: contradictions decided, readings left out, days that are only a range, and
// what interrupted the holds of a batch.
import { describe, expect, it } from 'vitest';
import { momentText } from '../../core/ledger/stored-moments';
import { handOver, type HandedRows } from '../../main/ledger/facts/hand-over';
import { mergeRows } from '../../main/ledger/facts/merge';
import type { Session } from '../../main/session';
import { checkLedger } from '../rules/ledger-check';
import {
  batchOf,
  fromJar,
  must,
  newSession,
  plainJar,
  refusalOf,
  smallFamily,
  stateOf,
} from '../ledger/ledger-files';

const hold = (session: Session) => {
  const { jars, batch } = must(session, 'batch.record', batchOf('2026-03-10', [plainJar('a')]));
  const [id = '', series = ''] = must(session, 'facts.record', {
    facts: [
      { kind: 'hold', ref: 'h', began: '2026-03-10T18:00:00+01:00' },
      { kind: 'series', ref: 's', hold: 'h', place: 'bath' },
      { kind: 'stay', jar: jars[0] ?? '', hold: 'h' },
    ],
  }).ids;
  return { jar: jars[0] ?? '', batch, id, series };
};

describe('readings that a keeper leaves out', () => {
  const at = (hour: number): string => `2026-03-10T${hour}:00:00+01:00`;
  const readings = [19, 20, 21].map((hour) => ({ at: at(hour), c: hour === 20 ? 90 : 38 }));

  it('stay where they are, count no more, and count again by undo or by being told so', () => {
    const session = newSession();
    const { series, batch } = hold(session);
    const counted = (): number[] =>
      must(session, 'batch.get', { id: batch }).holds[0]?.readings.map(
        ({ temperature }) => temperature.value,
      ) ?? [];
    const told = () => must(session, 'readings.list', { series }).readings;
    must(session, 'readings.add', { series, readings });
    const before = stateOf(session);
    const left = must(session, 'readings.leaveOut', { series, at: [at(20)] });
    expect(left.changed).toBe(1);
    expect(told()).toEqual(readings.map((one) => ({ ...one, leftOut: one.c === 90 })));
    expect(counted()).toEqual([38, 38]);
    expect(refusalOf(session, 'readings.leaveOut', { series, at: [at(20)] }).code).toBe('nothing changed');
    expect(refusalOf(session, 'readings.leaveOut', { series, at: [at(22)] }).sentence).toContain(
      'Nothing was read at',
    );
    // The same export again, more of it, and a correction of the hold: what was left out stays left out.
    expect(
      must(session, 'readings.add', { series, readings: [...readings, { at: at(22), c: 38 }] }).added,
    ).toBe(1);
    const { holds } = must(session, 'batch.get', { id: batch });
    must(session, 'hold.correct', { id: holds[0]?.id ?? '', changes: { note: 'the box by the stove' } });
    expect([told().length, counted()]).toEqual([4, [38, 38, 38]]);
    must(session, 'readings.leaveOut', { series, at: [at(20)], leftOut: false });
    expect(counted()).toEqual([38, 90, 38, 38]);
    for (let acts = 0; acts < 4; acts++) must(session, 'act.undo', { act: null });
    expect(stateOf(session)).toBe(before);
    const { acts } = must(session, 'history.list', { record: null, before: null, limit: 20 });
    expect(acts.map(({ says }) => says).join('\n')).toContain('changed which readings count of ');
  });
});

describe('a batch', () => {
  it('tells when warmth was missing in its holds', () => {
    const session = newSession();
    const { batch, id } = hold(session);
    expect(must(session, 'batch.get', { id: batch }).interruptions).toEqual([]);
    must(session, 'facts.record', {
      facts: [{ kind: 'interruption', hold: id, what: 'power', hours: 3, wasSet: false }],
    });
    expect(must(session, 'batch.get', { id: batch }).interruptions).toMatchObject([
      { hold: id, what: 'power', began: null, ended: null, hours: 3, wasSet: false },
    ]);
  });
});

it('correcting what is noted beside 900 readings writes the note, and no reading again', () => {
  const session = newSession();
  const { series, batch } = hold(session);
  const readings = Array.from({ length: 900 }, (_, minute) => ({
    at: momentText(Date.parse('2026-03-10T19:00:00+01:00') / 1000 + 60 * minute, 60),
    c: 38 + (minute % 10) / 10,
  }));
  must(session, 'readings.add', { series, readings });
  const { db } = session.ledger;
  const bytes = (): number =>
    ['page_count', 'page_size'].reduce(
      (product, name) => product * Number(db.pragma(name, { simple: true })),
      1,
    );
  const before = bytes();
  const id = must(session, 'batch.get', { id: batch }).holds[0]?.id ?? '';
  for (let at = 0; at < 5; at++)
    must(session, 'hold.correct', { id, changes: { note: `by the stove, ${at}` } });
  // What five images of the row with its readings would take, one in twenty of it.
  expect(bytes() - before).toBeLessThan((5 * JSON.stringify(readings).length) / 20);
  expect(must(session, 'readings.list', { series }).readings).toHaveLength(900);
});

describe('a day known only as a range', () => {
  const lost = (session: Session, from: string, to: string) =>
    must(session, 'jar.lost', { madeOn: null, madeFrom: from, madeTo: to, label: null, note: null }).jar;
  const wrong = (session: Session) => checkLedger(session.ledger.db, '2026-03-14');

  it('is told of a jar that nobody can name, which may then have seeds and seed, as far as the range allows', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const jar = lost(session, '2026-03-03', '2026-03-07');
    must(session, 'seeding.set', { jar, seedings: [fromJar(jars[0])] });
    must(session, 'batch.record', batchOf('2026-03-06', [plainJar('x', { seedings: [fromJar(jar)] })]));
    const before = stateOf(session);
    const refused = (day: string) =>
      refusalOf(session, 'batch.record', batchOf(day, [plainJar('y', { seedings: [fromJar(jar)] })])).code;
    expect(refused('2026-03-02')).toBe('seed made later');
    expect(refusalOf(session, 'seeding.set', { jar, seedings: [fromJar(jars[2])] }).code).toBe(
      'seed made later',
    );
    // Back to itself through another day: no day of its range forbids it, and it is a loop all the same.
    const five = jars[1];
    expect(refusalOf(session, 'seeding.set', { jar: jars[0], seedings: [fromJar(jar)] }).code).toBe('own ancestor'); // prettier-ignore
    must(session, 'seeding.set', { jar: five, seedings: [fromJar(jar)] });
    expect(refusalOf(session, 'seeding.set', { jar, seedings: [fromJar(five)] }).code).toBe('own ancestor');
    expect(stateOf(session)).not.toBe(before);
    expect(wrong(session)).toEqual([]);
  });

  it('is corrected, undone, and gives way to the day once that is known', () => {
    const session = newSession();
    const jar = lost(session, '2026-01-10', '2026-01-20');
    const { batch, madeBetween } = must(session, 'jar.get', { id: jar });
    expect(madeBetween).toEqual({ from: '2026-01-10', to: '2026-01-20' });
    const range = (madeFrom: string | null, madeTo: string | null) => ({ id: batch, madeFrom, madeTo });
    expect(refusalOf(session, 'batch.about', range('2026-01-10', null)).code).toBe('range of days');
    expect(refusalOf(session, 'batch.about', range('2026-01-10', '2026-01-09')).code).toBe('range of days');
    must(session, 'batch.record', batchOf('2026-01-15', [plainJar('x', { seedings: [fromJar(jar)] })]));
    const before = stateOf(session);
    expect(refusalOf(session, 'batch.about', range('2026-01-16', '2026-01-20')).code).toBe('seed made later');
    must(session, 'batch.about', range('2026-01-01', '2026-01-15'));
    must(session, 'act.undo', { act: null });
    expect(stateOf(session)).toBe(before);
    must(session, 'batch.correct', { id: batch, changes: { madeOn: '2026-01-12' } });
    expect(must(session, 'jar.get', { id: jar }).madeBetween).toBeNull();
    const made = must(session, 'batch.record', batchOf('2026-02-20', [plainJar('q')])).batch;
    expect(refusalOf(session, 'batch.about', { id: made, madeFrom: null, madeTo: null }).sentence).toContain('A jar that is made is made on a day, or between two days'); // prettier-ignore
    expect(wrong(session)).toEqual([]);
  });
});

describe('a contradiction that came in', () => {
  /** Two ledgers of one jar, whose note each of them has changed. */
  function contradicting() {
    const [from, into] = [newSession(), newSession()];
    const { jars } = smallFamily(from);
    const handed = () =>
      JSON.parse(
        JSON.stringify(handOver(from.ledger.rows, from.ledger.rows.keyOf('jar', jars[1]))),
      ) as HandedRows;
    const take = () => {
      const { acts, rows } = into.ledger;
      acts.run('ledger.merge', 'a hand-over', null, (act) => mergeRows(rows, act, handed()));
    };
    take();
    const vessel = (session: Session, name: string) =>
      must(session, 'jar.correct', { id: jars[1], changes: { vessel: name } });
    vessel(into, 'blue jar');
    vessel(from, 'old crock');
    take();
    return { into, jar: jars[1] };
  }
  const vesselOf = (session: Session, jar: string) => must(session, 'jar.get', { id: jar }).record.jar.vessel;

  it('waits until the keeper decides, and the decision can be undone', () => {
    const { into, jar } = contradicting();
    const [waiting] = must(into, 'received.list', {}).received;
    expect(waiting).toMatchObject({ record: jar, kind: 'jar', differs: ['vessel'], decided: null });
    expect([waiting?.ours.vessel, waiting?.theirs.vessel]).toEqual(['blue jar', 'old crock']);
    const id = waiting?.id ?? '';
    const before = stateOf(into);
    must(into, 'received.decide', { id, decided: 'took received', why: 'she was there' });
    expect(vesselOf(into, jar)).toBe('old crock');
    expect(refusalOf(into, 'received.decide', { id, decided: 'kept own' }).sentence).toContain(
      'decided already',
    );
    must(into, 'act.undo', { act: null });
    expect(stateOf(into)).toBe(before);
    must(into, 'received.decide', { id, decided: 'kept own' });
    expect(vesselOf(into, jar)).toBe('blue jar');
    expect(must(into, 'received.list', {}).received[0]?.decided).toBe('kept own');
    const { acts } = must(into, 'history.list', { record: null, before: null, limit: 1 });
    expect(acts[0]?.says).toContain('decided about jar');
  });
});
