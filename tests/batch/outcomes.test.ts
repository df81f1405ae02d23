// Several jars looked at together: one answer for all, one act. That a pH lies between 2 and 9: common practice, no source.
import { expect, it } from 'vitest';
import { NEUTRAL_PREFERENCES } from '../../core/ledger/default-preferences';
import { makeReader } from '../../renderer/parts/reading';
import { Taking } from '../../renderer/parts/taking';
import { makeWriter } from '../../renderer/parts/use-reader';
import { nothingTyped, phTyped, readSeen, seenOf, setTyped } from '../../renderer/batch/outcomes-text';
import { batchOf, fromSource, must, newFile, openSession, plainJar, plainSource, refusalOf, unseen } from '../ledger/ledger-files'; // prettier-ignore

const WELL = { ...unseen, setAtTakeOut: true, sour: true, powerCut: false, seenAt: 'take-out' as const };

it('what is said of several jars is one act, undone as one, and refused whole', () => {
  const session = openSession(newFile(), 'create', '2026-05-20T10:00:00+02:00');
  const tin = must(session, 'source.save', plainSource('Blue Tin')).id;
  const { batch, jars } = must(session, 'batch.record', batchOf('2026-05-14', ['a', 'b', 'c'].map((one) => plainJar(one, { seedings: [fromSource(tin)] })))); // prettier-ignore
  const seen = () =>
    must(session, 'batch.get', { id: batch }).jars.map(({ outcome }) => outcome?.setWord ?? null);
  const outcomes = (['firm', 'soft', 'runny'] as const).map((setWord, at) => ({ jar: jars[at] ?? '', outcome: { ...WELL, setWord }, onShelf: null })); // prettier-ignore
  must(session, 'outcome.save', { outcomes });
  expect(seen()).toEqual(['firm', 'soft', 'runny']);
  must(session, 'act.undo', { act: null });
  expect(seen()).toEqual([null, null, null]);
  const unknown = { ...outcomes[2]!, jar: '019a0000-0000-7000-8000-000000000001' };
  refusalOf(session, 'outcome.save', { outcomes: [outcomes[0]!, unknown] });
  expect(seen()).toEqual([null, null, null]);
});

it('two figures are a pH with its point, and p is spoonable', () => {
  expect(['43', '4.3', '438', '4', '10', '4,3'].map(phTyped)).toEqual([
    '4.3',
    '4.3',
    '4.38',
    '4',
    '10',
    '4,3',
  ]);
  expect(['p', 's', 'P', 'spoonable'].map(setTyped)).toEqual(['spoonable', 's', 'spoonable', 'spoonable']);
});

it('words of spoilage are asked about, and whatever is answered is recorded with the jar', () => {
  const reader = makeReader(NEUTRAL_PREFERENCES, '2026-03-20', () => 'Z');
  const read = (answer: ReturnType<typeof seenOf>['answer']) => {
    const jars = { x: { ...seenOf(nothingTyped, 'x'), set: 'firm', note: 'a pink spot on top', answer } };
    return readSeen({ ...nothingTyped, allWell: true, jars }, 'x', [], reader, makeWriter(NEUTRAL_PREFERENCES), new Taking()); // prettier-ignore
  };
  expect(read(null).asks.length).toBe(1);
  const spoiled = read({ spoiled: true });
  expect(spoiled.asks).toEqual([]);
  expect(spoiled.gate.verdict).toBe('discard');
  expect(spoiled.outcome).toMatchObject({ signs: ['pink'], note: 'a pink spot on top', setWord: 'firm' });
  const fine = read({ what: 'a berry' });
  expect(fine.readAs).toBe('fine');
  expect(fine.outcome.note).toContain('a berry');
});
