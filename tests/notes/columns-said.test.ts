// What the list of columns says: one cell of each and how it was read, marks as marks; and how rows that stay aside are grouped.
import { expect, it } from 'vitest';
import { pageOf, paged } from '../../core/notes/notes-door';
import { read } from './read';

const saidOf = (text: string): Record<string, string> =>
  Object.fromEntries(read(text).preview.columns.map(({ heading, says }) => [heading, says]));

it('each column with one of its cells and how it was read', () => {
  const sheet = `Datum;Glas;Aus;Menge;Milch;Inulin (g);Stunden;Temp;Konsistenz;pH;Geruch;Preis;Bemerkung
25.10.2025;A;8 Kapseln Blue Tin;;1,5 l Vollmilch;2;1½ Tage;38 °C;sehr fest;4,4;nach Nuss;2,10;
29.10.2025;A;25.10.2025 A;3 EL;1 l Vollmilch;;36 h;100 F;flüssig;;;;kurz offen`;
  expect(saidOf(sheet)).toMatchObject({
    Datum: '“25.10.2025” was read as 25 Oct 2025.',
    Glas: '“A” was read as jar a.',
    Aus: '“8 Kapseln Blue Tin” was read as Blue Tin.',
    Milch: '“1,5 l Vollmilch” was read as Vollmilch.',
    'Inulin (g)': '“2” was read as 2 g Inulin.',
    Stunden: '“1½ Tage” was read as 36 h held.',
    Temp: '“38 °C” was read as 38 °C.'.replace('as 38 °C', 'as it stands'),
    Konsistenz: '“sehr fest” was read as very firm.',
    pH: '“4,4” was read as pH 4.4.',
    Geruch: '“nach Nuss” was read as it stands.',
    Preis: '“2,10” is kept in the jar’s note.',
    Bemerkung: '“kurz offen” is kept in the jar’s note.',
  });
});

it.each([
  ['Taste /10', ['8', '7', '9'], 10],
  ['Taste', ['8/10', '7/10', '9/10'], 10],
  ['Note', ['8/10', '7,5/10', '9/10 (Robin)'], 10],
  ['Geschmack (1-10)', ['8', '7', '9'], 10],
  ['Geschmack (von 15)', ['8', '12', '15'], 15],
  ['Score', ['8', '7', '9'], null],
  ['Robin out of 5', ['4', '3', '5'], 5],
  ['Bewertung', ['2', '1', '3'], null],
])('marks under “%s” are kept as they stand, under their heading, and nothing is asked', (heading, marks, most) => {
  const rows = marks.map((mark, at) => `2026-01-0${at + 1},a,${at === 0 ? '8 caps Blue Tin' : `2026-01-0${at} a`},"${mark}"`);
  const { plan, preview } = read(['Date,Jar,Seed,"' + heading + '"', ...rows].join('\n'));
  expect(plan.jars.map(({ madeOn, outcome, fields }) => [madeOn, outcome, fields.note])).toEqual(
    marks.map((mark, at) => [`2026-01-0${at + 1}`, null, `${heading}: ${mark}`]),
  );
  expect(preview.columns.at(-1)).toMatchObject({
    meaning: 'note',
    says: `Marks${most === null ? '' : ` out of ${most}`}, kept in each jar’s note as they stand.`,
  });
  expect(preview.questions).toEqual([]);
});

it.each(['Date', 'Xyz', 'Made'])('days under “%s” are no marks', (heading) => {
  const sheet = `${heading},Jar,Seed\n1/10/25,a,8 caps Blue Tin\n8/10/25,a,1/10/25 a\n15/10/25,a,8/10/25 a`;
  expect(read(sheet).plan.jars.map(({ madeOn }) => madeOn)).toEqual(['2025-10-01', '2025-10-08', '2025-10-15']);
});

it.each(['flüssig', 'dünnflüssig', 'liquid', 'watery', 'wie Wasser', 'pours', 'liquide', 'vloeibaar'])(
  '“%s” is asked about among what pours: never firm',
  (cell) => {
    const { preview } = read(`Date,Jar,Seed,Set\n2026-01-01,a,8 caps Blue Tin,${cell}`);
    expect(preview.questions.find(({ id }) => id === 'set:2')?.choices.map(({ value }) => value)).toEqual(['runny', 'soft', 'not set']);
  },
);

it('rows that wait say for which row in the end, and are counted by reason', () => {
  const rows = Array.from({ length: 28 }, (_, at) => `2026-01-${String(at + 1).padStart(2, '0')},a,${at === 0 ? '8 caps Blue Tin' : at === 4 ? '2024-05-05 q' : `2026-01-${String(at).padStart(2, '0')} a`},36`);
  const { preview } = read(['Date,Jar,Seed,Hours', ...rows].join('\n'));
  expect(preview.problems.map(({ row, reason }) => [row, reason])).toEqual([
    [6, 'The seed was not found'],
    ...Array.from({ length: 23 }, (_, at) => [7 + at, 'Waits for row 6']),
  ]);
  const shown = pageOf(paged(preview), { state: null, rows: { from: 0, most: 5 }, assumptions: { from: 0, most: 5 }, problems: { most: 2 }, questions: { most: 5 }, remarks: { from: 0, most: 5 } });
  expect(shown.pages?.reasons).toEqual([
    { reason: 'The seed was not found', rows: 1 },
    { reason: 'Waits for row 6', rows: 23 },
  ]);
}); // prettier-ignore
