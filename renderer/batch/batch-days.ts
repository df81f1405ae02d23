// The day a batch was made on, or the days between which it was, as the page needs them. Pure.
import type { BatchReply } from '../../core/contract';
import { middleDay } from '../../core/quantities/day-ranges';
import type { Writer } from '../parts/reading';

type Batch = BatchReply['batch'];

/** The first and the last day it can have been made on, and the one it stands at among others. */
export function daysOf({ madeOn, madeFrom, madeTo }: Pick<Batch, 'madeOn' | 'madeFrom' | 'madeTo'>): {
  readonly first: string;
  readonly last: string;
  readonly at: string;
} {
  const first = madeOn ?? madeFrom ?? '';
  const last = madeOn ?? madeTo ?? '';
  return { first, last, at: middleDay({ from: first, to: last }) };
}

/** "14 Mar 2026 plain". */
export const batchWords = (batch: Batch, writer: Writer): string =>
  [writer.made(batch), batch.word].filter(Boolean).join(' ');
