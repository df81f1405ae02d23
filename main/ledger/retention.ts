// Which backups stay. Pure: names, moments and how much each holds in, names out.

export interface Kept {
  readonly name: string;
  /** Milliseconds since 1970, as the clock was then: it may have been wrong. */
  readonly madeAt: number;
  /** How many acts it holds. A ledger only ever gains acts, so this tells which of two is the newer, whatever the clock said. */
  readonly acts: number;
}

const HOUR = 3_600_000;
const LATEST = 3;
const DAYS = 14;
const MONTHS = 24;

/** Civil day or month in UTC: a backup is no record of a keeper's day, it only has to be spread evenly. */
const spanOf = (at: number, length: 'day' | 'month'): string =>
  new Date(at).toISOString().slice(0, length === 'day' ? 10 : 7);

/** The one that holds more first; of equals the one that says it was made later. */
export const newestFirst = (a: Omit<Kept, 'name'>, b: Omit<Kept, 'name'>): number =>
  b.acts - a.acts || b.madeAt - a.madeAt;

/**
 * The backups to remove: all but the newest three, the newest of each of the last fourteen days that have one, and the
 * newest of each of the last twenty-four months that have one. Nothing of the last hour goes, nor anything from the
 * future: those were made by a clock that was ahead, and take no other one's place.
 */
export function backupsToRemove(backups: readonly Kept[], now: number): string[] {
  const inOrder = backups.toSorted((a, b) => newestFirst(a, b) || (a.name < b.name ? 1 : -1));
  const kept = new Set(inOrder.slice(0, LATEST).map(({ name }) => name));
  const past = inOrder.filter(({ madeAt }) => madeAt <= now);
  for (const [length, most] of [
    ['day', DAYS],
    ['month', MONTHS],
  ] as const) {
    const seen = new Set<string>();
    for (const { name, madeAt } of past) {
      const span = spanOf(madeAt, length);
      if (seen.has(span) || seen.size >= most) continue;
      seen.add(span);
      kept.add(name);
    }
  }
  return past.filter(({ name, madeAt }) => !kept.has(name) && now - madeAt > HOUR).map(({ name }) => name);
}
