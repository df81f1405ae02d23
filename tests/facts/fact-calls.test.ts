// facts.record, facts.correct, facts.remove and facts.list on the bare tables: every refusal is a sentence, never a fault.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contract, type Input, type Parsed } from '../../core/contract';
import { FIELDS, FACT_KINDS, isRef } from '../../core/ledger/facts/all-facts';
import { RECORDED, type RecordedKind } from '../../core/ledger/facts/recorded-facts';
import { refusals } from '../../core/sentences';
import { refusalOf, Refused } from '../../main/refusal';
import { snake, tableOf } from '../../main/ledger/facts/tables';
import { leftOf, listFacts } from '../../main/ledger/reads/read-facts';
import { correctFact, recordFacts, removeFact } from '../../main/ledger/writes/write-facts';
import { bareLedger, stateOf, troubles } from './facts-in-memory';
import type { FactHost } from '../../main/ledger/facts/fact-host';

function ledger() {
  const bare = bareLedger();
  const { rows, acts } = bare;
  const host: FactHost = {
    facts: rows,
    labelOf: (jar) => `jar ${rows.get('jar', jar).letter}`,
    askLift: () => undefined,
    mustRun: (...given) => acts.mustRun(...given),
  };
  const batch = bare.add('batch', { madeOn: '2026-03-01' });
  const [a, b] = ['a', 'b'].map((letter) =>
    bare.add('jar', { batch, letter, state: 'made', finalVolume: { value: 900, unit: 'mL', typed: null } }),
  ) as [number, number];
  const planned = bare.add('jar', { batch, letter: 'p', state: 'planned' });
  const uid = (key: number): string => rows.uidOf('jar', key);
  return { ...bare, host, ids: { batch: uid(batch), a: uid(a), b: uid(b), planned: uid(planned) } };
}
type Here = ReturnType<typeof ledger>;

const parsed = <N extends 'facts.record' | 'facts.correct' | 'facts.remove' | 'facts.list'>(
  name: N,
  input: Input<N>,
): Parsed<N> => contract[name].input.parse(input) as Parsed<N>;
const record = ({ host }: Here, facts: Input<'facts.record'>['facts']) =>
  recordFacts(host, parsed('facts.record', { facts }));
const list = ({ host }: Here, kind: RecordedKind, of: string | null = null) =>
  listFacts(host, parsed('facts.list', { kind, of })).facts;

/** The refusal's code and sentence. */
function refused(work: () => unknown): string {
  try {
    work();
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    const { code, params } = error.refusal;
    return `${code}: ${refusals[code as keyof typeof refusals](params)}`;
  }
  throw new Error('it was not refused');
}

describe('facts.record', () => {
  it('records several facts in one act, one naming another, and tells them back as they were told', () => {
    const here = ledger();
    const { a, b } = here.ids;
    const { ids } = record(here, [
      { kind: 'appliance', ref: 'box', name: 'Warm box', type: 'box' },
      {
        kind: 'hold',
        ref: 'night',
        appliance: 'box',
        began: '2026-03-01T18:00:00+01:00',
        planned: { value: 38, unit: '°C', typed: '38' },
      },
      {
        kind: 'stay',
        jar: a,
        hold: 'night',
        came: '2026-03-01T18:00:00+01:00',
        went: '2026-03-03T06:00:00+01:00',
      },
      { kind: 'stay', jar: b, hold: 'night' },
      { kind: 'observation', ref: 'look', jar: a, stage: 'take-out', setState: 'set', sour: true },
      { kind: 'acidity', observation: 'look', ph: 4.4, how: 'meter' },
      { kind: 'sign', observation: 'look', sign: 'tint', answer: 'the fibre' },
      { kind: 'movement', jar: a, what: 'fridge', day: '2026-03-03' },
    ]);
    expect(here.db.prepare("SELECT count(*) FROM act WHERE kind = 'facts.record'").pluck().get()).toBe(1);
    expect(here.db.prepare("SELECT subject FROM act WHERE kind = 'facts.record'").pluck().get()).toBe(
      'appliance Warm box, hold, stay, observation, pH and 2 more of jar a and jar b',
    );
    expect(list(here, 'stay', ids[1] ?? '')).toHaveLength(2);
    expect(list(here, 'sign', ids[4] ?? '')).toEqual([
      { kind: 'sign', id: ids[6], sign: 'tint', answer: 'the fibre', observation: ids[4], remark: null },
    ]);
    const [hold] = list(here, 'hold');
    expect(hold).toMatchObject({
      appliance: ids[0],
      began: '2026-03-01T18:00:00+01:00',
      basis: 'recorded',
      hours: null,
    });
    expect(contract['facts.list'].reply.safeParse({ facts: [hold], more: false }).error).toBeUndefined();
    expect(troubles(here.db)).toEqual([]);
  });

  it('is whole or not at all', () => {
    const here = ledger();
    const before = stateOf(here.db);
    expect(refused(() => record(here, [
      { kind: 'appliance', name: 'Box' },
      { kind: 'stay', jar: here.ids.a, hold: 'nowhere' },
    ]))).toMatch(/^no such ref: “nowhere” names no fact/); // prettier-ignore
    expect(stateOf(here.db)).toBe(before);
  });

  const bad: readonly (readonly [string, RegExp, (ids: Here['ids']) => Input<'facts.record'>['facts']])[] = [
    ['a jar that is not there', /^not found: There is no jar/, () => [{ kind: 'observation', jar: '0190b1a2-0000-7000-8000-000000000000', stage: 'later' }]],
    ['a ref of another kind', /^no such ref/, ({ a }) => [{ kind: 'appliance', ref: 'x', name: 'X' }, { kind: 'stay', jar: a, hold: 'x' }]],
    ['a ref twice', /^ref twice: Two facts/, () => [{ kind: 'appliance', ref: 'x', name: 'X' }, { kind: 'appliance', ref: 'x', name: 'Y' }]],
    ['two stays at one time', /^stays overlap: jar a would stand in warmth twice at once: it was there from 1 Mar 2026, 18:00, to 3 Mar 2026, 06:00/, ({ a }) => [
      { kind: 'hold', ref: 'h' },
      { kind: 'stay', jar: a, hold: 'h', came: '2026-03-01T18:00:00Z', went: '2026-03-03T06:00:00Z' },
      { kind: 'stay', jar: a, hold: 'h', came: '2026-03-02T18:00:00Z' },
    ]],
    ['a probe in a jar that did not stay there', /^probe elsewhere: jar a did not stay/, ({ a }) => [{ kind: 'hold', ref: 'h' }, { kind: 'series', hold: 'h', place: 'jar', jar: a }]],
    ['a planned jar that was looked at', /^planned has facts: jar p is only planned, so nothing of it can have been seen/, ({ planned }) => [{ kind: 'observation', jar: planned, stage: 'later' }]],
    ['a portion of another jar', /^portion of another jar/, ({ a, b }) => [
      { kind: 'portion', ref: 'pot', jar: a, place: 'fridge', keptOn: '2026-03-03' },
      { kind: 'observation', jar: b, portion: 'pot', stage: 'later' },
    ]],
    ['a code twice', /^code twice: The code 321/, ({ a }) => [
      { kind: 'session', ref: 's', day: '2026-03-05', task: 'rank' },
      { kind: 'taster', ref: 't', name: 'taster A' },
      { kind: 'serving', session: 's', taster: 't', place: 1, jar: a, code: 321 },
      { kind: 'serving', session: 's', taster: 't', place: 2, jar: a, code: 321 },
    ]],
    ['two marks of one aspect', /^marked already: That serving has a mark for tang/, ({ a }) => [
      { kind: 'session', ref: 's', day: '2026-03-05', task: 'rank' },
      { kind: 'taster', ref: 't', name: 'taster A' },
      { kind: 'serving', ref: 'v', session: 's', taster: 't', place: 1, jar: a, code: 321 },
      { kind: 'mark', serving: 'v', aspect: 'tang', rank: 1 },
      { kind: 'mark', serving: 'v', aspect: 'tang', rank: 2 },
    ]],
    ['a name of nothing but spaces', /^invalid: .*is empty/, () => [{ kind: 'appliance', name: '   ' }]],
    ['a jar twice in a trial', /^in the trial already: jar a/, ({ a, batch }) => [
      { kind: 'trial', ref: 't', batch, differsIn: 'fibre' },
      { kind: 'treatment', trial: 't', jar: a, name: 'oat bran' },
      { kind: 'treatment', trial: 't', jar: a, name: 'acacia' },
    ]],
  ]; // prettier-ignore
  it.each(bad)('refuses %s, with a sentence', (_what, says, facts) => {
    const here = ledger();
    const before = stateOf(here.db);
    expect(refused(() => record(here, facts(here.ids)))).toMatch(says);
    expect(stateOf(here.db)).toBe(before);
    expect(troubles(here.db)).toEqual([]);
  });

  const never: readonly (readonly [string, RegExp, Record<string, unknown>])[] = [
    ['pink put down to the fibre', /a fibre explains a tint or a jelly/, { kind: 'sign', observation: 'x', sign: 'pink', answer: 'the fibre' }],
    ['a seed of two things', /exactly one of these/, { kind: 'seeding', jar: 'x', fromJar: 'y', source: 'z' }],
    ['a movement of nothing', /exactly one of these/, { kind: 'movement', what: 'eaten' }],
    ['a stay that ends before it begins', /is before came/, { kind: 'stay', jar: 'x', hold: 'y', came: '2026-03-01T10:00:00Z', went: '2026-03-01T10:00:00+02:00' }],
    ['days open of a jar at take-out', /only goes with stage opened or later/, { kind: 'observation', jar: 'x', stage: 'take-out', daysOpen: 2 }],
    ['a block of readings', /Unrecognized key/, { kind: 'series', hold: 'x', block: 1 }],
    ['a kind it does not take', /Invalid/, { kind: 'jar', batch: 'x' }],
    ['a day that is none', /not a day/, { kind: 'movement', jar: 'x', what: 'eaten', day: '2026-02-30' }],
  ]; // prettier-ignore
  it.each(never)('does not take %s', (_what, says, fact) => {
    const result = contract['facts.record'].input.safeParse({ facts: [fact] });
    expect(JSON.stringify(result.error?.issues)).toMatch(says);
  });
});

describe('facts.correct', () => {
  const correct = ({ host }: Here, input: Input<'facts.correct'>) =>
    correctFact(host, parsed('facts.correct', input));
  it('changes what is said, refuses what can’t be, and says where nothing is different', () => {
    const here = ledger();
    const { ids } = record(here, [
      { kind: 'observation', ref: 'o', jar: here.ids.a, stage: 'later' },
      { kind: 'sign', observation: 'o', sign: 'jelly' },
    ]);
    correct(here, { kind: 'sign', id: ids[1] ?? '', changes: { answer: 'the fibre' } });
    expect(list(here, 'sign')).toMatchObject([{ sign: 'jelly', answer: 'the fibre' }]);
    expect(
      refused(() => correct(here, { kind: 'sign', id: ids[1] ?? '', changes: { sign: 'pink' } })),
    ).toMatch(/a fibre explains/);
    expect(
      refused(() => correct(here, { kind: 'sign', id: ids[1] ?? '', changes: { answer: 'the fibre' } })),
    ).toMatch(/^nothing changed/);
    expect(here.db.prepare('SELECT subject FROM act ORDER BY key DESC').pluck().get()).toBe('sign of jar a');
  });
  it('makes changed text unread, also where it is answered again at once', () => {
    const here = ledger();
    const { ids } = record(here, [{ kind: 'remark', jar: here.ids.a, text: 'bread', readAs: 'fine' }]);
    const id = ids[0] ?? '';
    correct(here, { kind: 'remark', id, changes: { text: 'pink rim' } });
    expect(list(here, 'remark')).toMatchObject([{ text: 'pink rim', readAs: null }]);
    correct(here, { kind: 'remark', id, changes: { readAs: 'discard' } });
    correct(here, { kind: 'remark', id, changes: { text: 'pink rim, gone', readAs: 'discard' } });
    expect(list(here, 'remark')).toMatchObject([{ text: 'pink rim, gone', readAs: 'discard' }]);
    expect(troubles(here.db)).toEqual([]);
  });
});

describe('facts.remove', () => {
  it('takes parts along, and nothing else', () => {
    const here = ledger();
    const { a } = here.ids;
    const { ids } = record(here, [
      { kind: 'observation', ref: 'o', jar: a, stage: 'take-out' },
      { kind: 'acidity', observation: 'o', ph: 4.4 },
      { kind: 'remark', ref: 'r', observation: 'o', text: 'odd' },
      { kind: 'sign', remark: 'r', sign: 'fuzz' },
      { kind: 'hold', ref: 'h' },
      { kind: 'stay', jar: a, hold: 'h' },
    ]);
    const remove = (kind: RecordedKind, id: string | undefined) =>
      removeFact(here.host, parsed('facts.remove', { kind, id: id ?? '' }));
    remove('observation', ids[0]);
    for (const table of ['observation', 'acidity', 'remark', 'sign'])
      expect(here.db.prepare(`SELECT count(*) FROM ${table}`).pluck().get(), table).toBe(0);
    expect(refused(() => remove('hold', ids[4]))).toMatch(/^hangs on it: stay of jar a hangs on the hold/);
    remove('stay', ids[5]);
    remove('hold', ids[4]);
    expect(refused(() => remove('hold', ids[4]))).toMatch(/^not found/);
    expect(troubles(here.db)).toEqual([]);
  });
});

it('what is left follows from movements, seedings and portions, a portion’s from its own', () => {
  const here = ledger();
  const { a, b } = here.ids;
  const mL = (value: number) => ({ value, unit: 'mL', typed: null }) as const;
  const { ids } = record(here, [
    {
      kind: 'portion',
      ref: 'cubes',
      jar: a,
      form: 'cubes',
      place: 'freezer',
      keptOn: '2026-03-03',
      pieces: 12,
      amount: mL(180),
    },
    {
      kind: 'portion',
      ref: 'some',
      jar: a,
      ofPortion: 'cubes',
      form: 'cubes',
      place: 'freezer',
      keptOn: '2026-03-04',
      pieces: 4,
      amount: mL(60),
    },
    { kind: 'movement', jar: a, what: 'eaten', day: '2026-03-05', amount: mL(300) },
    {
      kind: 'seeding',
      jar: b,
      fromJar: a,
      portion: 'some',
      actual: { value: 3, unit: 'pieces', typed: null },
    },
    { kind: 'seeding', jar: b, fromJar: a, part: 'curd', actual: { value: 20, unit: 'g', typed: null } },
  ]);
  const left = (id: string | undefined) => leftOf(here.host, { id: id ?? '' });
  expect(left(a)).toMatchObject({ amount: { value: 400, unit: 'mL' }, gramsAsMl: true, none: false });
  expect(left(ids[0])).toMatchObject({ amount: { value: 120 }, pieces: 8, place: 'freezer' });
  expect(left(ids[1])).toMatchObject({ amount: { value: 15 }, pieces: 1 });
  record(here, [{ kind: 'movement', jar: a, what: 'given' }]);
  expect(left(a)).toMatchObject({ amount: { value: 0 }, none: true });
});

it('facts that hang on a record are found by an index, whichever kind they are', () => {
  const here = ledger();
  record(here, [{ kind: 'movement', jar: here.ids.a, what: 'opened' }]);
  for (const kind of RECORDED) {
    for (const [name, { as }] of Object.entries(FIELDS[kind])) {
      if (!isRef(as) || as === 'block' || as === 'ledger') continue;
      const [table, column] = [tableOf(kind), snake(name)];
      const plan = here.db
        .prepare(
          `EXPLAIN QUERY PLAN SELECT t.*, r.uid FROM ${table} t CROSS JOIN record r ON r.key = t.key WHERE t.${column} = ? ORDER BY t.key`,
        )
        .all(1) as { detail: string }[];
      expect(plan.map(({ detail }) => detail).join('; '), `${kind}.${name}`).not.toMatch(/SCAN|TEMP B-TREE/);
    }
  }
});

it('no fact that the contract lets through ends as a fault: it is recorded, or refused with a sentence', () => {
  const here = ledger();
  const pool = (kind: string): string[] => {
    const all = here.db
      .prepare('SELECT uid FROM record WHERE kind = ? AND gone_in IS NULL ORDER BY key DESC LIMIT 6')
      .pluck()
      .all(kind) as string[];
    return all;
  };
  const value = fc.oneof(
    fc.constantFrom(
      null,
      0,
      1,
      2.5,
      -1,
      true,
      false,
      '',
      ' ',
      'x',
      '2026-03-04',
      '2026-02-30',
      '2026-03-04T10:00:00+01:00',
      '2026-03-03T10:00:00-05:00',
    ),
    fc.record({
      value: fc.constantFrom(0, 5, 900, -1),
      unit: fc.constantFrom('mL', 'g', 'pieces', 'CFU', '°C'),
      typed: fc.constant(null),
    }),
  );
  let kept = 0;
  fc.assert(
    fc.property(
      fc.constantFrom(...RECORDED),
      fc.infiniteStream(fc.nat(1000)),
      fc.infiniteStream(value),
      fc.array(fc.nat(30), { maxLength: 6 }),
      (kind, picks, values, odd) => {
        const fact: Record<string, unknown> = { kind };
        for (const [index, [name, field]] of Object.entries(FIELDS[kind]).entries()) {
          const outer =
            name === 'kind'
              ? ({ sign: 'sign', movement: 'what', appliance: 'type', session: 'task', reminderDone: 'what' }[
                  kind as string
                ] ?? name)
              : name;
          const pick = picks.next().value as number;
          if (odd.includes(index)) fact[outer] = values.next().value;
          else if (isRef(field.as)) {
            const found = pool(
              field.as === 'record'
                ? 'jar'
                : field.as.replaceAll(/[A-Z]/g, (letter: string) => `_${letter.toLowerCase()}`),
            );
            if (found.length > 0 && (pick % 3 > 0 || !field.nullable))
              fact[outer] = found[pick % found.length];
          } else if (pick % 2 === 0 || !field.nullable) {
            // Something that this field takes, where one of these is.
            const fits = fc
              .sample(value, { numRuns: 20, seed: pick })
              .find((one) => one !== null && field.zod.safeParse(one).success);
            const words = field.zod as unknown as {
              options?: readonly string[];
              unwrap?: () => { options?: readonly string[] };
            };
            const options = words.options ?? words.unwrap?.().options;
            const some = options ? options[pick % options.length] : fits;
            if (some !== undefined) fact[outer] = some;
          }
        }
        const checked = contract['facts.record'].input.safeParse({ facts: [fact] });
        if (!checked.success) return;
        try {
          recordFacts(here.host, checked.data as Parsed<'facts.record'>);
          kept += 1;
        } catch (error) {
          const refusal = error instanceof Refused ? error : refusalOf(error);
          if (!refusal) throw new Error(`${JSON.stringify(fact)}: ${String(error)}`, { cause: error });
        }
      },
    ),
    { numRuns: 1500, seed: 20_261_127 },
  );
  expect(kept).toBeGreaterThan(200);
  expect(new Set(FACT_KINDS).size).toBe(FACT_KINDS.length);
  expect(troubles(here.db)).toEqual([]);
});
