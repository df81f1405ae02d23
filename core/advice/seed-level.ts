// What a seed's batch promises, read off the posterior of its line: the chance that the next jar comes out weak, and what going
// on from it is worth beyond starting afresh.
import type { LineJudgement } from '../vigour/line';
import { LEVEL_RULES } from '../vigour/level/rules';
import { firstBelief, LevelTree } from '../vigour/level/tree';
import { carriedCost, carriedFrom, type Carried } from './carried';
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
  /** Chance that it carries a contamination on unseen (carried.ts). */
  readonly carries: number;
}

/** A first batch is this much poorer (points), and one jar in eight of it is discarded (common practice, no source). */
const FIRST = { firstBelow: 25, firstDiscarded: 0.12 } as const;

const known = new Map<string, Worth>();
const MOST_KNOWN = 40;

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

/**
 * A tenfold loss of the seed in storage is taken to make the batch that it seeds, and that one alone, poorer by so much (points;
 * an assumption, no source): the milk ripens later in the same hold.
 */
export const POINTS_A_TENFOLD = 8;

/**
 * Means over what is believed of the next batch.
 * @param next by hypothesis and state, as LevelTree.next gives it
 * @param poorer points by which the next batch alone is poorer, for how its seed was stored
 */
export function promiseOf(
  weights: Float64Array,
  next: Float64Array,
  worth: Worth,
  poorer = 0,
): Pick<SeedLevel, 'worth' | 'weak'> {
  const size = next.length / weights.length;
  const { levels, step } = LEVEL_RULES;
  const cells = Math.round(poorer / step);
  let [gain, chance] = [0, 0];
  for (let i = 0; i < next.length; i++) {
    const h = Math.floor(i / size);
    const weight = (weights[h] as number) * (next[i] as number);
    const here = worth.weak[i] as number;
    // Level by level within one rate of loss; the lowest stands for all below it.
    const stored = worth.weak[i - Math.min(cells, i % levels)] as number;
    gain +=
      weight * ((worth.values[i] as number) - worth.weakCosts * (worth.costs[h] as number) * (stored - here));
    chance += weight * stored;
  }
  return { worth: gain, weak: chance };
}

const carried = new WeakMap<LineJudgement, ReadonlyMap<number, Carried>>();

/** What each batch of a line may carry on unseen, by which of their jars spoiled before anybody opened them. */
export function carriedIn(judgement: LineJudgement): ReadonlyMap<number, Carried> {
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
    return { parent: parents[0] ?? null, jars: told.length, spoiled: told.filter(({ spoiledUnopened }) => spoiledUnopened).length }; // prettier-ignore
  });
  const found = new Map(carriedFrom(records).map((one, at) => [judgement.batches[at]?.batch ?? 0, one]));
  carried.set(judgement, found);
  return found;
}

/** What a batch of a line promises; null where it is not among what was judged. */
export function seedLevel(
  judgement: LineJudgement,
  batch: number,
  costs: RestartCosts,
  discarded: number,
  poorer: number,
): SeedLevel | null {
  const { tree, places } = judgement.level;
  const place = places.get(batch);
  if (place === undefined) return null;
  const worth = worthFor(costs, judgement.usual['set word'].value, discarded);
  const promise = promiseOf(tree.weights, tree.next(place), worth, poorer);
  const doom = carriedIn(judgement).get(batch) ?? { unseen: 0, shows: 0 };
  return {
    worth:
      promise.worth - carriedCost(doom, costs.jarsPerGeneration, Math.max(0, costs.freshStart) / costs.jar),
    weak: saidChance(promise.weak, jarsTold(judgement)),
    carries: doom.unseen + doom.shows,
  };
}

/** What a jar of no line promises: what is believed of any culture of which nothing was seen. */
export function unknownLevel(usualWord: number, costs: RestartCosts, discarded: number): SeedLevel {
  const tree = new LevelTree();
  const place = tree.add({ parent: null, jars: [] });
  const promise = promiseOf(tree.weights, tree.next(place), worthFor(costs, usualWord, discarded));
  return { ...promise, weak: saidChance(promise.weak, 0), carries: 0 };
}
