// A caution lifted with a written reason stays lifted only for the spoilage that was known when the reason was written:
// words about foam after three weeks say nothing of black mould at take-out. Common practice, no source.
import { expect, it } from 'vitest';
import { spoilageGrew, spoilageOf } from '../../core/safety/signs';
import type { Outcome } from '../../core/ledger/records';
import { must, newFile, newSession, openSession, smallFamily, unseen } from './ledger-files';

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
