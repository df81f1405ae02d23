// What is done with one thing on the shelf: one call each. What is asked first becomes a question; a yes does it all the same.
import { useState } from 'react';
import type { WriteName } from '../../core/call-names';
import type { Input } from '../../core/contract';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';

export type VerbCall = Extract<
  WriteName,
  'shelf.open' | 'shelf.eat' | 'shelf.give' | 'shelf.freeze' | 'shelf.thaw' | 'shelf.discard' | 'shelf.keep'
>;

export interface Question {
  readonly code: string;
  readonly says: string;
  readonly yes: () => void;
  readonly no: () => void;
}

const ASKED_FIRST: ReadonlySet<string> = new Set([
  'not food',
  'kept for seed',
  'last of a line',
  'thawed before',
  'opened before',
]);

export interface Verbs {
  readonly question: Question | null;
  readonly run: <N extends VerbCall>(name: N, input: Input<N>) => void;
}

/** @param onDone hears that something was done, before the shelf is read again */
export function useVerbs(onDone: () => void): Verbs {
  const [question, ask] = useState<Question | null>(null);
  const run = async <N extends VerbCall>(name: N, input: Input<N>): Promise<void> => {
    const answer = await call(name, input);
    ask(null);
    if (answer.ok) {
      onDone();
      const { says, caution } = answer.value as { says: string; caution: string | null };
      say(caution === null ? says : `${says} ${caution}`, caution === null ? 'calm' : 'caution');
    } else if (ASKED_FIRST.has(answer.error.code))
      ask({
        code: answer.error.code,
        says: answer.sentence,
        yes: () => void run(name, { ...input, meant: true }),
        no: () => ask(null),
      });
    else say(answer.sentence, 'caution');
  };
  return { question, run: (name, input) => void run(name, input) };
}
