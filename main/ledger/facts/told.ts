// Facts as calls tell them – other records by id, or by the name that one of the same call has – and as they are stored.
import { Uid } from '../../../core/ledger/basics';
import { toInner, toOuter } from '../../../core/ledger/facts/recorded-facts';
import { type FactKind, fieldsOf, isRef } from '../../../core/ledger/facts/all-facts';
import { Refused } from '../../refusal';
import type { Made } from './open-act';
import type { Rows } from './fact-rows';
import type { Row, Stored } from './tables';

type Given = Readonly<Record<string, unknown>>;

/** Facts of the call at hand by the names they were given. */
export type Named = ReadonlyMap<string, Made & { readonly kind: FactKind }>;
const NONE: Named = new Map();

/**
 * The key behind a reference.
 * @throws Refused 'not found', 'no such ref'
 */
function keyBehind(
  rows: Rows,
  as: FactKind | 'record' | 'block' | 'ledger',
  text: string,
  named: Named,
): number {
  if (named.has(text) || !Uid.safeParse(text).success) {
    const here = named.get(text);
    if (!here || (as !== 'record' && here.kind !== as)) throw new Refused('no such ref', { ref: text });
    return here.key;
  }
  if (as === 'record') {
    const found = rows.recordOf(text);
    if (!found || found.gone) throw new Refused('not found', { kind: 'record' });
    return found.key;
  }
  return rows.keyOf(as as FactKind, text);
}

/**
 * Fields of a fact as they are stored. Fields that are absent stay absent.
 * @throws Refused 'not found', 'no such ref'
 */
export function storedFact<K extends FactKind>(
  rows: Rows,
  kind: K,
  outer: Given,
  named: Named = NONE,
): Partial<Stored<K>> {
  const fact: Record<string, unknown> = {};
  for (const [name, value] of Object.entries(toInner(kind, outer))) {
    const field = fieldsOf(kind)[name];
    if (!field) continue;
    const points = isRef(field.as) && typeof value === 'string';
    fact[name] = points ? keyBehind(rows, field.as as FactKind, value, named) : value;
  }
  return fact as Partial<Stored<K>>;
}

/** A stored fact with ids in place of keys, under the names that calls have for its fields; without what is not told. */
export function toldFact<K extends FactKind>(rows: Rows, kind: K, row: Row<K>): Record<string, unknown> {
  const fact: Record<string, unknown> = {};
  for (const [name, { as }] of Object.entries(fieldsOf(kind))) {
    if (as === 'block') continue;
    const value = (row as unknown as Given)[name] ?? null;
    fact[name] = isRef(as) && typeof value === 'number' ? rows.uidOf(as as FactKind, value) : value;
  }
  return { kind, id: row.uid, ...toOuter(kind, fact) };
}
