// What a seed's odds rest on, from the judgement of its line: the score of its batch, or its own where it was left out of the
// jars that speak for it. What is said of either (core/says/seed-score-says.ts) names the jars that counted.
import type { SetWord } from '../ledger/records';
import { countedIn, type JudgedBatch, type LineJudgement } from '../vigour/line';
import type { LeftOutBecause } from '../vigour/comparable';
import { median } from '../vigour/medians';
import type { JarScore } from '../vigour/jar-evidence';
import { AS_GOOD } from './seed-cost';
import { isWeakWord } from './weak';

export interface ScoreRange {
  readonly points: number;
  readonly low: number;
  readonly high: number;
}

/** That a jar came out weak itself, and which of its batch came out firmer. */
export interface WeakItself {
  readonly word: SetWord;
  readonly firmer: readonly { readonly label: string; readonly word: SetWord }[];
}

export type SeedScore =
  | {
      readonly by: 'batch';
      readonly range: ScoreRange;
      /** Jars that count for the batch, with their points. */
      readonly counted: readonly {
        readonly label: string;
        readonly points: number;
        readonly itself: boolean;
      }[];
      readonly own: number | null;
      readonly weak: WeakItself | null;
      /** It came out clearly below or above its batch. */
      readonly apart: 'below' | 'above' | null;
      /** Why it is not among those jars itself. */
      readonly leftOut: LeftOutBecause | null;
    }
  | {
      readonly by: 'itself';
      readonly range: ScoreRange;
      readonly weak: WeakItself | null;
      readonly leftOut: LeftOutBecause | null;
    };

export interface Scored {
  /** What its odds rest on; null where there is nothing to score it by. */
  readonly vigour: ScoreRange | null;
  /** What it scored itself; null where it has no score. */
  readonly own: { readonly points: number } | null;
  readonly scored: SeedScore | null;
}

const wordOf = ({ jar }: JarScore): SetWord | null => jar.outcome?.setWord ?? null;

function weakItself(own: JarScore | null, counted: readonly JarScore[]): WeakItself | null {
  const word = own && wordOf(own);
  if (word === null || !isWeakWord(word)) return null;
  const firmer = counted.flatMap((one) => {
    const other = wordOf(one);
    return one === own || other === null || isWeakWord(other) ? [] : [{ label: one.jar.label, word: other }];
  });
  return { word, firmer };
}

/** By its batch, drawn down by what it scored itself. */
function byBatch(
  batch: JudgedBatch,
  points: number,
  own: JarScore | null,
  leftOut: LeftOutBecause | null,
): Scored {
  const counted = countedIn(batch);
  const half = median(counted.map(({ low, high }) => (high - low) / 2)) ?? 0;
  const range = { points, low: points - half, high: points + half };
  const apart = own === null ? 0 : own.points - points;
  return {
    vigour: range,
    own: own && { points: own.points },
    scored: {
      by: 'batch',
      range,
      counted: counted.map((one) => ({ label: one.jar.label, points: one.points, itself: one === own })),
      own: own && own.points,
      weak: weakItself(own, counted),
      apart: apart < -AS_GOOD ? 'below' : apart > AS_GOOD ? 'above' : null,
      leftOut: own === null ? null : leftOut,
    },
  };
}

/** By what it scored itself, with why its batch doesn't speak for it. */
function byItself(own: JarScore, leftOut: LeftOutBecause | null): Scored {
  const { points, low, high } = own;
  const range = { points, low, high };
  return {
    vigour: range,
    own: { points },
    scored: { by: 'itself', range, weak: weakItself(own, []), leftOut },
  };
}

/** Left out for what was stirred in or for its warmth: its culture is that of its batch, and the batch speaks for it. */
const SAME_CULTURE = ['unseen', 'other treatment', 'ran cool', 'held short'];

function scoredIn(key: number, batch: JudgedBatch): Scored | null {
  const own = batch.scores.find(({ jar }) => jar.key === key) ?? null;
  const left = batch.leftOut.find(({ jar }) => jar.key === key) ?? null;
  const spokenFor = left === null || SAME_CULTURE.includes(left.because);
  // Set-aside jars speak for no other jar, and a score of none but them is no score of this one.
  const heldAlone = left !== null && batch.comparable.every(({ held }) => held !== null);
  if (batch.points !== null && spokenFor && !heldAlone) return byBatch(batch, batch.points, own, left);
  // After so short a stay what was seen says nothing.
  if (own && left?.because !== 'held short') return byItself(own, left);
  return null;
}

/**
 * What is known of how a jar came out, by the first of its lines that tells.
 * @param batch key of its batch; @param judgements of the lines that it belongs to
 */
export function scoredOf(key: number, batch: number, judgements: readonly LineJudgement[]): Scored {
  for (const { batches } of judgements) {
    const judged = batches.find((one) => one.batch === batch);
    const found = judged ? scoredIn(key, judged) : null;
    if (found) return found;
  }
  return { vigour: null, own: null, scored: null };
}
