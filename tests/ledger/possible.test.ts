// What can't be is refused with a sentence, whoever says it. Days and volumes: arithmetic. The reach of a pH: fresh milk
// has about 6.7 and soured milk about 4 (from memory); refused is only what is far outside.
import { describe, expect, it } from 'vitest';
import {
  batchOf,
  fromJar,
  must,
  newSession,
  plainJar,
  refusalOf,
  smallFamily,
  stateOf,
  unseen,
} from './ledger-files';

const TODAY = '2026-03-14';
const cubes = {
  id: null, part: null, place: 'freezer' as const, pieces: 6, amount: null, keptOn: '2026-03-10', goneOn: null,
  reserve: true, note: null,
}; // prettier-ignore
const ml = (value: number) => ({ value, unit: 'mL' as const, typed: null });

describe('a batch', () => {
  it.each([
    ['2027-03-01', 'day to come', '1 Mar 2027 is still to come'],
    ['2026-03-15', 'day to come', 'Mark the jars as planned'],
    ['1900-01-01', 'day long past', 'too long ago'],
    ['1989-12-31', 'day long past', 'Correct the day'],
  ])('of %s: %s', (day, code, words) => {
    const session = newSession();
    const before = stateOf(session);
    const refused = refusalOf(session, 'batch.record', batchOf(day, [plainJar('a')]));
    expect(refused.code).toBe(code);
    expect(refused.sentence).toContain(words);
    expect(stateOf(session)).toBe(before);
  });

  it('of today is taken, and one of a day to come whose jars are planned; not moved or filled with made ones', () => {
    const session = newSession();
    const today = must(session, 'batch.record', batchOf(TODAY, [plainJar('a')])).batch;
    const later = must(session, 'batch.record', batchOf('2026-04-01', [plainJar('a', { state: 'planned' })]));
    expect(refusalOf(session, 'batch.correct', { id: today, changes: { madeOn: '2026-04-02' } }).code).toBe(
      'day to come',
    );
    expect(
      refusalOf(session, 'batch.addJar', { batch: later.batch, jar: { ...plainJar('b'), hold: null }, sameLabelMeant: false }).code, // prettier-ignore
    ).toBe('day to come');
    expect(
      refusalOf(session, 'jar.correct', { id: later.jars[0] ?? '', changes: { state: 'made' } }).code,
    ).toBe('day to come');
    must(session, 'batch.correct', { id: later.batch, changes: { madeOn: '2026-04-05' } });
  });
});

describe('what is kept of a jar', () => {
  it('is kept on its day or later, and not on a day to come', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const save = (keptOn: string) => ({ portion: { ...cubes, jar: jars[2], keptOn } });
    const early = refusalOf(session, 'portion.save', save('2026-03-08'));
    expect(early.code).toBe('kept before made');
    expect(early.sentence).toBe(
      '9 Mar a was made on 9 Mar 2026, so nothing of it was kept on 8 Mar 2026. Correct one of the days.',
    );
    expect(refusalOf(session, 'portion.save', save('2026-03-15')).code).toBe('kept day to come');
    must(session, 'portion.save', save('2026-03-09'));
    must(session, 'portion.save', save(TODAY));
  });

  it('seeds no jar of an earlier day: not newly, and not by moving either day', () => {
    const session = newSession();
    const { jars, batches } = smallFamily(session);
    const [, second] = jars;
    const kept = must(session, 'portion.save', {
      portion: { ...cubes, jar: second, keptOn: '2026-03-12' },
    }).id;
    const seeding = { ...fromJar(second), portion: kept };
    const refused = refusalOf(session, 'batch.record', batchOf('2026-03-11', [plainJar('a', { seedings: [seeding] })])); // prettier-ignore
    expect(refused.code).toBe('portion kept later');
    expect(refused.sentence).toContain('kept on 12 Mar 2026, so it can’t have seeded');
    const made = must(
      session,
      'batch.record',
      batchOf('2026-03-13', [plainJar('a', { seedings: [seeding] })]),
    );
    expect(
      refusalOf(session, 'batch.correct', { id: made.batch, changes: { madeOn: '2026-03-11' } }).code,
    ).toBe('portion kept later');
    const portion = { ...cubes, id: kept, jar: second };
    expect(refusalOf(session, 'portion.save', { portion: { ...portion, keptOn: TODAY } }).code).toBe(
      'portion kept later',
    );
    expect(refusalOf(session, 'seeding.set', { jar: jars[2], seedings: [seeding] }).code).toBe(
      'portion kept later',
    );
    must(session, 'portion.save', { portion: { ...portion, keptOn: '2026-03-13' } });
    // The jar's own day may not move past what was kept of it either.
    const early = must(session, 'portion.save', {
      portion: { ...cubes, jar: jars[3], keptOn: '2026-03-09' },
    });
    expect(early.id).toBeDefined();
    expect(
      refusalOf(session, 'batch.correct', { id: batches[2] ?? '', changes: { madeOn: '2026-03-10' } }).code,
    ).toBe('kept before made');
  });
});

describe('how much is kept of a jar', () => {
  const pot = { ...cubes, place: 'fridge' as const, pieces: null };
  it('is no more than it held, and not nothing; it may be unknown, and whey of a strained jar may be more', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const before = stateOf(session);
    const save = (more: object) => ({ portion: { ...pot, jar: jars[2], ...more } });
    expect(refusalOf(session, 'portion.save', save({ amount: ml(2000) })).sentence).toBe(
      '2000 mL is more than 9 Mar a held (946 mL), so it can’t all be kept of it. Correct the amount or the volume.',
    );
    expect(refusalOf(session, 'portion.save', save({ amount: ml(0) })).sentence).toContain(
      'Leave the amount out where it is not known; where it is used up, say on which day it was gone.',
    );
    expect(stateOf(session)).toBe(before);
    const weighed = { value: 2000, unit: 'g' as const, typed: null };
    expect(refusalOf(session, 'portion.save', save({ amount: weighed })).sentence).toContain('1 g is taken as 1 mL'); // prettier-ignore
    for (const amount of [null, ml(946)]) must(session, 'portion.save', save({ amount }));
    must(session, 'portion.save', save({ amount: ml(2000), part: 'whey' }));
  });

  it('bounds what the jar may be said to have held; where that is not known nothing is compared', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const [, , jar] = jars;
    const { id } = must(session, 'portion.save', { portion: { ...pot, jar, amount: ml(400) } });
    const volume = (finalVolume: ReturnType<typeof ml> | null) => ({ id: jar, changes: { finalVolume } });
    expect(refusalOf(session, 'jar.correct', volume(ml(350))).code).toBe('portion more than jar');
    must(session, 'jar.correct', volume(null));
    const large = { ...pot, id, jar, amount: ml(2000) };
    must(session, 'portion.save', { portion: large });
    // What is only said to be gone is not measured anew.
    must(session, 'portion.save', { portion: { ...large, goneOn: TODAY } });
  });
});

describe('a jar that is gone', () => {
  it.each([
    ['2026-03-08', 'gone before made', '9 Mar 2026, so it was not gone on 8 Mar 2026'],
    ['2026-03-15', 'gone day to come', '15 Mar 2026 is still to come, so nothing is gone by then yet'],
  ])('on %s: %s', (goneOn, code, words) => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const before = stateOf(session);
    for (const refused of [
      refusalOf(session, 'jar.correct', { id: jars[2], changes: { onShelf: false, goneOn } }),
      refusalOf(session, 'batch.record', batchOf('2026-03-09', [plainJar('x', { onShelf: false, goneOn })])),
    ]) {
      expect(refused.code).toBe(code);
      expect(refused.sentence).toContain(words);
    }
    expect(stateOf(session)).toBe(before);
    must(session, 'jar.correct', { id: jars[2], changes: { onShelf: false, goneOn: '2026-03-09' } });
    must(session, 'jar.correct', { id: jars[2], changes: { goneOn: TODAY } });
  });

  it('was made no later than that, also when its batch is moved', () => {
    const session = newSession();
    const { jars, batches } = smallFamily(session);
    must(session, 'jar.correct', { id: jars[2], changes: { onShelf: false, goneOn: '2026-03-10' } });
    const move = (madeOn: string) => ({ id: batches[2] ?? '', changes: { madeOn } });
    expect(refusalOf(session, 'batch.correct', move('2026-03-11')).code).toBe('gone before made');
    must(session, 'batch.correct', move('2026-03-10'));
  });

  it('is not on the shelf: both at once are refused, and of one after the other the last holds', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const [, , id] = jars;
    const kept = () => {
      const { jar } = must(session, 'jar.get', { id }).record;
      return [jar.onShelf, jar.goneOn];
    };
    const both = { onShelf: true, goneOn: '2026-03-12' };
    expect(refusalOf(session, 'jar.correct', { id, changes: both }).sentence).toBe(
      '9 Mar a is said to be on the shelf and to be gone. Take one of the two away.',
    );
    expect(refusalOf(session, 'batch.record', batchOf('2026-03-11', [plainJar('a', both)])).code).toBe(
      'on the shelf and gone',
    );
    must(session, 'jar.correct', { id, changes: { onShelf: true } });
    must(session, 'jar.correct', { id, changes: { goneOn: '2026-03-12' } });
    expect(kept()).toEqual([false, '2026-03-12']);
    must(session, 'jar.correct', { id, changes: { onShelf: true } });
    expect(kept()).toEqual([true, null]);
    must(session, 'jar.correct', { id, changes: { onShelf: false, goneOn: '2026-03-12' } });
    must(session, 'outcome.save', { jar: id, outcome: unseen, onShelf: true });
    expect(kept()).toEqual([true, null]);
  });

  it('nor is what was kept of it gone on a day to come', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const save = (goneOn: string) => ({ portion: { ...cubes, jar: jars[2], goneOn } });
    expect(refusalOf(session, 'portion.save', save('2026-04-14')).code).toBe('gone day to come');
    must(session, 'portion.save', save(TODAY));
  });
});

describe('the end of a hold that is still to come', () => {
  // The clock of these tests stands at 18:30 on 14 March.
  const holdUntil = (endedAt: string | null) => ({
    startedAt: '2026-03-13T20:00:00+01:00', endedAt, hours: null, planned: null, probe: null, readings: [],
    note: null,
  }); // prettier-ignore
  const LATER = '2026-03-15T08:00:00+01:00';
  const set = { ...unseen, setAtTakeOut: true };
  const record = (outcome: typeof unseen | null, endedAt: string) =>
    batchOf('2026-03-13', [plainJar('a', { hold: 0, outcome })], { holds: [holdUntil(endedAt)] });

  it('is refused beside a jar that was set at take-out, and says which', () => {
    const session = newSession();
    const refused = refusalOf(session, 'batch.record', record(set, LATER));
    expect(refused.code).toBe('taken out before the end');
    expect(refused.sentence).toBe(
      'The time in warmth ends on 15 Mar 2026 at 08:00, which is still to come, but 13 Mar a is said to have been set when it was taken out. Correct the end, or leave it out.',
    );
    // Within the hour ahead the clock is rounded to, and no further.
    expect(refusalOf(session, 'batch.record', record(set, '2026-03-14T20:00:00+01:00')).code).toBe(
      refused.code,
    );
    const done = must(session, 'batch.record', record(set, '2026-03-14T19:00:00+01:00'));
    const [jar = ''] = done.jars;
    const id = must(session, 'batch.get', { id: done.batch }).holds[0]?.id ?? '';
    expect(refusalOf(session, 'hold.correct', { id, changes: { endedAt: LATER } }).code).toBe(refused.code);
    const more = { batch: done.batch, jars: [jar] };
    expect(refusalOf(session, 'batch.addHold', { ...more, hold: holdUntil(LATER) }).code).toBe(refused.code);
    must(session, 'batch.addHold', { ...more, hold: holdUntil(null) });
  });

  it('is a plan where nothing was taken out; what is seen then is taken, whatever the plan was', () => {
    const session = newSession();
    const early = { ...unseen, earlyCheckHours: 12, earlySour: true };
    const spoiled = { ...unseen, signs: ['lifted lid' as const] };
    for (const outcome of [null, early, spoiled]) {
      const { jars } = must(session, 'batch.record', { ...record(outcome, LATER), sameLabelMeant: true });
      must(session, 'outcome.save', { jar: jars[0] ?? '', outcome: set, onShelf: null });
    }
  });
});

describe('a set time', () => {
  it('beyond the hold is taken: hours are counted from its start, and a jar may set after take-out', () => {
    const session = newSession();
    const hold = { startedAt: null, endedAt: null, hours: 36, planned: null, probe: null, readings: [], note: null }; // prettier-ignore
    const outcome = { ...unseen, setAfterHours: 40, setByHours: 44 };
    must(session, 'batch.record', batchOf('2026-03-12', [plainJar('a', { hold: 0, outcome })], { holds: [hold] })); // prettier-ignore
  });
});

describe('milk', () => {
  it('may be more than the jar holds: it is boiled down before, or strained after', () => {
    const session = newSession();
    must(session, 'batch.record', batchOf(TODAY, [plainJar('a', { milkAmount: ml(1900) })]));
  });
});

describe('seed', () => {
  it('is no more than the jar holds, alone or together, nor more than its own jar held', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const small = plainJar('a', { finalVolume: ml(250) });
    const record = (seedings: ReturnType<typeof fromJar>[], jar = small) =>
      batchOf(TODAY, [{ ...jar, seedings }]);
    const refused = refusalOf(session, 'batch.record', record([fromJar(jars[2], 2000)], plainJar('a')));
    expect(refused.code).toBe('seed more than jar');
    expect(refused.sentence).toBe(
      '2000 mL of seed is more than 9 Mar a holds (946 mL). Correct the amount or the volume.',
    );
    expect(
      refusalOf(session, 'batch.record', record([fromJar(jars[2], 150), fromJar(jars[3], 150)])).sentence,
    ).toContain('300 mL of seed is more than');
    const done = must(session, 'batch.record', record([fromJar(jars[2], 100), fromJar(jars[3], 150)]));
    const id = done.jars[0] ?? '';
    expect(refusalOf(session, 'seeding.set', { jar: id, seedings: [fromJar(jars[2], 300)] }).code).toBe(
      'seed more than jar',
    );
    expect(refusalOf(session, 'jar.correct', { id, changes: { finalVolume: ml(200) } }).code).toBe(
      'seed more than jar',
    );
    // Where the volume is not known nothing is compared.
    must(session, 'jar.correct', { id, changes: { finalVolume: null } });
    must(session, 'seeding.set', { jar: id, seedings: [fromJar(jars[2], 300)] });
  });
});

describe('a pH', () => {
  it.each([-1, 0.5, 1.9, 9.1, 14, 44])('of %s is refused, at take-out and at the early check', (ph) => {
    const session = newSession();
    const { jars } = smallFamily(session);
    for (const field of ['ph', 'earlyPh'] as const) {
      const refused = refusalOf(session, 'outcome.save', {
        jar: jars[2], outcome: { ...unseen, [field]: ph }, onShelf: null,
      }); // prettier-ignore
      expect(refused.code).toBe('pH impossible');
      expect(refused.sentence).toBe(
        `${ph} can’t be the pH of a jar: it lies between 2 and 9. Check the reading, or leave it out.`,
      );
    }
  });
  it.each([3.2, 4.6, 6.7])('of %s is taken', (ph) => {
    const session = newSession();
    const { jars } = smallFamily(session);
    must(session, 'outcome.save', { jar: jars[2], outcome: { ...unseen, ph }, onShelf: null });
  });
});
