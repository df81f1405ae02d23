// Inputs for a call, made from the zod schema that it is checked against, and then spoilt: what the schema takes, what it
// just does not take, and whatever else JSON can carry.
import fc, { type Arbitrary } from 'fast-check';
import { z } from 'zod';

type Schema = z.core.$ZodType;
type Def = z.core.$ZodTypeDef & Record<string, unknown>;
const defOf = (schema: Schema): Def => schema['_zod'].def as unknown as Def;

/** What stands for the records of a ledger, so that inputs can mean something. */
export interface Known {
  readonly ids: readonly string[];
  readonly keys: readonly number[];
}

/** JSON texts of what a program sends that means no harm, or does. */
const NUMBERS = ['0', '-0', '1', '-1', '1e400', '-1e400', '1e-320', '1e308', '4.9e-324', '9007199254740993', '1e15', '0.1', '2147483648', '-90.0000001', '365', '7.000000000000001']; // prettier-ignore
const TEXTS = ['', ' ', 'a', 'A', '\u0000', 'a\u0000b', '\ud800', 'x\udfff', '\u200b', '\uFEFF', '\r\n', '\u2028', 'İ', 'ß', 'ﬁ', '𝒶', 'e\u0301', '👩‍🍳', '%00', "'; DROP TABLE jar; --", '../..', '__proto__', 'constructor', 'null', '2026-02-29', '2026-03-14', '0000-00-00', '9999-12-31', '1899-12-31', '2026-03-14T24:00:00Z', '2026-03-14T99:99:99+99:99', '2026-03-10T08:00:00+01:00', 'constructor.prototype']; // prettier-ignore
const LENGTHS = [19, 20, 21, 30, 100, 101, 199, 200, 201, 500, 501, 4096, 4097, 10_000, 10_001];

export const nastyText: Arbitrary<string> = fc.oneof(
  fc.constantFrom(...TEXTS),
  fc.tuple(fc.constantFrom('x', 'İ', 'ﬁ', '乳', '𝒶', '\u0000', ' '), fc.constantFrom(...LENGTHS)).map(([of, length]) => of.repeat(length).slice(0, length)),
  fc.string({ unit: 'binary', maxLength: 30 }),
); // prettier-ignore
export const nastyNumber: Arbitrary<number> = fc.oneof(
  fc.constantFrom(...NUMBERS).map((text) => JSON.parse(text) as number),
  fc.double({ noNaN: true }),
);
const nasty: Arbitrary<unknown> = fc.oneof(
  nastyText, nastyNumber, fc.boolean(), fc.constant(null), fc.constant([]), fc.constant({}),
  fc.constant(JSON.parse('{"__proto__": 1}') as unknown), fc.jsonValue({ maxDepth: 3 }),
); // prettier-ignore

const bagOf = (schema: Schema): Record<string, number | undefined> =>
  schema['_zod'].bag as Record<string, number | undefined>;

const takes = (schema: Schema, value: unknown): boolean => z.safeParse(schema, value).success;

/** Words that mean something to one call or another. */
const WORDS = [
  'a', 'b', 'k', 'plain', 'Blue Tin', 'freezer cubes', '5 Mar a', '2026-03-05', '2026-03-09', '2025-12-31', '1900-01-01',
  '2026-03-10T08:00:00+01:00', '2026-03-11T20:15Z', '06:30', '22:30', '1900-01-01T00:00-23:59', 'EUR', 'a'.repeat(64), '{}', '"x"',
]; // prettier-ignore

/** Texts the schema takes: plain ones, ids, the longest there can be (also in letters that grow in lower case), odd ones. */
function text(schema: Schema, known: Known): Arbitrary<unknown> {
  const { maximum = 40 } = bagOf(schema);
  const longest = ['x', 'İ', 'ﬁ', '𝒶'].map((of) => of.repeat(maximum).slice(0, maximum));
  const plain = [...WORDS, ...known.ids].filter((word) => takes(schema, word));
  const odd = [...longest, ...TEXTS].filter((word) => takes(schema, word));
  if (plain.length === 0) throw new Error('no text is known that this schema takes');
  const plainly = { weight: 6, arbitrary: fc.constantFrom(...plain) };
  return odd.length === 0 ? plainly.arbitrary : fc.oneof(plainly, { weight: 1, arbitrary: fc.constantFrom(...odd) });
} // prettier-ignore

/** Numbers the schema takes: plain ones, keys, its bounds, odd ones. */
function number(schema: Schema, known: Known): Arbitrary<unknown> {
  const { minimum = -1e9, maximum = 1e9 } = bagOf(schema);
  const all = [...NUMBERS.map((one) => JSON.parse(one) as number), ...known.keys, minimum, maximum, 5, 20, 38.5, 6, 500];
  return fc.oneof(
    { weight: 4, arbitrary: fc.constantFrom(...all.filter((one) => takes(schema, one))) },
    { weight: 1, arbitrary: fc.constantFrom(...known.keys.filter((one) => takes(schema, one)), all.find((one) => takes(schema, one))) },
  );
} // prettier-ignore

/** Inputs that the schema mostly takes. */
export function fromSchema(schema: Schema, known: Known): Arbitrary<unknown> {
  const def = defOf(schema);
  const inner = (): Arbitrary<unknown> => fromSchema(def['innerType'] as Schema, known);
  switch (def.type) {
    case 'object': {
      const shape = def['shape'] as Record<string, Schema>;
      const fields = Object.fromEntries(Object.entries(shape).map(([key, of]) => [key, fromSchema(of, known)]));
      const optional = Object.entries(shape).filter(([, of]) => ['optional', 'default'].includes(defOf(of).type)).map(([key]) => key);
      return fc.record(fields, { requiredKeys: Object.keys(shape).filter((key) => !optional.includes(key)) });
    } // prettier-ignore
    case 'string':
      return text(schema, known);
    case 'number':
      return number(schema, known);
    case 'boolean':
      return fc.boolean();
    case 'nullable':
      return fc.oneof({ weight: 2, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: inner() });
    case 'optional':
    case 'default':
      return inner();
    case 'enum':
      return fc.constantFrom(...Object.values(def['entries'] as Record<string, unknown>));
    case 'literal':
      return fc.constantFrom(...(def['values'] as unknown[]));
    case 'array':
      return fc.array(fromSchema(def['element'] as Schema, known), { minLength: bagOf(schema)['minimum'] ?? 0, maxLength: 3 });
    case 'union':
      return fc.oneof(...(def['options'] as Schema[]).map((option) => fromSchema(option, known)));
    case 'record':
      return fc.dictionary(fc.constantFrom('Date', 'Jar', 'x'), fromSchema(def['valueType'] as Schema, known));
    case 'custom':
      return fc.uint8Array({ maxLength: 200 });
    default:
      throw new Error(`no inputs are made for ${def.type} yet`);
  } // prettier-ignore
}

/** The same with something in it put out of order: a field another value, gone, or one more. */
function spoil(value: unknown, path: readonly number[], replacement: unknown, how: number): unknown {
  const [step, ...rest] = path;
  if (step === undefined || typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return replacement;
  const keys = Object.keys(value);
  const key = keys[step % Math.max(keys.length, 1)];
  const copy: Record<string, unknown> | unknown[] = Array.isArray(value) ? [...(value as unknown[])] : { ...value };
  if (key === undefined || (rest.length === 0 && how === 0)) {
    if (Array.isArray(copy)) return [...(copy as unknown[]), replacement];
    return { ...copy, more: replacement };
  }
  if (rest.length === 0 && how === 1) {
    delete (copy as Record<string, unknown>)[key];
    return copy;
  }
  (copy as Record<string, unknown>)[key] = spoil((value as Record<string, unknown>)[key], rest, replacement, how);
  return copy;
} // prettier-ignore

/** Inputs of a call: as the schema wants them, and spoilt in up to three places. */
export const inputsFor = (schema: Schema, known: Known): Arbitrary<unknown> =>
  fc
    .tuple(
      fromSchema(schema, known),
      fc.array(
        fc.tuple(fc.array(fc.nat(30), { minLength: 1, maxLength: 5 }), nasty, fc.nat(12)),
        { maxLength: 3 },
      ),
      fc.boolean(),
    )
    .map(([input, spoilings, sound]) => sound ? input : spoilings.reduce((now, [path, by, how]) => spoil(now, path, by, how), input)); // prettier-ignore
