// Days by which things are to be eaten or to seed, their order, and what falls due. The days themselves are common practice, no
// source; they are compared with the rule as it is written, not with what the code prints.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { eatBy, firstOpened, seedBy, type Standing } from '../../core/shelf/by-when';
import { shelfDue } from '../../core/shelf/due';
import { SHELF_GROUPS } from '../../core/shapes/shelf-calls';
import { groupOf, inEatingOrder, type Ordered } from '../../core/shelf/eating-order';
import { LIMIT_NAMES, LIMIT_SETTINGS, shelfLimits } from '../../core/shelf/limits';
import { addDays } from '../../core/quantities/typed-days';

const cold: Standing = {
  place: 'fridge', coldSince: '2026-05-01', seedSince: '2026-05-01', opened: null, movedOn: null, thawed: false,
}; // prettier-ignore
/** As usual: the keeper set none. */
const SHELF_LIMITS = shelfLimits(new Map());
const NO_LIMIT = { seedFridgeDays: null, seedFreezerDays: null };

describe('the last day', () => {
  it('follows from where it stands and whether it was opened or thawed (common practice, no source)', () => {
    const eat = (more: Partial<Standing>): string | null | undefined =>
      eatBy({ ...cold, ...more }, SHELF_LIMITS)?.on;
    expect(eat({})).toBe('2026-05-15');
    expect(eat({ opened: { on: '2026-05-03', by: 'eaten' } })).toBe('2026-05-08');
    // Opened late, it keeps no longer than it would have unopened.
    expect(eat({ opened: { on: '2026-05-13', by: 'opened' } })).toBe('2026-05-15');
    expect(eat({ opened: { on: null, by: 'opened' } })).toBe('2026-05-06');
    expect(eat({ place: 'freezer', movedOn: '2026-05-02' })).toBe('2026-07-01');
    expect(eat({ thawed: true, movedOn: '2026-06-10' })).toBe('2026-06-13');
    expect(eat({ thawed: true, movedOn: null })).toBeNull();
    expect(eat({ place: 'warmth' })).toBeUndefined();
    expect(eat({ place: 'dried' })).toBeUndefined();
    const seed = (more: Partial<Standing>): string | null | undefined =>
      seedBy({ ...cold, ...more }, SHELF_LIMITS, NO_LIMIT)?.on;
    expect(seed({})).toBe('2026-05-15');
    expect(seed({ place: 'freezer', movedOn: '2026-05-02' })).toBe('2026-07-31');
  });

  it('as seed never lies after the day up to which advice allows it', () => {
    expect(seedBy(cold, SHELF_LIMITS, { ...NO_LIMIT, seedFridgeDays: 10 })).toMatchObject({
      on: '2026-05-11', until: '2026-05-11',
    }); // prettier-ignore
    expect(seedBy(cold, SHELF_LIMITS, { ...NO_LIMIT, seedFridgeDays: 21 })).toMatchObject({
      on: '2026-05-15', until: '2026-05-22',
    }); // prettier-ignore
  });

  it('is opened by what can’t be done through a lid, and by nothing else', () => {
    const at = (what: 'eaten' | 'seed' | 'fridge' | 'still there' | 'kept apart', when: string | null) => ({
      what, when, amount: null, pieces: null,
    }); // prettier-ignore
    const made = '2026-05-01';
    expect(firstOpened([at('fridge', made), at('still there', '2026-05-04')], made)).toBeNull();
    expect(firstOpened([at('fridge', made), at('seed', '2026-05-04'), at('eaten', '2026-05-05')], made)).toEqual({ on: '2026-05-04', by: 'seed' }); // prettier-ignore
    // A pot that was filled on the day the jar was made was filled beside it.
    expect(firstOpened([at('kept apart', made)], made)).toBeNull();
    expect(firstOpened([at('kept apart', '2026-05-04')], made)).toEqual({
      on: '2026-05-04',
      by: 'kept apart',
    });
  });

  it('takes the keeper’s own days, and none that are no days', () => {
    for (const name of LIMIT_NAMES) {
      expect(shelfLimits(new Map([[LIMIT_SETTINGS[name], 9]]))).toEqual({ ...SHELF_LIMITS, [name]: 9 });
      for (const none of [0, -3, 2.5, 1e9, NaN])
        expect(shelfLimits(new Map([[LIMIT_SETTINGS[name], none]]))).toEqual(SHELF_LIMITS);
    }
  });
});

const day = fc.integer({ min: 0, max: 60 }).map((days) => addDays('2026-04-01', days));
const thing: fc.Arbitrary<Ordered> = fc
  .record({
    label: fc.constantFrom('a', 'b', 'c'),
    madeOn: day,
    reserve: fc.boolean(),
    place: fc.constantFrom('warmth' as const, 'fridge' as const, 'freezer' as const, 'dried' as const),
    opened: fc.option(fc.record({ on: fc.option(day), by: fc.constant('opened' as const) })),
    thawed: fc.boolean(),
    movedOn: fc.option(day),
    eat: fc.boolean(),
    discard: fc.constantFrom(null, null, 'spoiled' as const),
  })
  .map(({ label, madeOn, reserve, eat, discard, ...rest }) => {
    const standing: Standing = { ...rest, coldSince: madeOn, seedSince: madeOn };
    return {
      label, madeOn, reserve, standing, eatBy: eatBy(standing, SHELF_LIMITS), answer: { eat: eat && discard === null, discard },
    }; // prettier-ignore
  });

describe('the order', () => {
  it('is by day within each kind, loses nothing and hangs on no order before', () => {
    fc.assert(
      fc.property(fc.array(thing, { maxLength: 12 }), (all) => {
        const today = '2026-05-01';
        const sorted = inEatingOrder(all, today);
        expect(new Set(sorted)).toEqual(new Set(all));
        const groups = sorted.map((one) => SHELF_GROUPS.indexOf(groupOf(one, today)));
        expect(groups).toEqual(groups.toSorted((a, b) => a - b));
        const eaten = sorted.filter((one) => groupOf(one, today) === 'eat').map(({ eatBy: by }) => by?.on ?? '');
        expect(eaten).toEqual(eaten.toSorted());
        expect(eaten.every((on) => on === '' || on >= today)).toBe(true);
        // Nothing that is no food stands among what is to be eaten.
        for (const one of sorted) {
          const group = groupOf(one, today);
          if (!one.answer.eat) expect(['aside', 'discard', 'warm']).toContain(group);
          if (one.answer.discard !== null) expect(group).toBe('discard');
        }
        expect(inEatingOrder(all.toReversed(), today).map(({ label, madeOn }) => [label, madeOn])).toEqual(
          sorted.map(({ label, madeOn }) => [label, madeOn]),
        );
      }),
    );
  }); // prettier-ignore
});

describe('what falls due', () => {
  const kept = { id: 'x', name: '1 May a', group: 'eat', eatBy: { on: '2026-05-15' }, seedBy: { on: '2026-05-14' }, forSeed: true }; // prettier-ignore
  it('is told on its day and the day before, and of seed only where it is meant for seed', () => {
    expect(shelfDue([kept], '2026-05-12')).toEqual([]);
    expect(shelfDue([kept], '2026-05-13')).toMatchObject([{ what: 'seed by', on: '2026-05-14' }]);
    expect(shelfDue([kept], '2026-05-14')).toMatchObject([{ what: 'seed by' }, { what: 'eat by' }]);
    expect(shelfDue([{ ...kept, forSeed: false }], '2026-05-14')).toMatchObject([{ what: 'eat by' }]);
    expect(shelfDue([kept], '2026-05-16')).toEqual([]);
    for (const group of ['aside', 'discard', 'warm', 'past'])
      expect(shelfDue([{ ...kept, group }], '2026-05-14')).toEqual([]);
  });
});
