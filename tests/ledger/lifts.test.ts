// A caution lifted with a written reason stays lifted only for the spoilage that was known when the reason was written:
// words about foam after three weeks say nothing of black mould at take-out. Common practice, no source.
import { expect, it } from 'vitest';
import { spoilageGrew, spoilageOf } from '../../core/safety/signs';
import type { Outcome } from '../../core/ledger/records';
import { must, newFile, newSession, openSession, refusalOf, smallFamily, unseen } from './ledger-files';

const foam: Omit<Outcome, 'jar'> = {
  ...unseen,
  signs: ['foam'],
  seenAt: 'after opening',
  openedDays: 9,
};
const mould: Omit<Outcome, 'jar'> = { ...unseen, signs: ['foam', 'black', 'fuzz'], seenAt: 'take-out' };
const REASON = 'seeded long before it was opened, smells and looks clean';

function lifted(session = newSession()): {
  session: ReturnType<typeof newSession>;
  spoiled: string;
  child: string;
} {
  const { jars } = smallFamily(session);
  const [, spoiled, child] = jars;
  must(session, 'outcome.save', { jar: spoiled, outcome: foam, onShelf: null });
  must(session, 'caution.clear', { jar: child, of: spoiled, reason: REASON });
  expect(must(session, 'jar.get', { id: child }).view.caution).toBeNull();
  return { session, spoiled, child };
}

it('a jar goes set aside again when more is seen, and says by which words it was lifted before', () => {
  const { session, spoiled, child } = lifted();
  must(session, 'outcome.save', { jar: spoiled, outcome: mould, onShelf: null });
  const shown = must(session, 'jar.get', { id: child });
  expect(shown.view.caution).toBe('set aside');
  expect(shown.cautions).toMatchObject([{ cleared: false, reason: null, liftedBefore: REASON }]);
});

it('undoing what made it worse brings the lift back, and doing it again takes it away', () => {
  const { session, spoiled, child } = lifted();
  must(session, 'outcome.save', { jar: spoiled, outcome: mould, onShelf: null });
  must(session, 'act.undo', { act: null });
  expect(must(session, 'jar.get', { id: child })).toMatchObject({
    view: { caution: null },
    cautions: [{ cleared: true, reason: REASON, liftedBefore: null }],
  });
  must(session, 'act.redo', {});
  expect(must(session, 'jar.get', { id: child }).view.caution).toBe('set aside');
});

it('may be lifted anew, for what is known now', () => {
  const { session, spoiled, child } = lifted();
  must(session, 'outcome.save', { jar: spoiled, outcome: mould, onShelf: null });
  must(session, 'caution.clear', { jar: child, of: spoiled, reason: 'pH 4.2 by meter, opened and clean' });
  expect(must(session, 'jar.get', { id: child })).toMatchObject({
    view: { caution: null },
    cautions: [{ cleared: true, reason: 'pH 4.2 by meter, opened and clean', liftedBefore: null }],
  });
});

it('a word that is no sign changes nothing, nor does a sign that was taken back', () => {
  const { session, spoiled, child } = lifted();
  must(session, 'outcome.save', { jar: spoiled, outcome: { ...foam, note: 'lid was loose' }, onShelf: null });
  expect(must(session, 'jar.get', { id: child }).view.caution).toBeNull();
  must(session, 'outcome.save', { jar: spoiled, outcome: mould, onShelf: null });
  must(session, 'caution.clear', { jar: child, of: spoiled, reason: 'opened and clean' });
  must(session, 'outcome.save', { jar: spoiled, outcome: { ...mould, signs: ['foam', 'fuzz'] }, onShelf: null }); // prettier-ignore
  expect(must(session, 'jar.get', { id: child }).view.caution).toBeNull();
});

it('an outcome taken away and noted anew as it was is known already; noted worse, it is not', () => {
  const { session, spoiled, child } = lifted();
  must(session, 'outcome.save', { jar: spoiled, outcome: null, onShelf: null });
  must(session, 'outcome.save', { jar: spoiled, outcome: foam, onShelf: null });
  expect(must(session, 'jar.get', { id: child }).view.caution).toBeNull();
  must(session, 'outcome.save', { jar: spoiled, outcome: null, onShelf: null });
  must(session, 'outcome.save', { jar: spoiled, outcome: mould, onShelf: null });
  expect(must(session, 'jar.get', { id: child }).view.caution).toBe('set aside');
});

it('reads the same after the ledger was closed and opened', () => {
  const file = newFile();
  const { session, spoiled, child } = lifted(openSession(file, 'create'));
  must(session, 'outcome.save', { jar: spoiled, outcome: mould, onShelf: null });
  session.close();
  const again = openSession(file);
  expect(must(again, 'jar.get', { id: child }).cautions).toMatchObject([
    { cleared: false, liftedBefore: REASON },
  ]);
  again.close();
});

it.each([
  ['the same again', foam, foam, false],
  ['another sign', foam, { ...foam, signs: ['foam', 'pink'] }, true],
  ['one sign for another', foam, { ...foam, signs: ['red'] }, true],
  ['a sign fewer', mould, { ...mould, signs: ['black', 'fuzz'] }, false],
  ['called spoiled', foam, { ...foam, spoiledSaid: true }, true],
  ['seen at take-out instead', foam, { ...foam, seenAt: 'take-out', openedDays: null }, true],
  ['seen on an earlier day', foam, { ...foam, openedDays: 3 }, true],
  ['the day of opening no longer known', foam, { ...foam, openedDays: null }, true],
  ['not set besides', foam, { ...foam, setAtTakeOut: false }, true],
  ['not spoiled after all', foam, unseen, false],
  ['spoiled where nothing was known', unseen, foam, true],
  ['take-out said where nothing was', { ...mould, seenAt: null }, mould, false],
] as [string, Omit<Outcome, 'jar'>, Omit<Outcome, 'jar'>, boolean][])('%s', (_why, then, now, grew) => {
  expect(spoilageGrew(spoilageOf(then), spoilageOf(now))).toBe(grew);
});

it('one reason lifts as many jars as the keeper marks, in one act that one undo takes back; one wrong jar, and none is lifted', () => {
  const session = newSession();
  const { jars } = smallFamily(session);
  const [founder, spoiled, a, b] = jars;
  must(session, 'outcome.save', { jar: spoiled, outcome: mould, onShelf: null });
  const listed = must(session, 'caution.list', { of: spoiled });
  expect(listed.jars.map(({ id }) => id).toSorted()).toEqual([founder, a, b].toSorted());
  const stands = () => [a, b].map((jar) => must(session, 'jar.get', { id: jar }).cautions.map(({ cleared, reason }) => [cleared, reason]));
  const before = stands();
  expect(before).toEqual([[[false, null]], [[false, null]]]);
  expect(refusalOf(session, 'caution.clear', { jars: [a, spoiled], of: spoiled, reason: REASON }).code).toBe('condemned stays');
  expect(refusalOf(session, 'caution.clear', { jars: [a, b], of: spoiled, reason: ' ' }).code).toBe('invalid');
  expect(stands()).toEqual(before);
  must(session, 'caution.clear', { jars: [a, b, a], of: spoiled, reason: REASON });
  expect(stands()).toEqual([[[true, REASON]], [[true, REASON]]]);
  expect(must(session, 'caution.list', { of: spoiled }).jars.map(({ id }) => id)).toEqual([founder]);
  must(session, 'act.undo', { act: null });
  expect(stands()).toEqual(before);
}); // prettier-ignore
