// The best any method could do: a likelihood-ratio test of "steady" against "loses so much a generation" that is told the
// line's true spread, autocorrelation and loss, sees every jar of every batch after the first unrounded, and need only
// estimate the line's level. Its threshold over all looks is found by simulation on steady lines of the same kind.
import type { LineTruth } from './judgement-lines';

type Matrix = number[][];

/** Inverse of a small symmetric positive definite matrix (Gauss–Jordan). */
function inverse(matrix: Matrix): Matrix {
  const n = matrix.length;
  const work = matrix.map((row, i) => [...row, ...Array.from({ length: n }, (_, j) => (i === j ? 1 : 0))]);
  for (let i = 0; i < n; i++) {
    const pivotRow = work[i] ?? [];
    const pivot = pivotRow[i] ?? 1;
    work[i] = pivotRow.map((x) => x / pivot);
    for (let k = 0; k < n; k++) {
      if (k === i) continue;
      const factor = work[k]?.[i] ?? 0;
      work[k] = (work[k] ?? []).map((x, j) => x - factor * (work[i]?.[j] ?? 0));
    }
  }
  return work.map((row) => row.slice(n));
}

/** Log likelihood ratio at each look (2, 3, … values seen): slope −loss against 0, level estimated, by weights made once. */
export function likelihoodRatio(
  truth: LineTruth,
  loss: number,
  values: number,
): (seen: readonly number[]) => number {
  const cov = Array.from({ length: values }, (_, i) =>
    Array.from(
      { length: values },
      (_, j) =>
        truth.spread ** 2 * truth.autocorrelation ** Math.abs(i - j) +
        (i === j ? (truth.spread / 2) ** 2 / 4 : 0),
    ),
  );
  const precision = inverse(cov);
  const rowSum = precision.map((row) => row.reduce((a, b) => a + b, 0));
  const total = rowSum.reduce((a, b) => a + b, 0);
  // Precision with the level projected out: P − P11ᵀP / 1ᵀP1.
  const projected = precision.map((row, i) =>
    row.map((x, j) => x - ((rowSum[i] ?? 0) * (rowSum[j] ?? 0)) / total),
  );
  const fall = Array.from({ length: values }, (_, i) => -loss * i);
  const weights = projected.map((row) => row.reduce((sum, x, j) => sum + x * (fall[j] ?? 0), 0));
  const half = weights.reduce((sum, w, i) => sum + w * (fall[i] ?? 0), 0) / 2;
  return (seen) => seen.reduce((sum, y, i) => sum + (weights[i] ?? 0) * y, 0) - half;
}
