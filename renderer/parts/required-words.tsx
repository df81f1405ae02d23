// A few written words that an answer can't go without: a reason, or what something is.
import { useId, useRef, useState, type ReactNode } from 'react';

/** As few characters as say anything; the ledger asks for the same. */
const LEAST = 3;

export interface RequiredWords {
  readonly field: ReactNode;
  /** Hands on the words, trimmed; where there are none yet, says so and goes to the field. */
  readonly take: (onWords: (words: string) => void) => void;
}

/** The field and what takes its words. @param problem what is said where nothing was written */
export function useRequiredWords({
  label,
  problem,
  rows,
  maxLength,
  initial = '',
}: {
  readonly label: string;
  readonly problem: string;
  readonly rows: number;
  readonly maxLength: number;
  readonly initial?: string;
}): RequiredWords {
  const [words, setWords] = useState(initial);
  const [wrong, setWrong] = useState(false);
  const area = useRef<HTMLTextAreaElement>(null);
  const id = useId();
  const take: RequiredWords['take'] = (onWords) => {
    if (words.trim().length >= LEAST) {
      onWords(words.trim());
      return;
    }
    setWrong(true);
    area.current?.focus();
  };
  const field = (
    <div className="field full">
      <label className="label" htmlFor={id}>
        {label}
      </label>
      <textarea
        id={id}
        ref={area}
        className="input"
        rows={rows}
        maxLength={maxLength}
        value={words}
        aria-invalid={wrong ? true : undefined}
        aria-describedby={wrong ? `${id}-problem` : undefined}
        onChange={(event) => setWords(event.target.value)}
      />
      {wrong && (
        <span className="field-problem" id={`${id}-problem`} role="alert">
          {problem}
        </span>
      )}
    </div>
  );
  return { field, take };
}
