// The shelf through its calls on a real ledger: what each verb makes of it, what is asked first, and that each can be undone.
import { afterAll, describe, expect, it } from 'vitest';
import type { Reply, WriteName } from '../../core/contract';
import {
  ask, batchOf, FIRM, fromJar, fromSource, must, newSession, NOW, plainJar, plainSource, refusalOf, unseen,
} from '../ledger/ledger-files'; // prettier-ignore

type Item = Reply<'shelf.get'>['items'][number];
const TODAY = NOW.slice(0, 10);

const session = newSession();
afterAll(() => session.close());
const source = must(session, 'source.save', plainSource('Blue Tin')).id;
const first = must(
  session,
  'batch.record',
  batchOf('2026-03-09', [
    plainJar('a', { seedings: [fromSource(source)], outcome: FIRM }),
    plainJar('b', { seedings: [fromSource(source)], outcome: FIRM }),
  ]),
);
const [a = '', b = ''] = first.jars;

const shelf = (): Reply<'shelf.get'> => must(session, 'shelf.get', {});
const find = (id: string): Item | undefined => shelf().items.find((item) => item.id === id);
const item = (id: string): Item => {
  const found = find(id);
  if (!found) throw new Error(`${id} is not on the shelf`);
  return found;
};
/** Does something, looks, and takes it back: then all is as before. */
function tried(done: () => { act: string }, look: () => void): void {
  const before = shelf();
  done();
  look();
  must(session, 'act.undo', { act: null });
  expect(shelf()).toEqual(before);
}
const ml = (value: number) => ({ value, unit: 'mL' as const, typed: null });

describe('each verb', () => {
  it('begins with all that exists, in order, and what it carries', () => {
    const { items, sentence, reason, today } = shelf();
    expect(today).toBe(TODAY);
    expect(items.map(({ label }) => label)).toEqual(['9 Mar a', '9 Mar b']);
    expect(items[0]).toMatchObject({
      place: 'fridge', group: 'eat', age: 5, opened: null, left: { amount: { value: 946, unit: 'mL' }, share: 1 },
      // Common practice, no source: 14 days unopened.
      eatBy: { on: '2026-03-23' }, seedBy: { on: '2026-03-23', until: '2026-03-30' }, verbs: ['eat', 'give', 'freeze', 'open', 'keep', 'discard'],
    }); // prettier-ignore
    expect(sentence).toMatch(/^Eat 9 Mar [ab]/);
    expect(reason).not.toBe('');
    for (const words of [sentence, reason]) expect(words.split(' ').length).toBeLessThanOrEqual(20);
  });

  it('is opened with nothing seen: that is a look, also of what is open already', () => {
    const looks = () => must(session, 'facts.list', { kind: 'observation', of: a }).facts;
    tried(
      () => must(session, 'shelf.open', { id: a, looked: true }),
      () => {
        expect(item(a)).toMatchObject({ opened: { on: TODAY, by: 'opened' } });
        expect(looks()).toContainEqual(expect.objectContaining({ stage: 'opened', looked: true, daysOpen: 0, day: TODAY }));
      },
    );
    tried(
      () => must(session, 'shelf.open', { id: a }),
      () =>
        tried(
          () => must(session, 'shelf.open', { id: a, looked: true }),
          () => expect(looks()).toContainEqual(expect.objectContaining({ stage: 'later', looked: true, daysOpen: 0 })),
        ),
    );
  }); // prettier-ignore

  it('opens, and eats some or all', () => {
    tried(
      () => must(session, 'shelf.open', { id: a }),
      () => expect(item(a)).toMatchObject({ opened: { on: TODAY, by: 'opened' }, eatBy: { on: '2026-03-19' } }),
    );
    tried(
      () => must(session, 'shelf.eat', { id: a, amount: ml(200) }),
      () =>
        expect(item(a)).toMatchObject({ opened: { on: TODAY }, left: { amount: { value: 746 }, pieces: null } }),
    );
    tried(
      () => must(session, 'shelf.eat', { id: a }),
      () => expect(item(a).left).toMatchObject({ amount: null, share: null }),
    );
    tried(
      () => must(session, 'shelf.eat', { id: a, all: true }),
      () => {
        expect(find(a)).toBeUndefined();
        expect(refusalOf(session, 'shelf.eat', { id: a }).code).toBe('nothing left');
      },
    );
    expect(refusalOf(session, 'shelf.eat', { id: a, amount: ml(2000) }).code).toBe('taken more than jar');
    expect(refusalOf(session, 'shelf.eat', { id: a, pieces: 2 }).code).toBe('not kept so');
  }); // prettier-ignore

  it('freezes into cubes, thaws some of them, and does not freeze those again', () => {
    const before = shelf();
    const { made } = must(session, 'shelf.freeze', { id: a, into: 12 });
    expect(find(a)).toBeUndefined();
    expect(item(made ?? '')).toMatchObject({
      name: '12 cubes of 9 Mar a', place: 'freezer', form: 'cubes', left: { pieces: 12, share: 1 },
      eatBy: { on: '2026-05-13', because: 'frozen' }, seedBy: { on: '2026-06-12' },
    }); // prettier-ignore
    const thawed = must(session, 'shelf.thaw', { id: made ?? '', pieces: 2 }).made ?? '';
    expect(item(made ?? '').left.pieces).toBe(10);
    expect(item(thawed)).toMatchObject({
      name: '2 thawed cubes of 9 Mar a', place: 'fridge', thawed: true, eatBy: { on: '2026-03-17', because: 'thawed' },
    }); // prettier-ignore
    expect(refusalOf(session, 'shelf.freeze', { id: thawed }).code).toBe('thawed before');
    must(session, 'shelf.eat', { id: thawed, pieces: 1 });
    expect(item(thawed).left.pieces).toBe(1);
    must(session, 'shelf.eat', { id: thawed, all: true });
    expect(find(thawed)).toBeUndefined();
    expect(refusalOf(session, 'shelf.eat', { id: made ?? '', pieces: 11 }).sentence).toContain('10 left');
    for (let acts = 0; acts < 4; acts += 1) must(session, 'act.undo', { act: null });
    expect(shelf()).toEqual(before);
    tried(
      () => must(session, 'shelf.freeze', { id: a, into: 4, amount: ml(200), forSeed: true }),
      () => {
        expect(item(a)).toMatchObject({ left: { amount: { value: 746 } }, opened: { on: TODAY } });
        expect(shelf().items.find(({ reserve }) => reserve)).toMatchObject({ group: 'seed', form: 'cubes' });
      },
    );
    tried(
      () => must(session, 'shelf.freeze', { id: a }),
      () => expect(item(a)).toMatchObject({ place: 'freezer', verbs: ['give', 'thaw', 'keep', 'discard'] }),
    );
  });

  it('gives, with a name that is kept and what the jar needs on its way', () => {
    tried(
      () => {
        const done = must(session, 'shelf.give', { id: a, all: true, to: 'the hillside club' });
        expect(done.caution).toContain('two hours');
        return done;
      },
      () => {
        expect(find(a)).toBeUndefined();
        expect(shelf().given).toMatchObject([
          { label: '9 Mar a', to: 'the hillside club', on: TODAY, by: '2026-03-21', discard: null },
        ]);
      },
    );
  });

  it('keeps a jar for seed, unopened, and warns before it is opened, eaten, given or frozen into cubes', () => {
    const before = shelf();
    const { made } = must(session, 'shelf.keep', { id: a });
    const id = made ?? '';
    expect(find(a)).toBeUndefined();
    // It stays as old as the jar.
    expect(item(id)).toMatchObject({ name: '9 Mar a', form: 'jar', group: 'seed', seedBy: { on: '2026-03-23' } });
    const calls: [WriteName, object][] = [
      ['shelf.open', {}], ['shelf.eat', {}], ['shelf.give', { all: true }], ['shelf.freeze', { into: 6 }],
    ]; // prettier-ignore
    for (const [name, more] of calls) {
      const refused = refusalOf(session, name, { id, ...more } as never);
      expect([name, refused.code]).toEqual([name, 'kept for seed']);
      expect(refused.sentence).toContain('take the seed first');
    }
    must(session, 'shelf.open', { id, meant: true });
    expect(item(id).opened).toEqual({ on: TODAY, by: 'opened' });
    // It seeds as what it is: the jar's own descendant.
    const next = must(session, 'batch.record', batchOf(TODAY, [plainJar('a', { seedings: [{ ...fromJar(a), portion: id }] })]));
    expect(must(session, 'jar.get', { id: next.jars[0] ?? '' }).view.generation.deepest).toBe(2);
    for (let acts = 0; acts < 3; acts += 1) must(session, 'act.undo', { act: null });
    expect(shelf()).toEqual(before);
    must(session, 'shelf.open', { id: b });
    expect(refusalOf(session, 'shelf.keep', { id: b }).code).toBe('opened before');
    must(session, 'act.undo', { act: null });
  }); // prettier-ignore

  it('warns before the last of a line is eaten up, given or discarded, and not while another is there', () => {
    tried(
      () => must(session, 'shelf.discard', { id: b, why: 'nobody likes it' }),
      () => {
        expect(item(a).lastOf[0]).toContain('9 Mar a is the last that carries');
        for (const name of ['shelf.eat', 'shelf.give', 'shelf.discard'] as const)
          expect(refusalOf(session, name, { id: a, all: true } as never).code).toBe(name === 'shelf.discard' ? 'invalid' : 'last of a line'); // prettier-ignore
        expect(refusalOf(session, 'shelf.discard', { id: a }).code).toBe('last of a line');
        must(session, 'shelf.eat', { id: a, amount: ml(100) });
        must(session, 'shelf.eat', { id: a, all: true, meant: true });
        expect(shelf()).toMatchObject({ items: [], sentence: 'Nothing is kept.' });
        must(session, 'act.undo', { act: null });
        must(session, 'act.undo', { act: null });
      },
    );
  });

  it('asks once for all of which nobody said anything, and takes one answer for as many as are marked', () => {
    expect(shelf().asked?.ids).toEqual([a, b]);
    tried(
      () => must(session, 'shelf.answer', { answers: [{ id: a, what: 'still there' }, { id: b, what: 'eaten up' }] }),
      () => {
        expect(shelf().asked).toBeNull();
        expect(shelf().items.map(({ id }) => id)).toEqual([a]);
      },
    );
  }); // prettier-ignore

  it('suggests what a note says became of it, and takes it for said by nobody: it stays on the shelf, as safe or unsafe as it was', () => {
    tried(
      () => must(session, 'jar.correct', { id: b, changes: { note: 'binned on Sunday' } }),
      () => {
        expect(item(b)).toMatchObject({ asked: true, suggests: { what: 'discarded', says: 'Its note says: “binned on Sunday”.' } });
        expect(item(a).suggests).toBeNull();
        expect(item(b).safety.eat).toBe(false);
      },
    );
  }); // prettier-ignore

  it('keeps the keeper’s own days', () => {
    tried(
      () => must(session, 'shelf.limits', { limits: { eatFridge: 10, seedFridge: 30 } }),
      () => {
        expect(shelf().limits).toMatchObject({ eatFridge: 10, eatOpened: 5, seedFridge: 30 });
        // Seed may be used for 21 days at most, as the preferences say.
        expect(item(a)).toMatchObject({ eatBy: { on: '2026-03-19' }, seedBy: { on: '2026-03-30' } });
        must(session, 'shelf.limits', { limits: { eatFridge: null } });
        expect(shelf().limits.eatFridge).toBe(14);
        must(session, 'act.undo', { act: null });
      },
    );
  });
});

describe('what is no food', () => {
  it('is not eaten or given, and where it was eaten already it says what to do and whom to ask, without a diagnosis', () => {
    must(session, 'shelf.eat', { id: b, amount: ml(100) });
    must(session, 'outcome.save', {
      jar: a, onShelf: null, outcome: { ...FIRM, signs: ['pink'], seenAt: 'take-out' },
    }); // prettier-ignore
    const { sentence, items } = shelf();
    expect(sentence).toBe('Discard 9 Mar a.');
    expect(item(a)).toMatchObject({ group: 'discard', discard: 'spoiled', verbs: ['discard'], eatBy: null, seedBy: null });
    // Its mate stood in the same batch, and some of it was eaten.
    expect(item(b)).toMatchObject({ group: 'aside', verbs: ['discard'] });
    expect(item(b).says.eaten).toMatch(/Some of 9 Mar b was eaten.*doctor/);
    expect(items.at(-1)?.id).toBe(a);
    for (const id of [a, b])
      for (const name of ['shelf.eat', 'shelf.give'] as const) {
        const refused = ask(session, name, { id, all: true });
        expect(refused).toMatchObject({ ok: false, error: { code: 'not food' } });
      }
    const { caution } = must(session, 'shelf.eat', { id: a, all: true, meant: true });
    expect(caution).toContain('say what was eaten and when');
    expect(caution).not.toMatch(/poisoning|infection|you have|symptom/i);
    expect(shelf().eaten).toMatchObject([{ label: '9 Mar a' }]);
    // Who was given some is to be told.
    const given = must(session, 'shelf.give', { id: b, all: true, meant: true, to: 'taster A' });
    expect(given.caution).toContain('Tell them to discard it');
    expect(shelf().given[0]?.says).toContain('taster A');
  }); // prettier-ignore

  it('and nothing is done with a jar that is still in warmth', () => {
    const warm = must(
      session,
      'batch.record',
      batchOf(TODAY, [plainJar('w', { seedings: [fromSource(source)], outcome: unseen })], { sameLabelMeant: true }),
    ).jars[0] ?? '';
    expect(item(warm)).toMatchObject({ place: 'warmth', group: 'warm', verbs: [], eatBy: null });
    expect(refusalOf(session, 'shelf.eat', { id: warm }).code).toBe('in its warmth');
    must(session, 'shelf.discard', { id: warm, meant: true });
    expect(find(warm)).toBeUndefined();
  }); // prettier-ignore
});
