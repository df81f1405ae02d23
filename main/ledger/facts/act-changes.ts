// What an act did to each record, told from the journal. The journal keeps only the form before: the form after is the
// next form before, or the row as it is now.
import type { Rows } from './fact-rows';
import { type Columns, type FactKind, kindOf } from './tables';

/** What one act did to one record, all its steps together. */
export interface Change {
  readonly kind: FactKind;
  readonly key: number;
  /** Its form before the act; null where it was not there. */
  readonly before: Columns | null;
  /** Its form after the act; null where it was gone then. */
  readonly after: Columns | null;
}

export interface Step {
  /** Of the journal. */
  readonly key: number;
  readonly record: number;
  readonly kind: FactKind;
  readonly op: 'change' | 'take' | 'back';
  readonly before: Columns | null;
}

interface StepRow {
  readonly key: number;
  readonly record: number;
  readonly kind: string;
  readonly op: Step['op'];
  readonly before: string | null;
}

const formIn = (json: string | null): Columns | null =>
  json === null ? null : (JSON.parse(json) as Columns);

/** A row as the journal keeps it: without its key, and without nulls. */
export function formOf(row: Columns): Columns {
  const form: Columns = {};
  for (const [column, value] of Object.entries(row))
    if (column !== 'key' && value !== null) form[column] = value;
  return form;
}

const STEPS = `SELECT j.key, j.record, r.kind, j.op, j.before FROM journal j JOIN record r ON r.key = j.record`;
const stepOf = (row: StepRow): Step => ({ ...row, kind: kindOf(row.kind), before: formIn(row.before) });

/** The form that a record had once a step of the journal was done; with step 0, once it was made. Null where it was gone. */
export function formAfter(rows: Rows, kind: FactKind, record: number, step: number): Columns | null {
  const next = rows
    .prepare('SELECT op, before FROM journal WHERE record = ? AND key > ? ORDER BY key LIMIT 1')
    .get(record, step) as { op: Step['op']; before: string | null } | undefined;
  // Before it is brought back it is not there.
  if (next) return formIn(next.before);
  const now = rows.columnsNow(kind, record);
  return now ? formOf(now) : null;
}

const PAGE = 500;

/** The steps of an act, the last first. Page by page: while a statement is iterated, nothing can be written. */
export function* stepsBackwards(rows: Rows, act: number): Generator<Step> {
  const page = rows.prepare(`${STEPS} WHERE j.act = ? AND j.key < ? ORDER BY j.key DESC LIMIT ${PAGE}`);
  let from = Number.MAX_SAFE_INTEGER;
  for (;;) {
    const found = page.all(act, from) as StepRow[];
    yield* found.map(stepOf);
    if (found.length < PAGE) return;
    from = found.at(-1)?.key ?? from;
  }
}

/** Records that an act made, the last first, those that are gone again left out. */
export function* madeBackwards(rows: Rows, act: number): Generator<{ kind: FactKind; key: number }> {
  const page = rows.prepare(
    `SELECT key, kind FROM record WHERE made_in = ? AND key < ? AND gone_in IS NULL ORDER BY key DESC LIMIT ${PAGE}`,
  );
  let from = Number.MAX_SAFE_INTEGER;
  for (;;) {
    const found = page.all(act, from) as { key: number; kind: string }[];
    for (const { key, kind } of found) yield { key, kind: kindOf(kind) };
    if (found.length < PAGE) return;
    from = found.at(-1)?.key ?? from;
  }
}

/** Only the records with a key above `record`, or steps above `step`, and at most so many of each. */
export interface Part {
  readonly limit?: number;
  readonly record?: number;
}

/**
 * What an act did, each record once: what it made in the order of entry, then what it changed, took or brought back.
 * Forms are looked up when they are asked for.
 */
export function* changesOf(rows: Rows, act: number, only: Part = {}): Generator<Change> {
  const { limit = -1, record = null } = only;
  const made = rows
    .prepare('SELECT key, kind FROM record WHERE made_in = ? AND (? IS NULL OR key = ?) ORDER BY key LIMIT ?')
    .all(act, record, record, limit) as { key: number; kind: string }[];
  for (const { key, kind } of made) yield new Told(rows, act, kindOf(kind), key, true);
  const changed = rows
    .prepare(
      `SELECT j.record AS key, r.kind FROM journal j JOIN record r ON r.key = j.record
        WHERE j.act = ? AND r.made_in <> ? AND (? IS NULL OR j.record = ?) GROUP BY j.record ORDER BY min(j.key) LIMIT ?`,
    )
    .all(act, act, record, record, limit) as { key: number; kind: string }[];
  for (const { key, kind } of changed) yield new Told(rows, act, kindOf(kind), key, false);
}

/** How many records an act made, changed, took or brought back. */
export function countOfChanges(rows: Rows, act: number): number {
  return (
    rows.count('SELECT count(*) FROM record WHERE made_in = ?', act) +
    rows.count(
      `SELECT count(DISTINCT j.record) FROM journal j JOIN record r ON r.key = j.record
        WHERE j.act = ? AND r.made_in <> ?`,
      act,
      act,
    )
  );
}

/** Acts that made a record or changed it, the newest first, before an act and at most so many. */
export function actsOf(rows: Rows, record: number, before: number, limit: number): number[] {
  return rows
    .prepare(
      `SELECT act FROM (SELECT made_in AS act FROM record WHERE key = ? UNION SELECT act FROM journal WHERE record = ?)
        WHERE act < ? ORDER BY act DESC LIMIT ?`,
    )
    .pluck()
    .all(record, record, before, limit) as number[];
}

class Told implements Change {
  constructor(
    readonly rows: Rows,
    readonly act: number,
    readonly kind: FactKind,
    readonly key: number,
    readonly made: boolean,
  ) {}

  get before(): Columns | null {
    if (this.made) return null;
    const first = this.rows
      .prepare('SELECT before FROM journal WHERE record = ? AND act = ? ORDER BY key LIMIT 1')
      .pluck()
      .get(this.key, this.act) as string | null | undefined;
    return formIn(first ?? null);
  }

  get after(): Columns | null {
    const last = this.rows.count(
      'SELECT max(key) FROM journal WHERE record = ? AND act = ?',
      this.key,
      this.act,
    );
    return formAfter(this.rows, this.kind, this.key, last);
  }
}
