// The tables of events, on bare better-sqlite3: each rule of theirs holds whoever writes, and says why.
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { FACT_KINDS, FIELDS, type FactKind, type Stored } from '../../core/ledger/facts/all-facts';
import { columnsOf, tableOf } from '../../main/ledger/facts/tables';
import { type Bare, bareLedger, troubles } from './facts-in-memory';

const at = (hour: number): string =>
  `2026-03-0${1 + Math.floor(hour / 24)}T${String(hour % 24).padStart(2, '0')}:00:00Z`;
const mL = (value: number) => ({ value, unit: 'mL', typed: null }) as const;

/** A batch of two jars, a source, a hold, a portion, an observation, a remark. */
function scene(bare: Bare) {
  const { add } = bare;
  const source = add('source', { name: 'Blue Tin', notePrivate: true });
  const batch = add('batch', { madeOn: '2026-03-01' });
  const other = add('batch', { madeOn: '2026-03-05' });
  const jar = (of: number, letter: string): number => add('jar', { batch: of, letter, state: 'made' });
  const [a, b, c] = [jar(batch, 'a'), jar(batch, 'b'), jar(other, 'c')];
  const hold = add('hold', { purpose: 'jars', basis: 'recorded' });
  const portion = add('portion', {
    jar: a,
    form: 'pot',
    place: 'fridge',
    reserve: false,
    keptOn: '2026-03-02',
  });
  const observation = add('observation', { jar: a, stage: 'opened' });
  const remark = add('remark', { jar: a, field: 'note', text: 'fine', private: true });
  const milk = add('milk', { jar: a, name: 'whole milk' });
  return { source, batch, other, a, b, c, hold, portion, observation, remark, milk };
}

it('every kind has its table with the columns of its fields, and every table is strict', () => {
  const { db } = bareLedger();
  expect(Object.keys(FIELDS).toSorted()).toEqual(FACT_KINDS.toSorted());
  for (const kind of FACT_KINDS) {
    const columns = (db.pragma(`table_info(${tableOf(kind)})`) as { name: string }[]).map(({ name }) => name);
    expect(columns.toSorted(), kind).toEqual(['key', ...columnsOf(kind)].toSorted());
  }
  expect(
    db.prepare("SELECT name FROM pragma_table_list WHERE strict = 0 AND name NOT LIKE 'sqlite_%'").all(),
  ).toEqual([]);
});

it('every reference has an index that begins with it', () => {
  const { db } = bareLedger();
  for (const kind of FACT_KINDS) {
    const table = tableOf(kind);
    const indexed = new Set<string>(['key']);
    for (const { name } of db.pragma(`index_list(${table})`) as { name: string }[]) {
      const [first] = db.pragma(`index_info(${name})`) as { name: string }[];
      if (first) indexed.add(first.name);
    }
    const pointing = (db.pragma(`foreign_key_list(${table})`) as { from: string }[]).map(({ from }) => from);
    expect(pointing.filter((column) => !indexed.has(column)), table).toEqual([]); // prettier-ignore
  }
});

describe('days and moments', () => {
  const day = (bare: Bare, madeOn: string): unknown => bare.add('batch', { madeOn });
  it.each(['2026-02-30', '2026-13-01', '2026-2-3', '2026-03-14T10:00', '14 Mar', '2460000', ''])(
    '“%s” is no day',
    (text) => {
      expect(() => day(bareLedger(), text)).toThrow(/CHECK constraint failed: made_on/);
    },
  );
  it('a day of a leap year is', () => {
    expect(() => day(bareLedger(), '2028-02-29')).not.toThrow();
    expect(() => day(bareLedger(), '2026-02-29')).toThrow(/made_on/);
  });
  it('a moment has its offset, and no offset is without a moment', () => {
    const bare = bareLedger();
    const hold = bare.add('hold', { purpose: 'jars', basis: 'recorded' });
    const set = (sql: string) => (): unknown =>
      bare.act(() => bare.db.prepare(`UPDATE hold SET ${sql} WHERE key = ?`).run(hold));
    expect(set('began = 5')).toThrow(/CHECK constraint failed/);
    expect(set('began_off = 60')).toThrow(/CHECK constraint failed/);
    expect(set('began = 5, began_off = 6000')).toThrow(/CHECK constraint failed/);
    expect(set('began = 5, began_off = 60')).not.toThrow();
  });
  it('a moment comes back as it went in, also in the night the clocks change', () => {
    const bare = bareLedger();
    // 25 October 2026, Berlin: 02:30 comes twice.
    const [first, second] = ['2026-10-25T02:30:00+02:00', '2026-10-25T02:30:00+01:00'];
    const hold = bare.add('hold', { purpose: 'jars', basis: 'recorded', began: first, ended: second });
    expect(bare.rows.get('hold', hold)).toMatchObject({ began: first, ended: second });
    expect(() =>
      bare.add('hold', { purpose: 'jars', basis: 'recorded', began: second, ended: first }),
    ).toThrow(/in_order/);
  });
});

type Refused = readonly [
  what: string,
  reason: RegExp,
  kind: FactKind,
  fact: (s: ReturnType<typeof scene>) => object,
];
const refused: readonly Refused[] = [
  [
    'an amount without a unit',
    /constraint/,
    'milk',
    ({ a }) => ({ jar: a, planned: { value: 5, unit: null, typed: null } }),
  ],
  ['an amount below nothing', /planned_v/, 'milk', ({ a }) => ({ jar: a, planned: mL(-1) })],
  [
    'a package of milk with a source',
    /source/,
    'package',
    ({ source }) => ({ of: 'milk', name: 'x', source }),
  ],
  ['half a range of days', /made_/, 'batch', () => ({ madeFrom: '2026-01-10' })],
  [
    'a range beside a day',
    /made_/,
    'batch',
    () => ({ madeOn: '2026-01-10', madeFrom: '2026-01-10', madeTo: '2026-01-11' }),
  ],
  ['a range the wrong way round', /made_/, 'batch', () => ({ madeFrom: '2026-01-11', madeTo: '2026-01-10' })],
  ['a jar without a letter', /letter/, 'jar', ({ batch }) => ({ batch, letter: '', state: 'made' })],
  ['a jar in no state', /state/, 'jar', ({ batch }) => ({ batch, letter: 'x', state: 'eaten' })],
  ['a jar of no batch', /FOREIGN KEY/, 'jar', () => ({ batch: 999, letter: 'x', state: 'made' })],
  ['a seeding from nothing', /exactly_one/, 'seeding', ({ c }) => ({ jar: c })],
  [
    'a seeding from two things',
    /exactly_one/,
    'seeding',
    ({ c, a, source }) => ({ jar: c, fromJar: a, source }),
  ],
  [
    'a portion without its jar',
    /portion/,
    'seeding',
    ({ c, source, portion }) => ({ jar: c, source, portion }),
  ],
  [
    'a portion of another jar',
    /a portion is of the jar that seeds/,
    'seeding',
    ({ c, b, portion }) => ({ jar: c, fromJar: b, portion }),
  ],
  [
    'a seed of a later day',
    /a seed is made no later than its jar/,
    'seeding',
    ({ a, c }) => ({ jar: a, fromJar: c }),
  ],
  ['a jar as its own seed', /from_jar|own ancestor/, 'seeding', ({ a }) => ({ jar: a, fromJar: a })],
  ['a use of nothing', /exactly_one/, 'use', () => ({ package: 0 })],
  [
    'a hold that ends before it began',
    /in_order/,
    'hold',
    () => ({ purpose: 'jars', basis: 'recorded', began: at(5), ended: at(4) }),
  ],
  [
    'a stay that ends before it began',
    /came_before_it_went/,
    'stay',
    ({ a, hold }) => ({ jar: a, hold, came: at(5), went: at(4) }),
  ],
  [
    'a planned stay the wrong way round',
    /planned_in_order/,
    'stay',
    ({ a, hold }) => ({ jar: a, hold, plannedCame: at(5), plannedWent: at(4) }),
  ],
  ['a jar with a probe in the bath', /jar/, 'series', ({ a, hold }) => ({ hold, place: 'bath', jar: a })],
  [
    'a probe in a jar that is not in the hold',
    /a probe sits in a jar of its hold/,
    'series',
    ({ a, hold }) => ({ hold, place: 'jar', jar: a }),
  ],
  [
    'days open of a jar at take-out',
    /days_open/,
    'observation',
    ({ a }) => ({ jar: a, stage: 'take-out', daysOpen: 3 }),
  ],
  [
    'a day and a moment',
    /day/,
    'observation',
    ({ a }) => ({ jar: a, stage: 'later', day: '2026-03-03', at: at(40) }),
  ],
  [
    'hours of no power cut',
    /power_cut_hours/,
    'observation',
    ({ a }) => ({ jar: a, stage: 'take-out', powerCut: false, powerCutHours: 2 }),
  ],
  [
    'a portion that is not of the jar looked at',
    /a portion is of its jar/,
    'observation',
    ({ b, portion }) => ({ jar: b, stage: 'later', portion }),
  ],
  ['a pH of 15', /ph/, 'acidity', ({ observation }) => ({ observation, ph: 15, how: 'meter' })],
  [
    'pink put down to the fibre',
    /only_a_tint_or_jelly_is_the_fibre/,
    'sign',
    ({ observation }) => ({ observation, kind: 'pink', answer: 'the fibre' }),
  ],
  ['a sign of nothing', /exactly_one/, 'sign', () => ({ kind: 'pink' })],
  [
    'a sign of two things',
    /exactly_one/,
    'sign',
    ({ observation, remark }) => ({ kind: 'pink', observation, remark }),
  ],
  ['a sign nobody knows', /kind/, 'sign', ({ observation }) => ({ kind: 'grumpy', observation })],
  ['a remark on nothing', /exactly_one/, 'remark', () => ({ field: 'note', text: 'x', private: true })],
  [
    'a remark on two things',
    /exactly_one/,
    'remark',
    ({ a, batch }) => ({ jar: a, batch, field: 'note', text: 'x', private: true }),
  ],
  [
    'a remark without words',
    /text/,
    'remark',
    ({ a }) => ({ jar: a, field: 'note', text: '', private: true }),
  ],
  [
    'a photograph of another jar',
    /of the jar that was looked at/,
    'photograph',
    ({ b, observation }) => ({ jar: b, observation, sha: 'a'.repeat(64), width: 1, height: 1 }),
  ],
  [
    'a photograph without a hash',
    /sha/,
    'photograph',
    ({ b }) => ({ jar: b, sha: 'z'.repeat(64), width: 1, height: 1 }),
  ],
  [
    'a portion split off another jar’s',
    /split off a portion of its jar/,
    'portion',
    ({ b, portion }) => ({
      jar: b,
      ofPortion: portion,
      form: 'pot',
      place: 'fridge',
      reserve: false,
      keptOn: '2026-03-03',
    }),
  ],
  [
    'a movement of jar and portion',
    /exactly_one/,
    'movement',
    ({ a, portion }) => ({ jar: a, portion, kind: 'eaten' }),
  ],
  [
    'a movement on a day and at a moment',
    /a_day_or_a_moment/,
    'movement',
    ({ a }) => ({ jar: a, kind: 'eaten', day: '2026-03-05', at: at(90) }),
  ],
  [
    'a choice of a portion of another jar',
    /a portion is of its jar/,
    'choice',
    ({ b, portion }) => ({ jar: b, portion, label: 'x', place: 1, modelVersion: 1, advice: '{}' }),
  ],
  [
    'advice that is no JSON',
    /advice/,
    'choice',
    () => ({ label: 'x', place: 1, modelVersion: 1, advice: 'no' }),
  ],
  [
    'a result of nothing',
    /exactly_one/,
    'labResult',
    () => ({ what: 'count', value: 1, unit: 'CFU/mL', bound: '=' }),
  ],
  [
    'a code of two digits',
    /code/,
    'serving',
    ({ a }) => ({ session: 1, taster: 1, place: 1, jar: a, code: 12 }),
  ],
  ['headings that are no list', /headings/, 'noteFile', () => ({ name: 'x', headings: { a: 1 } })],
];

describe('the tables refuse', () => {
  it.each(refused)('%s', (_what, reason, kind, fact) => {
    const bare = bareLedger();
    const s = scene(bare);
    const acts = bare.db.prepare('SELECT count(*) FROM act').pluck().get();
    expect(() => bare.add(kind, fact(s) as Partial<Stored<typeof kind>>)).toThrow(reason);
    expect(bare.db.prepare('SELECT count(*) FROM act').pluck().get()).toBe(acts);
    expect(troubles(bare.db)).toEqual([]);
  });

  it('a tint or a jelly put down to the fibre is not refused', () => {
    const bare = bareLedger();
    const { observation } = scene(bare);
    for (const kind of ['tint', 'jelly', 'tint or jelly'] as const)
      bare.add('sign', { observation, kind, answer: 'the fibre' });
    expect(bare.db.prepare('SELECT count(*) FROM sign').pluck().get()).toBe(3);
  });
});

describe('stays of a jar', () => {
  const stayed = (...stays: [number | null, number | null, boolean?][]) => {
    const bare = bareLedger();
    const { a, b, hold } = scene(bare);
    const next = bare.add('hold', { purpose: 'jars', basis: 'recorded' });
    for (const [came, went, elsewhere] of stays) {
      bare.add('stay', {
        jar: a, hold: elsewhere === true ? next : hold,
        came: came === null ? null : at(came), went: went === null ? null : at(went),
      }); // prettier-ignore
    }
    // What another jar does is no matter of this one's.
    for (const [came, went] of stays.slice(0, 1)) {
      bare.add('stay', {
        jar: b,
        hold,
        came: came === null ? null : at(came),
        went: went === null ? null : at(went),
      });
    }
  };
  it('may follow each other', () => {
    expect(() => stayed([0, 10], [10, 20, true], [24, 30])).not.toThrow();
    expect(() => stayed([10, 20], [0, 10])).not.toThrow();
  });
  it.each([
    ['one in the other', [0, 10], [2, 3]],
    ['the other in the one', [2, 3], [0, 10]],
    ['one over the end of the other', [0, 10], [9, 12]],
    ['the same', [0, 10], [0, 10]],
    ['one that has not ended, within the other', [0, 10], [5, null]],
    ['two of nobody knows when in one hold', [null, null], [null, null]],
  ] as const)('do not overlap: %s', (_what, one, other) => {
    expect(() => stayed([...one], [...other])).toThrow(/stays of a jar do not overlap/);
  });
  it('do not come to overlap by a correction', () => {
    const bare = bareLedger();
    const { a, hold } = scene(bare);
    bare.add('stay', { jar: a, hold, came: at(0), went: at(10) });
    const later = bare.add('stay', { jar: a, hold, came: at(12), went: at(20) });
    expect(() => bare.act((act) => act.update('stay', later, { came: at(9) }))).toThrow(/do not overlap/);
    expect(() => bare.act((act) => act.update('stay', later, { came: at(10) }))).not.toThrow();
  });
});

describe('what seeded a jar', () => {
  it('never runs in a circle, within a day or through a jar of which only a range of days is known', () => {
    const bare = bareLedger();
    const { a, b, c } = scene(bare);
    bare.add('seeding', { jar: b, fromJar: a });
    expect(() => bare.add('seeding', { jar: a, fromJar: b })).toThrow(/own ancestor/);
    const january = bare.add('batch', { madeFrom: '2026-02-20', madeTo: '2026-03-20' });
    const vague = bare.add('jar', { batch: january, letter: 'v', state: 'made' });
    bare.add('seeding', { jar: vague, fromJar: c });
    bare.add('seeding', { jar: c, fromJar: b });
    expect(() => bare.add('seeding', { jar: a, fromJar: vague })).toThrow(/own ancestor/);
  });
  it('is not searched for a circle where the jar has seeded nothing yet, however many days are ranges', () => {
    const bare = bareLedger();
    let steps = 0;
    bare.db.function('step', (key) => (steps++, key));
    const triggers = bare.db.prepare("SELECT name, sql FROM sqlite_schema WHERE name LIKE 'seeding_rules_%'");
    for (const { name, sql } of triggers.all() as { name: string; sql: string }[]) {
      const counted = sql.replaceAll(/SELECT (NEW\.from_jar|s\.from_jar)\b/g, 'SELECT step($1)');
      expect(counted).not.toBe(sql);
      bare.db.exec(`DROP TRIGGER ${name}; ${counted}`);
    }
    const jars: number[] = [];
    const seeded = (at: number, from: number): number =>
      bare.add('seeding', { jar: jars[at] ?? 0, fromJar: jars[from] ?? 0 });
    for (let at = 0; at < 60; at += 1) {
      const batch = bare.add('batch', { madeFrom: '2026-01-01', madeTo: '2026-03-31' });
      jars.push(bare.add('jar', { batch, letter: 'a', state: 'made' }));
    }
    for (let at = 1; at < jars.length; at += 1) seeded(at, at - 1);
    expect(steps).toBe(0);
    // A second seed of one that has seeded others: its seed and what that descends from, each once.
    seeded(30, 5);
    expect(steps).toBe(6);
    expect(() => seeded(5, 30)).toThrow(/own ancestor/);
  });
  it('is asked again when a day is corrected, and a jar of unknown day has no seed', () => {
    const bare = bareLedger();
    const { a, c, other } = scene(bare);
    bare.add('seeding', { jar: c, fromJar: a });
    expect(() => bare.act((act) => act.update('batch', other, { madeOn: '2026-02-01' }))).toThrow(/no later/);
    expect(() => bare.act((act) => act.update('batch', other, { madeOn: null }))).toThrow(/unknown day/);
    const unknown = bare.add('batch', {});
    const lost = bare.add('jar', { batch: unknown, letter: 'l', state: 'lost' });
    expect(() => bare.add('seeding', { jar: lost, fromJar: a })).toThrow(/unknown day/);
    expect(() => bare.add('seeding', { jar: a, fromJar: lost })).not.toThrow();
  });
});

describe('what belongs together stays together', () => {
  it('a jar in its batch, a portion with its jar and with what it was split off', () => {
    const bare = bareLedger();
    const { a, b, other, portion } = scene(bare);
    expect(() => bare.act((act) => act.update('jar', a, { batch: other }))).toThrow(
      /a jar stays in its batch/,
    );
    expect(() => bare.act((act) => act.update('portion', portion, { jar: b }))).toThrow(
      /a portion stays with its jar/,
    );
    const half = bare.add('portion', {
      jar: a,
      ofPortion: portion,
      form: 'cubes',
      place: 'freezer',
      reserve: true,
      keptOn: '2026-03-03',
    });
    expect(() => bare.act((act) => act.update('portion', half, { ofPortion: null }))).toThrow(/split off/);
  });
  it('a treatment with the batch of its trial', () => {
    const bare = bareLedger();
    const { batch, a, c } = scene(bare);
    const trial = bare.add('trial', { batch, differsIn: 'fibre' });
    bare.add('treatment', { trial, jar: a, name: 'oat bran' });
    expect(() => bare.add('treatment', { trial, jar: c, name: 'none' })).toThrow(/a jar of its trial/);
    expect(() => bare.add('treatment', { trial, jar: a, name: 'twice' })).toThrow(/UNIQUE/);
  });
  it('codes with their session: each taster’s own, a triangle serves one jar under two', () => {
    const bare = bareLedger();
    const { a } = scene(bare);
    const session = bare.add('session', { day: '2026-03-06', kind: 'triangle' });
    const [one, two] = ['A', 'B'].map((name) => bare.add('taster', { name, private: true }));
    const serve = (taster: number | undefined, place: number, code: number): number =>
      bare.add('serving', { session, taster: taster ?? 0, place, jar: a, code });
    serve(one, 1, 101);
    serve(one, 2, 102);
    const served = serve(two, 1, 103);
    expect(() => serve(two, 2, 101)).toThrow(/UNIQUE/);
    expect(() => serve(two, 1, 104)).toThrow(/UNIQUE/);
    expect(() => bare.add('mark', { serving: served, aspect: 'tang', rank: 1, word: 'sharp' })).toThrow(
      /exactly_one/,
    );
  });
});

describe('a remark', () => {
  it('is unread again when its text changes', () => {
    const bare = bareLedger();
    const { remark } = scene(bare);
    bare.act((act) => act.update('remark', remark, { readAs: 'fine' }));
    expect(() => bare.act((act) => act.update('remark', remark, { text: 'pink' }))).toThrow(/unread again/);
    expect(() => bare.act((act) => act.update('remark', remark, { text: 'pink', readAs: 'fine' }))).toThrow(
      /unread again/,
    );
    bare.act((act) => act.update('remark', remark, { text: 'pink', readAs: null }));
    expect(bare.rows.get('remark', remark)).toMatchObject({ text: 'pink', readAs: null });
  });
});

it('only one row of preferences, and only one ledger of one’s own', () => {
  const bare = bareLedger();
  const preferences = {
    theme: 'system', temperatures: '°C', volumes: 'metric', spoons: 'US', dates: 'day first', currency: 'EUR',
    seedFridgeDays: 21, seedFreezerDays: null, mostGenerations: null, jarFollowsHours: null,
  } as const; // prettier-ignore
  bare.add('preferences', preferences);
  expect(() => bare.add('preferences', preferences)).toThrow(/UNIQUE/);
  const insert = (key: number, own: number) => (): unknown =>
    bare.db
      .prepare('INSERT INTO ledger (key, uid, own, demo, made_at, made_at_off) VALUES (?, ?, ?, 0, 0, 0)')
      .run(key, String(key).repeat(36), own);
  expect(insert(2, 1)).toThrow(/own/);
  expect(insert(2, 0)).not.toThrow();
  expect(() => bare.db.exec('DELETE FROM ledger WHERE key = 2')).toThrow(/keeps its id/);
});

it('runs on the SQLite that dates are checked with', () => {
  // The plain function takes 30 February in some versions, which is why the tables ask with a modifier.
  const db = new Database(':memory:');
  expect(db.prepare("SELECT date('2026-02-30', '+0 days')").pluck().get()).toBe('2026-03-02');
  db.close();
});
