// How much of a thing went in last time, filled in when its name is typed, until the keeper types an amount. Pure. Each thing keeps
// its own: inulin does not take the amount of the oat bran beside it.
import { noAddition, additionRows, type AdditionText, type BatchText } from './batch-text';

/** How much went in last, as it is written into a field, by the name in small letters. */
export type Usual = ReadonlyMap<string, string>;

const usualOf = (usual: Usual, name: string | undefined): string | undefined =>
  usual.get((name ?? '').trim().toLowerCase());

type Own = Partial<AdditionText>;
const without = ({ planned: _planned, ...rest }: Own): Own => rest;

/** The own fields of a jar in a row, once this name stands there. */
function ownNamed(
  own: Own,
  name: string,
  shared: AdditionText,
  began: { own: Own | undefined; shared: AdditionText | undefined },
  usual: Usual,
): Own {
  const { name: before = shared.name, planned } = own;
  const named: Own =
    name === '' ? (({ name: _name, ...rest }) => rest)(own) : { ...own, name: name === '?' ? '' : name };
  const filled =
    planned === undefined
      ? shared.planned === '' || shared.planned === began.shared?.planned
      : planned === usualOf(usual, before) || planned === began.own?.planned;
  if (!filled) return named;
  const now = usualOf(usual, name);
  if (now === undefined)
    return planned !== undefined && planned === usualOf(usual, before) ? without(named) : named;
  return now === shared.planned ? without(named) : { ...named, planned: now };
}

/**
 * The batch once a name is typed for a jar, or for all.
 * @param at the place of the jar; null: for all @param start what the form began with: an amount that stands there unchanged was not typed
 */
export function withName(
  text: BatchText,
  start: BatchText,
  row: number,
  at: number | null,
  name: string,
  usual: Usual,
): BatchText {
  const rows = Array.from({ length: additionRows(text) }, (_, one) => text.all.additions[one] ?? noAddition);
  const shared = rows[row] ?? noAddition;
  const began = start.all.additions[row];
  if (at === null) {
    const filled =
      shared.planned === '' ||
      shared.planned === usualOf(usual, shared.name) ||
      shared.planned === began?.planned;
    const planned = filled ? (usualOf(usual, name) ?? shared.planned) : shared.planned;
    return { ...text, all: { ...text.all, additions: rows.with(row, { ...shared, name, planned }) } };
  }
  const jar = text.jars[at];
  if (jar === undefined) return text;
  const own = Array.from(
    { length: Math.max(row + 1, jar.additions?.length ?? 0) },
    (_, one) => jar.additions?.[one] ?? {},
  );
  const from = { own: start.jars[at]?.additions?.[row], shared: began };
  const next = own.with(row, ownNamed(own[row] ?? {}, name, shared, from, usual));
  const none = next.every((one) => Object.keys(one).length === 0);
  return { ...text, jars: text.jars.with(at, { ...jar, additions: none ? null : next }) };
}

/** The batch once an amount is typed for all: it reaches the jars whose own was only filled in. */
export function withAmountForAll(
  text: BatchText,
  start: BatchText,
  row: number,
  planned: string,
  usual: Usual,
): BatchText {
  const rows = Array.from({ length: additionRows(text) }, (_, one) => text.all.additions[one] ?? noAddition);
  const shared = { ...(rows[row] ?? noAddition), planned };
  const jars = text.jars.map((jar, at) => {
    const own = jar.additions?.[row];
    const filled =
      own?.planned !== undefined &&
      own.planned === usualOf(usual, own.name) &&
      start.jars[at]?.additions?.[row]?.planned === undefined;
    return filled ? { ...jar, additions: (jar.additions ?? []).with(row, without(own)) } : jar;
  });
  return { ...text, all: { ...text.all, additions: rows.with(row, shared) }, jars };
}
