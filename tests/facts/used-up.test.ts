// What is used up is no seed: what is left follows from all that left it (core/ledger/jar-left.ts). Invented, through the calls.
import { describe, expect, it } from 'vitest';
import type { Session } from '../../main/session';
import { batchOf, fromJar, must, newSession, plainJar, smallFamily, unseen } from '../ledger/ledger-files';

const mL = (value: number) => ({ value, unit: 'mL', typed: `${value} ml` }) as const;
const pieces = (value: number) => ({ value, unit: 'pieces', typed: `${value}` }) as const;

/** Movements of one thing, each as what it was and more of it. */
type Moves = readonly (readonly [what: string, more?: object])[];

/** A jar of 946 mL of 9 March that set, of which nothing is said yet. */
function ledger() {
  const session = newSession();
  const jar = smallFamily(session).jars[2];
  const outcome = { ...unseen, seenAt: 'take-out', setAtTakeOut: true, setWord: 'firm' } as const;
  must(session, 'outcome.save', { jar, outcome, onShelf: null });
  return { session, jar };
}

function move(session: Session, of: object, moves: Moves): string[] {
  const facts = moves.map(([what, more]) => ({ kind: 'movement', ...of, what, ...more }));
  return must(session, 'facts.record', { facts: facts as never, why: null }).ids;
}

const ranked = (session: Session) => must(session, 'advice.next', { line: null }).ranking;

/** Whether some of a jar is still there: all replies say the same. */
function isThere(session: Session, id: string): boolean {
  const { none } = must(session, 'jar.left', { id });
  const { view } = must(session, 'jar.get', { id });
  expect(view.onShelf === false).toBe(none);
  const { jars } = must(session, 'family.jars', { keys: [view.key] });
  expect(jars[0]?.onShelf === false).toBe(none);
  expect(ranked(session).some(({ jar, portion }) => jar === id && portion === null)).toBe(!none);
  const [found] = must(session, 'jar.find', { text: view.label, limit: 1, notAfter: null }).jars;
  expect(found?.says.includes('gone')).toBe(none);
  return !none;
}

const MOVES: readonly (readonly [says: string, there: boolean, moves: Moves])[] = [
  ['nothing', true, []],
  ['opened', true, [['opened', { day: '2026-03-12' }]]],
  ['some eaten', true, [['eaten']]],
  ['a part eaten', true, [['eaten', { amount: mL(900) }]]],
  ['all eaten', false, [['eaten', { amount: mL(946), day: '2026-03-12' }]]],
  ['all eaten, bit by bit', false, [['eaten', { amount: mL(500) }], ['given', { amount: mL(446) }]]], // prettier-ignore
  ['a part given', true, [['given', { amount: mL(100) }]]],
  ['given', false, [['given', { day: '2026-03-12' }]]],
  ['given, nobody said when', false, [['given']]],
  ['a part discarded', true, [['discarded', { amount: mL(100) }]]],
  ['discarded, nobody said when', false, [['discarded']]],
  ['gone', false, [['gone']]],
  ['said to be there, then all eaten', false, [['still there', { day: '2026-03-11' }], ['eaten', { amount: mL(946), day: '2026-03-12' }]]], // prettier-ignore
  ['all eaten, and seen after', true, [['eaten', { amount: mL(946), day: '2026-03-11' }], ['still there', { day: '2026-03-12' }]]], // prettier-ignore
];

describe('a jar', () => {
  it.each(MOVES)('%s: there: %s', (_says, there, moves) => {
    const { session, jar } = ledger();
    if (moves.length > 0) move(session, { jar }, moves);
    expect(isThere(session, jar)).toBe(there);
  });

  it('whose rest was eaten after it seeded others is used up, and is there again once that is undone', () => {
    const { session, jar } = ledger();
    move(session, { jar }, [['eaten', { amount: mL(901), day: '2026-03-10' }]]);
    expect(isThere(session, jar)).toBe(true);
    must(session, 'batch.record', batchOf('2026-03-12', [plainJar('a', { seedings: [fromJar(jar, 45)] })]));
    expect(isThere(session, jar)).toBe(false);
    must(session, 'act.undo', { act: null });
    expect(isThere(session, jar)).toBe(true);
  });
});

describe('a part kept apart', () => {
  const kept = (session: Session, portion: string): boolean =>
    ranked(session).some((one) => one.portion === portion);
  const cubes = (session: Session, jar: string): string =>
    must(session, 'facts.record', {
      facts: [
        { kind: 'portion', jar, form: 'cubes', place: 'freezer', pieces: 12, amount: mL(180), keptOn: '2026-03-11' },
      ],
      why: null,
    }).ids[0] ?? ''; // prettier-ignore

  it('is there until its last piece is gone', () => {
    const { session, jar } = ledger();
    const portion = cubes(session, jar);
    expect(kept(session, portion)).toBe(true);
    move(session, { portion }, [['given', { pieces: 9, day: '2026-03-12' }]]);
    expect(kept(session, portion)).toBe(true);
    const seeding = { ...fromJar(jar), portion, amount: pieces(3) };
    must(session, 'batch.record', batchOf('2026-03-13', [plainJar('a', { seedings: [seeding] })]));
    expect(kept(session, portion)).toBe(false);
    must(session, 'act.undo', { act: null });
    expect(kept(session, portion)).toBe(true);
    move(session, { portion }, [['discarded']]);
    expect(kept(session, portion)).toBe(false);
  });

  it.each([
    [
      'cubes by pieces',
      { form: 'cubes', place: 'freezer', pieces: 3, amount: mL(45) },
      [pieces(1), pieces(2)],
    ],
    ['cubes by volume', { form: 'cubes', place: 'freezer', pieces: 3, amount: mL(45) }, [mL(15), mL(30)]],
    ['a pot', { form: 'pot', place: 'fridge', amount: mL(60) }, [mL(20), mL(40)]],
    ['a reserve', { form: 'pot', place: 'fridge', amount: mL(60), reserve: true }, [mL(20), mL(40)]],
  ] as const)('that seeding alone used up is no seed: %s', (_what, form, taken) => {
    const { session, jar } = ledger();
    const portion = must(session, 'facts.record', {
      facts: [{ kind: 'portion', jar, keptOn: '2026-03-11', ...form }] as never, why: null,
    }).ids[0] ?? ''; // prettier-ignore
    for (const [at, amount] of taken.entries()) {
      expect(kept(session, portion)).toBe(true);
      const seeding = { ...fromJar(jar), portion, amount };
      must(session, 'batch.record', batchOf(`2026-03-1${3 + at}`, [plainJar('a', { seedings: [seeding] })]));
    }
    expect(must(session, 'jar.left', { id: portion }).none).toBe(true);
    expect(kept(session, portion)).toBe(false);
  });
});
