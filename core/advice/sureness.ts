// Whether the keeper's own lines tell when to start afresh, or whether a figure would rest on what is assumed. Reckoned from
// the lines that tell of going on (history.ts) alone: a line seen in one generation never makes a figure surer.
import type { GenerationRecord } from './chances';
import type { Restart } from './restart';

/** What stands behind a restart figure: own lines that tell, their batches, and what they leave open. */
export interface Evidence {
  readonly lines: number;
  /** Counted once for each generation of a line, so rather too few than too many. */
  readonly batches: number;
  /** Lines that went as far as where the range that is said begins, or had to end before. */
  readonly asFar: number;
  /** Part of the draws whose own best generation lies within what is said to be about as good. */
  readonly within: number;
  /** Jars later than a first generation, of all lines. */
  readonly jars: number;
}

/** What one line or a few batches did may be luck: with less than this no figure is given as if it were known. */
const LINES_TO_TELL = 2;
const BATCHES_TO_TELL = 5;
/** The range that is said has to hold the best generation of so many draws, or the record leaves it too wide. */
const WITHIN = 0.8;

/** @param telling the lines that tell, pooled @param restart what they alone give @param all all lines, pooled */
export function evidenceOf(
  telling: readonly GenerationRecord[],
  restart: Pick<Restart, 'from' | 'within'>,
  all: readonly GenerationRecord[],
): Evidence {
  const endedBefore = telling.filter(({ generation }) => generation < restart.from);
  return {
    lines: Math.max(0, ...telling.map(({ lines }) => lines)),
    batches: telling.reduce((sum, { seen }) => sum + seen, 0),
    asFar:
      (telling.find(({ generation }) => generation === restart.from)?.lines ?? 0) +
      endedBefore.reduce((sum, { ended }) => sum + ended, 0),
    within: restart.within,
    jars: all.reduce((sum, { generation, jars }) => sum + (generation > 1 ? jars : 0), 0),
  };
}

/**
 * Whether a figure may be given as known: two lines and five batches tell, two lines were seen as far as its range or to their
 * end (beyond, it is what is assumed that speaks), and the range said with it is as wide as the record leaves it.
 */
export const tellsEnough = ({ lines, batches, asFar, within }: Evidence): boolean =>
  lines >= LINES_TO_TELL && batches >= BATCHES_TO_TELL && asFar >= LINES_TO_TELL && within >= WITHIN;

/** Why it is too early, and how much of the drawing rests on what is assumed. */
function lacking({ lines, batches, asFar }: Evidence): readonly [string, 'mostly' | 'partly'] {
  if (lines === 0) return ['no line of yours has been seen beyond its first batch', 'mostly'];
  if (lines < LINES_TO_TELL) return ['only one line of yours tells of it', 'mostly'];
  if (batches < BATCHES_TO_TELL) return [`only ${batches} batches of yours tell of it`, 'mostly'];
  if (asFar < LINES_TO_TELL)
    return [
      `${asFar === 0 ? 'no line' : 'only one line'} of yours has gone on long enough to tell`,
      'partly',
    ];
  return ['what your lines did still leaves too much open', 'partly'];
}

/** What is said instead of a figure where too little tells. */
export function tooEarlySentence({ from, to, openEnded }: Restart, evidence: Evidence): string {
  const [why, part] = lacking(evidence);
  const range = openEnded
    ? `any generation from ${from} on would be about as good`
    : from === to
      ? `it would be after about generation ${from}`
      : `it would be after one of generations ${from} to ${to}`;
  return `It is too early to say when to start afresh: ${why}. What is drawn here ${part} rests on what is assumed; going by it, ${range}.`;
}
