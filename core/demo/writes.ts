// From the invented scenario to the writes that build it, in the order in which they would have been made. Whoever runs
// them (main/ledger/demo.ts, the tests) answers each with the ids it was given, so that later ones can point at them.
import type { BatchEntry, Input } from '../contract';
import type { Outcome } from '../ledger/records';
import { heron } from './heron';
import { inWarmth, readings, warmth } from './in-warmth';
import { lantern } from './lantern';
import { laterLooks, packages, portions, preferences, sources } from './invented-larder';
import { milkFor, milkOf } from './milk';
import type { DemoBatch, DemoHold, DemoJar, DemoSeed, JarName } from './scenario-shapes';
import { tastings, type DemoTasting } from './tastings';

type DemoCall =
  | 'preferences.save'
  | 'source.save'
  | 'package.save'
  | 'batch.record'
  | 'batch.addHold'
  | 'hold.interrupt'
  | 'facts.record'
  | 'readings.add'
  | 'trial.save'
  | 'session.start'
  | 'session.pour'
  | 'mark.record'
  | 'session.reveal'
  | 'portion.save'
  | 'outcome.save'
  | 'jar.correct';

/**
 * One write: the call, its input, and the moment at which the invented keepers made it. Where codes were drawn, also the look at
 * which bowl is which.
 */
export type DemoWrite = {
  [N in DemoCall]: { readonly call: N; readonly at: string; readonly input: Input<N> };
}[DemoCall];

/** The ids a write was answered with: `id` of a saved record, of a recorded batch also its `jars` in the order given. */
export interface DemoReply {
  readonly id?: string;
  readonly batch?: string;
  readonly jars?: readonly string[];
  readonly hold?: string;
  /** Of recorded facts, in the order given. */
  readonly ids?: readonly string[];
  readonly trial?: string;
  readonly session?: string;
  readonly tasters?: readonly { readonly taster: string; readonly name: string }[];
  /** Of a tasting: what is in which bowl. */
  readonly bowls?: readonly {
    readonly jar: string;
    readonly codes: readonly { readonly code: number; readonly taster: string }[];
  }[];
}

const batches: readonly DemoBatch[] = [...heron, ...lantern, inWarmth];

/** Civil day and hour plus some hours, as a moment of the club's clock. No hold crosses a change of clocks. */
export function momentAfter(day: string, hour: number, hours: number): string {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  const at = new Date(Date.UTC(year, month - 1, date, 0, Math.round((hour + hours) * 60)));
  const summer = day < '2025-10-26' || day >= '2026-03-29';
  return `${at.toISOString().slice(0, 19)}${summer ? '+01:00' : 'Z'}`;
}

const HOLD_STARTS = 18.5;

const holdEntry = (day: string, hold: DemoHold): BatchEntry['holds'][number] => ({
  startedAt: momentAfter(day, HOLD_STARTS, 0),
  endedAt: momentAfter(day, HOLD_STARTS, hold.hours),
  hours: null,
  planned: { value: hold.planned, unit: '°C', typed: `${hold.planned} °C` },
  probe: 'bath',
  readings: hold.readings.map(([after, celsius]) => ({
    at: momentAfter(day, HOLD_STARTS, after),
    temperature: { value: celsius, unit: '°C', typed: null },
  })),
  note: hold.note,
});

/** The ids learned so far, by the scenario's own names. */
class Known {
  private readonly ids = new Map<string, string>();

  learn(name: string, id: string | undefined): void {
    if (id === undefined) throw new Error(`The write of “${name}” was answered without an id.`);
    this.ids.set(name, id);
  }

  id(name: string): string {
    const id = this.ids.get(name);
    if (id === undefined) throw new Error(`“${name}” is used in the invented scenario before it exists.`);
    return id;
  }

  /** For what need not have a package of its own. */
  maybe(name: string): string | null {
    return this.ids.get(name) ?? null;
  }
}

const millilitres = (ml: number) =>
  ({ value: ml, unit: 'mL', typed: ml % 15 === 0 && ml < 100 ? `${ml / 15} tbsp` : `${ml} ml` }) as const;

function seedingEntry(seed: DemoSeed, known: Known): BatchEntry['jars'][number]['seedings'][number] {
  if ('jar' in seed)
    return {
      fromJar: known.id(seed.jar),
      portion: seed.portion === undefined ? null : known.id(seed.portion),
      part: 'mixed',
      source: null,
      package: null,
      amount: millilitres(seed.ml),
    };
  return {
    fromJar: null,
    portion: null,
    part: null,
    source: known.id(seed.source),
    package: known.maybe(`package of ${seed.source}`),
    amount:
      'pieces' in seed
        ? { value: seed.pieces, unit: 'pieces', typed: `${seed.pieces} capsules` }
        : millilitres(seed.ml),
  };
}

const jarEntry = (day: string, jar: DemoJar, known: Known): BatchEntry['jars'][number] => ({
  letter: jar.letter,
  state: 'made',
  hold: day === inWarmth.day ? null : jar.hold,
  vessel: jar.volumeMl === 900 ? 'litre clip jar' : 'short jar',
  finalVolume: { value: jar.volumeMl, unit: 'mL', typed: `${jar.volumeMl} ml` },
  finalVolumeKnown: 'filled to the vessel',
  milk: jar.milk,
  milkAmount: null,
  milkPackage: known.id(milkOf(day, jar)),
  countPerMl: null,
  onShelf: true,
  goneOn: null,
  note: jar.note,
  additions: jar.additions.map((addition) => ({
    ...addition,
    package: known.maybe(`package of ${addition.name}`),
  })),
  seedings: jar.seeds.map((seed) => seedingEntry(seed, known)),
  outcome: jar.outcome,
});

/** A day's work, made ready to be put in order. `learn` keeps what the reply brought. */
interface Step {
  readonly at: string;
  /** Steps of the same moment keep the order in which they were written. */
  write(known: Known): DemoWrite;
  learn?(reply: DemoReply, known: Known): void;
}

function larderSteps(): Step[] {
  const at = momentAfter('2025-10-17', 17, 0);
  return [
    { at, write: () => ({ call: 'preferences.save', at, input: preferences }) },
    ...sources.map((source): Step => {
      const at = momentAfter(source.form === 'culture' ? '2025-11-04' : '2025-10-17', 17.25, 0);
      return {
        at,
        write: () => ({
          call: 'source.save',
          at,
          input: { source: { ...source, id: null, strains: [...source.strains] } },
        }),
        learn: (reply, known) => known.learn(source.name, reply.id),
      };
    }),
    ...packages.map((bought): Step => {
      const at = momentAfter(bought.boughtOn ?? '2025-10-17', 17.5, 0);
      const { addition, source, ...fields } = bought;
      return {
        at,
        write: (known) => ({
          call: 'package.save',
          at,
          input: {
            package: { ...fields, id: null, source: source === null ? null : known.id(source), note: null },
          },
        }),
        learn: (reply, known) => known.learn(`package of ${source ?? addition ?? ''}`, reply.id),
      };
    }),
    ...portions.map((portion): Step => {
      const at = momentAfter(portion.keptOn, 12, 0);
      const { name, jar, ...fields } = portion;
      return {
        at,
        write: (known) => ({
          call: 'portion.save',
          at,
          input: { portion: { ...fields, id: null, jar: known.id(jar) } },
        }),
        learn: (reply, known) => known.learn(name, reply.id),
      };
    }),
  ];
}

/** Milk is bought on the day it is used, before the batch. */
const milkSteps = (batch: DemoBatch): Step[] =>
  milkFor(batch).map((milk): Step => {
    const at = momentAfter(batch.day, 17.75, 0);
    return {
      at,
      write: () => ({ call: 'package.save', at, input: { package: { ...milk.package, id: null } } }),
      learn: (reply, known) => known.learn(milk.name, reply.id),
    };
  });

function batchStep(batch: DemoBatch): Step {
  const longest = Math.max(0, ...batch.holds.map((hold) => hold.hours));
  // What still stands in warmth is written down on the evening itself.
  const at = momentAfter(batch.day, HOLD_STARTS, longest + (batch.holds.length > 0 ? 15 : 2));
  return {
    at,
    write: (known) => ({
      call: 'batch.record',
      at,
      input: {
        madeOn: batch.day,
        word: batch.word,
        note: batch.note,
        holds: batch.holds.map((hold) => holdEntry(batch.day, hold)),
        jars: batch.jars.map((jar) => jarEntry(batch.day, jar, known)),
        sameLabelMeant: false,
        draft: null,
        why: batch.why ?? null,
      },
    }),
    learn: (reply, known) => {
      known.learn(`batch of ${batch.day}`, reply.batch);
      batch.jars.forEach((jar, index) => known.learn(`${batch.day} ${jar.letter}`, reply.jars?.[index]));
    },
  };
}

const goneSteps = (batch: DemoBatch): Step[] =>
  batch.jars.flatMap((jar): Step[] => {
    if (jar.goneOn === null) return [];
    const { goneOn } = jar;
    const at = momentAfter(goneOn, 20, 0);
    return [
      {
        at,
        write: (known) => ({
          call: 'jar.correct',
          at,
          input: { id: known.id(`${batch.day} ${jar.letter}`), changes: { onShelf: false, goneOn } },
        }),
      },
    ];
  });

function outcomeOf(name: JarName): Omit<Outcome, 'jar'> {
  const found = batches.flatMap((batch) =>
    batch.jars.filter((jar) => `${batch.day} ${jar.letter}` === name),
  )[0];
  if (!found?.outcome) throw new Error(`“${name}” has no first look to add to.`);
  return found.outcome;
}

const laterSteps = (): Step[] =>
  laterLooks.map((look): Step => {
    const at = momentAfter(look.on, 8, 0);
    return {
      at,
      write: (known) => ({
        call: 'outcome.save',
        at,
        input: {
          jar: known.id(look.jar),
          outcome: {
            ...outcomeOf(look.jar),
            signs: [...look.signs],
            seenAt: 'after opening',
            openedDays: look.openedDays,
            note: look.note,
          },
          onShelf: false,
        },
      }),
    };
  });

/** The hold that runs: begun in the evening, its readings and the power cut noted in the morning. */
const warmthSteps = (): Step[] => [
  {
    at: warmth.began,
    write: (known) => ({
      call: 'batch.addHold',
      at: warmth.began,
      input: {
        batch: known.id(`batch of ${inWarmth.day}`),
        hold: {
          startedAt: warmth.began,
          endedAt: null,
          hours: warmth.hours,
          planned: { value: warmth.planned, unit: '°C', typed: `${warmth.planned} °C` },
          probe: null,
          readings: [],
          note: null,
        },
        jars: inWarmth.jars.map(({ letter }) => known.id(`${inWarmth.day} ${letter}`)),
        why: null,
        draft: null,
      },
    }),
    learn: (reply, known) => known.learn('hold', reply.hold),
  },
  {
    at: warmth.read,
    write: (known) => ({
      call: 'facts.record',
      at: warmth.read,
      input: { facts: [{ kind: 'series', hold: known.id('hold'), place: 'bath' }] },
    }),
    learn: (reply, known) => known.learn('series', reply.ids?.[0]),
  },
  {
    at: warmth.read,
    write: (known) => ({
      call: 'readings.add',
      at: warmth.read,
      input: { series: known.id('series'), readings: [...readings], why: null, draft: null },
    }),
  },
  {
    at: warmth.read,
    write: (known) => ({
      call: 'hold.interrupt',
      at: warmth.read,
      input: { hold: known.id('hold'), what: 'power', ...warmth.powerCut },
    }),
  },
];

/** Codes are drawn; which bowl is which is learned for what is marked later. */
const pouredSteps = ({ batch, at, served, tasters }: DemoTasting, session: string): Step[] => [
  {
    at,
    write: (known) => ({
      call: 'session.start',
      at,
      input: {
        trial: known.id(`trial of ${batch}`),
        day: at.slice(0, 10),
        task: 'rank',
        jars: served.map((jar) => known.id(jar)),
        tasters: Object.keys(tasters).map((name) => {
          const id = known.maybe(name);
          return id === null ? { name } : { id };
        }),
      },
    }),
    learn: (reply, known) => {
      known.learn(session, reply.session);
      for (const { taster, name } of reply.tasters ?? []) known.learn(name, taster);
    },
  },
  {
    at,
    write: (known) => ({ call: 'session.pour', at, input: { session: known.id(session) } }),
    learn: (reply, known) => {
      for (const { jar, codes } of reply.bowls ?? [])
        for (const { code, taster } of codes) known.learn(`${session}: ${jar} for ${taster}`, String(code));
    },
  },
];

/** What one taster marked. */
const markedStep = ({ batch, revealed: at, tasters }: DemoTasting, session: string, name: string): Step => ({
  at,
  write: (known) => {
    const codeOf = (letter: string): number =>
      Number(known.id(`${session}: ${known.id(`${batch} ${letter}`)} for ${name}`));
    const { order = '', words = {} } = tasters[name] ?? {};
    const ranks = [...order].map((letter, place) => ({ code: codeOf(letter), rank: place + 1 }));
    const said = Object.entries(words).map(([letter, [aspect, word]]) => ({
      code: codeOf(letter),
      aspect,
      word,
    }));
    return { call: 'mark.record', at, input: { session: known.id(session), marks: [...ranks, ...said] } };
  },
});

/** A tasting: its trial, its codes, what each taster marked, and the reveal. */
function tastingSteps(tasting: DemoTasting): Step[] {
  const { batch, at, revealed, differsIn, treatments, tasters } = tasting;
  const session = `tasting of ${batch}`;
  return [
    {
      at,
      write: (known) => ({
        call: 'trial.save',
        at,
        input: {
          batch: known.id(`batch of ${batch}`),
          differsIn,
          treatments: treatments.map(({ jar, name }) => ({ jar: known.id(jar), name })),
        },
      }),
      learn: (reply, known) => known.learn(`trial of ${batch}`, reply.trial),
    },
    ...pouredSteps(tasting, session),
    ...Object.keys(tasters).map((name) => markedStep(tasting, session, name)),
    {
      at: revealed,
      write: (known) => ({ call: 'session.reveal', at: revealed, input: { session: known.id(session) } }),
    },
  ];
}

/**
 * The writes of the invented scenario, oldest first. Deterministic: the same writes every time, given the same ids.
 * @returns a generator that yields a write and takes the ids it was answered with
 * @throws Error when a write is answered without the id that a later one needs
 */
export function* demoWrites(): Generator<DemoWrite, void, DemoReply> {
  const known = new Known();
  const steps = [
    ...larderSteps(),
    ...batches.flatMap((batch) => [...milkSteps(batch), batchStep(batch), ...goneSteps(batch)]),
    ...laterSteps(),
    ...warmthSteps(),
    ...tastings.flatMap(tastingSteps),
  ];
  const ordered = steps.toSorted((one, other) => Date.parse(one.at) - Date.parse(other.at));
  for (const step of ordered) {
    const reply = yield step.write(known);
    step.learn?.(reply, known);
  }
}
