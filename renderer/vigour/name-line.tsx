// Naming a line where its name is read.
import { useEffect, useRef, useState } from 'react';
import { call } from '../app/calls';
import { say } from '../app/store';

interface Props {
  readonly line: string;
  readonly name: string;
}

/** The heading, with a button that turns it into a field. An empty name calls the line by its founding batch again. */
export function LineHeading({ line, name }: Props) {
  const [typed, type] = useState<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  const button = useRef<HTMLButtonElement>(null);
  const naming = typed !== null;
  useEffect(() => field.current?.select(), [naming]);
  const close = (): void => {
    type(null);
    requestAnimationFrame(() => button.current?.focus());
  };
  const save = async (): Promise<void> => {
    const wanted = (typed ?? '').trim();
    if (wanted === name) return close();
    const answer = await call('line.name', { line, name: wanted === '' ? null : wanted, why: null });
    if (!answer.ok) return say(answer.sentence, 'caution');
    return close();
  };
  if (!naming)
    return (
      <>
        <h2 id="line-plot">{name}, batch by batch</h2>
        <button ref={button} type="button" className="button quiet lit" onClick={() => type(name)}>
          Name this line
        </button>
      </>
    );
  return (
    <form
      className="row line-naming"
      aria-label="Name this line"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
      <h2 id="line-plot" className="visually-hidden">
        {name}, batch by batch
      </h2>
      <label className="row">
        <span>Name of this line</span>
        <input
          ref={field}
          className="input"
          value={typed}
          maxLength={40}
          onChange={(event) => type(event.target.value)}
          onKeyDown={(event) => {
            if (event.key !== 'Escape') return;
            event.stopPropagation();
            close();
          }}
        />
      </label>
      <button type="submit" className="button primary">
        Save
      </button>
      <button type="button" className="button quiet" onClick={close}>
        Cancel
      </button>
    </form>
  );
}
