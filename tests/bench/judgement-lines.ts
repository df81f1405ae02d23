// Invented lines for the judgement bench: how a keeper's record of twelve batches looks when the truth is known.
// Everything is drawn from a seeded generator; nothing here knows how judgement reasons.

import { seededRandom } from '../../core/advice/random';

export type Random = () => number;
export const seeded: (seed: number) => Random = seededRandom;

/** Standard normal number (Box–Muller). */
export const normal = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

export interface LineTruth {
  /** Standard deviation of what a whole batch shares (bath, milk, day), in points. */
  readonly spread: number;
  /** Correlation of that from one batch to the next. */
  readonly autocorrelation: number;
  /** Points lost a generation, from the batch with this index on (the founding batch has 0). */
  readonly loss: number;
  readonly from?: number;
  /** How much jars of a batch differ, as a part of the spread; a half if not given. */
  readonly jarPart?: number;
}

export interface RecordedLine {
  readonly level: number;
  /** What each batch would score with every jar recorded in full: for the test that knows the truth. */
  readonly full: readonly number[];
  /** What was written down of each batch's jars; empty: forgotten. */
  readonly recorded: readonly (readonly RecordedJar[])[];
}

/** How a keeper records. */
export interface Habits {
  /** Chance that a whole line is recorded by set word alone; of the others, that a batch is. */
  readonly wordsOnlyLine: number;
  readonly wordsOnlyBatch: number;
  /** Chance that a whole batch is forgotten, that only the jar chosen as seed is written down, that one jar has no outcome. */
  readonly forgotten: number;
  readonly bestOnly: number;
  readonly jarMissing: number;
}
export const HABITS = {
  /** Every jar of every batch, as a score. */
  'in full': { wordsOnlyLine: 0, wordsOnlyBatch: 0, forgotten: 0, bestOnly: 0, jarMissing: 0 },
  /** One batch in four by set word alone, one in twenty forgotten, one in seven by the best jar only. */
  usual: { wordsOnlyLine: 0, wordsOnlyBatch: 1 / 4, forgotten: 1 / 20, bestOnly: 1 / 7, jarMissing: 1 / 7 },
  /** One line in three by set word alone, one batch in twelve forgotten. */
  careless: {
    wordsOnlyLine: 1 / 3,
    wordsOnlyBatch: 1 / 5,
    forgotten: 1 / 12,
    bestOnly: 1 / 7,
    jarMissing: 1 / 7,
  },
  /** Nothing but set words, ever. */
  'set words': { wordsOnlyLine: 1, wordsOnlyBatch: 1, forgotten: 1 / 20, bestOnly: 1 / 7, jarMissing: 1 / 7 },
} as const satisfies Record<string, Habits>;

export const BATCHES = 12;
const JARS = 4;
const WORD_STEP = 20;
const toWord = (score: number): number =>
  Math.min(4, Math.max(0, Math.floor(score / WORD_STEP))) * WORD_STEP + WORD_STEP / 2;

/** One jar as written down: its score, and how wide the range is that the record leaves open (a set word: 20 points). */
export interface RecordedJar {
  readonly score: number;
  readonly width: number;
}

/**
 * A line of twelve batches of four jars, the best-looking of which seeds the next batch. The first batch is poor by 10 to
 * 30 points.
 */
export function inventLine(
  truth: LineTruth,
  random: Random,
  habits: Habits,
  batches = BATCHES,
): RecordedLine {
  const level = 60 + 25 * random();
  const wordsOnly = random() < habits.wordsOnlyLine;
  const poorFirst = 10 + 20 * random();
  const recorded: RecordedJar[][] = [];
  const full: number[] = [];
  let shared = truth.spread * normal(random);
  for (let batch = 0; batch < batches; batch++) {
    if (batch > 0) {
      const rho = truth.autocorrelation;
      shared = rho * shared + Math.sqrt(1 - rho * rho) * truth.spread * normal(random);
    }
    const expected =
      level - truth.loss * Math.max(0, batch - (truth.from ?? 0)) - (batch === 0 ? poorFirst : 0) + shared;
    const words = random() < habits.wordsOnlyBatch || wordsOnly;
    const jars = Array.from(
      { length: JARS },
      () => expected + (truth.jarPart ?? 0.5) * truth.spread * normal(random),
    );
    full.push(jars.reduce((a, b) => a + b, 0) / JARS);
    const seen = jars.map((jar) => {
      const kept = Math.min(100, Math.max(0, jar));
      return words ? { score: toWord(kept), width: WORD_STEP } : { score: Math.round(kept), width: 1 };
    });
    const forgotten = random() < habits.forgotten;
    const bestOnly = random() < habits.bestOnly;
    const written = seen.filter(() => random() >= habits.jarMissing);
    const best = seen.toSorted((a, b) => b.score - a.score).slice(0, 1);
    recorded.push(forgotten ? [] : bestOnly ? best : written);
  }
  return { level, full, recorded };
}
