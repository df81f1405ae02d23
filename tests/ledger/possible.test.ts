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
} from './helpers';

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
  it.each([0.5, 1.9, 9.1, 14])('of %s is refused, at take-out and at the early check', (ph) => {
    const session = newSession();
    const { jars } = smallFamily(session);
    for (const field of ['ph', 'earlyPh'] as const) {
      const refused = refusalOf(session, 'outcome.save', {
        jar: jars[2], outcome: { ...unseen, [field]: ph }, onShelf: null,
      }); // prettier-ignore
      expect(refused.code).toBe('pH impossible');
      expect(refused.sentence).toContain(`${ph} can’t be the pH of a jar`);
    }
  });
  it.each([3.2, 4.6, 6.7])('of %s is taken', (ph) => {
    const session = newSession();
    const { jars } = smallFamily(session);
    must(session, 'outcome.save', { jar: jars[2], outcome: { ...unseen, ph }, onShelf: null });
  });
});
