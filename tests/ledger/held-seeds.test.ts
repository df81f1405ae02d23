// A set-aside jar as seed, told to the ledger by any caller: only with a reason, which the history keeps. Common practice,
// no source.
import { beforeEach, expect, it } from 'vitest';
import type { Session } from '../../main/session';
import { batchOf, fromJar, must, newSession, plainJar, refusalOf, smallFamily, stateOf, unseen } from './ledger-files'; // prettier-ignore

const TODAY = '2026-03-14';
const pink = { ...unseen, signs: ['pink' as const] };
const why = 'Seed was taken before it was opened.';
let session: Session;
let held: string;
let clean: string;
beforeEach(() => {
  session = newSession();
  // 5 Mar a spoils, so 9 Mar a and b are set aside; 1 Mar a, which seeded it, is only to be looked at.
  const { jars } = smallFamily(session);
  must(session, 'outcome.save', { jar: jars[1], outcome: pink, onShelf: false });
  [clean, held] = [jars[0], jars[2]];
});

const newJar = (letter: string, seed: string) => plainJar(letter, { seedings: [fromJar(seed)] });
const heldBatch = () => batchOf(TODAY, [newJar('a', held)]);

it.each([null, undefined, '', '  ', 'no'])('is refused where the reason is %o, and nothing is recorded', (reason) => {
  const before = stateOf(session);
  const refused = refusalOf(session, 'batch.record', { ...heldBatch(), why: reason });
  expect(refused.code).toBe('seed set aside');
  expect(refused.sentence).toBe(
    '9 Mar a is set aside because of 5 Mar a, which spoiled. Nothing is seeded from it unless you write down why it is all right to use. When in doubt, take another jar.',
  );
  expect(stateOf(session)).toBe(before);
}); // prettier-ignore

it('is taken with a reason, which the history keeps; the hold stays and reaches what it seeded', () => {
  const { jars } = must(session, 'batch.record', { ...heldBatch(), why });
  expect(must(session, 'history.list', { record: null, before: null, limit: 1 }).acts[0]).toMatchObject({
    why,
  });
  for (const id of [held, jars[0] ?? '']) {
    expect(must(session, 'jar.get', { id }).view.caution).toBe('set aside');
  }
});

it('is refused in one more jar and in a corrected seed too; a seed that stood before is history', () => {
  const { batch, jars } = must(session, 'batch.record', batchOf(TODAY, [newJar('a', clean)]));
  const [jar = ''] = jars;
  const { hold: _hold, ...more } = newJar('b', held);
  const another = { batch, jar: { ...more, hold: null }, sameLabelMeant: false };
  expect(refusalOf(session, 'batch.addJar', another).code).toBe('seed set aside');
  must(session, 'batch.addJar', { ...another, why });
  expect(refusalOf(session, 'seeding.set', { jar, seedings: [fromJar(held)] }).code).toBe('seed set aside');
  must(session, 'seeding.set', { jar, seedings: [fromJar(held)], why });
  must(session, 'seeding.set', { jar, seedings: [fromJar(held, 60), fromJar(clean)] });
});

it('asks for nothing where the hold was lifted, and nothing for a jar that is only to be looked at', () => {
  const [caution] = must(session, 'jar.get', { id: held }).cautions;
  must(session, 'caution.clear', { jar: held, of: caution?.of ?? '', reason: why });
  must(session, 'batch.record', heldBatch());
  expect(must(session, 'jar.get', { id: clean }).view.caution).toBe('look');
  must(session, 'batch.record', batchOf(TODAY, [newJar('b', clean)]));
});
