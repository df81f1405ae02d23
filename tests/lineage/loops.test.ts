// No jar can descend from itself or from a jar made later, however the attempt comes in; the sentence names the loop.
import { expect, it } from 'vitest';
import { changeFamily, FamilyRefused, type FamilyChange } from '../../core/lineage/family';
import { refusalSentence } from '../../core/sentences';
import { plainSeeding } from '../families';
import { familyOf } from './short-families';

const family = familyOf([
  { key: 1, label: '15 Oct a', madeOn: '2025-10-15', from: [{ source: 1, pieces: 8 }] },
  { key: 2, label: '19 Oct a', madeOn: '2025-10-19', from: [{ fromJar: 1, volumeMl: 40 }] },
  { key: 3, label: '23 Oct a', madeOn: '2025-10-23', from: [{ fromJar: 2, volumeMl: 40 }] },
  { key: 4, label: 'lost a', madeOn: null, lost: true },
]);

function refused(change: FamilyChange): { code: string; sentence: string } {
  try {
    changeFamily(family, change);
  } catch (error) {
    if (error instanceof FamilyRefused)
      return { code: error.refusal.code, sentence: refusalSentence(error.refusal) };
    throw error;
  }
  throw new Error('was let in');
}

const seed = (jar: number, fromJar: number): FamilyChange => ({
  seedings: [{ jar, seedings: [plainSeeding({ key: 50, jar, fromJar })] }],
});

const moved = (key: number, madeOn: string): FamilyChange => ({ jars: [{ ...family.jar(key), madeOn }] });

it('a jar can’t seed itself', () => {
  expect(refused(seed(2, 2))).toEqual({
    code: 'own ancestor',
    sentence: '19 Oct a would descend from itself: 19 Oct a → 19 Oct a. Choose another seed.',
  });
});

it('a jar can’t be seeded by what descends from it, and the loop is named whole', () => {
  const { code, sentence } = refused(seed(1, 3));
  expect(code).toBe('own ancestor');
  expect(sentence).toMatch(/: (.*)\. Choose/);
  const loop = /: (.*)\. Choose/.exec(sentence)?.[1]?.split(' → ') ?? [];
  expect(loop[0]).toBe(loop.at(-1));
  expect(new Set(loop)).toEqual(new Set(['15 Oct a', '19 Oct a', '23 Oct a']));
  for (let i = 0; i + 1 < loop.length; i++) {
    // Each is said before what it seeds, in the family as it would be.
    expect([['15 Oct a', '19 Oct a'], ['19 Oct a', '23 Oct a'], ['23 Oct a', '15 Oct a']]).toContainEqual(loop.slice(i, i + 2)); // prettier-ignore
  }
});

it('a loop through a jar of unknown day is refused too', () => {
  const first = changeFamily(family, seed(4, 3)).family;
  expect(() => changeFamily(first, seed(2, 4))).toThrow(FamilyRefused);
});

it('a seed made on a later day is refused, also when a date is corrected; the same day is allowed', () => {
  expect(refused(moved(2, '2025-10-24'))).toEqual({
    code: 'seed made later',
    sentence:
      '19 Oct a was made on 24 Oct 2025, after 23 Oct a (23 Oct 2025), so it can’t have seeded it. Correct a date or choose another seed.',
  });
  expect(refused(moved(2, '2025-10-14')).code).toBe('seed made later');
  expect(() => changeFamily(family, moved(2, '2025-10-23'))).not.toThrow();
  expect(() => changeFamily(family, moved(2, '2025-10-15'))).not.toThrow();
});

it('two dates corrected in one act are judged together', () => {
  const jars = [
    { ...family.jar(2), madeOn: '2025-11-19' },
    { ...family.jar(3), madeOn: '2025-11-23' },
  ];
  expect(changeFamily(family, { jars }).family.jar(3).madeOn).toBe('2025-11-23');
});
