// The choice of seed: kept with the advice as it stood, only from what is offered, undone as one act.
import { expect, it } from 'vitest';
import { NextReply } from '../../core/shapes/advice-replies';
import { cases } from '../../core/demo/cases';
import type { Session } from '../../main/session';
import { demoSession, must, newSession, openSession, refusalOf, smallFamily, stateOf } from './ledger-files';

const first = (session: Session) => {
  const [best] = must(session, 'advice.next', {}).ranking;
  if (!best) throw new Error('nothing is ranked');
  return best;
};

it('is kept with the ranking, its reasons, the model version and the parameters as they stood', () => {
  const session = demoSession();
  const advice = must(session, 'advice.next', {});
  const { jar, portion, label } = first(session);
  must(session, 'advice.choose', { jar, portion, why: 'the freshest of them' });
  const [kept] = must(session, 'advice.choices', {}).choices;
  expect(kept).toMatchObject({ jar, portion, label, place: 1, why: 'the freshest of them', line: null });
  expect(kept?.advice).toEqual(advice);
  expect(must(session, 'app.state', {}).undo).toBe(`chose ${label} to seed from next`);
});

it('stays as it was when the ledger moves on', () => {
  const session = demoSession();
  const jar = must(session, 'advice.next', {}).ranking.find(({ allowed, kind }) => allowed && kind === 'jar')?.jar ?? null; // prettier-ignore
  const { id } = must(session, 'advice.choose', { jar });
  const before = must(session, 'advice.choices', {}).choices[0]?.advice;
  must(session, 'jar.correct', { id: jar ?? '', changes: { onShelf: false } });
  expect(must(session, 'advice.next', {})).not.toEqual(before);
  expect(must(session, 'advice.choices', {}).choices).toMatchObject([{ id, advice: before }]);
});

it('is still read where it was kept before doubts were said', () => {
  const advice = must(demoSession(), 'advice.next', {});
  const before = { ...advice, ranking: advice.ranking.map(({ doubts: _doubts, ...ranked }) => ranked) };
  expect(NextReply.parse(before).ranking.every(({ doubts }) => doubts.length === 0)).toBe(true);
});

it('a fresh start can be chosen, for one line', () => {
  const session = demoSession();
  const [line] = must(session, 'family.get', {}).lines;
  must(session, 'advice.choose', { line: line?.id ?? '', jar: null });
  expect(must(session, 'advice.choices', { line: line?.id ?? '' }).choices).toMatchObject([
    { line: line?.id, jar: null, portion: null },
  ]);
});

it('a stop is never passed: every jar that is held, spoiled or stopped is refused with why', () => {
  const session = demoSession();
  const { ranking } = must(session, 'advice.next', {});
  const stopped = ranking.filter(({ allowed }) => !allowed);
  expect(stopped.length).toBeGreaterThan(0);
  const held = must(session, 'family.get', {}).jars.filter(({ cautions }) =>
    cautions.some(({ how }) => how.startsWith('set aside')),
  );
  expect(held).toHaveLength(cases.spoiled.setAside.length);
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
  const session = demoSession();
  const { file } = session.ledger;
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
