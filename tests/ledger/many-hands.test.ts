// Two programs on one ledger, odd places and odd texts, a hundred steps back: what a kitchen does to a file.
import { existsSync, readdirSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { backupFolder } from '../../main/ledger/worker-protocol';
import {
  ask,
  batchOf,
  fromJar,
  must,
  newFile,
  newFolder,
  newSession,
  openSession,
  plainJar,
  refusalOf,
  stateOf,
} from './ledger-files';

describe('two programs on one ledger', () => {
  it('each sees what the other records, and is told once', () => {
    const file = newFile();
    const mine = openSession(file, 'create');
    const other = openSession(file);
    const first = must(other, 'batch.record', batchOf('2026-03-01', [plainJar('a')]));
    expect([mine.changedElsewhere(), mine.changedElsewhere()]).toEqual([true, false]);
    expect(must(mine, 'family.get', {}).jars.map(({ label }) => label)).toEqual(['1 Mar a']);

    // Seeded from the other's jar, with the index read anew; a jar of one's own is no news.
    const seeded = batchOf('2026-03-05', [plainJar('a', { seedings: [fromJar(first.jars[0] ?? '')] })]);
    must(mine, 'batch.record', seeded);
    expect(mine.changedElsewhere()).toBe(false);
    expect(other.changedElsewhere()).toBe(true);
    const generations = must(other, 'family.get', {}).jars.map(({ generation }) => generation.deepest);
    expect(generations.toSorted()).toEqual([1, 2]);

    // Undone elsewhere, gone here too.
    must(other, 'act.undo', { act: null });
    expect(mine.changedElsewhere()).toBe(true);
    expect(must(mine, 'app.state', {}).ledger?.jars).toBe(1);
    expect(must(mine, 'app.state', {}).redo).toContain('5 Mar a');
    mine.close();
    other.close();
  });

  it('an undo chooses its act once nobody else can write', () => {
    const file = newFile();
    const mine = openSession(file, 'create');
    const other = openSession(file);
    must(mine, 'batch.record', batchOf('2026-03-01', [plainJar('a')]));
    const { db } = mine.ledger;
    const exec = db.exec.bind(db);
    const between: string[] = [];
    db.exec = (sql: string) => {
      if (sql === 'BEGIN IMMEDIATE' && between.length === 0)
        between.push(must(other, 'batch.record', batchOf('2026-03-05', [plainJar('b')])).act);
      return exec(sql);
    };
    expect(must(mine, 'act.undo', { act: null }).says).toContain('5 Mar b');
    const { acts } = must(other, 'history.list', { record: null, before: null, limit: 5 });
    expect(acts.map(({ kind }) => kind)).toEqual(['act.undo', 'batch.record', 'batch.record']);
    expect(must(other, 'family.get', {}).jars.map(({ label }) => label)).toEqual(['1 Mar a']);
    mine.close();
    other.close();
  });

  it('one that is writing makes the other wait, then say so', () => {
    const file = newFile();
    const mine = openSession(file, 'create');
    const other = openSession(file);
    other.ledger.db.pragma('busy_timeout = 50');
    mine.ledger.db.exec('BEGIN IMMEDIATE');
    expect(refusalOf(other, 'batch.record', batchOf('2026-03-01', [plainJar('a')]))).toMatchObject({
      code: 'busy',
      sentence: expect.stringContaining('Another program is using this ledger'),
    });
    expect(must(other, 'family.get', {}).jars).toEqual([]);
    mine.ledger.db.exec('ROLLBACK');
    must(other, 'batch.record', batchOf('2026-03-01', [plainJar('a')]));
    mine.close();
    other.close();
  });
});

it('a full disk is said, nothing is kept of what did not fit, and recording goes on once there is room', () => {
  const session = newSession();
  must(session, 'batch.record', batchOf('2026-03-01', [plainJar('a')]));
  const { db } = session.ledger;
  const before = stateOf(session);
  // SQLite refuses further pages with the error it gives on a full disk (SQLITE_FULL).
  db.pragma(`max_page_count = ${Number(db.pragma('page_count', { simple: true }))}`);
  const long = batchOf('2026-03-02', [plainJar('a', { note: 'x'.repeat(10_000) })], {
    note: 'y'.repeat(10_000),
  });
  const refused = refusalOf(session, 'batch.record', long);
  expect(refused).toMatchObject({ code: 'disk full', sentence: expect.stringContaining('The disk is full') });
  expect(stateOf(session)).toBe(before);
  expect(must(session, 'app.state', {}).ledger?.jars).toBe(1);
  db.pragma('max_page_count = 1000000');
  must(session, 'batch.record', long);
  expect(must(session, 'family.get', {}).jars.length).toBe(2);
  session.close();
});

it.each(['my jars', 'Jägerstraße – кефир 乳', "O'Hara's %20 #1 ?", '🫙 jars', 'a;b,c'])(
  'a ledger in a folder named “%s” is made, backed up and opened again',
  (name) => {
    const file = join(newFolder(), name, `${name}.sqlite`);
    const session = openSession(file, 'create');
    must(session, 'batch.record', batchOf('2026-03-01', [plainJar('a')]));
    expect(must(session, 'app.state', {}).ledger).toMatchObject({ name, file });
    const { file: copy } = must(session, 'ledger.backup', {});
    expect(dirname(copy)).toBe(backupFolder(file));
    expect(basename(copy).startsWith(name)).toBe(true);
    session.close();
    expect(readdirSync(dirname(file)).toSorted()).toEqual([`${name}-backups`, `${name}.sqlite`].toSorted());
    const again = openSession(file);
    expect(must(again, 'family.get', {}).jars.length).toBe(1);
    again.close();
    const backup = openSession(copy);
    expect(must(backup, 'family.get', {}).jars.length).toBe(1);
    backup.close();
    expect(existsSync(copy)).toBe(true);
  },
);

it('the longest label there can be is kept whole, found and told; one letter more is refused', () => {
  const session = newSession();
  const word = `${'wörd '.repeat(40).slice(0, 199)}x`;
  const letter = 'ä'.repeat(20);
  const entry = batchOf('2026-03-01', [plainJar(letter), plainJar('b')], { word });
  const [jar = ''] = must(session, 'batch.record', entry).jars;
  const label = `1 Mar ${word} ${letter}`;
  expect(must(session, 'jar.get', { id: jar }).view.label).toBe(label);
  const found = must(session, 'jar.find', { text: word.slice(0, 150), limit: 5, notAfter: null }).jars;
  expect(found.map((one) => one.label)).toContain(label);
  expect(must(session, 'history.list', { record: null, before: null, limit: 1 }).acts[0]?.says).toContain(
    '1 Mar wörd',
  );
  must(session, 'act.undo', { act: null });
  must(session, 'act.redo', {});
  expect(must(session, 'jar.get', { id: jar }).view.label).toBe(label);
  expect(ask(session, 'batch.record', { ...entry, word: `${word}y` })).toMatchObject({
    error: { code: 'invalid' },
  });
  expect(ask(session, 'batch.record', batchOf('2026-03-02', [plainJar(`${letter}ä`)]))).toMatchObject({
    error: { code: 'invalid' },
  });
  session.close();
});

it('a hundred batches undone one after another, and done again', () => {
  const session = newSession();
  const states = [stateOf(session)];
  let seed: string | null = null;
  for (let day = 0; day < 100; day++) {
    const madeOn = new Date(Date.UTC(2025, 10, 1 + day)).toISOString().slice(0, 10);
    const seedings: ReturnType<typeof fromJar>[] = seed === null ? [] : [fromJar(seed)];
    seed = must(session, 'batch.record', batchOf(madeOn, [plainJar('a', { seedings })])).jars[0] ?? null;
    states.push(stateOf(session));
  }
  const deepest = (): number =>
    Math.max(0, ...must(session, 'family.get', {}).jars.map(({ generation }) => generation.deepest));
  expect(deepest()).toBe(100);
  for (let left = 99; left >= 0; left--) {
    must(session, 'act.undo', { act: null });
    expect(stateOf(session) === states[left], `after ${100 - left} steps back`).toBe(true);
  }
  expect(refusalOf(session, 'act.undo', { act: null }).code).toBe('nothing to undo');
  expect(deepest()).toBe(0);
  for (let back = 1; back <= 100; back++) must(session, 'act.redo', {});
  expect(stateOf(session) === states[100]).toBe(true);
  expect(deepest()).toBe(100);
  expect(refusalOf(session, 'act.redo', {}).code).toBe('nothing to redo');
  session.close();
});
