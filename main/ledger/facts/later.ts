// What was written after an act, and which of it stands on what the act did. Reads only. Costs as much as was written
// later: undoing the newest act, however large, asks nothing of its rows, since no row changes without the journal.
import { formAfter, formOf, stepsBackwards } from './act-changes';
import type { Rows } from './fact-rows';
import { type Columns, type FactKind, kindOf, tableOf, type Value } from './tables';

export interface LaterRow {
  readonly kind: FactKind;
  readonly key: number;
}

/** Records that acts after this one made or changed, each once. */
export function touchedSince(rows: Rows, act: number): LaterRow[] {
  // UNION ALL: for a UNION all records would be walked in the order of their keys.
  const found = rows
    .prepare(
      `SELECT r.key, r.kind FROM record r WHERE r.made_in > ?
        UNION ALL SELECT r.key, r.kind FROM journal j JOIN record r ON r.key = j.record WHERE j.act > ?`,
    )
    .all(act, act) as { key: number; kind: string }[];
  return [...new Map(found.map(({ key, kind }) => [key, { kind: kindOf(kind), key }])).values()];
}

/** Whether an act made a record or brought it back. */
function madeBy(rows: Rows, act: number, key: number): boolean {
  const made = rows.prepare('SELECT 1 FROM record WHERE key = ? AND made_in = ?').get(key, act);
  if (made !== undefined) return true;
  const first = rows
    .prepare('SELECT op FROM journal WHERE record = ? AND act = ? ORDER BY key LIMIT 1')
    .pluck()
    .get(key, act);
  return first === 'back';
}

/** The form in which an act left a record; undefined where it did nothing to it. */
function leftBy(rows: Rows, act: number, { kind, key }: LaterRow): Columns | null | undefined {
  const last = rows.count('SELECT max(key) FROM journal WHERE record = ? AND act = ?', key, act);
  if (last === 0 && !madeBy(rows, act, key)) return undefined;
  // Made there, and changed only later: the first form before is what was made.
  return formAfter(rows, kind, key, last);
}

/** Whether two forms are the same thing. What its home calls the form is no part of it. */
function sameForm(one: Columns | null, other: Columns | null): boolean {
  if (!one || !other) return !one && !other;
  const names = new Set([...Object.keys(one), ...Object.keys(other)]);
  names.delete('home_form');
  return [...names].every((name) => (one[name] ?? null) === (other[name] ?? null));
}

/**
 * Of these facts a call writes one to a place, and reads the first: one that comes back beside another of the same place
 * would hide it.
 */
const PLACES: Partial<Record<FactKind, readonly string[]>> = {
  observation: ['jar', 'stage'],
  milk: ['jar'],
  stay: ['jar'],
  series: ['hold'],
  use: ['milk', 'addition', 'seeding', 'batch'],
  labResult: ['jar', 'portion', 'what'],
  remark: ['jar', 'batch', 'hold', 'portion', 'observation', 'photograph', 'package', 'seeding', 'field'],
};

/** The place of a fact; null for one that may stand beside others. */
function placeOf(kind: FactKind, form: Columns): string | null {
  const columns = PLACES[kind];
  return columns ? `${kind} ${columns.map((name) => form[name] ?? '').join(' ')}` : null;
}

/** Places of what an act took away. */
function placesLeft(rows: Rows, act: number): ReadonlySet<string> {
  const places = new Set<string>();
  for (const { kind, op, before } of stepsBackwards(rows, act)) {
    const place = op === 'take' && before ? placeOf(kind, before) : null;
    if (place !== null) places.add(place);
  }
  return places;
}

/** Whether a record that is there was not there yet, or was gone, when an act was done. */
function cameSince(rows: Rows, act: number, key: number): boolean {
  const made = rows.prepare('SELECT 1 FROM record WHERE key = ? AND made_in > ?').get(key, act);
  if (made !== undefined) return true;
  const next = rows
    .prepare('SELECT op FROM journal WHERE record = ? AND act > ? ORDER BY key LIMIT 1')
    .pluck()
    .get(key, act);
  return next === 'back';
}

/**
 * Keys of the later acts that stand on what an act did, oldest first: those that changed its records again, those whose
 * records point at one that it made, and those that filled the place of one that it took away.
 * @param later from touchedSince
 */
export function standsOn(rows: Rows, act: number, later: readonly LaterRow[]): number[] {
  const acts = new Set<number>();
  const left = later.length === 0 ? new Set<string>() : placesLeft(rows, act);
  const fills = (row: LaterRow, now: Columns): boolean =>
    left.has(placeOf(row.kind, now) ?? '') && cameSince(rows, act, row.key);
  for (const row of later) {
    const was = leftBy(rows, act, row);
    const columns = rows.columnsNow(row.kind, row.key);
    const now = columns ? formOf(columns) : null;
    const stands =
      was === undefined
        ? now !== null && (fills(row, now) || pointsAtMade(rows, act, row.kind, now))
        : !sameForm(now, was);
    if (!stands) continue;
    const since = rows
      .prepare(
        `SELECT made_in FROM record WHERE key = ? AND made_in > ?
          UNION SELECT act FROM journal WHERE record = ? AND act > ?`,
      )
      .pluck()
      .all(row.key, act, row.key, act);
    for (const one of since) acts.add(Number(one));
  }
  return [...acts].toSorted((a, b) => a - b);
}

/** Whether one of a row's references leads to a record that the act made. */
function pointsAtMade(rows: Rows, act: number, kind: FactKind, row: Columns): boolean {
  return referencesOf(rows, kind).some((column) => {
    const key = row[column];
    return typeof key === 'number' && madeBy(rows, act, key);
  });
}

/** Columns of a kind that point at a fact. One that points at a bare record outlives what it points at. */
function referencesOf(rows: Rows, kind: FactKind): string[] {
  return rows
    .prepare(
      `SELECT "from" FROM pragma_foreign_key_list('${tableOf(kind)}')
        WHERE "table" NOT IN ('record', 'ledger', 'reading_block')`,
    )
    .pluck()
    .all() as string[];
}

/**
 * Keys of the acts that are in the way of undoing another, where the tables refused it: those that wrote what has taken the
 * place of something it would bring back, or took away what that points at.
 */
export function inTheWay(rows: Rows, act: number): number[] {
  const acts = new Set<number>();
  for (const { kind, op, before } of stepsBackwards(rows, act)) {
    if (op !== 'take' || before === null) continue;
    for (const columns of uniquesOf(rows, kind)) {
      if (columns.some((name) => before[name] === undefined)) continue;
      const there = rows
        .prepare(
          `SELECT key FROM ${tableOf(kind)} WHERE ${columns.map((name) => `${name} = ?`).join(' AND ')}`,
        )
        .pluck()
        .all(columns.map((name) => before[name] as Value)) as number[];
      for (const key of there) acts.add(lastOf(rows, key));
    }
    for (const column of referencesOf(rows, kind)) {
      const gone = rows
        .prepare('SELECT gone_in FROM record WHERE key = ?')
        .pluck()
        .get(before[column] ?? null) as number | null | undefined;
      // What the act took away itself comes back with it.
      if (gone !== null && gone !== undefined && gone !== act) acts.add(gone);
    }
  }
  return [...acts].toSorted((a, b) => a - b);
}

/** Columns that only one record of a kind may have alike. */
function uniquesOf(rows: Rows, kind: FactKind): string[][] {
  const indexes = rows
    .prepare(`SELECT name FROM pragma_index_list('${tableOf(kind)}') WHERE "unique" = 1 AND origin = 'u'`)
    .pluck()
    .all() as string[];
  return indexes.map(
    (name) => rows.prepare(`SELECT name FROM pragma_index_info('${name}')`).pluck().all() as string[],
  );
}

/** The act that made a record or changed it last. */
const lastOf = (rows: Rows, key: number): number =>
  rows.count(
    `SELECT max(act) FROM (SELECT made_in AS act FROM record WHERE key = ? UNION SELECT act FROM journal WHERE record = ?)`,
    key,
    key,
  );
