// A figure of the preferences that may be left empty.
import { useEffect, useRef, useState } from 'react';
import { TextField } from '../parts/fields';
import type { FigureWords } from './preference-figures';

/**
 * A figure that may be left empty. Kept once the field is left, or the panel closed: half a number is not a choice,
 * and in the history one choice is one line.
 */
export function Figure({
  label,
  hint,
  value,
  words,
  onChange,
}: {
  readonly label: string;
  readonly hint?: string;
  readonly value: number | null;
  readonly words: FigureWords;
  readonly onChange: (value: number | null) => void;
}) {
  const [typed, setTyped] = useState(value === null ? '' : String(value));
  const kept = useRef(value);
  const keep = (): void => {
    const wanted = words.read(typed);
    if (wanted === undefined) return;
    setTyped(wanted === null ? '' : String(wanted));
    if (wanted === kept.current) return;
    kept.current = wanted;
    onChange(wanted);
  };
  const latest = useRef(keep);
  useEffect(() => {
    latest.current = keep;
  });
  // Escape closes the panel without leaving the field first.
  useEffect(() => () => latest.current(), []);
  return (
    <div className="preferences-figure">
      <TextField
        label={label}
        width="short"
        numeric
        value={typed}
        placeholder={words.empty}
        hint={hint}
        problem={words.read(typed) === undefined ? words.problem : undefined}
        onChange={setTyped}
        onLeave={keep}
      />
    </div>
  );
}
