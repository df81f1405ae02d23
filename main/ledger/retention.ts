// Which backups stay. Pure: names and moments in, names out.

export interface Kept {
  readonly name: string;
  /** Milliseconds since 1970. */
  readonly madeAt: number;
}

const HOUR = 3_600_000;
const LATEST = 3;
const DAYS = 14;
const MONTHS = 24;

/** Civil day or month in UTC: a backup is no record of a keeper's day, it only has to be spread evenly. */
const spanOf = (at: number, length: 'day' | 'month'): string =>
  new Date(at).toISOString().slice(0, length === 'day' ? 10 : 7);

/**
 * The backups to remove: all but the newest three, the newest of each of the last fourteen days that have one, and the
 * newest of each of the last twenty-four months that have one. Nothing of the last hour goes, nor anything from the
 * future (a clock that was set back must not cost a backup).
 */
export function backupsToRemove(backups: readonly Kept[], now: number): string[] {
  const newestFirst = backups.toSorted((a, b) => b.madeAt - a.madeAt || (a.name < b.name ? 1 : -1));
  const kept = new Set(newestFirst.slice(0, LATEST).map(({ name }) => name));
  for (const [length, most] of [
    ['day', DAYS],
    ['month', MONTHS],
  ] as const) {
    // prettier-ignore
    const seen = new Set<string>();
    for (const { name, madeAt } of newestFirst) {
      const span = spanOf(madeAt, length);
      if (seen.has(span) || seen.size >= most) continue;
      seen.add(span);
      kept.add(name);
    }
  }
  return newestFirst
    .filter(({ name, madeAt }) => !kept.has(name) && now - madeAt > HOUR)
    .map(({ name }) => name);
}
