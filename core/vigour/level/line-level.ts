// The posterior of one line's batches, and what it says of each as it is the newest: where it stands, how far below the line's
// early batches, and what the odds are that it has fallen for good.
import { normalCdf } from '../distributions';
import type { ScoredRange } from '../batch-median';
import { LEVEL_RULES, LOSING_FROM } from './rules';
import { LevelTree, momentsOf, type LevelBatch } from './tree';

/** Points below its early level from which a line counts as fallen. */
export const FALLEN_BY = 10;
/** Batches that make the early level. */
const EARLY = 4;

/** What was believed when a batch was the newest. */
export interface LevelLook {
  /** Level of the newest batch, and of the early ones. */
  readonly level: number;
  readonly sd: number;
  readonly early: number;
  /** Natural logarithm of the odds that it stands more than FALLEN_BY below them. */
  readonly fallen: number;
  /** Expected spread of batches about their level. */
  readonly spread: number;
  /** Chance that it is losing with each generation. */
  readonly losing: number;
}

/** One group of a batch's jars that came of one batch. */
export interface LevelGroup {
  readonly batch: number;
  /** Batch that seeded it; null: sources, another line or an unknown past. */
  readonly seedBatch: number | null;
  readonly jars: readonly ScoredRange[];
  readonly shift?: LevelBatch['shift'];
  readonly treatment?: string | null;
}

export class LineLevel {
  readonly tree = new LevelTree(LEVEL_RULES);
  /** Place of a batch in the tree; of several groups the one with most jars. */
  readonly places = new Map<number, number>();
  readonly #early: number[] = [];

  /** Takes in a batch, group by group, the largest last. @returns what is believed of it; null where nothing was compared */
  add(groups: readonly LevelGroup[]): LevelLook | null {
    let seen: number | null = null;
    for (const [i, { batch, seedBatch, jars, shift, treatment }] of groups.entries()) {
      const parent = seedBatch === null ? null : (this.places.get(seedBatch) ?? null);
      const place = this.tree.add({ parent, jars, shift, treatment, sameDay: i > 0 });
      this.places.set(batch, place);
      if (jars.length > 0) seen = place;
    }
    if (seen === null) return null;
    if (this.#early.length < EARLY) this.#early.push(seen);
    return this.look(seen);
  }

  /** What is believed of a place now. */
  look(place: number): LevelLook {
    const { tree } = this;
    const { rules } = tree;
    let [early, variance] = [0, 0];
    for (const one of this.#early) {
      const moments = momentsOf(tree.overall(tree.belief(one)), rules);
      early += moments.mean / this.#early.length;
      variance += moments.variance / this.#early.length;
    }
    const now = tree.overall(tree.belief(place));
    const { mean, variance: own } = momentsOf(now, rules);
    // Early batches share one level, so their doubts hardly average out.
    const sd = Math.sqrt(variance / 2) || 1;
    let [fallen, losing] = [0, 0];
    for (let i = 0; i < now.length; i++) {
      const level = rules.from + (i % rules.levels) * rules.step;
      fallen += (now[i] as number) * normalCdf((early - FALLEN_BY - level) / sd);
      if (i >= LOSING_FROM * rules.levels) losing += now[i] as number;
    }
    const p = Math.min(1 - 1e-12, Math.max(1e-12, fallen));
    const spread = tree.hypotheses.reduce((sum, one, h) => sum + (tree.weights[h] as number) * one.spread, 0);
    return { level: mean, sd: Math.sqrt(own), early, fallen: Math.log(p / (1 - p)), spread, losing };
  }
}
