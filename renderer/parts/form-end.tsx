// The end of a small form: why it was refused, if it was, and its two buttons.

interface Props {
  readonly refused: string | null;
  /** The refusal in the colour of spoilage. */
  readonly caution?: boolean;
  readonly yes: string;
  readonly no?: string;
  readonly onLeave: () => void;
}

export function FormEnd({ refused, caution = false, yes, no = 'Cancel', onLeave }: Props) {
  return (
    <>
      {refused !== null && (
        <p className={caution ? 'notice caution' : 'notice'} role="alert">
          {refused}
        </p>
      )}
      <div className="row">
        <button type="submit" className="button primary">
          {yes}
        </button>
        <button type="button" className="button quiet" onClick={onLeave}>
          {no}
        </button>
      </div>
    </>
  );
}
