// What a seed's batch tells of the next: no more than the line's own record shows, and nothing of another line.
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../core/advice/random';
import { saidChance } from '../../core/advice/chances';
import { promiseOf, seedLevel, worthFor } from '../../core/advice/seed-level';
import { LevelTree } from '../../core/vigour/level/tree';
import { judgedLine, wearing } from './judged-line';
import type { RestartCosts } from '../../core/advice/costs';

const COSTS: RestartCosts = { freshStart: 6, jarsPerGeneration: 3, jar: 1, weakKeeps: 0.5, unplanned: 3 };
const worth = worthFor(COSTS, 3, 0.02);
const LEVEL = 62;

/** Chance of a weak jar from the newest batch of a line, each seeded by the one before. */
function chanceAfter(scores: readonly number[]): number {
  const tree = new LevelTree();
  let place: number | null = null;
  for (const score of scores) place = tree.add({ parent: place, jars: [-2, 0, 2].map((off) => ({ score: score + off, width: 0 })) }); // prettier-ignore
  return promiseOf(tree.weights, tree.next(place ?? 0), worth).weak;
}

describe('what a seed tells of its children', () => {
  const random = seededRandom(11);
  const even = Array.from({ length: 99 }, () => LEVEL + 6 * (random() + random() + random() + random() - 2) * Math.sqrt(3)); // prettier-ignore
  const apart = (scores: readonly number[]): number =>
    chanceAfter([...scores, LEVEL - 12]) - chanceAfter([...scores, LEVEL + 12]);

  it('is next to nothing where a hundred batches show no link between a seed and its children', () => {
    expect(apart(even)).toBeLessThan(0.05);
    expect(apart(even)).toBeGreaterThanOrEqual(0);
  });

  it('is the stated one in ten where nothing is recorded, and that of the record where much is', () => {
    expect(saidChance(0.6, 0)).toBeCloseTo(0.1, 12);
    for (const modelled of [0.02, 0.1, 0.3, 0.6]) expect(Math.abs(saidChance(modelled, 1000) - modelled)).toBeLessThan(0.1); // prettier-ignore
    expect(saidChance(0.3, 10)).toBeGreaterThan(saidChance(0.3, 3));
  });
});

describe('seeds of one line', () => {
  const worthBy = (batches: ReturnType<typeof wearing>): number[] => {
    const judgement = judgedLine(batches);
    const basis = { costs: COSTS, discardedShare: 0.02 };
    return judgement.batches.map(({ batch }) => seedLevel(judgement, batch, basis, judgement.level.tree.weights, 0)?.worth ?? Number.NaN); // prettier-ignore
  };

  it.each([2, 5, 8, 14])(
    'promise alike where all %i batches came out alike: the fresher comes first',
    (count) => {
      const worths = worthBy(wearing(count, count));
      for (const one of worths) expect(one).toBeCloseTo(worths.at(-1) ?? Number.NaN, 12);
    },
  );

  it('promise the less the later they were made where the line wears', () => {
    const worths = worthBy(wearing(12, 8));
    expect(worths[7]).toBeGreaterThan(worths[9] ?? Number.NaN);
    expect(worths[9]).toBeGreaterThan(worths[11] ?? Number.NaN);
  });
});
