// Timing for benchmarks: medians of repeated runs, printed side by side as ratios. Never used by a test.

/** Milliseconds of one task: its median, and how many runs that rests on. */
export interface Timed {
  readonly ms: number;
  readonly runs: number;
}

/**
 * A way to do a task: prepared outside the clock, then run again and again. `before` is done outside the clock before
 * each run. `skip` says why it isn't run at all.
 */
export type Way =
  { readonly prepare: () => () => unknown; readonly before?: () => void } | { readonly skip: string };

/** Milliseconds that each way of a task may take in all. */
const BUDGET_MS = 1200;
const MOST_RUNS = 25;

type Prepared = Extract<Way, { prepare: unknown }>;

/**
 * Times several ways of one task, in turns, so that whatever else the machine does meanwhile slows all of them alike.
 * Each stops when its budget is used up. The first run of each only warms up, unless it alone takes the whole budget.
 */
export function timeInTurns(ways: readonly Prepared[]): Timed[] {
  const runs = ways.map((way) => way.prepare());
  const times = ways.map((): number[] => []);
  const spent = ways.map(() => 0);
  for (let turn = 0; turn <= MOST_RUNS; turn++) {
    for (const [i, run] of runs.entries()) {
      if ((spent[i] as number) > BUDGET_MS) continue;
      ways[i]?.before?.();
      const start = performance.now();
      const result = run();
      const took = performance.now() - start;
      if (result === undefined)
        throw new Error('a benchmark must answer something, or its work may be left out');
      (times[i] as number[]).push(took);
      spent[i] = (spent[i] as number) + took;
    }
  }
  return times.map((all) => {
    const sorted = (all.length > 1 ? all.slice(1) : all).toSorted((a, b) => a - b);
    return { ms: sorted[Math.floor(sorted.length / 2)] as number, runs: sorted.length };
  });
}

export const shownMs = (ms: number): string =>
  ms >= 100 ? ms.toFixed(0) : ms >= 1 ? ms.toFixed(1) : ms.toFixed(3);

/** Another way against ours: "4.1× ours". */
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
