// A fortnight as it is lived, through the calls: planned, swapped, mixed, taken out early, a power cut, another bath, a
// probe's export, one not set, one pink, tasted by three, frozen, given away, seeded from curd, a cube and capsules, mould on
// day nine, a caution lifted, undone, merged with a friend's copy. Invented. After each step the ledger passes plain SQL
// checks, and at the end the journal gives back every state that there was in between.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Input, Reply } from '../../core/contract';
import type { Session } from '../../main/session';
import {
  ask,
  batchOf,
  must,
  newFile,
  newFolder,
  openSession,
  plainJar,
  plainSource,
  refusalOf,
} from '../ledger/ledger-files';
import { stateAfter, troubles } from './facts-in-memory';

const mL = (value: number) => ({ value, unit: 'mL', typed: `${value} ml` }) as const;
const g = (value: number) => ({ value, unit: 'g', typed: `${value} g` }) as const;
const at = (day: number, time: string): string => `2026-02-${String(day).padStart(2, '0')}T${time}:00+01:00`;
const on = (day: number): string => `2026-02-${String(day).padStart(2, '0')}`;

let session: Session;
const states = new Map<number, string>();
const db = () => session.ledger.db;
const lastAct = (): number => Number(db().prepare('SELECT max(key) FROM act').pluck().get());
const record = (facts: Input<'facts.record'>['facts'], why: string | null = null): string[] =>
  must(session, 'facts.record', { facts, why }).ids;
const familyJar = (id: string): Reply<'family.get'>['jars'][number] => {
  const jar = must(session, 'family.get', {}).jars.find((one) => one.id === id);
  if (!jar) throw new Error('not in the family');
  return jar;
};
const cautionsOf = (id: string): string[] =>
  familyJar(id)
    .cautions.filter(({ cleared }) => !cleared)
    .map(({ how }) => how);
/** Its hours in warmth, as the family and as the judgement tell them. */
const heldHours = (jar: string): (number | string | null | undefined)[] => {
  const { figures } = must(session, 'judgement.jar', { jar });
  return [familyJar(jar).holdHours, figures.find(({ name }) => name === 'hours held')?.shown];
};
const left = (id: string): Reply<'jar.left'> => must(session, 'jar.left', { id });

/** One step of the fortnight: it is done, then the ledger is looked at. */
function step(what: string, now: string, work: () => void): void {
  it(what, () => {
    session.setNow(now);
    work();
    expect(troubles(db())).toEqual([]);
    states.set(lastAct(), stateAfter(db(), lastAct()));
  });
}

/** Ids by the names they have in this story. */
const id = {
  tin: '',
  seed: '',
  bath: '',
  box: '',
  batch: '',
  a: '',
  b: '',
  c: '',
  d: '',
  night: '',
  second: '',
  series: '',
  cubes: '',
  some: '',
  next: '',
  unsure: '',
  mould: '',
};

describe('a fortnight', () => {
  beforeAll(() => {
    session = openSession(newFile(), 'create', at(1, '09:00'));
  });
  afterAll(() => session.close());

  step('begins with a jar of an earlier day', at(5, '20:00'), () => {
    id.tin = must(session, 'source.save', plainSource('Blue Tin')).id;
    const first = must(
      session,
      'batch.record',
      batchOf(on(1), [
        plainJar('a', {
          seedings: [
            {
              fromJar: null,
              portion: null,
              part: null,
              source: id.tin,
              package: null,
              amount: { value: 10, unit: 'pieces', typed: '10' },
            },
          ],
        }),
      ]),
    );
    id.seed = first.jars[0] ?? '';
    [id.bath = '', id.box = ''] = record([
      { kind: 'appliance', name: 'Blue bath', type: 'bath' },
      { kind: 'appliance', name: 'Warm box', type: 'box' },
    ]);
  });

  step('proving a bath has no jars', at(6, '20:00'), () => {
    const [hold] = record([
      { kind: 'hold', appliance: id.bath, purpose: 'proof', began: at(5, '20:00'), ended: at(6, '20:00') },
    ]);
    expect(must(session, 'facts.list', { kind: 'stay', of: hold ?? null }).facts).toEqual([]);
  });

  step('a batch is planned: milk, fibre, seed, and when it goes into which bath', at(9, '20:00'), () => {
    const planned = (letter: string) => plainJar(letter, { state: 'planned', finalVolume: null });
    const batch = must(
      session,
      'batch.record',
      batchOf(on(10), ['a', 'b', 'c'].map(planned), { word: 'heron' }),
    );
    id.batch = batch.batch;
    [id.a = '', id.b = '', id.c = ''] = batch.jars;
    const [hold] = record([
      {
        kind: 'hold',
        ref: 'night',
        appliance: id.bath,
        plannedFrom: at(10, '19:30'),
        plannedTo: at(12, '07:30'),
        planned: { value: 38, unit: '°C', typed: '38' },
      },
      ...[id.a, id.b, id.c].flatMap((jar): Input<'facts.record'>['facts'] => [
        { kind: 'milk', jar, name: 'whole milk', planned: mL(850) },
        { kind: 'addition', jar, name: 'acacia fibre', planned: g(20) },
        { kind: 'seeding', jar, fromJar: id.seed, planned: mL(45) },
        { kind: 'stay', jar, hold: 'night', plannedCame: at(10, '19:30'), plannedWent: at(12, '07:30') },
      ]),
    ]);
    id.night = hold ?? '';
    // Planned jars are never counted, and took nothing of their seed.
    expect(must(session, 'family.get', {}).jars.map(({ label }) => label)).toEqual(['1 Feb a']);
    expect(left(id.seed).amount).toEqual({ value: 946, unit: 'mL' });
    expect(
      refusalOf(session, 'facts.record', {
        facts: [{ kind: 'observation', jar: id.a, stage: 'early' }],
      }).code,
    ).toBe('planned has facts');
  });

  step(
    'one planned jar is swapped for another: it was not made, and stays as what was planned',
    at(10, '19:45'),
    () => {
      must(session, 'jar.correct', { id: id.c, changes: { state: 'not made' } });
      for (const jar of [id.a, id.b])
        must(session, 'jar.correct', {
          id: jar,
          changes: { state: 'made', finalVolume: mL(900), finalVolumeKnown: 'measured' },
        });
      const added = must(session, 'batch.addJar', {
        batch: id.batch,
        jar: { ...plainJar('d', { finalVolume: mL(450) }), hold: null },
        sameLabelMeant: false,
      });
      id.d = added.jar;
      record([
        { kind: 'seeding', jar: id.d, fromJar: id.seed, actual: mL(22) },
        { kind: 'stay', jar: id.d, hold: id.night, came: at(10, '19:40') },
      ]);
      // What went in is told beside what was planned, and is unknown until it is.
      for (const jar of [id.a, id.b]) {
        for (const kind of ['milk', 'addition', 'seeding'] as const) {
          const [fact] = must(session, 'facts.list', { kind, of: jar }).facts;
          expect(fact).toMatchObject({ actual: null });
        }
      }
      expect(left(id.seed)).toMatchObject({ amount: null, unknown: 'seed' });
      for (const jar of [id.a, id.b]) {
        const seeding = must(session, 'facts.list', { kind: 'seeding', of: jar }).facts.find(
          (one) => one.kind === 'seeding' && one.jar === jar,
        );
        must(session, 'facts.correct', {
          kind: 'seeding',
          id: seeding?.id ?? '',
          changes: { actual: mL(45) },
        });
        const stay = must(session, 'facts.list', { kind: 'stay', of: jar }).facts[0];
        must(session, 'facts.correct', {
          kind: 'stay',
          id: stay?.id ?? '',
          changes: { came: at(10, '19:40') },
        });
      }
      expect(left(id.seed).amount).toEqual({ value: 834, unit: 'mL' });
      expect(must(session, 'family.get', {}).jars.map(({ label }) => label)).toEqual([
        '1 Feb a',
        '10 Feb heron a',
        '10 Feb heron b',
        '10 Feb heron d',
      ]);
    },
  );

  step('two cartons went into one jar', at(10, '19:50'), () => {
    const carton = (openedOn: string): string =>
      must(session, 'package.save', {
        package: {
          id: null,
          of: 'milk',
          source: null,
          name: 'whole milk',
          size: mL(1000),
          price: null,
          boughtOn: null,
          openedOn,
          bestBefore: null,
          note: null,
        },
      }).id;
    const [one, two] = [carton(on(8)), carton(on(10))];
    const [milk] = must(session, 'facts.list', { kind: 'milk', of: id.a }).facts;
    const uses = record([
      { kind: 'use', package: one, milk: milk?.id ?? '', amount: mL(300) },
      { kind: 'use', package: two, milk: milk?.id ?? '', amount: mL(550) },
    ]);
    must(session, 'facts.correct', { kind: 'milk', id: milk?.id ?? '', changes: { actual: mL(850) } });
    expect(
      must(session, 'facts.list', { kind: 'use', of: milk?.id ?? null }).facts.map(({ id: use }) => use),
    ).toEqual(uses);
  });

  step(
    'a jar is looked at early, the power fails for two hours, and one jar comes out early',
    at(11, '09:00'),
    () => {
      record([
        {
          kind: 'observation',
          ref: 'look',
          jar: id.a,
          stage: 'early',
          at: at(11, '07:40'),
          hoursIn: 12,
          setState: 'starting',
          sour: true,
        },
        { kind: 'acidity', observation: 'look', ph: 5.2, how: 'strip' },
        {
          kind: 'interruption',
          hold: id.night,
          what: 'power',
          began: at(11, '02:00'),
          ended: at(11, '04:00'),
          wasSet: false,
        },
      ]);
      const [stay] = must(session, 'facts.list', { kind: 'stay', of: id.d }).facts;
      must(session, 'facts.correct', {
        kind: 'stay',
        id: stay?.id ?? '',
        changes: { went: at(11, '08:40') },
      });
      expect(heldHours(id.d)).toEqual([13, '13.0 h']);
    },
  );

  step('another jar moves to another bath', at(11, '20:00'), () => {
    const [stay] = must(session, 'facts.list', { kind: 'stay', of: id.b }).facts;
    must(session, 'facts.correct', { kind: 'stay', id: stay?.id ?? '', changes: { went: at(11, '12:00') } });
    const [hold] = record([{ kind: 'hold', ref: 'box', appliance: id.box, began: at(11, '12:00') }]);
    id.second = hold ?? '';
    const overlapping = refusalOf(session, 'facts.record', {
      facts: [{ kind: 'stay', jar: id.b, hold: id.second, came: at(11, '11:00') }],
    });
    expect(overlapping.sentence).toContain(
      '10 Feb heron b would stand in warmth twice at once: it was there from 10 Feb 2026, 19:40, to 11 Feb 2026, 12:00',
    );
    record([{ kind: 'stay', jar: id.b, hold: id.second, came: at(11, '12:30'), went: at(12, '06:30') }]);
    // Its hours are its stays: 19:40 to 12:00, and 12:30 to 06:30.
    expect(heldHours(id.b)).toEqual([34.33, '34.3 h']);
  });

  step('a probe’s export comes in as a file, once', at(12, '08:00'), () => {
    const file = { path: fileURLToPath(new URL('../growth/bath-probe.csv', import.meta.url)) };
    const told = must(session, 'readings.bringIn', { hold: id.night, where: 'bath', file });
    // One reading leaps: it is kept and not counted.
    expect(told).toMatchObject({ readings: 205, added: 206 });
    id.series = told.series;
    expect(must(session, 'readings.bringIn', { hold: id.night, where: 'bath', file }).act).toBeNull();
    expect(must(session, 'readings.list', { series: id.series }).readings).toHaveLength(206);
    const again = { series: id.series, readings: [{ at: at(10, '19:40'), c: 12 }] };
    expect(refusalOf(session, 'readings.add', again).code).toBe('reading differs');
    expect(db().prepare('SELECT count(*) FROM reading').pluck().get()).toBe(206);
  });

  step('at take-out one is set, one is not, one is pink', at(12, '08:30'), () => {
    const [stay] = must(session, 'facts.list', { kind: 'stay', of: id.a }).facts;
    must(session, 'facts.correct', { kind: 'stay', id: stay?.id ?? '', changes: { went: at(12, '07:40') } });
    record([
      {
        kind: 'observation',
        ref: 'a',
        jar: id.a,
        stage: 'take-out',
        at: at(12, '07:45'),
        looked: true,
        setState: 'set',
        sour: true,
        setWord: 'firm',
      },
      { kind: 'acidity', observation: 'a', ph: 4.3, how: 'meter' },
      { kind: 'sign', observation: 'a', sign: 'tint', answer: 'the fibre' },
      {
        kind: 'observation',
        ref: 'b',
        jar: id.b,
        stage: 'take-out',
        at: at(12, '06:35'),
        looked: true,
        setState: 'not set',
        sour: false,
      },
      {
        kind: 'observation',
        ref: 'd',
        jar: id.d,
        stage: 'take-out',
        at: at(11, '08:45'),
        looked: true,
        setState: 'set',
      },
      { kind: 'sign', ref: 'pink', observation: 'd', sign: 'pink', answer: 'seen' },
      { kind: 'remark', observation: 'd', field: 'smell', text: 'like wet cardboard', readAs: 'discard' },
    ]);
    expect(familyJar(id.d).spoiled).toBe(true);
    expect(familyJar(id.b).spoiled).toBe(true);
    expect(familyJar(id.a).spoiled).toBe(false);
    expect(familyJar(id.a)).toMatchObject({ setWord: 'firm', ph: 4.3, holdHours: 36 });
    expect(cautionsOf(id.a).length).toBeGreaterThan(0);
    // Pink is never the fibre's doing.
    const [sign] = must(session, 'facts.list', { kind: 'sign' }).facts.filter(
      (one) => one.kind === 'sign' && one.sign === 'pink',
    );
    expect(
      refusalOf(session, 'facts.correct', {
        kind: 'sign',
        id: sign?.id ?? '',
        changes: { answer: 'the fibre' },
      }).sentence,
    ).toContain('a fibre explains a tint or a jelly and nothing else');
    record([
      { kind: 'movement', jar: id.d, what: 'discarded', day: on(12) },
      { kind: 'movement', jar: id.b, what: 'discarded', day: on(12) },
    ]);
    expect(left(id.d).none).toBe(true);
  });

  step('it is tasted by three, blind, each with codes of their own', at(13, '12:00'), () => {
    const tasters = ['taster A', 'taster B', 'taster C'];
    const facts: Input<'facts.record'>['facts'] = [
      { kind: 'session', ref: 'tasting', day: on(13), task: 'triangle', draw: 'seed 7' },
      ...tasters.map((name, index): Input<'facts.record'>['facts'][number] => ({ kind: 'taster', ref: `t${index}`, name })),
      { kind: 'tasterAvoids', taster: 't0', allergen: 'oats' },
      ...tasters.flatMap((_name, index) =>
        // A triangle serves one jar under two codes.
        [id.a, id.seed, id.a].map((jar, place): Input<'facts.record'>['facts'][number] => ({
          kind: 'serving', ref: `s${index}-${place}`, session: 'tasting', taster: `t${index}`, place: place + 1, jar: jar, code: 101 + index * 10 + place,
        })),
      ),
      ...tasters.flatMap((_name, index): Input<'facts.record'>['facts'] => [
        { kind: 'mark', serving: `s${index}-1`, aspect: 'odd one out', picked: index < 2 },
        { kind: 'mark', serving: `s${index}-0`, aspect: 'tang', word: 'clear' },
      ]),
    ]; // prettier-ignore
    record(facts);
    expect(must(session, 'facts.list', { kind: 'serving' }).facts).toHaveLength(9);
    const [session7] = must(session, 'facts.list', { kind: 'session' }).facts;
    must(session, 'facts.correct', {
      kind: 'session',
      id: session7?.id ?? '',
      changes: { revealedAt: at(13, '12:30') },
    });
  });

  step('a remark that the keeper reads as discard counts, and read anew it does not', at(13, '20:00'), () => {
    const [remark] = record([{ kind: 'remark', jar: id.seed, text: 'a pinkish rim?', readAs: 'discard' }]);
    expect(familyJar(id.seed).spoiled).toBe(true);
    must(session, 'facts.correct', { kind: 'remark', id: remark ?? '', changes: { readAs: 'fine' } });
    expect(familyJar(id.seed).spoiled).toBe(false);
    const [sign] = record([{ kind: 'sign', remark: remark ?? '', sign: 'pink', answer: 'seen' }]);
    expect(familyJar(id.seed).spoiled).toBe(true);
    must(session, 'facts.correct', { kind: 'sign', id: sign ?? '', changes: { answer: 'not so' } });
    expect(familyJar(id.seed).spoiled).toBe(false);
  });

  step(
    'cubes are frozen, some of them parted again, some eaten, and a jar is given away',
    at(14, '10:00'),
    () => {
      const [cubes, some] = record([
        { kind: 'movement', jar: id.a, what: 'fridge', day: on(12) },
        {
          kind: 'portion',
          ref: 'cubes',
          jar: id.a,
          form: 'cubes',
          place: 'freezer',
          reserve: true,
          pieces: 12,
          amount: mL(180),
          keptOn: on(13),
        },
        {
          kind: 'portion',
          ref: 'some',
          jar: id.a,
          ofPortion: 'cubes',
          form: 'cubes',
          place: 'freezer',
          pieces: 4,
          amount: mL(60),
          keptOn: on(14),
        },
        { kind: 'movement', jar: id.a, what: 'opened', day: on(13) },
        { kind: 'movement', jar: id.a, what: 'eaten', day: on(13), amount: mL(200) },
        { kind: 'movement', jar: id.seed, what: 'given', day: on(14) },
      ]).slice(1);
      [id.cubes = '', id.some = ''] = [cubes ?? '', some ?? ''];
      expect(left(id.a)).toMatchObject({
        amount: { value: 520, unit: 'mL' },
        place: 'fridge',
        opened: on(13),
      });
      expect(left(id.cubes)).toMatchObject({ amount: { value: 120 }, pieces: 8, place: 'freezer' });
      expect(left(id.seed)).toMatchObject({ none: true });
      expect(familyJar(id.seed).spoiled).toBe(false);
    },
  );

  step('a new jar is seeded from curd, from a cube and from capsules', at(16, '19:00'), () => {
    const batch = must(session, 'batch.record', {
      ...batchOf(on(16), [
        plainJar('a', {
          finalVolume: mL(900),
          seedings: [
            { fromJar: id.a, portion: null, part: 'curd', source: null, package: null, amount: g(30) },
            {
              fromJar: id.a,
              portion: id.some,
              part: null,
              source: null,
              package: null,
              amount: { value: 1, unit: 'pieces', typed: '1 cube' },
            },
            {
              fromJar: null,
              portion: null,
              part: null,
              source: id.tin,
              package: null,
              amount: { value: 5, unit: 'pieces', typed: '5' },
            },
          ],
        }),
      ]),
      why: 'the pink one stood apart, and this one was clean',
    });
    id.next = batch.jars[0] ?? '';
    expect(familyJar(id.next).seeds).toHaveLength(3);
    expect(familyJar(id.next).generation).toMatchObject({ deepest: 3, shallowest: 1 });
    expect(left(id.a)).toMatchObject({ amount: { value: 490, unit: 'mL' }, gramsAsMl: true });
    expect(left(id.some)).toMatchObject({ pieces: 3, amount: { value: 45 } });
  });

  step('a jar may be seeded by one of two, nobody is sure which', at(17, '19:00'), () => {
    const batch = must(session, 'batch.record', { ...batchOf(on(17), [plainJar('x')]), why: null });
    id.unsure = batch.jars[0] ?? '';
    record([
      { kind: 'seeding', jar: id.unsure, fromJar: id.next, actual: mL(30), either: 1 },
      { kind: 'seeding', jar: id.unsure, fromJar: id.a, actual: mL(30), either: 1 },
    ], 'as before'); // prettier-ignore
    // The deepest counts for the generation; what each brought is assumed to be equal.
    expect(familyJar(id.unsure).generation.deepest).toBe(4);
    expect(familyJar(id.unsure)).toMatchObject({
      shareBasis: 'equal, assumed',
      seeds: [{ share: 0.5 }, { share: 0.5 }],
    });
    expect(left(id.next)).toMatchObject({ amount: null, unknown: 'seed' });
  });

  step('mould on day nine: what was seeded before is looked at again', at(22, '09:00'), () => {
    const before = cautionsOf(id.next);
    record([
      {
        kind: 'observation',
        ref: 'late',
        jar: id.a,
        stage: 'opened',
        day: on(22),
        daysOpen: 9,
        looked: true,
      },
      { kind: 'sign', observation: 'late', sign: 'fuzz', answer: 'seen' },
    ]);
    id.mould = db().prepare('SELECT uid FROM act ORDER BY key DESC').pluck().get() as string;
    expect(familyJar(id.a).spoiled).toBe(true);
    expect(cautionsOf(id.next)).not.toEqual(before);
    expect(cautionsOf(id.next).length).toBeGreaterThan(0);
  });

  step('a caution is lifted with a reason, and what was known is kept', at(22, '10:00'), () => {
    const cautions = cautionsOf(id.next).length;
    must(session, 'caution.clear', {
      jar: id.next,
      of: id.a,
      reason: 'the seed was taken six days before, from a closed pot',
    });
    expect(cautionsOf(id.next)).toHaveLength(cautions - 1);
    expect(db().prepare('SELECT kind, opened, days_open FROM lift_knew').all()).toEqual([
      { kind: 'fuzz', opened: 1, days_open: 9 },
    ]);
    // One reason for several jars, as facts.
    const [reason] = record([
      { kind: 'reason', ref: 'why', text: 'one spoon for both' },
      { kind: 'lift', reason: 'why', jar: id.unsure, ofJar: id.a },
    ]);
    expect(must(session, 'facts.list', { kind: 'lift', of: reason ?? null }).facts).toHaveLength(1);
    expect(db().prepare('SELECT count(*) FROM lift_knew').pluck().get()).toBe(2);
  });

  step(
    'what the lift stands on can’t be undone before it; undone and done again, it is as it was',
    at(22, '11:00'),
    () => {
      const before = stateAfter(db(), lastAct());
      const [one, two] = [must(session, 'act.undo', { act: null }), must(session, 'act.undo', { act: null })];
      expect([one.says, two.says].every((says) => says.startsWith('undid: '))).toBe(true);
      must(session, 'act.undo', { act: id.mould });
      expect(familyJar(id.a).spoiled).toBe(false);
      for (let redo = 0; redo < 3; redo++) must(session, 'act.redo', {});
      expect(stateAfter(db(), lastAct())).toBe(before);
      expect(familyJar(id.a).spoiled).toBe(true);
      const { acts } = must(session, 'history.list', { record: null, before: null, limit: 50 });
      expect(acts.every(({ says }) => says !== '' && !/undefined|null/.test(says))).toBe(true);
    },
  );

  step('a friend takes a copy, changes it and gives it back: what differs waits', at(24, '10:00'), () => {
    const [unread = ''] = record([
      { kind: 'remark', jar: id.next, text: 'for nobody else' },
      { kind: 'remark', jar: id.next, text: 'creamy', private: false, readAs: 'fine' },
    ]);
    const folder = newFolder();
    const friend = openSession(newFile(), 'create', at(24, '12:00'));
    const handed = (from: Session, name: string): { path: string } => {
      const file = { path: join(folder, name) };
      must(from, 'handOver.write', { jar: id.next, file });
      return file;
    };
    // Nobody gives a jar away of which something stands unread.
    const early = { jar: id.next, file: { path: join(folder, 'early.json') } };
    expect(refusalOf(session, 'handOver.write', early).code).toBe('remark unread');
    must(session, 'facts.correct', { kind: 'remark', id: unread, changes: { readAs: 'fine' } });
    const there = handed(session, 'there.json');
    expect(readFileSync(there.path, 'utf8')).not.toContain('for nobody else');
    expect(must(friend, 'handOver.read', { file: there })).toMatchObject({ jar: id.next, waiting: 0 });
    expect(troubles(friend.ledger.db)).toEqual([]);
    const theirs = must(friend, 'family.get', {}).jars.find((jar) => jar.id === id.next);
    const without = (jar: ReturnType<typeof familyJar> | undefined) => jar && { ...jar, cautions: [] };
    expect(without(theirs)).toEqual(without(familyJar(id.next)));
    // Changed there, and given back: ours stands until the keeper says otherwise.
    must(friend, 'jar.correct', { id: id.next, changes: { vessel: 'two cups' } });
    const back = handed(friend, 'back.json');
    const vessel = (): string | null => must(session, 'jar.get', { id: id.next }).record.jar.vessel;
    expect(must(session, 'handOver.read', { file: back })).toMatchObject({
      added: 0,
      renewed: 0,
      waiting: 1,
    });
    expect(vessel()).toBeNull();
    const [received] = must(session, 'received.list', {}).received;
    expect(received).toMatchObject({ record: id.next, differs: ['vessel'], decided: null });
    must(session, 'received.decide', {
      id: received?.id ?? '',
      decided: 'kept own',
      why: 'it was never in two cups',
    });
    expect(must(session, 'handOver.read', { file: back })).toMatchObject({ act: null });
    expect(vessel()).toBeNull();
    friend.close();
  });

  it('and the journal gives back every state there was', () => {
    expect(states.size).toBeGreaterThan(15);
    for (const [act, state] of states) expect(stateAfter(db(), act)).toBe(state);
    const file = session.ledger.file;
    const whole = JSON.stringify(must(session, 'family.get', {}));
    session.close();
    session = openSession(file, 'open', at(24, '13:00'));
    expect(JSON.stringify(must(session, 'family.get', {}))).toBe(whole);
    expect(ask(session, 'facts.list', { kind: 'movement' }).ok).toBe(true);
  });
});
