// The one posterior: what is believed of the level that every batch of a line inherits. A batch's level is that of its seed
// with some drift; what was seen of its jars moves the belief, and so, backwards, that of its forebears: whether a poor batch
// was a bad day or a lasting fall is told by what follows. Branches are told apart by what seeded them. Spread of batches and
// restlessness of the culture are learned: several of each are followed side by side, weighed by how well they foretold.
// Exact filtering and smoothing on a tree of hidden states (Pearl 1988, belief propagation, from memory).
import type { ScoredRange } from '../batch-median';
import { levelLikelihoods, type SeenBatch } from './level-likelihood';
import { movesOf, type Moves } from './moves';
import { LEVEL_RULES, LOSING_FROM, type LevelRules } from './rules';
import { Treatments } from './treatments';

/** One batch as it is added. */
export interface LevelBatch {
  /** Place of the batch that seeded it, as `add` gave it; null: the first of a culture. */
  readonly parent: number | null;
  /** What was recorded of its comparable jars, corrected; empty: nothing. */
  readonly jars: readonly ScoredRange[];
  /** What is known to have moved this batch alone (points): a cold night, an old seed. */
  readonly shift?: { readonly mean: number; readonly sd: number } | undefined;
  /** What it had that is not usual and can't be told from the culture yet: a name, or null. */
  readonly treatment?: string | null | undefined;
  /** It is of the same day, bath and milk as the one added before it: another group of jars of one batch. */
  readonly sameDay?: boolean;
}

interface Hypothesis {
  readonly spread: number;
  readonly moves: Moves;
  readonly drift: number;
}

interface Node {
  readonly parent: number | null;
  /** Belief by hypothesis, all that was seen taken in. */
  belief: Float64Array;
  /** What it and all that came of it tell of it, and what that tells of its seed; null once it is long ago. */
  evidence: Float64Array | null;
  message: Float64Array | null;
  /** When its belief last changed, and the stamp of its seed's belief that it was reckoned from. */
  stamp: number;
  from: number;
}

const TINY = 1e-12;
/** Batches longer ago than this tell only what they told by then. */
const KEPT = 24;

export class LevelTree {
  readonly rules: LevelRules;
  /** Weight of each hypothesis now, and before any batch. */
  readonly weights: Float64Array;
  readonly before: Float64Array;
  readonly #hypotheses: readonly Hypothesis[];
  readonly #size: number;
  readonly #nodes: Node[] = [];
  /** What was done otherwise than usual, and what it does. */
  readonly treatments: Treatments;
  /** Squares of jars about the middle of their batch, and how many of them are free, an expectation among them. */
  readonly #within: { squares: number; free: number };
  /** The batch made last, and the one made before it: what batches share goes on a little from one to the next. */
  #newest: SeenBatch | null = null;
  #before: SeenBatch | null = null;
  #stamp = 0;

  constructor(rules: LevelRules = LEVEL_RULES) {
    this.rules = rules;
    this.treatments = new Treatments(rules.treatmentSd);
    const { usual, weight } = rules.jarSpread;
    this.#within = { squares: weight * usual ** 2, free: weight };
    this.#size = rules.rates.length * rules.levels;
    const moves = rules.drifts.map((drift) => movesOf(rules, drift));
    this.#hypotheses = rules.spreads.flatMap(({ value }) =>
      rules.drifts.map((_, drift) => ({ spread: value, moves: moves[drift] as Moves, drift })),
    );
    this.weights = Float64Array.from(
      rules.spreads.flatMap(({ weight }) => rules.drifts.map((drift) => weight * drift.weight)),
    );
    this.before = Float64Array.from(this.weights);
  }

  get length(): number {
    return this.#nodes.length;
  }
  /** Spread and drift of each hypothesis, in the order of the weights. */
  get hypotheses(): readonly { readonly spread: number; readonly drift: number }[] {
    return this.#hypotheses;
  }

  /** Takes in the next batch. @returns its place */
  add(batch: LevelBatch): number {
    const parent = batch.parent === null ? null : (this.#nodes[batch.parent] ?? null);
    this.#stamp++;
    const prior = parent ? this.next(batch.parent as number) : this.#first();
    this.treatments.made(batch.treatment ?? null);
    const likelihood = this.#likelihood(batch, prior);
    const belief = new Float64Array(prior.length);
    let total = 0;
    for (let h = 0; h < this.weights.length; h++) {
      const told = multiply(prior, likelihood, h * this.#size, this.#size, belief);
      this.weights[h] = (this.weights[h] as number) * told;
      total += this.weights[h] as number;
    }
    for (let h = 0; h < this.weights.length; h++)
      this.weights[h] = Math.max(TINY, (this.weights[h] as number) / total);
    const place = this.#nodes.length;
    const tells = batch.jars.length > 0;
    this.#nodes.push({
      parent: parent ? batch.parent : null,
      belief,
      evidence: likelihood,
      message: null,
      stamp: this.#stamp,
      from: parent ? parent.stamp : -1,
    });
    if (tells) this.#tellForebears(place);
    this.#forget(place - KEPT);
    return place;
  }

  /** Belief of what a batch seeded from a place would inherit, by hypothesis. */
  next(place: number): Float64Array {
    const belief = this.belief(place);
    const out = new Float64Array(belief.length);
    this.#hypotheses.forEach(({ moves }, h) => moves.forward(belief, h * this.#size, out));
    return out;
  }

  /** Belief of the level of a batch by hypothesis, each summing to 1: reckoned anew only where that of its seed has changed. */
  belief(place: number): Float64Array {
    const node = this.#nodes[place] as Node;
    if (node.evidence === null || node.parent === null) return node.belief;
    const parent = this.#nodes[node.parent] as Node;
    if (parent.evidence === null) return node.belief;
    this.belief(node.parent);
    if (node.from !== parent.stamp) this.#renew(node, parent);
    return node.belief;
  }

  /** Belief over all hypotheses: for each rate of loss, all levels. */
  overall(belief: Float64Array): Float64Array {
    const out = new Float64Array(this.#size);
    for (let h = 0; h < this.weights.length; h++)
      for (let i = 0; i < this.#size; i++)
        out[i] = (out[i] as number) + (this.weights[h] as number) * (belief[h * this.#size + i] as number);
    return out;
  }

  #first(): Float64Array {
    const out = new Float64Array(this.#size * this.weights.length);
    this.#hypotheses.forEach(({ drift }, h) => out.set(firstBelief(this.rules, drift), h * this.#size));
    return out;
  }

  /** How well what was recorded agrees with each level, by hypothesis (the same for all rates of loss). */
  #likelihood(batch: LevelBatch, prior: Float64Array): Float64Array {
    const { rules } = this;
    const out = new Float64Array(this.#size * this.weights.length).fill(1);
    if (!batch.sameDay) this.#before = this.#newest;
    if (batch.jars.length === 0) {
      if (!batch.sameDay) this.#newest = null;
      return out;
    }
    const effect = this.treatments.of(batch.treatment ?? null);
    const mean = effect.mean + (batch.shift?.mean ?? 0);
    const sd = Math.sqrt(effect.variance + (batch.shift?.sd ?? 0) ** 2);
    const { jars } = batch;
    const jarSpread = this.#jarSpread(jars);
    const expected = momentsOf(this.overall(prior), rules).mean;
    const before = this.#before && this.#asIfSeed(this.#before, batch.parent, expected);
    const rows = levelLikelihoods(jars, jarSpread, { mean, sd }, before, rules);
    this.#newest = {
      place: this.#nodes.length,
      seen: jars.reduce((sum, { score }) => sum + score, 0) / jars.length - mean,
      expected,
      variance:
        jars.reduce((sum, { width }) => sum + jarSpread ** 2 + width ** 2 / 12, 0) / jars.length ** 2 +
        sd ** 2,
    };
    this.#hypotheses.forEach(({ spread }, h) => {
      const row = rows.get(spread) as Float64Array;
      for (let r = 0; r < rules.rates.length; r++) out.set(row, h * this.#size + r * rules.levels);
    });
    if (batch.treatment) this.#learnTreatment(batch.treatment, batch, prior);
    return out;
  }

  /** The batch before where it would stand on the level of another branch. @param expected level of the batch that is added */
  #asIfSeed(before: SeenBatch, parent: number | null, expected: number): SeenBatch {
    if (before.place === parent) return before;
    const { mean } = momentsOf(this.overall(this.belief(before.place)), this.rules);
    return { ...before, seen: expected + before.seen - mean, expected };
  }

  /**
   * By how much jars differ about their batch, by all batches so far (a moderated variance, as in Smyth 2004,
   * doi 10.2202/1544-6115.1027, from memory), to the nearest that is looked at. It tells nothing of how batches differ.
   */
  #jarSpread(jars: readonly ScoredRange[]): number {
    const mean = jars.reduce((sum, { score }) => sum + score, 0) / jars.length;
    // A set word alone is known only to a range, which makes equal jars look more equal than they are.
    for (const { score, width } of jars) this.#within.squares += (score - mean) ** 2 + width ** 2 / 48;
    this.#within.free += jars.length - 1;
    const spread = Math.sqrt(this.#within.squares / this.#within.free);
    const off = (value: number): number => Math.abs(Math.log(value / spread));
    return this.rules.jarSpread.values.reduce((best, value) => (off(value) < off(best) ? value : best));
  }

  /** Moves what is believed of a treatment by how the batch came out against what was expected of its culture. */
  #learnTreatment(name: string, batch: LevelBatch, prior: Float64Array): void {
    const expected = momentsOf(this.overall(prior), this.rules);
    const seen =
      batch.jars.reduce((sum, { score }) => sum + score, 0) / batch.jars.length - (batch.shift?.mean ?? 0);
    const spread = this.#hypotheses.reduce(
      (sum, one, h) => sum + (this.weights[h] as number) * one.spread,
      0,
    );
    const noise =
      spread ** 2 +
      this.rules.jarSpread.usual ** 2 / batch.jars.length +
      expected.variance +
      (batch.shift?.sd ?? 0) ** 2;
    this.treatments.learn(name, seen - expected.mean, noise);
  }

  /** Carries what the newest batch tells back to its forebears, then forward again along the same path. */
  #tellForebears(place: number): void {
    const path: number[] = [];
    let at = place;
    for (let back = 0; back < this.rules.back; back++) {
      const node = this.#nodes[at] as Node;
      const parent = node.parent === null ? null : (this.#nodes[node.parent] as Node);
      if (!parent || parent.evidence === null || node.evidence === null) break;
      const before = node.message;
      const message = this.#messageOf(node.evidence);
      for (let i = 0; i < message.length; i++) {
        const factor = (message[i] as number) / (before ? Math.max(TINY, before[i] as number) : 1);
        parent.evidence[i] = (parent.evidence[i] as number) * factor;
        if (
          back === this.rules.back - 1 ||
          parent.parent === null ||
          this.#nodes[parent.parent]?.evidence === null
        )
          parent.belief[i] = (parent.belief[i] as number) * factor;
      }
      rescale(parent.evidence, this.#size);
      node.message = message;
      path.push(at);
      at = node.parent as number;
    }
    const top = this.#nodes[at] as Node;
    if (at !== place) {
      normalise(top.belief, this.#size);
      top.stamp = ++this.#stamp;
    }
    for (const one of path.toReversed()) {
      const node = this.#nodes[one] as Node;
      this.#renew(node, this.#nodes[node.parent as number] as Node);
    }
  }

  /** What the evidence about a batch tells of its seed, scaled to at most 1 for each hypothesis. */
  #messageOf(evidence: Float64Array): Float64Array {
    const message = new Float64Array(evidence.length);
    this.#hypotheses.forEach(({ moves }, h) => moves.back(evidence, h * this.#size, message));
    rescale(message, this.#size);
    return message;
  }

  /** Reckons a batch's belief anew from that of its seed, without what the batch itself told of the seed. */
  #renew(node: Node, { belief: ofParent, stamp }: Node): void {
    const { evidence, message } = node;
    if (evidence === null) return;
    node.from = stamp;
    node.stamp = ++this.#stamp;
    const rest = new Float64Array(ofParent.length);
    for (let i = 0; i < rest.length; i++)
      rest[i] = (ofParent[i] as number) / (message ? Math.max(TINY, message[i] as number) : 1);
    normalise(rest, this.#size);
    const prior = new Float64Array(rest.length);
    this.#hypotheses.forEach(({ moves }, h) => moves.forward(rest, h * this.#size, prior));
    for (let h = 0; h < this.weights.length; h++)
      multiply(prior, evidence, h * this.#size, this.#size, node.belief);
  }

  /** What lies far back keeps its belief and takes no more evidence in: one row, the same for all hypotheses. */
  #forget(place: number): void {
    const node = this.#nodes[place];
    if (!node || node.evidence === null) return;
    // What hangs on it is not reckoned from it again.
    for (let child = place + 1; child < this.#nodes.length; child++)
      if (this.#nodes[child]?.parent === place) this.belief(child);
    const one = this.overall(this.belief(place));
    node.belief = new Float64Array(one.length * this.weights.length);
    for (let h = 0; h < this.weights.length; h++) node.belief.set(one, h * one.length);
    node.evidence = null;
    node.message = null;
  }
}

/** Belief of the level of a line's first batch, by one drift of the rules; it sums to 1. */
export function firstBelief(
  { levels, from, step, early, drifts, rates }: LevelRules,
  drift: number,
): Float64Array {
  const prone = drifts[drift]?.prone ?? 0;
  const out = new Float64Array(levels * rates.length);
  for (let i = 0; i < levels; i++) {
    const weight = Math.exp(-(((from + i * step - early.mean) / early.sd) ** 2) / 2);
    for (let r = 0; r < rates.length; r++)
      out[r * levels + i] = weight * (r === 0 ? 1 - prone : r < LOSING_FROM ? prone : 0);
  }
  normalise(out, out.length);
  return out;
}

/** Product of two rows, made to sum to 1. @returns the sum before */
function multiply(a: Float64Array, b: Float64Array, from: number, count: number, out: Float64Array): number {
  let sum = 0;
  for (let i = from; i < from + count; i++) {
    const product = (a[i] as number) * (b[i] as number);
    out[i] = product;
    sum += product;
  }
  const scale = 1 / Math.max(sum, Number.MIN_VALUE);
  for (let i = from; i < from + count; i++) out[i] = (out[i] as number) * scale;
  return sum;
}

function normalise(values: Float64Array, size: number): void {
  for (let from = 0; from < values.length; from += size) {
    let sum = 0;
    for (let i = from; i < from + size; i++) sum += values[i] as number;
    const scale = 1 / Math.max(sum, Number.MIN_VALUE);
    for (let i = from; i < from + size; i++) values[i] = (values[i] as number) * scale;
  }
}

/** Scales each hypothesis so that its largest is 1, and lets nothing be quite impossible. */
function rescale(values: Float64Array, size: number): void {
  for (let from = 0; from < values.length; from += size) {
    let most = 0;
    for (let i = from; i < from + size; i++) most = Math.max(most, values[i] as number);
    const scale = 1 / Math.max(most, Number.MIN_VALUE);
    for (let i = from; i < from + size; i++) values[i] = Math.max(TINY, (values[i] as number) * scale);
  }
}

/** Mean and variance of the level of a belief over all hypotheses. */
export function momentsOf(
  overall: Float64Array,
  { from, step, levels }: LevelRules,
): { mean: number; variance: number } {
  let [sum, mean, square] = [0, 0, 0];
  for (let i = 0; i < overall.length; i++) {
    const level = from + (i % levels) * step;
    const weight = overall[i] as number;
    sum += weight;
    mean += weight * level;
    square += weight * level * level;
  }
  mean /= sum;
  return { mean, variance: Math.max(0, square / sum - mean * mean) };
}
