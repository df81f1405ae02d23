// One plain sentence for each act: what was made of what, or what changed.
import { describe, expect, it } from 'vitest';
import { actSentence, type ActDone, type Correction } from '../../core/says/history-says';
import { demoSession, must } from './ledger-files';

const act = (more: Partial<ActDone>): string =>
  actSentence({
    kind: 'jar.correct',
    says: 'corrected 14 Mar b',
    about: ['14 Mar b'],
    seeds: [],
    stirredIn: [],
    setWords: [],
    corrected: [],
    jars: 0,
    ...more,
  });
const changed = (
  field: string,
  before: string | null,
  after: string | null,
  of = '14 Mar b',
): Correction => ({ of, field, before, after });

describe('the sentence of an act', () => {
  it.each<[string, Partial<ActDone>]>([
    ['14 Mar b: set word soft → spoonable', { corrected: [changed('set word', 'soft', 'spoonable')] }],
    [
      '14 Mar b: gone on 2026-03-20',
      { corrected: [changed('on the shelf', 'yes', 'no'), changed('gone on', null, '2026-03-20')] },
    ],
    ['14 Mar b: on the shelf yes → no', { corrected: [changed('on the shelf', 'yes', 'no')] }],
    ['14 Mar b: vessel taken out', { corrected: [changed('vessel', 'quart jar', null)] }],
    ['14 Mar b: note changed', { corrected: [changed('note', null, 'x'.repeat(41))] }],
    [
      '14 Mar b: whey none → some, tang: mild, and two more changes',
      {
        corrected: [
          changed('whey', 'none', 'some'),
          changed('tang', null, 'mild'),
          changed('pH', '4.4', '4.5'),
          changed('smell', 'a', 'b'),
        ],
      },
    ],
    [
      '14 Mar a: hours 36 → 30; 14 Mar b: hours 36 → 30',
      { corrected: [changed('hours', '36', '30', '14 Mar a'), changed('hours', '36', '30')] },
    ],
    ['corrected 14 Mar b', {}],
    [
      'undid: recorded 14 Mar b',
      { kind: 'act.undo', says: 'undid: recorded 14 Mar b', corrected: [changed('whey', 'none', 'some')] },
    ],
    [
      'recorded 14 Mar a, b from 8 Mar c: plain and oat bran; firm',
      {
        kind: 'batch.record',
        says: 'recorded 14 Mar a, b',
        seeds: ['8 Mar c'],
        stirredIn: ['plain', 'oat bran'],
        setWords: ['firm'],
      },
    ],
    [
      'answered 31 remarks on 14 Mar a, 14 Mar b, 14 Mar c and two more',
      {
        kind: 'remarks.answer',
        says: 'answered 31 remarks',
        about: ['14 Mar a', '14 Mar b', '14 Mar c', '7 Mar a', '7 Mar b'],
      },
    ],
    ['brought in notes.csv: 44 jars', { kind: 'notes.bringIn', says: 'brought in notes.csv', jars: 44 }],
    [
      'noted how 14 Mar b turned out: soft',
      { kind: 'outcome.save', says: 'noted how 14 Mar b turned out', setWords: ['soft'] },
    ],
  ])('%s', (sentence, done) => expect(act(done)).toBe(sentence));
});

it('every act of the invented ledger is told in a sentence that names what it was about, and in few words', () => {
  const { acts } = must(demoSession(), 'history.list', { record: null, before: null, limit: 200 });
  expect(acts.length).toBeGreaterThan(100);
  for (const { told, jars } of acts) {
    if (jars.length > 0)
      expect(
        jars.some(({ label }) => told.includes(label)),
        told,
      ).toBe(true);
    expect(told.split(/\s+/).length, told).toBeLessThanOrEqual(28);
  }
  expect(acts.map(({ told }) => told)).toContain('recorded 8 Apr a, b from 1 Apr c: plain; firm');
});
