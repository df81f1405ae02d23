// Opening: what is not ours, whole and known is refused with a sentence and left byte for byte as it was.
import { appendFileSync, chmodSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { stillClock } from '../../main/ledger/clock';
import { idGenerator } from '../../main/ledger/ids';
import { latestOf, migrations } from '../../main/ledger/migrations/all-migrations';
import { APPLICATION_ID, closeLedger, openLedger, PRAGMAS } from '../../main/ledger/open';
import { Refused } from '../../main/refusal';
import { NamedLedger } from '../../main/named-ledger';
import {
  footprint, must, newFile, newSession, NOW, openSession, plainSource, smallFamily, stateOf,
} from './ledger-files'; // prettier-ignore

const clock = stillClock(NOW);
const options = {
  clock,
  newId: idGenerator({ milliseconds: clock.milliseconds, random: (length) => new Uint8Array(length) }),
  demo: false,
};

/** A closed ledger that holds a few jars. */
function filledFile(): string {
  const session = newSession();
  smallFamily(session);
  const { file } = session.ledger;
  session.close();
  return file;
}

/** Why a file can't be opened; null where it can. */
function refusedBy(file: string): string | null {
  const session = openSession(file);
  const code = session.trouble?.refusal.code ?? null;
  session.close();
  return code;
}

describe('an open ledger', () => {
  it('has every pragma as it was set', () => {
    const db = openLedger(newFile(), { ...options, mode: 'create' });
    for (const [name, , reads] of PRAGMAS)
      expect([name, db.pragma(name, { simple: true })]).toEqual([name, reads]);
    // WAL resets synchronous to the build's default at the next write, if it was not set after the switch.
    db.exec("INSERT INTO draft VALUES ('a', '{}', 0, 0)");
    expect(db.pragma('synchronous', { simple: true })).toBe(2);
    expect(db.pragma('application_id', { simple: true })).toBe(APPLICATION_ID);
    expect(db.pragma('user_version', { simple: true })).toBe(latestOf(migrations));
    closeLedger(db);
  });

  it('is the file alone once it is closed', () => {
    const file = filledFile();
    expect(Object.keys(footprint(dirname(file)))).toEqual(['ledger.sqlite']);
  });

  it('leaves an empty file empty for as long as it is only looked at from the command line', () => {
    const file = newFile();
    writeFileSync(file, '');
    const named = new NamedLedger(file, NOW);
    expect(named.trouble()).toBeNull();
    for (const name of ['family.get', 'app.state', 'history.list'] as const) {
      const input = name === 'history.list' ? { record: null, before: null, limit: 5 } : {};
      const result = named.answer(name, input);
      expect(result.ok || result.error.code).toBe('empty file');
      expect(readFileSync(file).length).toBe(0);
      expect(Object.keys(footprint(dirname(file)))).toEqual(['ledger.sqlite']);
    }
    expect(named.answer('source.save', plainSource('Blue Tin')).ok).toBe(true);
    expect(named.answer('app.state', {})).toMatchObject({ ok: true, value: { ledger: { sources: 1 } } });
    named.close();
  });

  it('takes an empty file as a new ledger', () => {
    const file = newFile();
    writeFileSync(file, '');
    const session = openSession(file);
    expect(must(session, 'app.state', {}).ledger?.jars).toBe(0);
    session.close();
  });
});

/** Overwrites some pages in the middle of a file. */
function damage(file: string): void {
  const bytes = readFileSync(file);
  for (let at = 4096 * 3; at < 4096 * 12 && at < bytes.length; at++) bytes[at] = (at * 7) % 251;
  writeFileSync(file, bytes);
}

const refused: Record<string, { make: (file: string) => void; kind: string; says: RegExp }> = {
  'a text file': {
    make: (file) => writeFileSync(file, 'Date,Jar\n10/15/25,A\n'.repeat(20)),
    kind: 'foreign',
    says: /not a Jarline ledger/,
  },
  'a short text file': {
    make: (file) => writeFileSync(file, 'hello'),
    kind: 'foreign',
    says: /not a Jarline ledger/,
  },
  'another program’s database': {
    make: (file) => {
      const db = new Database(file);
      db.exec('CREATE TABLE jar (a)');
      db.close();
    },
    kind: 'foreign',
    says: /not a Jarline ledger/,
  },
  'a newer ledger': {
    make: (file) => {
      const db = openLedger(file, { ...options, mode: 'create' });
      db.pragma(`user_version = ${latestOf(migrations) + 1}`);
      closeLedger(db);
    },
    kind: 'newer',
    says: /newer Jarline/,
  },
  'a ledger of before the first release': {
    make: (file) => {
      const db = openLedger(file, { ...options, mode: 'create' });
      db.pragma('user_version = 2');
      closeLedger(db);
    },
    kind: 'older',
    says: /made before the first release. Bring its notes in again/,
  },
  'a damaged ledger': {
    make: (file) => {
      writeFileSync(file, readFileSync(filledFile()));
      damage(file);
    },
    kind: 'damaged',
    says: /damaged/,
  },
  'a ledger cut short': {
    make: (file) => {
      const whole = readFileSync(filledFile());
      writeFileSync(file, whole.subarray(0, Math.floor(whole.length / 2)));
    },
    kind: 'damaged',
    says: /damaged/,
  },
  'a ledger whose journal trigger was dropped': {
    make: (file) => {
      writeFileSync(file, readFileSync(filledFile()));
      const db = new Database(file);
      db.exec('DROP TRIGGER journal_kept');
      db.close();
    },
    kind: 'damaged',
    says: /altered by another program/,
  },
  'a folder': { make: (file) => mkdirSync(file), kind: 'unreadable', says: /is a folder/ },
  'a file that is not there': { make: () => undefined, kind: 'unreadable', says: /There is no ledger at/ },
};

describe('is refused and left as it was:', () => {
  it.each(Object.entries(refused))('%s', (_what, { make, kind, says }) => {
    const file = newFile();
    make(file);
    const before = footprint(dirname(file));
    const session = openSession(file);
    const state = must(session, 'app.state', {});
    expect(state.ledger).toBeNull();
    expect(state.trouble?.kind).toBe(kind);
    expect(state.trouble?.sentence).toMatch(says);
    const write = session.answer('batch.record', {});
    expect(write.ok).toBe(false);
    session.close();
    expect(footprint(dirname(file))).toEqual(before);
  });

  it('a file that may not be written to', () => {
    const file = filledFile();
    chmodSync(file, 0o444);
    chmodSync(dirname(file), 0o555);
    const before = footprint(dirname(file));
    // The owner of the machine may write anywhere: look as somebody else.
    const root = process.geteuid?.() === 0;
    if (root) process.seteuid?.(65_534);
    try {
      const state = must(openSession(file), 'app.state', {});
      expect(state.trouble?.kind).toBe('unreadable');
      expect(state.trouble?.sentence).toMatch(/can't be written to/);
    } finally {
      if (root) process.seteuid?.(0);
      chmodSync(dirname(file), 0o755);
    }
    expect(footprint(dirname(file))).toEqual(before);
  });

  it('a damaged ledger with a log that was not merged', () => {
    const session = newSession();
    smallFamily(session);
    const { file } = session.ledger;
    const copy = newFile();
    for (const end of ['', '-wal']) writeFileSync(copy + end, readFileSync(file + end));
    session.close();
    damage(copy);
    appendFileSync(`${copy}-wal`, 'nonsense at the end');
    const bytes = readFileSync(copy);
    openSession(copy);
    expect(readFileSync(copy).equals(bytes)).toBe(true);
  });
});

it('a log left by a killed program is taken in, not lost', () => {
  const session = newSession();
  smallFamily(session);
  const { file } = session.ledger;
  const copy = newFile();
  for (const end of ['', '-wal']) writeFileSync(copy + end, readFileSync(file + end));
  const reopened = openSession(copy);
  expect(stateOf(reopened)).toBe(stateOf(session));
  session.close();
  reopened.close();
});

describe('a log of which a bit was lost', () => {
  /** A ledger with acts in its log only, as a killed program leaves it, and its state after each of them. */
  function killed(): { file: string; log: Buffer; states: string[] } {
    const session = newSession();
    const states = [stateOf(session)];
    for (const name of ['Blue Tin', 'Meadow Pot', 'Old Crock']) {
      must(session, 'source.save', plainSource(name));
      states.push(stateOf(session));
    }
    const file = newFile();
    for (const end of ['', '-wal']) writeFileSync(file + end, readFileSync(session.ledger.file + end));
    session.close();
    return { file, log: readFileSync(`${file}-wal`), states };
  }
  const FRAME = 24 + 4096;

  it('is told wherever it lies, and left as it is', () => {
    const { file, log } = killed();
    const bytes = readFileSync(file);
    const frames = (log.length - 32) / FRAME;
    const places = Array.from({ length: frames }, (_, at) => 32 + at * FRAME);
    // In the heading of the log, in those of its frames (page, commit, salts, sums), and in their pages.
    const within = [0, 4, 10, 16, 20, 100, 4000];
    const all = [
      3,
      8,
      17,
      30,
      ...places.flatMap((place, at) => [place + (within[at % within.length] ?? 0), place + 24 + at]),
    ];
    for (const at of all) {
      const broken = Buffer.from(log);
      broken.writeUInt8(broken.readUInt8(at) ^ (1 << (at % 8)), at);
      writeFileSync(`${file}-wal`, broken);
      expect([at, refusedBy(file)]).toEqual([at, 'log damaged']);
      expect(readFileSync(file).equals(bytes) && readFileSync(`${file}-wal`).equals(broken)).toBe(true);
    }
    const session = openSession(file);
    const { trouble } = must(session, 'app.state', {});
    expect(trouble?.kind).toBe('damaged');
    expect(trouble?.sentence).toMatch(
      /ledger\.sqlite-wal\) is damaged: the last (thing|\d things) recorded can’t be read/,
    );
    session.close();
  });

  it('is put right by saving what can be read, and the log is kept beside as it was; of more bits what lies before them is saved', () => {
    const { file, log, states } = killed();
    const bits = [
      [17],
      [32 + FRAME + 10],
      [32 + 3 * FRAME + 2000],
      [200, log.length - 9],
      [log.length - 5, log.length - 90],
    ];
    for (const places of bits) {
      const broken = Buffer.from(log);
      for (const at of places) broken.writeUInt8(broken.readUInt8(at) ^ 8, at);
      const copy = newFile();
      writeFileSync(copy, readFileSync(file));
      writeFileSync(`${copy}-wal`, broken);
      const session = openSession(copy);
      must(session, 'ledger.recover', { how: 'save what can be read' });
      const state = states.indexOf(stateOf(session));
      // Two bits in one frame are too many; in two frames each is put right.
      const [first = 0, second] = places.map((at) => Math.floor((at - 32) / FRAME));
      if (second === undefined || first !== second)
        expect([places, state]).toEqual([places, states.length - 1]);
      else expect([places, state >= 0 && state < states.length - 1]).toEqual([places, true]);
      const names = readdirSync(dirname(copy));
      const aside = names.find((name) => name.endsWith('.sqlite-wal') && name.includes('-damaged')) ?? '';
      expect(readFileSync(join(dirname(copy), aside)).equals(broken)).toBe(true);
      expect(names.filter((name) => name.includes('.part'))).toEqual([]);
      session.close();
    }
  });

  it('is no matter of a log that ends anywhere, or that was begun again over an older one', () => {
    const { file, log, states } = killed();
    for (let length = 0; length <= log.length; length += 4001) {
      const copy = newFile();
      writeFileSync(copy, readFileSync(file));
      writeFileSync(`${copy}-wal`, log.subarray(0, length));
      const opened = openSession(copy);
      expect(states).toContain(stateOf(opened));
      opened.close();
    }
    const session = newSession();
    for (let at = 0; at < 5; at += 1) must(session, 'source.save', plainSource(`Tin ${at}`));
    session.ledger.db.pragma('wal_checkpoint(RESTART)');
    must(session, 'source.save', plainSource('Blue Tin'));
    // What was given up leaves its pages in the log, and commits none of them.
    session.ledger.db.pragma('cache_size = 1');
    const copy = newFile();
    const { db } = session.ledger;
    db.exec('BEGIN; CREATE TABLE much (text TEXT)');
    for (let at = 0; at < 60; at += 1) db.prepare('INSERT INTO much VALUES (?)').run('x'.repeat(4000));
    db.exec('ROLLBACK');
    must(session, 'source.save', plainSource('Meadow Pot'));
    for (const end of ['', '-wal']) writeFileSync(copy + end, readFileSync(session.ledger.file + end));
    const opened = openSession(copy);
    expect(stateOf(opened)).toBe(stateOf(session));
    opened.close();
    session.close();
  });
});

describe('migrating', () => {
  const next = {
    version: latestOf(migrations) + 1,
    name: 'test',
    sql: 'ALTER TABLE batch ADD COLUMN weather TEXT; CREATE TABLE more (a INTEGER) STRICT;',
  };

  it('makes a checked copy first, then runs everything in one transaction', () => {
    const file = filledFile();
    const db = openLedger(file, { ...options, mode: 'open', migrations: [...migrations, next] });
    expect(db.pragma('user_version', { simple: true })).toBe(next.version);
    const backups = Object.keys(footprint(join(dirname(file), 'ledger-backups')));
    expect(backups).toEqual([`before-version-${next.version}-20260314T173000Z.sqlite`]);
    const copy = new Database(join(dirname(file), 'ledger-backups', backups[0] ?? ''), { readonly: true });
    expect(copy.pragma('user_version', { simple: true })).toBe(latestOf(migrations));
    expect(copy.prepare('SELECT count(*) FROM jar').pluck().get()).toBe(4);
    copy.close();
    db.close();
  });

  it('that fails leaves version, schema and rows as they were', () => {
    const file = filledFile();
    const before = new Database(file, { readonly: true });
    const schema = before.prepare('SELECT sql FROM sqlite_schema').all();
    before.close();
    const broken = { ...next, sql: `${next.sql} INSERT INTO nowhere VALUES (1);` };
    expect(() => openLedger(file, { ...options, mode: 'open', migrations: [...migrations, broken] })).toThrow(
      /nowhere/,
    );
    const session = openSession(file);
    expect(session.ledger.db.prepare('SELECT sql FROM sqlite_schema').all()).toEqual(schema);
    expect(must(session, 'app.state', {}).ledger?.jars).toBe(4);
    session.close();
  });
});

it('a new ledger is not made over a file that is there', () => {
  const file = filledFile();
  expect(() => openLedger(file, { ...options, mode: 'create' })).toThrow(Refused);
});

it('a file whose making was cut off at its first page is as good as new', () => {
  const file = newFile();
  const db = new Database(file);
  db.pragma(`application_id = ${APPLICATION_ID}`);
  db.close();
  const session = openSession(file);
  smallFamily(session);
  expect(must(session, 'app.state', {}).ledger?.jars).toBe(4);
  session.close();
});
