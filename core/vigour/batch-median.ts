// The median of a batch, where some jars were recorded coarsely. A score from a set word alone stands for a range of
// scores, so the median is that of grouped data (each record spread evenly over its range): four jars "firm" and three
// "firm" with one "soft" then differ, as they should.

export interface ScoredRange {
  readonly score: number;
  /** Width of the range that the record leaves open (points), centred on the score. */
  readonly width: number;
}

/** A point is taken as a very narrow range, so that one rule serves both. */
const NARROW = 1e-9;

interface Edges {
  readonly low: number;
  readonly high: number;
}
const edgesOf = ({ score, width }: ScoredRange): Edges => {
  const half = Math.max(width, NARROW) / 2;
  return { low: score - half, high: score + half };
};

/** Part of a range below a point. At either end exactly 0 or 1: a rounding there would put the median a whole gap away. */
const belowShare = ({ low, high }: Edges, x: number): number =>
  x <= low ? 0 : x >= high ? 1 : (x - low) / (high - low);

/** Median of grouped data; without widths the plain median (of an even number the middle of the two). null of none. */
export function batchMedian(jars: readonly ScoredRange[]): number | null {
  if (jars.length === 0) return null;
  const ranges = jars.map(edgesOf);
  const half = jars.length / 2;
  const below = (x: number): number => ranges.reduce((sum, range) => sum + belowShare(range, x), 0);
  const sorted = ranges.flatMap(({ low, high }) => [low, high]).toSorted((a, b) => a - b);
  // The share below rises from edge to edge in straight pieces: the first place and the last where it is one half.
  const at = sorted.map((x) => ({ x, share: below(x) }));
  const meets = (side: (share: number) => boolean, points: typeof at): number => {
    for (let i = 0; i < points.length; i++) {
      const here = points[i];
      if (!here || !side(here.share)) continue;
      const before = points[i - 1];
      if (!before || here.share === before.share || here.share === half) return here.x;
      return before.x + ((here.x - before.x) * (half - before.share)) / (here.share - before.share);
    }
    return points.at(-1)?.x ?? 0;
  };
  const low = meets((share) => share >= half, at);
  const high = meets((share) => share <= half, at.toReversed());
  return (low + high) / 2;
}
