// What a seed's odds rest on, from the judgement of its line: the score of its batch, or its own where it was left out of the
// jars that speak for it. What is said of either names the jars that counted.
import type { SetWord } from '../ledger/records';
import { countedIn, countedWords } from '../vigour/batch-says';
import type { JudgedBatch, LineJudgement } from '../vigour/line';
import { inWords } from '../lineage/way-to-source';
import { median } from '../vigour/medians';
import { shown } from '../vigour/score';
import { USUAL_POINTS, type JarScore } from '../vigour/jar-evidence';
import { letterOf } from '../vigour/vigour-words';
import { AS_GOOD } from './seed-cost';
import { isWeakWord } from './weak';
import type { SeedCandidate } from './seed-candidate';

export type Scored = Pick<SeedCandidate, 'vigour' | 'own' | 'scoreSays'>;

/** Half the range of a batch where no jar of it tells how wide it is (points). */
const HALF_RANGE = 10;

type Range = NonNullable<SeedCandidate['vigour']>;
const rangeWords = ({ points, low, high }: Range): string =>
  `${shown(points)} (${shown(low)} to ${shown(high)})`;
const AS_EARLY = `${USUAL_POINTS} is as the line's early batches were.`;

const wordOf = ({ jar }: JarScore): SetWord | null => jar.outcome?.setWord ?? null;

/** That it came out weak itself, and which of its batch came out firmer. */
function weakItself(own: JarScore, counted: readonly JarScore[]): string[] {
  const word = wordOf(own);
  if (!isWeakWord(word)) return [];
  const firmer = counted.flatMap((one) => {
    const other = wordOf(one);
    return one === own || other === null || isWeakWord(other) ? [] : [`${letterOf(one.jar.label)} ${other}`];
  });
  return [`It came out ${word} itself${firmer.length === 0 ? '' : `; of its batch ${inWords(firmer)}`}.`];
}

/** By its batch, drawn down by what it scored itself. */
function byBatch(batch: JudgedBatch, points: number, own: JarScore | null, leftOut: string | null): Scored {
  const counted = countedIn(batch);
  const half = median(counted.map(({ low, high }) => (high - low) / 2)) ?? HALF_RANGE;
  const vigour = { points, low: points - half, high: points + half };
  const [only] = counted;
  const alone = counted.length === 1 && only;
  const of = alone
    ? alone === own
      ? `It scored ${rangeWords(vigour)}, and is the only jar of its batch that can be compared; ${AS_EARLY}`
      : `Its batch scored ${rangeWords(vigour)}, by ${letterOf(only.jar.label)} alone; ${AS_EARLY}`
    : `Its batch scored ${rangeWords(vigour)}, the median of ${countedWords(batch)}; ${AS_EARLY}`;
  const apart = own === null ? 0 : own.points - points;
  const itself = own === null ? '' : `It scored ${shown(own.points)} itself`;
  const judged =
    apart < -AS_GOOD
      ? [`${itself}: a third of what that is more than ${AS_GOOD} points below its batch counts against it.`]
      : apart > AS_GOOD
        ? [`${itself}. That one of several came out better is no evidence that its culture is better, so its batch counts.`]
        : leftOut !== null && own !== null
          ? [`${itself}.`]
          : []; // prettier-ignore
  return {
    vigour,
    own: own && { points: own.points },
    scoreSays: [
      of,
      ...(own === null ? [] : weakItself(own, counted)),
      ...judged,
      ...(leftOut === null || own === null
        ? []
        : [`It is not among the jars that count for its batch: ${leftOut}`]),
    ],
  };
}

/** By what it scored itself, with why its batch doesn't speak for it. */
function byItself(own: JarScore, why: string | null): Scored {
  const { points, low, high } = own;
  return {
    vigour: { points, low, high },
    own: { points },
    scoreSays: [
      `It scored ${rangeWords(own)} itself; ${AS_EARLY}`,
      ...weakItself(own, []),
      ...(why === null ? [] : [`It is not compared with its batch: ${why}`]),
    ],
  };
}

/** Left out for what was stirred in or for its warmth: its culture is that of its batch, and the batch speaks for it. */
const SAME_CULTURE = ['unseen', 'other treatment', 'ran cool'];

function scoredIn(key: number, batch: JudgedBatch): Scored | null {
  const own = batch.scores.find(({ jar }) => jar.key === key) ?? null;
  const left = batch.leftOut.find(({ jar }) => jar.key === key) ?? null;
  const spokenFor = left === null || SAME_CULTURE.includes(left.because);
  // Set-aside jars speak for no other jar, and a score of none but them is no score of this one.
  const heldAlone = left !== null && batch.comparable.every(({ held }) => held !== null);
  if (batch.points !== null && spokenFor && !heldAlone)
    return byBatch(batch, batch.points, own, left?.reason ?? null);
  if (own) return byItself(own, left?.reason ?? null);
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
  return { vigour: null, own: null, scoreSays: [] };
}
