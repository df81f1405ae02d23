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
import { migrations } from '../../main/ledger/migrations/index';
import { PRAGMAS } from '../../main/ledger/open';
import type { WorkerCall } from '../../main/ledger/protocol';
import { Session } from '../../main/ledger/session';
import { columnsOf, TABLES } from '../../main/ledger/tables';
import { undo } from '../../main/ledger/undo';
import type { Case } from './cases';
import { rowsOfJars, type RowMaker, writeJars } from './ledger-rows';

const folder = mkdtempSync(join(tmpdir(), 'jarline-bench-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
let files = 0;
const newFile = (): string => join(folder, `${++files}.sqlite`);
const removed = (file: string): void => {
  for (const end of ['', '-wal', '-shm']) rmSync(file + end, { force: true });
};

const NOW = '2400-01-01T10:00:00+01:00';
const open = (file: string, mode: 'open' | 'create'): Session =>
  new Session({ file, mode, now: NOW, timeZone: 'Europe/Berlin', version: '0' });

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

/** Inserts the rows as they are, each statement prepared once. */
function bareMaker(db: Database.Database): RowMaker {
  const statements = new Map<string, Database.Statement>();
  const newId = idGenerator({ milliseconds: () => Date.parse(NOW), random: randomBytes });
  return (kind, values) => {
    let statement = statements.get(kind);
    if (!statement) {
      const columns = columnsOf(kind);
      const sql = `INSERT INTO ${TABLES[kind].table} (uid, ${columns.join(', ')}) VALUES (?${', ?'.repeat(columns.length)})`;
      statement = db.prepare(sql);
      statements.set(kind, statement);
    }
    return Number(statement.run(newId(), values).lastInsertRowid);
  };
}

function bareImport(db: Database.Database, jars: number): number {
  db.exec('BEGIN IMMEDIATE');
  const rows = rowsOfJars(bareMaker(db), jars);
  db.exec('COMMIT');
  return rows;
}

const CHILDREN_FIRST = ['note_row', 'outcome', 'seeding', 'jar', 'hold', 'batch', 'source'];

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
        .prepare('SELECT uid FROM jar WHERE key = ?')
        .pluck()
        .get(Math.ceil(jars / 2)),
    );
  let letters = 0;
  const group = `ledger of ${thousands(jars)} jars`;
  return [
    {
      group,
      task: 'open, ready to draw',
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
            const jar = bare().prepare('SELECT * FROM jar WHERE uid = ?');
            const parts = ['seeding', 'outcome', 'addition', 'portion'].map((table) =>
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
        'bare SQLite: one jar with its rows': { prepare: () => () => bareImport(bare(), 1) },
      },
    },
  ];
}

const oneJar = (from: string, number: number): Input<'batch.record'> => ({
  madeOn: '2399-12-31', word: null, note: null, sameLabelMeant: false, draft: null,
  holds: [{ startedAt: null, endedAt: null, hours: 36, planned: null, probe: null, readings: [], note: null }],
  jars: [
    {
      letter: `n${number}`, state: 'made', hold: 0, vessel: 'quart jar', finalVolume: null, finalVolumeKnown: null,
      milk: null, milkAmount: null, milkPackage: null, countPerMl: null, onShelf: true, goneOn: null, note: null,
      additions: [], outcome: null,
      seedings: [
        {
          fromJar: from, portion: null, part: null, source: null, package: null,
          amount: { value: 45, unit: 'mL', typed: '3 tbsp' },
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
