// Released migrations never change: a ledger made by one program must be the ledger another expects.
import { createHash } from 'node:crypto';
import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { RECORD_KINDS } from '../../core/ledger/records';
import { migrations } from '../../main/ledger/migrations/index';
import { columnsOf, TABLES } from '../../main/ledger/tables';

/** sha256 of each released migration's SQL. Never edit a line here: add one for a new migration. */
const RELEASED: Record<string, string> = {
  '0001-ledger': 'c709a428abce19824086f754562df02ec906dde44e129f842e62903e0e53f07a',
  '0002-choice': '8bed6be04c21f3c2578b0d615a8ca33442994f0b968d3002e5179aede690da4b',
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
