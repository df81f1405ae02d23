// Released migrations never change: a ledger made by one program must be the ledger another expects.
import { createHash } from 'node:crypto';
import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { RECORD_KINDS } from '../../core/ledger/records';
import { migrations } from '../../main/ledger/migrations/index';
import { columnsOf, TABLES } from '../../main/ledger/tables';

/** sha256 of each released migration's SQL. Never edit a line here: add one for a new migration. */
const RELEASED: Record<string, string> = {
  '0001-ledger': '4d707ee9cb5dd4eb4e9169e087a776a39330752d8b0b1a6550998242a7afcce9',
  '0002-choice': '12c079a27fa5c2bd07395f0ff4835825ce919f2aee4737f37a668b9cfbd99dee',
};

it('every released migration is as it was released', () => {
  const hashes = migrations.map(({ name, sql }) => [name, createHash('sha256').update(sql).digest('hex')]);
  expect(Object.fromEntries(hashes)).toEqual(RELEASED);
});

it('migrations are numbered from 1 without a gap', () => {
  expect(migrations.map(({ version }) => version)).toEqual(migrations.map((_, index) => index + 1));
});

it('every record has its table, with the columns that main/ledger/tables.ts reads and writes', () => {
  const db = new Database(':memory:');
  for (const { sql } of migrations) db.exec(sql);
  for (const kind of RECORD_KINDS) {
    const columns = (db.pragma(`table_info(${TABLES[kind].table})`) as { name: string }[]).map(
      ({ name }) => name,
    );
    const known = ['key', 'uid', 'revision', ...columnsOf(kind)];
    expect(columns.filter((column) => column !== 'note_private').toSorted()).toEqual(known.toSorted());
  }
  const loose = db
    .prepare("SELECT name FROM pragma_table_list WHERE strict = 0 AND name NOT LIKE 'sqlite_%'")
    .pluck();
  expect(loose.all()).toEqual([]);
  db.close();
});
