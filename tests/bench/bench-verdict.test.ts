// The simulated keepers: what must hold of them whatever policy they follow, and that following the verdict pays.
import { describe, expect, it } from 'vitest';
import { compare, costOf, mixOf, type Policy } from './verdict/compare';
import { habit } from './verdict/habits';
import { liveLine, type Choose } from './verdict/keeper';
import given from './verdict/models.json';
import { drawKeeper, Truths } from './verdict/models';
import { oracle, planOf } from './verdict/oracle';
import { verdict } from './verdict/verdict-policy';
import { runs } from '../runs';

const truths = Truths.parse(given);
const never: Choose = ({ candidates }) => candidates[0] ?? null;

describe('simulated keepers', () => {
  it('are the same under the same seed, and others under another', () => {
    const [model] = truths.models;
    if (!model) throw new Error('there are models');
    expect(drawKeeper(truths, model, 7, 1)).toEqual(drawKeeper(truths, model, 7, 1));
    expect(drawKeeper(truths, model, 7, 1)).not.toEqual(drawKeeper(truths, model, 7, 2));
    const truth = drawKeeper(truths, model, 7, 1);
    expect(liveLine(truth, 0, never, 10)).toEqual(liveLine(truth, 0, never, 10));
  });

  it('pay for every jar, and a start costs what its pieces do', () => {
    const model = truths.models.find(({ name }) => name === 'none');
    if (!model) throw new Error('there is a model without trouble');
    for (let k = 0; k < 20; k++) {
      const truth = drawKeeper(truths, model, k, 3);
      const tally = liveLine(truth, 0, never, 10);
      expect(tally.jars).toBe(truth.jars * truth.batches);
      const starts = (1 + tally.starts) * truth.startCost + tally.unplanned * truth.unplanned;
      expect(tally.spent).toBeCloseTo(tally.jars + starts / truth.jarCost, 6);
      expect(tally.worth).toBeCloseTo(tally.jars - tally.discarded - tally.weak / 2, 6);
    }
  });

  it('have an oracle whose fresh starts break even, and that never ends a line in which nothing is wrong', () => {
    const policies = new Map<string, Policy>([['oracle', oracle], ['two weak', () => habit({ weakInARow: 2 })]]); // prettier-ignore
    const all = compare(truths, policies, 6, 5);
    expect(mixOf(all, 'oracle')).toBeLessThan(mixOf(all, 'two weak'));
    const none = all.find(({ model }) => model === 'none')?.tallies.get('oracle') ?? [];
    expect(none.reduce((sum, { needless }) => sum + needless, 0)).toBe(0);
    const [model] = truths.models;
    if (model) expect(planOf(drawKeeper(truths, model, 1, 1)).cost).toBeGreaterThan(1);
  });

  it('are served better by the verdict than by any habit, and about as well as by none where nothing is wrong', () => {
    const habits = Object.entries(truths.policies).map(([name, rules]): [string, Policy] => [name, () => habit(rules)]);
    const all = compare(truths, new Map([['verdict', verdict], ...habits]), runs(3), 1);
    for (const [name] of habits) expect(mixOf(all, 'verdict'), name).toBeLessThan(mixOf(all, name));
    const none = all.find(({ model }) => model === 'none');
    const cost = (name: string): number => costOf(none?.tallies.get(name) ?? []);
    // At most three in a hundred more than never starting afresh.
    expect(cost('verdict')).toBeLessThan(1.03 * cost('newest firm'));
  }, 300_000); // prettier-ignore
});
