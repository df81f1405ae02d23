// What words in a spreadsheet come to, in cells of every kind of column: nothing that bears on safety is dropped, what pours is
// no clean *runny*, and a denial of sourness is never taken for sourness. The phrases: common practice, no source.
import { describe, expect, it } from 'vitest';
import { tellsOfSpoiling } from '../../core/safety/remarks';
import { read } from '../notes/read';

const HEADINGS = ['notes', 'set', 'texture', 'smell', 'colour', 'whey', 'taste', 'pH', 'spoiled?', 'temp', 'hours', 'milk', 'fibre', 'vessel', 'other']; // prettier-ignore

function rowOf(heading: string, cell: string) {
  const { byLine, preview } = read(`date,jar,seed,${heading}\n2026-02-01,a,10 capsules Blue Tin,"${cell}"\n`);
  const row = byLine.get(2);
  if (!row) throw new Error(`a row with “${cell}” under ${heading} did not come in`);
  return { row, outcome: row.outcome, questions: preview.questions };
}

describe.each([
  'pH 5.2?', 'ph maybe 5.4', 'loose at 12 h, not sour', 'still loose at 24h', 'firmed in the fridge', 'set only once cold', 'no sour smell',
  'nicht sauer', 'pas acide', 'Went off at 9 pm', 'liquid', 'flüssig', 'mold', 'some mold on top',
])('“%s”', (cell) => {
  it.each(HEADINGS)('under %s is kept word for word', (heading) => {
    const { row } = rowOf(heading, cell);
    const kept = JSON.stringify(row);
    // A cell of several additions is taken apart at its commas.
    for (const part of heading === 'fibre' ? cell.split(', ') : [cell]) expect(kept).toContain(part);
  });
  it.each(HEADINGS)('under %s shows no acid, and no clean set', (heading) => {
    const { outcome } = rowOf(heading, cell);
    expect([null, undefined, 'none']).toContain(outcome?.tang);
    expect([outcome?.sour ?? null, outcome?.setWord ?? null, outcome?.setAtTakeOut ?? null]).toEqual([null, null, null]);
  });
}); // prettier-ignore

it.each([
  'liquid',
  'a bit liquid',
  'flüssig',
  'dünnflüssig',
  'liquide',
  'líquido',
  'liquida',
  'vloeibaar',
  'flytande',
  'flydende',
  'płynny',
  'watery',
  'wässrig',
  'like milk',
  'wie Milch',
  'pours',
  '液体',
  'жидкий',
  'vetelä',
])(
  // prettier-ignore
  'set: %s is asked about, and answered as it is',
  (cell) => {
    const { outcome, questions } = rowOf('set', cell);
    expect([outcome?.setWord, outcome?.texture]).toEqual([null, cell]);
    expect(questions.map(({ id }) => id)).toContain('set:2');
  },
);
it('pours: answered as not set it is not set, and as runny it is runny', () => {
  const text = 'date,jar,seed,set\n2026-02-01,a,10 capsules Blue Tin,liquid\n';
  const answered = (answer: string) => read(text, { answers: { 'set:2': answer } }).byLine.get(2)?.outcome;
  expect(answered('not set')).toMatchObject({
    setAtTakeOut: false,
    signs: ['not set and no pH at or below 4.6'],
  });
  expect(answered('runny')).toMatchObject({ setAtTakeOut: null, setWord: 'runny', signs: [] });
});
it.each(['runny', 'thin', 'drinkable', 'dünn', 'zähflüssig', 'like kefir'])('set: %s stays runny', (cell) =>
  expect(rowOf('set', cell).outcome?.setWord).toBe('runny'),
);

it.each(HEADINGS)('mould under %s stops its jar until it is answered', (heading) => {
  const { row } = rowOf(heading, 'mould on top');
  const said = [row.fields.note, row.outcome?.texture, row.outcome?.smell, row.outcome?.colour];
  expect(said.some((text) => typeof text === 'string' && tellsOfSpoiling(text, 'note'))).toBe(true);
});

it.each([
  ['quite sour', 'clear'], ['sharp', 'sharp'], ['mild', 'mild'], ['not sour', 'none'], ['hardly sour', null], ['sour?', null],
  ['not at all sour', null], ['kaum sauer', null], ['pas acide', null], ['never got tangy', null],
])('taste: %s', (cell, tang) => expect(rowOf('taste', cell).outcome?.tang ?? null).toBe(tang)); // prettier-ignore
