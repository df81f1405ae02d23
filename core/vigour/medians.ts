// Medians and sorting of plain numbers.

/** The numbers in rising order; the input is left alone. */
export const rising = (values: readonly number[]): number[] => values.toSorted((a, b) => a - b);

/** Median of the values; null of none. */
export function median(values: readonly number[]): number | null {
  const sorted = rising(values);
  const upper = sorted[Math.floor(sorted.length / 2)];
  const lower = sorted[Math.ceil(sorted.length / 2) - 1];
  return upper === undefined || lower === undefined ? null : (lower + upper) / 2;
}

/** Arithmetic mean; null of none. */
export const mean = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.reduce((a, b) => a + b, 0) / values.length;
