// Slips of the pen that must not come in as something else: years, stray digits, amounts of two seeds, codes of products.
import { describe, expect, it } from 'vitest';
import { headingMeaning } from '../../core/notes/layout/headings';
import { read, sourceNames } from './read';

const HEAD = 'Date,Jar,Seed,Amount\n';
const START = '2026-02-20,a,10 capsules Blue Tin,\n';
const problemsOf = (text: string, answers: Record<string, string> = {}): string[] =>
  read(HEAD + text, { answers }).preview.problems.map(({ row, sentence }) => `${row} ${sentence}`);

describe('years and stray digits', () => {
  it.each(['1026-03-08', '20226-03-15', '3/8/1026', '3/8/20226', '8.3.1989', '8 Mar 20226', '2101-03-08', '2026-02-20-1'])(
    'the day %s can’t be right, and can be mended',
    (day) => {
      const text = `${START}${day},a,2026-02-20 a,3 tbsp\n`;
      const [first = '', ...more] = problemsOf(text);
      expect(first).toMatch(new RegExp(`^3 The day “${day}” can’t be right`));
      expect(more).toEqual([]);
      const mended = read(HEAD + text, { answers: { 'cell:3:Date': '2026-02-28' } });
      expect(mended.preview.problems).toEqual([]);
      expect(mended.byLine.get(3)?.madeOn).toBe('2026-02-28');
    },
  );

  it.each([
    ['1990-01-01', '1990-01-01'],
    ['2026-02-27', '2026-02-27'],
    ['27 Feb 2026, 19:00', '2026-02-27'],
    ['27 Feb', '2026-02-27'],
  ])('the day %s is one', (day, madeOn) => {
    expect(read(`${HEAD}${START}"${day}",b,10 capsules Blue Tin,\n`).byLine.get(3)?.madeOn).toBe(madeOn);
  });

  it('is said of a label, too, and of a seed it is not found', () => {
    const label = read('Label,Seed\n2026-02-20 a,10 capsules Blue Tin\n1026-02-28 a,2026-02-20 a\n').preview;
    expect(label.problems.map(({ row, sentence }) => `${row} ${sentence}`)).toEqual([
      expect.stringMatching(/^3 The day “1026-02-28 a” can’t be right/),
    ]);
    expect(problemsOf(`${START}2026-02-28,a,1026-02-20 a,3 tbsp\n`)).toEqual([
      expect.stringMatching(/^3 The seed “1026-02-20 a” was not found/),
    ]);
  });
});

describe('several amounts beside one seed', () => {
  const seeds = (seed: string, answers: Record<string, string> = {}) => {
    const got = read(`${HEAD}${START}2026-02-28,a,"${seed}",2 tbsp + 1 tbsp\n`, { answers });
    return {
      amounts: got.byLine.get(3)?.seedings.map(({ amount }) => amount && Math.round(amount.value)),
      asked: got.preview.questions.filter(({ id }) => id === 'sum:3'),
    };
  };

  it('are added up where the words name one seed', () => {
    // 3 US tablespoons of 14.787 mL (NIST Handbook 44, appendix C).
    expect(seeds('2026-02-20 a')).toEqual({ amounts: [44], asked: [] });
  });

  it('are asked about where the words hint at a second one', () => {
    const open = seeds('2026-02-20 a (and a bit of the rest)');
    expect(open.amounts).toEqual([null]);
    expect(open.asked[0]?.choices.map(({ value }) => value)).toEqual(['one', 'several']);
    expect(seeds('2026-02-20 a (and a bit of the rest)', { 'sum:3': 'one' })).toEqual({ amounts: [44], asked: [] });
    expect(seeds('2026-02-20 a (and a bit of the rest)', { 'sum:3': 'several' })).toEqual({ amounts: [null], asked: [] });
  });
});

describe('“Product code” as a heading', () => {
  it('is neither what seeded the jar nor its letter', () => {
    expect(headingMeaning('Product code')).toBeNull();
    expect(headingMeaning('Product')?.meaning).toBe('seed');
    expect(headingMeaning('Code')?.meaning).toBe('jar');
    const got = read('Date,Jar,Seed,Product code\n2026-02-20,a,10 capsules Blue Tin,QX-77\n');
    expect(got.preview.columns.at(-1)?.meaning).toBeNull();
    const jar = got.byLine.get(2);
    expect(jar && [sourceNames(jar), jar.fields.note]).toEqual([['Blue Tin'], 'Product code: QX-77']);
  });
});
