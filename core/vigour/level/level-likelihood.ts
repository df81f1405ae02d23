// What was recorded of one batch's jars tells of the level that it inherited: a good day or a passing bad one, what is known to
// have moved this batch alone, and what it shares with the batch made before it.
import { addLogs, batchLikelihood } from '../batch-likelihood';
import type { ScoredRange } from '../batch-median';
import type { LevelRules } from './rules';

const TINY = 1e-12;

/** A batch as it was seen: what the next one in time is held against. */
export interface SeenBatch {
  readonly place: number;
  /** Mean of its jars, known shifts taken out, and the level that was expected of it (points). */
  readonly seen: number;
  readonly expected: number;
  /** Of `seen`, for its jars, for what their records leave open and for the doubt of what was taken out. */
  readonly variance: number;
}

/**
 * Likelihood of a batch's jars at each level, by spread, to a constant that is the same for all: a good day or a passing bad
 * one, a known shift blurred by its doubt, and what goes on from the batch before.
 * @param before the batch made before it; null: none, or nothing was seen of it
 */
export function levelLikelihoods(
  jars: readonly ScoredRange[],
  jarSpread: number,
  shift: { readonly mean: number; readonly sd: number },
  before: SeenBatch | null,
  rules: LevelRules,
): ReadonlyMap<number, Float64Array> {
  const { from, step, levels, badDayFalls } = rules;
  const above = Math.ceil((3 * shift.sd) / step);
  const below = Math.ceil(Math.max(...badDayFalls.map(({ value }) => value)) / step) + above;
  const logs = rules.spreads.map(({ value }) => {
    const row = new Float64Array(levels + below + above);
    addLogs(batchLikelihood(jars, value, jarSpread), from - below * step + shift.mean, step, row);
    return { value, row };
  });
  const most = Math.max(...logs.map(({ row }) => Math.max(...row)));
  return new Map(
    logs.map(({ value, row: plain }) => {
      const days = badDays(
        plain.map((log) => Math.exp(log - most)),
        rules,
      );
      const row = blurred(days, shift.sd, below, above, rules);
      return [value, before ? carriedOver(row, value, before, rules) : row];
    }),
  );
}

/** What a batch that may have had a passing bad day tells of its level. @param plain by the level of the batch itself */
function badDays(plain: Float64Array, { badDay, badDayFalls, step }: LevelRules): Float64Array {
  const at = (i: number): number => plain[Math.max(0, i)] as number;
  return plain.map((value, i) => {
    let bad = 0;
    for (const fall of badDayFalls) {
      const place = i - fall.value / step;
      const low = Math.floor(place);
      bad += fall.weight * ((low + 1 - place) * at(low) + (place - low) * at(low + 1));
    }
    return (1 - badDay) * value + badDay * bad;
  });
}

function blurred(
  row: Float64Array,
  sd: number,
  below: number,
  reach: number,
  { levels, step }: LevelRules,
): Float64Array {
  const kernel = Array.from({ length: 2 * reach + 1 }, (_, k) =>
    reach === 0 ? 1 : Math.exp(-(((k - reach) * step) ** 2) / (2 * sd ** 2)),
  );
  const total = kernel.reduce((a, b) => a + b, 0);
  const out = new Float64Array(levels);
  for (let i = 0; i < levels; i++) {
    let sum = 0;
    for (let k = 0; k < kernel.length; k++)
      sum += (kernel[k] as number) * (row[i + below + k - reach] as number);
    out[i] = Math.max(TINY, sum / total);
  }
  return out;
}

/**
 * What batches share (bath, milk, season) goes on a little from one to the next, so that two in a row tell less than two apart.
 * Of a line that stands, what a batch is beyond so much of the one before is a new draw (an autoregression of order one,
 * Box & Jenkins 1970, from memory); the row is read where that leaves it. What one batch was off by more than a few spreads was
 * a bad day or a fall, and is not taken to go on.
 */
function carriedOver(
  row: Float64Array,
  spread: number,
  { seen, expected, variance }: SeenBatch,
  { from, step, levels, carriesOver: { correlation, most } }: LevelRules,
): Float64Array {
  const part = (correlation * spread ** 2) / (spread ** 2 + variance);
  const off = Math.min(most * spread, Math.max(-most * spread, seen - expected));
  return row.map((_, i) => {
    const at = (1 - part) * i + (part * (expected + off - from)) / step;
    const low = Math.min(levels - 2, Math.max(0, Math.floor(at)));
    const high = Math.min(1, Math.max(0, at - low));
    return (1 - high) * (row[low] as number) + high * (row[low + 1] as number);
  });
}
