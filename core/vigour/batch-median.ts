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
const width = (jar: ScoredRange): number => Math.max(jar.width, NARROW);
const belowShare = (jar: ScoredRange, x: number): number =>
  Math.min(1, Math.max(0, (x - jar.score) / width(jar) + 0.5));

/** Median of grouped data; without widths the plain median (of an even number the middle of the two). null of none. */
export function batchMedian(jars: readonly ScoredRange[]): number | null {
  if (jars.length === 0) return null;
  const edges = jars.flatMap((jar) => [jar.score - width(jar) / 2, jar.score + width(jar) / 2]);
  const half = jars.length / 2;
  const below = (x: number): number => jars.reduce((sum, jar) => sum + belowShare(jar, x), 0);
  const sorted = edges.toSorted((a, b) => a - b);
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
