// The journal: nothing is written without an act, every form is kept, and neither acts nor journal can be changed.
import { describe, expect, it } from 'vitest';
import { changesOf } from '../../main/ledger/facts/act-changes';
import { must, newSession, openSession, smallFamily } from './ledger-files';

describe('acts and journal refuse', () => {
  const session = newSession();
  smallFamily(session);
  const { db } = session.ledger;
  const [seeded] = must(session, 'batch.list', { before: null, limit: 1 }).batches;
  must(session, 'jar.correct', { id: seeded?.jars[0]?.id ?? '', changes: { vessel: 'jug' } });
  const key = Number(db.prepare('SELECT max(key) FROM journal').pluck().get());
  const jar = Number(db.prepare('SELECT max(key) FROM jar').pluck().get());
  const act = Number(db.prepare('SELECT max(key) FROM act').pluck().get());
  const whole = JSON.stringify(db.prepare('SELECT * FROM journal').all());

  it.each([
    ['an update', `UPDATE journal SET before = '{}' WHERE key = ${key}`],
    ['a delete', `DELETE FROM journal WHERE key = ${key}`],
    ['a delete of everything', 'DELETE FROM journal'],
    ['insert or replace', `INSERT OR REPLACE INTO journal VALUES (${key}, ${act}, ${jar}, 'change', '{}')`],
    [
      'an upsert',
      `INSERT INTO journal VALUES (${key}, ${act}, ${jar}, 'change', '{}') ON CONFLICT DO UPDATE SET before = '{}'`,
    ],
    [
      'a row of its own',
      `INSERT INTO journal (act, record, op, before) VALUES (${act}, ${jar}, 'change', '{}')`,
    ],
    ['an act updated', `UPDATE act SET why = 'x' WHERE key = ${act}`],
    ['an act deleted', `DELETE FROM act WHERE key = ${act}`],
    [
      'an act replaced',
      `INSERT OR REPLACE INTO act VALUES (${act}, '${'0'.repeat(36)}', 'x', 0, 0, '', NULL, NULL, 1)`,
    ],
    ['an edit of the schema', "UPDATE sqlite_schema SET sql = '' WHERE name = 'journal_kept'"],
    ['a record without an act', "UPDATE jar SET letter = 'z'"],
    ['a record removed without an act', 'DELETE FROM seeding'],
    [
      'a record added without an act',
      `INSERT INTO record (uid, kind, made_in) VALUES ('${'0'.repeat(36)}', 'batch', ${act})`,
    ],
  ])('%s', (_what, sql) => {
    expect(() => db.exec(sql)).toThrow(/never changed|no open act|may not be modified/);
    expect(JSON.stringify(db.prepare('SELECT * FROM journal').all())).toBe(whole);
  });

  it('insert or replace also where another program left recursive_triggers off', () => {
    db.pragma('recursive_triggers = OFF');
    expect(() =>
      db.exec(`INSERT OR REPLACE INTO journal VALUES (${key}, ${act}, ${jar}, 'change', '{}')`),
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
  const { db } = session.ledger;
  const before = db
    .prepare("SELECT before FROM journal WHERE op = 'change' ORDER BY key DESC LIMIT 1")
    .pluck();
  expect(JSON.parse(String(before.get()))).toMatchObject({ final_volume_v: 946, final_volume_t: '1 qt' });
  const key = session.ledger.rows.keyOf('jar', jars[0]);
  const act = Number(db.prepare('SELECT max(key) FROM act').pluck().get());
  const [{ after } = { after: null }] = changesOf(session.ledger.rows, act, { record: key });
  expect(after?.final_volume_v).toBe(value);
  expect('final_volume_t' in (after ?? {})).toBe(false);
  expect(db.prepare('SELECT text FROM remark WHERE jar = ?').pluck().get(key)).toBe('a “note” with\nlines');
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
      act.insert('batch', { madeOn: '2026-03-01' });
      throw new Error('half-way');
    }),
  ).toThrow('half-way');
  expect(db.prepare('SELECT count(*) FROM act').pluck().get()).toBe(before);
  expect(db.prepare('SELECT count(*) FROM batch').pluck().get()).toBe(0);
  expect(db.prepare('SELECT act FROM open_act').pluck().get()).toBeNull();
  expect(acts.run('batch.record', 'x', null, () => 1)).toBeNull();
  expect(db.prepare('SELECT count(*) FROM act').pluck().get()).toBe(before);
});

it('a row that is taken away leaves its record, and the numbers of forms only rise', () => {
  const session = newSession();
  const { jars } = smallFamily(session);
  const { db, file } = session.ledger;
  const gone = db.prepare('SELECT kind FROM record WHERE gone_in IS NOT NULL').pluck();
  must(session, 'seeding.set', { jar: jars[1], seedings: [] });
  expect(gone.all()).toEqual(['seeding']);
  must(session, 'act.undo', { act: null });
  expect(gone.all()).toEqual([]);
  expect(db.prepare("SELECT max(form_no) FROM record WHERE kind = 'seeding'").pluck().get()).toBe(3);
  session.close();
  openSession(file).close();
});
