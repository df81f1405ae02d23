// How a belief moves from seed to batch and back. Properties of a hidden Markov chain (Rabiner 1989, from memory): nothing is lost on the
// way, and the way back is the transpose of the way forward.
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { movesOf } from '../../core/vigour/level/moves';
import { LEVEL_RULES, LOSING_FROM } from '../../core/vigour/level/rules';
import { LevelTree } from '../../core/vigour/level/tree';
import { borrowedWeights } from '../../core/vigour/level/borrowed';
import { seededRandom } from '../../core/advice/random';
import { levelLikelihoods } from '../../core/vigour/level/level-likelihood';
import { LineLevel } from '../../core/vigour/level/line-level';

const { levels, rates, drifts } = LEVEL_RULES;
const SIZE = levels * rates.length;
const rowOf = (seed: number): Float64Array => {
  const random = seededRandom(seed);
  return Float64Array.from({ length: SIZE }, () => random() ** 8);
};
const sum = (row: Float64Array): number => row.reduce((a, b) => a + b, 0);
const product = (a: Float64Array, b: Float64Array): number =>
  a.reduce((total, one, i) => total + one * (b[i] as number), 0);
const drift = fc.constantFrom(...drifts);

it('the way forward keeps the whole belief, and the way back is its transpose (property)', () => {
  fc.assert(
    fc.property(fc.nat(), fc.nat(), drift, (one, other, by) => {
      const [belief, evidence] = [rowOf(one), rowOf(other)];
      const [next, told] = [new Float64Array(SIZE), new Float64Array(SIZE)];
      const moves = movesOf(LEVEL_RULES, by);
      moves.forward(belief, 0, next);
      moves.back(evidence, 0, told);
      expect(sum(next) / sum(belief)).toBeCloseTo(1, 9);
      expect(product(next, evidence) / product(belief, told)).toBeCloseTo(1, 9);
    }),
    { numRuns: 40 },
  );
});

it('a sound culture never begins to lose, one that will does, by the chance of its kind each time', () => {
  for (const by of drifts) {
    const moves = movesOf(LEVEL_RULES, by);
    const losing = (row: number): number => {
      const [belief, next] = [new Float64Array(SIZE), new Float64Array(SIZE)];
      belief[row * levels + 30] = 1;
      moves.forward(belief, 0, next);
      return sum(next.subarray(LOSING_FROM * levels));
    };
    expect(losing(0)).toBe(0);
    expect(losing(1)).toBeCloseTo(by.begins, 12);
    expect(losing(LOSING_FROM)).toBeCloseTo(1 - by.ends, 12);
  }
});

it('lines that came out alike tell of each other, and lines that did not leave each other alone', () => {
  const lived = (spread: number, batches: number): LevelTree => {
    const tree = new LevelTree();
    const random = seededRandom(spread);
    for (let at = 0; at < batches; at++)
      tree.add({
        parent: at === 0 ? null : at - 1,
        jars: [{ score: 75 + spread * Math.sqrt(3) * (2 * random() - 1), width: 0 }],
      });
    return tree;
  };
  const spreadOf = (tree: LevelTree, weights: Float64Array): number =>
    tree.hypotheses.reduce((total, one, h) => total + (weights[h] as number) * one.spread, 0);
  const [even, evenToo, uneven] = [lived(3, 25), lived(3.01, 25), lived(12, 25)];
  const moved = (others: readonly LevelTree[]): number =>
    Math.abs(spreadOf(even, borrowedWeights(even, others)) - spreadOf(even, even.weights));
  const apart = spreadOf(uneven, uneven.weights) - spreadOf(even, even.weights);
  expect(apart).toBeGreaterThan(4);
  expect(moved([uneven]) / apart).toBeLessThan(0.05);
  // A young line is taken to be of the kind of two old ones that agree, more than of one alone.
  const young = lived(12, 3);
  const borrowed = (others: readonly LevelTree[]): number => spreadOf(young, borrowedWeights(young, others));
  expect(borrowed([uneven])).toBeGreaterThan(borrowed([]));
  expect(borrowed([even, evenToo])).toBeLessThan(borrowed([even]) + 1e-9);
});

it('takes what one batch was off by to go on to the next only as far as a few spreads: beyond that it was a bad day or a fall', () => {
  const after = (seen: number): Float64Array[] => [
    ...levelLikelihoods([{ score: 60, width: 0 }], 3, { mean: 0, sd: 0 }, { place: 0, seen, expected: 75, variance: 4 }, LEVEL_RULES).values(),
  ];
  const [even, ...uneven] = LEVEL_RULES.spreads.map(({ value }) => value).toSorted((a, b) => a - b);
  // Two spreads of the most uneven line, and twice as much; one of the most even, and half of it.
  const far = 2 * Math.max(...uneven);
  expect(after(75 - far)).toEqual(after(75 - 2 * far));
  expect(after(75 - (even ?? 0))).not.toEqual(after(75 - (even ?? 0) / 2));
}); // prettier-ignore

it('holds a line against its first four batches, as its scores are, not against the first alone', () => {
  const level = new LineLevel();
  level.add([{ batch: 0, seedBatch: null, jars: [] }]);
  const scores = [90, 84, 78, 72, 66, 60, 54];
  const looks = scores.map((score, i) => level.add([{ batch: i + 1, seedBatch: i, jars: [0, 0, 0].map(() => ({ score, width: 0 })) }]));
  expect(Math.abs((looks.at(-1)?.early ?? 0) - (90 + 84 + 78 + 72) / 4)).toBeLessThan(3);
}); // prettier-ignore
