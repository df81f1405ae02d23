// What a spoiled jar may no longer be, told to the ledger by any caller. That a spoiled jar is neither food nor seed:
// common practice, no source.
import { describe, expect, it } from 'vitest';
import { batchOf, fromJar, must, newSession, openSession, newFile, plainJar, refusalOf, smallFamily, unseen } from './ledger-files'; // prettier-ignore

const TODAY = '2026-03-14';
const pink = { ...unseen, signs: ['pink' as const] };
const reserve = {
  id: null, part: null, place: 'freezer' as const, pieces: 6, amount: null, keptOn: TODAY, goneOn: null, reserve: true, note: null,
}; // prettier-ignore

describe('a spoiled jar', () => {
  it('seeds nothing that was made once it was known, by any call', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    must(session, 'outcome.save', { jar: jars[1], outcome: pink, onShelf: false });
    const seedings = [fromJar(jars[1])];
    const refused = refusalOf(session, 'batch.record', batchOf(TODAY, [plainJar('a', { seedings })]));
    expect(refused.code).toBe('seed spoiled');
    expect(refused.sentence).toMatch(/^5 Mar a is known to be spoiled since .*: not food and not seed\./);
    const plain = must(session, 'batch.record', batchOf(TODAY, [plainJar('a', { seedings: [fromJar(jars[0])] })])); // prettier-ignore
    expect(refusalOf(session, 'seeding.set', { jar: plain.jars[0] ?? '', seedings }).code).toBe(
      'seed spoiled',
    );
    const { hold: _hold, ...more } = { ...plainJar('b', { seedings }) };
    expect(
      refusalOf(session, 'batch.addJar', { batch: plain.batch, jar: { ...more, hold: null }, sameLabelMeant: false }).code, // prettier-ignore
    ).toBe('seed spoiled');
  });

  it('may be written down as the seed of an earlier day, which its caution needs', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    must(session, 'outcome.save', { jar: jars[1], outcome: pink, onShelf: false });
    const child = batchOf('2026-03-10', [plainJar('a', { seedings: [fromJar(jars[1])] })]);
    // Asked about, as for a jar set aside: that it is spoiled is known now.
    expect(refusalOf(session, 'batch.record', child).code).toBe('seed found spoiled');
    const history = must(session, 'batch.record', { ...child, why: 'taken before anyone saw it' });
    expect(must(session, 'jar.get', { id: history.jars[0] ?? '' }).view.caution).toBe('set aside');
  });

  it('counts as known from the day it was told, not from a later word about it', () => {
    const file = newFile();
    const first = openSession(file, 'create', '2026-03-14T09:00:00+01:00');
    const { jars } = smallFamily(first);
    must(first, 'outcome.save', { jar: jars[1], outcome: pink, onShelf: false });
    first.close();
    const later = openSession(file, 'open', '2026-03-20T09:00:00+01:00');
    must(later, 'outcome.save', { jar: jars[1], outcome: { ...pink, smell: 'odd' }, onShelf: null });
    const record = batchOf('2026-03-16', [plainJar('a', { seedings: [fromJar(jars[1])] })]);
    expect(refusalOf(later, 'batch.record', record).code).toBe('seed spoiled');
    must(later, 'outcome.save', { jar: jars[1], outcome: { ...unseen, setAtTakeOut: true }, onShelf: null });
    must(later, 'batch.record', record);
    later.close();
  });

  it('is not kept back as a reserve; what was kept before may be said to be gone', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const kept = must(session, 'portion.save', { portion: { ...reserve, jar: jars[1] } }).id;
    must(session, 'outcome.save', { jar: jars[1], outcome: pink, onShelf: false });
    const refused = refusalOf(session, 'portion.save', { portion: { ...reserve, jar: jars[1] } });
    expect(refused.code).toBe('reserve spoiled');
    expect(refused.sentence).toContain('5 Mar a is spoiled');
    const gone = { ...reserve, jar: jars[1], id: kept, goneOn: TODAY };
    must(session, 'portion.save', { portion: { ...reserve, jar: jars[1], id: kept, note: 'four left' } });
    must(session, 'portion.save', { portion: gone });
    expect(refusalOf(session, 'portion.save', { portion: { ...gone, goneOn: null } }).code).toBe(
      'reserve spoiled',
    );
  });

  it('is entered by mistake only with a reason, which is kept', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    must(session, 'outcome.save', { jar: jars[1], outcome: pink, onShelf: false });
    expect(refusalOf(session, 'jar.mistake', { id: jars[1] }).code).toBe('reason needed');
    expect(refusalOf(session, 'jar.mistake', { id: jars[1], why: '  ' }).sentence).toMatch(
      /cautions because of it would fall away\. Write a few words/,
    );
    must(session, 'jar.mistake', { id: jars[1], why: 'noted under the wrong jar' });
    const { acts } = must(session, 'history.list', { record: null, before: null, limit: 1 });
    expect(acts[0]).toMatchObject({ why: 'noted under the wrong jar' });
    must(session, 'jar.mistake', { id: jars[3] });
  });
});

it('a reason given on recording a batch is kept with the act', () => {
  const session = newSession();
  must(session, 'batch.record', {
    ...batchOf(TODAY, [plainJar('a')]),
    why: 'opened before the other spoiled',
  });
  const { acts } = must(session, 'history.list', { record: null, before: null, limit: 1 });
  expect(acts[0]).toMatchObject({ why: 'opened before the other spoiled' });
});

it('an undo that is refused says each later act once, also one that was undone and done again', () => {
  const session = newSession();
  const { jars } = smallFamily(session);
  must(session, 'jar.correct', { id: jars[0], changes: { milk: 'whole' }, why: null });
  for (let times = 0; times < 2; times += 1) {
    must(session, 'act.undo', { act: null });
    must(session, 'act.redo', {});
  }
  const { acts } = must(session, 'history.list', { record: null, before: null, limit: 20 });
  const first = acts.find(({ says }) => says === 'recorded 1 Mar a')?.act ?? '';
  expect(refusalOf(session, 'act.undo', { act: first }).sentence).toBe(
    'Later records stand on it: recorded 5 Mar a, corrected 1 Mar a. Undo or change those first.',
  );
});
