// Ranks within a block, ties as their middle: what one taster made of a few jars.

/** Ranks of values, 1 the lowest; equal values share the middle of their ranks. */
export function ranksOf(values: readonly number[]): number[] {
  return values.map((value) => {
    const below = values.filter((other) => other < value).length;
    const equal = values.filter((other) => other === value).length;
    return below + (equal + 1) / 2;
  });
}

/** Σ (t³ − t) over the groups of equal ranks of all blocks. */
export function tieSum(blocks: readonly (readonly number[])[]): number {
  return blocks.reduce((sum, block) => {
    const groups = new Map<number, number>();
    for (const rank of block) groups.set(rank, (groups.get(rank) ?? 0) + 1);
    return sum + [...groups.values()].reduce((all, size) => all + size ** 3 - size, 0);
  }, 0);
}

/** Sum of the ranks of each column. */
export const rankSums = (blocks: readonly (readonly number[])[]): number[] =>
  (blocks[0] ?? []).map((_, column) => blocks.reduce((sum, block) => sum + (block[column] ?? 0), 0));

/** All orders of some values, equal ones told apart. */
export function ordersOf<T>(values: readonly T[]): T[][] {
  if (values.length <= 1) return [[...values]];
  return values.flatMap((value, at) =>
    ordersOf([...values.slice(0, at), ...values.slice(at + 1)]).map((rest) => [value, ...rest]),
  );
}
