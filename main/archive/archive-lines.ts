// A ledger's rows as the lines of an archive (core/archive/archive-format.ts), in the order in which one can point at another.
import type { ArchiveLine, LineKind } from '../../core/archive/archive-format';
import { FACT_KINDS, type FactKind, fieldsOf, isRef } from '../../core/ledger/facts/all-facts';
import { momentText } from '../../core/ledger/stored-moments';
import type { Rows } from '../ledger/facts/fact-rows';
import { type Columns, fromColumns, kindOf } from '../ledger/facts/tables';

/** A line, and the file it belongs in. */
export type LineOf = readonly [of: string, line: object];

/** Without what is null: "unknown" needs no word. */
const told = <T extends object>(line: T): object =>
  Object.fromEntries(Object.entries(line).filter(([, value]) => value !== null && value !== undefined));
const line = <K extends LineKind>(
  of: K,
  fields: { [F in keyof ArchiveLine<K>]: ArchiveLine<K>[F] | null },
): LineOf => [of, told(fields)];

/** A fact with ids in place of keys, and without what is null. */
function formOf(
  rows: Rows,
  kind: FactKind,
  fact: Readonly<Record<string, unknown>>,
): Record<string, unknown> {
  const form: Record<string, unknown> = {};
  for (const [name, { as }] of Object.entries(fieldsOf(kind))) {
    const value = fact[name] ?? null;
    if (value === null) continue;
    form[name] = isRef(as) && typeof value === 'number' ? nameBehind(rows, as, value) : value;
  }
  return form;
}

function nameBehind(rows: Rows, as: string, key: number): unknown {
  if (as === 'block') return rows.prepare('SELECT sha FROM reading_block WHERE key = ?').pluck().get(key);
  if (as === 'ledger') return rows.prepare('SELECT uid FROM ledger WHERE key = ?').pluck().get(key);
  return rows.uidOf(as as FactKind, key);
}

/** One row at a time, from a statement of its own. */
const each = <T>(rows: Rows, sql: string): IterableIterator<T> =>
  rows.db.prepare(sql).iterate() as IterableIterator<T>;

function* ledgers(rows: Rows): Generator<LineOf> {
  type Found = {
    key: number;
    uid: string;
    name: string | null;
    own: number;
    demo: number;
    made_at: number;
    made_at_off: number;
  };
  for (const one of each<Found>(rows, 'SELECT * FROM ledger ORDER BY key'))
    yield line('ledgers', {
      no: one.key, id: one.uid, own: one.own === 1, demo: one.demo === 1, name: one.name, madeAt: momentText(one.made_at, one.made_at_off),
    }); // prettier-ignore
}

function* acts(rows: Rows): Generator<LineOf> {
  type Found = {
    key: number;
    uid: string;
    kind: string;
    at: number;
    at_off: number;
    subject: string;
    why: string | null;
    undoes: string | null;
    home: string | null;
  };
  const others = rows.prepare(
    'SELECT a.uid FROM undone_with u JOIN act a ON a.key = u.undoes WHERE u.act = ? ORDER BY u.undoes DESC',
  );
  const found = each<Found>(
    rows,
    `SELECT a.key, a.uid, a.kind, a.at, a.at_off, a.subject, a.why, u.uid AS undoes, l.uid AS home FROM act a
       LEFT JOIN act u ON u.key = a.undoes LEFT JOIN ledger l ON l.key = a.ledger AND l.own = 0 ORDER BY a.key`,
  );
  for (const { key, uid, at, at_off, undoes, home, ...act } of found) {
    const undone = undoes === null ? null : [undoes, ...(others.pluck().all(key) as string[])];
    yield line('acts', {
      no: key,
      id: uid,
      ...act,
      at: momentText(at, at_off),
      undoes: undone,
      ledger: home,
    });
  }
}

function* records(rows: Rows): Generator<LineOf> {
  type Found = {
    key: number;
    uid: string;
    kind: string;
    madeIn: string;
    home: string | null;
    homeForm: number | null;
    form: number;
    goneIn: string | null;
  };
  const found = each<Found>(
    rows,
    `SELECT r.key, r.uid, r.kind, m.uid AS madeIn, l.uid AS home, r.home_form AS homeForm, r.form_no AS form, g.uid AS goneIn
       FROM record r JOIN act m ON m.key = r.made_in LEFT JOIN act g ON g.key = r.gone_in
       LEFT JOIN ledger l ON l.key = r.home AND l.own = 0 ORDER BY r.key`,
  );
  for (const { key, uid, kind, ...story } of found)
    yield line('records', { no: key, id: uid, kind: kindOf(kind), ...story });
}

/** Readings of probes by their hash, the oldest block first. */
export function* readingsOf(rows: Rows): Generator<ArchiveLine<'readings'>> {
  type Found = { key: number; sha: string; n: number; follows: string | null };
  type Point = { no: number; at: number; at_off: number; c: number; left_out: number };
  const points = rows.prepare('SELECT no, at, at_off, c, left_out FROM reading WHERE block = ? ORDER BY no');
  const found = each<Found>(
    rows,
    'SELECT b.key, b.sha, b.n, f.sha AS follows FROM reading_block b LEFT JOIN reading_block f ON f.key = b.follows ORDER BY b.key',
  );
  for (const { key, sha, n, follows } of found) {
    const list = (points.all(key) as Point[]).map(({ no, at, at_off, c, left_out }) => ({
      no, at: momentText(at, at_off), c, ...(left_out === 1 ? { leftOut: true as const } : {}),
    })); // prettier-ignore
    yield { no: key, sha256: sha, count: n, ...(follows === null ? {} : { follows }), readings: list };
  }
}

/** Facts of a kind as they are told outside: others by their ids, and without what is null. */
export function* factsOf(rows: Rows, kind: FactKind): Generator<{ id: string } & Record<string, unknown>> {
  for (const row of rows.all(kind))
    yield { id: row.uid, ...formOf(rows, kind, row as unknown as Record<string, unknown>) };
}

function* steps(rows: Rows): Generator<LineOf> {
  type Found = {
    key: number;
    act: string;
    record: string;
    kind: string;
    op: 'change' | 'take' | 'back';
    before: string | null;
  };
  const found = each<Found>(
    rows,
    `SELECT j.key, a.uid AS act, r.uid AS record, r.kind, j.op, j.before FROM journal j
       JOIN act a ON a.key = j.act JOIN record r ON r.key = j.record ORDER BY j.key`,
  );
  for (const { key, act, record, kind, op, before } of found) {
    const columns = before === null ? null : (JSON.parse(before) as Columns);
    const of = kindOf(kind);
    const form = columns && formOf(rows, of, fromColumns(of, columns) as unknown as Record<string, unknown>);
    const homeForm = columns?.home_form === undefined ? null : Number(columns.home_form);
    yield line('steps', { no: key, act, record, did: op, before: form, homeForm });
  }
}

function* drafts(rows: Rows): Generator<LineOf> {
  type Found = { key: string; json: string; saved_at: number; saved_at_off: number };
  for (const { key, json, saved_at, saved_at_off } of each<Found>(rows, 'SELECT * FROM draft ORDER BY key'))
    yield line('drafts', { key, json, savedAt: momentText(saved_at, saved_at_off) });
}

/** Every line of a ledger. Nothing may be written meanwhile. */
export function* linesOf(rows: Rows): Generator<LineOf> {
  yield* ledgers(rows);
  yield* acts(rows);
  yield* records(rows);
  for (const block of readingsOf(rows)) yield line('readings', block);
  for (const kind of FACT_KINDS) for (const fact of factsOf(rows, kind)) yield [`facts/${kind}`, fact];
  yield* steps(rows);
  yield* drafts(rows);
}

/** How many lines there will be, nearly: for telling how far it is. */
export const countOfLines = (rows: Rows): number =>
  rows.count(
    'SELECT 2 * (SELECT count(*) FROM record) + (SELECT count(*) FROM journal) + (SELECT count(*) FROM act)',
  );

/** Hashes of all photographs that are kept, also of those that only an undo would bring back; in order. */
export const photographsOf = (rows: Rows): string[] =>
  rows
    .prepare(
      `SELECT sha FROM photograph UNION SELECT json_extract(j.before, '$.sha') FROM journal j JOIN record r ON r.key = j.record
        WHERE r.kind = 'photograph' AND j.before IS NOT NULL ORDER BY 1`,
    )
    .pluck()
    .all() as string[];
