// When to start afresh: the cost of a good jar if the line is always ended after n generations, C(n), and the n at which
// it is lowest. With no weak jars it is the classic age replacement (Barlow & Hunter 1960, from memory).
import type { PriceDoubt, RestartCosts } from './costs';
import { normalFrom, type Chances, type PooledChances } from './chances';
import { seededRandom } from './random';

export const NO_DOUBT: PriceDoubt = { freshStart: 0, jar: 0, unplanned: 0 };
/** Prices are drawn the same for every curve. */
const PRICE_SEED = 20261128;

/** What costs may be instead, one for each draw of chances. */
function drawnCosts(costs: RestartCosts, doubt: PriceDoubt, random: () => number): RestartCosts {
  const drawn = (of: keyof PriceDoubt): number => costs[of] * Math.exp(doubt[of] * normalFrom(random));
  return { ...costs, freshStart: drawn('freshStart'), jar: drawn('jar'), unplanned: drawn('unplanned') };
}

/** A jar may always turn out well: at least one in fifty is taken to, so that no cost is without end. */
const LEAST_WORTH = 0.02;
/** Worth of a jar: a good one 1, a weak one what it keeps, a discarded one nothing. */
const worthOfJar = ({ weakKeeps }: RestartCosts, weak: number, discarded: number): number =>
  Math.max(LEAST_WORTH, 1 - (1 - weakKeeps) * weak - discarded);

/**
 * C(n) for n = 1, 2, … : cost of a good jar's worth. `after` generations have been paid for already when restarting from a reserve
 * of that generation, so the first jar made is of generation after + 1.
 */
export function costCurve(costs: RestartCosts, chances: Chances, after = 0): number[] {
  const { jarsPerGeneration: m } = costs;
  let survival = 1;
  let spent = costs.freshStart;
  let good = 0;
  return chances.weak.slice(after).map((weak, i) => {
    const discarded = chances.discarded[after + i] ?? 0;
    spent += survival * m * costs.jar;
    good += survival * m * worthOfJar(costs, weak, discarded);
    survival *= 1 - (chances.ended[after + i] ?? 0);
    return good > 0 ? (spent + costs.unplanned * (1 - survival)) / good : Number.POSITIVE_INFINITY;
  });
}

/** Index of the lowest value, the first of equals. */
const lowest = (values: readonly number[]): number =>
  values.reduce((best, value, i) => (value < (values[best] ?? Number.POSITIVE_INFINITY) ? i : best), 0);

/** Four draws in five lie between these parts of them. */
const [LOW, HIGH] = [0.1, 0.9];
const between = (values: readonly number[]): readonly [number, number] => {
  const sorted = values.toSorted((a, b) => a - b);
  const at = (q: number): number => sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))] ?? Number.NaN; // prettier-ignore
  return [at(LOW), at(HIGH)];
};

/** Restarts within this part of the lowest cost are about as good. */
export const ABOUT_AS_GOOD = 0.05;

export interface RestartPoint {
  readonly generation: number;
  readonly cost: number;
  /** Four draws in five lie between: of what the chances may be, and of prices that are assumed. */
  readonly low: number;
  readonly high: number;
  /** Beyond the last generation that any of the keeper's lines has reached. */
  readonly reckonedOn: boolean;
}

export interface Restart {
  readonly curve: readonly RestartPoint[];
  readonly best: number;
  /** As good by cost, and as wide as four draws in five have their own lowest point. */
  readonly from: number;
  readonly to: number;
  /** The range reaches the end of what was looked at: there is no need to restart by cost. */
  readonly openEnded: boolean;
  readonly cost: number;
}

/** The curve, its lowest point and the range about as good. @returns null where no generation is looked at. */
export function restartOf(
  costs: RestartCosts,
  chances: PooledChances,
  after = 0,
  doubt: PriceDoubt = NO_DOUBT,
): Restart | null {
  const expected = costCurve(costs, chances.mean, after);
  const { length } = expected;
  if (length === 0) return null;
  const random = seededRandom(PRICE_SEED);
  const drawn = chances.draws.map((draw) => costCurve(drawnCosts(costs, doubt, random), draw, after));
  const curve = expected.map((cost, i): RestartPoint => {
    const [low, high] = between(drawn.map((draw) => draw[i] ?? cost));
    const generation = after + i + 1;
    return {
      generation,
      cost,
      low: Math.min(low, cost),
      high: Math.max(high, cost),
      reckonedOn: generation > chances.lastSeen,
    };
  });
  const best = lowest(expected);
  const cost = expected[best] ?? Number.NaN;
  const good = (i: number): boolean =>
    (expected[i] ?? Number.POSITIVE_INFINITY) <= cost * (1 + ABOUT_AS_GOOD);
  let [from, to] = drawn.length === 0 ? [best, best] : between(drawn.map(lowest));
  [from, to] = [Math.min(from, best), Math.max(to, best)];
  while (good(from - 1)) from--;
  while (good(to + 1)) to++;
  return {
    curve,
    best: after + best + 1,
    from: after + from + 1,
    to: after + to + 1,
    openEnded: to === length - 1,
    cost,
  };
}

/**
 * Cost of a good jar of one more batch at a generation: what going on costs, to be held against the lowest C(n) of a fresh
 * start (at the best restart the two are equal).
 */
export function costOfGoingOn(costs: RestartCosts, weak: number, discarded: number, ended: number): number {
  const { jarsPerGeneration: m } = costs;
  return (m * costs.jar + ended * costs.unplanned) / (m * worthOfJar(costs, weak, discarded));
}

/** A reserve to restart from. */
export interface ReserveStart {
  readonly label: string;
  readonly generation: number;
  /** What starting from it costs: laying it by again, and what its storage delays (seed-cost.ts). */
  readonly cost: number;
  /** What a good jar from it costs by the ranking. */
  readonly least: number;
}

export interface RestartRivals {
  readonly sources: Restart;
  readonly reserve:
    | (ReserveStart & {
        readonly restart: Restart;
        /** Cost of a good jar, as the ranking has it. */
        readonly goodJar: number;
      })
    | null;
  readonly better: 'sources' | 'reserve';
}

/** A fresh start from sources against a restart from a reserve, each at its own cost and generation. */
export function rivals(
  costs: RestartCosts,
  chances: PooledChances,
  reserve: ReserveStart | null,
  sources = restartOf(costs, chances),
  doubt: PriceDoubt = NO_DOUBT,
): RestartRivals | null {
  if (!sources) return null;
  const restart = reserve && restartOf({ ...costs, freshStart: reserve.cost }, chances, reserve.generation, doubt); // prettier-ignore
  const other = reserve && restart && { ...reserve, restart, goodJar: reserve.least };
  const better = other && other.goodJar < sources.cost ? 'reserve' : 'sources';
  return { sources, reserve: other, better };
}
