// Writing the facts of 100,000 jars under one act, beside the same rows inserted by bare better-sqlite3 into the same
// tables without triggers: with their rows of `record`, and without. Real files, in turns. Run: node main/launch/run.mjs
// tests/bench/bench-facts.ts [JARS]
import { randomBytes } from 'node:crypto';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import type { FactKind, Stored } from '../../core/ledger/facts/all-facts';
import { stillClock } from '../../main/ledger/clock';
import { Acts } from '../../main/ledger/facts/open-act';
import { Rows } from '../../main/ledger/facts/fact-rows';
import { columnsOf, tableOf, valuesOf } from '../../main/ledger/facts/tables';
import { idGenerator } from '../../main/ledger/ids';
import { migrations } from '../../main/ledger/migrations/all-migrations';
import { PRAGMAS } from '../../main/ledger/open';
import { shownMs, table } from './timing';

const JARS = Number(process.argv[2] ?? 100_000);
const TURNS = 3;
const DAY_MS = 86_400_000;
const clock = stillClock('2400-01-01T10:00:00Z');

type Insert = <K extends FactKind>(kind: K, fact: Partial<Stored<K>>) => number;

/** Five jars to a batch with hold, stays, seeding, milk, every other one looked at, each from a row of notes. */
function write(insert: Insert): number {
  let rows = 2;
  const source = insert('source', { name: 'Blue Tin', notePrivate: true });
  const file = insert('noteFile', { name: 'notes.csv', headings: ['date', 'jar', 'seed'] });
  let seed: number | null = null;
  for (let written = 0, number = 0; written < JARS; number++) {
    const madeOn = new Date(Date.parse('1900-01-01') + number * DAY_MS).toISOString().slice(0, 10);
    const batch = insert('batch', { madeOn });
    const hold = insert('hold', {
      purpose: 'jars',
      basis: 'notes',
      hours: 36,
      planned: { value: 38, unit: '°C', typed: '38' },
    });
    rows += 2;
    let next: number | null = null;
    for (let letter = 0; letter < 5 && written < JARS; letter++, written++) {
      const jar = insert('jar', {
        batch,
        letter: String.fromCharCode(97 + letter),
        state: 'made',
        vessel: 'quart jar',
        finalVolume: { value: 946, unit: 'mL', typed: '1 qt' },
      });
      insert('stay', { jar, hold });
      insert('milk', { jar, name: 'whole milk' });
      insert('seeding', {
        jar,
        fromJar: seed,
        source: seed === null ? source : null,
        actual: { value: 45, unit: 'mL', typed: '3 tbsp' },
      });
      insert('noteRow', {
        file,
        line: written + 2,
        occurrence: 1,
        cellsSha: `${batch}:${jar}`,
        jar,
        cells: `{"date":"${madeOn}","jar":"a","seed":"x"}`,
      });
      rows += 5;
      if (letter % 2 === 0) {
        const observation = insert('observation', {
          jar,
          stage: 'not said',
          setWord: 'firm',
          whey: 'a little',
        });
        insert('acidity', { observation, ph: 4.3, how: 'meter' });
        rows += 2;
      }
      next ??= jar;
    }
    seed = next;
  }
  return rows;
}

const folder = mkdtempSync(join(tmpdir(), 'jarline-bench-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));

function newFile(name: string, triggers: boolean): Database.Database {
  rmSync(join(folder, name), { force: true });
  const db = new Database(join(folder, name));
  for (const [pragma, value] of PRAGMAS) db.pragma(`${pragma} = ${value}`);
  for (const { sql } of migrations) db.exec(sql);
  db.exec(
    `INSERT INTO ledger (key, uid, own, demo, made_at, made_at_off) VALUES (1, '${'0'.repeat(36)}', 1, 0, 0, 0)`,
  );
  if (triggers) return db;
  const names = db.prepare("SELECT name FROM sqlite_schema WHERE type = 'trigger'").pluck().all() as string[];
  for (const one of names) db.exec(`DROP TRIGGER ${one}`);
  return db;
}

const newId = () => idGenerator({ milliseconds: clock.milliseconds, random: randomBytes });

function ours(): { rows: number; bytes: number } {
  const db = newFile('ours.sqlite', true);
  const acts = new Acts(new Rows(db), clock, newId());
  const rows =
    acts.run('notes.bringIn', 'notes.csv', null, (act) => write((kind, fact) => act.insert(kind, fact).key))
      ?.value ?? 0;
  return closed(db, rows);
}

function bare(records: boolean): { rows: number; bytes: number } {
  const db = newFile('bare.sqlite', false);
  if (!records) db.pragma('foreign_keys = OFF');
  const id = newId();
  db.exec(`BEGIN; INSERT INTO act (uid, kind, at, at_off, subject) VALUES ('${id()}', 'x', 0, 0, '')`);
  const record = db.prepare('INSERT INTO record (uid, kind, made_in) VALUES (?, ?, 1)');
  const inserts = new Map<FactKind, Database.Statement>();
  let last = 0;
  const rows = write((kind, fact) => {
    let insert = inserts.get(kind);
    if (!insert) {
      const columns = columnsOf(kind);
      insert = db.prepare(
        `INSERT INTO ${tableOf(kind)} (key, ${columns.join(', ')}) VALUES (?${', ?'.repeat(columns.length)})`,
      );
      inserts.set(kind, insert);
    }
    last += 1;
    if (records) record.run(id(), tableOf(kind));
    insert.run(last, valuesOf(kind, fact));
    return last;
  });
  db.exec('COMMIT');
  return closed(db, rows);
}

function closed(db: Database.Database, rows: number): { rows: number; bytes: number } {
  db.pragma('wal_checkpoint(TRUNCATE)');
  const file = db.name;
  db.close();
  return { rows, bytes: statSync(file).size };
}

const ways = {
  'under an act': ours,
  'bare, with records': () => bare(true),
  'bare, without records and references': () => bare(false),
};
const times = Object.keys(ways).map((): number[] => []);
const sizes: number[] = [];
let rows = 0;
for (let turn = 0; turn < TURNS; turn++) {
  for (const [index, way] of Object.values(ways).entries()) {
    const start = performance.now();
    const done = way();
    times[index]?.push(performance.now() - start);
    sizes[index] = done.bytes;
    rows = done.rows;
  }
}
const medians = times.map((all) => all.toSorted((a, b) => a - b)[Math.floor(all.length / 2)] ?? 0);
process.stdout.write(
  `${JARS} jars, ${rows} rows, median of ${TURNS}\n${table([
    ['', 'ms', 'of ours', 'MB'],
    ...Object.keys(ways).map((name, i) => [
      name,
      shownMs(medians[i] ?? 0),
      ((medians[i] ?? 0) / (medians[0] ?? 1)).toFixed(2),
      ((sizes[i] ?? 0) / 1e6).toFixed(1),
    ]),
  ])}\n`,
);
