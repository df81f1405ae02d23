// Whether the keeper's own lines tell when to start afresh, or whether a figure would rest on what is assumed. Reckoned from
// the lines that tell of going on alone: a line seen in one generation never makes a figure surer.
import type { LineTold } from './line-told';
import type { Restart } from './restart-curve';

/** What stands behind a restart figure: own lines that tell, their batches, and what they leave open. */
export interface Evidence {
  readonly lines: number;
  /** Counted once for each generation of a line, so rather too few than too many. */
  readonly batches: number;
  /** Lines that went as far as where the range that is said begins, or had to end before. */
  readonly asFar: number;
  /** Jars later than a first generation, of all lines. */
  readonly jars: number;
}

/** What one line or a few batches did may be luck: with less than this no figure is given as if it were known. */
const LINES_TO_TELL = 2;
const BATCHES_TO_TELL = 5;

/** A line seen in a single generation says nothing of going on. */
export const tellsOfGoingOn = ({ seen }: LineTold): boolean => seen > 1;

/** @param telling the lines that tell, @param restart what they alone give, @param all all lines */
export const evidenceOf = (
  telling: readonly LineTold[],
  restart: Pick<Restart, 'from'>,
  all: readonly LineTold[],
): Evidence => ({
  lines: telling.length,
  batches: telling.reduce((sum, { seen }) => sum + seen, 0),
  asFar: telling.filter(({ last, ended }) => ended || last >= restart.from).length,
  jars: all.reduce((sum, { later }) => sum + later.jars, 0),
});

/**
 * Whether a figure may be given as known: two lines and five batches tell, and two lines were seen as far as it or to their end
 * (beyond, it is what is assumed that speaks).
 */
export const tellsEnough = ({ lines, batches, asFar }: Evidence): boolean =>
  lines >= LINES_TO_TELL && batches >= BATCHES_TO_TELL && asFar >= LINES_TO_TELL;

/** Why it is too early, and how much of the drawing rests on what is assumed. */
function lacking({ lines, batches, asFar }: Evidence): readonly [string, 'mostly' | 'partly'] {
  if (lines === 0) return ['no line of yours has been seen beyond its first batch', 'mostly'];
  if (lines < LINES_TO_TELL) return ['only one line of yours tells of it', 'mostly'];
  if (batches < BATCHES_TO_TELL) return [`only ${batches} batches of yours tell of it`, 'mostly'];
  return [`${asFar === 0 ? 'no line' : 'only one line'} of yours has gone on long enough to tell`, 'partly'];
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
