// Every reader gives the one answer on safety: the ranking, the family, a jar, its batch, the picker, and what is refused or
// asked when a jar is used as seed. Over random facts, those that no form tells among them.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Input, Reply } from '../../core/contract';
import { batchOf, fromJar, plainJar } from '../ledger/ledger-files';
import { RandomKeeper } from '../rules/random-keeper';
import { SAFETY_STOPS } from '../../core/shapes/safety-codes';
import { runs } from '../runs';

/** Days of the batches; jars of a batch stand in one hold. The keeper's today is 10 March 2026. */
const DAYS = ['2026-02-20', '2026-02-26', '2026-03-04'] as const;
const LETTERS = ['a', 'b', 'c'] as const;

const maybe = <T>(one: fc.Arbitrary<T>): fc.Arbitrary<T | null> => fc.option(one, { freq: 2 });
const signs = fc.record({
  sign: fc.constantFrom('pink', 'fuzz', 'foam', 'bath water got in', 'tint', 'not set and no pH at or below 4.6'),
  answer: fc.constantFrom('seen', 'not so', null),
}); // prettier-ignore
const looks = fc.record({
  jar: fc.nat(DAYS.length * LETTERS.length - 1),
  fact: fc.record({
    stage: fc.constantFrom('early', 'take-out', 'take-out', 'chilled', 'opened', 'later', 'not said'),
    hoursIn: maybe(fc.constantFrom(8, 12, 24, 36)),
    daysOpen: maybe(fc.constantFrom(0, 3, 18)),
    looked: maybe(fc.boolean()),
    setState: maybe(fc.constantFrom('loose', 'set', 'set', 'not set')),
    setWord: maybe(fc.constantFrom('runny', 'firm', 'spoonable')),
    sour: maybe(fc.constantFrom(true, true, false)),
  }),
  acidity: maybe(
    fc.record({
      ph: fc.constantFrom(4.2, 4.6, 4.9, 5.5, 6.1),
      how: fc.constantFrom('meter', 'strip', 'not said'),
      checked: maybe(fc.boolean()),
    }),
  ),
  sign: fc.option(signs, { freq: 4 }),
});
const kitchens = fc.record({
  looks: fc.array(looks, { minLength: 4, maxLength: 14 }),
  fibre: fc.array(fc.boolean(), { minLength: 9, maxLength: 9 }),
  seeds: fc.array(fc.nat(2), { minLength: 9, maxLength: 9 }),
  pots: fc.array(fc.record({ jar: fc.nat(8), day: fc.constantFrom('2026-03-05', '2026-03-09'), mould: fc.boolean() }), { minLength: 1, maxLength: 2 }),
}); // prettier-ignore

type Kitchen = typeof kitchens extends fc.Arbitrary<infer K> ? K : never;

function must<T>(result: { ok: true; value: T } | { ok: false; error: { code: string } }): T {
  if (!result.ok) throw new Error(result.error.code);
  return result.value;
}

const FIBRE = { name: 'oat bran', planned: null, actual: null, package: null };

/** Records a kitchen. @returns its jars in the order of making */
function record(keeper: RandomKeeper, { looks: seen, fibre, seeds, pots }: Kitchen): string[] {
  const jars: string[] = [];
  for (const [at, day] of DAYS.entries()) {
    const made = LETTERS.map((letter, i) => {
      const n = 3 * at + i;
      const seedings = at === 0 ? [] : [fromJar(jars[3 * (at - 1) + (seeds[n] ?? 0)] ?? '', 20)];
      return plainJar(letter, { onShelf: true, hold: 0, seedings, additions: fibre[n] === true ? [FIBRE] : [] });
    }); // prettier-ignore
    const holds = [{ startedAt: `${day}T08:00:00+00:00`, endedAt: null, hours: 36, planned: null, probe: null, readings: [], note: null }]; // prettier-ignore
    jars.push(...must(keeper.ask('batch.record', batchOf(day, made, { holds }))).jars);
  }
  for (const { jar, fact, acidity, sign } of seen) {
    const facts = [
      { kind: 'observation', ref: 'seen', jar: jars[jar], ...fact },
      ...(acidity === null ? [] : [{ kind: 'acidity', observation: 'seen', ...acidity }]),
      ...(sign === null ? [] : [{ kind: 'sign', observation: 'seen', ...sign }]),
    ];
    keeper.ask('facts.record', { facts, why: null } as unknown as Input<'facts.record'>);
  }
  for (const { jar, day, mould } of pots) {
    keeper.ask('portion.save', { portion: { id: null, jar: jars[jar] ?? '', part: null, place: 'fridge', pieces: null, amount: null, keptOn: day, goneOn: null, reserve: false, note: null } }); // prettier-ignore
    // Mould on a jar that was opened three days before, once something of it was in its pot.
    const seenOn = {
      kind: 'observation',
      ref: 'seen',
      jar: jars[jar],
      stage: 'opened',
      day: '2026-03-10',
      daysOpen: 3,
      looked: true,
    };
    const facts = [seenOn, { kind: 'sign', observation: 'seen', sign: 'fuzz', answer: 'seen' }];
    if (mould) keeper.ask('facts.record', { facts, why: null } as unknown as Input<'facts.record'>);
  }
  return jars;
}

type Safety = NonNullable<Reply<'jar.get'>['record']['safety']>;
type Ranked = Reply<'advice.next'>['ranking'][number];

/** Stops of the ranking by their names in the one answer; the keeper's own limits are no part of it. */
const STOP_OF: Readonly<Record<string, string>> = {
  spoiled: 'spoiled', remark: 'remark', 'set aside': 'set aside', 'needs the meter': 'needs the meter', 'slow start': 'slow start',
}; // prettier-ignore
const rankedStops = ({ stops, discard }: Ranked): string[] =>
  stops.flatMap(({ code }) =>
    code === 'failed the gate' ? [discard === 'not set' ? 'not set' : 'no acid'] : (STOP_OF[code] ?? []),
  );

/** What is refused or asked when something is used as seed today, by its name in the one answer. */
function refusedAs(keeper: RandomKeeper, jar: string, portion: string | null): string | null {
  const seedings = [{ ...fromJar(jar, 5), portion }];
  const day = keeper.today;
  const done = keeper.ask('batch.record', batchOf(day, [plainJar('z', { seedings })], { word: 'next' }));
  if (!done.ok) return done.error.code;
  must(keeper.ask('act.undo', { act: done.value.act }));
  return null;
}

/** What recording says of an answer: of several the first that is asked. */
const REFUSED: readonly (readonly [string, (stop: string) => boolean])[] = [
  ['seed spoiled', (stop) => stop === 'spoiled' || stop === 'not set' || stop === 'remark'],
  ['seed without acid', (stop) => stop === 'no acid'],
  ['seed stopped', (stop) => stop === 'needs the meter' || stop === 'slow start'],
  ['seed set aside', (stop) => stop === 'set aside'],
];
const refusalFor = ({ stops }: Safety): string[] =>
  REFUSED.flatMap(([code, is]) => (stops.some(is) ? [code] : []));

function agree(keeper: RandomKeeper, jars: readonly string[]): void {
  const { ranking } = must(keeper.ask('advice.next', {}));
  const family = new Map(must(keeper.ask('family.get', {})).jars.map((jar) => [jar.id, jar]));
  for (const id of jars) {
    const { view, record: own, batch } = must(keeper.ask('jar.get', { id }));
    const safety = own.safety as Safety;
    const inBatch = must(keeper.ask('batch.get', { id: batch })).jars.find(({ jar }) => jar.id === id);
    expect(inBatch?.safety).toEqual(safety);
    expect(SAFETY_STOPS.filter((stop) => safety.stops.includes(stop))).toEqual(safety.stops);
    expect(safety.seed).toBe(safety.stops.length === 0);
    // Nothing lets a jar be eaten that is discarded, set aside, or has no acid: no figure, no smell of another.
    if (safety.stops.some((stop) => stop !== 'slow start')) expect(safety.eat).toBe(false);
    const discard = safety.stops.find((stop) => stop === 'spoiled' || stop === 'not set' || stop === 'remark') ?? null; // prettier-ignore
    for (const one of [view, own, family.get(id)]) expect(one?.discard).toBe(discard);
    expect([view.spoiled, family.get(id)?.spoiled]).toEqual([discard !== null, discard !== null]);
    expect(view.caution === 'set aside').toBe(safety.stops.includes('set aside'));
    const found = must(keeper.ask('jar.find', { text: view.label, limit: 5, notAfter: null })).jars.find((jar) => jar.id === id); // prettier-ignore
    expect(found?.safety).toEqual(safety);
    const seeds = [
      { portion: null, answer: safety },
      ...(found?.portions ?? []).map((one) => ({ portion: one.id, answer: one.safety })),
    ];
    for (const { portion, answer } of seeds) {
      const ranked = ranking.find((one) => one.jar === id && one.portion === portion);
      expect(ranked && rankedStops(ranked).toSorted()).toEqual(answer.stops.toSorted());
      if (!answer.seed) expect(ranked?.allowed).toBe(false);
      const refused = refusedAs(keeper, id, portion);
      const [first = null] = refusalFor(answer);
      expect(refused).toBe(first);
    }
  }
}

it('every reader agrees, of each jar and of what was parted of it', { timeout: 120_000 }, () => {
  fc.assert(
    fc.property(kitchens, (kitchen) => {
      const keeper = new RandomKeeper();
      try {
        agree(keeper, record(keeper, kitchen));
      } catch (error) {
        throw new Error(`${String(error)}\n${keeper.told.slice(0, 40).join('\n')}`, { cause: error });
      } finally {
        keeper.ledger.close();
      }
    }),
    { numRuns: runs(5) },
  );
});
