// What its own hold leaves in doubt, in the words of the take-out gate. The rules of the gate: tests/safety/gate.test.ts.
import { describe, expect, it } from 'vitest';
import { asksAbout, doubtsAbout } from '../../core/safety/doubts';
import { doubtSays, lookSays } from '../../core/says/seed-looks-says';
import { batchOf, fromJar, fromSource, must, newSession, plainJar, plainSource, unseen } from '../ledger/ledger-files'; // prettier-ignore

const set = { ...unseen, setAtTakeOut: true, setWord: 'firm' as const };
const slow = { ...set, earlySet: 'loose' as const };

describe('doubts', () => {
  it.each([
    ['a power cut', { ...set, powerCut: true, powerCutHours: 3 }, { code: 'power cut', hours: 3 }],
    ['a pH above 4.6', { ...set, ph: 5.1, phHow: 'strip' as const }, { code: 'acid', ph: 5.1, how: 'strip' }],
    ['fine bubbles, where nobody says that it set', { ...unseen, bubbles: 'fine' as const }, { code: 'bubbles' }],
    ['fine bubbles in a jar that had not set', { ...unseen, setAtTakeOut: false, ph: 4.4, phHow: 'meter' as const, phChecked: true, bubbles: 'fine' as const }, { code: 'bubbles' }],
  ] as const)('are of %s what the gate says', (_what, outcome, reason) =>
    expect(doubtsAbout(outcome, null)).toEqual([reason])); // prettier-ignore
  it('a slow start is none: it is to be looked at, in the words of the gate', () => {
    for (const outcome of [slow, { ...set, earlySour: false }, { ...slow, setAtTakeOut: null }]) {
      expect(doubtsAbout(outcome, null)).toEqual([]);
      expect(asksAbout(outcome, null).map(lookSays)).toEqual([expect.stringMatching(/^A slow start: .*does not undo a toxin.*When in doubt, discard\.$/)]);
    }
  }); // prettier-ignore
  it('are none where nothing speaks against it, where nothing is recorded, and where it is condemned anyway', () => {
    expect(doubtsAbout(set, null)).toEqual([]);
    expect(doubtsAbout(unseen, null)).toEqual([]);
    expect(doubtsAbout(null, null)).toEqual([]);
    expect(doubtsAbout({ ...slow, signs: ['pink'] }, null)).toEqual([]);
  });
  it('are told by hold-mates of a power cut, unless the jar itself says that there was none', () => {
    const mates = { label: '9 Mar b', hours: 2 };
    const said = [expect.stringMatching(/^The power failed .*discard\. 9 Mar b, from the same hold, tells of it\.$/)]; // prettier-ignore
    expect(doubtsAbout(null, mates).map(doubtSays)).toEqual(said);
    expect(doubtsAbout(set, mates).map(doubtSays)).toEqual(said);
    expect(doubtsAbout({ ...set, powerCut: false }, mates)).toEqual([]);
  });
});

it('reach the advice from the ledger: its jar, its cubes, its hold-mates, and no restart from its reserve', () => {
  const session = newSession();
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  const hold = { startedAt: null, endedAt: null, hours: 12, planned: null, probe: null, readings: [], note: null }; // prettier-ignore
  const first = must(session, 'batch.record', batchOf('2026-03-01', [plainJar('a', { seedings: [fromSource(source)], outcome: slow, onShelf: true })])); // prettier-ignore
  const [jar = ''] = first.jars;
  const reserve = { id: null, part: null, place: 'freezer' as const, pieces: 6, amount: null, keptOn: '2026-03-02', goneOn: null, reserve: true, note: null }; // prettier-ignore
  const { id: cubes } = must(session, 'portion.save', { portion: { ...reserve, jar } });
  const alone = must(session, 'advice.next', {});
  const kept = alone.ranking.filter(({ kind }) => kind !== 'fresh start');
  expect(kept.map(({ kind, allowed }) => [kind, allowed])).toEqual([
    ['jar', true],
    ['reserve', true],
  ]);
  for (const { looks } of kept) expect(looks[0]).toMatch(/^A slow start: still loose/);
  expect(alone.ranking.map(({ portion }) => portion)).toContain(cubes);
  expect(alone.sentence).toContain('A slow start');

  const seedings = [fromJar(jar)];
  const second = must(session, 'batch.record', batchOf('2026-03-05', [
    plainJar('a', { seedings, hold: 0, outcome: { ...set, powerCut: true }, onShelf: true }),
    plainJar('b', { seedings, hold: 0, outcome: set, onShelf: true }),
    plainJar('c', { seedings, hold: 1, outcome: set, onShelf: true }),
  ], { holds: [hold, hold] })); // prettier-ignore
  const { ranking, sentence } = must(session, 'advice.next', {});
  const of = (id: string | undefined) => ranking.find((one) => one.jar === id);
  expect(of(second.jars[1])?.doubts[0]).toContain('5 Mar a, from the same hold, tells of it.');
  expect(of(second.jars[2])?.doubts).toEqual([]);
  // Its seed was in doubt: no stop, and said.
  expect(sentence).toBe(
    'Seed the next batch from 5 Mar c. It descends from 1 Mar a, which is in doubt (a slow start). Look and smell first, and when in doubt, discard.',
  );
});
