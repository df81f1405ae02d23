// The heading over a line's batches, with a button that turns it into a field for the line's name.
import { useRef, useState } from 'react';
import { showOut } from '../out/out-shown';
import { NameForm } from '../parts/name-line';

export function LineHeading({ line, name }: { readonly line: string; readonly name: string }) {
  const [naming, setNaming] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const close = (): void => {
    setNaming(false);
    requestAnimationFrame(() => button.current?.focus());
  };
  return (
    <>
      <h2 id="line-plot" className={naming ? 'visually-hidden' : undefined}>
        {name}, batch by batch
      </h2>
      {naming ? (
        <NameForm line={line} name={name} onClose={close} />
      ) : (
        <button ref={button} type="button" className="button quiet lit" onClick={() => setNaming(true)}>
          Name this line
        </button>
      )}
      <button type="button" className="button quiet lit" onClick={() => showOut({ panel: 'reports', line })}>
        Print…
      </button>
    </>
  );
}
