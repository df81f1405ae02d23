// How much likelier batches are on a losing line: against integrals worked out another way, and what such ratios must obey.
import fc from 'fast-check';
import jStat from 'jstat';
import { describe, expect, it } from 'vitest';
import { seededRandom } from '../../core/advice/random';
import type { ScoredRange } from '../../core/vigour/batch-median';
import { LIKELIHOOD_RULES, lossLikelihood, type LikelihoodRules, type RecordedBatch } from '../../core/vigour/likelihood'; // prettier-ignore

const exact = (score: number): ScoredRange => ({ score, width: 0 });
const word = (score: number): ScoredRange => ({ score, width: 20 });
const batches = (...jars: readonly (readonly ScoredRange[])[]): RecordedBatch[] =>
  jars.map((list, i) => ({ generation: i + 2, jars: list }));
const throughout = (list: readonly RecordedBatch[], rules?: LikelihoodRules): number =>
  lossLikelihood(list, rules).throughout;

/** One spread, one jar spread, one loss: what is left to average over is the level. */
const simple = (spread: number, jarSpread: number, loss: number): LikelihoodRules => ({
  ...LIKELIHOOD_RULES,
  spreads: [spread],
  jarSpreads: [jarSpread],
  wander: [{ value: 0, weight: 1 }],
  losses: [{ value: loss, weight: 1 }],
});

/** Simpson's rule. */
function integral(f: (x: number) => number, from: number, to: number, pieces: number): number {
  const h = (to - from) / pieces;
  let sum = f(from) + f(to);
  for (let i = 1; i < pieces; i++) sum += (i % 2 === 1 ? 4 : 2) * f(from + i * h);
  return (sum * h) / 3;
}

describe('likelihood of a loss', () => {
  it('is the ratio of the integrals over the level, by the normal density of a statistics library', () => {
    const scores = [78, 71, 74, 60, 58];
    const [spread, jarSpread, loss] = [4, 3, 5];
    const sd = Math.hypot(spread, jarSpread);
    const ofLoss = (perGeneration: number): number =>
      integral((level) => scores.reduce((p, y, i) => p * jStat.normal.pdf(y, level - perGeneration * i, sd), 1), 0, 160, 4000); // prettier-ignore
    expect(
      throughout(batches(...scores.map((y) => [exact(y)])), simple(spread, jarSpread, loss)),
    ).toBeCloseTo(Math.log(ofLoss(loss) / ofLoss(0)), 6);
  });

  it('takes a batch of several jars by their mean where they are scores', () => {
    // Jars of one batch: the density of y1, y2 given the level, integrated over what the batch shares.
    const jars = [[80, 74], [72, 70], [61, 66]]; // prettier-ignore
    const [spread, jarSpread, loss] = [5, 3, 7];
    const batch = (list: readonly number[], level: number): number =>
      integral((own) => jStat.normal.pdf(own, level, spread) * list.reduce((p, y) => p * jStat.normal.pdf(y, own, jarSpread), 1), level - 40, level + 40, 160); // prettier-ignore
    const ofLoss = (perGeneration: number): number =>
      integral((level) => jars.reduce((p, list, i) => p * batch(list, level - perGeneration * i), 1), 20, 140, 480); // prettier-ignore
    expect(
      throughout(batches(...jars.map((list) => list.map(exact))), simple(spread, jarSpread, loss)),
    ).toBeCloseTo(Math.log(ofLoss(loss) / ofLoss(0)), 5);
  });

  it('takes a set word by the whole range that it leaves open', () => {
    const words = [[70, 70], [70, 50], [50, 50], [30, 50]]; // prettier-ignore
    const [spread, jarSpread, loss] = [4, 3, 7];
    const within = (own: number, score: number): number =>
      jStat.normal.cdf(score + 10, own, jarSpread) - jStat.normal.cdf(score - 10, own, jarSpread);
    const batch = (list: readonly number[], level: number): number =>
      integral((own) => jStat.normal.pdf(own, level, spread) * list.reduce((p, y) => p * within(own, y), 1), level - 30, level + 30, 200); // prettier-ignore
    const ofLoss = (perGeneration: number): number =>
      integral((level) => words.reduce((p, list, i) => p * batch(list, level - perGeneration * i), 1), 0, 140, 280); // prettier-ignore
    // Worked out in steps of two points here, of a fraction of a point there.
    expect(
      Math.abs(
        throughout(batches(...words.map((list) => list.map(word))), simple(spread, jarSpread, loss)) -
          Math.log(ofLoss(loss) / ofLoss(0)),
      ),
    ).toBeLessThan(0.03);
  });

  it('falls short for a steady line and grows as a line loses', () => {
    const even = batches(...[70, 71, 69, 70, 72, 70, 71].map((y) => [exact(y), exact(y + 2)]));
    const losing = batches(...[70, 65, 61, 55, 49, 45, 40].map((y) => [exact(y), exact(y + 2)]));
    expect(throughout(even)).toBeLessThan(-2);
    expect(throughout(losing)).toBeGreaterThan(5);
  });

  it('asks for a loss that began lately only of lines long enough', () => {
    const scores = [70, 71, 69, 70, 72, 71, 64, 57, 51];
    const all = batches(...scores.map((y) => [exact(y), exact(y + 2), exact(y - 2)]));
    expect(lossLikelihood(all.slice(0, 7)).lately).toBeNull();
    const { throughout: since, lately } = lossLikelihood(all);
    expect(lately).toBeGreaterThan(since + 3);
  });

  it('does not move when all scores move together, nor with the order of jars in a batch (property)', () => {
    const scores = fc.array(fc.array(fc.integer({ min: 20, max: 100 }), { minLength: 1, maxLength: 4 }), { minLength: 5, maxLength: 9 }); // prettier-ignore
    fc.assert(
      fc.property(scores, fc.integer({ min: -40, max: 40 }), fc.boolean(), (lists, shift, words) => {
        const as = words ? word : exact;
        const plain = throughout(batches(...lists.map((list) => list.map(as))));
        const moved = throughout(
          batches(...lists.map((list) => list.toReversed().map((y) => as(y + shift)))),
        );
        expect(Math.abs(plain - moved)).toBeLessThan(words ? 0.05 : 1e-6);
      }),
      { numRuns: 60 },
    );
  });

  it('exceeds k at some look in at most one steady line in k, where lines are as it assumes', () => {
    // Ville's inequality for likelihood ratios (Ville 1939, from memory): P(sup of the ratio ≥ k) ≤ 1/k when the steady
    // hypothesis, averaged as assumed, is true.
    const random = seededRandom(20);
    const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
    const draw = <T extends { weight: number }>(list: readonly T[]): T => {
      let left = random() * list.reduce((sum, { weight }) => sum + weight, 0);
      return list.find(({ weight }) => (left -= weight) < 0) ?? (list.at(-1) as T);
    };
    const { spreads, jarSpreads, jarPart, jarPartLogSd, wander, steadyPower } = LIKELIHOOD_RULES;
    const lines = 1500;
    const highest = Array.from({ length: lines }, () => {
      const { spread } = draw(spreads.map((value) => ({ spread: value, weight: value ** steadyPower })));
      const { jarSpread } = draw(jarSpreads.map((value) => ({ jarSpread: value, weight: Math.exp(-(Math.log(value / (jarPart * spread)) ** 2) / (2 * jarPartLogSd ** 2)) }))); // prettier-ignore
      const { value: wanders } = draw(wander);
      const all = Array.from({ length: 7 }, (_, i): RecordedBatch => {
        const own = 70 - wanders * spread * i + spread * normal();
        return { generation: i + 2, jars: [0, 1, 2].map(() => exact(own + jarSpread * normal())) };
      });
      return Math.max(...[3, 4, 5, 6, 7].map((n) => throughout(all.slice(0, n))));
    });
    for (const k of [3, 8, 20]) {
      const share = highest.filter((log) => log >= Math.log(k)).length / lines;
      // Three standard errors of the count above the bound.
      expect(share).toBeLessThan(1 / k + 3 * Math.sqrt(1 / k / lines));
    }
    // And it is no empty bound: some do.
    expect(highest.some((log) => log >= Math.log(3))).toBe(true);
  });
});
