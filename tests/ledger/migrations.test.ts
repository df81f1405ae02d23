// Released migrations never change: a ledger made by one program must be the ledger another expects.
import { createHash } from 'node:crypto';
import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { FACT_KINDS } from '../../core/ledger/facts/all-facts';
import { columnsOf, tableOf } from '../../main/ledger/facts/tables';
import { FIRST_VERSION, migrations } from '../../main/ledger/migrations/all-migrations';

/** sha256 of each released migration's SQL. Never edit a line here: add one for a new migration. */
const RELEASED: Record<string, string> = {
  '0003-events': 'cb31cca4ac3ad8ec8bfe1858b2b006c6e041d5350e9b2721d2ce9774115808d9',
  '0004-seeding-search': '8e2e13148387764c09de24336909b48f0763c5194892567e059355c6e8814a70',
};

it('every released migration is as it was released', () => {
  const hashes = migrations.map(({ name, sql }) => [name, createHash('sha256').update(sql).digest('hex')]);
  expect(Object.fromEntries(hashes)).toEqual(RELEASED);
});

it('migrations are numbered from the first released version without a gap', () => {
  expect(migrations.map(({ version }) => version)).toEqual(
    migrations.map((_, index) => FIRST_VERSION + index),
  );
});

it('every kind of fact has its table, with the columns that main/ledger/facts/tables.ts reads and writes', () => {
  const db = new Database(':memory:');
  for (const { sql } of migrations) db.exec(sql);
  for (const kind of FACT_KINDS) {
    const columns = db.pragma(`table_info(${tableOf(kind)})`) as { name: string }[];
    expect(columns.map(({ name }) => name)).toEqual(['key', ...columnsOf(kind)]);
  }
  const loose = db
    .prepare("SELECT name FROM pragma_table_list WHERE strict = 0 AND name NOT LIKE 'sqlite_%'")
    .pluck();
  expect(loose.all()).toEqual([]);
  db.close();
});
