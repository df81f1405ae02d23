// Shapes of the calls that record, correct, list and take away facts of any kind. A fact may name another by its id, or
// one of the same call by the `ref` that was given to it there.
import { z } from 'zod';
import { Moment, Prose, Uid } from '../basics';
import { type Fact, FACT_KINDS, type FactKind, type Field, fieldsOf, given, isRef } from './all-facts';
import { wrongIn } from './wrong';

/** Kinds that facts.record takes. What is made as a whole (batch, jar, source …) has calls of its own. */
export const RECORDED = [
  'appliance', 'toolCheck', 'carries', 'setting', 'milk', 'addition', 'portion', 'seeding', 'use', 'hold', 'stay', 'interruption', 'series', 'observation',
  'acidity', 'remark', 'sign', 'movement', 'reason', 'lift', 'labResult', 'trial', 'treatment', 'taster', 'session',
  'tasterAvoids', 'serving', 'mark', 'reminderDone',
] as const satisfies readonly FactKind[]; // prettier-ignore
export type RecordedKind = (typeof RECORDED)[number];

/** Fields that only the program fills. */
const NOT_GIVEN: Partial<Record<FactKind, readonly string[]>> = { series: ['block'] };

/** A name that a fact has within one call. */
const RefName = z.string().regex(/^[A-Za-z][\w-]{0,39}$/, {
  message: 'this is not a name of letters, digits and hyphens, 40 at most, that begins with a letter',
});
const RefOrId = z.string().refine((text) => Uid.safeParse(text).success || RefName.safeParse(text).success, {
  message: 'this is neither the id of a record nor the ref of a fact of this call',
});

/** In calls `kind` says what fact it is, so a fact's own field of that name is called otherwise there. */
const NAMED_OTHERWISE = {
  sign: { kind: 'sign' },
  movement: { kind: 'what' },
  appliance: { kind: 'type' },
  session: { kind: 'task' },
  reminderDone: { kind: 'what' },
} as const;
type Otherwise = typeof NAMED_OTHERWISE;
type Outer<K, F> = K extends keyof Otherwise ? (F extends 'kind' ? Otherwise[K]['kind'] : F) : F;

type Loose<K extends FactKind> = { readonly [F in keyof Fact<K> as Outer<K, F>]?: Fact<K>[F] | string };
/** A fact as it is told to facts.record. What is left out is unknown, or what it usually is. */
export type GivenFact = {
  [K in RecordedKind]: { readonly kind: K; readonly ref?: string | undefined } & Loose<K>;
}[RecordedKind];
/** A fact as facts.list tells it. */
export type ToldFact = {
  [K in RecordedKind]: { readonly kind: K; readonly id: string } & {
    readonly [F in keyof Fact<K> as Outer<K, F>]: Fact<K>[F];
  };
}[RecordedKind];

const givenFields = (kind: FactKind): (readonly [string, Field])[] =>
  Object.entries(fieldsOf(kind)).filter(([name]) => !NOT_GIVEN[kind]?.includes(name));

const outerName = (kind: FactKind, field: string): string =>
  (field === 'kind'
    ? (NAMED_OTHERWISE as Partial<Record<FactKind, { kind: string }>>)[kind]?.kind
    : undefined) ?? field;

/** The fields of a fact under the names that calls have for them. */
export function toOuter(kind: FactKind, fact: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(fact).map(([field, value]) => [outerName(kind, field), value]));
}

/** And back. */
export function toInner(kind: FactKind, fact: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const own = outerName(kind, 'kind');
  return Object.fromEntries(
    Object.entries(fact).map(([field, value]) => [field === own ? 'kind' : field, value]),
  );
}

function entryOf(kind: RecordedKind): z.ZodObject {
  const shape = givenFields(kind).map(([name, field]) => {
    const zod = isRef(field.as)
      ? field.nullable
        ? RefOrId.nullable().default(null)
        : RefOrId
      : given(field);
    return [outerName(kind, name), zod] as const;
  });
  return z.strictObject({ kind: z.literal(kind), ref: RefName.optional(), ...Object.fromEntries(shape) });
}

const ENTRIES = z
  .discriminatedUnion('kind', RECORDED.map(entryOf) as unknown as [z.ZodObject, ...z.ZodObject[]])
  .superRefine((fact, context) => {
    const { kind, ref: _ref, ...outer } = fact as Record<string, unknown> & { kind: RecordedKind };
    const wrong = wrongIn(kind, toInner(kind, outer));
    if (wrong)
      context.addIssue({ code: 'custom', path: [outerName(kind, wrong.field)], message: wrong.problem });
  });

const why = Prose.nullable().default(null);
const draft = z.string().min(1).max(100).nullable().default(null);

export const RecordFacts = z.strictObject({
  facts: z
    .array(ENTRIES as unknown as z.ZodType<GivenFact, GivenFact>)
    .min(1)
    .max(2000),
  why,
  draft,
});

const correctionOf = (kind: RecordedKind): z.ZodObject =>
  z.strictObject({
    kind: z.literal(kind),
    id: Uid,
    changes: z.strictObject(
      Object.fromEntries(givenFields(kind).map(([name, { zod }]) => [outerName(kind, name), zod.optional()])),
    ),
    why,
    draft,
  });

type Correction = {
  [K in RecordedKind]: {
    readonly kind: K;
    readonly id: string;
    readonly changes: Loose<K> & Readonly<Record<string, unknown>>;
  };
}[RecordedKind];
export interface Told {
  readonly why: string | null;
  readonly draft: string | null;
}

export const CorrectFact = z.discriminatedUnion(
  'kind',
  RECORDED.map(correctionOf) as unknown as [z.ZodObject, ...z.ZodObject[]],
) as unknown as z.ZodType<Correction & Told, Correction & Partial<Told>>;

export const RemoveFact = z.strictObject({ kind: z.enum(RECORDED), id: Uid, why });

export const ListFacts = z.strictObject({
  kind: z.enum(RECORDED),
  /** Only those that point at this record. */
  of: Uid.nullable().default(null),
  /** Only those entered after this one. */
  after: Uid.nullable().default(null),
  limit: z.int().min(1).max(1000).default(200),
});

const toldOf = (kind: RecordedKind): z.ZodObject =>
  z.strictObject({
    kind: z.literal(kind),
    id: Uid,
    ...Object.fromEntries(givenFields(kind).map(([name, { zod }]) => [outerName(kind, name), zod])),
  });
export const FactsReply = z.strictObject({
  facts: z.array(
    z.discriminatedUnion(
      'kind',
      RECORDED.map(toldOf) as unknown as [z.ZodObject, ...z.ZodObject[]],
    ) as unknown as z.ZodType<ToldFact>,
  ),
  more: z.boolean(),
});

const celsius = z.number().min(-90).max(150);
export const AddReadings = z.strictObject({
  series: Uid,
  readings: z
    .array(z.strictObject({ at: Moment, c: celsius }))
    .min(1)
    .max(20_000),
  why,
  draft,
});
/** Leaves readings out, or counts them again. They stay where they are. */
export const LeaveOutReadings = z.strictObject({
  series: Uid,
  at: z.array(Moment).min(1).max(20_000),
  leftOut: z.boolean().default(true),
  why,
  draft,
});
export const ReadingsReply = z.strictObject({
  readings: z.array(z.strictObject({ at: Moment, c: celsius, leftOut: z.boolean() })),
});

const plain = z.union([z.string(), z.number(), z.boolean(), z.null()]);
/** A fact's fields by name: an amount is a value, a unit and what was typed. */
const form = z.record(z.string(), z.union([plain, z.array(plain), z.record(z.string(), plain)]));
/** Forms of records that came in and say otherwise than ours: each waits until the keeper decides. */
export const ReceivedReply = z.strictObject({
  received: z.array(
    z.strictObject({
      id: Uid,
      /** The record that it is about, what that is in words, and the fields that differ. */
      record: Uid,
      kind: z.enum(FACT_KINDS),
      says: z.string(),
      differs: z.array(z.string()),
      ours: form,
      theirs: form,
      /** Of the ledger that it came from; null where that has no name. */
      from: z.string().nullable(),
      decided: z.enum(['kept own', 'took received']).nullable(),
    }),
  ),
});
export const DecideReceived = z.strictObject({
  id: Uid,
  decided: z.enum(['kept own', 'took received']),
  why,
  draft,
});

/** What is left of a jar or a portion, and where it stands (core/ledger/jar-left.ts). */
export const LeftReply = z.strictObject({
  amount: z.strictObject({ value: z.number().min(0), unit: z.enum(['mL', 'g']) }).nullable(),
  pieces: z.number().min(0).nullable(),
  none: z.boolean(),
  unknown: z.enum(['volume', 'seed', 'kept apart', 'eaten', 'pieces', 'unit', 'said to be there']).nullable(),
  gramsAsMl: z.boolean(),
  place: z.enum(['warmth', 'fridge', 'freezer', 'dried', 'not said']),
  opened: z.string().nullable(),
  thawed: z.boolean(),
  lastNoted: z.string().nullable(),
});
