// A ledger of facts in memory, on the bare tables: no host, no calls.
import { randomBytes } from 'node:crypto';
import Database from 'better-sqlite3';
import type { FactKind, Stored } from '../../core/ledger/facts/all-facts';
import { stillClock } from '../../main/ledger/clock';
import { Acts, type OpenAct } from '../../main/ledger/facts/open-act';
import { Rows } from '../../main/ledger/facts/fact-rows';
import { idGenerator } from '../../main/ledger/ids';
import { migrations } from '../../main/ledger/migrations/all-migrations';

export const NOW = '2026-03-14T18:30:00+01:00';

export interface Bare {
  readonly db: Database.Database;
  readonly rows: Rows;
  readonly acts: Acts;
  /** One act. */
  readonly act: <T>(work: (act: OpenAct) => T, undoes?: number | null) => T;
  /** Adds one fact in an act of its own. @returns its key */
  readonly add: <K extends FactKind>(kind: K, fact: Partial<Stored<K>>) => number;
}

export function bareLedger(): Bare {
  const db = new Database(':memory:');
  db.pragma('foreign_keys = ON');
  db.pragma('recursive_triggers = ON');
  for (const { sql } of migrations) db.exec(sql);
  const clock = stillClock(NOW);
  const newId = idGenerator({ milliseconds: clock.milliseconds, random: randomBytes });
  db.prepare('INSERT INTO ledger (key, uid, own, demo, made_at, made_at_off) VALUES (1, ?, 1, 0, 0, 0)').run(
    newId(),
  );
  const rows = new Rows(db);
  const acts = new Acts(rows, clock, newId);
  const act = <T>(work: (act: OpenAct) => T, undoes: number | null = null): T => {
    const done = acts.run('batch.record', 'x', null, work, undoes);
    if (!done) throw new Error('nothing changed');
    return done.value;
  };
  return { db, rows, acts, act, add: (kind, fact) => act((open) => open.insert(kind, fact).key) };
}

const TABLES_AROUND = [
  'act',
  'journal',
  'record',
  'open_act',
  'reading_block',
  'reading',
  'ledger',
  'draft',
  'undone_with',
];

/** Everything recorded, table by table, as one text; ids and form numbers are no part of it. */
export function stateOf(db: Database.Database): string {
  const tables = db
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%' ORDER BY name")
    .pluck()
    .all() as string[];
  return tables
    .filter((table) => !TABLES_AROUND.includes(table))
    .map((table) => `${table} ${JSON.stringify(db.prepare(`SELECT * FROM ${table} ORDER BY key`).all())}`)
    .join('\n');
}

/** What must hold of every ledger, whoever wrote: asked of SQLite alone. @returns what does not hold */
export function troubles(db: Database.Database): string[] {
  const found: string[] = [];
  const whole = db.pragma('integrity_check', { simple: true });
  if (whole !== 'ok') found.push(String(whole));
  if ((db.pragma('foreign_key_check') as unknown[]).length > 0) found.push('a row points at nothing');
  const zero = (what: string, sql: string): void => {
    const count = db.prepare(sql).pluck().get();
    if (count !== 0) found.push(`${what}: ${count}`);
  };
  zero('an act is open', 'SELECT count(*) FROM open_act WHERE act IS NOT NULL');
  zero(
    'a form number is not one more than the steps of its record',
    'SELECT count(*) FROM record r WHERE form_no <> 1 + (SELECT count(*) FROM journal j WHERE j.record = r.key)',
  );
  zero(
    'the end of a record is not its last step',
    `SELECT count(*) FROM record r WHERE gone_in IS NOT (SELECT CASE op WHEN 'take' THEN act END FROM journal j
       WHERE j.record = r.key ORDER BY j.key DESC LIMIT 1)`,
  );
  const kinds = db.prepare('SELECT DISTINCT kind FROM record').pluck().all() as string[];
  for (const kind of kinds) {
    zero(`a record of ${kind} has no row`, `SELECT count(*) FROM record r WHERE kind = '${kind}' AND gone_in IS NULL
      AND NOT EXISTS (SELECT 1 FROM ${kind} t WHERE t.key = r.key)`); // prettier-ignore
    zero(`a row of ${kind} has no record`, `SELECT count(*) FROM ${kind} t WHERE NOT EXISTS
      (SELECT 1 FROM record r WHERE r.key = t.key AND r.kind = '${kind}' AND r.gone_in IS NULL)`); // prettier-ignore
  }
  return found;
}

/** The rows as they were once an act was done: the journal's forms before, put back from the newest on. Plain SQL and JSON. */
export function stateAfter(db: Database.Database, act: number): string {
  const forms = new Map<number, Record<string, unknown> | null>();
  const kindOf = new Map<number, string>();
  const records = db.prepare('SELECT key, kind, made_in, gone_in FROM record ORDER BY key').all() as {
    key: number; kind: string; made_in: number; gone_in: number | null;
  }[]; // prettier-ignore
  for (const { key, kind, gone_in } of records) {
    kindOf.set(key, kind);
    const row = db.prepare(`SELECT * FROM ${kind} WHERE key = ?`).get(key) as
      Record<string, unknown> | undefined;
    if ((row === undefined) !== (gone_in !== null)) throw new Error(`record ${key} ends and does not`);
    forms.set(key, row ? { ...row, key: undefined } : null);
  }
  const steps = db.prepare('SELECT record, before FROM journal WHERE act > ? ORDER BY key DESC').all(act) as {
    record: number; before: string | null;
  }[]; // prettier-ignore
  for (const { record, before } of steps) {
    forms.set(record, before === null ? null : (JSON.parse(before) as Record<string, unknown>));
  }
  for (const { key, made_in } of records) if (made_in > act) forms.set(key, null);
  const lines = [...forms].flatMap(([key, form]) => {
    if (!form) return [];
    const filled = Object.entries(form)
      .filter(([column, value]) => value !== null && value !== undefined && column !== 'home_form')
      .toSorted(([a], [b]) => (a < b ? -1 : 1));
    return [`${kindOf.get(key)} ${key} ${JSON.stringify(filled)}`];
  });
  return lines.join('\n');
}
