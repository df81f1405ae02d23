// Which grain stands for which of the things compared: the same in the trial, on the bowls and beside the words.

/** @param names in the order of the trial; what is plain has none */
export function grainsOf(
  treatments: readonly { readonly name: string; readonly plain: boolean }[],
): ReadonlyMap<string, number | null> {
  const names = [...new Set(treatments.filter(({ plain }) => !plain).map(({ name }) => name))];
  return new Map<string, number | null>([
    ...treatments.map(({ name }) => [name, null] as const),
    ...names.map((name, at) => [name, at] as const),
  ]);
}
