// What a keeper's other lines tell of one: how uneven batches come out in that kitchen and how restless its cultures are. The
// weights of the hypotheses are prior times likelihood, so a line borrows the likelihoods of the others, taken to a power: lines
// are alike only in part, and many of them tell no more of one than two.
import type { LevelTree } from './tree';

/** Power of the first other line's likelihood, and the most that all others together come to (an assumption, no source). */
const SHARE = 0.5;
const MOST = 1;

/** Weights of a line's hypotheses, others taken in. @param others trees by the same rules, the line's own not among them */
export function borrowedWeights(own: LevelTree, others: readonly LevelTree[]): Float64Array {
  if (others.length === 0) return own.weights;
  const power = Math.min(SHARE, MOST / others.length);
  const logs = own.weights.map((weight, h) =>
    others.reduce(
      (sum, one) => sum + power * Math.log((one.weights[h] as number) / (one.before[h] as number)),
      Math.log(weight),
    ),
  );
  const most = Math.max(...logs);
  const weights = logs.map((log) => Math.exp(log - most));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}
