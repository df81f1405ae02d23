// Figures that judgement and advice state, each held against an outside value or against what is said of it. Where a figure is
// changed, one of these asks why.
import { describe, expect, it } from 'vitest';
import { CARRIED_RULES } from '../../core/advice/carried';
import { keptCosts } from '../../core/advice/costs';
import { costAssumedSays } from '../../core/says/cost-says';
import { adviseNext } from '../../core/advice/seed-ranking';
import { StandingWalk } from '../../core/vigour/standing';
import { trendOf } from '../../core/vigour/trend';
import type { LevelLook } from '../../core/vigour/level/line-level';
import { KEEPER, seedOf } from './seed-of';

const trend = trendOf([1, 2, 3, 4, 5, 6].map((generation) => ({ generation, score: 75 })));
/** What is believed of a batch: `fallen` as log odds, `level` against early batches at 75. */
const look = (fallen: number, level = 75): LevelLook => ({
  level,
  sd: 3,
  early: 75,
  fallen,
  spread: 4,
  losing: 0,
});
const WORD = 20;

describe('what is said of a line', () => {
  const called = (level: number): StandingWalk => {
    const walk = new StandingWalk();
    for (let i = 0; i < 6; i++) walk.next(trend, look(-6));
    for (let i = 0; i < 2; i++) walk.next(trend, look(5, level));
    return walk;
  };
  it('stands until the line was seen back for three batches (the meaning of the word in this program)', () => {
    const walk = called(50);
    const said = [1, 2, 3, 4].map(() => walk.next(trend, look(-6)));
    expect(said.map((word) => word === 'slipping' || word === 'worn out')).toEqual([
      true,
      true,
      false,
      false,
    ]);
    // One that is poor again between two seen back starts the count again.
    const again = called(50);
    for (const fallen of [-6, -6, 2, -6, -6]) again.next(trend, look(fallen));
    expect(again.called).toBe(true);
  });
  it('is worn out from one and a half set words below its early batches on, and slipping before', () => {
    const below = (words: number): string =>
      called(75 - words * WORD).next(trend, look(5, 75 - words * WORD));
    expect([1, 1.4, 1.6, 2].map(below)).toEqual(['slipping', 'slipping', 'worn out', 'worn out']);
  });
});

describe('what a contamination is taken to do', () => {
  it('lies within what is common practice: seen by itself in 0.3 to 2 % of jars, caught unseen in 0.1 to 0.5 % of batches', () => {
    const { catches, spoilsAlone } = CARRIED_RULES;
    expect([0.003 <= spoilsAlone, spoilsAlone <= 0.02]).toEqual([true, true]);
    expect([0.001 <= catches, catches <= 0.005]).toEqual([true, true]);
  });
});

describe('a weak jar', () => {
  it('is eaten and keeps half its worth, as is said beside every cost', () => {
    const { costs, assumed } = keptCosts({ jars: [], starts: [], jarsPerBatch: [3], currency: 'EUR' });
    expect(assumed.map(costAssumedSays)).toContain(
      'A weak jar is eaten and keeps half its worth; a discarded one keeps none.',
    );
    expect(costs.weakKeeps).toBe(1 / 2);
  });
});

describe('an hour of delay', () => {
  it('costs a hundredth of a jar for each jar of the next batch: ten hours cost a tenth', () => {
    const rank = (delayHours: number): number => {
      const level = { weak: 0.1, worth: 2, carries: 0 };
      const { ranking } = adviseNext({ ...KEEPER, candidates: [seedOf('one', { delayHours, level })], limits: { fridgeDays: null, freezerDays: null, generation: null } }); // prettier-ignore
      return ranking.find(({ id }) => id === 'one')?.cost ?? Number.NaN;
    };
    // Spread over as many generations as a fresh start is: by hand.
    expect(rank(10) - rank(0)).toBeCloseTo((0.1 * KEEPER.costs.jar) / KEEPER.freshStart.generations, 9);
  });
});
