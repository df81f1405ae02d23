// JSON Schemas (draft 2020-12) of every record and every call, made from the zod schemas that are their one definition.
// Pure. For readers of a ledger and callers of the headless host in other languages; the program itself never uses them.
import { z } from 'zod';
import { ARCHIVE_VERSION, Contents, FACT_LINES, LINES } from '../archive/archive-format';
import { type CallName, contract } from '../contract';
import { HAND_OVER_VERSION, HANDED_KINDS, HandOver } from '../hand-over/hand-over-format';
import { FACTS } from '../ledger/facts/all-facts';
import { Day } from '../ledger/basics';
import {
  Addition,
  Batch,
  Choice,
  Clearing,
  Hold,
  Jar,
  Outcome,
  Package,
  Photograph,
  Portion,
  Preferences,
  Seeding,
  Source,
} from '../ledger/records';

export type JsonSchema = z.core.JSONSchema.BaseSchema;

const RECORDS = {
  source: Source,
  package: Package,
  batch: Batch,
  hold: Hold,
  jar: Jar,
  addition: Addition,
  portion: Portion,
  seeding: Seeding,
  outcome: Outcome,
  photograph: Photograph,
  clearing: Clearing,
  preferences: Preferences,
  choice: Choice,
} as const;
export type RecordSchemaName = keyof typeof RECORDS;

export interface JsonSchemas {
  readonly records: Readonly<Record<RecordSchemaName, JsonSchema>>;
  readonly calls: Readonly<
    Record<
      CallName,
      { readonly kind: 'read' | 'write' | 'job'; readonly input: JsonSchema; readonly reply: JsonSchema }
    >
  >;
}

const list = (items: JsonSchema): JsonSchema => ({ type: 'array', items });

/** What JSON, which has no typed arrays, holds in their place: a list of numbers. */
const TYPED: readonly (readonly [sample: unknown, () => JsonSchema])[] = [
  [new Uint8Array(), () => list({ type: 'integer', minimum: 0, maximum: 255 })],
  [new Int32Array(), () => list({ type: 'integer', minimum: -(2 ** 31), maximum: 2 ** 31 - 1 })],
  // JSON has no NaN either: a number that is not known is null.
  [new Float64Array(), () => list({ anyOf: [{ type: 'number' }, { type: 'null' }] })],
];

/** @throws Error for a schema that JSON Schema can't say and nothing here describes */
function describe(schema: z.ZodType, io: 'input' | 'output'): JsonSchema {
  return z.toJSONSchema(schema, {
    io,
    unrepresentable: 'any', // what is left undescribed is refused below
    override: ({ zodSchema, jsonSchema, path }) => {
      if (zodSchema === Day) Object.assign(jsonSchema, { format: 'date' });
      if (!(zodSchema instanceof z.ZodCustom)) return;
      const typed = TYPED.find(([sample]) => zodSchema.safeParse(sample).success);
      if (!typed) throw new Error(`no JSON Schema for ${path.join('.')}`);
      Object.assign(jsonSchema, typed[1]());
    },
  });
}

const mapEntries = <K extends string, T, U>(
  record: Readonly<Record<K, T>>,
  make: (value: T) => U,
): Record<K, U> =>
  Object.fromEntries(Object.entries<T>(record).map(([key, value]) => [key, make(value)])) as Record<K, U>;

/** The schemas of all records and calls. An input is described as it may be given, before defaults are filled in. */
export function jsonSchemas(): JsonSchemas {
  return {
    records: mapEntries<RecordSchemaName, z.ZodType, JsonSchema>(RECORDS, (schema) =>
      describe(schema, 'output'),
    ),
    calls: mapEntries(
      contract as Record<CallName, (typeof contract)[CallName]>,
      ({ kind, input, reply }) => ({
        kind,
        input: describe(input, 'input'),
        reply: describe(reply, 'output'),
      }),
    ),
  };
}

/**
 * What each line of an archive is, by its file, and archive.json itself. Checked in beside this as archive-1.json, and put
 * into every archive.
 */
export function archiveSchema(): JsonSchema {
  const lines = {
    ...LINES,
    ...Object.fromEntries(Object.entries(FACT_LINES).map(([of, line]) => [`facts/${of}`, line])),
  };
  const files = mapEntries<string, z.ZodType, JsonSchema>(
    { 'archive.json': Contents, ...lines },
    (schema) => {
      const { $schema: _draft, ...described } = describe(schema, 'input');
      return described;
    },
  );
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: `Jarline archive, version ${ARCHIVE_VERSION}`,
    $defs: files,
  };
}

/**
 * What a hand-over is, each of its records with the fields of its kind. Checked in beside this as hand-over-1.json. A form is as
 * its home wrote it, so what is unknown there is left out.
 */
export function handOverSchema(): JsonSchema {
  const record = HandOver.shape.records.element;
  const ofKind = (kind: (typeof HANDED_KINDS)[number]) =>
    record.extend({ kind: z.literal(kind), form: FACTS[kind].partial() });
  const [first, ...others] = HANDED_KINDS.map(ofKind);
  if (!first) throw new Error('a hand-over holds some kind of record');
  const records = z.array(z.discriminatedUnion('kind', [first, ...others])).min(1);
  return {
    title: `Jarline hand-over, version ${HAND_OVER_VERSION}`,
    ...describe(HandOver.extend({ records }), 'input'),
  };
}
