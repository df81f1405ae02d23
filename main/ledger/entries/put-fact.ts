// Writing one fact of an entry: changed where it is there, added where it is not, taken away where nothing is wanted.
import type { OpenAct } from '../facts/open-act';
import type { FactKind, Row, Stored } from '../facts/tables';

/**
 * @param there the fact as it is; undefined where there is none
 * @param wanted fields it shall have, others staying as they are; null: it goes
 * @param fresh fields for a fact that is new
 * @returns its key; null where none is wanted
 */
export function put<K extends FactKind>(
  act: OpenAct,
  kind: K,
  there: { readonly key: number } | undefined,
  wanted: Partial<Stored<K>> | null,
  fresh: Partial<Stored<K>> = {},
): number | null {
  if (wanted === null) {
    if (there) act.remove(kind, there.key);
    return null;
  }
  if (!there) return act.insert(kind, { ...fresh, ...wanted }).key;
  act.update(kind, there.key, wanted);
  return there.key;
}

/** Like put, for what is wanted for certain. */
export const mustPut = <K extends FactKind>(
  act: OpenAct,
  kind: K,
  there: { readonly key: number } | undefined,
  wanted: Partial<Stored<K>>,
  fresh: Partial<Stored<K>> = {},
): number => put(act, kind, there, wanted, fresh) as number;

type Remarked = 'jar' | 'batch' | 'hold' | 'portion' | 'observation' | 'photograph' | 'package' | 'seeding';
type RemarkField = Stored<'remark'>['field'];

/** The keeper's words about something. Changed words are unread again. */
export function putRemark(
  act: OpenAct,
  there: Row<'remark'> | undefined,
  about: Remarked,
  key: number,
  text: string | null,
  field: RemarkField = 'note',
): void {
  if (there && there.text === text) return;
  put(act, 'remark', there, text === null ? null : { text, readAs: null }, {
    [about]: key,
    field,
    private: true,
  } as Partial<Stored<'remark'>>);
}

/** The first remark of a field. */
export const remarkOf = (
  remarks: readonly Row<'remark'>[],
  field: RemarkField = 'note',
): Row<'remark'> | undefined => remarks.find((remark) => remark.field === field);

/** Takes a fact away, and before it those that hang on it, by kind and column. */
export function removeWith(
  act: OpenAct,
  kind: FactKind,
  key: number,
  hanging: readonly (readonly [FactKind, string])[],
): void {
  for (const [hung, column] of hanging)
    for (const one of act.rows.where(hung, column, key)) act.remove(hung, one.key);
  act.remove(kind, key);
}

/** Takes facts away, in the order given: what points at others before those. */
export function removeAll(
  act: OpenAct,
  ...facts: readonly (readonly [FactKind, { readonly key: number } | undefined])[]
): void {
  for (const [kind, fact] of facts) if (fact) act.remove(kind, fact.key);
}
