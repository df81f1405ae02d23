// Many calls through one opening answer as the same calls do one by one, each opening the file anew: byte for byte, ids
// aside, and so does the file they leave.
import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { CallName } from '../../core/contract';
import { defaultPreferences } from '../../core/ledger/default-preferences';
import { printed } from '../../main/json-lines';
import { repliesTo } from '../../main/many-calls';
import { NamedLedger } from '../../main/named-ledger';
import {
  batchOf,
  fromJar,
  fromSource,
  newFile,
  openSession,
  plainJar,
  plainSource,
  stateOf,
  unseen,
} from '../ledger/ledger-files';

const UUID = /[\da-f]{8}-[\da-f]{4}-7[\da-f]{3}-[\da-f]{4}-[\da-f]{12}/g;

/** Ids as they come by, so that the n-th of one run can be set beside the n-th of another. */
class Ids {
  readonly #numbers = new Map<string, number>();
  readonly #folder: string;
  readonly jars: string[] = [];
  readonly batches: string[] = [];
  readonly acts: string[] = [];
  readonly sources: string[] = [];

  constructor(folder: string) {
    this.#folder = folder;
  }

  /** The text with each id as the number in which it was first seen, and without the folder. */
  aside(text: string): string {
    return text.replaceAll(this.#folder, '').replaceAll(UUID, (id) => {
      const number = this.#numbers.get(id) ?? this.#numbers.size;
      this.#numbers.set(id, number);
      return `#${number}`;
    });
  }

  /** Keeps what later calls can be about. */
  learn(name: string, line: string): void {
    const reply = JSON.parse(line) as {
      ok: boolean;
      value?: { act?: string; batch?: string; jars?: string[]; id?: string };
    };
    if (!reply.ok || !reply.value) return;
    if (typeof reply.value.act === 'string') this.acts.push(reply.value.act);
    if (name === 'batch.record') {
      this.jars.push(...(reply.value.jars ?? []));
      this.batches.push(reply.value.batch ?? '');
    }
    if (name === 'source.save') this.sources.push(reply.value.id ?? '');
  }
}

interface Step {
  readonly name: string;
  readonly input: (ids: Ids) => unknown;
  readonly now?: string;
}

const NOWHERE = '01900000-0000-7000-8000-000000000000';
const pick = (of: readonly string[], at: number): string =>
  of.length === 0 ? NOWHERE : (of[at % of.length] ?? NOWHERE);
const day = fc.integer({ min: 1, max: 14 }).map((n) => `2026-03-${String(n).padStart(2, '0')}`);
const which = fc.nat(3);
const moment = fc.integer({ min: 10, max: 28 }).map((n) => `2026-03-${n}T18:30:00+01:00`);
const note = fc.constantFrom(null, 'nice', 'pink spots', 'smelled foul', 'power cut for 3 hours');

const recording: fc.Arbitrary<Step> = fc
  .record({ day, about: fc.option(day, { freq: 4 }), seeds: fc.array(which, { maxLength: 2 }), jars: fc.integer({ min: 1, max: 3 }), ml: fc.constantFrom(45, 100, 2000), note, set: fc.constantFrom(null, 'runny', 'firm'), spoiled: fc.boolean(), why: fc.constantFrom(null, 'kept apart the whole time') })
  .map((of) => ({
    name: 'batch.record',
    input: (ids: Ids) => ({
      ...batchOf(
        of.about === null ? of.day : null,
        Array.from({ length: of.jars }, (_, at) =>
          plainJar('abc'[at] ?? 'z', {
            note: of.note,
            seedings: of.seeds.map((seed) => (seed === 0 && ids.sources.length > 0 ? fromSource(pick(ids.sources, seed)) : fromJar(pick(ids.jars, seed), of.ml))),
            outcome: of.set === null ? null : { ...unseen, setWord: of.set as 'runny', spoiledSaid: of.spoiled && at === 0 },
          }),
        ),
        // Two days in any order: a range that is none is refused.
        of.about === null ? {} : { madeFrom: of.day, madeTo: of.about },
      ),
      why: of.why,
    }),
  })); // prettier-ignore

const small: fc.Arbitrary<Step> = fc.oneof(
  which.map((at) => ({ name: 'source.save', input: () => plainSource(`Source ${at}`) })),
  fc.record({ jar: which, day }).map(({ jar, day }) => ({
    name: 'portion.save',
    input: (ids: Ids) => ({
      portion: {
        id: null, jar: pick(ids.jars, jar), part: 'mixed', place: 'freezer', pieces: 6, amount: null, keptOn: day, goneOn: null, reserve: true, note: null,
      },
    }),
  })),
  fc.record({ jar: which, set: fc.constantFrom('soft', 'spoonable'), spoiled: fc.boolean() }).map(({ jar, set, spoiled }) => ({
    name: 'outcome.save',
    input: (ids: Ids) => ({ jar: pick(ids.jars, jar), outcome: { ...unseen, setWord: set, spoiledSaid: spoiled }, onShelf: true }),
  })),
  which.map((jar) => ({ name: 'jar.mistake', input: (ids: Ids) => ({ id: pick(ids.jars, jar), why: 'typed twice' }) })),
  fc.tuple(which, which).map(([jar, of]) => ({
    name: 'caution.clear',
    input: (ids: Ids) => ({ jar: pick(ids.jars, jar), of: pick(ids.jars, of), reason: 'it stood elsewhere' }),
  })),
  which.map((at) => ({ name: 'draft.save', input: () => ({ key: `batch ${at % 2}`, json: `{"at":${at}}` }) })),
  which.map((at) => ({ name: 'draft.drop', input: () => ({ key: `batch ${at % 2}` }) })),
  fc.option(which).map((at) => ({
    name: 'act.undo',
    input: (ids: Ids) => ({ act: at === null ? null : pick(ids.acts, at) }),
  })),
  fc.constant({ name: 'act.redo', input: () => ({}) }),
  fc.boolean().map((cups) => ({
    name: 'preferences.save',
    input: () => ({ ...defaultPreferences(null), mostGenerations: cups ? 12 : null }),
  })),
  which.map((at) => ({ name: 'line.name', input: (ids: Ids) => ({ line: pick(ids.batches, at), name: at === 0 ? null : `Line ${at}` }) })),
  which.map((jar) => ({ name: 'advice.choose', input: (ids: Ids) => ({ jar: pick(ids.jars, jar) }) })),
); // prettier-ignore

const notes: fc.Arbitrary<Step> = fc
  .tuple(fc.constantFrom('notes.preview', 'notes.bringIn'), fc.constantFrom('notes.csv', 'none.csv'))
  .map(([name, file]) => ({ name, input: () => ({ file: { path: file } }) }));

const reading: fc.Arbitrary<Step> = fc.oneof(
  fc.constantFrom('app.state', 'family.get', 'source.list', 'draft.list', 'advice.freshStart', 'advice.next', 'advice.restart', 'advice.choices').map((name) => ({ name, input: () => ({}) })),
  fc.constant({ name: 'family.drawing', input: () => ({ spacing: 'calendar' }) }),
  fc.constant({ name: 'history.list', input: () => ({ record: null, before: null, limit: 50 }) }),
  fc.constant({ name: 'batch.list', input: () => ({ before: null, limit: 50 }) }),
  which.map((jar) => ({ name: 'jar.get', input: (ids: Ids) => ({ id: pick(ids.jars, jar) }) })),
  which.map((jar) => ({ name: 'judgement.jar', input: (ids: Ids) => ({ jar: pick(ids.jars, jar) }) })),
); // prettier-ignore

/** What the contract itself refuses. */
const wrong: fc.Arbitrary<Step> = fc.constantFrom(
  { name: 'jar.eat', input: () => ({}) },
  { name: 'family.get', input: () => ({ all: true }) },
  { name: 'batch.record', input: () => 'a batch' },
  { name: 'draft.save', input: () => null },
);

/** Half of the sequences begin on a ledger with three jars, half on none. */
const before = fc.constantFrom<Step[]>(
  [],
  [
    { name: 'source.save', input: () => plainSource('Blue Tin') },
    { name: 'batch.record', input: ({ sources }) => batchOf('2026-03-01', [plainJar('a', { seedings: [fromSource(pick(sources, 0))] })]) },
    { name: 'batch.record', input: ({ jars }) => batchOf('2026-03-03', ['a', 'b'].map((letter) => plainJar(letter, { seedings: [fromJar(pick(jars, 0))] }))) },
  ],
); // prettier-ignore
const steps = fc.array(
  fc.tuple(
    fc.oneof({ weight: 4, arbitrary: recording }, { weight: 5, arbitrary: small }, { weight: 1, arbitrary: notes }, { weight: 4, arbitrary: reading }, { weight: 1, arbitrary: wrong }),
    fc.option(moment, { freq: 2 }),
  ).map(([step, now]): Step => (now === null ? step : { ...step, now })),
  { minLength: 6, maxLength: 14, size: 'max' },
); // prettier-ignore

const START = '2026-03-14T18:30:00+01:00';
const NOTES =
  'Date,Jar,Seed,Amount,Set\n2026-03-02,a,Blue Tin,5 capsules,firm\n2026-03-06,a,2 Mar a,3 tbsp,soft\n';

/** A file that is not there yet, in a folder with notes beside it; inputs name those by a path of their own. */
function kitchen(): { file: string; ids: Ids; inputOf: (step: Step) => unknown } {
  const file = newFile();
  const folder = dirname(file);
  writeFileSync(join(folder, 'notes.csv'), NOTES);
  const ids = new Ids(folder);
  return {
    file,
    ids,
    inputOf: (step) => {
      const input = step.input(ids);
      const path = (input as { file?: { path: string } } | null)?.file?.path;
      return path === undefined ? input : { file: { path: join(folder, path) } };
    },
  };
}

/** What the file holds at last, or that there is none. */
function left(file: string, ids: Ids): string {
  const session = openSession(file);
  try {
    return session.trouble ? session.trouble.refusal.code : ids.aside(stateOf(session));
  } finally {
    session.close();
  }
}

async function manyAtOnce(sequence: readonly Step[]): Promise<string[]> {
  const { file, ids, inputOf } = kitchen();
  const ledger = new NamedLedger(file, START);
  const said: string[] = [];
  let last = '';
  async function* lines(): AsyncGenerator<Uint8Array> {
    for (const step of sequence) {
      const { name, now } = step;
      // Asked for only once the reply before has been taken: its ids can be used here.
      yield Buffer.from(`${JSON.stringify({ name, input: inputOf(step), now })}\n`);
      expect(last, 'a reply for each line before the next is read').not.toBe('');
      ids.learn(name, last);
      said.push(ids.aside(last));
      last = '';
    }
  }
  for await (const { text } of repliesTo(ledger, lines())) last = text;
  ledger.close();
  return [...said, left(file, ids)];
}

function oneByOne(sequence: readonly Step[]): string[] {
  const { file, ids, inputOf } = kitchen();
  let now = START;
  const said = sequence.map((step) => {
    now = step.now ?? now;
    const ledger = new NamedLedger(file, now);
    const result =
      step.name === 'jar.eat'
        ? ({ ok: false, error: { code: 'unknown call', params: { name: 'jar.eat' } } } as const)
        : ledger.answer(step.name as CallName, inputOf(step));
    ledger.close();
    const line = printed(result);
    ids.learn(step.name, line);
    return ids.aside(line);
  });
  return [...said, left(file, ids)];
}

it('any calls, refused ones among them, at any moments', async () => {
  let [ok, refused] = [0, 0];
  await fc.assert(
    fc.asyncProperty(before, steps, async (begun, further) => {
      const sequence = [...begun, ...further];
      const many = await manyAtOnce(sequence);
      const good = many.filter((line) => line.startsWith('{"ok":true')).length;
      ok += good;
      refused += many.length - 1 - good;
      expect(many).toEqual(oneByOne(sequence));
    }),
    { numRuns: 15, seed: 20260314 },
  );
  expect(Math.min(ok, refused), `${ok} ok, ${refused} refused`).toBeGreaterThan(40);
}, 120_000);
