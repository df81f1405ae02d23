// Two weak batches in a row on a jar's path suggest a fresh start; what is missing, spoiled or firm on the way decides.
import { describe, expect, it } from 'vitest';
import { suggestFreshStarts } from '../../core/advice/two-weak-in-a-row';
import { freshStartSays } from '../../core/says/fresh-start-says';
import type { SetWord } from '../../core/ledger/records';
import { familyOf, type Told } from './short-families';

type Step = SetWord | 'missing' | 'spoiled';
interface Mate extends Partial<Told> {
  readonly key: number;
  readonly set: Step;
}

const day = (i: number): string => `2025-11-${String(i + 1).padStart(2, '0')}`;

/** A path of jars 1, 2, 3 …, one a day, each from the one before and in a batch of its own; and other jars beside it. */
function suggest(path: readonly Step[], mates: readonly Mate[] = []) {
  const jars: Mate[] = [
    ...path.map((set, i): Mate => ({
      key: i + 1,
      batch: i + 1,
      madeOn: day(i),
      label: `${i + 1} Nov a`,
      set,
      from: [i === 0 ? { source: 1, pieces: 8 } : { fromJar: i, volumeMl: 40 }],
    })),
    ...mates.map((mate) => ({ from: [{ fromJar: 1, volumeMl: 40 }], ...mate })),
  ];
  const words = new Map(jars.map(({ key, set }) => [key, set]));
  const family = familyOf(jars.map(({ set, ...jar }) => ({ ...jar, spoiled: set === 'spoiled' })));
  return suggestFreshStarts(family, {
    setWord: (key) => {
      const word = words.get(key);
      // A spoiled jar has a set word all the same; it must not count.
      return word === 'spoiled' ? 'runny' : word === 'missing' || word === undefined ? null : word;
    },
  }).map((one) => ({ ...one, ...freshStartSays(one, one.line === null ? null : one.line === 1 ? 'Heron' : `line ${one.line}`) })); // prettier-ignore
}

const weakJars = (...args: Parameters<typeof suggest>): number[] =>
  suggest(...args)[0]?.weak.map(({ jar }) => jar) ?? [];

describe('on a path', () => {
  it.each<[string, Step[], number[]]>([
    ['two weak in a row', ['firm', 'soft', 'runny'], [2, 3]],
    ['one weak', ['firm', 'firm', 'runny'], []],
    ['weak, then spoonable: the row is broken', ['soft', 'soft', 'spoonable'], []],
    ['weak, firm, weak: not in a row', ['soft', 'firm', 'soft'], []],
    ['missing between: neither counts nor breaks', ['firm', 'soft', 'missing', 'soft'], [2, 4]],
    ['missing at the end', ['firm', 'soft', 'soft', 'missing'], [2, 3]],
    ['missing alone is not weak', ['firm', 'missing', 'missing', 'soft'], []],
    ['spoiled is left out', ['firm', 'soft', 'spoiled', 'soft'], [2, 4]],
    ['spoiled alone is not weak', ['firm', 'spoiled', 'spoiled'], []],
    ['a longer row is told whole', ['firm', 'soft', 'runny', 'soft'], [2, 3, 4]],
    ['weak from the start', ['soft', 'runny'], [1, 2]],
  ])('%s', (_, path, expected) => {
    expect(weakJars(path)).toEqual(expected);
  });
});

describe('the unit is the batch', () => {
  const mate = (key: number, set: Step, from = 1): Mate => ({ key, batch: 3, madeOn: day(2), label: `3 Nov ${key}`, set, from: [{ fromJar: from, volumeMl: 40 }] }); // prettier-ignore
  const path: Step[] = ['firm', 'soft', 'soft'];

  it('a weak jar whose batch was mostly firm is not a weak batch', () => {
    expect(weakJars(path, [mate(11, 'firm'), mate(12, 'firm')])).toEqual([]);
  });
  it('half weak is enough; missing and spoiled mates are not asked', () => {
    expect(weakJars(path, [mate(11, 'firm')])).toEqual([2, 3]);
    expect(weakJars(path, [mate(11, 'firm'), mate(12, 'missing'), mate(13, 'spoiled')])).toEqual([2, 3]);
  });
  it('mates of another line are not asked', () => {
    const other: Mate = { key: 20, batch: 20, madeOn: day(0), set: 'firm', from: [{ source: 1, pieces: 8 }] };
    expect(weakJars(path, [other, mate(11, 'firm', 20), mate(12, 'firm', 20)])).toEqual([2, 3]);
  });
});

it('speaks once for a line, of a jar of its newest day, and once for each line that calls for it', () => {
  const old: Mate = {
    key: 30,
    batch: 30,
    madeOn: day(2),
    set: 'soft',
    label: '3 Nov x',
    from: [{ fromJar: 2, volumeMl: 40 }],
  };
  expect(suggest(['firm', 'soft', 'soft', 'soft'], [old]).map(({ jar }) => jar)).toEqual([4]);
  // The line went on firm elsewhere: an old weak end says nothing.
  expect(suggest(['firm', 'soft', 'firm', 'firm'], [old])).toEqual([]);
  const others: Mate[] = [
    { key: 40, batch: 40, madeOn: day(0), set: 'soft', label: '1 Nov q', from: [{ source: 1, pieces: 8 }] },
    {
      key: 41,
      batch: 41,
      madeOn: day(5),
      set: 'runny',
      label: '6 Nov q',
      from: [{ fromJar: 40, volumeMl: 40 }],
    },
  ];
  expect(suggest(['soft', 'soft'], others).map(({ line, jar }) => [line, jar])).toEqual([[1, 2], [40, 41]]); // prettier-ignore
});

it('walks along the deepest seed of a mixed jar', () => {
  const mixed: Mate = { key: 50, batch: 50, madeOn: day(9), set: 'soft', label: '10 Nov m', from: [{ fromJar: 1, volumeMl: 400 }, { fromJar: 3, volumeMl: 1 }] }; // prettier-ignore
  expect(weakJars(['firm', 'firm', 'soft'], [mixed])).toEqual([3, 50]);
});

it('says it calmly in one sentence, with jars and days, and what it was not corrected for', () => {
  const [suggestion] = suggest(['firm', 'soft', 'missing', 'runny']);
  expect(suggestion?.sentence).toBe(
    'In Heron, 2 Nov a (soft) and 4 Nov a (runny) were weak one after the other: a fresh start from your sources may be worth planning.',
  );
  expect(suggestion?.reasons).toEqual([
    '2 Nov a, made 2 Nov 2025, set soft; 1 of 1 recorded jar of its batch in this line was weak (runny or soft).',
    '4 Nov a, made 4 Nov 2025, set runny; 1 of 1 recorded jar of its batch in this line was weak (runny or soft).',
    'Passed over, because nothing is recorded of how it set: 3 Nov a.',
    'Not corrected for warmth or fibre: a cool hold or something stirred in can thin a jar too.',
  ]);
});

it('never speaks of safety, of dilution or of age', () => {
  const text = JSON.stringify(suggest(['soft', 'runny', 'soft', 'soft', 'soft', 'soft']));
  expect(text).not.toMatch(/safe|dilut|aged|ageing|old culture|worn/i);
});
