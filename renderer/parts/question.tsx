// A question before something is done: a modal dialog that the keyboard stays inside, calm words, two answers.
import { useId, type ReactNode } from 'react';
import { useModal } from './use-modal';

/** Asks; closing it by Escape is the second answer, or leaves it unanswered. */
export function Question({
  title,
  children,
  yes,
  no,
  onYes,
  onNo,
  onLeave = onNo,
  caution = false,
}: {
  readonly title: string;
  readonly children?: ReactNode;
  readonly yes: string;
  readonly no: string;
  readonly onYes: () => void;
  readonly onNo: () => void;
  /** Closed by Escape, where that is not the second answer. */
  readonly onLeave?: () => void;
  readonly caution?: boolean;
}) {
  const dialog = useModal();
  const id = useId();
  return (
    <dialog
      ref={dialog}
      className="question"
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault();
        onLeave();
      }}
    >
      <h2 id={id}>{title}</h2>
      <div className="stack">{children}</div>
      <div className="row answers">
        <button type="button" className="button" onClick={onNo}>
          {no}
        </button>
        <button type="button" className={caution ? 'button careful' : 'button primary'} onClick={onYes}>
          {yes}
        </button>
      </div>
    </dialog>
  );
}
