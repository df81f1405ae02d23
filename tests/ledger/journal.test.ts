// The journal: nothing is written without an act, every form is kept, and neither acts nor journal can be changed.
import { describe, expect, it } from 'vitest';
import { must, newSession, openSession, smallFamily } from './helpers';

describe('acts and journal refuse', () => {
  const session = newSession();
  smallFamily(session);
  const { db } = session.ledger;
  const key = Number(db.prepare('SELECT max(key) FROM journal').pluck().get());
  const act = Number(db.prepare('SELECT max(key) FROM act').pluck().get());
  const whole = JSON.stringify(db.prepare('SELECT * FROM journal').all());

  it.each([
    ['an update', `UPDATE journal SET after = '{}' WHERE key = ${key}`],
    ['a delete', `DELETE FROM journal WHERE key = ${key}`],
    ['a delete of everything', 'DELETE FROM journal'],
    ['insert or replace', `INSERT OR REPLACE INTO journal VALUES (${key}, ${act}, 'jar', 1, NULL, '{}')`],
    [
      'an upsert',
      `INSERT INTO journal VALUES (${key}, ${act}, 'jar', 1, NULL, '{}') ON CONFLICT DO UPDATE SET after = '{}'`,
    ],
    [
      'a row of its own',
      `INSERT INTO journal (act, table_name, row_key, after) VALUES (${act}, 'jar', 1, '{}')`,
    ],
    ['an act updated', `UPDATE act SET why = 'x' WHERE key = ${act}`],
    ['an act deleted', `DELETE FROM act WHERE key = ${act}`],
    [
      'an act replaced',
      `INSERT OR REPLACE INTO act VALUES (${act}, '${'0'.repeat(36)}', 'x', '2026-01-01T00:00:00Z', '', NULL, NULL)`,
    ],
    ['an edit of the schema', "UPDATE sqlite_schema SET sql = '' WHERE name = 'journal_kept'"],
    ['a record without an act', "UPDATE jar SET letter = 'z', revision = revision + 1"],
    ['a record removed without an act', 'DELETE FROM seeding'],
    [
      'a record added without an act',
      `INSERT INTO batch (uid, made_on) VALUES ('${'0'.repeat(36)}', '2026-01-01')`,
    ],
  ])('%s', (_what, sql) => {
    expect(() => db.exec(sql)).toThrow(/never changed|no open act|may not be modified/);
    expect(JSON.stringify(db.prepare('SELECT * FROM journal').all())).toBe(whole);
  });

  it('insert or replace also where another program left recursive_triggers off', () => {
    db.pragma('recursive_triggers = OFF');
    expect(() =>
      db.exec(`INSERT OR REPLACE INTO journal VALUES (${key}, ${act}, 'jar', 1, NULL, '{}')`),
    ).toThrow(/never changed|no open act/);
    db.pragma('recursive_triggers = ON');
  });
});

it('keeps each row’s form before and after, with numbers to the last digit', () => {
  const session = newSession();
  const { jars } = smallFamily(session);
  const value = 900.1 + 0.2;
  must(session, 'jar.correct', {
    id: jars[0],
    changes: { finalVolume: { value, unit: 'mL', typed: null }, note: 'a “note” with\nlines' },
    why: 'measured again',
  });
  const row = session.ledger.db
    .prepare('SELECT before, after FROM journal ORDER BY key DESC LIMIT 1')
    .get() as { before: string; after: string };
  expect(JSON.parse(row.before)).toMatchObject({ final_volume_value: 946, final_volume_typed: '1 qt' });
  const after = JSON.parse(row.after) as Record<string, unknown>;
  expect(after.final_volume_value).toBe(value);
  expect(after.note).toBe('a “note” with\nlines');
  expect('final_volume_typed' in after).toBe(false);
  const { acts } = must(session, 'history.list', {
    record: { kind: 'jar', id: jars[0] },
    before: null,
    limit: 10,
  });
  expect(acts.map(({ says }) => says)).toEqual(['corrected 1 Mar a', 'recorded 1 Mar a']);
  expect(acts[0]).toMatchObject({ why: 'measured again', undone: false });
  expect(acts[0]?.changes.map(({ field }) => field)).toEqual(['final volume', 'note']);
});

it('an act that fails half-way leaves nothing, not even the act', () => {
  const session = newSession();
  const { acts, db } = session.ledger;
  const before = db.prepare('SELECT count(*) FROM act').pluck().get();
  expect(() =>
    acts.run('batch.record', 'x', null, (act) => {
      act.insert('batch', { madeOn: '2026-03-01', word: null, note: null });
      throw new Error('half-way');
    }),
  ).toThrow('half-way');
  expect(db.prepare('SELECT count(*) FROM act').pluck().get()).toBe(before);
  expect(db.prepare('SELECT count(*) FROM batch').pluck().get()).toBe(0);
  expect(db.prepare('SELECT act FROM open_act').pluck().get()).toBeNull();
  expect(acts.run('batch.record', 'x', null, () => 1)).toBeNull();
  expect(db.prepare('SELECT count(*) FROM act').pluck().get()).toBe(before);
});

it('a row that is taken away leaves a tombstone, and revisions only rise', () => {
  const session = newSession();
  const { jars } = smallFamily(session);
  const { db, file } = session.ledger;
  must(session, 'seeding.set', { jar: jars[1], seedings: [] });
  expect(db.prepare('SELECT table_name FROM tombstone').pluck().all()).toEqual(['seeding']);
  must(session, 'act.undo', { act: null });
  expect(db.prepare('SELECT count(*) FROM tombstone').pluck().get()).toBe(0);
  expect(db.prepare('SELECT max(revision) FROM seeding').pluck().get()).toBe(2);
  session.close();
  openSession(file).close();
});
