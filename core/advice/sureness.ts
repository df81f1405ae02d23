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

/** What too little of the keeper's own stands behind. */
export type Lacking =
  | { readonly code: 'no line' | 'one line' }
  | { readonly code: 'few batches'; readonly batches: number }
  | { readonly code: 'none as far' | 'one as far' };

/**
 * What is lacking before a figure may be given as known; null: nothing. Two lines and five batches have to tell, and two lines
 * to have been seen as far as it or to their end (beyond, it is what is assumed that speaks).
 */
export function lackingIn({ lines, batches, asFar }: Evidence): Lacking | null {
  if (lines === 0) return { code: 'no line' };
  if (lines < LINES_TO_TELL) return { code: 'one line' };
  if (batches < BATCHES_TO_TELL) return { code: 'few batches', batches };
  if (asFar < LINES_TO_TELL) return { code: asFar === 0 ? 'none as far' : 'one as far' };
  return null;
}

/** Fewer jars than this tell nothing: what is said then rests on the assumption it started from. */
const JARS_TO_TELL = 5;
/** Whether too few of the keeper's own jars tell. @param jars that do */
export const restsOnAssumption = (jars: number): boolean => jars < JARS_TO_TELL;
