// What going on from a belief is worth: all that follows, weak jars and fresh starts to come included, against starting
// afresh now. The cost of a good jar's worth at which a fresh start just pays for itself is the one that long-run choices reach
// (renewal reward, Ross 1970; with no weak jars age replacement, Barlow & Hunter 1960; both from memory). Whoever goes on is taken
// to see the level later on, which is an upper bound of what going on is worth (Hauskrecht 2000, from memory): so much is taken off
// for seeing a fall late (SEES_LATE).
import { normalCdf } from '../vigour/distributions';
import { movesOf } from '../vigour/level/moves';
import type { LevelRules } from '../vigour/level/rules';

/** What worth is counted from. */
export interface WorthBasis {
  readonly jars: number;
  /** A fresh start, in jars. */
  readonly start: number;
  /** Points below which the keeper calls a jar weak, and the part of its worth that such a jar keeps. */
  readonly weakBelow: number;
  readonly weakKeeps: number;
  /** Part of jars that are discarded. */
  readonly discarded: number;
  /** The first batch is poorer by so much (points), and more of it is discarded. */
  readonly firstBelow: number;
  readonly firstDiscarded: number;
}

/**
 * What it costs to see a fall only some batches later, as a part of what a start costs: going on has to be worth more than that.
 * Chosen on one seed of npm run bench:verdict, looked at on others (tests/bench/verdict.md): half or twice as much costs as little.
 */
const SEES_LATE = 0.1;

/** A batch later counts this much less: nobody plans without end. */
export const LATER = 0.97;
const SWEEPS = 80;
const HALVINGS = 12;

/** Chance that a jar comes out weak at a level, a passing bad day taken in. @param error of what is written down, beside the spreads */
function weakAt(level: number, spread: number, weakBelow: number, rules: LevelRules): number {
  const sd = Math.hypot(spread, rules.jarSpread.usual);
  const plain = normalCdf((weakBelow - level) / sd);
  const bad = rules.badDayFalls.reduce(
    (sum, { value, weight }) => sum + weight * normalCdf((weakBelow - level + value) / sd),
    0,
  );
  return (1 - rules.badDay) * plain + rules.badDay * bad;
}

/** The same by hypothesis and state, as beliefs of a line's level are laid out. */
export function weakByState(weakBelow: number, rules: LevelRules): Float64Array {
  const { levels, rates, from, step } = rules;
  const size = levels * rates.length;
  const table = new Float64Array(size * rules.spreads.length * rules.drifts.length);
  rules.spreads.forEach(({ value }, s) =>
    rules.drifts.forEach((_, d) => {
      for (let i = 0; i < size; i++)
        table[(s * rules.drifts.length + d) * size + i] = weakAt(from + (i % levels) * step, value, weakBelow, rules); // prettier-ignore
    }),
  );
  return table;
}

export interface Worth {
  /** By hypothesis and state of the next batch: what it and all that follows are worth beyond starting afresh (jars). */
  readonly values: Float64Array;
  /** By hypothesis and state: chance that a jar of such a batch comes out weak. */
  readonly weak: Float64Array;
  /** Cost of a good jar's worth on the long run (jars), by hypothesis. */
  readonly costs: readonly number[];
  /** Jars' worth that a batch loses where all of it comes out weak. */
  readonly weakCosts: number;
  /** What going on looks better than it is (jars). */
  readonly seesLate: number;
}

/** @param first belief of the level of a first batch, by state, for each drift of the rules */
export function worthOf(basis: WorthBasis, rules: LevelRules, first: (drift: number) => Float64Array): Worth {
  const { levels, rates, from, step } = rules;
  const size = levels * rates.length;
  const hypotheses = rules.spreads.flatMap(({ value }) =>
    rules.drifts.map((_, drift) => ({ spread: value, drift })),
  );
  const values = new Float64Array(size * hypotheses.length);
  const weak = weakByState(basis.weakBelow, rules);
  const costs = hypotheses.map(({ spread, drift }, h) => {
    const chance = (shift: number): Float64Array =>
      Float64Array.from({ length: size }, (_, i) =>
        weakAt(from + (i % levels) * step + shift, spread, basis.weakBelow, rules),
      );
    const usual = weak.subarray(h * size, (h + 1) * size);
    const good = (chances: Float64Array, discarded: number): Float64Array =>
      chances.map((p) => (1 - discarded) * (1 - (1 - basis.weakKeeps) * p));
    const found = solve(
      basis,
      good(usual, basis.discarded),
      good(chance(-basis.firstBelow), basis.firstDiscarded),
      first(drift),
      movesOf(rules, rules.drifts[drift] as LevelRules['drifts'][number]),
    );
    values.set(found.values, h * size);
    return found.cost;
  });
  const weakCosts = basis.jars * (1 - basis.weakKeeps) * (1 - basis.discarded);
  return { values, weak, costs, weakCosts, seesLate: SEES_LATE * basis.start };
}

/** Finds the cost at which a fresh start is just worth what it costs, and the values that go with it. */
function solve(
  { jars, start }: WorthBasis,
  good: Float64Array,
  firstGood: Float64Array,
  first: Float64Array,
  moves: ReturnType<typeof movesOf>,
): { values: Float64Array; cost: number } {
  const values = new Float64Array(good.length);
  const later = new Float64Array(good.length);
  const sweep = (cost: number): void => {
    moves.back(values, 0, later);
    for (let i = 0; i < values.length; i++)
      values[i] = jars * (cost * (good[i] as number) - 1) + LATER * Math.max(0, later[i] as number);
  };
  let [low, high] = [1, 10];
  for (let k = 0; k < HALVINGS; k++) {
    const cost = (low + high) / 2;
    for (let s = 0; s < (k < 3 ? SWEEPS : SWEEPS / 2); s++) sweep(cost);
    moves.back(values, 0, later);
    let gain = 0;
    for (let i = 0; i < first.length; i++)
      gain +=
        (first[i] as number) *
        (jars * (cost * (firstGood[i] as number) - 1) + LATER * Math.max(0, later[i] as number));
    if (gain > start) high = cost;
    else low = cost;
  }
  return { values, cost: high };
}
