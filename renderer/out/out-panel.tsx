// A panel over the screen: a title, what it is about, a way to close it; and how far a long call is.
import { type ReactNode, useId } from 'react';
import { useModal } from '../parts/use-modal';
import { showOut } from './out-shown';
import type { Running } from './use-job';
import './out.css';

export function OutPanel({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  const dialog = useModal();
  const id = useId();
  return (
    <dialog ref={dialog} className="out-panel" aria-labelledby={id} onClose={() => showOut(null)}>
      <div className="help-head">
        <h2 id={id}>{title}</h2>
        <button className="button" type="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
      {children}
    </dialog>
  );
}

/** How far it is, and a way to stop it; nothing while nothing runs. */
export function JobLine({ job: { progress, stop } }: { readonly job: Running }) {
  if (progress === null) return null;
  const { done, total, says } = progress;
  return (
    <div className="out-progress">
      <progress
        aria-label={says ?? 'Working'}
        {...(total !== null && total > 0 ? { value: done, max: total } : {})}
      />
      <span>{says ?? 'Working'}</span>
      <button className="button" type="button" onClick={stop}>
        Stop
      </button>
    </div>
  );
}
