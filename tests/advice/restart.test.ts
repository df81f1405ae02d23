// When to restart: against brute force, and against the published age replacement.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chancesBy, discardedShare, type Chances, type PooledChances } from '../../core/advice/chances';
import { keptCosts, type RestartCosts } from '../../core/advice/costs';
import { reserveSentence, restartSentence } from '../../core/says/restart-says';
import { costCurve, costOfGoingOn, restartOf, rivals } from '../../core/advice/restart-curve';
import { seeded } from '../bench/judgement-lines';
import { toldBy, wearing, type Came } from './judged-line';

const costs: RestartCosts = {
  freshStart: 30,
  jarsPerGeneration: 4,
  jar: 2,
  weakKeeps: 0.25,
  unplanned: 12,
};
const chance = fc.double({ min: 0, max: 0.4, noNaN: true });

/** Cost and good jars of one cycle, by walking every way it can go: ended at each generation, or planned at n. */
function bruteForce(c: RestartCosts, { weak, discarded, ended }: Chances, n: number): number {
  let [expectedCost, expectedGood, reach] = [0, 0, 1];
  const cycle = (last: number): [number, number] => {
    let [cost, good] = [c.freshStart, 0];
    for (let k = 0; k < last; k++) {
      for (let jar = 0; jar < c.jarsPerGeneration; jar++) {
        cost += c.jar;
        good += 1 - (1 - c.weakKeeps) * (weak[k] ?? 0) - (discarded[k] ?? 0);
      }
    }
    return [cost, good];
  };
  for (let k = 1; k <= n; k++) {
    const ends = reach * (ended[k - 1] ?? 0);
    const [cost, good] = cycle(k);
    expectedCost += ends * (cost + c.unplanned);
    expectedGood += ends * good;
    reach -= ends;
  }
  const [cost, good] = cycle(n);
  return (expectedCost + reach * cost) / (expectedGood + reach * good);
}

const survival = (hours: number): number => Math.exp(-((hours / 1000) ** 2.5));

describe('C(n)', () => {
  it('equals brute force over every way a line can go (property)', () => {
    const three = fc.array(fc.tuple(chance, chance, chance), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(three, (rows) => {
        const chances = {
          weak: rows.map(([w]) => w),
          discarded: rows.map(([, d]) => d),
          ended: rows.map(([, , q]) => q),
        };
        const curve = costCurve(costs, chances);
        curve.forEach((value, i) => expect(value).toBeCloseTo(bruteForce(costs, chances, i + 1), 8));
      }),
    );
  });

  // Barlow & Hunter's age replacement, worked in a reliability handbook ("Optimum Replacement Time Example"): Weibull shape
  // 2.5, scale 1000 h, unplanned 5, planned 1. Optimum 493.0470 h (from memory; 493.045 recomputed), least cost 0.00346204.
  it.each([
    { step: 10, within: 10 },
    { step: 1, within: 1 },
    { step: 0.05, within: 0.1 },
  ])(
    'with no weak jars is age replacement, and goes to the published optimum: steps of $step h',
    ({ step, within }) => {
      const n = Math.round(1000 / step);
      const zero = Array.from({ length: n }, () => 0);
      const ended = zero.map((_, i) => 1 - survival((i + 1) * step) / survival(i * step));
      const curve = costCurve(
        { freshStart: 1, jarsPerGeneration: step, jar: 0, weakKeeps: 0, unplanned: 4 },
        { weak: zero, discarded: zero, ended },
      );
      const best = curve.indexOf(Math.min(...curve));
      expect(Math.abs((best + 1) * step - 493.047)).toBeLessThanOrEqual(within);
      if (step < 1) expect(curve[best]).toBeCloseTo(0.00346204, 6);
    },
  );

  it('is lowest where going on begins to cost more than the cycle (marginal cost rule)', () => {
    const weak = Array.from({ length: 20 }, (_, i) => 0.02 + 0.03 * i);
    const none = weak.map(() => 0);
    const curve = costCurve(costs, { weak, discarded: none, ended: none });
    const best = curve.indexOf(Math.min(...curve));
    expect(costOfGoingOn(costs, weak[best] ?? 0, 0, 0)).toBeLessThanOrEqual((curve[best] ?? 0) + 1e-9);
    expect(costOfGoingOn(costs, weak[best + 1] ?? 0, 0, 0)).toBeGreaterThanOrEqual((curve[best] ?? 0) - 1e-9);
  });
});

describe('chances by generation', () => {
  const GENERATIONS = 20;
  const of = (...lines: readonly (readonly (readonly Came[])[])[]): PooledChances =>
    chancesBy(lines.map(toldBy), GENERATIONS, 200, seeded(7));
  const unsaid = Array.from({ length: 8 }, () => [null, null, null]);

  it('are the stated ones at every generation where nothing is recorded, with no line and with lines of which nobody wrote anything', () => {
    for (const { mean } of [of(), of(unsaid), of(unsaid, unsaid)]) {
      for (const chance of mean.weak) expect(chance).toBeCloseTo(0.1, 12);
      for (const chance of [...mean.discarded, ...mean.ended])
        expect(chance).toBeLessThanOrEqual(0.02 + 1e-12);
    }
    expect(discardedShare([])).toBeCloseTo(0.02, 12);
  });

  it('do not rise where all jars are alike, however many (property)', () => {
    const lines = fc.array(fc.integer({ min: 3, max: 14 }), { minLength: 1, maxLength: 4 });
    const word = fc.constantFrom<Came>('spoonable', 'firm', 'very firm');
    fc.assert(
      fc.property(lines, word, (lengths, came) => {
        const { weak } = of(...lengths.map((length) => wearing(length, 0, came))).mean;
        for (const chance of weak.slice(2)) expect(chance).toBeCloseTo(weak[1] ?? 0, 12);
      }),
      { numRuns: 20 },
    );
  });

  it('rise where lines were seen to wear, and not before', () => {
    const { weak } = of(wearing(12, 7), wearing(12, 7)).mean;
    expect(Math.max(...weak.slice(1, 5))).toBeLessThan(0.1);
    expect(Math.min(...weak.slice(8))).toBeGreaterThan(0.6);
  });

  it('count a line that ended as it was last seen, so that those which went on are not all that tells', () => {
    const { weak, fewer } = {
      ...of(wearing(6, 4), wearing(14, 14)).mean,
      ...of(wearing(6, 4), wearing(14, 14)),
    };
    expect(fewer).toEqual({ from: 7, lines: 1, of: 2 });
    expect(weak[13]).toBeGreaterThan(0.3);
    expect(Math.abs((weak[13] ?? 0) - (weak[6] ?? 0))).toBeLessThan(0.1);
  });

  const worn = of(wearing(10, 7), wearing(10, 7), wearing(10, 7));
  it('are wider beyond what was seen, and that is said', () => {
    const spread = (i: number): number => {
      const odds = worn.draws
        .map(({ weak }) => Math.log((weak[i] ?? 0) / (1 - (weak[i] ?? 0))))
        .toSorted((a, b) => a - b);
      return (odds[180] ?? 0) - (odds[20] ?? 0);
    };
    expect(worn.lastSeen).toBe(10);
    expect(spread(19)).toBeGreaterThan(spread(9));
    const restart = restartOf(costs, worn);
    expect(restart?.curve.map(({ reckonedOn }) => reckonedOn)).toEqual(
      Array.from({ length: 20 }, (_, i) => i >= 10),
    );
    const later = restart && { ...restart, best: 14, from: 12, to: 16, openEnded: false };
    expect(later && restartSentence(later, 10)).toContain('No line of yours has gone beyond generation 10');
  });

  it('are drawn so that they move smoothly: no draw makes a step by chance', () => {
    const { draws } = of(wearing(12, 12));
    for (const { weak } of draws)
      weak
        .slice(2)
        .forEach((chance, i) => expect(Math.abs(Math.log(chance / (weak[i + 1] ?? 1)))).toBeLessThan(0.8));
  });

  it('are the same for the same uniform numbers', () => {
    expect(of(wearing(10, 7), wearing(10, 7), wearing(10, 7)).draws.slice(0, 5)).toEqual(
      worn.draws.slice(0, 5),
    );
  });
});

describe('prices', () => {
  const recorded = {
    jars: [{ minor: 200, currency: 'EUR' }],
    starts: [{ minor: 900, currency: 'EUR' }],
    jarsPerBatch: [3],
    currency: 'EUR',
  };
  const widthAt = (kept: ReturnType<typeof keptCosts>, generation: number): number => {
    const point = restartOf(
      kept.costs,
      chancesBy([toldBy(wearing(10, 8))], 20, 200, seeded(3)),
      0,
      kept.doubt,
    )?.curve[generation - 1];
    return point ? (point.high - point.low) / point.cost : 0;
  };
  it('are the recorded ones where there are any, and assumed ones leave the range wider', () => {
    const known = keptCosts(recorded);
    expect([known.unit, known.costs.jar, known.costs.freshStart]).toEqual(['EUR', 2, 9]);
    const assumed = keptCosts({ ...recorded, starts: [] });
    // A start is assumed at six jars: 12. Its factor of two makes up most of what the first generations cost.
    expect(assumed.costs.freshStart).toBe(12);
    expect(widthAt(assumed, 3)).toBeGreaterThan(1.5 * widthAt(known, 3));
  });
});

describe('the advice on restarting', () => {
  it('is said as one figure and a range', () => {
    const at = { best: 9, from: 6, to: 14, openEnded: false, cost: 3, curve: [] };
    expect(restartSentence(at, 20)).toBe(
      'Start afresh after generation 9; anything from 6 to 14 is about as good.',
    );
  });

  it('is sooner when a fresh start is cheaper (property of the classic model)', () => {
    const weak = Array.from({ length: 30 }, (_, i) => Math.min(0.6, 0.01 * i));
    const draw = { weak, discarded: weak.map(() => 0), ended: weak.map(() => 0.01) };
    const best = (freshStart: number): number =>
      restartOf({ ...costs, freshStart }, { mean: draw, draws: [draw], lastSeen: 30, fewer: null })?.best ??
      0;
    expect(best(5)).toBeLessThan(best(60));
  });

  it('holds a reserve against sources at its own cost and generation', () => {
    const weak = Array.from({ length: 20 }, (_, i) => 0.02 * (i + 1));
    const mean = { weak, discarded: weak.map(() => 0), ended: weak.map(() => 0) };
    const chances = {
      mean,
      draws: [mean],
      lastSeen: 20,
      fewer: null,
    };
    const cheap = rivals(costs, chances, { label: 'Heron cubes', generation: 4, cost: 1, least: 1.2 });
    expect(cheap?.better).toBe('reserve');
    expect(cheap?.reserve?.restart.curve[0]?.generation).toBe(5);
    expect(cheap?.reserve && reserveSentence(cheap.reserve, cheap.sources.cost, 'EUR')).toContain(
      'Restarting from Heron cubes (generation 4) makes a good jar cheaper',
    );
    expect(rivals(costs, chances, { label: 'old cubes', generation: 15, cost: 29, least: 90 })?.better).toBe(
      'sources',
    );
    // What the ranking says a good jar from it costs is what counts.
    const weak1 = rivals(costs, chances, { label: 'weak cubes', generation: 4, cost: 1, least: 99 });
    expect([weak1?.better, weak1?.reserve?.goodJar]).toEqual(['sources', 99]);
  });
});
