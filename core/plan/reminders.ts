// What a keeper is reminded of ahead of time: pieces to order for a fresh start, and when a line has no reserve to fall back on.
// Pure; neither is due on a day.

/** A source that the last fresh start took pieces of. */
export interface Stock {
  readonly id: string;
  readonly name: string;
  readonly took: number;
  /** Pieces at home; null where a package's size or what was taken of it is not known. */
  readonly left: number | null;
}

/** Sources of which there is less at home than the last start took. Of what is not known nothing is said. */
export const shortOf = (stocks: readonly Stock[]): Stock[] =>
  stocks.filter(({ took, left }) => left !== null && left < took);

/** A line and what is kept of it. */
export interface Kept {
  readonly batches: number;
  /** Days by which each reserve of it is best used; null: nobody can say. */
  readonly reserves: readonly (string | null)[];
}

/** Fewer batches than this, and a line has shown nothing that were worth keeping back (common practice, no source). */
const SHOWN = 3;

/** Whether a line that goes on has nothing to fall back on: 'none' was kept back, or all of it is 'too old'. */
export function reserveLacks({ batches, reserves }: Kept, today: string): 'none' | 'too old' | null {
  if (batches < SHOWN) return null;
  if (reserves.length === 0) return 'none';
  return reserves.every((until) => until !== null && until < today) ? 'too old' : null;
}
