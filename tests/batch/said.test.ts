// What is said of a recorded jar: worked-out amounts are rounded and say so, and what falls away with a spoiled jar.
import { describe, expect, it } from 'vitest';
import { setAsideSentence } from '../../core/says/safety-says';
import { printNoted, volumeKnown } from '../../core/quantities/printing';
import { unpickedSentence } from '../../renderer/batch/batch-entry';
import { holdsBecauseOf } from '../../renderer/batch/held-seeds';
import { fallingAway } from '../../renderer/batch/mistake-question';
import { rowWords } from '../../renderer/batch/row-words';

const metric = { volumes: 'metric', spoons: 'US' } as const;
const workedOut = { value: 990.71324034375, unit: 'mL', typed: null } as const;

describe('an amount beside what was noted', () => {
  it.each([
    [workedOut, 'about 991 mL'],
    [{ ...workedOut, typed: '991 ml' }, '991 ml'],
    [{ value: 946, unit: 'mL', typed: null }, '946 mL'],
    [{ value: 1500, unit: 'mL', typed: null }, '1.5 L'],
    [{ value: 12.4, unit: 'g', typed: null }, 'about 12 g'],
    [{ value: 10, unit: 'pieces', typed: null }, '10 pieces'],
  ] as const)('%o is "%s"', (amount, words) => expect(printNoted(amount, metric)).toBe(words));
  it('a final volume that was worked out says from what; one that was typed is said as known', () => {
    expect(volumeKnown('milk plus seed', workedOut)).toBe('worked out from milk plus seed');
    expect(volumeKnown('milk plus seed', { ...workedOut, typed: '991 ml' })).toBe('milk plus seed');
    expect(volumeKnown('measured', workedOut)).toBe('measured');
    expect(volumeKnown(null, workedOut)).toBeNull();
  });
});

const caution = (of: string, how: string, cleared = false) => ({
  of, how, cleared, ended: false, level: how.startsWith('look') ? 'look' as const : how.startsWith('set') ? 'set aside' as const : 'condemned' as const,
}); // prettier-ignore

it('what falls away with a spoiled jar is counted and named: its own cautions only, lifted ones left out', () => {
  const jars = [
    { id: 's', label: '1 Apr c', cautions: [caution('s', 'condemned: itself')] },
    { id: 'a', label: '8 Apr a', cautions: [caution('s', 'set aside: seeded by it')] },
    { id: 'b', label: '8 Apr b', cautions: [caution('s', 'set aside: seeded by it', true)] },
    { id: 'c', label: '15 Apr a', cautions: [caution('s', 'set aside: seeded by it, 2 steps down')] },
    { id: 'd', label: '25 Mar a', cautions: [caution('s', 'look: seeded it')] },
    { id: 'e', label: '2 Apr a', cautions: [caution('other', 'set aside: same hold')] },
  ];
  expect(fallingAway('s', jars)).toEqual([
    '2 jars are no longer set aside: 8 Apr a, 15 Apr a.',
    'The caution to look first falls away on one jar: 25 Mar a.',
  ]);
  expect(fallingAway('z', jars)).toEqual([]);
});

it('a set-aside seed names every spoiled jar behind it that still stands', () => {
  const because = holdsBecauseOf([
    { ...caution('s', 'set aside: seeded by it'), label: '1 Apr c' },
    { ...caution('t', 'set aside: same hold'), label: '8 Apr c' },
    { ...caution('u', 'set aside: same hold', true), label: '8 Apr d' },
    { ...caution('v', 'look: seeded it'), label: '15 Apr d' },
  ]);
  expect(setAsideSentence('8 Apr a', because)).toBe(
    '8 Apr a is set aside because of 1 Apr c and 8 Apr c, which spoiled.',
  );
});

it('text left in the picker says what it did not find', () =>
  expect(unpickedSentence('nonsuch ', false)).toMatch(/^No jar or product is called “nonsuch”\. /));

describe('a batch in the list', () => {
  const jar = (
    setWord: 'firm' | null,
    spoiled: boolean,
    caution: 'condemned' | 'set aside' | 'look' | null,
  ) => ({
    id: 'x',
    label: 'x',
    setWord,
    outcomeKnown: setWord !== null,
    generation: 2,
    atLeast: false,
    spoiled,
    caution,
  });
  const line = (...jars: ReturnType<typeof jar>[]): string =>
    rowWords({ jars })
      .map(({ says }) => says)
      .join(' · ');
  it('counts each jar once, the worst first', () => {
    expect(line(jar('firm', false, 'set aside'), jar('firm', true, 'condemned'))).toBe(
      '2 jars · 1 spoiled · 1 set aside',
    );
    expect(line(jar(null, true, 'set aside'))).toBe('one jar · 1 spoiled');
    expect(line(jar('firm', false, null), jar(null, false, 'look'))).toBe('2 jars · firm · 1 unknown');
    expect(line(jar(null, false, null))).toBe('one jar · outcome unknown');
    const planned = { ...jar(null, false, null), generation: null };
    expect(line(planned as never)).toBe('one jar · planned');
    expect(line(jar('firm', false, null), planned as never)).toBe('2 jars · firm · 1 only planned');
  });
  it('marks what must not be overlooked, and nothing else', () => {
    const marked = rowWords({
      jars: [jar('firm', true, 'condemned'), jar('firm', false, 'set aside'), jar('firm', false, null)],
    });
    expect(marked.filter(({ caution }) => caution).map(({ says }) => says)).toEqual([
      '1 spoiled',
      '1 set aside',
    ]);
  });
});
