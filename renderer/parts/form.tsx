// A form: Enter moves on, Ctrl+Enter records, and after a failed try the keyboard stands on the first wrong field.
import { useEffect, useRef, type ReactNode } from 'react';
import { focusFirst, focusFirstProblem, formKeys } from './form-keys';

/** The form. `wrong` counts failed tries: each time it rises, the first field that is wrong gets the keyboard. */
export function Form({
  label,
  record,
  leave,
  wrong,
  startHere = false,
  children,
}: {
  readonly label: string;
  readonly record: () => void;
  /** Escape: away from the form, with what was typed kept. */
  readonly leave?: () => void;
  readonly wrong: number;
  /** It opened inside a screen, at the keeper's wish: its first field gets the keyboard. */
  readonly startHere?: boolean;
  readonly children: ReactNode;
}) {
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    if (startHere) focusFirst(form.current);
  }, [startHere]);
  useEffect(() => {
    if (wrong > 0) focusFirstProblem(form.current);
  }, [wrong]);
  return (
    // The fields inside are interactive; the form only hears what they leave over.
    // oxlint-disable-next-line jsx-a11y/no-noninteractive-element-interactions
    <form
      ref={form}
      className="form stack"
      aria-label={label}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        record();
      }}
      onKeyDown={(event) => formKeys(event, record, leave)}
    >
      {children}
    </form>
  );
}
