// What stands in the kitchen now and what today asks for: read with the ledger, and again each minute, since holds go on by
// themselves.
import { useEffect, useState } from 'react';
import type { Reply } from '../../core/contract';
import type { Answer } from '../state/ledger-calls';
import { say } from '../state/store';
import { useMinute, useRead } from '../state/use-read';

export type Now = Reply<'family.now'>;
const NOTHING = { now: '1970-01-01T00:00:00Z', holds: [], kept: [], items: [] };

/** The last answer, as long as the next is the same but for the clock: then nothing is drawn anew. A refusal is said. */
function useSame<T extends { readonly now: string }>(answer: Answer<T> | null, nothing: T): T {
  const [held, hold] = useState(nothing);
  const refused = answer?.ok === false ? answer.sentence : null;
  useEffect(() => {
    if (refused !== null) say(refused, 'caution');
  }, [refused]);
  if (answer?.ok === true && answer.value !== held && !sameBut(held, answer.value)) {
    hold(answer.value);
    return answer.value;
  }
  return held;
}

const sameBut = (a: object, b: object): boolean =>
  JSON.stringify({ ...a, now: '' }) === JSON.stringify({ ...b, now: '' });

/** Nothing until it is read. */
export const useNow = (): Now => useSame(useRead('family.now', {}, useMinute()), NOTHING);
export const useToday = (): Reply<'today.list'> => useSame(useRead('today.list', {}, useMinute()), NOTHING);
