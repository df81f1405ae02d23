// Corrections send only what the keeper changed, so that nothing else drifts by being read and written again. Pure.

/**
 * Fields of `now` whose value differs from `before`, both read the same way from their texts.
 * @returns null where nothing differs
 */
export function changedOnly<T extends object>(before: T, now: T): Partial<T> | null {
  const changed = (Object.keys(now) as (keyof T)[]).filter(
    (key) => JSON.stringify(now[key]) !== JSON.stringify(before[key]),
  );
  return changed.length === 0
    ? null
    : (Object.fromEntries(changed.map((key) => [key, now[key]])) as Partial<T>);
}
