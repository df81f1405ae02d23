// A long call as React state: what it says while it runs, and how it is stopped.
import { useRef, useState } from 'react';
import type { JobName } from '../../core/call-names';
import type { Input, Reply } from '../../core/contract';
import { type Answer, type Job, type Progress, startJob } from '../state/ledger-calls';

export interface Running {
  /** null while nothing runs. */
  readonly progress: Pick<Progress, 'done' | 'total' | 'says'> | null;
  readonly run: <N extends JobName>(name: N, input: Input<N>) => Promise<Answer<Reply<N>>>;
  readonly stop: () => void;
}

export function useJob(): Running {
  const [progress, setProgress] = useState<Running['progress']>(null);
  const job = useRef<Pick<Job<JobName>, 'cancel'> | null>(null);
  return {
    progress,
    run: async (name, input) => {
      setProgress({ done: 0, total: null, says: null });
      const started = startJob(name, input, setProgress);
      job.current = started;
      return started.done.finally(() => setProgress(null));
    },
    stop: () => job.current?.cancel(),
  };
}
