// Photographs side by side along a line, one a generation, all at one size: the eye sees what words don't.
import { useEffect, useRef, useState } from 'react';
import type { Reply } from '../../core/contract';
import { useRead } from '../state/use-read';
import { Photograph } from './photograph';
import { useModal } from './use-modal';

type Seen = Reply<'photograph.line'>['photographs'];

function SideBySide({ seen, onClose }: { readonly seen: Seen; readonly onClose: () => void }) {
  const dialog = useModal();
  const row = useRef<HTMLOListElement>(null);
  // The newest end first in sight, as in the family.
  useEffect(() => {
    if (row.current) row.current.scrollLeft = row.current.scrollWidth;
  }, []);
  return (
    <dialog ref={dialog} className="line-photographs" aria-labelledby="line-photographs" onClose={onClose}>
      <div className="help-head">
        <h2 id="line-photographs">Generation by generation</h2>
        <button type="button" className="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
      <ol ref={row} aria-label="Photographs, the earliest generation first">
        {seen.map(({ label, generation, atLeast, photograph, mate }) => (
          <li key={photograph.id}>
            <Photograph photograph={photograph} name={`Photograph of ${label}`} />
            <p>
              <strong>{label}</strong>{' '}
              <span className="soft">
                {atLeast ? 'at least ' : ''}
                {generation}
                {mate ? ', made beside it' : ''}
              </span>
            </p>
          </li>
        ))}
      </ol>
    </dialog>
  );
}

/** The button that opens them; nothing where there are fewer than two. */
export function LinePhotographs({ jar }: { readonly jar: string }) {
  const answer = useRead('photograph.line', { jar });
  const [open, setOpen] = useState(false);
  if (!answer?.ok || answer.value.photographs.length < 2) return null;
  const seen = answer.value.photographs;
  return (
    <>
      <button type="button" className="linked" onClick={() => setOpen(true)}>
        {seen.length} photographs along its line, side by side
      </button>
      {open && <SideBySide seen={seen} onClose={() => setOpen(false)} />}
    </>
  );
}
