// Ledger files of any size for tests of the window: made by the ledger itself, then filled with an invented family in
// one act, straight through its tables (recording a hundred thousand jars call by call would take minutes).
import { execFileSync } from 'node:child_process';
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import Database from 'better-sqlite3';
import { SET_WORDS } from '../core/ledger/records';
import { dayAfter, seededNumbers, syntheticFamily } from '../tests/families';

const headless = resolve(import.meta.dirname, '../dist/main/headless.js');

const PREFERENCES = JSON.stringify({
  theme: 'system',
  temperatures: '°C',
  volumes: 'metric',
  spoons: 'US',
  dates: 'day first',
  currency: 'EUR',
});

interface Wanted {
  readonly jars: number;
  readonly shape: 'bushy' | 'line' | 'lines';
  readonly spoiledOneIn?: number;
  /** Days from one batch to the next. */
  readonly daysApart: number;
}

/** A UUIDv7 in form (RFC 9562), counted up: the tests need them different, not unguessable. */
const uid = (count: number): string => `01900000-0000-7000-8000-${count.toString(16).padStart(12, '0')}`;

/** One invented strain, declared on a source of that name. */
const strains = (name: string): string =>
  JSON.stringify([{ genus: 'Genus', species: 'species', designation: name, countPerPiece: null }]);

/** @returns the path of a new ledger file in a folder of its own, to be removed by the caller */
export function syntheticLedger(wanted: Wanted): { file: string; folder: string } {
  const folder = mkdtempSync(join(tmpdir(), 'jarline-synthetic-'));
  const file = join(folder, 'jarline.sqlite');
  // The built headless host makes the empty ledger, as it would for a keeper.
  execFileSync(process.execPath, [headless, 'call', 'preferences.save', PREFERENCES, '--ledger', file], {
    stdio: 'pipe',
  });
  const records = syntheticFamily({ ...wanted, seed: 7 });
  const random = seededNumbers(11);
  const db = new Database(file);
  let uids = 0;
  const adder = (table: string, ...columns: string[]) => {
    const insert = db.prepare(
      `INSERT INTO ${table} (uid, ${columns.join(', ')}) VALUES (${['?', ...columns.map(() => '?')].join(', ')})`,
    );
    return (...values: unknown[]): number => {
      uids += 1;
      return Number(insert.run(uid(uids), ...values).lastInsertRowid);
    };
  };
  db.transaction(() => {
    const act = adder(
      'act',
      'kind',
      'at',
      'subject',
    )('notes.bringIn', '2026-01-01T09:00:00+01:00', 'invented');
    db.prepare('UPDATE open_act SET act = ? WHERE one = 1').run(act);
    const addSource = adder('source', 'name', 'form', 'strains', 'blend_total_per_piece');
    const sources = new Map(
      records.sources.map((source) => [
        source.key,
        addSource(source.name, source.culture ? 'culture' : 'capsules', strains(source.name), 1e9),
      ]),
    );
    const addBatch = adder('batch', 'made_on');
    const addHold = adder('hold', 'batch', 'hours', 'readings', 'basis');
    const addJar = adder('jar', 'batch', 'letter', 'hold', 'state', 'on_shelf');
    const addOutcome = adder('outcome', 'jar', 'set_word', 'signs', 'spoiled_said', 'fibre_did_this');
    const addSeeding = adder('seeding', 'jar', 'from_jar', 'source', 'amount_value', 'amount_unit');
    const batches = new Map<number, { batch: number; hold: number }>();
    const jars = new Map<number, number>();
    for (const jar of records.jars) {
      let made = batches.get(jar.batch);
      if (!made) {
        const batch = addBatch(dayAfter(Math.floor(jar.batch * wanted.daysApart)));
        made = { batch, hold: addHold(batch, 36, '[]', 'recorded') };
        batches.set(jar.batch, made);
      }
      const late = jar.key > wanted.jars - 6 ? 1 : null;
      const key = addJar(made.batch, jar.letter, made.hold, 'made', late);
      jars.set(jar.key, key);
      const word = random() < 0.12 ? null : (SET_WORDS[Math.floor(random() * SET_WORDS.length)] ?? null);
      if (word !== null || jar.spoiled) addOutcome(key, word, '[]', jar.spoiled ? 1 : 0, 0);
    }
    for (const seeding of records.seedings) {
      const from = seeding.fromJar === null ? null : jars.get(seeding.fromJar);
      const source = seeding.source === null ? null : sources.get(seeding.source);
      addSeeding(
        jars.get(seeding.jar),
        from,
        source,
        seeding.volumeMl ?? seeding.pieces,
        seeding.volumeMl === null ? 'pieces' : 'mL',
      );
    }
    db.prepare('UPDATE open_act SET act = NULL WHERE one = 1').run();
  })();
  db.pragma('wal_checkpoint(TRUNCATE)');
  db.close();
  return { file, folder };
}
