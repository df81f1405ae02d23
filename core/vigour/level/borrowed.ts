// What a keeper's other lines tell of one: how uneven batches come out in that kitchen and how restless its cultures are. Either
// all lines are of one kind, or each is its own: both are followed and weighed by how well they foretold the lines (Bayesian
// model averaging, Hoeting et al. 1999, from memory). So how far a line borrows is learned: lines that came out alike tell of
// each other, lines that did not leave each other alone.
import type { LevelTree } from './tree';

/** Belief that all lines of a keeper are of one kind, before any was seen (an assumption, no source). */
const ALIKE = 0.5;

/** Weights of a line's hypotheses, others taken in. @param others trees by the same rules, the line's own not among them */
export function borrowedWeights(own: LevelTree, others: readonly LevelTree[]): Float64Array {
  if (others.length === 0) return own.weights;
  // By hypothesis, what all lines together tell of it beside what each tells for itself.
  const logs = own.weights.map((weight, h) =>
    others.reduce(
      (sum, one) => sum + Math.log((one.weights[h] as number) / (one.before[h] as number)),
      Math.log(weight),
    ),
  );
  const most = Math.max(...logs);
  const together = logs.map((log) => Math.exp(log - most));
  const total = together.reduce((sum, weight) => sum + weight, 0);
  const odds = (ALIKE / (1 - ALIKE)) * total * Math.exp(most);
  const alike = Number.isFinite(odds) ? odds / (1 + odds) : 1;
  return together.map((weight, h) => (alike * weight) / total + (1 - alike) * (own.weights[h] as number));
}
