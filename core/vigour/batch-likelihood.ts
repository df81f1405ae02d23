// How well a batch agrees with a level of its line: the likelihood of what was recorded of its jars. Jars differ around their
// batch and batches around the level, both normally; a record that leaves a range open (a set word) counts with its whole range.
import type { ScoredRange } from './batch-median';
import { normalCdf } from './distributions';

/** Log likelihood by level, to a constant that no level changes: of scores a parabola, of ranges a table in steps. */
export type BatchLikelihood =
  | { readonly kind: 'scores'; readonly at: number; readonly variance: number; readonly constant: number }
  | { readonly kind: 'ranges'; readonly at: number; readonly from: number; readonly table: Float64Array };

/** A wider range than this (points) counts as a range; a narrower one as a normal error of the same variance. */
const WIDE = 6;
/** Points from one place of the table to the next, and how far it goes on beyond what was recorded. */
const STEP = 2;
const BEYOND = 60;
/** No record is quite impossible: hands slip. */
const LEAST_SHARE = 1e-9;
const NARROWEST = 1;

let normalTable: Float64Array | null = null;
/** The standard normal distribution by a table, made when first asked for: it is asked for many thousand times for each batch. */
function cdf(z: number): number {
  if (z <= -6) return 0;
  if (z >= 6) return 1;
  normalTable ??= Float64Array.from({ length: 12_001 }, (_, i) => normalCdf((i - 6000) / 1000));
  return normalTable[Math.round(z * 1000) + 6000] as number;
}

/**
 * @param jars at least one, in points
 * @param spread standard deviation of batches around the level, @param jarSpread of jars around their batch (points)
 */
export function batchLikelihood(
  jars: readonly ScoredRange[],
  spread: number,
  jarSpread: number,
): BatchLikelihood {
  return jars.some(({ width }) => width > WIDE)
    ? ofRanges(jars, spread, jarSpread)
    : ofScores(jars, spread, jarSpread);
}

function ofScores(jars: readonly ScoredRange[], spread: number, jarSpread: number): BatchLikelihood {
  const weights = jars.map(({ width }) => 1 / (jarSpread ** 2 + width ** 2 / 12));
  const weight = weights.reduce((a, b) => a + b, 0);
  const at = jars.reduce((sum, { score }, i) => sum + (weights[i] as number) * score, 0) / weight;
  const within = jars.reduce((sum, { score }, i) => sum + (weights[i] as number) * (score - at) ** 2, 0);
  const logs = weights.reduce((sum, w) => sum + Math.log(w), 0);
  const variance = spread ** 2 + 1 / weight;
  return {
    kind: 'scores',
    at,
    variance,
    constant: (logs - Math.log(weight) - within - Math.log(variance)) / 2,
  };
}

/** Tables by what was recorded, seen from the first jar: a few patterns of set words come again and again. */
const tables = new Map<string, Table>();
const MOST_TABLES = 20_000;

interface Table {
  /** Of its first place and of its middle, from the first jar's score. */
  readonly from: number;
  readonly middle: number;
  readonly table: Float64Array;
}

function ofRanges(jars: readonly ScoredRange[], spread: number, jarSpread: number): BatchLikelihood {
  const sorted = jars.toSorted((a, b) => a.score - b.score || a.width - b.width);
  const first = sorted[0]?.score ?? 0;
  const seen = sorted.map(({ score, width }) => ({ score: score - first, width }));
  const key = `${spread} ${jarSpread} ${seen.map(({ score, width }) => `${score.toFixed(3)}:${width}`).join(' ')}`;
  const known = tables.get(key) ?? tableOf(seen, spread, jarSpread);
  if (tables.size >= MOST_TABLES) tables.clear();
  tables.set(key, known);
  return { kind: 'ranges', at: first + known.middle, from: first + known.from, table: known.table };
}

function tableOf(jars: readonly ScoredRange[], spread: number, jarSpread: number): Table {
  const ends = jars.flatMap(({ score, width }) => [score - width / 2, score + width / 2]);
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const from = low - BEYOND;
  const size = Math.ceil((high + BEYOND - from) / STEP) + 1;
  const ofMean = Float64Array.from({ length: size }, (_, i) =>
    jars.reduce((product, { score, width }) => {
      const half = Math.max(width, NARROWEST) / 2;
      const mean = from + i * STEP;
      const share = cdf((score + half - mean) / jarSpread) - cdf((score - half - mean) / jarSpread);
      return product * Math.max(LEAST_SHARE, share);
    }, 1),
  );
  // The batch's own mean lies around the level: averaged over by the normal weights of its steps.
  const reach = Math.ceil((5 * spread) / STEP);
  const kernel = Float64Array.from({ length: 2 * reach + 1 }, (_, k) =>
    Math.exp(-(((k - reach) * STEP) ** 2) / (2 * spread ** 2)),
  );
  const total = kernel.reduce((a, b) => a + b, 0);
  const table = Float64Array.from({ length: size }, (_, i) => {
    let sum = 0;
    for (let k = 0; k < kernel.length; k++) {
      const place = Math.min(size - 1, Math.max(0, i + k - reach));
      sum += (kernel[k] as number) * (ofMean[place] as number);
    }
    return Math.log(sum / total);
  });
  return { from, middle: (low + high) / 2, table };
}

/** Adds the log likelihood at the levels from, from + step, … to the sums; beyond its table it stays as at its end. */
export function addLogs(batch: BatchLikelihood, from: number, step: number, sums: Float64Array): void {
  if (batch.kind === 'scores') {
    const { at, variance, constant } = batch;
    for (let k = 0; k < sums.length; k++) {
      const off = from + k * step - at;
      sums[k] = (sums[k] as number) + constant - (off * off) / (2 * variance);
    }
    return;
  }
  const { table } = batch;
  const last = table.length - 1;
  for (let k = 0; k < sums.length; k++) {
    const place = Math.min(last, Math.max(0, (from + k * step - batch.from) / STEP));
    const below = Math.min(last - 1, Math.floor(place));
    const value = table[below] as number;
    sums[k] = (sums[k] as number) + value + ((table[below + 1] as number) - value) * (place - below);
  }
}
