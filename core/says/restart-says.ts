// When a fresh start pays, in one sentence with at most one figure.
import type { VerdictWord } from '../shapes/advice-replies';

/** Where the cost is lowest or about as low. */
export interface RestartRange {
  readonly from: number;
  readonly to: number;
  /** Anything from `from` on. */
  readonly openEnded: boolean;
}

/**
 * @param verdict on the line that was asked about; null: none was @param today generation of its newest jar
 * @param sure enough of the keeper's own lines tell
 */
export function restartShort(
  { from, to, openEnded }: RestartRange,
  sure: boolean,
  verdict: VerdictWord | null,
  today: number | null,
): string {
  if (!sure) return 'It is too early to say when a fresh start pays.';
  const where = openEnded ? `${from} or any later one` : from === to ? `${from}` : `${from} to ${to}`;
  const reached = today !== null && today >= from;
  const parts = verdict !== null && (verdict === 'start afresh') !== reached;
  return `Over many lines a fresh start pays after generation ${where}${parts ? '; for this line the verdict above stands' : ''}.`;
}
