// What a seed's batch promises, read off the posterior of its line: the chance that the next jar comes out weak, and what going
// on from it is worth beyond starting afresh.
import type { LineJudgement } from '../vigour/line';
import { shown } from '../vigour/score';
import { borrowedWeights } from '../vigour/level/borrowed';
import { LEVEL_RULES } from '../vigour/level/rules';
import type { LikelyShift } from '../vigour/level/treatments';
import { firstBelief, LevelTree } from '../vigour/level/tree';
import { carriedCost, carriedFrom, mayCarry, NOTHING_CARRIED, type Carried } from './carried';
import { saidChance } from './chances';
import { jarsTold } from './line-told';
import { weakBelow } from './weak';
import { worthOf, type Worth } from './worth';
import type { RestartCosts } from './costs';

export interface SeedLevel {
  /** Chance that the next jar comes out weak, runny or soft. */
  readonly weak: number;
  /** What going on is worth beyond starting afresh now (jars); below 0 a fresh start pays. */
  readonly worth: number;
  /** What it costs that it may carry a contamination on unseen (jars; carried.ts): `worth` has it taken off. */
  readonly carries: number;
  /** The chance of that. */
  readonly mayCarry: number;
}

/** A first batch is this much poorer (points), and one jar in eight of it is discarded (common practice, no source). */
const FIRST = { firstBelow: 25, firstDiscarded: 0.12 } as const;

const known = new Map<string, Worth>();
/** Each is 50 kB, and takes as long to reckon as a line to judge. */
const MOST_KNOWN = 100;

/** What going on is worth at every state of a line, reckoned once for each set of costs. */
export function worthFor(costs: RestartCosts, usualWord: number, discarded: number): Worth {
  const basis = {
    jars: costs.jarsPerGeneration,
    start: Math.max(0, costs.freshStart) / costs.jar,
    weakBelow: weakBelow(usualWord),
    weakKeeps: costs.weakKeeps,
    discarded: Math.round(200 * Math.min(0.5, discarded)) / 200,
    ...FIRST,
  };
  const key = JSON.stringify(basis);
  const before = known.get(key);
  if (before) return before;
  if (known.size >= MOST_KNOWN) known.clear();
  const worth = worthOf(basis, LEVEL_RULES, (drift) => firstBelief(LEVEL_RULES, drift));
  known.set(key, worth);
  return worth;
}

/** Three points and weights that stand for a normal spread (Gauss–Hermite, Abramowitz & Stegun 25.10, from memory). */
const SPREAD_POINTS = [
  { at: -Math.sqrt(3), weight: 1 / 6 },
  { at: 0, weight: 2 / 3 },
  { at: Math.sqrt(3), weight: 1 / 6 },
] as const;

/**
 * Chance of a weak jar by hypothesis and state where a batch comes out poorer than its level; the lowest and highest
 * level stand for all beyond.
 */
function weakWhen(weak: Float64Array, shifts: readonly { points: number; weight: number }[]): Float64Array {
  const { levels, step } = LEVEL_RULES;
  const out = new Float64Array(weak.length);
  for (const { points, weight } of shifts) {
    const low = Math.floor(points / step);
    const part = points / step - low;
    for (let i = 0; i < out.length; i++) {
      // Level by level within one rate of loss.
      const level = i % levels;
      const at = (cells: number): number => weak[i - level + Math.min(levels - 1, Math.max(0, level - cells))] as number; // prettier-ignore
      out[i] = (out[i] as number) + weight * ((1 - part) * at(low) + part * at(low + 1));
    }
  }
  return out;
}

/**
 * Means over what is believed of the next batch.
 * @param next by hypothesis and state, as LevelTree.next gives it
 * @param poorer points by which the next batch alone is poorer, for how its seed was stored
 * @param made what may be stirred into the next batch or done otherwise: whatever seeds it has it, so it counts for the chance that is
 * said and not for the worth of a seed
 */
export function promiseOf(
  weights: Float64Array,
  next: Float64Array,
  worth: Worth,
  poorer = 0,
  made: readonly LikelyShift[] = [{ mean: 0, variance: 0, weight: 1 }],
): Pick<SeedLevel, 'worth' | 'weak'> {
  const size = next.length / weights.length;
  const stored = weakWhen(worth.weak, [{ points: poorer, weight: 1 }]);
  const said = weakWhen(
    worth.weak,
    made.flatMap(({ mean, variance, weight }) =>
      variance === 0
        ? [{ points: poorer - mean, weight }]
        : SPREAD_POINTS.map((one) => ({ points: poorer - mean + one.at * Math.sqrt(variance), weight: weight * one.weight })),
    ),
  ); // prettier-ignore
  let [gain, chance] = [0, 0];
  for (let i = 0; i < next.length; i++) {
    const h = Math.floor(i / size);
    const weight = (weights[h] as number) * (next[i] as number);
    const lost = worth.weakCosts * (worth.costs[h] as number) * ((stored[i] as number) - (worth.weak[i] as number)); // prettier-ignore
    gain += weight * ((worth.values[i] as number) - lost);
    chance += weight * (said[i] as number);
  }
  return { worth: gain - worth.seesLate, weak: chance };
}

const carried = new WeakMap<LineJudgement, ReadonlyMap<number, Carried>>();

/** What each batch of a line may carry on unseen, by which of their jars spoiled before anybody opened them. */
function carriedIn(judgement: LineJudgement): ReadonlyMap<number, Carried> {
  const known = carried.get(judgement);
  if (known) return known;
  const places = new Map<number, number>();
  const records = judgement.batches.map(({ batch, comparable, leftOut }, at) => {
    const jars = [...comparable, ...leftOut.map(({ jar }) => jar)];
    const told = jars.filter(({ outcome, spoiled }) => spoiled || outcome !== null);
    const parents = jars.flatMap(({ seedBatch }) =>
      seedBatch === null ? [] : (places.get(seedBatch) ?? []),
    );
    places.set(batch, at);
    return {
      parent: parents[0] ?? null,
      jars: told.length,
      spoiled: told.filter(({ spoiledUnopened }) => spoiledUnopened).length,
    };
  });
  const found = new Map(carriedFrom(records).map((one, at) => [judgement.batches[at]?.batch ?? 0, one]));
  carried.set(judgement, found);
  return found;
}

/**
 * Whether all batches of a line came out alike, as their scores are shown: then nothing was seen to choose between them by,
 * and what is believed of the newest holds for each, so that the fresher comes first.
 * @param points of each batch, null where nothing could be compared
 */
export function allAlike(points: readonly (number | null)[]): boolean {
  const known = points.filter((one) => one !== null);
  return new Set(known.map(shown)).size === 1;
}

/**
 * The batch that speaks for a batch: itself, or the newest that could be compared where all of those came out alike and no jar
 * of the line spoiled.
 */
function speaksFor({ batches }: LineJudgement, batch: number): number {
  const compared = batches.filter(({ points }) => points !== null);
  const clean = batches.every(
    ({ comparable, leftOut }) =>
      comparable.every(({ spoiled }) => !spoiled) && leftOut.every(({ jar }) => !jar.spoiled),
  );
  return clean && allAlike(compared.map(({ points }) => points)) ? (compared.at(-1)?.batch ?? batch) : batch;
}

/** What a promise is reckoned with, beside the line itself. */
export interface PromiseBasis {
  readonly costs: RestartCosts;
  readonly discardedShare: number;
}

/**
 * What a batch of a line promises; null where it is not among what was judged.
 * @param weights of the hypotheses of its line, other lines taken in (borrowed.ts)
 */
export function seedLevel(
  judgement: LineJudgement,
  batch: number,
  { costs, discardedShare }: PromiseBasis,
  weights: Float64Array,
  poorer: number,
): SeedLevel | null {
  const { tree, places } = judgement.level;
  const speaks = places.has(batch) ? speaksFor(judgement, batch) : batch;
  const place = places.get(speaks);
  if (place === undefined) return null;
  const worth = worthFor(costs, judgement.usual['set word'].value, discardedShare);
  const promise = promiseOf(weights, tree.next(place), worth, poorer, tree.treatments.next());
  const doom = carriedIn(judgement).get(speaks) ?? NOTHING_CARRIED;
  const carries = carriedCost(doom, costs.jarsPerGeneration, Math.max(0, costs.freshStart) / costs.jar);
  return {
    worth: promise.worth - carries,
    weak: saidChance(promise.weak, jarsTold(judgement)),
    carries,
    mayCarry: mayCarry(doom),
  };
}

/** What a jar of no line promises: what is believed of a culture of which nothing was seen. @param others trees of the keeper's lines */
export function unknownLevel(
  usualWord: number,
  { costs, discardedShare }: PromiseBasis,
  others: readonly LevelTree[],
): SeedLevel {
  const tree = new LevelTree();
  const place = tree.add({ parent: null, jars: [] });
  const promise = promiseOf(
    borrowedWeights(tree, others),
    tree.next(place),
    worthFor(costs, usualWord, discardedShare),
  );
  return { ...promise, weak: saidChance(promise.weak, 0), carries: 0, mayCarry: 0 };
}
