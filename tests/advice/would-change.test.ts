// What would change a place: only what a keeper can see or do, and each thing said does change it.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adviseNext } from '../../core/advice/seed-ranking';
import { limitsOf } from '../../core/advice/stops';
import { NEUTRAL_LIMITS } from '../../core/ledger/default-preferences';
import { adviceSaid, cautionOf, KEEPER, seedOf } from './seed-of';
import type { NextInput, SeedCandidate } from '../../core/advice/seed-candidate';

const inputOf = (candidates: readonly SeedCandidate[]): NextInput => ({ candidates, limits: limitsOf(NEUTRAL_LIMITS), ...KEEPER }); // prettier-ignore
const order = (candidates: readonly SeedCandidate[]): string[] =>
  adviseNext(inputOf(candidates)).ranking.map(({ label }) => label);
const says = (candidates: readonly SeedCandidate[], label: string): string => {
  const found = adviceSaid(inputOf(candidates)).ranking.find((one) => one.label === label);
  if (!found) throw new Error(`${label} is not ranked`);
  return found.wouldChange;
};

const anySeed = fc.record({
  generation: fc.integer({ min: 1, max: 9 }),
  days: fc.integer({ min: 0, max: 40 }),
  delayHours: fc.double({ min: 0, max: 6, noNaN: true }),
  outcomeKnown: fc.boolean(),
  level: fc.option(fc.record({ weak: fc.double({ min: 0, max: 1, noNaN: true }), worth: fc.double({ min: -20, max: 20, noNaN: true }), carries: fc.constant(0), mayCarry: fc.constant(0) })), // prettier-ignore
  asks: fc.array(fc.constant({ code: 'fine bubbles' } as const), { maxLength: 2 }),
  keptSaid: fc.boolean(),
});

describe('what would change a place', () => {
  it('does change it once it is done (property)', () => {
    let met = 0;
    fc.assert(
      fc.property(fc.array(anySeed, { minLength: 2, maxLength: 6 }), (those) => {
        const given = those.map((more, i) => seedOf(`1 Mar ${'abcdef'[i]}`, more));
        for (const seed of given) {
          const found = /^It would come before (.+?) once /.exec(says(given, seed.label));
          if (!found?.[1]) continue;
          met += 1;
          const done = given.map((one) => (one === seed ? { ...one, asks: [], keptSaid: true } : one));
          // Those older than three weeks keep that look.
          if (seed.days > 21) continue;
          const now = order(done);
          expect(now.indexOf(seed.label)).toBeLessThan(now.indexOf(found[1]));
        }
      }),
      { numRuns: 600 },
    );
    expect(met).toBeGreaterThan(3);
  });

  it('is said of ties as ties, and of a fresh start by what it costs', () => {
    const pair = [seedOf('3 Mar a', { days: 3 }), seedOf('1 Mar a')];
    expect(says(pair, '3 Mar a')).toBe('It is as good as 1 Mar a: either may come first.');
    const fresh = says([seedOf('3 Mar a')], 'a fresh start from Blue Tin');
    expect(fresh).toMatch(/only if what starts a line were cheaper.* costs \d\.\d\d EUR more\.$/);
  });

  it('of what stops a seed is never a score', () => {
    const stopped = seedOf('held', {
      caution: cautionOf('set aside'),
      vigour: { points: 100, low: 99, high: 100 },
    });
    expect(says([stopped, seedOf('3 Mar a')], 'held')).toBe('Only a written reason lifts it.');
  });
});

describe('near ties', () => {
  it('put the freshest of identical jars first and keep a reserve back (property)', () => {
    fc.assert(
      fc.property(fc.array(fc.record({ days: fc.integer({ min: 0, max: 20 }), reserve: fc.boolean() }), { minLength: 2, maxLength: 7 }), (those) => {
        const level = { weak: 0.04, worth: 9, carries: 0, mayCarry: 0 };
        const given = those.map(({ days, reserve }, i) =>
          seedOf(`${i}`, { days, level, delayHours: days / 8, kind: reserve ? 'reserve' : 'jar' }));
        const seeds = adviseNext(inputOf(given)).ranking.filter(({ id }) => id !== null);
        const keys = seeds.map(({ kind, days }) => (kind === 'reserve' ? 100 : 0) + days);
        expect(keys).toEqual(keys.toSorted((a, b) => a - b));
      }),
    );
  }); // prettier-ignore

  it('a clearly better one comes first whatever its age, and whichever costs less than a fresh start pays (property)', () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 20, noNaN: true }), fc.double({ min: -20, max: 20, noNaN: true }), (a, b) => {
        const [one, other] = [a, b].map((worth, i) => seedOf(`${i}`, { days: i, delayHours: 0, level: { weak: 0.1, worth, carries: 0, mayCarry: 0 } }));
        if (!one || !other) return;
        const labels = order([one, other]);
        if (Math.abs(a - b) > 2) expect(labels.indexOf('0') < labels.indexOf('1')).toBe(a > b);
        for (const [label, worth] of [['0', a], ['1', b]] as const)
          if (Math.abs(worth) > 1e-6) expect(labels.indexOf(label) < labels.indexOf('a fresh start from Blue Tin')).toBe(worth > 0);
      }),
    );
  }); // prettier-ignore
});
