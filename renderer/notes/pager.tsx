// Long lists a page at a time: a file of 20,000 rows stays quick, and the keyboard gets past it.
import { useState } from 'react';

export interface Page {
  readonly from: number;
  readonly to: number;
  readonly of: number;
  readonly turn: (pages: number) => void;
}

/** The page of a list of `of` things that is shown; stays within the list when that gets shorter. */
export function usePage(of: number, size: number): Page {
  const [wanted, setWanted] = useState(0);
  const last = Math.max(0, Math.ceil(of / size) - 1);
  const at = Math.min(wanted, last);
  return {
    from: at * size,
    to: Math.min(of, (at + 1) * size),
    of,
    turn: (pages) => setWanted(Math.min(last, Math.max(0, at + pages))),
  };
}

/** Earlier and later. Nothing where all fits on one page. */
export function Pager({ page, what }: { readonly page: Page; readonly what: string }) {
  const { from, to, of, turn } = page;
  if (from === 0 && to >= of) return null;
  return (
    <nav className="pager row" aria-label={`Pages of ${what}`}>
      <button className="button" type="button" disabled={from === 0} onClick={() => turn(-1)}>
        Earlier
      </button>
      <span>
        {(from + 1).toLocaleString('en-GB')} to {to.toLocaleString('en-GB')} of {of.toLocaleString('en-GB')}{' '}
        {what}
      </span>
      <button className="button" type="button" disabled={to >= of} onClick={() => turn(1)}>
        Later
      </button>
    </nav>
  );
}
