// The JSON Schemas, read by another program's validator (ajv, draft 2020-12), say of real records and replies what zod says.
import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, describe, expect, it } from 'vitest';
import { CALLS, type CallName } from '../../core/call-names';
import { contract } from '../../core/contract';
import { jsonSchemas, type JsonSchema, type RecordSchemaName } from '../../core/schemas/json-schemas';
import { demoSession, must } from '../ledger/ledger-files';

const { records, calls } = jsonSchemas();
const ajv = new Ajv2020({ strict: true, allowUnionTypes: true, allErrors: false, formats: { date: isoDay } });
/** Full-date of RFC 3339, section 5.6, for the years a ledger knows. */
function isoDay(text: string): boolean {
  const at = new Date(`${text}T00:00:00Z`);
  return /^\d{4}-\d{2}-\d{2}$/.test(text) && !Number.isNaN(at.getTime()) && at.toISOString().startsWith(text);
}
const validatorOf = (schema: JsonSchema): ((value: unknown) => boolean) => {
  const validate = ajv.compile(schema);
  return (value) => validate(value) === true;
};
/** As it would come out of the headless host. */
const inJson = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (_key, one: unknown) =>
      ArrayBuffer.isView(one) ? Array.from(one as Float64Array) : one,
    ),
  );

const demo = demoSession();
afterAll(() => demo.close());

/** One real record of each kind, from the invented ledger. */
function examples(): Partial<Record<RecordSchemaName, unknown>> {
  const batches = must(demo, 'batch.list', { before: null, limit: 200 }).batches;
  const whole = batches.map(({ id }) => must(demo, 'batch.get', { id }));
  const jars = whole.flatMap((batch) => batch.jars);
  return {
    source: (({ startedJars: _count, lines: _lines, ...source }) => source)(
      must(demo, 'source.list', {}).sources[0]!,
    ),
    package: (({ left: _left, uses: _uses, ...one }) => one)(must(demo, 'package.list', {}).packages[0]!),
    batch: whole[0]?.batch,
    hold: whole.flatMap(({ holds }) => holds).find(({ readings }) => readings.length > 0),
    jar: jars[0]?.jar,
    addition: jars.flatMap(({ additions }) => additions)[0],
    portion: jars.flatMap(({ portions }) => portions)[0],
    seeding: jars.flatMap(({ seedings }) => seedings)[0]?.seeding,
    outcome: jars.find(({ outcome }) => outcome !== null)?.outcome,
    preferences: must(demo, 'app.state', {}).preferences,
  };
}

describe('a record', () => {
  const found = examples();
  it.each(Object.keys(found) as RecordSchemaName[])(
    '%s of the invented ledger is valid; a broken one is not',
    (name) => {
      const valid = validatorOf(records[name]);
      const record = found[name] as Record<string, unknown>;
      expect(record).toBeDefined();
      expect(valid(record), JSON.stringify(record)).toBe(true);
      expect(valid({ ...record, neverNamedSo: 1 })).toBe(false);
      for (const field of Object.keys(record)) {
        const { [field]: _left, ...rest } = record;
        // Whether it smelled sour, and whether the meter was checked, may be left out by those who don’t know of it.
        expect(valid(rest), `without ${field}`).toBe(['sour', 'phChecked'].includes(field));
        expect(valid({ ...record, [field]: { wrong: 'kind' } }), `with a wrong ${field}`).toBe(false);
      }
    },
  );

  it('of the kinds that the invented ledger has none of has a schema that refuses nonsense', () => {
    for (const name of ['photograph', 'clearing', 'choice'] as const) {
      const valid = validatorOf(records[name]);
      expect(valid({})).toBe(false);
    }
    const id = '019ced65-d5c0-7000-a1d5-d8f7c8caa890';
    expect(validatorOf(records.clearing)({ id, jar: id, of: id, reason: 'looked again' })).toBe(true);
    expect(
      validatorOf(records.photograph)({
        id,
        jar: id,
        sha256: 'a'.repeat(64),
        width: 4,
        height: 3,
        caption: null,
      }),
    ).toBe(true);
  });
});

describe('a call', () => {
  it.each(CALLS)(
    '%s has schemas that another program can read, and its input refuses what zod refuses',
    (name) => {
      const { kind, input, reply } = calls[name];
      expect(kind).toBe(contract[name].kind);
      validatorOf(reply);
      const valid = validatorOf(input);
      for (const given of [{}, { file: null }, { id: 7 }, { neverNamedSo: 1 }, [], null, 'text']) {
        expect(valid(given), JSON.stringify(given)).toBe(contract[name].input.safeParse(given).success);
      }
    },
  );

  it('leaves nothing undescribed', () => {
    const undescribed = (schema: unknown, at: string): string[] =>
      typeof schema !== 'object' || schema === null
        ? []
        : Object.entries(schema).flatMap(([key, part]) =>
            key === 'properties' || key === 'items' || key === 'anyOf' || key === 'additionalProperties'
              ? Object.entries(
                  key === 'properties' || key === 'anyOf' ? (part as object) : { [key]: part as unknown },
                ).flatMap(([name, inner]) =>
                  typeof inner === 'object' && inner !== null && Object.keys(inner).length === 0
                    ? [`${at}.${name}`]
                    : undescribed(inner, `${at}.${name}`),
                )
              : [],
          );
    expect(undescribed({ anyOf: [{ properties: { a: {} } }] }, 'x')).toEqual(['x.0.a']); // it can find one
    const open = CALLS.flatMap((name) => [
      ...undescribed(calls[name].input, `${name} input`),
      ...undescribed(calls[name].reply, `${name} reply`),
    ]);
    expect(open).toEqual([]);
  });

  const batch = must(demo, 'batch.list', { before: null, limit: 1 }).batches[0]!;
  const line = must(demo, 'family.get', {}).lines[0]!;
  const asked: [CallName, unknown][] = [
    ['app.state', {}],
    ['family.get', {}],
    ['family.drawing', { spacing: 'generation' }],
    ['family.drawing', { spacing: 'calendar' }],
    ['jar.get', { id: batch.jars[0]?.id }],
    ['jar.find', { text: 'a', limit: 5, notAfter: null }],
    ['batch.get', { id: batch.id }],
    ['batch.list', { before: null, limit: 200 }],
    ['source.list', {}],
    ['history.list', { record: null, before: null, limit: 20 }],
    ['judgement.line', { line: line.id }],
    ['advice.next', {}],
    ['advice.restart', {}],
  ];
  it.each(asked)('%s %j: request and reply fit', (name, input) => {
    expect(validatorOf(calls[name].input)(input)).toBe(true);
    const reply = inJson(must(demo, name, input as never));
    const valid = validatorOf(calls[name].reply);
    expect(valid(reply)).toBe(true);
    expect(valid({ ...(reply as object), neverNamedSo: 1 })).toBe(false);
  });
});
