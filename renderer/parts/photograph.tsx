// A photograph that opens: small in its place, and as large as the window allows once it is pressed.
import { useState } from 'react';
import { useModal } from './use-modal';
import type { Photograph as Photo } from '../../core/ledger/records';

interface Props {
  readonly photograph: Photo;
  /** What it is called where it has no caption. */
  readonly name: string;
}

const fileOf = ({ sha256 }: Photo): string => `./photograph/${sha256}.jpg`;

function Large({ photograph, name, onClose }: Props & { readonly onClose: () => void }) {
  const dialog = useModal();
  const caption = photograph.caption ?? name;
  return (
    <dialog ref={dialog} className="photograph-large" aria-label={caption} onClose={onClose}>
      <img src={fileOf(photograph)} alt={caption} width={photograph.width} height={photograph.height} />
      <div className="row">
        <p>{caption}</p>
        <button type="button" className="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </div>
    </dialog>
  );
}

/** The picture, to be pressed. */
export function Photograph({ photograph, name }: Props) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <span className="photograph-open">
        <img
          src={fileOf(photograph)}
          alt={photograph.caption ?? name}
          width={photograph.width}
          height={photograph.height}
          loading="lazy"
        />
        {/* Over the picture and not round it, so that the picture is read out as one. */}
        <button
          type="button"
          aria-label={`Open ${photograph.caption ?? name}`}
          title="Open it large"
          onClick={() => setOpen(true)}
        />
      </span>
      {open && <Large photograph={photograph} name={name} onClose={() => setOpen(false)} />}
    </>
  );
}
