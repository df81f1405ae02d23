// The inverse of one act, written under another. What the act made goes first, then its steps are taken back, the last
// first. Nothing that stands on it may be left (later.ts is asked before). References are looked at once all is written.
import type { OpenAct } from './open-act';
import { madeBackwards, type Step, stepsBackwards } from './act-changes';
import type { Rows } from './fact-rows';
import { columnsOf, type Columns, type FactKind } from './tables';

/** A row about to be put back into an earlier form. */
export interface Returning {
  readonly kind: FactKind;
  readonly key: number;
  /** Its form now; null where it is gone. */
  readonly now: Columns | null;
  readonly form: Columns;
}

/**
 * @param ask called before a row is put back into an earlier form; may throw Refused
 */
export function invertAct(
  rows: Rows,
  act: OpenAct,
  target: number,
  ask: (returning: Returning) => void = () => undefined,
): void {
  rows.db.pragma('defer_foreign_keys = ON');
  for (const { kind, key } of madeBackwards(rows, target)) act.remove(kind, key);
  for (const step of stepsBackwards(rows, target)) {
    if (!madeIn(rows, step.record, target)) invertStep(rows, act, step, ask);
  }
}

const madeIn = (rows: Rows, record: number, act: number): boolean =>
  rows.prepare('SELECT 1 FROM record WHERE key = ? AND made_in = ?').get(record, act) !== undefined;

function invertStep(rows: Rows, act: OpenAct, step: Step, ask: (returning: Returning) => void): void {
  const { kind, record, before } = step;
  if (before === null) {
    act.remove(kind, record);
    return;
  }
  ask({ kind, key: record, now: rows.columnsNow(kind, record) ?? null, form: before });
  if (step.op === 'take') act.bringBack(kind, record, before);
  else act.updateColumns(kind, record, filled(kind, before));
  const home = before.home_form;
  act.learnHomeForm(record, home === undefined ? null : Number(home));
}

/** A form with its nulls. */
const filled = (kind: FactKind, form: Columns): Columns =>
  Object.fromEntries(columnsOf(kind).map((column) => [column, form[column] ?? null]));
