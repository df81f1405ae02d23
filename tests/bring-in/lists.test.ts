import { describe, expect, it } from 'vitest';
import { countStates, shareAssumptions } from '../../core/notes/notes-door';
import { questionOf } from '../../renderer/notes/ambiguous';
import { bringInLabel, openSentence, resultSentence, rowsSaid } from '../../core/says/sheet-says';
import { byReason, byRow, openAndRemarks, type Row } from '../../renderer/notes/note-lists';

const row = (number: number, state: Row['state']): Row => ({
  row: number,
  state,
  label: null,
  seeds: [],
  says: '',
});

const problem = (number: number, sentence: string, reason = 'No day', column: string | null = null) => ({
  row: number,
  reason,
  sentence,
  column,
  cell: column,
});

describe('lists of the screen that brings in notes', () => {
  it.each([
    [[3], 'row 3'],
    [[3, 8], 'rows 3 and 8'],
    [[3, 8, 12], 'rows 3, 8 and 12'],
    [[1, 2, 3, 4, 5, 6, 7, 8], 'rows 1, 2, 3, 4, 5, 6, 7, 8 and 2 more', 10],
  ])('says %j as %s', (rows, words, of = rows.length) => {
    expect(rowsSaid(rows, of)).toBe(words);
  });

  it('counts the states of rows', () => {
    expect(countStates([row(2, 'new'), row(3, 'new'), row(4, 'empty'), row(5, 'aside')])).toEqual({
      new: 2,
      changes: 0,
      aside: 1,
      'already here': 0,
      empty: 1,
    });
  });

  it('says an assumption of many rows once, and one about the file without rows', () => {
    const shared = shareAssumptions([
      { row: null, sentence: 'Month first.' },
      { row: 3, sentence: 'Taken as °F.' },
      { row: 9, sentence: 'Taken as °F.' },
      { row: 4, sentence: 'The year is taken as 2026.' },
    ]);
    expect(shared).toEqual([
      { sentence: 'Month first.', rows: [], of: 0 },
      { sentence: 'Taken as °F.', rows: [3, 9], of: 2 },
      { sentence: 'The year is taken as 2026.', rows: [4], of: 1 },
    ]);
  });

  it.each([
    [{ jars: 44, seedings: 46, sources: 2, changed: 0 }, '44 jars, 46 seedings and 2 sources came in.'],
    [{ jars: 1, seedings: 1, sources: 0, changed: 0 }, '1 jar and 1 seeding came in.'],
    [
      { jars: 0, seedings: 0, sources: 0, changed: 0 },
      'Nothing new came in: everything in this file is here already, or stays aside.',
    ],
    [{ jars: 12_000, seedings: 0, sources: 0, changed: 0 }, '12,000 jars came in.'],
    [{ jars: 1, seedings: 0, sources: 0, changed: 2 }, '1 jar came in. 2 jars were changed as you answered.'],
    [{ jars: 0, seedings: 0, sources: 0, changed: 1 }, '1 jar was changed as you answered.'],
  ])('sums up %j', (result, sentence) => {
    expect(resultSentence(result)).toBe(sentence);
  });

  it('says what stays open and what answers it', () => {
    const choices = [{ value: 'fine', label: 'It was fine' }];
    const question = { id: 'bubbles:3', row: 3, sentence: 'Was it?', choices, blocks: false };
    const other = { ...question, sentence: 'And that?' };
    const remark = { ...question, choices: [] };
    const others = { ...other, choices: [] };
    expect(
      // Asked of three rows it is one question.
      [
        [],
        [question, { ...question, id: 'bubbles:4', row: 4 }],
        [question, other, remark],
        [remark, others],
      ].map((one) => {
        const { open, remarks } = openAndRemarks(one);
        return openSentence(open.length, remarks.length);
      }),
    ).toEqual([
      null,
      '1 question stays open; bring the file in again to answer it.',
      '2 questions stay open; bring the file in again to answer them. 1 remark to look over.',
      '2 remarks to look over.',
    ]);
  });

  it('says on the button what it does', () => {
    expect([bringInLabel(1, 0), bringInLabel(0, 1), bringInLabel(3, 2)]).toEqual([
      'Bring in 1 row',
      'Change 1 jar',
      'Bring in 3 rows, change 2 jars',
    ]);
  });

  it('puts problems of a row together, rows in order', () => {
    expect(
      byRow([problem(47, 'b'), problem(3, 'a'), problem(47, 'c')]).map((one) => [
        one.row,
        one.problems.length,
      ]),
    ).toEqual([
      [3, 1],
      [47, 2],
    ]);
  });

  it('puts rows together by the first reason that they have, those that only wait for others last', () => {
    const problems = [
      problem(4, 'waits', 'Waits for row 3'),
      problem(3, 'no seed', 'Seed', 'From'),
      problem(3, 'too hot', 'Warmth', 'Temp'),
      problem(9, 'no seed', 'Seed', 'From'),
      problem(5, 'waits', 'Waits for row 3'),
    ];
    expect(byReason(problems).map(({ reason, rows }) => [reason, rows.map((one) => one.row)])).toEqual([
      ['Seed', [3, 9]],
      ['Waits for row 3', [4, 5]],
    ]);
  });
});

describe('a refusal that is a question', () => {
  it('keeps the id, the words and the choices', () => {
    const question = questionOf(
      {
        code: 'ambiguous',
        params: {
          id: 'dates',
          question: 'Which is it?',
          choices: ['day first', 'month first'],
          labels: ['3 April', '4 March'],
        },
      },
      'a sentence',
    );
    expect(question).toEqual({
      id: 'dates',
      row: null,
      sentence: 'Which is it?',
      choices: [
        { value: 'day first', label: '3 April' },
        { value: 'month first', label: '4 March' },
      ],
      blocks: true,
    });
  });

  it('any other refusal stays a refusal', () => {
    expect(questionOf({ code: 'no ledger', params: { id: 'dates' } }, 'a sentence')).toBeNull();
  });
});
