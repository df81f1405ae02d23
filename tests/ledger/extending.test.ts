// Adding to what is recorded: a jar or a hold of a batch, seed from what was kept apart, drafts that end with their act,
// captions of photographs and taking one away.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { CallName, Input } from '../../core/contract';
import { piecesLeft, portionName } from '../../core/ledger/portions';
import { photographFolder } from '../../main/ledger/worker-protocol';
import { Refused } from '../../main/refusal';
import type { Session } from '../../main/session';
import {
  ask,
  batchOf,
  fromJar,
  fromSource,
  must,
  newSession,
  plainJar,
  plainSource,
  refusalOf,
  smallFamily,
  stateOf,
  unseen,
} from './ledger-files';

const hold = (hours: number): Input<'batch.addHold'>['hold'] => ({
  startedAt: null, endedAt: null, hours, planned: null, probe: null, readings: [], note: null,
}); // prettier-ignore
type NewJar = Input<'batch.addJar'>['jar'];
const jarEntry = (letter: string, more: Partial<NewJar> = {}): NewJar => ({
  ...plainJar(letter),
  hold: null,
  ...more,
});

describe('a jar added to a recorded batch', () => {
  it('is one act with all that belongs to it, in the family at once, and undone as a whole', () => {
    const session = newSession();
    const { jars, batches } = smallFamily(session);
    const before = stateOf(session);
    const added = must(session, 'batch.addJar', {
      batch: batches[2]!,
      jar: jarEntry('C', {
        seedings: [fromJar(jars[1])],
        additions: [{ name: 'oat bran', planned: null, actual: null, package: null }],
        outcome: { ...unseen, setWord: 'firm' },
      }),
      sameLabelMeant: false,
    });
    const found = must(session, 'jar.get', { id: added.jar });
    expect(found.view).toMatchObject({ label: '9 Mar c', setWord: 'firm', additions: ['oat bran'] });
    expect(found.view.generation.deepest).toBe(3);
    expect(must(session, 'batch.get', { id: batches[2]! }).jars.map(({ label }) => label)).toEqual([
      '9 Mar a', '9 Mar b', '9 Mar c',
    ]); // prettier-ignore
    expect(must(session, 'act.undo', { act: null }).says).toBe('undid: added 9 Mar c');
    expect(stateOf(session)).toBe(before);
  });

  it('keeps to the rules of a recorded one', () => {
    const session = newSession();
    const { jars, batches } = smallFamily(session);
    const add = (jar: NewJar, sameLabelMeant = false): string => {
      const result = ask(session, 'batch.addJar', { batch: batches[1]!, jar, sameLabelMeant });
      return result.ok ? 'added' : result.error.code;
    };
    expect(add(jarEntry('A'))).toBe('same label');
    expect(add(jarEntry('b', { seedings: [fromJar(jars[2])] }))).toBe('seed made later');
    const other = must(session, 'batch.addHold', { batch: batches[0]!, hold: hold(36), jars: [] });
    expect(add(jarEntry('b', { hold: other.hold }))).toBe('hold of another batch');
    expect(add(jarEntry('a'), true)).toBe('added');
  });
});

describe('a hold added to a recorded batch', () => {
  it('takes the jars that stood in it, and undo puts them back', () => {
    const session = newSession();
    const { jars, batches } = smallFamily(session);
    const before = stateOf(session);
    const added = must(session, 'batch.addHold', { batch: batches[2]!, hold: hold(20), jars: [jars[3]] });
    const batch = must(session, 'batch.get', { id: batches[2]! });
    expect(batch.holds.map(({ id, hours }) => [id, hours])).toEqual([[added.hold, 20]]);
    expect(batch.jars.map(({ jar }) => jar.hold)).toEqual([null, added.hold]);
    must(session, 'act.undo', { act: null });
    expect(stateOf(session)).toBe(before);
  });

  it('refuses a jar of another batch and an end before its start', () => {
    const session = newSession();
    const { jars, batches } = smallFamily(session);
    const stray = refusalOf(session, 'batch.addHold', {
      batch: batches[2]!,
      hold: hold(20),
      jars: [jars[0]],
    });
    expect(stray.sentence).toBe('1 Mar a belongs to another batch. Choose jars of this batch.');
    const crossed = { ...hold(20), startedAt: '2026-03-09T20:00:00Z', endedAt: '2026-03-09T19:00:00Z' };
    expect(refusalOf(session, 'batch.addHold', { batch: batches[2]!, hold: crossed, jars: [] }).code).toBe(
      'times crossed',
    );
  });
});

type Kept = Input<'portion.save'>['portion'];
function keep(session: Session, jar: string, more: Partial<Kept> = {}): string {
  return must(session, 'portion.save', {
    portion: {
      id: null, jar, part: 'mixed', place: 'freezer', pieces: 8, amount: { value: 120, unit: 'mL', typed: null },
      keptOn: '2026-03-06', goneOn: null, reserve: true, note: null, ...more,
    },
  }).id; // prettier-ignore
}
const offered = (session: Session, text: string): string[] =>
  must(session, 'jar.find', { text, limit: 8, notAfter: null }).jars.flatMap(({ portions }) =>
    portions.map(({ says }) => says),
  );

describe('what was kept apart as seed', () => {
  it('is offered while some of it is left, and weighed by what its cubes hold', () => {
    const session = newSession();
    const { source, jars, batches } = smallFamily(session);
    const cubes = keep(session, jars[1]);
    expect(offered(session, '5 mar')).toEqual(['freezer cubes, 8 left']);
    const pieces = (count: number): Input<'batch.addJar'>['jar']['seedings'][number] => ({
      ...fromJar(jars[1], null), portion: cubes, part: 'curd', amount: { value: count, unit: 'pieces', typed: `${count} cubes` },
    }); // prettier-ignore
    // Three cubes of 120 / 8 = 15 mL beside 45 mL: half and half.
    const { jar } = must(session, 'batch.addJar', {
      batch: batches[2]!,
      jar: jarEntry('c', { seedings: [pieces(3), fromJar(jars[0], 45)] }),
      sameLabelMeant: false,
    });
    expect(offered(session, '5 mar')).toEqual(['freezer cubes, 5 left']);
    const record = must(session, 'batch.get', { id: batches[2]! }).jars.find((one) => one.jar.id === jar);
    expect(record?.seedings.map(({ kept, share, seeding }) => [kept, share, seeding.part])).toEqual([
      ['freezer cubes', 0.5, 'curd'],
      [null, 0.5, null],
    ]);
    // Said later that they held half as much: a third and two thirds.
    keep(session, jars[1], { id: cubes, amount: { value: 60, unit: 'mL', typed: null } });
    const again = must(session, 'batch.get', { id: batches[2]! }).jars.find((one) => one.jar.id === jar);
    expect(again?.seedings[0]?.share).toBeCloseTo(1 / 3, 12);
    must(session, 'batch.addJar', {
      batch: batches[2]!,
      jar: jarEntry('d', { seedings: [pieces(5)] }),
      sameLabelMeant: false,
    });
    expect(offered(session, '5 mar')).toEqual([]);
    expect(source).toBeTruthy();
  });

  it('is not offered once it is gone, nor taken from another jar', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const pot = keep(session, jars[1], { place: 'fridge', pieces: null, goneOn: '2026-03-08' });
    expect(offered(session, '5 mar')).toEqual([]);
    expect(
      refusalOf(session, 'seeding.set', { jar: jars[2], seedings: [{ ...fromJar(jars[0]), portion: pot }] })
        .code,
    ).toBe('portion of another jar');
  });

  it('is called what a keeper calls it, and left is unknown where nobody said how much was taken', () => {
    const kept = { part: null, place: 'fridge', pieces: null, reserve: true } as const;
    expect(portionName(kept)).toBe('lidded pot');
    expect(portionName({ ...kept, part: 'whey', reserve: false })).toBe('whey in the fridge');
    expect(portionName({ ...kept, part: 'curd', place: 'freezer', pieces: 4 })).toBe('freezer cubes of curd');
    expect(portionName({ ...kept, place: 'dried' })).toBe('dried flakes');
    expect(piecesLeft({ pieces: 6, amount: null }, [null])).toBeNull();
    expect(piecesLeft({ pieces: 6, amount: null }, [{ value: 8, unit: 'pieces', typed: null }])).toBe(0);
  });
});

describe('the draft a write was typed in', () => {
  it.each<[CallName, (facts: ReturnType<typeof smallFamily>) => object]>([
    ['batch.correct', ({ batches }) => ({ id: batches[0], changes: { word: 'plain' } })],
    ['batch.addHold', ({ batches }) => ({ batch: batches[0], hold: hold(30), jars: [] })],
    ['batch.addJar', ({ batches }) => ({ batch: batches[0], jar: jarEntry('z'), sameLabelMeant: false })],
    ['jar.correct', ({ jars }) => ({ id: jars[0], changes: { milk: 'half-and-half' } })],
    ['jar.lost', () => ({ madeOn: null, label: null, note: null })],
    ['seeding.set', ({ jars }) => ({ jar: jars[2], seedings: [fromJar(jars[0])] })],
    ['addition.set', ({ jars }) => ({ jar: jars[0], additions: [{ name: 'inulin', planned: null, actual: null, package: null }] })],
    ['outcome.save', ({ jars }) => ({ jar: jars[0], outcome: { ...unseen, setWord: 'soft' }, onShelf: null })],
    ['source.save', () => plainSource('Meadow Pot')],
    ['package.save', () => ({ package: { id: null, of: 'milk', source: null, name: 'whole milk', size: null, price: null, boughtOn: null, openedOn: null, bestBefore: null, note: null } })],
    ['portion.save', ({ jars }) => ({ portion: { id: null, jar: jars[0], part: null, place: 'fridge', pieces: null, amount: null, keptOn: '2026-03-02', goneOn: null, reserve: true, note: null } })],
  ])('of %s goes with the act, stays where the write is refused, and no other goes', (name, inputOf) => {
    const session = newSession();
    const input = { ...inputOf(smallFamily(session)), draft: 'this one' };
    must(session, 'draft.save', { key: 'this one', json: '{}' });
    must(session, 'draft.save', { key: 'another', json: '{}' });
    const keys = (): string[] => must(session, 'draft.list', {}).drafts.map(({ key }) => key).toSorted();
    session.ledger.acts.settle = () => {
      throw new Refused('cancelled'); // after the work, before the commit
    };
    expect(ask(session, name, input as Input<typeof name>).ok).toBe(false);
    expect(keys()).toEqual(['another', 'this one']);
    session.ledger.acts.settle = () => () => undefined;
    must(session, name, input as Input<typeof name>);
    expect(keys()).toEqual(['another']);
  }); // prettier-ignore

  it('of a hold’s correction goes too', () => {
    const session = newSession();
    const { batches } = smallFamily(session);
    const { hold: id } = must(session, 'batch.addHold', { batch: batches[0]!, hold: hold(30), jars: [] });
    must(session, 'draft.save', { key: 'hold', json: '{}' });
    must(session, 'hold.correct', { id, changes: { hours: 31 }, draft: 'hold' });
    expect(must(session, 'draft.list', {}).drafts).toEqual([]);
  });
});

describe('a photograph', () => {
  // The smallest stream that is a picture: a frame of 40 × 30 and a scan (ITU-T T.81, table B.1, from memory).
  const bytes = Uint8Array.from([
    0xff, 0xd8, 0xff, 0xc0, 0, 11, 8, 0, 30, 0, 40, 1, 1, 0x11, 0, 0xff, 0xda, 0, 8, 1, 1, 0, 0, 63, 0, 1, 2, 3, 0xff, 0xd9,
  ]); // prettier-ignore

  it('takes a caption, and taken away comes back with undo, its file untouched throughout', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const { photograph } = must(session, 'photograph.add', { jar: jars[0], bytes, caption: null });
    const file = join(photographFolder(session.ledger.file), `${photograph.sha256}.jpg`);
    const shown = (): (string | null)[] =>
      must(session, 'photograph.list', { jar: jars[0] }).photographs.map(({ caption }) => caption);
    must(session, 'photograph.correct', { id: photograph.id, caption: ' a level top ' });
    expect(shown()).toEqual(['a level top']);
    expect(refusalOf(session, 'photograph.correct', { id: photograph.id, caption: 'a level top' }).code).toBe(
      'nothing changed',
    );
    must(session, 'photograph.remove', { id: photograph.id });
    expect(shown()).toEqual([]);
    expect(existsSync(file)).toBe(true);
    expect(refusalOf(session, 'photograph.remove', { id: photograph.id }).code).toBe('not found');
    expect(must(session, 'act.undo', { act: null }).says).toBe('undid: took away a photograph of 1 Mar a');
    expect(shown()).toEqual(['a level top']);
    expect(existsSync(file)).toBe(true);
  });
});

describe('cautions in a batch', () => {
  it('say on each jar how it is touched, and a lifted one says why', () => {
    const session = newSession();
    const { jars, batches, source } = smallFamily(session);
    must(session, 'outcome.save', {
      jar: jars[1],
      outcome: { ...unseen, signs: ['pink'], seenAt: 'take-out' },
      onShelf: null,
    });
    const cautions = (batch: string): string[][] =>
      must(session, 'batch.get', { id: batch }).jars.map((one) =>
        one.cautions.map(({ how, label }) => `${how} (${label})`),
      );
    expect(cautions(batches[1]!)).toEqual([['condemned: spoiled itself (5 Mar a)']]);
    expect(cautions(batches[2]!)).toEqual([
      ['set aside: seeded by it (5 Mar a)'],
      ['set aside: seeded by it (5 Mar a)'],
    ]);
    must(session, 'caution.clear', { jar: jars[3], of: jars[1], reason: 'seeded before it was opened' });
    const [, second] = must(session, 'batch.get', { id: batches[2]! }).jars;
    expect(second?.cautions[0]).toMatchObject({ cleared: true, reason: 'seeded before it was opened' });
    const planned = batchOf('2026-03-12', [
      plainJar('a', { state: 'planned', seedings: [fromSource(source)] }),
    ]);
    expect(cautions(must(session, 'batch.record', planned).batch)).toEqual([[]]);
  });
});

describe('a power cut', () => {
  it('has hours only where there was one', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const save = (powerCut: boolean | null, powerCutHours: number | null) =>
      ask(session, 'outcome.save', { jar: jars[0], outcome: { ...unseen, powerCut, powerCutHours }, onShelf: null });
    expect(save(false, 2)).toMatchObject({ ok: false, error: { params: { path: 'powerCutHours' } } });
    expect(save(true, 2.5).ok).toBe(true);
    expect(must(session, 'jar.get', { id: jars[0] }).record.outcome).toMatchObject({ powerCut: true, powerCutHours: 2.5 });
  }); // prettier-ignore
});
