// What a field of a fact can hold: its zod type, and how it lies in the ledger. Both from one definition, so that the
// shape that is checked, the shape that is stored and the columns can't differ.
import { z } from 'zod';
import * as basics from '../basics';

/** Kinds of fact, in the order in which one can point at another. Each lies in a table of its own. */
export const FACT_KINDS = [
  'source', 'strain', 'package', 'appliance', 'toolCheck', 'carries', 'setting', 'batch', 'jar', 'milk', 'addition', 'portion', 'seeding', 'use', 'hold', 'stay',
  'interruption', 'series', 'observation', 'acidity', 'photograph', 'remark', 'sign', 'movement', 'reason', 'lift', 'liftKnew',
  'choice', 'labResult', 'trial', 'treatment', 'taster', 'session', 'tasterAvoids', 'serving', 'mark', 'noteFile', 'noteRow',
  'noteAnswer', 'reminderDone', 'received', 'preferences',
] as const; // prettier-ignore
export type FactKind = (typeof FACT_KINDS)[number];

/**
 * How a field lies in its columns: plain in one; a flag as 0 or 1; a list or a document as JSON; an amount, a price, a
 * temperature as value, unit and what was typed; a moment as seconds and offset. A kind: the key of such a record.
 * 'record' points at any record, 'block' at readings, 'ledger' at a ledger.
 */
export type As =
  | 'plain' | 'flag' | 'list' | 'document' | 'amount' | 'temperature' | 'price' | 'moment' | 'record' | 'block' | 'ledger'
  | FactKind; // prettier-ignore

/** Stored as a key inside, as an id outside. */
export type Ref = FactKind | 'record' | 'block' | 'ledger';

export interface Field<T = unknown, A extends As = As> {
  readonly zod: z.ZodType<T>;
  readonly as: A;
  /** Null is allowed, and means unknown. */
  readonly nullable: boolean;
  /** What it is where it is left out; undefined: it may not be. */
  readonly leftOut?: T;
}

const field = <T, A extends As>(as: A, zod: z.ZodType<T>): Field<T, A> => ({ as, zod, nullable: false });

/** Null where it is unknown; left out means the same. */
export const maybe = <T, A extends As>({ as, zod }: Field<T, A>): Field<T | null, A> => ({
  as,
  zod: zod.nullable(),
  nullable: true,
  leftOut: null,
});

/** Left out means that value. */
export const usually = <T, A extends As>(value: T, of: Field<T, A>): Field<T, A> => ({
  ...of,
  leftOut: value,
});

export const line = () => field('plain', basics.Line);
export const name = () => field('plain', basics.Line.min(1));
export const prose = () => field('plain', basics.Prose);
export const day = () => field('plain', basics.Day);
export const moment = () => field('moment', basics.Moment);
export const amount = () => field('amount', basics.Amount);
export const temperature = () => field('temperature', basics.Temperature);
export const price = () => field('price', basics.Price);
export const flag = () => field('flag', z.boolean());
export const ref = <K extends Ref>(kind: K) => field(kind, basics.Uid);
export const oneOf = <const W extends readonly string[]>(words: W) =>
  field(
    'plain',
    z.enum(words as unknown as readonly [string, ...string[]]) as unknown as z.ZodType<W[number]>,
  );
export const whole = (least: number, most: number) => field('plain', z.int().min(least).max(most));
export const number = (least: number, most: number) => field('plain', z.number().min(least).max(most));
export const positive = (most: number) => field('plain', z.number().positive().max(most));
export const text = (pattern: RegExp) => field('plain', z.string().regex(pattern));
export const words = (least: number, most: number) => field('plain', z.string().min(least).max(most));
export const list = <T>(of: z.ZodType<T>) => field('list', z.array(of));
export const document = () => field('document', z.string().max(1_000_000));
export const cells = () => field('document', z.string().max(4_000_000));
