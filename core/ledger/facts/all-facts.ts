// Every kind of fact, each defined once. What is checked (`FACTS`), what is stored (`Stored`) and the columns
// (main/ledger/facts/tables.ts) all follow these fields.
import { z } from 'zod';
import { bought } from './bought-facts';
import { compared } from './compared-facts';
import { doors } from './doors-facts';
import { type As, FACT_KINDS, type FactKind, type Field, type Ref } from './fact-fields';
import { judged } from './judged-facts';
import { kept } from './kept-facts';
import { made } from './made-facts';
import { seen } from './seen-facts';
import { warm } from './warm-facts';

export { type As, FACT_KINDS, type FactKind, type Field, type Ref };

export const FIELDS = {
  ...bought,
  ...made,
  ...warm,
  ...seen,
  ...kept,
  ...judged,
  ...compared,
  ...doors,
} as const;

type Fields = typeof FIELDS;
type ValueOf<F> = F extends Field<infer T> ? T : never;
type AsOf<F> = F extends Field<unknown, infer A> ? A : never;

/** A fact as it is told: other records by id. */
export type Fact<K extends FactKind> = { [F in keyof Fields[K]]: ValueOf<Fields[K][F]> };

/** A fact as it is stored: other records by key. */
export type Stored<K extends FactKind> = {
  -readonly [F in keyof Fields[K]]: AsOf<Fields[K][F]> extends Ref
    ? null extends ValueOf<Fields[K][F]> ? number | null : number
    : ValueOf<Fields[K][F]>;
}; // prettier-ignore

/** A field as it is given: what may be left out has its value then. */
export const given = ({ zod, leftOut }: Field): z.ZodType =>
  leftOut === undefined ? zod : zod.default(leftOut as never);

const schemaOf = (fields: Record<string, Field>): z.ZodObject =>
  z.strictObject(Object.fromEntries(Object.entries(fields).map(([name, field]) => [name, given(field)])));

/** The zod schema of each kind: what a fact of it must be. */
export const FACTS = Object.fromEntries(
  Object.entries(FIELDS).map(([kind, fields]) => [kind, schemaOf(fields)]),
) as { readonly [K in FactKind]: z.ZodObject };

/** A field's definition by name. */
export const fieldsOf = (kind: FactKind): Readonly<Record<string, Field>> => FIELDS[kind];

export const isRef = (as: As): as is Ref =>
  as === 'record' || as === 'block' || as === 'ledger' || (FACT_KINDS as readonly string[]).includes(as);
