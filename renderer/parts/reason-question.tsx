// A question that only a written reason answers: it is kept with what is done.
import { useId, useRef, useState, type ReactNode } from 'react';
import { Question } from './question';

/** As few characters as say anything; the ledger asks for the same. */
const LEAST = 3;

/** Asks. `onReason` is given the reason, trimmed. */
export function ReasonQuestion({
  title,
  label,
  yes,
  no,
  initial = '',
  children,
  onReason,
  onNo,
}: {
  readonly title: string;
  /** What the reason is asked for: "Why is it not touched?" */
  readonly label: string;
  readonly yes: string;
  readonly no: string;
  /** What was written already. */
  readonly initial?: string;
  readonly children?: ReactNode;
  readonly onReason: (reason: string) => void;
  readonly onNo: () => void;
}) {
  const [reason, setReason] = useState(initial);
  const [wrong, setWrong] = useState(false);
  const field = useRef<HTMLTextAreaElement>(null);
  const id = useId();
  return (
    <Question
      title={title}
      yes={yes}
      no={no}
      caution
      onNo={onNo}
      onYes={() => {
        if (reason.trim().length >= LEAST) {
          onReason(reason.trim());
          return;
        }
        setWrong(true);
        field.current?.focus();
      }}
    >
      {children}
      <div className="field full">
        <label className="label" htmlFor={id}>
          {label}
        </label>
        <textarea
          id={id}
          ref={field}
          className="input"
          rows={3}
          maxLength={2000}
          value={reason}
          aria-invalid={wrong ? true : undefined}
          aria-describedby={wrong ? `${id}-problem` : undefined}
          onChange={(event) => setReason(event.target.value)}
        />
        {wrong && (
          <span className="field-problem" id={`${id}-problem`} role="alert">
            Write a few words. They are kept in the history.
          </span>
        )}
      </div>
    </Question>
  );
}
