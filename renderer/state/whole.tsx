// A part of a page is shown once all that it is made of has been read: what comes piece by piece moves what is below it
// away under the hand.
import { createContext, useCallback, useContext, useLayoutEffect, useState, type ReactNode } from 'react';

/** Told of each read that begins to wait (1) and has waited (-1); null where nothing hangs on that. */
const Waiting = createContext<((by: 1 | -1) => void) | null>(null);

/** Holds the part it stands in back while `unanswered`. */
export function useHoldsBack(unanswered: boolean): void {
  const tell = useContext(Waiting);
  useLayoutEffect(() => {
    if (!unanswered || tell === null) return undefined;
    tell(1);
    return () => tell(-1);
  }, [unanswered, tell]);
}

/** Keeps its room but is not seen until every read in it has its first answer. Once seen it stays. */
export function Whole({ children }: { readonly children: ReactNode }) {
  // Itself too, until its parts have begun to read: their effects come before its own.
  const [waiting, count] = useState(1);
  const [whole, seeWhole] = useState(false);
  const tell = useCallback((by: 1 | -1) => count((before) => before + by), []);
  useLayoutEffect(() => {
    // oxlint-disable-next-line react-hooks/set-state-in-effect -- only effects know that the parts' own have run
    tell(-1);
    return () => tell(1);
  }, [tell]);
  if (waiting === 0 && !whole) seeWhole(true);
  return (
    <Waiting value={tell}>
      <div className={whole ? 'whole' : 'whole unseen'}>{children}</div>
    </Waiting>
  );
}

/** What may take long, and stands where it moves little: the part around it is shown without it. */
export function MayComeLate({ children }: { readonly children: ReactNode }) {
  return <Waiting value={null}>{children}</Waiting>;
}
