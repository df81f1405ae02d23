// A sheet that gained a column, lost one, or had them moved or written otherwise has changed no row; what a new column tells
// is asked about once. Identity goes by heading and cell, answers are kept beside it.
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { contract, type Reply } from '../../core/contract';
import { refusalSentence } from '../../core/sentences';
import { Session } from '../../main/session';
import { runs } from '../runs';

let session: Session;
const begin = (): void => {
  session = new Session({
    file: join(mkdtempSync(join(tmpdir(), 'jarline-columns-')), 'ledger.sqlite'),
    mode: 'create', now: '2026-04-01T09:00:00+02:00', timeZone: 'Europe/Berlin', version: '0',
  }); // prettier-ignore
};
beforeEach(begin);
afterEach(() => session.close());

type Names = 'notes.bringIn' | 'family.get' | 'jar.get' | 'history.list' | 'act.undo' | 'facts.list';
function call<N extends Names>(name: N, input: unknown): Reply<N> {
  const result = session.answer(name, contract[name].input.parse(input));
  if (!result.ok) throw new Error(refusalSentence(result.error));
  return contract[name].reply.parse(result.value) as Reply<N>;
}
type Table = readonly (readonly string[])[];
const csv = (table: Table): string =>
  `${table.map((row) => row.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(',')).join('\n')}\n`;
const bring = (
  table: Table,
  answers: Record<string, string> = {},
  name = 'notes.csv',
): Reply<'notes.bringIn'> =>
  call('notes.bringIn', { file: { name, bytes: new TextEncoder().encode(csv(table)) }, answers });
const acts = (): number => call('history.list', { record: null, before: null, limit: 200 }).acts.length;
const everything = (): unknown =>
  call('family.get', {}).jars.map(({ id }) => call('jar.get', { id }));
const jarOf = (madeOn: string): Reply<'jar.get'> => {
  const id = call('family.get', {}).jars.find((jar) => jar.madeOn === madeOn)?.id;
  return call('jar.get', { id });
};
const asked = ({ questions }: Reply<'notes.bringIn'>): string[] => questions.map(({ id }) => id);

const LETTERED: Table = [
  ['Date', 'Jar', 'Started from', 'Amount', 'Milk', 'Fibre', 'Hours', 'Set', 'Notes'],
  ['2026-01-05', 'a', '10 capsules Blue Tin', '', 'whole milk', '', '30', 'firm', ''],
  ['2026-01-05', 'b', '8 capsules Blue Tin', '', 'whole milk', '2 tbsp oat bran', '30', '', 'smooth'],
  ['2026-01-12', 'a', '2026-01-05 b', '3 tbsp', 'whole milk', '', '36', 'soft', ''],
  ['2026-01-12', 'b', '2026-01-05 b', '3 tbsp', '', '2 tbsp inulin', '', '', ''],
];
/** The same day and seed again and again: only the other cells, or nothing, tell the jars apart. */
const LETTERLESS: Table = [
  ['Day', 'Seed', 'How much', 'Hours', 'Result'],
  ['2026-01-05', '10 capsules Blue Tin', '', '30', 'firm'],
  ['2026-01-12', '2026-01-05', '3 tbsp', '36', 'firm'],
  ['2026-01-12', '2026-01-05', '3 tbsp', '36', 'firm'],
  ['', '2026-01-05', '3 tbsp', '30', 'soft'],
  ['2026-01-19', '2026-01-12 b', '3 tbsp', '36', ''],
];

const put = (table: Table, at: number, heading: string, cells: (row: number) => string): Table =>
  table.map((row, line) => row.toSpliced(at, 0, line === 0 ? heading : cells(line)));
const wide = (table: Table): number => table[0]?.length ?? 0;

describe('a sheet whose columns changed', () => {
  const nth = fc.nat({ max: 20 });
  /** Changes of columns that change no row. */
  const change = fc.oneof(
    nth.map((at) => (table: Table) => put(table, at % wide(table), 'Mood', () => '')),
    fc
      .tuple(nth, fc.constantFrom('pH', 'Weather', 'Temp', 'Vessel', 'Smell', 'Price', 'Remarks'), fc.constantFrom('4.3', '38', 'mild', '2'))
      .map(([at, heading, cell]) => (table: Table) => (table[0]?.includes(heading) ? table : put(table, at % (wide(table) + 1), heading, (row) => (row % 3 === 0 ? '' : cell)))),
    fc.tuple(nth, nth).map(([from, to]) => (table: Table) =>
      table.map((row) => row.toSpliced(from % wide(table), 1).toSpliced(to % wide(table), 0, row[from % wide(table)] ?? ''))),
    fc.constantFrom((text: string) => text.toUpperCase(), (text: string) => ` ${text.toLowerCase()}  `, (text: string) => text.replaceAll(' ', '  '), (text: string) => text.replaceAll(' ', '_'))
      .map((write) => (table: Table) => table.map((row, line) => (line === 0 ? row.map(write) : row))),
    fc.constant((table: Table) => {
      const at = table[0]?.findIndex((_heading, column) => table.slice(1).every((row) => row[column] === '')) ?? -1;
      return at < 0 ? table : table.map((row) => row.toSpliced(at, 1));
    }),
  ); // prettier-ignore

  it('adds nothing, changes nothing and asks about no row', () => {
    fc.assert(
      fc.property(fc.constantFrom(LETTERED, LETTERLESS), fc.array(change, { minLength: 1, maxLength: 4 }), fc.boolean(), (start, changes, renamed) => {
        session.close();
        begin();
        const table = put(start, wide(start), 'Empty', () => '');
        const first = bring(table);
        expect(first.jars).toBe(table.length - 1);
        const before = everything();
        const again = bring(changes.reduce((now, one) => one(now), table), {}, renamed ? 'other.csv' : 'notes.csv');
        expect(again).toMatchObject({ jars: 0, seedings: 0, sources: 0, changed: 0, problems: [] });
        // Each new column is asked about once, or said to change nothing.
        expect(asked(again).filter((id) => !id.startsWith('column:') && !asked(first).includes(id))).toEqual([]);
        expect([everything(), acts()]).toEqual([before, 1]);
      }),
      { numRuns: runs(13) },
    );
  }); // prettier-ignore

  it('with new rows adds those rows', () => {
    bring(LETTERLESS);
    const longer = put([...LETTERLESS, ['2026-01-26', '2026-01-19', '3 tbsp', '36', 'firm']], 1, 'pH', () => '4.4');
    expect(bring(longer).jars).toBe(1);
    expect(bring(longer)).toMatchObject({ jars: 0, changed: 0 });
  });

  it('that lost a filled column keeps what it told, and says so', () => {
    bring(LETTERED);
    const before = everything();
    const again = bring(LETTERED.map((row) => row.toSpliced(6, 1)));
    expect([again.jars, again.changed, asked(again).filter((id) => !id.startsWith('seed'))]).toEqual([0, 0, []]);
    expect(again.assumptions.map(({ sentence }) => sentence)).toContain(
      'The column “Hours” is gone since these notes came in. What it told stays in the ledger.',
    );
    expect(everything()).toEqual(before);
  });

  it('is another file where the columns that name a jar and its seed are others', () => {
    bring(LETTERED);
    expect(bring([['Day', 'Jar', 'Seed'], ['2026-02-05', 'a', '9 capsules Meadow Pot']]).jars).toBe(1); // prettier-ignore
  });

  it('tells jars apart by letters that are new', () => {
    bring(LETTERLESS);
    const lettered = put(LETTERLESS, 1, 'Jar', (row) => ['a', 'b', 'a', 'c', 'a'][row - 1] ?? '');
    expect(bring(lettered)).toMatchObject({ jars: 0, changed: 0, problems: [] });
  });
});

describe('what a new column tells', () => {
  const PH = put(LETTERED, 9, 'pH', (row) => (row === 3 ? '4.4' : row === 1 ? '4.2' : ''));
  it('is asked about once, and once taken over is there and asked no more', () => {
    bring(LETTERED);
    expect(bring(PH).questions.find(({ id }) => id === 'column:pH')).toMatchObject({
      row: null, blocks: false,
      sentence: 'The column “pH” is new since these notes came in. It tells more of 2 rows that are in the ledger already. Take it over? Until you say so the ledger stays as it is.',
    }); // prettier-ignore
    expect(bring(PH, { 'column:pH': 'leave' }).changed).toBe(0);
    expect([bring(PH, { 'column:pH': 'take over' }).changed, acts()]).toEqual([2, 2]);
    expect(jarOf('2026-01-12').record.outcome).toMatchObject({ ph: 4.4, setWord: 'soft' });
    expect([bring(PH).changed, asked(bring(PH)).includes('column:pH'), acts()]).toEqual([0, false, 2]);
    // The sheet as it was before says nothing against it.
    expect(bring(LETTERED)).toMatchObject({ jars: 0, changed: 0 });
    call('act.undo', { act: null });
    expect(jarOf('2026-01-12').record.outcome?.ph).toBe(null);
    expect(asked(bring(PH))).toContain('column:pH');
  });

  it.each([
    ['Vessel', 'quart jar', ({ record }: Reply<'jar.get'>) => record.jar.vessel, 'quart jar'],
    ['Remarks', 'from the club', ({ record }: Reply<'jar.get'>) => record.jar.note, 'from the club'],
    ['Temp C', '38', ({ hold }: Reply<'jar.get'>) => hold?.planned?.value, 38],
    ['Inulin (g)', '12', ({ record }: Reply<'jar.get'>) => record.additions.map(({ name }) => name.toLowerCase()), ['inulin']],
    ['Smell', 'like butter', ({ record }: Reply<'jar.get'>) => record.outcome?.smell, 'like butter'],
  ] as const)('%s: %s', (heading, cell, of, expected) => {
    bring(LETTERED);
    const before = jarOf('2026-01-12');
    const wider = put(LETTERED, 9, heading, (row) => (row === 3 ? cell : ''));
    expect(of(before)).not.toEqual(expected);
    expect(bring(wider, { [`column:${heading}`]: 'take over' }).changed).toBe(1);
    const now = jarOf('2026-01-12');
    const seen = of(now);
    expect(typeof seen === 'string' ? seen : JSON.stringify(seen)).toContain(typeof expected === 'string' ? expected : JSON.stringify(expected));
    expect([now.hold?.hours, now.record.outcome?.setWord, now.record.seedings.length]).toEqual([36, 'soft', 1]);
    expect(asked(bring(wider)).filter((id) => id.startsWith('c'))).toEqual([]);
  }); // prettier-ignore

  it('of amounts fills those that are not known', () => {
    const bare = LETTERED.map((row) => row.toSpliced(3, 1));
    bring(bare);
    expect(bring(LETTERED, { 'column:Amount': 'take over', spoons: 'US' }).changed).toBe(2);
    // US tablespoon of 14.787 mL (NIST Handbook 44, appendix C).
    expect(jarOf('2026-01-12').record.seedings.map(({ seeding }) => Math.round(seeding.amount?.value ?? 0))).toEqual([44]);
  }); // prettier-ignore

  it('and can’t be is a problem of its row, and changes nothing', () => {
    bring(LETTERED);
    const wrong = put(LETTERED, 9, 'Temp C', (row) => (row === 3 ? '900' : ''));
    const again = bring(wrong, { 'column:Temp C': 'take over' });
    expect([again.changed, again.problems.map(({ row }) => row)]).toEqual([0, [4]]);
  });

  it('of spoilage is asked about first and urgently, for each jar', () => {
    bring(LETTERED);
    const spoiled = put(LETTERED, 9, 'Afterwards', (row) => (row === 3 ? 'went pink, threw it out' : 'fine'));
    const again = bring(spoiled);
    expect([again.jars, again.changed]).toEqual([0, 0]);
    expect(again.questions[0]).toMatchObject({ id: 'changed:4', row: 4, urgent: true });
    expect(again.questions[0]?.sentence).toMatch(/the notes now say that 12 Jan 2026 a spoiled \(pink\)/);
    expect(bring(spoiled, { 'changed:4': 'take over' }).changed).toBe(1);
    expect(jarOf('2026-01-12').record.outcome?.signs).toEqual(['pink']);
  });
});

describe('cells and answers', () => {
  it('are kept apart: the row as it was written, and what was answered about it', () => {
    const fizzy = LETTERED.map((row, line) => (line === 3 ? row.with(8, 'fizzy?') : row));
    bring(fizzy, { 'bubbles:4': 'fine', 'cell:4:Hours': '37' });
    const { db } = session.ledger;
    const row = db
      .prepare('SELECT n.key, n.cells, f.headings FROM note_row n JOIN note_file f ON f.key = n.file WHERE n.line = 4')
      .get() as { key: number; cells: string; headings: string };
    expect(JSON.parse(row.headings)).toEqual(LETTERED[0]);
    expect(JSON.parse(row.cells)).toEqual({
      Date: '2026-01-12', Jar: 'a', 'Started from': '2026-01-05 b', Amount: '3 tbsp', Milk: 'whole milk', Hours: '36', Set: 'soft', Notes: 'fizzy?',
    }); // prettier-ignore
    const answers = db.prepare('SELECT question, answer FROM note_answer WHERE note_row = ? ORDER BY key').raw();
    expect(answers.all(row.key)).toEqual([['bubbles', 'fine'], ['cell:Hours', '37']]); // prettier-ignore
    // Found again where its line has moved and a column is new; an older row takes them along when it is noted anew.
    const moved = put([fizzy[0] ?? [], ...fizzy.slice(1).toReversed()], 9, 'pH', () => '4.4');
    expect(asked(bring(moved)).some((id) => id.startsWith('bubbles'))).toBe(false);
    expect(bring(moved, { 'column:pH': 'take over' }).changed).toBe(4);
    const newest = db.prepare('SELECT max(n.key) FROM note_row n WHERE jar = (SELECT jar FROM note_row WHERE key = ?)').pluck().get(row.key);
    expect(answers.all(newest)).toEqual([['bubbles', 'fine'], ['cell:Hours', '37']]); // prettier-ignore
  });
});

describe('a heading that nobody knows', () => {
  const sheet = (day: string): Table => [['Date', 'Jar', 'Seed', 'Xyzzy'], [day, 'a', '10 capsules Blue Tin', 'like butter']]; // prettier-ignore
  it('is asked about once, and what it was said to mean holds for later files', () => {
    const open = bring(sheet('2026-01-05'));
    const question = open.questions.find(({ id }) => id === 'means:Xyzzy');
    expect(question?.choices.map(({ value }) => value)).toEqual(expect.arrayContaining(['note', 'smell', 'hours', 'ignore']));
    // What other columns tell already is no choice.
    expect(question?.choices.map(({ value }) => value)).not.toContain('date');
    expect(jarOf('2026-01-05').record.jar.note).toBe('Xyzzy: like butter');
    expect(asked(bring(sheet('2026-02-05'), { 'means:Xyzzy': 'smell' }))).not.toContain('means:Xyzzy');
    expect(asked(bring(sheet('2026-03-05'), {}, 'other.csv'))).not.toContain('means:Xyzzy');
    const told = ['2026-02-05', '2026-03-05'].map((day) => jarOf(day).record);
    expect(told.map(({ outcome, jar }) => [outcome?.smell, jar.note])).toEqual([['like butter', null], ['like butter', null]]); // prettier-ignore
  });
});
