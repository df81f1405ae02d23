// How SQLite finds what drawing, recording and advice ask for: by key or by index, never by going through a large table,
// where a key is known. Asked of SQLite itself (EXPLAIN QUERY PLAN), for every statement that a call really runs.
import type Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import type { CallName, Input } from '../../core/contract';
import type { Session } from '../../main/session';
import { batchOf, fromJar, must, newSession, plainJar, smallFamily, unseen } from './ledger-files';

/** Tables that grow with each jar. */
const LARGE = [
  'record', 'journal', 'act', 'jar', 'batch', 'milk', 'addition', 'seeding', 'use', 'hold', 'stay', 'series', 'reading',
  'observation', 'acidity', 'sign', 'remark', 'movement', 'portion', 'note_row', 'lab_result', 'photograph',
]; // prettier-ignore

/** Goes through a table as it is planned, and ends at the first row, or never begins, as it is run. */
const ENDS_AT_ONCE = [
  // Whether there is any at all.
  'SELECT EXISTS (SELECT 1 FROM use)',
  // The newest act that is not undone.
  "SELECT * FROM act WHERE undoes IS NULL AND kind <> 'preferences.save' ORDER BY key DESC",
  // What waits for an act that is not there yet: nothing ever does.
  'INSERT INTO act',
];

interface Step {
  readonly detail: string;
}

/** The texts of all statements that a piece of work prepares. */
function preparedBy(db: Database.Database, work: () => void): string[] {
  const texts = new Set<string>();
  const { prepare } = db;
  db.prepare = ((sql: string) => {
    texts.add(sql);
    return prepare.call(db, sql);
  }) as typeof db.prepare;
  try {
    work();
  } finally {
    db.prepare = prepare;
  }
  return [...texts];
}

/** Steps of a statement's plan that go through a large table. */
function scansIn(db: Database.Database, sql: string): string[] {
  if (!/^\s*(SELECT|WITH|INSERT|UPDATE|DELETE)/i.test(sql)) return [];
  if (ENDS_AT_ONCE.some((start) => sql.startsWith(start))) return [];
  const parameters = new Set([...sql.matchAll(/@(\w+)/g)].map(([, name]) => name ?? ''));
  const given =
    parameters.size > 0
      ? [Object.fromEntries([...parameters].map((name) => [name, null]))]
      : Array.from({ length: (sql.match(/\?/g) ?? []).length }, () => null);
  const plan = db.prepare(`EXPLAIN QUERY PLAN ${sql}`).all(...given) as Step[];
  // A subquery, or what came out of one, is small here: it is named otherwise than the tables.
  return plan
    .filter(({ detail }) => /^SCAN (\w+)/.test(detail))
    .filter(({ detail }) => {
      const alias = /^SCAN (\w+)/.exec(detail)?.[1] ?? '';
      // "SELECT r.key" names r as well: any large table that is called so counts.
      const called = [...sql.matchAll(new RegExp(`\\b(\\w+) (?:AS )?${alias}\\b`, 'gi'))];
      return LARGE.includes(alias) || called.some(([, table]) => LARGE.includes((table ?? '').toLowerCase()));
    })
    .map(({ detail }) => `${detail} — ${sql.replaceAll(/\s+/g, ' ').slice(0, 160)}`);
}

/** A ledger in which every statement that a call runs the first time has run once. */
function warmedUp(): { session: Session; jars: readonly string[] } {
  const session = newSession();
  const { jars } = smallFamily(session);
  must(session, 'family.get', {});
  must(session, 'advice.next', {});
  return { session, jars };
}

const scansOf = (session: Session, work: () => void): string[] => {
  const { db, rows } = session.ledger;
  rows.forget();
  return preparedBy(db, work).flatMap((sql) => scansIn(db, sql));
};
const call =
  <N extends CallName>(session: Session, name: N, input: Input<N>) =>
  () =>
    void must(session, name, input);

it('what is drawn of mounted jars', () => {
  const { session } = warmedUp();
  const keys = [...session.ledger.index.jars.keys()];
  expect(scansOf(session, call(session, 'family.jars', { keys }))).toEqual([]);
});

it('one jar and one batch', () => {
  const { session, jars } = warmedUp();
  expect(scansOf(session, call(session, 'jar.get', { id: jars[1] ?? '' }))).toEqual([]);
  const { batch } = must(session, 'jar.get', { id: jars[1] ?? '' });
  expect(scansOf(session, call(session, 'batch.get', { id: batch }))).toEqual([]);
});

it('recording a batch, correcting a jar, noting an outcome, undoing', () => {
  const { session, jars } = warmedUp();
  const [, seed = ''] = jars;
  const hold = {
    startedAt: '2026-03-10T18:00:00+01:00', endedAt: '2026-03-12T06:00:00+01:00', hours: null, planned: null, probe: null,
    readings: [], note: 'quiet',
  }; // prettier-ignore
  const jar = plainJar('a', {
    hold: 0,
    milk: 'whole milk',
    seedings: [fromJar(seed)],
    outcome: { ...unseen, setWord: 'firm', ph: 4.2 },
  });
  const work = (): void => {
    must(session, 'batch.record', batchOf('2026-03-10', [jar], { holds: [hold] }));
    must(session, 'jar.correct', { id: seed, changes: { note: 'thick', onShelf: true } });
    must(session, 'outcome.save', { jar: seed, outcome: { ...unseen, setWord: 'soft' }, onShelf: false });
    must(session, 'act.undo', { act: null });
  };
  expect(scansOf(session, work)).toEqual([]);
});

it('scores and judgement after one jar was recorded', () => {
  const { session, jars } = warmedUp();
  const keys = [...session.ledger.index.jars.keys()];
  must(session, 'outcome.save', {
    jar: jars[1] ?? '',
    outcome: { ...unseen, setWord: 'firm' },
    onShelf: null,
  });
  expect(scansOf(session, call(session, 'judgement.scores', { keys }))).toEqual([]);
});
