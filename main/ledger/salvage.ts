// Saving what can be read of a damaged ledger into a new one. The damaged file stays beside it, as it was.
import { copyFileSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import Database from 'better-sqlite3';
import { replaceDamaged } from './backup';
import type { Clock } from './clock';
import { mendLog } from './log-check';
import { inspect, openInMemory, writeChecked } from './open';
import { ownName } from './place';
import { Refused } from '../refusal';

interface Schema {
  readonly name: string;
  readonly sql: string;
}

/**
 * Reads every row that still can be read, from both ends of each table, into a new ledger that takes the damaged one's
 * place. A row that points at one that was lost goes as well, so that the new ledger keeps every rule.
 * @throws Refused 'nothing readable'; then nothing was changed
 */
export function salvage(file: string, clock: Clock, newId: () => string): void {
  replaceDamaged(file, clock, (part, aside) => {
    const db = openInMemory({ clock, newId, demo: false });
    const mended = ownName(part);
    try {
      copyMended(aside, mended);
      fill(mended, db);
      writeChecked(db, part);
    } finally {
      db.close();
      for (const end of ['', '-wal', '-shm']) rmSync(mended + end, { force: true });
    }
    inspect(part, () => undefined);
  });
}

/** A copy to read from, in whose log a lost bit is put right. */
function copyMended(from: string, to: string): void {
  copyFileSync(from, to);
  if (!existsSync(`${from}-wal`)) return;
  const log = readFileSync(`${from}-wal`);
  mendLog(log);
  writeFileSync(`${to}-wal`, log);
}

function fill(from: string, db: Database.Database): void {
  let source: Database.Database;
  try {
    source = new Database(from, { readonly: true });
    // So that a rule or an index whose text is damaged keeps no table from being read: SQLite passes over it then.
    source.unsafeMode(true);
    source.pragma('writable_schema = ON');
  } catch {
    throw new Refused('nothing readable');
  }
  try {
    // The rows bring their own acts and journal, so the triggers that write those stand aside meanwhile.
    const triggers = db
      .prepare("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")
      .all() as Schema[];
    const tables = db
      .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
      .pluck()
      .all() as string[];
    db.pragma('foreign_keys = OFF');
    db.exec('BEGIN');
    for (const { name } of triggers) db.exec(`DROP TRIGGER ${name}`);
    let rows = 0;
    for (const table of tables) if (table !== 'open_act') rows += copyTable(source, db, table);
    if (rows === 0) throw new Refused('nothing readable');
    dropDangling(db);
    for (const { sql } of triggers) db.exec(sql);
    db.exec('COMMIT');
  } finally {
    source.close();
  }
}

/** By what the rows of a table lie in order: its own key where it has no other. */
function keysOf(db: Database.Database, table: string): string[] {
  const keys = db
    .prepare('SELECT name FROM pragma_table_info(?) WHERE pk > 0 ORDER BY pk')
    .pluck()
    .all(table) as string[];
  const { wr } = db.prepare('SELECT wr FROM pragma_table_list(?)').get(table) as { wr: number };
  return wr === 1 ? keys : ['rowid'];
}

/** Rows of a table, forwards until something can't be read, then backwards until there. */
function copyTable(source: Database.Database, db: Database.Database, table: string): number {
  const columns = (db.pragma(`table_info(${table})`) as { name: string }[]).map(({ name }) => name);
  const insert = db.prepare(
    `INSERT OR IGNORE INTO ${table} (${columns.join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`,
  );
  if (table === 'ledger') db.exec('DELETE FROM ledger');
  let copied = 0;
  for (const direction of ['ASC', 'DESC']) {
    try {
      const order = keysOf(db, table).map((key) => `${key} ${direction}`);
      const found = source
        .prepare(`SELECT ${columns.join(', ')} FROM ${table} ORDER BY ${order.join(', ')}`)
        .raw();
      for (const row of found.iterate() as IterableIterator<unknown[]>) copied += insert.run(row).changes;
      break;
    } catch (error) {
      // What lies behind the damage is out of reach from this end; the loop tries the other.
      process.stderr.write(`jarline: ${table}: ${error instanceof Error ? error.message : String(error)}\n`);
    }
  }
  if (table === 'ledger' && copied === 0) throw new Refused('nothing readable');
  return copied;
}

/** A row that points at nothing, as SQLite tells it: of a table without row numbers only which of its references. */
interface Dangling {
  readonly table: string;
  readonly rowid: number | null;
  readonly parent: string;
  readonly fkid: number;
}

/** Removes rows that point at nothing, and then those that pointed at them, until none are left. */
function dropDangling(db: Database.Database): void {
  for (;;) {
    const dangling = db.pragma('foreign_key_check') as Dangling[];
    if (dangling.length === 0) return;
    for (const { table, rowid, parent, fkid } of dangling) {
      if (rowid !== null) db.prepare(`DELETE FROM ${table} WHERE rowid = ?`).run(rowid);
      else
        for (const { from, to } of db
          .prepare('SELECT "from", "to" FROM pragma_foreign_key_list(?) WHERE id = ?')
          .all(table, fkid) as { from: string; to: string }[])
          db.exec(`DELETE FROM ${table} WHERE ${from} NOT IN (SELECT ${to} FROM ${parent})`);
    }
  }
}
