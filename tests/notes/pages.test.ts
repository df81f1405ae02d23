// A preview in pages: together they are the whole, whatever the size of a page, and another page is no second reading.
import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import type { NotesView } from '../../core/contract';
import { paged, pageOf } from '../../core/notes/notes-door';
import { newSession } from '../ledger/ledger-files';
import { read } from './read';

const DAY = (at: number): string => new Date(Date.UTC(2020, 0, 1) + at * 86_400_000).toISOString().slice(0, 10);
const SHEET = ['date,jar,seed,amount,set,note', ...Array.from({ length: 240 }, (_, at) =>
  at % 20 === 7 ? `${DAY(at)},a,nobody knows,2 EL,firm,` : `${DAY(at)},a,${at === 0 || at % 20 === 8 ? '8 caps Blue Tin' : DAY(at - 1) + ' a'},3 tbsp,${at % 3 === 0 ? 'thick' : 'firm'},`,
)].join('\n'); // prettier-ignore
const view = (from: number, most: number, state: NotesView['state'] = null): NotesView => ({
  state,
  rows: { from, most },
  assumptions: { from, most },
  problems: { most: 1000 },
  questions: { most: 1000 },
  remarks: { from, most },
});

it('pages of any size put together are the preview', () => {
  const { preview } = read(SHEET);
  const ready = paged(preview);
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 100 }), fc.constantFrom(null, 'new', 'aside'), (most, state) => {
      const wanted = preview.rows.filter((row) => state === null || row.state === state);
      const rows = Array.from({ length: Math.ceil(wanted.length / most) }, (_, at) => pageOf(ready, view(at * most, most, state)).rows);
      expect(rows.flat()).toEqual(wanted);
      const shared = Array.from({ length: Math.ceil(ready.shared.length / most) }, (_, at) => pageOf(ready, view(at * most, most)).pages?.shared ?? []);
      expect(new Set(shared.flat().map(({ sentence }) => sentence))).toEqual(new Set(preview.assumptions.map(({ sentence }) => sentence)));
    }),
    { numRuns: 20 },
  );
  const { pages } = pageOf(ready, view(0, 10));
  expect([pages?.problems, pages?.questions]).toEqual([preview.problems.length, preview.questions.length]);
});

it('another page of the same file is looked up; once the ledger has changed it is read again', () => {
  const session = newSession();
  const file = { name: 'notes.csv', bytes: new TextEncoder().encode(SHEET) };
  let steps = 0;
  const look = (from: number): number => {
    steps = 0;
    const answer = session.answer('notes.preview', { file, view: view(from, 10) }, { step: () => (steps += 1), look: () => undefined });
    expect(answer).toMatchObject({ ok: true, value: { rows: { length: 10 } } });
    return steps;
  };
  expect(look(0)).toBeGreaterThan(100);
  expect(look(50)).toBe(0);
  expect(session.answer('notes.bringIn', { file })).toMatchObject({ ok: true });
  expect(look(50)).toBeGreaterThan(100);
  session.close();
});

/** The same value, in which each thing that is taken out of a list is counted. */
function counting<Value extends object>(value: Value, count: () => void): Value {
  return new Proxy(value, {
    get(of, name): unknown {
      if (Array.isArray(of) && typeof name === 'string' && /^\d+$/.test(name)) count();
      const got: unknown = Reflect.get(of, name);
      return typeof got === 'object' && got !== null ? counting(got, count) : got;
    },
  });
}

it('a page of 20,000 rows takes no more out of them than one of 200', () => {
  const looked = (rows: number): number => {
    const line = (at: number) => ({ row: at + 2, sentence: `“${at}” was taken as ${at}` });
    const ready = paged({
      columns: [],
      rows: Array.from({ length: rows }, (_, at) => ({ row: at + 2, state: at % 3 === 0 ? 'aside' : 'new', label: null, seeds: [], says: '' })),
      problems: Array.from({ length: rows }, (_, at) => ({ ...line(at), reason: `${at % 7}`, column: null, cell: null })),
      questions: Array.from({ length: rows }, (_, at) => ({ ...line(at), id: `${at}`, choices: [], blocks: at % 2 === 0 })),
      assumptions: Array.from({ length: rows }, (_, at) => line(at)),
      remarks: Array.from({ length: rows }, (_, at) => ({ id: `${at}`, row: at + 2, label: null, text: '', tells: at === 0, doubted: false, stops: false, readAs: null })),
    });
    let count = 0;
    for (const state of [null, 'aside'] as const)
      for (const from of [0, 40]) pageOf(counting(ready, () => (count += 1)), { ...view(from, 20, state), problems: { most: 50 }, questions: { most: 50 } });
    return count;
  };
  expect(looked(20_000)).toBe(looked(200));
  expect(looked(200)).toBeLessThan(1000);
}); // prettier-ignore
