// The ledger on real files against bare better-sqlite3: the same tables, checks, references and indexes in the same
// kind of file, without acts, journal, rules and the family in memory.
import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import type { Input } from '../../core/contract';
import type { CallName } from '../../core/call-names';
import { idGenerator } from '../../main/ledger/ids';
import { migrations } from '../../main/ledger/migrations/all-migrations';
import { PRAGMAS } from '../../main/ledger/open';
import { CHECK_LATER_FROM } from '../../main/ledger/page-check';
import type { WorkerCall } from '../../main/ledger/worker-protocol';
import { Session } from '../../main/session';
import { FACT_KINDS, type FactKind } from '../../core/ledger/facts/all-facts';
import { columnFields, columnsOf, type Columns, tableOf, type Value } from '../../main/ledger/facts/tables';
import { undo } from '../../main/ledger/undo';
import type { Case } from './bench-cases';
import { writeJars } from './ledger-rows';

const folder = mkdtempSync(join(tmpdir(), 'jarline-bench-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
let files = 0;
const newFile = (): string => join(folder, `${++files}.sqlite`);
const removed = (file: string): void => {
  for (const end of ['', '-wal', '-shm']) rmSync(file + end, { force: true });
};

const NOW = '2400-01-01T10:00:00+01:00';
const open = (file: string, mode: 'open' | 'create'): Session =>
  new Session({
    file,
    mode,
    now: NOW,
    timeZone: 'Europe/Berlin',
    version: '0',
    checkLaterFrom: CHECK_LATER_FROM,
  });

const bringIn = (session: Session, jars: number): number =>
  session.ledger.acts.run('notes.bringIn', 'notes.csv', null, (act) => writeJars(act, jars))?.value ?? 0;

function ask<N extends CallName>(session: Session, name: N, input: Input<N>): unknown {
  const result = session.answer(name as WorkerCall, input);
  if (!result.ok) throw new Error(`${name}: ${result.error.code}`);
  return result.value;
}

/** The tables of a ledger without its triggers. */
function bareFile(file: string): Database.Database {
  const db = new Database(file);
  for (const [name, value] of PRAGMAS) db.pragma(`${name} = ${value}`);
  for (const { sql } of migrations) db.exec(sql);
  for (const trigger of db.prepare("SELECT name FROM sqlite_schema WHERE type = 'trigger'").pluck().all()) {
    db.exec(`DROP TRIGGER ${String(trigger)}`);
  }
  return db;
}

/** A row as bare SQLite inserts it; its own key and those it points at count from the first row of its import. */
interface BareRow {
  readonly kind: FactKind;
  readonly key: number;
  readonly values: Value[];
}

const NO_KEYS: readonly string[] = [
  'plain',
  'flag',
  'list',
  'document',
  'amount',
  'temperature',
  'price',
  'moment',
  'block',
  'ledger',
];
/** Which of a kind's columns hold keys of others. */
const pointing = (kind: FactKind): number[] => {
  let at = 0;
  return columnFields(kind).flatMap(({ as, columns }) => {
    const here = at;
    at += columns.length;
    return NO_KEYS.includes(as) ? [] : [here];
  });
};

const known = new Map<number, readonly BareRow[]>();
/** The rows that an import of that many jars writes, in their order: read once from a ledger that holds them. */
function rowsOf(jars: number): readonly BareRow[] {
  const before = known.get(jars);
  if (before) return before;
  const session = open(newFile(), 'create');
  bringIn(session, jars);
  const rows = FACT_KINDS.flatMap((kind) =>
    (session.ledger.db.prepare(`SELECT * FROM ${tableOf(kind)}`).all() as Columns[]).map((columns) => ({
      kind,
      key: Number(columns.key),
      values: columnsOf(kind).map((column) => columns[column] ?? null),
    })),
  ).toSorted((a, b) => a.key - b.key);
  session.close();
  known.set(jars, rows);
  return rows;
}

/** Inserts the rows as they are, each statement prepared once. */
function insertBare(db: Database.Database, rows: readonly BareRow[]): number {
  const newId = idGenerator({ milliseconds: () => Date.parse(NOW), random: randomBytes });
  const from = Number(db.prepare('SELECT coalesce(max(key), 0) FROM record').pluck().get());
  const record = db.prepare('INSERT INTO record (key, uid, kind, made_in) VALUES (?, ?, ?, 1)');
  const inserts = new Map(
    FACT_KINDS.map((kind) => {
      const columns = columnsOf(kind);
      const sql = `INSERT INTO ${tableOf(kind)} (key, ${columns.join(', ')}) VALUES (?${', ?'.repeat(columns.length)})`;
      return [kind, { statement: db.prepare(sql), keys: pointing(kind) }];
    }),
  );
  db.exec(
    "INSERT OR IGNORE INTO ledger (key, uid, own, demo, made_at, made_at_off) VALUES (1, 'bare', 1, 0, 0, 0)".replace(
      "'bare'",
      `'${newId()}'`,
    ),
  );
  db.prepare(
    "INSERT OR IGNORE INTO act (key, uid, kind, at, at_off, subject) VALUES (1, ?, 'notes.bringIn', 0, 0, '')",
  ).run(newId());
  for (const { kind, key, values } of rows) {
    const insert = inserts.get(kind);
    record.run(from + key, newId(), tableOf(kind));
    const shifted = values.slice();
    for (const at of insert?.keys ?? []) if (shifted[at] !== null) shifted[at] = Number(shifted[at]) + from;
    insert?.statement.run(from + key, shifted);
  }
  return rows.length;
}

function bareImport(db: Database.Database, jars: number): number {
  const rows = rowsOf(jars);
  db.exec('BEGIN IMMEDIATE');
  const count = insertBare(db, rows);
  db.exec('COMMIT');
  return count;
}

const CHILDREN_FIRST = [...FACT_KINDS.toReversed().map(tableOf), 'record'];

const thousands = (jars: number): string => jars.toLocaleString('en');

function writing(jars: number): Case[] {
  const ledger = { session: null as Session | null };
  const bare = { db: null as Database.Database | null };
  const freshLedger = (): Session => {
    const file = ledger.session?.ledger.file;
    ledger.session?.close();
    if (file) removed(file);
    return (ledger.session = open(newFile(), 'create'));
  };
  const freshBare = (): Database.Database => {
    const file = bare.db?.name;
    bare.db?.close();
    if (file) removed(file);
    rowsOf(jars);
    return (bare.db = bareFile(newFile()));
  };
  return [
    {
      group: 'ledger: one act',
      task: `bring in ${thousands(jars)} jars`,
      ours: {
        before: freshLedger,
        prepare: () => () => ledger.session && bringIn(ledger.session, jars),
      },
      others: {
        'bare SQLite': { before: freshBare, prepare: () => () => bare.db && bareImport(bare.db, jars) },
      },
    },
    {
      group: 'ledger: one act',
      task: `undo ${thousands(jars)} jars`,
      ours: {
        before: () => void bringIn(freshLedger(), jars),
        prepare: () => () => ledger.session && undo(ledger.session.ledger.acts, null),
      },
      others: {
        'bare SQLite': {
          before: () => void bareImport(freshBare(), jars),
          prepare: () => () => {
            bare.db?.exec(
              `BEGIN; ${CHILDREN_FIRST.map((table) => `DELETE FROM ${table};`).join(' ')} COMMIT;`,
            );
            return true;
          },
        },
      },
    },
  ];
}

function reading(jars: number): Case[] {
  const made: { session?: Session; db?: Database.Database } = {};
  const session = (): Session => {
    if (!made.session) {
      made.session = open(newFile(), 'create');
      bringIn(made.session, jars);
    }
    return made.session;
  };
  const bare = (): Database.Database => {
    if (!made.db) {
      made.db = bareFile(newFile());
      bareImport(made.db, jars);
    }
    return made.db;
  };
  const someJar = (db: Database.Database): string =>
    String(
      db
        .prepare('SELECT r.uid FROM jar j JOIN record r ON r.key = j.key ORDER BY j.key LIMIT 1 OFFSET ?')
        .pluck()
        .get(Math.ceil(jars / 2)),
    );
  let letters = 0;
  const group = `ledger of ${thousands(jars)} jars`;
  return [
    {
      group,
      task: 'open as the window does, ready to draw',
      ours: {
        prepare: () => {
          const { file } = session().ledger;
          return () => {
            const opened = open(file, 'open');
            const { size } = opened.ledger.index.jars;
            opened.close();
            return size;
          };
        },
      },
      others: {
        'bare SQLite: open, read jars and seedings': {
          prepare: () => {
            const { name } = bare();
            return () => {
              const db = new Database(name);
              const rows =
                db.prepare('SELECT * FROM jar').all().length +
                db.prepare('SELECT * FROM seeding').all().length;
              db.close();
              return rows;
            };
          },
        },
      },
    },
    {
      group,
      task: 'family.get',
      ours: { prepare: () => () => ask(session(), 'family.get', {}) },
      others: {
        'bare SQLite: open, read jars and seedings': {
          prepare: () => () => [
            bare().prepare('SELECT * FROM jar').all(),
            bare().prepare('SELECT * FROM seeding').all(),
          ],
        },
      },
    },
    {
      group,
      task: 'jar.get',
      ours: {
        prepare: () => {
          const id = someJar(session().ledger.db);
          return () => ask(session(), 'jar.get', { id });
        },
      },
      others: {
        'bare SQLite: one jar with its rows': {
          prepare: () => {
            const id = someJar(bare());
            const jar = bare().prepare(
              'SELECT j.* FROM record r JOIN jar j ON j.key = r.key WHERE r.uid = ?',
            );
            const parts = ['seeding', 'observation', 'addition', 'portion', 'milk', 'stay'].map((table) =>
              bare().prepare(`SELECT * FROM ${table} WHERE jar = ?`),
            );
            return () => {
              const found = jar.get(id) as { key: number };
              return parts.map((part) => part.all(found.key));
            };
          },
        },
      },
    },
    {
      group,
      task: 'record one jar, safe on the disk',
      ours: {
        prepare: () => {
          const from = someJar(session().ledger.db);
          return () => ask(session(), 'batch.record', oneJar(from, ++letters));
        },
      },
      others: {
        'bare SQLite: one jar with its rows': {
          prepare: () => {
            const db = bare();
            rowsOf(1);
            return () => bareImport(db, 1);
          },
        },
      },
    },
  ];
}

const oneJar = (from: string, number: number): Input<'batch.record'> => ({
  madeOn: '2399-12-31', madeFrom: null, madeTo: null, word: null, note: null, sameLabelMeant: false, draft: null,
  holds: [{ startedAt: null, endedAt: null, hours: 36, planned: null, probe: null, readings: [], note: null }],
  jars: [
    {
      letter: `n${number}`, state: 'made', hold: 0, vessel: 'quart jar', finalVolume: null, finalVolumeKnown: null,
      milk: null, milkAmount: null, milkPackage: null, countPerMl: null, onShelf: true, goneOn: null, note: null,
      additions: [], outcome: null,
      seedings: [
        {
          fromJar: from, portion: null, part: null, source: null, package: null,
          // Not told: a jar that seeds again and again holds no 45 mL for each.
          amount: null,
        },
      ],
    },
  ],
}); // prettier-ignore

export const ledgerCases: readonly Case[] = [
  ...writing(5_000),
  ...writing(100_000),
  ...reading(5_000),
  ...reading(100_000),
];
