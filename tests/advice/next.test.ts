// What to seed from next: no score lifts a hard stop, and reasons say what they must.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NEUTRAL_LIMITS } from '../../core/ledger/default-preferences';
import { oddsPoints, weakChance } from '../../core/advice/seed-cost';
import { limitsOf, stopsOf } from '../../core/advice/stops';
import { adviceSaid, cautionOf, KEEPER, seedOf } from './seed-of';
import { doubtSays, lookSays, stopLifts, stopSays } from '../../core/says/seed-looks-says';
import type { SeedLook } from '../../core/shapes/seed-codes';
import { SAFETY_STOPS } from '../../core/shapes/safety-codes';
import type { NextInput, SeedCandidate } from '../../core/advice/seed-candidate';

const DEFAULT_LIMITS = limitsOf(NEUTRAL_LIMITS);
const advice = (candidates: readonly SeedCandidate[], more: Partial<NextInput> = {}) =>
  adviceSaid({
    candidates,
    limits: DEFAULT_LIMITS,
    ...KEEPER,
    ...more,
  });

const anyJarParts = {
  label: fc.string({ minLength: 1, maxLength: 8 }),
  spoiled: fc.boolean(),
  stops: fc.subarray([...SAFETY_STOPS]),
  passed: fc.boolean(),
  inHold: fc.boolean(),
  caution: fc.constantFrom(null, cautionOf('look'), cautionOf('set aside'), cautionOf('condemned')),
  place: fc.constantFrom('fridge', 'freezer', 'dried'),
  days: fc.integer({ min: 0, max: 800 }),
  generation: fc.integer({ min: 1, max: 30 }),
};
const anyJar = fc.record(anyJarParts);
const DOUBT = { code: 'power cut', hours: 3 } as const;
const LOOKS: readonly SeedLook[] = ['1 Mar a', '1 Mar b', '1 Mar c', '1 Mar d'].map((label) => ({
  code: 'descends from doubt',
  label,
  because: [{ code: 'power cut', hours: null }],
}));
const anyScore = fc.record({
  points: fc.double({ min: -1e6, max: 1e6, noNaN: true }),
  low: fc.double({ noNaN: true }),
  high: fc.double({ noNaN: true }),
});

describe('hard stops', () => {
  it('are never lifted by a score (property: any jar, any score, any outcome)', () => {
    fc.assert(
      fc.property(fc.array(anyJar, { maxLength: 8 }), fc.array(fc.option(anyScore), { minLength: 8, maxLength: 8 }), (jars, scores) => {
        const given = jars.map((more, i) => seedOf(`${i} ${more.label}`, { ...more, vigour: scores[i] ?? null }));
        const unscored = given.map((candidate) => ({ ...candidate, vigour: null }));
        const limits = { ...DEFAULT_LIMITS, generation: 20 };
        const scored = advice(given, { limits });
        const bare = advice(unscored, { limits });
        const stopped = (result: typeof scored): string[] => result.ranking.filter((r) => !r.allowed).map((r) => r.label).toSorted();
        expect(stopped(scored)).toEqual(stopped(bare));
        for (const candidate of given) {
          const ranked = scored.ranking.find((r) => r.id === candidate.id);
          const bad = candidate.spoiled || candidate.stops.some((stop) => stop !== 'spoiled' && stop !== 'set aside') || candidate.inHold || candidate.caution?.level === 'condemned' || candidate.caution?.level === 'set aside';
          if (bad) expect(ranked).toMatchObject({ allowed: false, cost: null });
        }
        // Nothing stopped stands above anything allowed.
        const firstStopped = scored.ranking.findIndex((r) => !r.allowed);
        if (firstStopped >= 0) expect(scored.ranking.slice(firstStopped).every((r) => !r.allowed)).toBe(true);
      }),
    );
  }); // prettier-ignore

  it('and doubts are never answered by a score (property: no seed in doubt stands above one without, nor first)', () => {
    const one = fc.record({ ...anyJarParts, inDoubt: fc.boolean(), outcomeKnown: fc.boolean(), score: fc.option(anyScore) });
    fc.assert(
      fc.property(fc.array(one, { maxLength: 8 }), (those) => {
        const given = those.map(({ inDoubt, score, label, ...more }, i) =>
          seedOf(`${i} ${label}`, { ...more, vigour: score, doubts: inDoubt ? [DOUBT] : [] }));
        const doubtful = new Set(given.filter(({ doubts }) => doubts.length > 0).map(({ id }) => id));
        const { ranking, sentence, warnings } = advice(given);
        const offered = ranking.filter(({ allowed }) => allowed);
        const inDoubt = offered.map(({ id }) => id !== null && doubtful.has(id));
        // Once one is in doubt, all after it are; a fresh start is always before them.
        expect(inDoubt).toEqual(inDoubt.toSorted((a, b) => Number(a) - Number(b)));
        expect(inDoubt[0]).toBe(false);
        expect(inDoubt.filter(Boolean)).toHaveLength(given.filter((candidate) => doubtful.has(candidate.id) && stopsOf(candidate, DEFAULT_LIMITS).length === 0).length);
        for (const { id, reasons, doubts, wouldChange } of offered) {
          if (id === null || !doubtful.has(id)) continue;
          expect([reasons[0], doubts]).toEqual([doubtSays(DOUBT), [DOUBT]]);
          expect(reasons.join(' ')).not.toContain('scored');
          expect(wouldChange).toMatch(/^No score would change its place/);
          expect(sentence).not.toContain(`from ${given.find((candidate) => candidate.id === id)?.label}.`);
        }
        if (offered.length > 1 && inDoubt.slice(1).every(Boolean)) expect(sentence).toMatch(/in doubt.*When in doubt, discard\.$/);
        for (const warning of warnings) if ([...doubtful].some((id) => warning.startsWith(id))) expect(warning).not.toContain('Take seed');
      }),
    );
  }); // prettier-ignore

  it('and what is to be looked at is outweighed by no equal cost (property: fewer looks first, none lifted by a score)', () => {
    const one = fc.record({ looks: fc.integer({ min: 0, max: 4 }), own: fc.option(fc.integer({ min: 0, max: 100 })) });
    fc.assert(
      fc.property(fc.array(one, { minLength: 2, maxLength: 8 }), (those) => {
        const given = those.map(({ looks, own }, i) =>
          seedOf(`${i}`, { asks: LOOKS.slice(0, looks), own: own === null ? null : { points: Math.max(75, own) } }));
        const { ranking } = advice(given);
        const seeds = ranking.filter(({ id }) => id !== null);
        const counts = seeds.map(({ looks }) => looks.length);
        expect(counts).toEqual(counts.toSorted((a, b) => a - b));
        for (const { id, looks, reasons } of seeds) {
          expect(looks).toEqual(given.find((candidate) => candidate.id === id)?.asks);
          for (const look of looks) expect(reasons).toContain(lookSays(look));
        }
      }),
    );
  }); // prettier-ignore

  it('and a jar that may be in its hold is no seed yet, whatever it scores', () => {
    const waiting = seedOf('20 May a', { inHold: true, outcomeKnown: false, vigour: { points: 99, low: 95, high: 100 } });
    const alone = advice([waiting]);
    expect(alone.ranking.at(-1)).toMatchObject({ allowed: false, cost: null, stops: [{ code: 'in its hold' }] });
    expect(alone.sentence).toBe(
      'Nothing that is kept may be used as seed yet: nobody has written down how 20 May a came out. Write that down after the hold, or make a fresh start from sources.',
    );
    expect(advice([waiting, seedOf('well')]).sentence).toBe('Seed the next batch from well.');
  }); // prettier-ignore

  it('name the gravest first and say what lifts each', () => {
    const stops = stopsOf(seedOf('x', { caution: cautionOf('set aside'), days: 30 }), DEFAULT_LIMITS);
    expect(stops.map(({ code }) => code)).toEqual(['set aside', 'too old']);
    expect(stops.map(stopSays)[0]).toContain('9 May a');
    expect(stops.map(stopLifts)[0]).toContain('written reason');
    expect(stopsOf(seedOf('x', { spoiled: true }), DEFAULT_LIMITS).map(stopLifts)).toEqual([null]);
  });

  it('of the keeper: a generation that is too far', () => {
    expect(stopsOf(seedOf('x', { generation: 9 }), { ...DEFAULT_LIMITS, generation: 9 })[0]?.code).toBe(
      "keeper's limit",
    );
    expect(stopsOf(seedOf('x', { generation: 8 }), { ...DEFAULT_LIMITS, generation: 9 })).toEqual([]);
  });
});

describe('the ranking', () => {
  it('offers a fresh start when nothing may be used, never a least-bad jar', () => {
    const result = advice([
      seedOf('a', { caution: cautionOf('set aside') }),
      seedOf('b', { spoiled: true }),
      seedOf('c', { days: 60 }),
    ]);
    expect(result.nothingMayBeUsed).toBe(true);
    expect(result.sentence).toContain('fresh start');
    expect(result.ranking[0]?.kind).toBe('fresh start');
    expect(advice([]).nothingMayBeUsed).toBe(true);
  });

  it('puts the healthier jar first and a fresh start above a worn one', () => {
    const result = advice([
      seedOf('worn', { generation: 7, vigour: { points: 35, low: 28, high: 42 } }),
      seedOf('well'),
    ]);
    expect(result.ranking.map(({ label }) => label)).toEqual(['well', 'a fresh start from Blue Tin', 'worn']);
    expect(result.sentence).toBe('Seed the next batch from well.');
    for (const { reasons, wouldChange } of result.ranking) {
      expect(reasons.join(' ')).toMatch(/\d/);
      expect(wouldChange).toMatch(/\d/);
    }
  });

  it('takes an unknown outcome as riskier than a usual one and safer than a weak one', () => {
    expect(weakChance(0.1, null)).toBeGreaterThan(weakChance(0.1, 75));
    expect(weakChance(0.1, null)).toBeLessThan(weakChance(0.1, 40));
  });

  it('warns before the last jar that carries a line is eaten, and suggests a plain jar where judgement is blocked', () => {
    const result = advice([seedOf('14 Mar b'), seedOf('held', { caution: cautionOf('set aside') })], {
      blocked: ['oat bran'],
    });
    expect(result.warnings).toEqual([
      '14 Mar b is the last that carries Heron. Take seed from it before it is eaten.',
    ]);
    expect(result.suggestions[0]).toContain('small plain jar');
    expect(advice([seedOf('a'), seedOf('b')]).warnings).toEqual([]);
  });

  it('offers a fresh start before a jar that its own hold left in doubt, and says why', () => {
    const doubted = seedOf('14 Mar b', { doubts: [DOUBT], vigour: { points: 99, low: 95, high: 100 } });
    const alone = advice([doubted]);
    expect(alone.nothingMayBeUsed).toBe(false);
    expect(alone.ranking.map(({ label }) => label)).toEqual(['a fresh start from Blue Tin', '14 Mar b']);
    expect(alone.sentence).toBe(
      'A fresh start from Blue Tin comes out best now: all else that is kept is in doubt from its own hold. When in doubt, discard.',
    );
    expect(alone.warnings).toEqual([
      '14 Mar b is the last that carries Heron, and its own hold left it in doubt. When in doubt, discard it: a line can be started afresh.',
    ]);
    expect(advice([doubted, seedOf('well')]).sentence).toBe('Seed the next batch from well.');
  });

  it('puts no jar of unknown outcome before one that was seen (property)', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.boolean(), fc.option(anyScore)), { maxLength: 7 }), (those) => {
        const given = those.map(([outcomeKnown, vigour], i) => seedOf(`${i}`, { outcomeKnown, vigour }));
        const { ranking } = advice(given);
        expect(ranking).toHaveLength(given.length + 1);
        const rank = (label: string): number => ranking.findIndex((one) => one.label === label);
        for (const a of given) {
          for (const b of given) {
            if (!a.outcomeKnown && b.outcomeKnown) expect(rank(a.label)).toBeGreaterThan(rank(b.label));
          }
        }
      }),
    );
  }); // prettier-ignore

  it('says to look first where nobody wrote down how any came out', () => {
    const unseen = seedOf('14 Mar b', { outcomeKnown: false, vigour: null });
    expect(advice([unseen]).sentence).toBe(
      'Seed the next batch from 14 Mar b, but nobody has written down how it came out: look at it first.',
    );
    const dear = seedOf('worn', { vigour: { points: 20, low: 10, high: 30 } });
    expect(advice([unseen, dear]).ranking.map(({ label }) => label)).toEqual([
      'a fresh start from Blue Tin',
      'worn',
      '14 Mar b',
    ]);
  });

  it('says that a chance is a starting assumption as long as nothing tells', () => {
    const chance = (jarsTell: number): string =>
      advice([seedOf('a')], { jarsTell }).ranking[0]?.reasons.join(' ') ?? '';
    expect(chance(0)).toContain('come out weak (a starting assumption: nothing of yours tells yet).');
    expect(chance(4)).toContain('(a starting assumption: only 4 of your jars tell yet, too few)');
    expect(chance(5)).not.toContain('assumption');
  });

  it('speaks of one day, and of what a good jar costs as jars thrown out', () => {
    const result = advice([seedOf('a', { days: 1 })], { unit: 'jars' });
    expect(result.ranking[0]?.reasons.join(' ')).toContain('kept for 1 day,');
    expect(result.ranking[1]?.reasons.join(' ')).toContain(
      'It is then as if 240 jars were thrown out for every 100 good ones',
    );
  });
});

describe('near ties', () => {
  const look = { caution: cautionOf('look') };
  const LOOK = 'Look at it first: it seeded the spoiled jar 9 May a.';
  const vigour = (points: number) => ({ points, low: points - 7, high: points + 7 });
  const first = (...those: SeedCandidate[]): string => advice(those).ranking[0]?.label ?? '';

  it('go to what needs no look and is known to be kept, unless the other is clearly cheaper', () => {
    expect(first(seedOf('a', look), seedOf('b'))).toBe('b');
    expect(first(seedOf('a', { asks: [{ code: 'fine bubbles' }] }), seedOf('b'))).toBe('b');
    expect(first(seedOf('a', { keptSaid: false }), seedOf('b'))).toBe('b');
    expect(first(seedOf('a', look), seedOf('b', { vigour: vigour(74) }))).toBe('b');
    expect(first(seedOf('a', look), seedOf('b', { vigour: vigour(50) }))).toBe('a');
    expect(first(seedOf('a', { keptSaid: false }), seedOf('b', { vigour: vigour(65) }))).toBe('a');
  });

  it('what has to be looked at first wins only where it is more than a twentieth cheaper', () => {
    // "Clearly cheaper" is a twentieth (the program's own measure, no source): a level, so that cost is what it says.
    const { jarsPerGeneration, jar } = KEEPER.costs;
    const spread = jarsPerGeneration * KEEPER.freshStart.generations;
    const costing = (label: string, cost: number, more: Partial<SeedCandidate> = {}) =>
      seedOf(label, { delayHours: 0, level: { weak: 0.1, worth: ((KEEPER.freshStart.cost - cost) * spread) / jar, carries: 0, mayCarry: 0 }, ...more });
    expect(first(costing('a', 2 * 0.96, look), costing('b', 2))).toBe('b');
    expect(first(costing('a', 2 * 0.94, look), costing('b', 2))).toBe('a');
  }); // prettier-ignore

  it('of equals the jar that came out better itself comes first, and gains no better odds by it', () => {
    const mates = ['a', 'b'].map((label, i) => seedOf(label, { batch: 'x', own: { points: 80 + 9 * i } }));
    const { ranking } = advice(mates);
    expect(ranking.map(({ label }) => label).slice(0, 2)).toEqual(['b', 'a']);
    expect(ranking[0]?.weakChance).toBe(ranking[1]?.weakChance);
  });

  it('no own score makes a seed better than its batch (property)', () => {
    fc.assert(
      fc.property(fc.double({ min: -50, max: 150, noNaN: true }), fc.double({ min: -50, max: 150, noNaN: true }), (points, own) => {
        expect(oddsPoints(points, own)).toBeLessThanOrEqual(points);
        expect(oddsPoints(points, own)).toBeGreaterThanOrEqual(Math.min(points, own));
        expect(oddsPoints(points, null)).toBeCloseTo(points, 9);
      }),
    );
  }); // prettier-ignore

  it('a jar to be looked at is recommended with what has to be looked at, and so is the last of its line', () => {
    const { sentence, warnings, ranking } = advice([seedOf('6 May a', look)]);
    expect(sentence).toBe(`Seed the next batch from 6 May a. ${LOOK}`);
    expect(warnings[0]).toBe(
      `6 May a is the last that carries Heron. ${LOOK} If nothing speaks against it, take seed from it before it is eaten.`,
    );
    expect(ranking[0]?.reasons[0]).toBe(LOOK);
  });
});
