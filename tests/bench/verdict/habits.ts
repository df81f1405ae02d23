// The habits that the verdict is held against, as data says them (models.json).
import type { Candidate, Choose, SeenBatch } from './keeper';
import type { PolicyRules } from './models';

export const middleOf = ({ jars }: SeenBatch): number | null => {
  const scores = jars.map(({ score }) => score).toSorted((a, b) => a - b);
  const half = (scores.length - 1) / 2;
  const [low, high] = [scores[Math.floor(half)], scores[Math.ceil(half)]];
  return low === undefined || high === undefined ? null : (low + high) / 2;
};

/** The newest batch with a firm jar, else the newest; what is frozen only where nothing else is left. */
function newestFirm(seen: readonly SeenBatch[], candidates: readonly Candidate[]): Candidate | null {
  const shelf = candidates.filter(({ frozenDays }) => frozenDays === 0);
  const firm = shelf.find(({ place }) => seen[place]?.jars.some((jar) => jar.firm));
  return firm ?? shelf[0] ?? candidates[0] ?? null;
}

/** Weak batches one after the other on the way back from a batch, by half or more of what was written down. */
function weakInARow(seen: readonly SeenBatch[], from: number): number {
  let count = 0;
  for (let at = from; at >= 0; at = seen[at]?.parent ?? -1) {
    const jars = seen[at]?.jars ?? [];
    if (jars.length === 0) continue;
    if (2 * jars.filter(({ weak }) => weak).length < jars.length) break;
    count++;
  }
  return count;
}

/** A smoothed level of a batch's line of descent, and by how much the batch fell below that of its seed. */
function smoothed(
  seen: readonly SeenBatch[],
  from: number,
  weight: number,
): { level: number | null; fell: number } {
  const path: SeenBatch[] = [];
  for (let at = from; at >= 0; at = seen[at]?.parent ?? -1) {
    const batch = seen[at];
    if (batch && batch.parent >= 0) path.push(batch);
  }
  let level: number | null = null;
  let fell = 0;
  for (const batch of path.toReversed()) {
    const middle = middleOf(batch);
    fell = middle === null || level === null ? 0 : level - middle;
    if (middle !== null) level = level === null ? middle : (1 - weight) * level + weight * middle;
  }
  return { level, fell };
}

export const habit =
  ({ after, weakInARow: row, weight, below, fall }: PolicyRules): Choose =>
  ({ seen, candidates }) => {
    const seed = newestFirm(seen, candidates);
    if (!seed) return null;
    if (after !== undefined && (seen[seed.place]?.generation ?? 0) >= after) return null;
    if (row !== undefined && weakInARow(seen, seen.length - 1) >= row) return null;
    if (weight !== undefined && below !== undefined && fall !== undefined) {
      const newest = candidates.find(({ frozenDays }) => frozenDays === 0) ?? seed;
      const { level, fell } = smoothed(seen, newest.place, weight);
      const older = candidates.find(({ place, frozenDays }) => frozenDays === 0 && place < newest.place);
      if (fell >= fall && older) return older;
      if (level !== null && level < below) return null;
      return newest;
    }
    return seed;
  };
