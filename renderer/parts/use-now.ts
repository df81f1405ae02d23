// What stands in the kitchen now: read with the ledger, and again each minute, since holds go on by themselves.
import { useEffect, useState } from 'react';
import type { Reply } from '../../core/contract';
import { call } from '../state/ledger-calls';
import { say, useRevision } from '../state/store';

export type Now = Reply<'family.now'>;
const NOTHING: Now = { now: '1970-01-01T00:00:00Z', holds: [], kept: [] };
const MINUTE = 60_000;

/** Nothing until it is read. */
export function useNow(): Now {
  const revision = useRevision();
  const [held, hold] = useState({ now: NOTHING, revision: -1 });
  useEffect(() => {
    let current = true;
    const read = async (): Promise<void> => {
      const answer = await call('family.now', {});
      if (!current) return;
      if (!answer.ok) say(answer.sentence, 'caution');
      // The same answer but for the clock draws nothing anew.
      else hold((before) => (sameBut(before.now, answer.value) ? before : { now: answer.value, revision }));
    };
    void read();
    const timer = window.setInterval(() => void read(), MINUTE);
    return () => {
      current = false;
      window.clearInterval(timer);
    };
  }, [revision]);
  return held.now;
}

const sameBut = (a: Now, b: Now): boolean =>
  JSON.stringify({ ...a, now: '' }) === JSON.stringify({ ...b, now: '' });
