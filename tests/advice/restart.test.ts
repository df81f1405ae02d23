// When to restart: against brute force, and against the published age replacement.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawChances, type Chances, type GenerationRecord } from '../../core/advice/chances';
import { nonFalling } from '../../core/advice/isotonic';
import {
  costCurve,
  costOfGoingOn,
  restartOf,
  restartSentence,
  rivals,
  type RestartCosts,
} from '../../core/advice/restart';
import { seeded } from '../bench/judgement-lines';

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
  it('pools adjacent violators (worked by hand: 3 1 2 → 2 2 2; weights count)', () => {
    expect(nonFalling([3, 1, 2], [1, 1, 1])).toEqual([2, 2, 2]);
    expect(nonFalling([1, 3, 2, 4], [1, 1, 3, 1])).toEqual([1, 2.25, 2.25, 4]);
    expect(nonFalling([], [])).toEqual([]);
  });

  it('is the closest non-falling sequence (property: no other tried is closer)', () => {
    const values = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 2, maxLength: 6 });
    fc.assert(
      fc.property(values, values, (y, other) => {
        const fitted = nonFalling(
          y,
          y.map(() => 1),
        );
        const rival = y.map((_, i) => other[i] ?? 1).toSorted((a, b) => a - b);
        const far = (x: readonly number[]): number =>
          x.reduce((sum, v, i) => sum + (v - (y[i] ?? 0)) ** 2, 0);
        expect(far(fitted)).toBeLessThanOrEqual(far(rival) + 1e-12);
        fitted.slice(1).forEach((v, i) => expect(v).toBeGreaterThanOrEqual((fitted[i] ?? 0) - 1e-12));
      }),
    );
  });

  const records: GenerationRecord[] = Array.from({ length: 10 }, (_, i) => ({
    generation: i + 1, jars: 12, weak: i < 7 ? 1 : 4 + i - 7, discarded: 0, lines: 3, seen: 3, ended: 0,
  })); // prettier-ignore
  const pooled = drawChances(records, 20, 200, seeded(7));

  it('does not fall from the second generation on, on any draw, and leaves the first alone', () => {
    for (const draw of pooled.draws) {
      for (const values of [draw.weak, draw.discarded, draw.ended]) {
        values
          .slice(2)
          .forEach((value, i) => expect(value).toBeGreaterThanOrEqual((values[i + 1] ?? 0) - 1e-12));
      }
    }
    expect(pooled.draws.some(({ weak }) => (weak[0] ?? 0) > (weak[1] ?? 0))).toBe(true);
  });

  it('gives the posterior mean for a generation by itself (Beta: (prior + weak) / (prior + jars))', () => {
    const alone = drawChances(
      [{ generation: 1, jars: 40, weak: 7, discarded: 0, lines: 0, seen: 0, ended: 0 }],
      1,
      2000,
      seeded(1),
    );
    const mean = alone.draws.reduce((sum, { weak }) => sum + (weak[0] ?? 0), 0) / 2000;
    expect(mean).toBeCloseTo((0.3 + 7) / (3 + 40), 2);
  });

  it('is wider beyond what was seen, and says so', () => {
    const spread = (i: number): number => {
      const sorted = pooled.draws.map(({ weak }) => weak[i] ?? 0).toSorted((a, b) => a - b);
      return (sorted[180] ?? 0) - (sorted[20] ?? 0);
    };
    expect(pooled.lastSeen).toBe(10);
    expect(spread(19)).toBeGreaterThan(spread(5));
    const restart = restartOf(costs, pooled);
    expect(restart?.curve.map(({ reckonedOn }) => reckonedOn)).toEqual(
      records.map(() => false).concat(records.map(() => true)),
    );
    const later = restart && { ...restart, best: 14, from: 12, to: 16, openEnded: false };
    expect(later && restartSentence(later, 10)).toContain('No line of yours has gone beyond generation 10');
  });

  it('is the same for the same uniform numbers', () => {
    expect(drawChances(records, 20, 5, seeded(7)).draws).toEqual(pooled.draws.slice(0, 5));
  });
});

describe('the advice on restarting', () => {
  it('is said as one figure and a range', () => {
    const at = { best: 9, from: 6, to: 14, openEnded: false, cost: 3, curve: [], within: 1 };
    expect(restartSentence(at, 20)).toBe(
      'Start afresh after generation 9; anything from 6 to 14 is about as good.',
    );
  });

  it('is sooner when a fresh start is cheaper (property of the classic model)', () => {
    const weak = Array.from({ length: 30 }, (_, i) => Math.min(0.6, 0.01 * i));
    const draw = { weak, discarded: weak.map(() => 0), ended: weak.map(() => 0.01) };
    const best = (freshStart: number): number =>
      restartOf({ ...costs, freshStart }, { draws: [draw], lastSeen: 30, fewer: null })?.best ?? 0;
    expect(best(5)).toBeLessThan(best(60));
  });

  it('holds a reserve against sources at its own cost and generation', () => {
    const weak = Array.from({ length: 20 }, (_, i) => 0.02 * (i + 1));
    const chances = {
      draws: [{ weak, discarded: weak.map(() => 0), ended: weak.map(() => 0) }],
      lastSeen: 20,
      fewer: null,
    };
    const cheap = rivals(costs, chances, { label: 'Heron cubes', generation: 4, cost: 1, least: 1.2 });
    expect(cheap?.better).toBe('reserve');
    expect(cheap?.reserve?.restart.curve[0]?.generation).toBe(5);
    expect(cheap?.sentence).toContain('Heron cubes');
    expect(rivals(costs, chances, { label: 'old cubes', generation: 15, cost: 29, least: 90 })?.better).toBe(
      'sources',
    );
    // What the ranking says a good jar from it costs is what counts.
    const weak1 = rivals(costs, chances, { label: 'weak cubes', generation: 4, cost: 1, least: 99 });
    expect([weak1?.better, weak1?.reserve?.goodJar]).toEqual(['sources', 99]);
  });
});
