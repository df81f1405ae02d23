// What jars are called and how they are found, as people type it.
import { describe, expect, it } from 'vitest';
import {
  dayLabel,
  daysInWords,
  findJars,
  jarLabel,
  lineName,
  lineWords,
  readLabel,
  type Findable,
  type LabelParts,
} from '../../core/lineage/labels';
import type { JarFacts } from '../../main/ledger/derived/family-of-rows';
import { LabelGroups } from '../../main/ledger/label-groups';

/** What a ledger with these jars calls each. */
function labelsOf(jars: readonly LabelParts[]): string[] {
  const groups = new LabelGroups();
  for (const [key, jar] of jars.entries()) groups.add({ ...jar, key, state: 'made' } as JarFacts);
  return jars.map((jar) => jarLabel(jar, groups.needsYear(jar)));
}

const parts = (madeOn: string | null, letter: string, word: string | null = null) => ({
  madeOn,
  word,
  letter,
});

it('prints a label: day, word if any, letter; the year only where it is needed', () => {
  expect(jarLabel(parts('2026-03-14', 'B'), false)).toBe('14 Mar b');
  expect(jarLabel(parts('2026-03-04', 'b', 'plain'), false)).toBe('4 Mar plain b');
  expect(jarLabel(parts('2026-03-14', 'b'), true)).toBe('14 Mar 2026 b');
  expect(jarLabel(parts(null, 'a'), false)).toBe('lost a');
  expect(dayLabel('2025-10-15', true)).toBe('15 Oct 2025');
});

it('writes the year on exactly the jars that another year has the like of, in any case of letters', () => {
  const labels = labelsOf([
    parts('2025-03-14', 'b'),
    parts('2026-03-14', 'B'),
    parts('2026-03-14', 'c'),
    parts('2026-03-14', 'b', 'plain'),
    parts('2026-03-14', 'b'),
  ]);
  expect(labels).toEqual(['14 Mar 2025 b', '14 Mar 2026 b', '14 Mar c', '14 Mar plain b', '14 Mar 2026 b']);
});

it('calls a line by its founding batch’s word, else by its day', () => {
  expect(lineName({ madeOn: '2025-10-15', word: ' Heron ' })).toBe('Heron');
  expect(lineName({ madeOn: '2025-10-15', word: null })).toBe('15 Oct 2025');
  expect(lineName({ madeOn: '2025-10-15', word: 'plain' }, ' Heron ')).toBe('Heron');
});

describe('finding', () => {
  const jars: Findable[] = [
    ['2025-03-14', 'b', null], ['2026-03-14', 'a', null], ['2026-03-14', 'b', null], ['2026-04-03', 'a', 'plain'],
    ['2026-03-04', 'a', 'oat bran'], [null, 'a', null],
  ].map(([madeOn, letter, word], key) => ({ key, madeOn: madeOn as string | null, letter: letter as string, word: word as string | null, label: '' }));
  const labels = labelsOf(jars);
  const known = jars.map((jar, at) => ({ ...jar, label: labels[at] as string }));
  const found = (text: string, dates: 'day first' | 'month first' = 'day first', notAfter: string | null = null): string[] =>
    findJars(known, text, { dates, limit: 10, notAfter }).map((jar) => jar.label);

  it.each([
    '14 Mar b', '14 mar B', 'mar 14 b', 'March 14 b', '14/3 b', '3/14 b', '14.3. b', '14. Mar b', 'b 14th mar', '14mar b', '3/14b', '14.3.b', 'MAR,14,b',
  ])('"%s" is 14 Mar b, the newer year first', (text) => {
    expect(found(text)).toEqual(['14 Mar 2026 b', '14 Mar 2025 b']);
    expect(found(text, 'month first')).toEqual(['14 Mar 2026 b', '14 Mar 2025 b']);
  });

  it.each(['14 Mar 2025 b', '14 mar 25 b', '2025-03-14 b', '3/14/25 b', '14.3.2025 b', '14/3/2025 B'])('"%s" has a year', (text) => {
    expect(found(text)[0]).toBe('14 Mar 2025 b');
  });

  it('tries both orders of "3/4", the preferred one first', () => {
    expect(found('3/4', 'day first')).toEqual(['3 Apr plain a', '4 Mar oat bran a']);
    expect(found('3/4', 'month first')).toEqual(['4 Mar oat bran a', '3 Apr plain a']);
  });

  it('finds by part: a day, a month, a word begun, a letter', () => {
    expect(found('14 mar')).toEqual(['14 Mar a', '14 Mar 2026 b', '14 Mar 2025 b']);
    expect(found('apr')).toEqual(['3 Apr plain a']);
    expect(found('pla')).toEqual(['3 Apr plain a']);
    expect(found('bran')).toEqual(['4 Mar oat bran a']);
    expect(found('lost')).toEqual(['lost a']);
    expect(found('b')[0]).toBe('14 Mar 2026 b');
    expect(found('2025')).toEqual(['14 Mar 2025 b']);
    expect(found('zebra')).toEqual([]);
  });

  it('leaves out jars made after a day, keeps those of unknown day', () => {
    expect(found('', 'day first', '2026-03-10')).toEqual(['4 Mar oat bran a', '14 Mar 2025 b', 'lost a']);
  });

  it('gives no more than asked for', () => {
    expect(findJars(known, '', { dates: 'day first', limit: 2, notAfter: null })).toHaveLength(2);
  });
}); // prettier-ignore

it('reads no day out of what can’t be one', () => {
  expect(readLabel('31/31 b', 'day first')).toMatchObject({ days: [], letter: 'b' });
  expect(readLabel('14 b', 'day first')).toMatchObject({ days: [], words: ['14'] });
});

it('names a line in a sentence by its word, else as the line of its day', () => {
  expect(lineWords('Heron')).toBe('Heron');
  expect(lineWords('15 Oct 2025')).toBe('the line of 15 Oct 2025');
  expect(lineWords('a day not known')).toBe('the line of a day not known');
});

it('days in a sentence are in words; names of files and other numbers stay', () => {
  expect(daysInWords('made on 2026-03-14, after 2025-12-01.')).toBe('made on 14 Mar 2026, after 1 Dec 2025.');
  for (const kept of ['jarline-2026-03-14.sqlite', '2026-03-14.csv', '2026-13-14', '12026-03-14'])
    expect(daysInWords(kept)).toBe(kept);
});
