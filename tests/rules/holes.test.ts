// What could once be walked past: each a sequence of calls that a form would have refused at its end, told in another
// order, by an undo, by a redo or by notes. That nothing happens to a jar before it is made, and that no more comes out of a
// jar than was in it, needs no source.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Session } from '../../main/session';
import {
  batchOf,
  fromJar,
  must,
  newFolder,
  newSession,
  openSession,
  newFile,
  plainJar,
  refusalOf,
  smallFamily,
  stateOf,
  unseen,
} from '../ledger/ledger-files';

const ml = (value: number) => ({ value, unit: 'mL' as const, typed: null });
const pieces = (value: number) => ({ value, unit: 'pieces' as const, typed: null });
const cubes = {
  id: null, part: null, place: 'freezer' as const, pieces: 6, amount: null, keptOn: '2026-03-10', goneOn: null,
  reserve: true, note: null,
}; // prettier-ignore
const only = (list: readonly string[]): string => list[0] ?? '';

/** Refused, and nothing is changed. */
function refused(
  session: Session,
  ...call: Parameters<typeof refusalOf> extends [unknown, ...infer Rest] ? Rest : never
) {
  const before = stateOf(session);
  const refusal = refusalOf(session, ...call);
  expect(stateOf(session)).toBe(before);
  return refusal;
}

describe('an undo', () => {
  it('brings back no day on which a jar was gone before it was made', () => {
    const session = newSession();
    const { batch, jars } = must(session, 'batch.record', batchOf('2026-03-10', [plainJar('a')]));
    const moved = must(session, 'batch.correct', { id: batch, changes: { madeOn: '2026-03-05' } });
    must(session, 'jar.correct', { id: only(jars), changes: { goneOn: '2026-03-07' } });
    const refusal = refused(session, 'act.undo', { act: moved.act });
    expect(refusal.code).toBe('gone before made');
    expect(refusal.sentence).toContain('10 Mar a was made on 10 Mar 2026, so it was not gone on 7 Mar 2026');
  });

  it('leaves no jar seeded from cubes that were frozen later', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const [, seed] = jars;
    const kept = must(session, 'portion.save', { portion: { ...cubes, jar: seed, keptOn: '2026-03-12' } });
    const earlier = must(session, 'portion.save', {
      portion: { ...cubes, id: kept.id, jar: seed, keptOn: '2026-03-06' },
    });
    const from = { ...fromJar(seed), portion: kept.id, amount: pieces(2) };
    must(session, 'batch.record', batchOf('2026-03-08', [plainJar('a', { seedings: [from] })]));
    expect(refused(session, 'act.undo', { act: earlier.act }).code).toBe('portion kept later');
  });

  it('brings back no volume, no amount and no pieces that are less than what was taken since', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const small = must(session, 'jar.correct', { id: jars[0], changes: { finalVolume: ml(60) } });
    const large = must(session, 'jar.correct', { id: jars[0], changes: { finalVolume: ml(946) } });
    must(
      session,
      'batch.record',
      batchOf('2026-03-05', [plainJar('b', { seedings: [fromJar(jars[0], 40)] })]),
    );
    expect(small.act).not.toBe(large.act);
    expect(refused(session, 'act.undo', { act: large.act }).code).toBe('taken more than jar');

    const kept = must(session, 'portion.save', { portion: { ...cubes, pieces: 2, jar: jars[1] } });
    const more = must(session, 'portion.save', { portion: { ...cubes, id: kept.id, jar: jars[1] } });
    const from = { ...fromJar(jars[1]), portion: kept.id, amount: pieces(4) };
    must(session, 'batch.record', batchOf('2026-03-12', [plainJar('a', { seedings: [from] })]));
    expect(refused(session, 'act.undo', { act: more.act }).code).toBe('more than portion');
  });

  it('makes no jar planned again that has seeded another since, nor one that was seen', () => {
    const session = newSession();
    const planned = () => batchOf('2026-03-10', [plainJar('p', { state: 'planned' })]);
    const one = only(must(session, 'batch.record', planned()).jars);
    const made = must(session, 'jar.correct', { id: one, changes: { state: 'made' } });
    must(session, 'batch.record', batchOf('2026-03-12', [plainJar('a', { seedings: [fromJar(one)] })]));
    const refusal = refused(session, 'act.undo', { act: made.act });
    expect(refusal.code).toBe('has descendants');
    expect(refusal.sentence).toContain('12 Mar a');

    const other = only(must(session, 'batch.record', { ...planned(), word: 'oat' }).jars);
    const also = must(session, 'jar.correct', { id: other, changes: { state: 'made' } });
    must(session, 'outcome.save', { jar: other, outcome: { ...unseen, setWord: 'firm' }, onShelf: null });
    expect(refused(session, 'act.undo', { act: also.act }).code).toBe('planned has facts');
  });

  it('leaves no made jar on a day to come', () => {
    const session = newSession();
    const planned = batchOf('2026-03-20', [plainJar('p', { state: 'planned' })]);
    const { batch, jars } = must(session, 'batch.record', planned);
    const moved = must(session, 'batch.correct', { id: batch, changes: { madeOn: '2026-03-14' } });
    must(session, 'jar.correct', { id: only(jars), changes: { state: 'made' } });
    expect(refused(session, 'act.undo', { act: moved.act }).code).toBe('day to come');
  });

  it('lets no jar be seeded from one that was gone', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    must(session, 'jar.correct', { id: jars[2], changes: { goneOn: '2026-03-10' } });
    const back = must(session, 'jar.correct', { id: jars[2], changes: { onShelf: true } });
    must(session, 'batch.record', batchOf('2026-03-12', [plainJar('a', { seedings: [fromJar(jars[2])] })]));
    expect(refused(session, 'act.undo', { act: back.act }).code).toBe('seed gone before');
  });

  it('says which later act has taken the place of what it would bring back, or taken away what that points at', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const jar = jars[2];
    const outcome = { ...unseen, setWord: 'firm' as const };
    must(session, 'outcome.save', { jar, outcome, onShelf: null });
    const removed = must(session, 'outcome.save', { jar, outcome: null, onShelf: null });
    must(session, 'outcome.save', { jar, outcome: { ...unseen, setWord: 'soft' }, onShelf: null });
    expect(refused(session, 'act.undo', { act: removed.act }).sentence).toBe(
      'Later records stand on it: noted how 9 Mar a turned out. Undo or change those first.',
    );

    const milk = (name: string | null) => must(session, 'jar.correct', { id: jar, changes: { milk: name } });
    milk('whole');
    const none = milk(null);
    milk('goat');
    expect(refused(session, 'act.undo', { act: none.act }).sentence).toContain('corrected 9 Mar a');

    const kept = must(session, 'portion.save', { portion: { ...cubes, jar: jars[1] } });
    const from = { ...fromJar(jars[1]), portion: kept.id, amount: pieces(2) };
    const child = only(
      must(session, 'batch.record', batchOf('2026-03-12', [plainJar('a', { seedings: [from] })])).jars,
    );
    const without = must(session, 'seeding.set', { jar: child, seedings: [] });
    must(session, 'act.undo', { act: kept.act });
    expect(refused(session, 'act.undo', { act: without.act }).sentence).toBe(
      'Later records stand on it: undid: kept some of 5 Mar a. Undo or change those first.',
    );
  });

  it('leaves no package that is used for something else', () => {
    const session = newSession();
    const carton = (of: 'milk' | 'addition', id: string | null) => ({
      package: {
        id, of, source: null, name: 'carton', size: null, price: null, boughtOn: null, openedOn: null, bestBefore: null,
        note: null,
      },
    }); // prettier-ignore
    const { id } = must(session, 'package.save', carton('addition', null));
    const asMilk = must(session, 'package.save', carton('milk', id));
    must(session, 'batch.record', batchOf('2026-03-10', [plainJar('a', { milkPackage: id })]));
    expect(refused(session, 'act.undo', { act: asMilk.act }).code).toBe('package of something else');
    expect(refused(session, 'package.save', carton('addition', id)).code).toBe('package of something else');
  });
});

describe('a redo', () => {
  it('of an import that was brought in again since says so', () => {
    const session = newSession();
    const bytes = new TextEncoder().encode('date,jar,seed,amount\n2026-02-01,a,Blue Tin,5 caps\n');
    const file = { name: 'notes.csv', bytes };
    must(session, 'notes.bringIn', { file });
    const undone = must(session, 'act.undo', { act: null });
    must(session, 'notes.bringIn', { file });
    expect(refused(session, 'act.undo', { act: undone.act }).code).toBe('label back');
  });

  it('of what was kept of a jar that is gone since says which act took the jar away', () => {
    const session = newSession();
    const { act, jars } = must(session, 'batch.record', batchOf('2026-03-10', [plainJar('a')]));
    must(session, 'portion.save', { portion: { ...cubes, jar: only(jars) } });
    const undone = must(session, 'act.undo', { act: null });
    must(session, 'act.undo', { act });
    expect(refused(session, 'act.undo', { act: undone.act }).sentence).toBe(
      'Later records stand on it: undid: recorded 10 Mar a. Undo or change those first.',
    );
    expect(refused(session, 'act.undoMany', { acts: [undone.act] }).code).toBe('stands on it');
  });

  it('asks nothing again of two labels that were meant to be equal', () => {
    const file = newFile();
    let session = openSession(file, 'create');
    must(session, 'batch.record', batchOf('2026-03-01', [plainJar('a')]));
    must(session, 'batch.record', batchOf('2026-03-01', [plainJar('a')], { sameLabelMeant: true }));
    const both = stateOf(session);
    for (let times = 0; times < 2; times++) {
      must(session, 'act.undo', { act: null });
      must(session, 'act.undo', { act: null });
      session.close();
      session = openSession(file);
      must(session, 'act.redo', {});
      must(session, 'act.redo', {});
      expect(stateOf(session)).toBe(both);
    }
    session.close();
  });

  it('still meets a label that another jar has taken since', () => {
    const session = newSession();
    must(session, 'batch.record', batchOf('2026-03-01', [plainJar('a')]));
    const twin = must(
      session,
      'batch.record',
      batchOf('2026-03-01', [plainJar('a')], { sameLabelMeant: true }),
    );
    const undone = must(session, 'act.undo', { act: twin.act });
    must(session, 'batch.record', batchOf('2026-03-01', [plainJar('b')]));
    must(session, 'act.undo', { act: undone.act });
    const again = must(session, 'act.undo', { act: twin.act });
    const first = only(must(session, 'batch.list', { before: null, limit: 5 }).batches.flatMap(({ jars }) => jars.flatMap(({ id, label }) => (label.endsWith(' a') ? [id] : [])))); // prettier-ignore
    must(session, 'jar.correct', { id: first, changes: { letter: 'c' } });
    must(session, 'batch.record', batchOf('2026-03-01', [plainJar('a')]));
    expect(refused(session, 'act.undo', { act: again.act }).code).toBe('label back');
  });
});

describe('what was seen', () => {
  it('after 18 days of being open is not of a jar eight days old', () => {
    const session = newSession();
    const { batch, jars } = must(session, 'batch.record', batchOf('2026-03-06', [plainJar('a')]));
    const seen = (openedDays: number) => ({
      jar: only(jars), onShelf: null,
      outcome: { ...unseen, signs: ['fuzz' as const], seenAt: 'after opening' as const, openedDays },
    }); // prettier-ignore
    const refusal = refused(session, 'outcome.save', seen(18));
    expect(refusal.code).toBe('opened before made');
    expect(refusal.sentence).toBe(
      '6 Mar a was made on 6 Mar 2026, so on 14 Mar 2026 it can’t have been open for 18 days. Correct the days, or the day it was made.',
    );
    must(session, 'outcome.save', seen(8));
    expect(refused(session, 'batch.correct', { id: batch, changes: { madeOn: '2026-03-07' } }).code).toBe(
      'opened before made',
    );
  });

  it('long ago stays true: a day of being open is held against the day on which it was told', () => {
    const file = newFile();
    const then = openSession(file, 'create', '2026-03-14T09:00:00+01:00');
    const { batch, jars } = must(then, 'batch.record', batchOf('2026-03-06', [plainJar('a')]));
    const outcome = { ...unseen, signs: ['fuzz' as const], seenAt: 'after opening' as const, openedDays: 7 };
    must(then, 'outcome.save', { jar: only(jars), outcome, onShelf: null });
    then.close();
    const later = openSession(file, 'open', '2026-05-01T09:00:00+02:00');
    must(later, 'outcome.save', { jar: only(jars), outcome: { ...outcome, smell: 'musty' }, onShelf: null });
    expect(refused(later, 'batch.correct', { id: batch, changes: { madeOn: '2026-03-08' } }).code).toBe(
      'opened before made',
    );
    must(later, 'batch.correct', { id: batch, changes: { madeOn: '2026-03-07' } });
    later.close();
  });

  it('is of a jar that was made, and not of one that is only planned', () => {
    const session = newSession();
    const { jars } = must(session, 'batch.record', batchOf('2026-03-20', [plainJar('p', { state: 'planned' })])); // prettier-ignore
    const jar = only(jars);
    const outcome = { ...unseen, setWord: 'firm' as const };
    expect(refused(session, 'outcome.save', { jar, outcome, onShelf: null }).sentence).toBe(
      '20 Mar p is only planned, so nothing of it can have been seen yet. Say first that it was made.',
    );
    expect(refused(session, 'jar.correct', { id: jar, changes: { goneOn: '2026-03-14' } }).code).toBe(
      'gone before made',
    );
    expect(refused(session, 'outcome.save', { jar, outcome: null, onShelf: true }).code).toBe('planned has facts'); // prettier-ignore
    const { id } = smallFamily(session).jars.map((one) => ({ id: one }))[3] ?? { id: '' };
    must(session, 'portion.save', { portion: { ...cubes, jar: id } });
    expect(refused(session, 'jar.correct', { id, changes: { state: 'planned' } }).code).toBe(
      'planned has facts',
    );
  });
});

describe('warmth', () => {
  const hold = (endedAt: string | null, hours: number | null = null) => ({
    startedAt: '2026-03-07T20:00:00+01:00', endedAt, hours, planned: null, probe: null, readings: [], note: null,
  }); // prettier-ignore
  it('that ended before a jar was made did not warm it', () => {
    const session = newSession();
    const record = (madeOn: string) =>
      batchOf(madeOn, [plainJar('a', { hold: 0 })], { holds: [hold('2026-03-09T08:00:00+01:00')] });
    expect(refused(session, 'batch.record', record('2026-03-10')).code).toBe('warm before made');
    const { batch } = must(session, 'batch.record', record('2026-03-07'));
    expect(refused(session, 'batch.correct', { id: batch, changes: { madeOn: '2026-03-12' } }).code).toBe(
      'warm before made',
    );
  });

  it('was not missing for longer than it lasted, and its own end is after its start, also by an undo', () => {
    const session = newSession();
    const outcome = { ...unseen, powerCut: true, powerCutHours: 40 };
    const record = (hours: number) =>
      batchOf('2026-03-07', [plainJar('a', { hold: 0, outcome })], {
        holds: [{ ...hold(null, hours), startedAt: null }],
      });
    expect(refused(session, 'batch.record', record(36)).code).toBe('interruption longer');
    const { batch } = must(session, 'batch.record', record(48));
    const id = only(must(session, 'batch.get', { id: batch }).holds.map((one) => one.id));
    expect(refused(session, 'hold.correct', { id, changes: { hours: 30 } }).code).toBe('interruption longer');
  });
});

describe('a stay', () => {
  const hold = (began: string | null, ended: string | null, hours: number | null = null) => ({
    kind: 'hold',
    ref: `h${began ?? ''}${ended ?? ''}${hours ?? ''}`.replaceAll(/\W/g, ''),
    began,
    ended,
    hours,
  });
  const record = (facts: object[], why: string | null = null) => ['facts.record', { facts, why }] as never as readonly ['facts.record', never]; // prettier-ignore

  it('is of a jar that was made, whichever came first', () => {
    const session = newSession();
    const { jars } = must(
      session,
      'batch.record',
      batchOf('2026-03-10', [plainJar('p', { state: 'planned' })]),
    );
    const jar = only(jars);
    const long = hold('2026-03-10T08:00:00Z', null);
    const stay = { kind: 'stay', jar, hold: long.ref };
    expect(refused(session, ...record([long, { ...stay, came: '2026-03-10T09:00:00Z' }])).sentence).toContain('is only planned, so nothing of it can have been in warmth yet'); // prettier-ignore
    must(session, ...record([long, { ...stay, plannedCame: '2026-03-10T09:00:00Z' }]));
    const made = must(session, 'jar.correct', { id: jar, changes: { state: 'made' } });
    const { facts } = must(session, 'facts.list', { kind: 'stay', of: jar });
    must(session, 'facts.correct', { kind: 'stay', id: facts[0]?.id ?? '', changes: { came: '2026-03-10T09:00:00Z' } }); // prettier-ignore
    expect(refused(session, 'act.undo', { act: made.act }).code).toBe('planned has facts');
  });

  it('that nobody timed goes by its hold, and is asked about where that tells nothing', () => {
    const session = newSession();
    const jar = only(must(session, 'batch.record', batchOf('2026-03-10', [plainJar('a')])).jars);
    const [one, two] = [
      hold('2026-03-10T08:00:00Z', '2026-03-11T08:00:00Z'),
      hold('2026-03-11T07:00:00Z', null),
    ];
    const later = hold('2026-03-11T09:00:00Z', null);
    const within = ({ ref }: { ref: string }) => ({ kind: 'stay', jar, hold: ref });
    expect(refused(session, ...record([one, two, within(one), within(two)])).code).toBe('stays overlap');
    must(session, ...record([one, later, within(one), within(later)]));
    const bare = hold(null, null, 12);
    const refusal = refused(session, ...record([bare, within(bare)]));
    expect(refusal.sentence).toBe(
      'Nobody noted when 10 Mar a came into the warmth, so it may have stood in two places at once. Say when it came and went, or say in a few words how it was.',
    );
    must(session, ...record([bare, within(bare)], 'twelve hours in the box, before the bath'));
  });

  it('may begin on the day after its jar was made, and end on that very day; a hold of hours alone is of any day', () => {
    const session = newSession();
    const record = (holds: object) =>
      ({ ...batchOf('2026-03-10', [plainJar('a', { hold: 0 })], { holds: [{ planned: null, probe: null, readings: [], note: null, ...holds }] as never }), sameLabelMeant: true }); // prettier-ignore
    must(session, 'batch.record', record({ startedAt: '2026-03-11T07:00:00+01:00', endedAt: '2026-03-12T19:00:00+01:00', hours: null })); // prettier-ignore
    must(
      session,
      'batch.record',
      record({ startedAt: null, endedAt: '2026-03-10T23:59:00+01:00', hours: null }),
    );
    must(session, 'batch.record', record({ startedAt: null, endedAt: null, hours: 36 }));
    must(session, 'batch.record', record({ startedAt: '2026-03-09T23:30:00+01:00', endedAt: '2026-03-11T10:00:00+01:00', hours: null })); // prettier-ignore
  });
});

describe('what is taken of a jar', () => {
  it('is together no more than it held: pots, cubes and seed', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const pot = { ...cubes, place: 'fridge' as const, pieces: null, jar: jars[2] };
    must(session, 'portion.save', { portion: { ...pot, amount: ml(600) } });
    const refusal = refused(session, 'portion.save', { portion: { ...pot, amount: ml(600) } });
    expect(refusal.code).toBe('taken more than jar');
    expect(refusal.sentence).toBe(
      'Together 1200 mL would be taken of 9 Mar a, which held 946 mL. Correct an amount or the volume.',
    );
    const record = (millilitres: number) =>
      batchOf('2026-03-12', [plainJar('a', { seedings: [fromJar(jars[2], millilitres)] })]);
    expect(refused(session, 'batch.record', record(500)).code).toBe('taken more than jar');
    must(session, 'batch.record', record(300));
    // Whey of a strained jar is not compared, and what is of unknown amount breaks nothing.
    must(session, 'portion.save', { portion: { ...pot, part: 'whey', amount: ml(600) } });
    must(session, 'portion.save', { portion: { ...pot, amount: null } });
  });

  it('is no more than a portion holds, in pieces and in mL', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const six = must(session, 'portion.save', { portion: { ...cubes, jar: jars[1] } }).id;
    const pot = must(session, 'portion.save', {
      portion: { ...cubes, place: 'fridge', pieces: null, amount: ml(100), jar: jars[1] },
    }).id;
    const record = (portion: string, amount: ReturnType<typeof ml> | ReturnType<typeof pieces>) =>
      batchOf('2026-03-12', [plainJar('a', { seedings: [{ ...fromJar(jars[1]), portion, amount }] })], {
        sameLabelMeant: true,
      });
    expect(refused(session, 'batch.record', record(six, pieces(8))).sentence).toBe(
      'That would be 8 of the 6 pieces that were kept of 5 Mar a. Correct an amount, or take the rest from another jar.',
    );
    must(session, 'batch.record', record(six, pieces(4)));
    expect(refused(session, 'batch.record', record(six, pieces(3))).code).toBe('more than portion');
    must(session, 'batch.record', record(pot, ml(60)));
    expect(refused(session, 'batch.record', record(pot, ml(60))).code).toBe('more than portion');
  });
});

describe('what is gone', () => {
  const moved = (session: Session, ...facts: object[]) =>
    must(session, 'facts.record', { facts: facts.map((one) => ({ kind: 'movement', ...one })) as never });
  it.each([
    ['gone', {}, 'gone'],
    ['given', {}, 'given away'],
    ['discarded', {}, 'discarded'],
  ])('(%s) is not moved, opened, eaten, given or kept of on a later day', (what, more, words) => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const jar = jars[2];
    moved(session, { jar, what, day: '2026-03-10', ...more });
    for (const after of ['opened', 'eaten', 'given', 'thawed', 'discarded'])
      expect(refused(session, 'facts.record', { facts: [{ kind: 'movement', jar, what: after, day: '2026-03-11' }] as never }).code).toBe('gone already'); // prettier-ignore
    const refusal = refused(session, 'portion.save', { portion: { ...cubes, jar, keptOn: '2026-03-12' } });
    expect(refusal.sentence).toBe(
      `9 Mar a was ${words} on 10 Mar 2026, so nothing of it was kept on 12 Mar 2026. Correct one of the days, or how much was ${words}.`,
    );
    // On that very day, before it, and of what was kept of it all that may be.
    moved(session, { jar, what: 'opened', day: '2026-03-10' });
    const pot = must(session, 'portion.save', { portion: { ...cubes, jar, keptOn: '2026-03-09' } }).id;
    moved(session, { portion: pot, what: 'thawed', day: '2026-03-13' });
    // Told late that it stood in the fridge before: it is gone all the same, and seeds nothing later.
    moved(session, { jar, what: 'fridge', day: '2026-03-09' });
    const { batch } = must(session, 'jar.get', { id: jar });
    const told = must(session, 'batch.get', { id: batch }).jars.find(({ jar: { id } }) => id === jar);
    expect(told?.jar.goneOn).toBe('2026-03-10');
    const child = batchOf('2026-03-12', [plainJar('a', { seedings: [fromJar(jar)] })]);
    expect(refused(session, 'batch.record', child).code).toBe('seed gone before');
    // There again after all: then it may.
    moved(session, { jar, what: 'still there', day: '2026-03-11' });
    moved(session, { jar, what: 'eaten', day: '2026-03-12' });
  });

  it('is not gone before what was noted of it, in whatever order it is told, undone or done again', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const jar = jars[2];
    const gone = moved(session, { jar, what: 'gone', at: '2026-03-10T08:00:00+01:00' });
    expect(refused(session, 'facts.record', { facts: [{ kind: 'movement', jar, what: 'eaten', at: '2026-03-10T20:00:00+01:00' }] as never }).code).toBe('gone already'); // prettier-ignore
    const undone = must(session, 'act.undo', { act: gone.act });
    moved(session, { jar, what: 'eaten', day: '2026-03-12' });
    expect(refused(session, 'act.undo', { act: undone.act }).code).toBe('gone already');
    expect(refused(session, 'jar.correct', { id: jar, changes: { goneOn: '2026-03-11' } }).code).toBe('gone already'); // prettier-ignore
    must(session, 'jar.correct', { id: jar, changes: { goneOn: '2026-03-12' } });
  });

  const looked = (jar: string, day: string) => ({
    facts: [{ kind: 'observation', jar, stage: 'later', day, setWord: 'firm' }] as never,
  });

  it.each(['gone', 'discarded'])('(%s) is seen no more, in whatever order it is told', (what) => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const jar = jars[2];
    const end = moved(session, { jar, what, day: '2026-03-10' });
    expect(refused(session, 'facts.record', looked(jar, '2026-03-11')).sentence).toBe(
      `9 Mar a was ${what} on 10 Mar 2026, so nothing of it was seen on 11 Mar 2026. Correct one of the days, or how much was ${what}.`,
    );
    must(session, 'facts.record', looked(jar, '2026-03-10'));
    const undone = must(session, 'act.undo', { act: end.act });
    must(session, 'facts.record', looked(jar, '2026-03-11'));
    expect(refused(session, 'act.undo', { act: undone.act }).code).toBe('gone already');
    expect(refused(session, 'facts.record', { facts: [{ kind: 'movement', jar, what, day: '2026-03-10' }] as never }).code).toBe('gone already'); // prettier-ignore
    moved(session, { jar, what, day: '2026-03-11' });
  });

  it('by all that was eaten of it is seen no more; of what was given away whoever has it may tell', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const [, , jar, given] = jars;
    moved(session, { jar, what: 'eaten', day: '2026-03-10', amount: ml(500) });
    must(session, 'facts.record', looked(jar, '2026-03-11'));
    moved(session, { jar, what: 'eaten', day: '2026-03-12', amount: ml(446) });
    const refusal = refused(session, 'facts.record', looked(jar, '2026-03-13'));
    expect(refusal.sentence).toBe(
      '9 Mar a was eaten up on 12 Mar 2026, so nothing of it was seen on 13 Mar 2026. Correct one of the days, or how much was eaten up.',
    );
    must(session, 'facts.record', looked(jar, '2026-03-12'));
    moved(session, { jar: given, what: 'given', day: '2026-03-10' });
    must(session, 'facts.record', looked(given, '2026-03-14'));
  });

  it('by all that was eaten of it is on the shelf no more, and to say so once more is no change', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const jar = jars[2];
    moved(session, { jar, what: 'still there', day: '2026-03-09' });
    moved(session, { jar, what: 'eaten', day: '2026-03-10', amount: ml(946) });
    const told = () => must(session, 'jar.get', { id: jar });
    expect([told().record.jar.onShelf, told().view.onShelf]).toEqual([false, false]);
    expect(refused(session, 'jar.correct', { id: jar, changes: { onShelf: false } }).code).toBe(
      'nothing changed',
    );
    // There after all: one word for both again.
    must(session, 'jar.correct', { id: jar, changes: { onShelf: true } });
    expect([told().record.jar.onShelf, told().view.onShelf]).toEqual([true, true]);
  });

  it('and cubes seed nothing before they were frozen', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const pot = must(session, 'portion.save', { portion: { ...cubes, place: 'fridge', jar: jars[1], keptOn: '2026-03-06' } }).id; // prettier-ignore
    moved(session, { portion: pot, what: 'freezer', day: '2026-03-11' });
    const record = (amount: ReturnType<typeof ml> | ReturnType<typeof pieces>) =>
      batchOf('2026-03-10', [plainJar('a', { seedings: [{ ...fromJar(jars[1]), portion: pot, amount }] })]);
    expect(refused(session, 'batch.record', record(pieces(2))).sentence).toContain('was frozen on 11 Mar 2026, so its cubes can’t have seeded'); // prettier-ignore
    must(session, 'batch.record', record(ml(40)));
  });
});

describe('a seed found to be spoiled', () => {
  const WHY = 'it was still clean when it was taken';
  /** 5 Mar a was seen to be pink on 14 Mar, and 9 Mar a hangs on it. */
  const spoiled = () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    must(session, 'outcome.save', { jar: jars[1], outcome: { ...unseen, signs: ['pink'] }, onShelf: false });
    return { session, condemned: jars[1], aside: jars[2] };
  };
  const child = (madeOn: string, from: string, why: string | null = null) => ({
    ...batchOf(madeOn, [plainJar('x', { seedings: [fromJar(from)] })]),
    why,
  });

  it('is asked about whenever a new jar is said to come from it, as one set aside is', () => {
    const { session, condemned, aside } = spoiled();
    const refusal = refused(session, 'batch.record', child('2026-03-08', condemned));
    expect(refusal.code).toBe('seed found spoiled');
    expect(refusal.sentence).toBe(
      '5 Mar a is known to be spoiled since 14 Mar 2026. That it seeded 8 Mar x before anyone saw that is recorded only once you write down how you know. What it seeded is set aside.',
    );
    expect(refused(session, 'batch.record', child('2026-03-12', aside)).code).toBe('seed set aside');
    expect(refused(session, 'batch.record', child('2026-03-14', condemned, WHY)).code).toBe('seed spoiled');
    must(session, 'batch.record', child('2026-03-08', condemned, WHY));
  });

  it('also where a seeding is corrected, told as a fact, or a planned jar is made', () => {
    const { session, condemned } = spoiled();
    const two = must(session, 'batch.record', batchOf('2026-03-12', [plainJar('p'), plainJar('q')]));
    const q = two.jars[1] ?? '';
    const fact = (why: string | null) =>
      ({ facts: [{ kind: 'seeding' as const, jar: q, fromJar: condemned }], why }) as never;
    expect(refused(session, 'facts.record', fact(null)).code).toBe('seed found spoiled');
    must(session, 'facts.record', fact(WHY));
    const session2 = newSession();
    const family = smallFamily(session2);
    const [later = ''] = must(session2, 'batch.record', batchOf('2026-03-12', [plainJar('p', { state: 'planned', seedings: [fromJar(family.jars[1])] })])).jars; // prettier-ignore
    must(session2, 'outcome.save', {
      jar: family.jars[1],
      outcome: { ...unseen, signs: ['pink'] },
      onShelf: null,
    });
    expect(refused(session2, 'jar.correct', { id: later, changes: { state: 'made' } }).code).toBe('seed found spoiled'); // prettier-ignore
    must(session2, 'jar.correct', { id: later, changes: { state: 'made' }, why: WHY });
    const seedings = must(session2, 'facts.list', { kind: 'seeding', of: family.jars[2] }).facts;
    must(session2, 'seeding.set', { jar: family.jars[3], seedings: [fromJar(family.jars[0])] });
    const of3 = must(session2, 'facts.list', { kind: 'seeding', of: family.jars[3] }).facts;
    expect([seedings.length, of3.length]).toEqual([1, 1]);
    const moved = { kind: 'seeding' as const, id: of3[0]?.id ?? '', changes: { fromJar: family.jars[1] } };
    expect(refused(session2, 'facts.correct', moved).code).toBe('seed found spoiled');
  });
});

describe('what is weighed', () => {
  const g = (value: number) => ({ value, unit: 'g' as const, typed: null });
  // 1 g of a culture, of curd or of whey is taken as 1 mL: ours, since such things are little denser than water.
  it('is held against what is measured, whichever of the two is a weight, and it is said', () => {
    const session = newSession();
    const weigh = (finalVolume: ReturnType<typeof g>) =>
      only(must(session, 'batch.record', { ...batchOf('2026-03-09', [plainJar('a', { finalVolume })]), sameLabelMeant: true }).jars); // prettier-ignore
    const jar = weigh(g(500));
    const pot = { ...cubes, place: 'fridge' as const, pieces: null, jar };
    expect(refused(session, 'portion.save', { portion: { ...pot, amount: ml(600) } }).sentence).toBe(
      '600 mL is more than 9 Mar a held (500 mL), so it can’t all be kept of it. 1 g is taken as 1 mL. Correct the amount or the volume.',
    );
    const kept = must(session, 'portion.save', { portion: { ...pot, part: 'curd', amount: g(300) } }).id;
    const seed = (amount: ReturnType<typeof g> | ReturnType<typeof ml>, portion: string | null) =>
      batchOf('2026-03-12', [plainJar('a', { seedings: [{ ...fromJar(jar), portion, amount }] })]);
    expect(refused(session, 'batch.record', seed(g(300), null)).code).toBe('taken more than jar');
    expect(refused(session, 'batch.record', seed(ml(400), kept)).code).toBe('more than portion');
    must(session, 'facts.record', { facts: [{ kind: 'movement', jar, what: 'eaten', day: '2026-03-10', amount: g(150) }] }); // prettier-ignore
    expect(refused(session, 'batch.record', seed(ml(100), null)).code).toBe('taken more than jar');
    expect(refused(session, 'jar.correct', { id: jar, changes: { finalVolume: g(400) } }).code).toBe('taken more than jar'); // prettier-ignore
    expect(refused(session, 'jar.correct', { id: jar, changes: { finalVolume: pieces(2) } }).sentence).toBe(
      'What 9 Mar a holds can’t be said in pieces. Say it in mL or g.',
    );
  });

  it('and kept in pieces goes by what one piece weighs', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const six = must(session, 'portion.save', { portion: { ...cubes, amount: g(120), jar: jars[1] } }).id;
    const taken = (amount: object, pieces: number | null = null) =>
      ({
        facts: [{ kind: 'movement', portion: six, what: 'eaten', day: '2026-03-10', amount, pieces }],
      }) as never;
    expect(refused(session, 'facts.record', taken(ml(160))).code).toBe('more than portion');
    must(session, 'facts.record', taken(ml(60)));
    expect(refused(session, 'facts.record', taken(g(20), 4)).code).toBe('more than portion');
    must(session, 'facts.record', taken(g(20), 3));
  });

  it('brings back no volume by undo or redo that is less than what was taken, nor too much seed of a jar that was a mistake', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const small = must(session, 'jar.correct', { id: jars[2], changes: { finalVolume: g(60) } });
    const undone = must(session, 'act.undo', { act: small.act });
    const seed = (amount: ReturnType<typeof g>) =>
      must(session, 'batch.record', batchOf('2026-03-12', [plainJar('a', { seedings: [{ ...fromJar(jars[2]), amount }] })])); // prettier-ignore
    const first = only(seed(g(600)).jars);
    expect(refused(session, 'act.undo', { act: undone.act }).code).toBe('seed more than jar');
    // It never was: what it took is there again, until somebody says that it was after all.
    const mistaken = must(session, 'jar.mistake', { id: first, why: 'entered twice' });
    seed(g(600));
    expect(refused(session, 'act.undo', { act: mistaken.act }).code).toBe('taken more than jar');
  });
});

describe('notes', () => {
  const HEAD = 'date,jar,seed,amount,volume,set,note';
  const bring = (session: Session, rows: readonly string[], answers: Record<string, string> = {}) => {
    const path = join(newFolder(), 'notes.csv');
    writeFileSync(path, [HEAD, ...rows].join('\n'));
    const input = { file: { path }, answers };
    const preview = session.answer('notes.preview', input);
    const brought = session.answer('notes.bringIn', input);
    if (!preview.ok || !brought.ok) throw new Error(JSON.stringify([preview, brought]));
    type Told = { problems: { row: number; sentence: string }[]; questions: { id: string; row: number | null; sentence: string }[]; jars: number }; // prettier-ignore
    const [first, second] = [preview.value as Told, brought.value as Told];
    expect(first.problems).toEqual(second.problems);
    return second;
  };

  it('that take 500 mL out of a jar of 100 mL leave that row aside, and what hangs on it', () => {
    const session = newSession();
    const told = bring(session, [
      '2026-02-01,a,Blue Tin,5 caps,100 ml,firm,',
      '2026-02-05,a,2026-02-01 a,500 ml,900 ml,firm,',
      '2026-02-05,b,2026-02-01 a,50 ml,900 ml,firm,',
      '2026-02-09,a,2026-02-05 a,50 ml,900 ml,firm,',
    ]);
    expect(told.jars).toBe(2);
    expect(told.problems[0]).toMatchObject({
      row: 3,
      sentence: '500 mL of seed is more than 1 Feb 2026 a holds (100 mL). Correct the amount or the volume.',
    });
    expect(told.problems.map(({ row }) => row)).toEqual([3, 5]);
    const weighed = bring(newSession(), ['2026-02-01,a,Blue Tin,5 caps,100 ml,firm,', '2026-02-05,a,2026-02-01 a,500 g,900 ml,firm,']); // prettier-ignore
    expect([weighed.jars, weighed.problems.map(({ row }) => row)]).toEqual([1, [3]]);
  });

  it('that take more in all leave aside what no longer fits, in the file and beside the ledger', () => {
    const session = newSession();
    const seed = '2026-02-01,a,Blue Tin,5 caps,100 ml,firm,';
    const child = (letter: string, day: string) => `${day},${letter},2026-02-01 a,45 ml,900 ml,firm,`;
    const three = [seed, ...['a', 'b', 'c'].map((letter) => child(letter, '2026-02-05'))];
    const told = bring(session, three);
    expect(told.jars).toBe(3);
    expect(told.problems.map(({ row, sentence }) => [row, sentence])).toEqual([
      [
        5,
        'Together 135 mL would be taken of 1 Feb 2026 a, which held 100 mL. Correct an amount or the volume.',
      ],
    ]);
    const longer = bring(session, [...three.slice(0, 3), child('a', '2026-02-06')]);
    expect([longer.jars, longer.problems.map(({ row }) => row)]).toEqual([0, [5]]);
  });

  it('that seed from a jar gone before then leave the row aside', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    must(session, 'jar.correct', { id: jars[2], changes: { goneOn: '2026-03-10' } });
    const told = bring(session, ['2026-03-12,a,2026-03-09 a,45 ml,900 ml,firm,']);
    expect(told.jars).toBe(0);
    expect(told.problems[0]?.sentence).toContain('9 Mar a was gone on 10 Mar 2026');
  });

  it('that seed from a jar known to be spoiled, or set aside, are asked about; the answer is kept with the act', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    must(session, 'outcome.save', { jar: jars[1], outcome: { ...unseen, signs: ['pink'] }, onShelf: false });
    const rows = [
      '2026-03-14,a,2026-03-05 a,45 ml,900 ml,firm,',
      '2026-03-14,b,2026-03-09 a,45 ml,900 ml,firm,',
      // Made before anyone knew, and told now that it is known: asked about all the same.
      '2026-03-10,c,2026-03-05 a,45 ml,900 ml,firm,',
      '2026-03-10,d,2026-03-09 a,45 ml,900 ml,firm,',
    ];
    const told = bring(session, rows);
    expect(told.jars).toBe(0);
    expect(told.problems.map(({ row }) => row)).toEqual([2, 3, 4, 5]);
    expect(told.questions.filter(({ id }) => id.startsWith('word')).map(({ id }) => id)).toEqual(['word:2', 'word:3', 'word:4', 'word:5']); // prettier-ignore
    expect(told.problems[2]?.sentence).toContain('That it seeded 10 Mar 2026 c before anyone saw that');
    expect(told.problems[0]?.sentence).toContain('5 Mar a is known to be spoiled since 14 Mar 2026');
    expect(told.problems[1]?.sentence).toContain('9 Mar a is set aside because of 5 Mar a');
    const answered = bring(session, rows, {
      'word:2': 'it was so',
      'word:3': 'leave',
      'word:4': 'leave',
      'word:5': 'leave',
    });
    expect(answered.jars).toBe(1);
    const { acts } = must(session, 'history.list', { record: null, before: null, limit: 1 });
    expect(acts[0]?.why).toContain('Row 2, said to be so: 5 Mar a is known to be spoiled');
    const family = must(session, 'family.get', {}).jars;
    expect(family.find(({ label }) => label === '14 Mar a')?.cautions[0]?.how).toContain('set aside');
  });
});
