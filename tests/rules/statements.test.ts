// The book is asked over columns: however many jars an act touched, the same statements are run, each once.
import { expect, it } from 'vitest';
import { RandomKeeper } from './random-keeper';

/** Statements that were prepared or taken from the cache while the book was asked about an import of so many rows. */
function statementsOf(rows: number): string[] {
  const keeper = new RandomKeeper();
  const { ledger } = keeper;
  const days = (n: number): string =>
    new Date(Date.UTC(2000, 0, 1) + n * 86_400_000).toISOString().slice(0, 10);
  const lines = Array.from({ length: rows }, (_, n) => `${days(n)},a,${n === 0 ? 'Blue Tin' : `${days(n - 1)} a`},45 ml,900 ml,firm`); // prettier-ignore
  const bytes = new TextEncoder().encode(`date,jar,seed,amount,volume,set\n${lines.join('\n')}\n`);
  const { ask } = ledger.acts;
  const { prepare } = ledger.rows;
  const run: string[] = [];
  ledger.acts.ask = (act, chosen) => {
    ledger.rows.prepare = (sql) => {
      run.push(sql);
      return prepare.call(ledger.rows, sql);
    };
    ask(act, chosen);
    ledger.rows.prepare = prepare;
  };
  const done = keeper.ask('notes.bringIn', { file: { name: 'notes.csv', bytes } });
  expect(done).toMatchObject({ ok: true, value: { jars: rows } });
  ledger.close();
  return run.toSorted();
}

it('runs as many statements for a thousand jars as for a hundred', () => {
  const few = statementsOf(100);
  expect(few.length).toBeGreaterThan(5);
  expect(statementsOf(1000)).toEqual(few);
});
