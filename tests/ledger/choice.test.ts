// The choice of seed: kept with the advice as it stood, only from what is offered, undone as one act.
import { randomBytes } from 'node:crypto';
import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { NextReply } from '../../core/advice/shapes';
import { cases } from '../../core/demo/cases';
import { stillClock } from '../../main/ledger/clock';
import { idGenerator } from '../../main/ledger/ids';
import { migrations } from '../../main/ledger/migrations/index';
import { closeLedger, openLedger } from '../../main/ledger/open';
import type { Session } from '../../main/ledger/session';
import { must, newFile, newSession, NOW, openSession, refusalOf, smallFamily, stateOf } from './helpers';

const demo = (): Session => openSession(newFile(), 'demo', null);
const first = (session: Session) => {
  const [best] = must(session, 'advice.next', {}).ranking;
  if (!best) throw new Error('nothing is ranked');
  return best;
};

it('is kept with the ranking, its reasons, the model version and the parameters as they stood', () => {
  const session = demo();
  const advice = must(session, 'advice.next', {});
  const { jar, portion, label } = first(session);
  must(session, 'advice.choose', { jar, portion, why: 'the freshest of them' });
  const [kept] = must(session, 'advice.choices', {}).choices;
  expect(kept).toMatchObject({ jar, portion, label, place: 1, why: 'the freshest of them', line: null });
  expect(kept?.advice).toEqual(advice);
  expect(must(session, 'app.state', {}).undo).toBe(`chose ${label} to seed from next`);
});

it('stays as it was when the ledger moves on', () => {
  const session = demo();
  const jar = must(session, 'advice.next', {}).ranking.find(({ allowed, kind }) => allowed && kind === 'jar')?.jar ?? null; // prettier-ignore
  const { id } = must(session, 'advice.choose', { jar });
  const before = must(session, 'advice.choices', {}).choices[0]?.advice;
  must(session, 'jar.correct', { id: jar ?? '', changes: { onShelf: false } });
  expect(must(session, 'advice.next', {})).not.toEqual(before);
  expect(must(session, 'advice.choices', {}).choices).toMatchObject([{ id, advice: before }]);
});

it('is still read where it was kept before doubts were said', () => {
  const advice = must(demo(), 'advice.next', {});
  const before = { ...advice, ranking: advice.ranking.map(({ doubts: _doubts, ...ranked }) => ranked) };
  expect(NextReply.parse(before).ranking.every(({ doubts }) => doubts.length === 0)).toBe(true);
});

it('a fresh start can be chosen, for one line', () => {
  const session = demo();
  const [line] = must(session, 'family.get', {}).lines;
  must(session, 'advice.choose', { line: line?.id ?? '', jar: null });
  expect(must(session, 'advice.choices', { line: line?.id ?? '' }).choices).toMatchObject([
    { line: line?.id, jar: null, portion: null },
  ]);
});

it('a stop is never passed: every jar that is held, spoiled or stopped is refused with why', () => {
  const session = demo();
  const { ranking } = must(session, 'advice.next', {});
  const stopped = ranking.filter(({ allowed }) => !allowed);
  expect(stopped.length).toBeGreaterThan(0);
  const held = must(session, 'family.get', {}).jars.filter(({ cautions }) =>
    cautions.some(({ how }) => how.startsWith('on hold')),
  );
  expect(held).toHaveLength(cases.spoiled.onHold.length);
  const before = stateOf(session);
  for (const { jar, portion, stops } of stopped) {
    const refusal = refusalOf(session, 'advice.choose', { jar, portion });
    expect(refusal.code).toBe('stopped seed');
    expect(refusal.sentence).toContain(stops[0]?.says ?? 'no reason');
  }
  for (const { id } of held) {
    expect(['stopped seed', 'not offered']).toContain(refusalOf(session, 'advice.choose', { jar: id }).code);
  }
  expect(stateOf(session)).toBe(before);
});

it('what is not on the shelf is not offered', () => {
  const session = newSession();
  const { jars } = smallFamily(session);
  must(session, 'jar.correct', { id: jars[0], changes: { onShelf: false, goneOn: '2026-03-09' } });
  expect(refusalOf(session, 'advice.choose', { jar: jars[0] }).code).toBe('not offered');
});

it('undo takes it back, redo brings it back, also after a restart', () => {
  const file = newFile();
  const session = openSession(file, 'demo', null);
  const before = stateOf(session);
  const { jar, portion } = first(session);
  must(session, 'advice.choose', { jar, portion });
  const after = stateOf(session);
  must(session, 'act.undo', { act: null });
  expect(stateOf(session)).toBe(before);
  session.close();
  const again = openSession(file, 'open', null);
  must(again, 'act.redo', {});
  expect(stateOf(again)).toBe(after);
});

it('a ledger of the first version takes the table in and keeps all it holds', () => {
  const file = newFile();
  const clock = stillClock(NOW);
  const options = {
    clock,
    newId: idGenerator({ milliseconds: clock.milliseconds, random: randomBytes }),
    demo: false,
  };
  closeLedger(openLedger(file, { ...options, mode: 'create', migrations: migrations.slice(0, 1) }));
  const old = new Database(file);
  old.exec(`
    INSERT INTO act (uid, kind, at, subject) VALUES ('01a00000-0000-7000-8000-000000000001', 'source.save', '${NOW}', 'Blue Tin');
    UPDATE open_act SET act = 1 WHERE one = 1;
    INSERT INTO source (uid, name, strains) VALUES ('01a00000-0000-7000-8000-000000000002', 'Blue Tin', '[]');
    UPDATE open_act SET act = NULL WHERE one = 1;
  `);
  const tables = ['act', 'journal', 'source', 'ledger'];
  const held = (db: Database.Database) => tables.map((table) => db.prepare(`SELECT * FROM ${table}`).all());
  const before = held(old);
  old.close();
  const session = openSession(file);
  expect(session.ledger.db.pragma('user_version', { simple: true })).toBe(migrations.length);
  expect(held(session.ledger.db)).toEqual(before);
  expect(must(session, 'advice.choices', {}).choices).toEqual([]);
  expect(must(session, 'source.list', {}).sources.map(({ name }) => name)).toEqual(['Blue Tin']);
});
