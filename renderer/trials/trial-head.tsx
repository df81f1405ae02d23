// The head of a trial, made or to be made: what it is called, what it says, and the ways from it.
import type { ReactNode } from 'react';
import { go } from '../state/store';

interface Props {
  readonly called: string;
  readonly says: string;
  readonly batch: string;
  /** What leads on from it. */
  readonly children?: ReactNode;
}

export function TrialHead({ called, says, batch, children }: Props) {
  return (
    <header className="trial-head">
      <div>
        <p className="soft">{called}</p>
        <h1>{says}</h1>
      </div>
      <div className="row">
        <button type="button" className="button quiet" onClick={() => go('trials')}>
          All trials
        </button>
        <button type="button" className="button quiet" onClick={() => go('batch', batch)}>
          Its batch
        </button>
        {children}
      </div>
    </header>
  );
}
