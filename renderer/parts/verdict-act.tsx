// The button that does what a verdict says: the form of a new batch, filled in with the seed or the fresh start.
import type { ReactNode } from 'react';
import { go } from '../state/store';

/** As many letters as a button has room for: "30 Nov 2025 a". */
const LONGEST = 14;

/** What is advised: a jar, or what is kept of it; jar null: a fresh start. */
export interface AdvisedSeed {
  readonly jar: string | null;
  readonly portion: string | null;
  readonly label: string;
}

interface Props {
  readonly seed: AdvisedSeed;
  /** The line that the verdict is on. */
  readonly line: string;
  readonly primary?: boolean;
}

/** As the button names it: a label with a long word of its own would not fit. */
export const seedInShort = (label: string, portion: string | null): ReactNode => {
  if (portion === null && label.length <= LONGEST) return label;
  return (
    <>
      {portion === null ? 'it' : 'the reserve'}
      <span className="visually-hidden">: {label}</span>
    </>
  );
};

export function VerdictAct({ seed, line, primary = false }: Props) {
  const { jar, portion, label } = seed;
  const kind = primary ? 'button primary' : 'button';
  if (jar === null)
    return (
      <button className={kind} type="button" onClick={() => go('batch', `repeat:${line}`)}>
        Start afresh
      </button>
    );
  return (
    <button
      className={kind}
      type="button"
      onClick={() => go('batch', portion === null ? `seed:${jar}` : `seed:${jar}/${portion}`)}
    >
      Seed from {seedInShort(label, portion)}
    </button>
  );
}
