// What a seed's score rests on, in words: its batch with the jars that counted, or itself, and why.
import type { ScoreRange, SeedScore, WeakItself } from '../advice/scored';
import { rangesSay } from './batch-says';
import { inWords } from './way-to-source';
import { shown } from '../vigour/score';
import { USUAL_POINTS } from '../vigour/jar-evidence';
import { asClause, leftOutSays } from './left-out-says';
import { letterOf, scoresInWords } from './vigour-words';

const rangeWords = ({ points, low, high }: ScoreRange): string =>
  `${shown(points)} (${shown(low)} to ${shown(high)})`;
const AS_EARLY = `${USUAL_POINTS} is usual.`;

function weakSays(weak: WeakItself | null): string[] {
  if (weak === null) return [];
  const firmer = weak.firmer.map(({ label, word }) => `${letterOf(label)} ${word}`);
  return [
    `It came out ${weak.word} itself${firmer.length === 0 ? '' : `; of its batch ${inWords(firmer)}`}.`,
  ];
}

type ByBatch = Extract<SeedScore, { by: 'batch' }>;

function batchScoreOf({ range, counted }: ByBatch): string {
  const [only] = counted;
  if (counted.length !== 1 || !only)
    return `Its batch scored ${rangeWords(range)}, the median of ${scoresInWords(counted)}; ${AS_EARLY}${rangesSay(range.points, counted)}`;
  return only.itself
    ? `It scored ${rangeWords(range)}, and is the only jar of its batch that can be compared; ${AS_EARLY}`
    : `Its batch scored ${rangeWords(range)}, by ${letterOf(only.label)} alone; ${AS_EARLY}`;
}

/** What it scored itself, where that is apart from its batch or does not count for it. */
function itselfSays({ own, apart, leftOut }: ByBatch): string[] {
  if (own === null) return [];
  const itself = `It scored ${shown(own)} itself`;
  if (apart === 'below') return [`${itself}, clearly below its batch: part of that counts against it.`]; // prettier-ignore
  if (apart === 'above') return [`${itself}. That one of several came out better is no evidence that its culture is better, so its batch counts.`]; // prettier-ignore
  return leftOut === null ? [] : [`${itself}.`];
}

/** A sentence each; none where there is nothing to score it by. */
export function seedScoreSays(score: SeedScore | null): string[] {
  if (score === null) return [];
  if (score.by === 'itself')
    return [
      `It scored ${rangeWords(score.range)} itself; ${AS_EARLY}`,
      ...weakSays(score.weak),
      ...(score.leftOut === null
        ? []
        : [`It is not compared with its batch: ${asClause(leftOutSays(score.leftOut))}.`]),
    ];
  return [
    batchScoreOf(score),
    ...weakSays(score.weak),
    ...itselfSays(score),
    ...(score.leftOut === null
      ? []
      : [`It is not among the jars that count for its batch: ${asClause(leftOutSays(score.leftOut))}.`]),
  ];
}
