// Pool adjacent violators: the closest non-falling sequence, by weighted least squares (Barlow et al. 1972, from memory).

/** @param weights above 0, one per value. */
export function nonFalling(values: readonly number[], weights: readonly number[]): number[] {
  const blocks: { value: number; weight: number; count: number }[] = [];
  values.forEach((value, i) => {
    let block = { value, weight: weights[i] ?? 1, count: 1 };
    for (let last = blocks.at(-1); last && last.value > block.value; last = blocks.at(-1)) {
      blocks.pop();
      const weight = last.weight + block.weight;
      block = {
        value: (last.value * last.weight + block.value * block.weight) / weight,
        weight,
        count: last.count + block.count,
      };
    }
    blocks.push(block);
  });
  return blocks.flatMap(({ value, count }) => Array.from({ length: count }, () => value));
}
