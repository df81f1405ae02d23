// The verdict as a policy: the program's own posterior and its own worth of going on, told of a simulated keeper only what
// that keeper wrote down.
import { carriedCost, carriedFrom, type Carried } from '../../../core/advice/carried';
import { HOUR_OF_DELAY } from '../../../core/advice/seed-cost';
import { saidChance } from '../../../core/advice/chances';
import { allAlike, promiseOf, worthFor } from '../../../core/advice/seed-level';
import { POINTS_A_TENFOLD } from '../../../core/vigour/level/stored-seed';
import { reservesKept } from '../../../core/advice/ranking-order';
import { inTiedOrder } from '../../../core/advice/ties';
import { WEAK_EDGE } from '../../../core/advice/weak';
import { delayHours, storageLoss } from '../../../core/growth/storage';
import { borrowedWeights } from '../../../core/vigour/level/borrowed';
import { LevelTree } from '../../../core/vigour/level/tree';
import { SCORE_RULES } from '../../../core/vigour/score';
import { USUAL_POINTS } from '../../../core/vigour/jar-evidence';
import { middleOf } from './habits';
import { WEAK_BELOW, type Choose, type SeenBatch } from './keeper';
import type { KeeperTruth } from './models';
import type { RestartCosts } from '../../../core/advice/costs';

/** A cold night that was written down is taken to have cost about so much (points). */
const COLD = { mean: -15, sd: 9 } as const;
/** Generations that worth is spread over for the tie rule, as a restart curve would give them. */
const SPREAD_OVER = 12;

const storedOf = (fridgeDays: number, frozenDays: number) =>
  storageLoss({ fridgeDays, frozenDays, freezings: frozenDays > 0 ? 1 : 0 });

function shiftOf(batch: SeenBatch): { mean: number; sd: number } {
  const tenths = batch.parent < 0 ? 0 : storedOf(batch.fridgeDays, batch.frozenDays).middle;
  const cold = batch.cold ? COLD.mean : 0;
  return {
    mean: cold - POINTS_A_TENFOLD * tenths,
    sd: Math.hypot(batch.cold ? COLD.sd : 0, (POINTS_A_TENFOLD / 3) * tenths),
  };
}

interface OneLine {
  readonly tree: LevelTree;
  told: number;
  /** How each batch came out; null where nothing was written down. */
  readonly points: (number | null)[];
  /** Which batch of the life it is in it stands at each place; no jar of it spoiled. */
  readonly batches: number[];
  clean: boolean;
}

/** What is believed of a keeper's lines: a posterior for each start, as the program has it, and what one tells of another. */
class Lines {
  readonly #trees: OneLine[] = [];
  /** By batch of the line that is lived now: its tree and its place there. */
  #places: { readonly at: number; readonly place: number }[] = [];
  readonly #weights = new Map<number, Float64Array>();

  /** Takes in what is new; where fewer batches are seen than before, another life of the same keeper begins. */
  take(seen: readonly SeenBatch[]): void {
    if (this.#places.length > seen.length) this.#places = [];
    for (const batch of seen.slice(this.#places.length)) {
      const first = batch.parent < 0;
      if (first) this.#trees.push({ tree: new LevelTree(), told: 0, points: [], batches: [], clean: true });
      const from = first ? null : (this.#places[batch.parent] as { at: number; place: number });
      const at = from?.at ?? this.#trees.length - 1;
      const line = this.#trees[at] as OneLine;
      const jars = first ? [] : batch.jars;
      line.told += jars.length;
      const place = line.tree.add({
        parent: from?.place ?? null,
        jars,
        shift: shiftOf(batch),
        treatment: batch.fibre > 0 ? String(batch.fibre) : null,
      });
      line.batches.push(this.#places.length);
      line.clean &&= batch.spoiled === 0;
      line.points.push(first ? null : middleOf(batch));
      this.#places.push({ at, place });
    }
    this.#weights.clear();
  }

  /** What speaks for a batch of the line that is lived now: itself, or its newest where all came out alike. */
  of(batch: number) {
    const { at, place } = this.#places[batch] as { at: number; place: number };
    const { tree, told, points, batches, clean } = this.#trees[at] as OneLine;
    const others = this.#trees.filter((_, i) => i !== at).map((one) => one.tree);
    const weights = this.#weights.get(at) ?? borrowedWeights(tree, others);
    this.#weights.set(at, weights);
    const newest = points.findLastIndex((one) => one !== null);
    const speaks = clean && allAlike(points) ? newest : place;
    return { tree, place: speaks, batch: batches[speaks] as number, told, weights };
  }
}

export function verdict(truth: KeeperTruth): Choose {
  const costs: RestartCosts = {
    freshStart: truth.startCost / truth.jarCost, jarsPerGeneration: truth.jars, jar: 1, weakKeeps: 0.5,
    unplanned: truth.jars,
  }; // prettier-ignore
  // The points of these keepers are those of the words: firm is the usual word.
  const worth = worthFor(
    costs,
    (USUAL_POINTS - WEAK_BELOW) / SCORE_RULES.pointsPer['set word'] + WEAK_EDGE,
    0.02,
  );
  const longRun = worth.costs.reduce((sum, cost) => sum + cost, 0) / worth.costs.length;
  const lines = new Lines();
  return ({ seen, candidates }) => {
    lines.take(seen);
    const carried = carriedFrom(seen.map(({ parent, spoiled }) => ({ parent: parent < 0 ? null : parent, jars: truth.jars, spoiled }))); // prettier-ignore
    const offered = candidates.map((seed) => {
      const { tree, place, batch, told, weights } = lines.of(seed.place);
      const loss = storedOf(seed.fridgeDays, seed.frozenDays);
      const promise = promiseOf(
        weights,
        tree.next(place),
        worth,
        POINTS_A_TENFOLD * loss.middle,
        tree.treatments.next(),
      );
      const delay = truth.jars * HOUR_OF_DELAY * delayHours(loss).middle;
      const doomed = carriedCost(carried[batch] as Carried, truth.jars, costs.freshStart);
      return { seed, gain: promise.worth - delay - doomed, weak: saidChance(promise.weak, told) };
    });
    // A good jar costs what it does after a fresh start, less what going on is worth beyond it.
    const costFrom = ({ gain }: { gain: number }): number => longRun - gain / (truth.jars * SPREAD_OVER);
    const tied = inTiedOrder(
      offered,
      ({ seed, gain }) => ({
        cost: costFrom({ gain }),
        asks: 0,
        reserve: seed.frozenDays > 0,
        days: seed.fridgeDays + seed.frozenDays,
        own: 0,
      }),
      1,
    );
    const [best] = reservesKept(tied, (one) => ({
      reserve: one.seed.frozenDays > 0,
      cost: costFrom(one),
      pays: one.gain > 0,
    }));
    return best && best.gain > 0 ? { ...best.seed, said: best.weak } : null;
  };
}
