// Growth and storage against published values; the source stands beside each check.
import { describe, expect, it } from 'vitest';
import {
  ASSUMED_SETS,
  growthFactor,
  PUBLISHED_SETS,
  type CardinalTemperatures,
} from '../../core/growth/cardinal';
import { jarFollows } from '../../core/growth/jar-temperature';
import {
  delayHours,
  delayPerDay,
  DOUBLINGS_PER_TENTH,
  expectedCount,
  storageLoss,
} from '../../core/growth/storage';
import { constantProfile, meanTemperature, warmthOf } from '../../core/growth/warm-hours';

type Known = { readonly set: CardinalTemperatures; readonly rate: number };
function table(known: Known, values: Readonly<Record<number, number>>): void {
  for (const [celsius, rate] of Object.entries(values)) {
    expect(known.rate * growthFactor(Number(celsius), known.set)).toBeCloseTo(rate, 4);
  }
}

describe('cardinal temperature model', () => {
  it('gives the published lactobacillus in milk (Valik et al. 2013, doi 10.2478/s11696-013-0365-1; [computed] from its set)', () => {
    table(PUBLISHED_SETS.rhamnosusInMilk, { 4: 0.00123, 10: 0.03845, 20: 0.20976, 25: 0.34096, 30: 0.49535, 37: 0.72593, 38: 0.7567, 40: 0.81271, 44.4: 0.88, 47: 0.83491, 50: 0.56033 }); // prettier-ignore
  });
  it('gives the published three-species culture ([computed] from its set)', () => {
    table(PUBLISHED_SETS.threeSpeciesInMilk, { 5: 0.00261, 10: 0.09022, 20: 0.57277, 25: 0.90833, 30: 1.24326, 37: 1.54931, 38: 1.5594, 38.3: 1.56, 40: 1.53891, 45: 1.13741, 47: 0.76503, 50: 0 }); // prettier-ignore
  });
  it('gives the set of its first paper (Rosso 1993, parameters from memory)', () => {
    table({ set: { min: 4.9, opt: 41.3, max: 47.5 }, rate: 2.3 }, { 10: 0.06309, 20: 0.53767, 30: 1.40204, 37: 2.07868, 41.3: 2.3, 45: 1.85573, 47: 0.63002, 50: 0 }); // prettier-ignore
  });
  it('is 0 at and beyond the ends for every assumed set, 1 at the optimum, and never more', () => {
    for (const set of ASSUMED_SETS) {
      expect(growthFactor(set.opt, set)).toBeCloseTo(1, 12);
      for (const outside of [set.min, set.max, set.min - 5, set.max + 5, 4])
        expect(growthFactor(outside, set)).toBe(0);
      for (let t = 0; t < 60; t += 0.5) expect(growthFactor(t, set)).toBeLessThanOrEqual(1);
    }
  });
  it('refuses a set with a pole', () => {
    expect(() => growthFactor(30, { min: 10, opt: 28, max: 50 })).toThrow(RangeError);
  });
});

describe('warm hours', () => {
  it('are γ(T) × hours at one temperature, as a band', () => {
    const warmth = warmthOf(constantProfile(36, 38));
    expect(warmth?.plainHours).toBe(36);
    expect(warmth?.warmHours.middle).toBeCloseTo(36 * growthFactor(38, ASSUMED_SETS[0]!), 6);
    expect(warmth!.warmHours.low).toBeLessThan(warmth!.warmHours.middle);
    expect(warmth!.warmHours.high).toBeLessThanOrEqual(36);
  });
  it('count nothing in the fridge and the minutes above 45 °C', () => {
    expect(warmthOf(constantProfile(100, 4))?.warmHours.high).toBe(0);
    // 40 → 50 → 40 in two hours: an hour above 45, plain arithmetic.
    const spike = [{ hour: 0, celsius: 40 }, { hour: 1, celsius: 50 }, { hour: 2, celsius: 40 }]; // prettier-ignore
    expect(warmthOf(spike)?.minutesAboveDamage).toBeCloseTo(60, 9);
  });
  it('have a mean temperature, warming up left out (plain arithmetic)', () => {
    const hold = [{ hour: 0, celsius: 30 }, { hour: 4, celsius: 38 }, { hour: 12, celsius: 38 }]; // prettier-ignore
    expect(meanTemperature(hold, 0)).toBeCloseTo((4 * 34 + 8 * 38) / 12, 9);
    expect(meanTemperature(hold, 3)).toBeCloseTo((37 + 8 * 38) / 9, 9);
    expect(meanTemperature(hold, 12)).toBeNull();
  });
  it('do not depend on how a straight stretch is cut', () => {
    const whole = [{ hour: 0, celsius: 20 }, { hour: 12, celsius: 44 }]; // prettier-ignore
    const cut = Array.from({ length: 49 }, (_, i) => ({ hour: i / 4, celsius: 20 + i / 2 }));
    expect(warmthOf(whole)?.warmHours.middle).toBeCloseTo(warmthOf(cut)?.warmHours.middle ?? 0, 4);
  });
});

describe('the jar behind the bath', () => {
  it("follows Newton's law: 63.2 % of the way after one time constant, 95 % after three", () => {
    const jar = jarFollows(constantProfile(3, 40), 1, 30);
    expect(jar[1]?.celsius).toBeCloseTo(40 - 10 * Math.exp(-3), 9);
    expect(jarFollows(constantProfile(1, 40), 1, 30)[1]?.celsius).toBeCloseTo(36.321, 3);
  });
  it('is exact for a bath that warms steadily: behind by rate × τ in the end', () => {
    const bath = [{ hour: 0, celsius: 20 }, { hour: 20, celsius: 60 }]; // prettier-ignore
    expect(jarFollows(bath, 1, 20)[1]?.celsius).toBeCloseTo(58, 6);
  });
});

describe('storage', () => {
  it('loses a tenth to 27 days at 4 °C (Hekmat & Reid 2007; 2e8 → 1e7 in 35.1 d [computed])', () => {
    expect(storageLoss({ fridgeDays: 27, frozenDays: 0, freezings: 0 }).middle).toBeCloseTo(1, 12);
    const loss = storageLoss({ fridgeDays: 35.13, frozenDays: 0, freezings: 0 });
    expect(expectedCount(2e8, loss).middle / 1e7).toBeCloseTo(1, 3);
    expect(expectedCount(2e8, loss).low).toBeLessThan(expectedCount(2e8, loss).middle);
  });
  it('loses about 1.54 powers of ten in 12 weeks frozen (Salem, Fathi & Awad 2005), besides the step', () => {
    const frozen = storageLoss({ fridgeDays: 0, frozenDays: 84, freezings: 0 });
    expect(frozen.middle).toBeGreaterThan(1.4);
    expect(frozen.middle).toBeLessThan(1.7);
    const step = storageLoss({ fridgeDays: 0, frozenDays: 0, freezings: 1 });
    // The middle: 0.2 to 0.8 is common practice, no source.
    expect(Math.abs(step.middle - 0.5)).toBeLessThan(0.3);
    expect(step.high).toBeLessThanOrEqual(1);
  });
  it('costs 3.32 doublings for each power of ten; at 65 min (El-Ziney 2018) that is 3.6 h', () => {
    expect(DOUBLINGS_PER_TENTH).toBeCloseTo(3.321928, 6);
    expect(delayHours({ low: 1, middle: 1, high: 1 }).middle).toBeCloseTo(3.321928 * 1.0813, 1);
  });
  it("uses the keeper's own delay only once it is less than half as wide", () => {
    const few = [2, 3, 4].map((fridgeDays) => ({ fridgeDays, setHours: 12 + fridgeDays }));
    expect(delayPerDay(few).own).toBe(false);
    const many = Array.from({ length: 40 }, (_, i) => ({
      fridgeDays: i % 20,
      setHours: 12 + 0.3 * (i % 20),
    }));
    const result = delayPerDay(many);
    expect(result.posterior.sd).toBeLessThan(result.prior.sd / 2);
    expect(result.own).toBe(true);
    expect(result.used.mean).toBeCloseTo(0.3, 1);
    expect(delayPerDay([]).used).toEqual(delayPerDay([]).prior);
    expect(delayPerDay(many.map((row) => ({ ...row, fridgeDays: 5 }))).own).toBe(false);
  });
});
