// An outcome as a row of notes tells it.
import type { Outcome } from '../ledger/records';

export type ToldOutcome = Omit<Outcome, 'jar'> & {
  /** What of its signs, and of *spoiled*, stands in words alone: a remark, of which only the keeper's answer is a fact. */
  readonly worded?: Pick<Outcome, 'signs' | 'spoiledSaid'>;
};
