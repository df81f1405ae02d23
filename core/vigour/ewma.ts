// Exponentially weighted moving average and its limits. Method: NIST/SEMATECH e-Handbook 6.3.2.4.

/** EWMA of the values from a start (the target), one entry per value: λ·x + (1 − λ)·before. */
export function ewma(values: readonly number[], lambda: number, start: number): number[] {
  let now = start;
  return values.map((value) => (now = lambda * value + (1 - lambda) * now));
}

/** Half width of the limits after `steps` values for a known target and standard deviation; steps null: steady state. */
export function ewmaWidth(lambda: number, sd: number, widths: number, steps: number | null): number {
  const grown = steps === null ? 1 : 1 - (1 - lambda) ** (2 * steps);
  return widths * sd * Math.sqrt((lambda / (2 - lambda)) * grown);
}

/**
 * Standard error of (EWMA − baseline) where the target itself is the mean of `baselineSize` values of the same spread:
 * the baseline's own uncertainty is part of it.
 */
export function ewmaErrorFromBaseline(
  lambda: number,
  sd: number,
  steps: number,
  baselineSize: number,
): number {
  const own = ewmaWidth(lambda, sd, 1, steps) ** 2;
  const pull = 1 - (1 - lambda) ** steps;
  return Math.sqrt(own + (sd * sd * pull * pull) / baselineSize);
}
