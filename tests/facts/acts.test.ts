// Acts, journal and undo on the bare tables of events.
import { describe, expect, it } from 'vitest';
import { actsOf, changesOf } from '../../main/ledger/facts/act-changes';
import { invertAct } from '../../main/ledger/facts/invert';
import { standsOn, touchedSince } from '../../main/ledger/facts/later';
import { type Bare, bareLedger, stateAfter, stateOf, troubles } from './facts-in-memory';
import { generator } from './seeded-numbers';

const lastAct = ({ db }: Bare): number => Number(db.prepare('SELECT max(key) FROM act').pluck().get());

/** Undoes an act, where nothing stands on it. */
function undo(bare: Bare, target: number): void {
  expect(standsOn(bare.rows, target, touchedSince(bare.rows, target))).toEqual([]);
  bare.act((act) => invertAct(bare.rows, act, target), target);
}

describe('nothing is written without an act', () => {
  const bare = bareLedger();
  const batch = bare.add('batch', { madeOn: '2026-03-01' });
  bare.act((act) => act.update('batch', batch, { word: 'plain' }));
  const { db } = bare;
  const uid = '0'.repeat(36);
  it.each([
    ['a row', `INSERT INTO batch (key, made_on) VALUES (${batch + 1}, '2026-03-02')`],
    ['a record', `INSERT INTO record (uid, kind, made_in) VALUES ('${uid}', 'batch', 1)`],
    ['a change', "UPDATE batch SET word = 'x'"],
    ['a taking away', 'DELETE FROM batch'],
    ['a change of a record', 'UPDATE record SET form_no = form_no + 1'],
    ['a record taken away', 'DELETE FROM record'],
    ['an act changed', "UPDATE act SET why = 'x'"],
    ['an act taken away', 'DELETE FROM act'],
    [
      'an act replaced',
      `INSERT OR REPLACE INTO act (key, uid, kind, at, at_off, subject) VALUES (1, '${uid}', 'x', 0, 0, '')`,
    ],
    ['a step of the journal changed', "UPDATE journal SET op = 'take'"],
    ['a step taken away', 'DELETE FROM journal'],
    ['a step of its own', `INSERT INTO journal (act, record, op) VALUES (1, ${batch}, 'back')`],
    [
      'a step replaced',
      `INSERT OR REPLACE INTO journal (key, act, record, op) VALUES (1, 1, ${batch}, 'back')`,
    ],
    ['readings', `INSERT INTO reading_block (sha, n) VALUES ('${'a'.repeat(64)}', 1)`],
    ['the own ledger renumbered', 'UPDATE ledger SET key = 5'],
    ['an edit of the schema', "UPDATE sqlite_schema SET sql = '' WHERE name = 'journal_kept'"],
  ])('%s', (_what, sql) => {
    const before = JSON.stringify([
      db.prepare('SELECT * FROM journal').all(),
      db.prepare('SELECT * FROM record').all(),
    ]);
    for (const recursive of ['ON', 'OFF']) {
      db.pragma(`recursive_triggers = ${recursive}`);
      expect(() => db.exec(sql)).toThrow(
        /never changed|no open act|may not be modified|keeps its|made in its own act/,
      );
    }
    db.pragma('recursive_triggers = ON');
    expect(
      JSON.stringify([db.prepare('SELECT * FROM journal').all(), db.prepare('SELECT * FROM record').all()]),
    ).toBe(before);
  });
});

describe('under an act, too', () => {
  it.each([
    ['a key is kept', 'UPDATE batch SET key = 77', /keeps its key/],
    [
      'an id is kept',
      `UPDATE record SET uid = '${'0'.repeat(36)}', form_no = form_no + 1`,
      /keeps its key and id/,
    ],
    ['a kind is kept', "UPDATE record SET kind = 'jar', form_no = form_no + 1", /keeps its key and id/],
    ['a form number rises by one', 'UPDATE record SET form_no = form_no + 2', /rises by one/],
    ['a form number does not fall', 'UPDATE record SET form_no = 1 WHERE form_no = 2', /rises by one/],
    [
      'an end is in the act that wrote it',
      'UPDATE record SET gone_in = 1, form_no = form_no + 1',
      /ends in the open act/,
    ],
    [
      'a row has a record of its kind',
      "INSERT INTO source (key, name) VALUES (1, 'x')",
      /a record of its kind/,
    ],
    ['a row has a record', "INSERT INTO source (key, name) VALUES (999, 'x')", /a record of its kind/],
    ['readings are kept', 'UPDATE reading SET c = 5', /never changed/],
    ['readings are never taken away', 'DELETE FROM reading', /never changed/],
    ['blocks are kept', 'DELETE FROM reading_block', /never changed/],
  ])('%s', (_what, sql, reason) => {
    const bare = bareLedger();
    const batch = bare.add('batch', { madeOn: '2026-03-01' });
    bare.act((act) => {
      act.update('batch', batch, { word: 'plain' });
      bare.db.exec(`INSERT INTO reading_block (sha, n) VALUES ('${'a'.repeat(64)}', 1);
        INSERT INTO reading (block, no, at, at_off, c) VALUES (1, 1, 0, 0, 38)`);
    });
    expect(() => bare.act(() => bare.db.exec(sql))).toThrow(reason);
    expect(troubles(bare.db)).toEqual([]);
  });
});

it('an act that fails half-way leaves nothing, not even the act; one that changes nothing neither', () => {
  const bare = bareLedger();
  const batch = bare.add('batch', { madeOn: '2026-03-01' });
  const counts = () =>
    bare.db.prepare('SELECT (SELECT count(*) FROM act), (SELECT count(*) FROM record)').raw().get();
  const before = counts();
  expect(() =>
    bare.act((act) => {
      act.insert('batch', { madeOn: '2026-03-02' });
      throw new Error('half-way');
    }),
  ).toThrow('half-way');
  expect(bare.acts.run('batch.record', 'x', null, () => 1)).toBeNull();
  expect(
    bare.acts.run('batch.record', 'x', null, (act) => act.update('batch', batch, { madeOn: '2026-03-01' })),
  ).toBeNull();
  expect(counts()).toEqual(before);
});

it('an insert leaves no image; what came after it tells what it was, with numbers to the last digit', () => {
  const bare = bareLedger();
  const value = 0.1 + 0.2;
  const batch = bare.add('batch', { madeOn: '2026-03-01' });
  const jar = bare.add('jar', {
    batch,
    letter: 'a',
    state: 'made',
    vessel: 'a “jar” with\nlines',
    finalVolume: { value, unit: 'mL', typed: '1 qt' },
  });
  const made = lastAct(bare);
  expect(bare.db.prepare('SELECT count(*) FROM journal').pluck().get()).toBe(0);
  const [asMade] = changesOf(bare.rows, made);
  const form = asMade?.after;
  expect(form).toMatchObject({ final_volume_v: value, letter: 'a', vessel: 'a “jar” with\nlines' });

  bare.act((act) => act.update('jar', jar, { letter: 'b', finalVolume: null }));
  expect([...changesOf(bare.rows, made)][0]?.after).toEqual(form);
  const [changed] = changesOf(bare.rows, lastAct(bare));
  expect(changed?.before).toEqual(form);
  expect(changed?.after).toEqual({ batch, letter: 'b', state: 'made', vessel: 'a “jar” with\nlines' });

  bare.act((act) => act.remove('jar', jar));
  const [taken] = changesOf(bare.rows, lastAct(bare));
  expect(taken?.before).toMatchObject({ letter: 'b' });
  expect(taken?.after).toBeNull();
  expect(bare.db.prepare('SELECT form_no, gone_in FROM record WHERE key = ?').get(jar)).toEqual({
    form_no: 3,
    gone_in: lastAct(bare),
  });
  expect(() => bare.rows.keyOf('jar', bare.rows.uidOf('jar', jar))).toThrow('not found');
  expect(actsOf(bare.rows, jar, 99, 10)).toEqual([lastAct(bare), lastAct(bare) - 1, made]);
});

it('undo gives the ledger there was, and undoing the undo the ledger there was after', () => {
  const bare = bareLedger();
  const batch = bare.add('batch', { madeOn: '2026-03-01' });
  const jar = bare.add('jar', { batch, letter: 'a', state: 'made' });
  const hold = bare.add('hold', { purpose: 'jars', basis: 'recorded' });
  const at = (hour: number): string => `2026-03-01T${String(hour).padStart(2, '0')}:00:00+01:00`;
  const old = bare.add('stay', { jar, hold, came: at(1), went: at(9) });
  const before = stateOf(bare.db);
  // One stay in place of another that it would overlap, a note that hangs on it, and a word.
  bare.act((act) => {
    act.remove('stay', old);
    act.insert('stay', { jar, hold, came: at(2), went: at(8) });
    const made = act.insert('remark', { jar, field: 'note', text: 'later', private: true });
    act.update('remark', made.key, { text: 'later still' });
    act.update('batch', batch, { word: 'plain' });
  });
  const after = stateOf(bare.db);
  const target = lastAct(bare);
  undo(bare, target);
  expect(stateOf(bare.db)).toBe(before);
  expect(troubles(bare.db)).toEqual([]);
  undo(bare, lastAct(bare));
  expect(stateOf(bare.db)).toBe(after);
  undo(bare, target);
  expect(stateOf(bare.db)).toBe(before);
  expect(troubles(bare.db)).toEqual([]);
});

it('undo brings back a text with how it was read', () => {
  const bare = bareLedger();
  const batch = bare.add('batch', { madeOn: '2026-03-01', word: null });
  const remark = bare.add('remark', { batch, field: 'note', text: 'smells of bread', private: true });
  bare.act((act) => act.update('remark', remark, { readAs: 'fine' }));
  bare.act((act) => act.update('remark', remark, { text: 'pink', readAs: null }));
  undo(bare, lastAct(bare));
  expect(bare.rows.get('remark', remark)).toMatchObject({ text: 'smells of bread', readAs: 'fine' });
});

it('what stands on an act is told before it is undone', () => {
  const bare = bareLedger();
  const batch = bare.add('batch', { madeOn: '2026-03-01' });
  const first = lastAct(bare);
  const jar = bare.add('jar', { batch, letter: 'a', state: 'made' });
  const second = lastAct(bare);
  bare.act((act) => act.update('jar', jar, { letter: 'b' }));
  const third = lastAct(bare);
  const standing = (act: number): number[] => standsOn(bare.rows, act, touchedSince(bare.rows, act));
  expect(standing(first)).toEqual([second, third]);
  expect(standing(second)).toEqual([third]);
  expect(standing(third)).toEqual([]);
  undo(bare, third);
  // Changed and changed back: nothing of it stands any more.
  expect(standing(second)).toEqual([]);
  undo(bare, second);
  expect(standing(first)).toEqual([]);
});

it('what a lift knew outlives the sign', () => {
  const bare = bareLedger();
  const batch = bare.add('batch', { madeOn: '2026-03-01' });
  const [a, b] = ['a', 'b'].map((letter) => bare.add('jar', { batch, letter, state: 'made' })) as [
    number,
    number,
  ];
  const observation = bare.add('observation', { jar: a, stage: 'take-out' });
  const sign = bare.add('sign', { observation, kind: 'pink' });
  const noted = lastAct(bare);
  bare.act((act) => {
    const reason = act.insert('reason', { text: 'a red spoon', private: true });
    const lift = act.insert('lift', { reason: reason.key, jar: b, ofJar: a });
    act.insert('liftKnew', { lift: lift.key, sign, kind: 'pink', opened: false });
  });
  undo(bare, noted);
  expect(bare.db.prepare('SELECT sign FROM lift_knew').pluck().all()).toEqual([sign]);
  expect(troubles(bare.db)).toEqual([]);
});

it('what came from another ledger knows its home and its form there, and undo forgets what was learned', () => {
  const bare = bareLedger();
  bare.db
    .prepare('INSERT INTO ledger (key, uid, own, demo, made_at, made_at_off) VALUES (2, ?, 0, 0, 0, 0)')
    .run('f'.repeat(36));
  const uid = '0190b1a2-0000-7000-8000-000000000000';
  const batch = bare.act(
    (act) => act.insertFrom('batch', { madeOn: '2026-03-01' }, { uid, home: 2, homeForm: 4 }).key,
  );
  const home = (): unknown =>
    bare.db.prepare('SELECT uid, home, home_form FROM record WHERE key = ?').get(batch);
  bare.act((act) => {
    act.update('batch', batch, { word: 'theirs' });
    act.learnHomeForm(batch, 6);
  });
  expect(home()).toEqual({ uid, home: 2, home_form: 6 });
  undo(bare, lastAct(bare));
  expect(home()).toEqual({ uid, home: 2, home_form: 4 });
  undo(bare, lastAct(bare));
  expect(home()).toEqual({ uid, home: 2, home_form: 6 });
  // Ours has no form elsewhere.
  const own = bare.add('batch', { madeOn: '2026-03-02' });
  bare.act((act) => {
    act.learnHomeForm(own, 3);
    act.update('batch', own, { word: 'x' });
  });
  expect(bare.db.prepare('SELECT home_form FROM record WHERE key = ?').pluck().get(own)).toBeNull();
  expect(() =>
    bare.act(() => bare.db.exec(`UPDATE record SET home = 2, form_no = form_no + 1 WHERE key = ${own}`)),
  ).toThrow(/keeps its/);
});

describe('random acts', () => {
  it.each([1, 2, 3, 4, 5, 6, 7, 8])(
    'seed %i: each earlier state comes out of the journal, and undoing all gives none',
    (seed) => {
      const bare = bareLedger();
      const random = generator(seed);
      const states = new Map<number, string>();
      const roots: number[] = [];
      for (let step = 0; step < 40; step++) {
        randomAct(bare, random);
        const act = lastAct(bare);
        if (!states.has(act)) {
          roots.push(act);
          states.set(act, stateAfter(bare.db, act));
        }
      }
      expect(troubles(bare.db)).toEqual([]);
      for (const [act, state] of states) expect(stateAfter(bare.db, act)).toBe(state);
      // Backwards all of it can be undone, one after the other, and each gives the state before.
      for (const act of roots.toReversed()) {
        undo(bare, act);
        expect(stateAfter(bare.db, lastAct(bare))).toBe(stateAfter(bare.db, act - 1));
      }
      expect(stateAfter(bare.db, lastAct(bare))).toBe('');
      expect(troubles(bare.db)).toEqual([]);
    },
  );
});

/** A few writes in one act: adding, changing, taking away, all at random. What the tables refuse leaves no act. */
function randomAct(bare: Bare, random: () => number): void {
  const pick = <T>(from: readonly T[]): T | undefined => from[Math.floor(random() * from.length)];
  const keys = (table: string): number[] =>
    bare.db.prepare(`SELECT key FROM ${table}`).pluck().all() as number[];
  const day = (): string => `2026-03-${String(1 + Math.floor(random() * 20)).padStart(2, '0')}`;
  try {
    bare.act((act) => {
      const writes = 1 + Math.floor(random() * 6);
      for (let write = 0; write < writes; write++) {
        const what = Math.floor(random() * 9);
        const batch = pick(keys('batch'));
        const jar = pick(keys('jar'));
        if (what === 0 || batch === undefined) act.insert('batch', { madeOn: day() });
        else if (what <= 2 || jar === undefined)
          act.insert('jar', { batch, letter: pick([...'abcdef']) ?? 'a', state: 'made' });
        else if (what === 3) act.insert('seeding', { jar, fromJar: pick(keys('jar')) ?? null });
        else if (what === 4)
          act.insert('remark', { jar, field: 'note', text: `text ${random()}`, private: random() < 0.5 });
        else if (what === 5)
          act.update('batch', batch, { madeOn: day(), word: pick(['plain', null]) ?? null });
        else if (what === 6)
          act.update('jar', jar, {
            letter: pick([...'abcdef']) ?? 'a',
            finalVolume: { value: random() * 1000, unit: 'mL', typed: null },
          });
        else {
          const table = pick(['seeding', 'remark'] as const) ?? 'remark';
          const key = pick(keys(table));
          if (key !== undefined) act.remove(table, key);
        }
      }
    });
  } catch (error) {
    if (!/ABORT|constraint|later|ancestor|nothing changed/i.test(String(error))) throw error;
  }
}
