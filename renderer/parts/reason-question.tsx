// A question that only a written reason answers: it is kept with what is done.
import type { ReactNode } from 'react';
import { Question } from './question';
import { useRequiredWords } from './required-words';

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
  /** What the reason is asked for: "Why is it all right to use?" */
  readonly label: string;
  readonly yes: string;
  readonly no: string;
  /** What was written already. */
  readonly initial?: string;
  readonly children?: ReactNode;
  readonly onReason: (reason: string) => void;
  readonly onNo: () => void;
}) {
  const { field, take } = useRequiredWords({
    label,
    problem: 'Write a few words. They are kept in the history.',
    rows: 3,
    maxLength: 2000,
    initial,
  });
  return (
    <Question title={title} yes={yes} no={no} caution onNo={onNo} onYes={() => take(onReason)}>
      {children}
      {field}
    </Question>
  );
}
