// A spoiled jar must not come back under its own name as a product or a lost jar, free of its cautions.
import { describe, expect, it } from 'vitest';
import { namerOf } from '../../core/lineage/labels';
import { ask, batchOf, fromJar, must, newSession, plainJar, plainSource, refusalOf, smallFamily, stateOf, unseen } from './ledger-files'; // prettier-ignore

const apr = { madeOn: '2026-04-03', word: null, letter: 'c' };
const named = (text: string, jar = apr as Parameters<ReturnType<typeof namerOf>>[0]): boolean =>
  namerOf(text, 'day first')(jar);

describe('the name of a jar', () => {
  it.each([
    '3 Apr c', '3 apr C', ' 3  Apr  c ', 'Apr 3 c', '3 April c', '3 Apr 2026 c', '3 Apr 2025 c', '2026-04-03 c', '3/4 c',
    '3.4.26 c', '4/3 c', 'jar 3 Apr c', '3 Apr c\u00a0· freezer cubes', 'some of 3 Apr c', 'whey of 3 Apr c', '3apr c',
  ])('is %s', (text) => expect(named(text)).toBe(true)); // prettier-ignore

  it.each(['3 Apr', '3 Apr b', 'c', '4 Apr c', '3 Apr plain c', 'Blue Tin', '3 Apr c from Ana', ''])(
    'is not %s',
    (text) => expect(named(text)).toBe(false),
  );

  it('has the batch’s word in it, and a lost jar’s is its label', () => {
    expect(named('3 Apr plain c', { ...apr, word: 'Plain' })).toBe(true);
    expect(named('3 Apr c', { ...apr, word: 'Plain' })).toBe(false);
    const lost = { madeOn: null, word: 'blue lid', letter: 'a' };
    expect([named('lost blue lid a', lost), named('blue lid', lost)]).toEqual([true, false]);
  });
});

const newSource = (name: string) => ({
  ...fromJar('', 45), fromJar: null, newSource: name, amount: { value: 10, unit: 'pieces' as const, typed: '10' },
}); // prettier-ignore

describe('a product', () => {
  it('is not called as a jar is, by any way of recording one; nothing is kept of the try', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    must(session, 'outcome.save', { jar: jars[1], outcome: { ...unseen, signs: ['pink'] }, onShelf: null });
    const before = stateOf(session);
    const refused = refusalOf(session, 'source.save', plainSource('5 mar A'));
    expect(refused.code).toBe('name of a jar');
    expect(refused.sentence).toContain('“5 mar A” is what the jar 5 Mar a is called.');
    const batch = batchOf('2026-03-14', [plainJar('a', { seedings: [newSource('5 Mar 2026 a')] })]);
    expect(refusalOf(session, 'batch.record', batch).code).toBe('name of a jar');
    expect(refusalOf(session, 'seeding.set', { jar: jars[2], seedings: [newSource('5 Mar a')] }).code).toBe(
      'name of a jar',
    );
    expect(refusalOf(session, 'jar.lost', { madeOn: null, label: '5 Mar a', note: null }).code).toBe(
      'name of a jar',
    );
    expect(stateOf(session)).toBe(before);
  });

  it('that bears such a name already may still be corrected, and given another name', () => {
    const session = newSession();
    const source = must(session, 'source.save', plainSource('5 Mar a')).id;
    must(session, 'batch.record', batchOf('2026-03-05', [plainJar('a', { seedings: [] })]));
    must(session, 'source.save', plainSource('5 Mar a', { id: source, note: 'from Ana' }));
    must(session, 'source.save', plainSource('Ana’s 5 Mar a', { id: source }));
    expect(refusalOf(session, 'source.save', plainSource('5 Mar a', { id: source })).code).toBe(
      'name of a jar',
    );
  });

  it('made on the way comes with the batch, once for all its jars, and goes with it', () => {
    const session = newSession();
    const before = stateOf(session);
    const { jars } = must(
      session,
      'batch.record',
      batchOf('2026-03-05', [
        plainJar('a', { seedings: [newSource('Blue Tin')] }),
        plainJar('b', { seedings: [newSource('blue tin')] }),
      ]),
    );
    expect(must(session, 'source.list', {}).sources).toMatchObject([{ name: 'Blue Tin', startedJars: 2 }]);
    expect(must(session, 'jar.get', { id: jars[1] ?? '' }).view).toMatchObject({
      generation: { deepest: 1 },
      seeds: [{ label: 'Blue Tin' }],
    });
    must(session, 'act.undo', { act: null });
    expect(stateOf(session)).toBe(before);
    must(session, 'act.redo', {});
    expect(must(session, 'family.get', {}).jars).toHaveLength(2);
  });

  it('by name and by id at once is refused, and so is one without a name', () => {
    const session = newSession();
    const source = must(session, 'source.save', plainSource('Meadow Pot')).id;
    const jar = (seeding: ReturnType<typeof newSource> & { source: string | null }) =>
      refusalOf(session, 'batch.record', batchOf('2026-03-05', [plainJar('a', { seedings: [seeding] })]))
        .code;
    expect(jar({ ...newSource('Blue Tin'), source })).toBe('one seed');
    expect(jar({ ...newSource('  '), source: null })).toBe('invalid');
  });
});

describe('finding a seed', () => {
  it('tells which jar a text names, also one that can’t be picked, and why', () => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const find = (text: string, notAfter: string | null = null) =>
      must(session, 'jar.find', { text, limit: 8, notAfter });
    expect(find('5 Mar A').named).toMatchObject({ id: jars[1], label: '5 Mar a' });
    expect(find('5 Mar').named).toBeNull();
    must(
      session,
      'batch.record',
      batchOf('2026-02-15', [plainJar('a', { seedings: [] })], { word: '5 mar' }),
    );
    expect(find('5 Mar a').jars.map(({ label }) => label)).toEqual(['5 Mar a']);
    expect(find('Blue Tin').named).toBeNull();
    const early = find('5 Mar a', '2026-03-04');
    expect(early.jars).toEqual([]);
    expect(early.named).toMatchObject({
      id: jars[1],
      says: 'Made after this batch, so it can’t have seeded it.',
    });
    must(session, 'batch.record', batchOf('2026-03-20', [plainJar('a', { state: 'planned' })]));
    expect(find('20 Mar a')).toMatchObject({
      jars: [],
      named: { says: expect.stringContaining('Only planned') },
    });
    const mistake = must(session, 'batch.record', batchOf('2026-03-02', [plainJar('x')])).jars[0] ?? '';
    must(session, 'jar.mistake', { id: mistake });
    expect(find('2 Mar x').named).toBeNull();
    expect(ask(session, 'source.save', plainSource('2 Mar x')).ok).toBe(true);
  });
});
