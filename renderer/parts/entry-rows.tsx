// A list of like rows in a form: each can be taken away while there is another, and one more can be added.
import { type ReactNode, useState } from 'react';

interface Props<T> {
  readonly items: readonly T[];
  /** What a row is: "seed", "addition", "strain". */
  readonly kind: string;
  /** Whose rows, for a screen reader: "all jars", "jar b". */
  readonly of?: string;
  /** A row as it is added. */
  readonly fresh: T;
  /** While the last row is empty, Enter passes over the button that adds another. */
  readonly isEmpty?: (item: T) => boolean;
  /** Enter passes over it always: another row is rare. */
  readonly rare?: boolean;
  readonly onChange: (items: readonly T[]) => void;
  /** Fields of one row; `added` on the row that the keeper has just asked for. */
  readonly children: (item: T, at: number, added: boolean) => ReactNode;
}

/** Rows with one to add and one to take away. */
export function Rows<T>({ items, kind, of, fresh, isEmpty, rare = false, onChange, children }: Props<T>) {
  const [added, setAdded] = useState(false);
  const whose = of === undefined ? '' : ` of ${of}`;
  const last = items.at(-1);
  return (
    <div className="rows">
      {items.map((item, at) => (
        <fieldset
          className="row-of"
          key={at}
          aria-label={`${kind.charAt(0).toUpperCase()}${kind.slice(1)} ${at + 1}${whose}`}
        >
          {children(item, at, added && at === items.length - 1)}
          {items.length > 1 && (
            <button
              type="button"
              className="button quiet take-away"
              data-enter="pass"
              aria-label={`Remove ${kind} ${at + 1}${whose}`}
              onClick={() => onChange(items.toSpliced(at, 1))}
            >
              Remove
            </button>
          )}
        </fieldset>
      ))}
      <button
        type="button"
        className="button quiet add"
        data-enter={rare || (last !== undefined && isEmpty?.(last)) ? 'pass' : undefined}
        onClick={() => {
          setAdded(true);
          onChange([...items, fresh]);
        }}
      >
        Add another {kind}
      </button>
    </div>
  );
}
