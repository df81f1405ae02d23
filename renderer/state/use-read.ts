// A ledger read as React state: read at once, again when the ledger changes or the input does.
import { useEffect, useState } from 'react';
import type { ReadName } from '../../core/call-names';
import type { Input, Reply } from '../../core/contract';
import { type Answer, call } from './ledger-calls';
import { useRevision } from './store';
import { useHoldsBack } from './whole';

interface Held<T> {
  readonly question: string;
  /** The ledger's revision it was read at. */
  readonly revision: number;
  readonly tick: number;
  readonly answer: Answer<T>;
}

/**
 * The answer to a read, null until the first arrives. A newer reading replaces it in place, so that nothing flickers;
 * an answer that comes late to an older question is dropped. `input` null asks nothing.
 * @param tick read again where it changes: what goes on by itself (useMinute)
 */
export function useRead<N extends ReadName>(
  name: N,
  input: Input<N> | null,
  tick = 0,
): Answer<Reply<N>> | null {
  const revision = useRevision();
  const question = input === null ? null : JSON.stringify(input);
  const [held, hold] = useState<Held<Reply<N>> | null>(null);
  useHoldsBack(question !== null && held === null);
  useEffect(() => {
    if (question === null) return undefined;
    let current = true;
    void call(name, JSON.parse(question) as Input<N>).then((answer) => {
      if (current) hold({ question, revision, tick, answer });
    });
    return () => {
      current = false;
    };
  }, [name, question, revision, tick]);
  return held !== null && held.question === question ? held.answer : null;
}

const MINUTE = 60_000;

/** Counts the minutes. */
export function useMinute(): number {
  const [minutes, count] = useState(0);
  useEffect(() => {
    const timer = window.setInterval(() => count((before) => before + 1), MINUTE);
    return () => window.clearInterval(timer);
  }, []);
  return minutes;
}
