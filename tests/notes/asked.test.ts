// What a sheet leaves open is asked with the answers it can have, and each answer settles it.
import { describe, expect, it } from 'vitest';
import { readNotes, type NotesInput } from '../../core/notes/notes-door';
import { EMPTY, hash } from './read';

/** Without generations, so that the ledger may have sources. */
function read(text: string, more: Partial<NotesInput> = {}) {
  const reading = readNotes({
    file: 'notes.csv', text, mapping: {}, answers: {}, today: '2026-03-01', preferences: { spoons: 'US' }, ledger: EMPTY, hash, ...more,
  }); // prettier-ignore
  if (!reading.ok) throw new Error(`refused: ${reading.code}`);
  return reading;
}

const CAPSULES = { name: 'Blue Tin', culture: false, form: 'capsules' } as const;
const OTHERS = { name: 'Meadow Pot', culture: false, form: 'capsules' } as const;
const sheet = (seed: string): string => `date,jar,seed,amount\n2026-02-01,a,${seed}\n2026-02-08,a,2026-02-01 a,45 ml\n`;

describe('a product told by its form alone', () => {
  it.each(['capsules,5', 'caps,5', '5 capsules,', 'the capsules,5', 'Kapseln,5'])('%s: the only one there is', (seed) => {
    const { plan, preview } = read(sheet(seed), { ledger: { ...EMPTY, sources: [CAPSULES] } });
    expect(plan.sources).toEqual([]);
    expect(plan.jars[0]?.seedings.map(({ source, amount }) => [source, amount?.value])).toEqual([['Blue Tin', 5]]);
    expect(preview.assumptions.some(({ sentence }) => /taken as Blue Tin, the only capsules/.test(sentence))).toBe(true);
  });

  it('one of two is asked for, and the answer brings the row in', () => {
    const ledger = { ...EMPTY, sources: [CAPSULES, OTHERS] };
    const open = read(sheet('5 caps,'), { ledger });
    expect(open.preview.questions.map(({ id, choices }) => [id, choices.map(({ value }) => value)])).toEqual([
      ['which:2', ['Blue Tin', 'Meadow Pot']],
    ]);
    expect(open.plan.jars).toEqual([]);
    const told = read(sheet('5 caps,'), { ledger, answers: { 'which:2': 'Meadow Pot' } });
    expect(told.plan.jars.map(({ seedings }) => seedings[0]?.source)).toEqual(['Meadow Pot', null]);
  });

  it.each(['capsules,5', 'a sachet,'])('%s: with none of it the row comes in all the same', (seed) => {
    expect(read(sheet(seed)).plan.jars).toHaveLength(2);
  });
});

describe('bare figures that can be no one unit', () => {
  const text = 'date,jar,seed,amount\n2026-02-01,a,Blue Tin,5 capsules\n2026-02-05,a,2026-02-01 a,3\n2026-02-09,a,2026-02-05 a,3 tbsp\n2026-02-12,a,2026-02-09 a,45\n';
  it('are asked about once, with both rows', () => {
    const asked = read(text).preview.questions.filter(({ blocks }) => blocks);
    expect(asked.map(({ id }) => id)).toEqual(['unit:amount']);
    expect(asked[0]?.sentence).toMatch(/“3” \(row 3\) and “45” \(row 5\)/);
  });
  it('are read by their size, or all in one unit, as it is answered', () => {
    const ml = (answer: string): (number | undefined)[] =>
      read(text, { answers: { 'unit:amount': answer } }).plan.jars.map(({ seedings }) => Number(seedings[0]?.amount?.value.toFixed(1)));
    // A US tablespoon is 14.78676478125 mL (NIST Handbook 44).
    expect(ml('by size')).toEqual([5, 44.4, 44.4, 45]);
    expect(ml('mL')).toEqual([5, 3, 44.4, 45]);
  });
});

it('a day that would lie after today the other way round settles the order of all', () => {
  const text = 'Made,Jar,Seed\n3/2/26,a,8 caps Blue Tin\n3/9/26,a,3/2 a\n';
  const days = (today: string): unknown => {
    const { plan, preview } = read(text, { today });
    return [preview.questions.filter(({ blocks }) => blocks).length, plan.jars.map(({ madeOn }) => madeOn)];
  };
  expect(days('2026-03-20')).toEqual([0, ['2026-03-02', '2026-03-09']]);
  expect(read(text, { today: '2026-03-20' }).preview.assumptions.some(({ sentence }) => /would lie after today/.test(sentence))).toBe(true);
  expect(read(text, { today: '2027-03-20' }).preview.questions.map(({ id }) => id)).toContain('day order');
});

it('figures that may be hours or degrees are asked about, and kept until it is answered', () => {
  const text = 'Made,Jar,Seed,Xyzzy\n2026-02-01,a,8 caps Blue Tin,38\n2026-02-08,a,2026-02-01 a,37\n';
  const open = read(text);
  expect(open.preview.questions.map(({ id }) => id)).toContain('means:Xyzzy');
  expect(open.plan.jars.map(({ hold, fields }) => [hold, fields.note])).toEqual([[null, 'Xyzzy: 38'], [null, 'Xyzzy: 37']]);
  const answered = read(text, { answers: { 'means:Xyzzy': 'temperature' } });
  expect(answered.plan.jars.map(({ hold }) => hold?.planned?.value)).toEqual([38, 37]);
});

describe('a column that nobody is known to tell', () => {
  it('of seeds is asked for, among those that may, and the answer brings the rows in', () => {
    const text = 'Made,Pot no,Brr,Mood\n2026-02-01,a,8 of the blue ones,good\n2026-02-08,a,first of all,bad\n';
    const open = read(text);
    expect(open.preview.questions.map(({ id, blocks, choices }) => [id, blocks, choices.map(({ value }) => value)])).toEqual([
      ['which seeds', true, ['Brr', 'Mood']],
    ]);
    expect(open.plan.jars).toEqual([]);
    const told = read(text, { answers: { 'which seeds': 'Brr' } });
    expect(told.preview.columns.map(({ meaning }) => meaning)).toEqual(['date', 'jar', 'seed', null]);
    expect(told.preview.questions.filter(({ blocks }) => blocks)).toEqual([]);
  });
});
