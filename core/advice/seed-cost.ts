// What a good jar from a seed costs. The one function behind the ranking, behind what would change a place in it, and behind
// the reserve that a restart is held against, so that the same seed costs the same wherever it is shown.
import { SCORE_RULES } from '../vigour/score';
import { USUAL_POINTS } from '../vigour/jar-evidence';
import { costOfGoingOn } from './restart-curve';
import type { SeedLevel } from './seed-level';
import type { RestartCosts } from './costs';

/** Points by which the odds of a weak jar change e-fold (the program's own scale, no source). */
const POINTS_PER_E = 12;
/** What an hour of delay costs, in jars (the program's own assumption): warmth, waiting, and a slower start. */
export const HOUR_OF_DELAY = 0.01;
/** No chance is taken to be higher: a jar may always turn out well. */
const MOST_CHANCE = 0.9;
/** With no outcome, the odds are taken this much worse: unknown is neither weak nor fine. */
const UNKNOWN_ODDS = 1.5;

/** Chance of a weak jar from a seed: that of its generation, with odds moved by its vigour. */
export function weakChance(ofGeneration: number, points: number | null): number {
  const p = Math.min(0.99, Math.max(0.001, ofGeneration));
  const factor = points === null ? UNKNOWN_ODDS : Math.exp((USUAL_POINTS - points) / POINTS_PER_E);
  const odds = (p / (1 - p)) * factor;
  return Math.min(MOST_CHANCE, odds / (1 + odds));
}

/**
 * This part of what a jar scored well below its batch counts against it (the program's own assumption, no source): jars of one
 * batch share milk, warmth and seed, so most of a difference between them is chance. What it scored above its batch counts
 * for nothing: that the best of several was picked is no evidence that its culture is better.
 */
const OWN_SHARE = 1 / 3;

/** Nearer to its batch than this (points) a jar is as good as its batch: jars of one batch differ by about as much anyway. */
export const AS_GOOD = SCORE_RULES.jarError;

/** What the odds rest on: the score of its batch, drawn down by a jar that came out worse than that. */
export const oddsPoints = (points: number, own: number | null): number =>
  points + (own === null ? 0 : OWN_SHARE * Math.min(0, own + AS_GOOD - points));

/** What a seed's cost is reckoned from, beside the chance of a weak jar. */
export interface CostedSeed {
  readonly kind: string;
  readonly generation: number;
  /** Its way back runs into a jar of which nobody knows the seed: its generation is counted, and may be any. */
  readonly pastUnknown: boolean;
  /** Hours that its storage should cost the next jar. */
  readonly delayHours: number;
  readonly level: SeedLevel | null;
}

export interface CostBasis {
  readonly costs: RestartCosts;
  /** Mean chances by generation, index 0 is generation 1 (chances.ts). */
  readonly weak: readonly number[];
  readonly discarded: readonly number[];
  readonly ended: readonly number[];
  /** The furthest generation of which jars were seen; 0 where none were. */
  readonly lastSeen: number;
  /** Lowest cost of a good jar after a fresh start from sources, and the generations that it is spread over. */
  readonly freshStart: { readonly cost: number; readonly generations: number };
}

/** Chance at a generation; beyond the last one reckoned, that of the last. */
const chanceAt = (chances: readonly number[], generation: number): number =>
  chances[Math.min(generation, chances.length) - 1] ?? 0;

/**
 * The generation whose chances a next jar is given. Of an unknown past that is the furthest that any jar of the keeper's has
 * gone, where chances are worst: not knowing must not make a seed look young.
 */
export const reckonedGeneration = (
  { generation, pastUnknown }: Pick<CostedSeed, 'generation' | 'pastUnknown'>,
  { lastSeen }: Pick<CostBasis, 'lastSeen'>,
): number => (pastUnknown ? Math.max(generation + 1, lastSeen) : generation + 1);

/** A seed with what its odds rest on: what its batch promises, or where no line tells its generation and score. */
export type ScoredSeed = CostedSeed & {
  readonly vigour: { readonly points: number } | null;
  readonly own: { readonly points: number } | null;
};

/** Chance that the next jar from a seed comes out weak. */
export function weakFrom(seed: ScoredSeed, basis: Pick<CostBasis, 'weak' | 'lastSeen'>): number {
  const own = seed.own?.points ?? null;
  const ofGeneration = chanceAt(basis.weak, reckonedGeneration(seed, basis));
  if (!seed.level) return weakChance(ofGeneration, seed.vigour && oddsPoints(seed.vigour.points, own));
  // What it scored below its batch moves the odds; an unknown past is never taken to be better than the worst that was seen.
  const below = seed.vigour === null ? 0 : oddsPoints(seed.vigour.points, own) - seed.vigour.points;
  const { weak } = seed.level;
  return Math.max(
    below === 0 ? weak : weakChance(weak, USUAL_POINTS + below),
    seed.pastUnknown ? ofGeneration : 0,
  );
}

/** What a reserve's storage delays all jars of its first batch by, as a cost. */
export const reserveStart = (costs: RestartCosts, hours: number): number =>
  hours * HOUR_OF_DELAY * costs.jar * costs.jarsPerGeneration;

/**
 * Cost of a good jar. Where a line tells: that after a fresh start, less what going on is worth beyond it, spread over as many
 * generations as a fresh start is spread over, so that whichever costs less is what pays. Else: of one more batch, by the
 * chances of its generation. Its delay is included.
 * @param weak chance that such a jar comes out weak
 */
export function seedCost(seed: CostedSeed, weak: number, basis: CostBasis): number {
  const { costs, freshStart } = basis;
  const delay = seed.delayHours * HOUR_OF_DELAY * costs.jar;
  if (seed.level) {
    const worth = seed.level.worth * costs.jar - costs.jarsPerGeneration * delay;
    // A jar that speaks against itself makes its own next batch dearer than its level tells.
    const own = costOfGoingOn(costs, weak, 0, 0) - costOfGoingOn(costs, seed.level.weak, 0, 0);
    return freshStart.cost - worth / (costs.jarsPerGeneration * freshStart.generations) + Math.max(0, own);
  }
  const generation = reckonedGeneration(seed, basis);
  return (
    costOfGoingOn(costs, weak, chanceAt(basis.discarded, generation), chanceAt(basis.ended, generation)) +
    delay
  );
}
