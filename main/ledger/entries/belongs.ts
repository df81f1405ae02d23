// Which record of the calls a fact belongs to: a jar's milk is told with the jar, a sign with the jar's outcome.
import type { RecordKind } from '../../../core/ledger/records';
import type { Rows as FactRows } from '../facts/fact-rows';
import { type Columns, type FactKind, tableOf } from '../facts/tables';

export interface Belongs {
  readonly kind: RecordKind;
  readonly key: number;
}

const ROOTS: Readonly<Partial<Record<FactKind, RecordKind>>> = {
  source: 'source', package: 'package', batch: 'batch', hold: 'hold', jar: 'jar', addition: 'addition', portion: 'portion',
  seeding: 'seeding', photograph: 'photograph', lift: 'clearing', preferences: 'preferences', noteRow: 'noteRow', choice: 'choice',
}; // prettier-ignore

/** The fact at the root of a record; a jar's outcome goes by the jar. */
export const rootOf = (kind: RecordKind): FactKind =>
  kind === 'outcome' ? 'jar' : kind === 'clearing' ? 'lift' : kind;

/** Columns by which a fact hangs on the root of a record, or on a fact that does. */
const OWNERS: Readonly<Partial<Record<FactKind, readonly FactKind[]>>> = {
  strain: ['source'], stay: ['jar'], milk: ['jar'], labResult: ['jar'], movement: ['jar', 'portion'],
  use: ['milk', 'addition', 'seeding'], series: ['hold'], acidity: ['observation'], sign: ['observation'], liftKnew: ['lift'],
  remark: ['jar', 'batch', 'hold', 'portion', 'observation', 'photograph', 'package', 'seeding'], noteAnswer: ['noteRow'],
}; // prettier-ignore

/** A fact's columns, also of one that is gone: as it was last. */
function columnsOf(facts: FactRows, kind: FactKind, key: number): Columns | null {
  const now = facts.columnsNow(kind, key);
  if (now) return now;
  const taken = facts
    .prepare("SELECT before FROM journal WHERE record = ? AND op = 'take' ORDER BY key DESC LIMIT 1")
    .pluck()
    .get(key);
  return typeof taken === 'string' ? (JSON.parse(taken) as Columns) : null;
}

/** The record that a fact belongs to; null where it is told by itself. @param form its columns, as they are or were */
export function recordOf(facts: FactRows, kind: FactKind, key: number, form: Columns): Belongs | null {
  if (kind === 'observation') return { kind: 'outcome', key: Number(form.jar) };
  const root = ROOTS[kind];
  if (root) return { kind: root, key };
  for (const owner of OWNERS[kind] ?? []) {
    const above = form[tableOf(owner)];
    if (typeof above !== 'number') continue;
    if (kind === 'labResult' && form.what !== 'count') return null;
    const its = columnsOf(facts, owner, above);
    return its && recordOf(facts, owner, above, its);
  }
  if (kind === 'reason') {
    const lift = facts.prepare('SELECT min(key) FROM lift WHERE reason = ?').pluck().get(key);
    if (typeof lift === 'number') return { kind: 'clearing', key: lift };
  }
  return null;
}

/** Facts that belong to a record, those that are gone among them. */
export function factsOfRecord(facts: FactRows, { kind, key }: Belongs): number[] {
  const found = new Set<number>(kind === 'outcome' ? [] : [key]);
  const roots: [FactKind, number][] = [];
  const hang = (owner: FactKind, on: number): void => {
    const column = tableOf(owner);
    for (const [child, owners] of Object.entries(OWNERS) as [FactKind, readonly FactKind[]][]) {
      if (!owners.includes(owner)) continue;
      if (child === 'labResult' && kind !== 'jar') continue;
      for (const one of hanging(facts, child, column, on)) {
        if (found.has(one)) continue;
        found.add(one);
        roots.push([child, one]);
      }
    }
  };
  if (kind === 'outcome') {
    for (const one of hanging(facts, 'observation', 'jar', key)) {
      found.add(one);
      roots.push(['observation', one]);
    }
  } else roots.push([rootOf(kind), key]);
  for (let next = roots.pop(); next; next = roots.pop()) hang(...next);
  return [...found];
}

const hanging = (facts: FactRows, child: FactKind, column: string, on: number): number[] =>
  facts
    .prepare(
      `SELECT key FROM ${tableOf(child)} WHERE ${column} = ?
        UNION SELECT j.record FROM journal j JOIN record r ON r.key = j.record
         WHERE r.kind = '${tableOf(child)}' AND j.op = 'take' AND json_extract(j.before, '$.${column}') = ?`,
    )
    .pluck()
    .all(on, on) as number[];
