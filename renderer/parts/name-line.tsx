// Naming a line where its name is read.
import { useEffect, useRef, useState } from 'react';
import { call } from '../state/ledger-calls';
import { say } from '../state/store';

interface Props {
  readonly line: string;
  readonly name: string;
  readonly onClose: () => void;
}

/** The field. An empty name calls the line by its founding batch again. */
export function NameForm({ line, name, onClose }: Props) {
  const [typed, type] = useState(name);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => {
    field.current?.scrollIntoView({ block: 'center' });
    field.current?.select();
  }, []);
  const save = async (): Promise<void> => {
    const wanted = typed.trim();
    if (wanted === name) return onClose();
    const answer = await call('line.name', { line, name: wanted === '' ? null : wanted, why: null });
    if (!answer.ok) return say(answer.sentence, 'caution');
    return onClose();
  };
  return (
    <form
      className="row line-naming"
      aria-label="Name this line"
      onSubmit={(event) => {
        event.preventDefault();
        void save();
      }}
    >
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
            onClose();
          }}
        />
      </label>
      <button type="submit" className="button primary">
        Save
      </button>
      <button type="button" className="button quiet" onClick={onClose}>
        Cancel
      </button>
    </form>
  );
}
