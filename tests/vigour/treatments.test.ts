// What a keeper stirs in tells of the next batch only as far as it was seen, and lines borrow from each other only in part.
import { expect, it } from 'vitest';
import { borrowedWeights } from '../../core/vigour/level/borrowed';
import { Treatments } from '../../core/vigour/level/treatments';
import { LevelTree } from '../../core/vigour/level/tree';

it('expects the fibre that the newest batch had, by what it was seen to do, and nothing where none was ever stirred in', () => {
  const plain = new Treatments(14);
  for (let i = 0; i < 9; i++) plain.made(null);
  expect(plain.next()).toEqual([{ mean: 0, variance: 0, weight: 1 }]);
  const wrecked = new Treatments(14);
  for (const name of [null, null, null, 'oat bran', 'oat bran']) {
    wrecked.made(name);
    if (name !== null) wrecked.learn(name, -40, 6 ** 2);
  }
  const [now, ...others] = wrecked.next();
  expect(now?.mean).toBeLessThan(-30);
  expect(now?.weight).toBeGreaterThan(0.5);
  expect([now, ...others].reduce((sum, one) => sum + (one?.weight ?? 0), 0)).toBeCloseTo(1, 12);
});

it('moves the weights of a line towards those of the others, never further than they are, and leaves a line alone as it is', () => {
  const lived = (scores: readonly number[]): LevelTree => {
    const tree = new LevelTree();
    scores.forEach((score, at) => tree.add({ parent: at === 0 ? null : at - 1, jars: [{ score, width: 0 }] }));
    return tree;
  };
  const uneven = lived(Array.from({ length: 16 }, (_, i) => 75 + (i % 2 === 0 ? 14 : -14)));
  const fresh = new LevelTree();
  const spread = (weights: Float64Array): number => fresh.hypotheses.reduce((sum, one, h) => sum + (weights[h] ?? 0) * one.spread, 0);
  expect(borrowedWeights(fresh, [])).toEqual(fresh.weights);
  const borrowed = spread(borrowedWeights(fresh, [uneven]));
  expect(borrowed).toBeGreaterThan(spread(fresh.weights));
  expect(borrowed).toBeLessThan(spread(uneven.weights));
  expect(borrowedWeights(fresh, [uneven]).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
}); // prettier-ignore
