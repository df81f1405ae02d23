// Several acts undone as one: what stands on them is named and goes too, one redo brings all of it back.
import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Session } from '../../main/session';
import {
  batchOf,
  fromJar,
  must,
  newSession,
  plainJar,
  refusalOf,
  smallFamily,
  stateOf,
} from './ledger-files';

/** Acts that stand, newest first. */
const actsOf = (session: Session) =>
  must(session, 'history.list', { record: null, before: null, limit: 50 }).acts.filter(({ undone, kind }) => !undone && kind !== 'act.undo'); // prettier-ignore

it('refuses without leave, names what stands on them, and undoes all of it as one act', () => {
  const session = newSession();
  const { jars } = smallFamily(session);
  const whole = stateOf(session);
  const [third, second, first] = actsOf(session);
  const two = [second?.act ?? '', first?.act ?? ''];
  expect(must(session, 'act.standing', { acts: two })).toEqual({
    acts: [second, first].map((one) => ({ act: one?.act, says: one?.says })),
    later: [{ act: third?.act, says: third?.says }],
  });
  expect(refusalOf(session, 'act.undoMany', { acts: two })).toMatchObject({
    code: 'stands on it',
    params: { later: [third?.says] },
  });
  expect(stateOf(session)).toBe(whole);
  const before = must(session, 'history.list', { record: null, before: null, limit: 50 }).acts.length;
  must(session, 'act.undoMany', { acts: two, later: true });
  expect(must(session, 'family.get', {}).jars).toEqual([]);
  const now = must(session, 'history.list', { record: null, before: null, limit: 50 }).acts;
  expect(now.length).toBe(before + 1);
  expect(now.filter(({ undone }) => undone).map(({ act }) => act)).toEqual([
    third?.act,
    second?.act,
    first?.act,
  ]);
  must(session, 'act.redo', {});
  expect(stateOf(session)).toBe(whole);
  expect(must(session, 'family.get', {}).jars.map(({ id }) => id)).toEqual(jars);
});

it('comes out as undoing them one by one does, whatever is chosen', () => {
  fc.assert(
    fc.property(fc.uniqueArray(fc.nat(5), { minLength: 1, maxLength: 3 }), (chosen) => {
      const sessions = [newSession(), newSession()] as const;
      for (const session of sessions) {
        const { jars } = smallFamily(session);
        must(session, 'jar.correct', { id: jars[1], changes: { vessel: 'quart jar' } });
        must(
          session,
          'batch.record',
          batchOf('2026-03-12', [plainJar('a', { seedings: [fromJar(jars[1])] })]),
        );
      }
      const [together, single] = sessions;
      const acts = actsOf(together).map(({ act }) => act);
      const asked = chosen.map((at) => acts[at % acts.length] ?? '');
      const { acts: own, later } = must(together, 'act.standing', { acts: asked });
      must(together, 'act.undoMany', { acts: asked, later: true });
      const gone = new Set([...own, ...later].map(({ act }) => acts.indexOf(act)));
      for (const [at, { act }] of actsOf(single).entries())
        if (gone.has(at)) must(single, 'act.undo', { act });
      const left = (session: Session) =>
        must(session, 'family.get', {}).jars.map(({ label, seeds, setWord }) => [
          label,
          seeds.length,
          setWord,
        ]);
      expect(left(together)).toEqual(left(single));
    }),
    { numRuns: 3 },
  );
});

it('is found by the words of its sentence, its day or its reason, newest first, page by page', () => {
  const session = newSession();
  const { jars } = smallFamily(session);
  must(session, 'jar.correct', {
    id: jars[1],
    changes: { vessel: 'quart jar' },
    why: 'It was the tall one.',
  });
  const found = (text: string, before: string | null = null, limit = 50) =>
    must(session, 'history.list', { record: null, before, limit, text }).acts.map(({ says }) => says);
  expect(found('5 mar a')).toEqual(['corrected 5 Mar a', 'recorded 5 Mar a']);
  expect(found('TALL')).toEqual(['corrected 5 Mar a']);
  expect(found('14 mar 2026')).toHaveLength(5);
  expect(found('no such word')).toEqual([]);
  const [newest] = must(session, 'history.list', {
    record: null,
    before: null,
    limit: 1,
    text: 'recorded',
  }).acts;
  expect(found('recorded', newest?.act ?? null, 1)).toEqual(['recorded 5 Mar a']);
  expect(newest?.jars.map(({ label }) => label)).toEqual(['9 Mar a', '9 Mar b']);
});
