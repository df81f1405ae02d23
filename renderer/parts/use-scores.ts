// Vigour of the mounted jars, asked for after the jars themselves: judging must never hold up the drawing.
import { useEffect, useState } from 'react';
import { JUDGED_UNASKED } from '../../core/vigour/judged-unasked';
import { call } from '../state/ledger-calls';
import { say, useRevision } from '../state/store';

const PAGE = 600;

interface Scores {
  /** By jar key; a jar without a score is not in it. */
  readonly scores: ReadonlyMap<number, number>;
  /** Whether these are the answer for the ledger as it is now. */
  readonly current: boolean;
}

/** Scores of the jars with these keys, in a family of so many jars. */
export function useScores(keys: readonly number[], jars: number): Scores {
  const revision = useRevision();
  const [held, hold] = useState<{ revision: number; scores: ReadonlyMap<number, number> }>({
    revision: -1,
    scores: new Map(),
  });
  useEffect(() => {
    if (jars > JUDGED_UNASKED || keys.length === 0) return undefined;
    let current = true;
    void call('judgement.scores', { keys: keys.slice(0, PAGE) }).then((answer) => {
      if (!current) return;
      if (!answer.ok) {
        say(answer.sentence, 'caution');
        return;
      }
      const scores = new Map<number, number>();
      for (const { key, score } of answer.value.scores) if (score !== null) scores.set(key, score);
      hold({ revision, scores });
    });
    return () => {
      current = false;
    };
  }, [keys, jars, revision]);
  return { scores: held.scores, current: held.revision === revision };
}
