// Timing for benchmarks: medians of repeated runs, printed side by side as ratios. Never used by a test.

/** Milliseconds of one task: its median, and how many runs that rests on. */
export interface Timed {
  readonly ms: number;
  readonly runs: number;
}

/** A way to do a task: prepared outside the clock, then run again and again. `skip` says why it isn't run at all. */
export type Way = { readonly prepare: () => () => unknown } | { readonly skip: string };

const BUDGET_MS = 1200;
const MOST_RUNS = 25;

/** Runs a way until its budget is used up; the first run only warms up, unless it alone takes the whole budget. */
export function time(way: Extract<Way, { prepare: unknown }>): Timed {
  const run = way.prepare();
  const times: number[] = [];
  const began = performance.now();
  for (;;) {
    const start = performance.now();
    const result = run();
    times.push(performance.now() - start);
    if (result === undefined)
      throw new Error('a benchmark must answer something, or nothing keeps it from being left out');
    if (times.length > MOST_RUNS || (performance.now() - began > BUDGET_MS && times.length > 0)) break;
  }
  const counted = times.length > 1 ? times.slice(1) : times;
  const sorted = counted.toSorted((a, b) => a - b);
  return { ms: sorted[Math.floor(sorted.length / 2)] as number, runs: sorted.length };
}

export const shownMs = (ms: number): string =>
  ms >= 100 ? ms.toFixed(0) : ms >= 1 ? ms.toFixed(1) : ms.toFixed(3);

/** "4.1× slower" for another way against ours. */
export function ratio(other: number, ours: number): string {
  const times = other / ours;
  return times >= 1 ? `${times.toFixed(1)}× ours` : `${times.toFixed(2)}× ours`;
}

/** A table in plain text, columns as wide as they need. */
export function table(rows: readonly (readonly string[])[]): string {
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => [...(row[i] ?? '')].length)));
  return rows
    .map((row) => row.map((cell, i) => cell + ' '.repeat((widths[i] as number) - [...cell].length)).join('  ').trimEnd())
    .join('\n'); // prettier-ignore
}
