// Figures that judgement and advice state, each held against an outside value or against what is said of it. Where a figure is
// changed, one of these asks why.
import { restartShort } from '../../core/says/restart-says';
import { describe, expect, it } from 'vitest';
import { CARRIED_RULES, carriedCost } from '../../core/advice/carried';
import { chancesBy, CHANCE_PRIORS } from '../../core/advice/chances';
import type { LineTold } from '../../core/advice/line-told';
import { seededRandom } from '../../core/advice/random';
import { oddsPoints, weakChance } from '../../core/advice/seed-cost';
import { worthFor } from '../../core/advice/seed-level';
import { lastDayOf } from '../../core/advice/stops';
import { weakBelow } from '../../core/advice/weak';
import { worthOf } from '../../core/advice/worth';
import { borrowedWeights } from '../../core/vigour/level/borrowed';
import { LEVEL_RULES, type LevelRules } from '../../core/vigour/level/rules';
import { POINTS_A_TENFOLD } from '../../core/vigour/level/stored-seed';
import { firstBelief, type LevelTree } from '../../core/vigour/level/tree';
import { SCORE_RULES } from '../../core/vigour/score';
import { keptCosts } from '../../core/advice/costs';
import { costAssumedSays, goodJarSays, lostInHundred } from '../../core/says/cost-says';
import { adviseNext } from '../../core/advice/seed-ranking';
import { StandingWalk } from '../../core/vigour/standing';
import { trendOf } from '../../core/vigour/trend';
import type { LevelLook } from '../../core/vigour/level/line-level';
import { adviceSaid, KEEPER, seedOf } from './seed-of';

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

describe('what a good jar costs', () => {
  it('is said in money, or without a price in jars thrown out: 1.18 jars for each good one are 18 beyond 100', () => {
    expect(goodJarSays(1.35, 'EUR')).toBe('A good jar costs 1.35 EUR');
    expect(goodJarSays(1.18, 'jars')).toBe('It is as if 18 jars were thrown out for every 100 good ones');
    expect(goodJarSays(1.01, 'jars', ' then')).toContain('It is then as if 1 jar were');
    expect(lostInHundred(0.79)).toBe(0);
  });
  it('is told apart from the chance of a weak jar wherever that is high: two figures of one thing would gainsay each other', () => {
    const said = (weak: number): string => {
      const level = { weak, worth: -1, carries: 0, mayCarry: 0 };
      const input = { ...KEEPER, candidates: [seedOf('a', { level })], limits: NO_LIMITS };
      return (
        adviceSaid(input)
          .ranking.find(({ label }) => label === 'a')
          ?.reasons.join(' ') ?? ''
      );
    };
    expect(said(0.96)).toMatch(/96 in 100 such jars come out weak.* a weak jar is still worth half\./);
    expect(said(0.1)).not.toContain('worth half');
  });
});

describe('the last day of a seed', () => {
  it('is the day on which it reaches the keeper’s limit, in the place where it stands', () => {
    const limits = { fridgeDays: 21, freezerDays: 90, generation: null };
    expect(lastDayOf({ place: 'fridge', days: 21 }, limits)).toBe(21);
    expect(lastDayOf({ place: 'fridge', days: 20 }, limits)).toBeNull();
    expect(lastDayOf({ place: 'freezer', days: 21 }, limits)).toBeNull();
    expect(lastDayOf({ place: 'freezer', days: 90 }, limits)).toBe(90);
    expect(lastDayOf({ place: 'fridge', days: 21 }, { ...limits, fridgeDays: null })).toBeNull();
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
      const level = { weak: 0.1, worth: 2, carries: 0, mayCarry: 0 };
      const { ranking } = adviseNext({ ...KEEPER, candidates: [seedOf('one', { delayHours, level })], limits: { fridgeDays: null, freezerDays: null, generation: null } }); // prettier-ignore
      return ranking.find(({ id }) => id === 'one')?.cost ?? Number.NaN;
    };
    // Spread over as many generations as a fresh start is: by hand.
    expect(rank(10) - rank(0)).toBeCloseTo((0.1 * KEEPER.costs.jar) / KEEPER.freshStart.generations, 9);
  });
});

const NO_LIMITS = { fridgeDays: null, freezerDays: null, generation: null };
/** Who stands first of two seeds, the second dearer by a part of what the first costs. */
function firstOf(one: Parameters<typeof seedOf>[1], dearer: number, other: typeof one = {}): string {
  const spread = KEEPER.costs.jarsPerGeneration * KEEPER.freshStart.generations;
  const cost = KEEPER.freshStart.cost - 0.6;
  const levelOf = (of: number) => ({ weak: 0.1, worth: ((KEEPER.freshStart.cost - of) * spread) / KEEPER.costs.jar, carries: 0, mayCarry: 0 });
  const candidates = [
    seedOf('one', { delayHours: 0, level: levelOf(cost), ...one }),
    seedOf('other', { delayHours: 0, level: levelOf(cost * (1 + dearer)), ...other }),
  ];
  return adviseNext({ ...KEEPER, candidates, limits: NO_LIMITS }).ranking[0]?.id ?? '';
} // prettier-ignore

describe('the order of seeds', () => {
  it('of which nobody has said that they are still kept: after what is known to be, unless cheaper by more than 1 in 100', () => {
    expect(firstOf({ keptSaid: false }, 0.008)).toBe('other');
    expect(firstOf({ keptSaid: false }, 0.012)).toBe('one');
  });
  it('with two things to look at: after one with a single thing, unless cheaper by more than 1 in 100', () => {
    const bubbles = { code: 'fine bubbles' } as const;
    const first = (dearer: number): string => firstOf({ asks: [bubbles, bubbles] }, dearer, { asks: [bubbles] });
    expect([first(0.008), first(0.012)]).toEqual(['other', 'one']);
  }); // prettier-ignore
  it('with nothing to score it by: riskier by as much as is said, and by less than one that came out a set word below usual', () => {
    const inHundred = (points: number | null): number => Math.round(100 * weakChance(0.1, points));
    expect(inHundred(null)).toBeGreaterThan(inHundred(75));
    expect(inHundred(null)).toBeLessThan(inHundred(75 - WORD));
  });
  it('never more certain than 9 in 10 to give weak jars: one may always turn out well; below that as the odds have it', () => {
    expect(weakChance(0.99, 0)).toBe(0.9);
    expect(weakChance(0.85, 75)).toBeCloseTo(0.85, 9);
  });
  it('that cost as much to within 1 in 1,000 of a jar: the fresher first, and beyond that the cheaper', () => {
    const inJars = (jars: number): number => (jars * KEEPER.costs.jar) / (KEEPER.freshStart.cost - 0.6);
    expect(firstOf({ days: 9 }, inJars(0.0008))).toBe('other');
    expect(firstOf({ days: 9 }, inJars(0.0012))).toBe('one');
  });
  it('a third of what a jar scored more than 4 points below its batch counts against it, what it scored above for nothing', () => {
    expect(oddsPoints(70, 70 - 16)).toBeCloseTo(70 - (16 - 4) / 3, 9);
    expect([oddsPoints(70, 67), oddsPoints(70, 95), oddsPoints(70, null)]).toEqual([70, 70, 70]);
  });
  it('with nothing to score them by: riskier than as usual, and less so than half a set word below', () => {
    for (const p of [0.02, 0.1, 0.3]) {
      expect(weakChance(p, null)).toBeGreaterThan(weakChance(p, 75));
      expect(weakChance(p, null)).toBeLessThan(weakChance(p, 75 - WORD / 2));
    }
  });
});

describe('how sure chances are', () => {
  const told = (jars: number): LineTold => ({
    first: { jars: 3, discarded: 0, weak: 0 }, later: { jars, discarded: 0 }, told: jars, weak: Array.from({ length: 8 }, () => 0.1),
    seen: 8, last: 8, ended: false,
  }); // prettier-ignore
  /** Spread of what is drawn for a generation. */
  const spread = (lines: readonly LineTold[], generation: number): number => {
    const { draws } = chancesBy(lines, 20, 400, seededRandom(1));
    const odds = draws.map(({ weak }) => Math.log((weak[generation - 1] ?? 0) / (1 - (weak[generation - 1] ?? 0))));
    const mean = odds.reduce((a, b) => a + b, 0) / odds.length;
    return Math.sqrt(odds.reduce((sum, one) => sum + (one - mean) ** 2, 0) / odds.length);
  }; // prettier-ignore
  it('rests on lines more than on jars: of one line the thirteenth to the hundredth add nothing, another line does', () => {
    const [few, many] = [told(12), told(100)];
    expect(spread([many], 5)).toBeCloseTo(spread([few], 5), 1);
    expect(spread([told(6)], 5)).toBeGreaterThan(1.1 * spread([few], 5));
    expect(spread([few, few], 5)).toBeLessThan(0.9 * spread([many], 5));
  });
  it('fades with each generation beyond the last that was seen, towards what is stated before any jar', () => {
    const one = [told(40), told(40), told(40)];
    for (const beyond of [10, 12, 14])
      expect(spread(one, beyond)).toBeGreaterThan(1.02 * spread(one, beyond - 2));
    expect(spread(one, 20)).toBeLessThan(spread([told(0)], 20));
    expect(CHANCE_PRIORS.weak.bad / CHANCE_PRIORS.weak.of).toBeCloseTo(1 / 10, 12);
  });
});

describe('what is believed before a keeper’s own jars tell', () => {
  it('of lines: as likely of one kind as each its own (the even prior of two hypotheses), weighed by how they foretold', () => {
    const tree = (weights: readonly number[]): LevelTree => ({ weights: Float64Array.from(weights), before: Float64Array.from([0.5, 0.5]) }) as unknown as LevelTree;
    // By hand: together 0.9 × 0.1 / 0.5 twice, so alike 0.36 / 1.36; then half and half, else as the line has it.
    const alike = 0.36 / 1.36;
    const [first] = borrowedWeights(tree([0.9, 0.1]), [tree([0.1, 0.9])]);
    expect(first).toBeCloseTo(alike * 0.5 + (1 - alike) * 0.9, 9);
  }); // prettier-ignore
  it('of a bad day that nobody wrote down: 2.5 to 7.5 % of batches for a cold night, ½ to 1 % for a power cut (common practice)', () => {
    expect(LEVEL_RULES.badDay).toBeGreaterThanOrEqual(0.03);
    expect(LEVEL_RULES.badDay).toBeLessThanOrEqual(0.085);
  });
  it('of a tenfold loss in storage: part of what its delay does to the set time, which other marks of a jar do not show', () => {
    // 3.32 doublings (log2 10) at 65 min (ten are 11 h of a hold) on a set time of 12 h.
    const delay = (Math.log2(10) * 65) / 60;
    const bySetTime = SCORE_RULES.pointsPer['set time'] * Math.log2((12 + delay) / 12);
    expect(POINTS_A_TENFOLD).toBeGreaterThan(bySetTime / 4);
    expect(POINTS_A_TENFOLD).toBeLessThan((3 * bySetTime) / 4);
  });
  it('of what is still to come: a start is written off over half a year to a year of weekly batches where nothing goes wrong', () => {
    const rules: LevelRules = {
      ...LEVEL_RULES, spreads: [{ value: 3, weight: 1 }], badDay: 0,
      drifts: [{ weight: 1, prone: 0, begins: 0, ends: 0, falls: 0, rises: 0 }],
    }; // prettier-ignore
    const basis = {
      jars: 2,
      start: 100,
      weakBelow: -500,
      weakKeeps: 0.5,
      discarded: 0,
      firstBelow: 0,
      firstDiscarded: 0,
    };
    const [cost = 0] = worthOf(basis, rules, (drift) => firstBelief(rules, drift)).costs;
    const batches = basis.start / (basis.jars * (cost - 1));
    expect(batches).toBeGreaterThan(26);
    expect(batches).toBeLessThan(52);
  });
  it('of seeing a fall late: going on has to be worth more than nothing, and less than a quarter of a start', () => {
    // Where all is taken to be seen, what going on is worth is an upper bound (Hauskrecht 2000, from memory).
    const { seesLate } = worthFor({ freshStart: 12, jarsPerGeneration: 3, jar: 2, weakKeeps: 0.5, unplanned: 3 }, 3, 0.02);
    expect(seesLate).toBeGreaterThan(0);
    expect(seesLate).toBeLessThan(6 / 4);
  }); // prettier-ignore
  it('of a first batch: poorer by 15 to 35 points, 5 to 20 in 100 of its jars not set (common practice, no source)', () => {
    const costs = { freshStart: 6, jarsPerGeneration: 3, jar: 1, weakKeeps: 0.5, unplanned: 3 };
    const basis = { jars: 3, start: 6, weakBelow: weakBelow(3), weakKeeps: 0.5, discarded: 0.02 };
    const cost = (firstBelow: number, firstDiscarded: number): number =>
      sum(worthOf({ ...basis, firstBelow, firstDiscarded }, LEVEL_RULES, (drift) => firstBelief(LEVEL_RULES, drift)).costs);
    const sum = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0);
    const taken = sum(worthFor(costs, 3, 0.02).costs);
    expect([cost(15, 0.12) < taken, taken < cost(35, 0.12)]).toEqual([true, true]);
    expect([cost(25, 0.05) < taken, taken < cost(25, 0.2)]).toEqual([true, true]);
  }); // prettier-ignore
  it('of what is carried unseen: it costs less than what shows now, and more than half of it', () => {
    const [later, now] = [carriedCost({ unseen: [1, 0, 0], shows: 0 }, 3, 6), carriedCost({ unseen: [0, 0, 0], shows: 1 }, 3, 6)];
    expect(later).toBeLessThan(now);
    expect(later).toBeGreaterThan(now / 2);
  }); // prettier-ignore
});

it('a generation to end at is named only where the curve has one: from 13 to 41 is all one', () => {
  const short = (from: number, to: number) => restartShort({ from, to, openEnded: false }, true, null, null);
  expect(short(13, 41)).toMatch(/makes little difference .* from generation 13 to 41\.$/);
  expect(short(9, 14)).toBe('Over many lines a fresh start pays after generation 9 to 14.');
});
