// What would change a place: every figure said is put back in and must turn the order, and the nearest whole number short of
// it must not. The costs are this file's own; that figure and order belong together is what is held.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { adviseNext, type NextInput, type Ranked, type SeedCandidate } from '../../core/advice/next';
import { placeCostOf } from '../../core/advice/looks';
import { inOrder } from '../../core/advice/order';
import { seedCost } from '../../core/advice/seed-cost';
import { limitsOf } from '../../core/advice/stops';
import { delayHours, storageLoss } from '../../core/growth/storage';
import { NEUTRAL_LIMITS } from '../../core/ledger/default-preferences';
import { KEEPER, seedOf } from './seed-of';

const inputOf = (candidates: readonly SeedCandidate[], more: Partial<NextInput> = {}): NextInput => ({
  candidates,
  limits: limitsOf(NEUTRAL_LIMITS),
  ...KEEPER,
  fromReserve: (generation, start) => 2.2 + 0.02 * generation + start / 200,
  ...more,
});
const order = (input: NextInput): string[] => adviseNext(input).ranking.map(({ label }) => label);
const rankedOf = (input: NextInput, label: string): Ranked => {
  const found = adviseNext(input).ranking.find((one) => one.label === label);
  if (!found) throw new Error(`${label} is not ranked`);
  return found;
};

const MOVES = /It would (lose its place to|come before|come after) (.+?) (?:only )?if (.+)/;
interface Said {
  readonly other: string;
  readonly before: boolean;
  readonly figures: readonly { readonly kind: 'weak' | 'score' | 'days'; readonly said: number; readonly step: number }[];
} // prettier-ignore

/** What a sentence says would turn the order: figures, and which way is short of each. */
function read(says: string): Said | null {
  const found = MOVES.exec(says);
  if (!found) return null;
  const [, move = '', other = '', rest = ''] = found;
  const before = move === 'come before';
  const numbers = (pattern: RegExp): RegExpExecArray[] => [...rest.matchAll(pattern)];
  return {
    other,
    before,
    figures: [
      ...numbers(/(\d+) in 100 (?:of its )?jars .*?came out weak instead of (\d+)/g).map(
        ([, said = '', now = '']) =>
          ({ kind: 'weak', said: Number(said), step: Math.sign(Number(now) - Number(said)) }) as const,
      ),
      ...numbers(/its batch scored (\d+) or (less|more)/g).map(
        ([, said = '', way]) =>
          ({ kind: 'score', said: Number(said), step: way === 'less' ? 1 : -1 }) as const,
      ),
      ...numbers(/for (\d+) days? (more|less)/g).map(
        ([, said = '']) => ({ kind: 'days', said: Number(said), step: -1 }) as const,
      ),
    ],
  };
}

/** An hour of delay for a day of keeping, from the published figures by the storage model itself. */
const hoursFor = (place: SeedCandidate['place'], days: number): number =>
  delayHours(
    storageLoss({
      fridgeDays: place === 'freezer' ? 0 : days,
      frozenDays: place === 'freezer' ? days : 0,
      freezings: 0,
    }),
  ).middle;

/** The order with one figure of one seed put in its place. */
function orderWith(input: NextInput, moved: SeedCandidate, kind: 'weak' | 'score' | 'days', figure: number, before: boolean): string[] {
  if (kind === 'weak') {
    const { ranking } = adviseNext(input);
    const cost = seedCost(moved, figure / 100, input);
    const placeCost = placeCostOf(moved, figure / 100, input);
    const changed = ranking.filter(({ allowed }) => allowed).map((one) => (one.id === moved.id ? { ...one, cost, placeCost } : one));
    const fresh = changed.find((one) => one.kind === 'fresh start');
    if (!fresh) throw new Error('a fresh start is always ranked');
    return inOrder(changed.filter((one) => one !== fresh), fresh).map(({ label }) => label);
  }
  const days = before ? -figure : figure;
  const changed: SeedCandidate = kind === 'score'
    ? { ...moved, vigour: { points: figure, low: figure, high: figure } }
    : { ...moved, days: moved.days + days, delayHours: moved.delayHours + Math.sign(days) * hoursFor(moved.place, Math.abs(days)) };
  return order({ ...input, candidates: input.candidates.map((one) => (one.id === moved.id ? changed : one)) });
} // prettier-ignore

const stands = (labels: readonly string[], one: string, other: string): boolean =>
  labels.indexOf(one) < labels.indexOf(other);

const anySeed = fc.record({
  kind: fc.constantFrom('jar', 'portion', 'reserve', 'older sibling'),
  generation: fc.integer({ min: 1, max: 9 }),
  place: fc.constantFrom('fridge', 'freezer'),
  days: fc.integer({ min: 0, max: 40 }),
  delayHours: fc.double({ min: 3, max: 14, noNaN: true }),
  outcomeKnown: fc.boolean(),
  vigour: fc.option(
    fc.double({ min: 0, max: 110, noNaN: true }).map((points) => ({ points, low: points, high: points })),
  ),
  own: fc.option(fc.record({ points: fc.double({ min: 0, max: 110, noNaN: true }) })),
  caution: fc.constantFrom(null, 'look'),
  keptSaid: fc.boolean(),
  pastUnknown: fc.boolean(),
});

describe('what would change a place', () => {
  it('is true of every figure said, and not of the figure short of it (property)', () => {
    const seen = { weak: 0, score: 0, days: 0 };
    fc.assert(
      fc.property(fc.array(anySeed, { minLength: 1, maxLength: 6 }), fc.boolean(), (those, mates) => {
        const candidates = those.map((more, i) => seedOf(`1 Mar ${'abcdef'[i]}`, { ...more, ...(mates && i < 2 ? { batch: 'one batch', vigour: those[0]?.vigour ?? null } : {}) }));
        const input = inputOf(candidates);
        for (const ranked of adviseNext(input).ranking) {
          const said = read(ranked.wouldChange);
          if (!said) continue;
          const now = order(input);
          // Of a fresh start, what is said would move its neighbour.
          const mover = candidates.find(({ id }) => id === (ranked.kind === 'fresh start' ? said.other : ranked.id));
          expect(mover).toBeDefined();
          expect(stands(now, ranked.label, said.other)).toBe(!said.before);
          for (const { kind, said: figure, step } of said.figures) {
            seen[kind] += 1;
            const moved = mover as SeedCandidate;
            const dearer = ranked.kind === 'fresh start' ? said.before : !said.before;
            expect(stands(orderWith(input, moved, kind, figure, !dearer), ranked.label, said.other), `${ranked.wouldChange} (${kind} ${figure})`).toBe(said.before);
            // One short of it, as long as that lies between what is said to stand now and the figure.
            const short = figure + step;
            const actual = kind === 'weak' ? 100 * (ranked.kind === 'fresh start' ? rankedOf(input, said.other) : ranked).weakChance! : kind === 'score' ? moved.vigour!.points : 0;
            const nearer = kind === 'days' ? short >= 0 : dearer === (kind === 'weak') ? short >= actual : short <= actual;
            if (nearer && (kind === 'days' || short !== Math.min(100, Math.round(actual)))) expect(stands(orderWith(input, moved, kind, short, !dearer), ranked.label, said.other), `${ranked.wouldChange} (${kind} ${short})`).toBe(!said.before);
          }
        }
      }),
      { numRuns: 400 },
    );
    // The property must have met each kind of figure.
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(20);
  }); // prettier-ignore

  const says = (candidates: SeedCandidate[], label: string): string =>
    rankedOf(inputOf(candidates), label).wouldChange;

  it('is said in weak jars, score and days, in two sentences at most', () => {
    const pair = [
      seedOf('3 Mar a'),
      seedOf('1 Mar a', { vigour: { points: 66, low: 60, high: 72 }, days: 12, delayHours: 1.6 }),
    ];
    expect(says(pair, '3 Mar a')).toMatch(
      /^It would lose its place to 1 Mar a if \d+ in 100 of its jars came out weak instead of 6, or if its batch scored 6\d or less instead of 75\. A good jar from it costs 0\.\d\d EUR less\.$/,
    );
    expect(says(pair, '1 Mar a')).toMatch(
      /^It would come before 3 Mar a if \d in 100 of its jars came out weak instead of 1\d, or if its batch scored \d\d or more instead of 66\. A good jar from it costs 0\.\d\d EUR more\.$/,
    );
  });

  it('between jars of one batch is time alone, since a score moves both', () => {
    const mates = [seedOf('1 Mar a', { batch: 'x' }), seedOf('1 Mar b', { batch: 'x', place: 'fridge', days: 20, delayHours: 2.66 })]; // prettier-ignore
    expect(says(mates, '1 Mar b')).toMatch(/if it had stood in the fridge for 1\d days less\./);
    expect(says(mates, '1 Mar b')).not.toContain('scored');
    expect(says(mates, '1 Mar a')).not.toContain('scored');
  });

  it('is said plainly where nothing within reach would do it', () => {
    const reserve = seedOf('cubes', { kind: 'reserve', place: 'freezer', days: 3 });
    const dear = inputOf([seedOf('3 Mar a'), reserve], { fromReserve: () => 3 });
    expect(rankedOf(dear, 'cubes').wouldChange).toMatch(
      /^No chance of a weak jar, score or time kept alone would make it come before 3 Mar a\. A good jar from it costs \d\.\d\d EUR more\.$/,
    );
    // From a line where every other jar is thrown out, even the best score comes after a fresh start.
    const hopeless = inputOf([seedOf('1 Mar a', { vigour: { points: 0, low: 0, high: 5 } })], { discarded: [0.5] }); // prettier-ignore
    expect(rankedOf(hopeless, '1 Mar a').wouldChange).toContain('alone would make it come before');
  });

  it('looks past what is as good, and says both', () => {
    const equals = [
      seedOf('3 Mar a', { batch: 'x' }),
      seedOf('3 Mar b', { batch: 'x' }),
      seedOf('1 Mar a', { vigour: { points: 60, low: 55, high: 65 } }),
    ];
    expect(says(equals, '3 Mar a')).toMatch(
      /^It is as good as 3 Mar b: either may come first \(less than 0\.01 apart\)\. It would come after 1 Mar a if /,
    );
  });

  it('of what stops a seed is never a score', () => {
    const stopped = seedOf('held', { caution: 'on hold', vigour: { points: 100, low: 99, high: 100 } });
    expect(says([stopped, seedOf('3 Mar a')], 'held')).toBe('Only a written reason lifts the hold.');
  });
});
