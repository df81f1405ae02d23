// Every policy on the same keepers: what a good jar's worth costs, by model and over the mix.
import { emptyTally, liveLine, type Choose, type Tally } from './keeper';
import { drawKeeper, type KeeperTruth, type Truths } from './models';

/** A policy as it meets a keeper: one choice for each line, each learning only from what was seen. */
export type Policy = (truth: KeeperTruth) => Choose;

export interface Compared {
  readonly model: string;
  readonly weight: number;
  readonly keepers: number;
  /** By policy. */
  readonly tallies: ReadonlyMap<string, readonly Tally[]>;
}

/** What is counted in a tally. */
export type Counted = Exclude<keyof Tally, 'said'>;

const add = (sum: Tally, one: Tally): void => {
  for (const key of Object.keys(sum) as (keyof Tally)[]) if (key !== 'said') sum[key] += one[key];
  sum.said.forEach((bin, i) => {
    const more = one.said[i];
    if (!more) return;
    bin.seeds += more.seeds;
    bin.sum += more.sum;
    bin.jars += more.jars;
    bin.weak += more.weak;
  });
};

/** @param keepers of each model, however heavy it weighs: the mix is weighed afterwards */
export function compare(
  truths: Truths,
  policies: ReadonlyMap<string, Policy>,
  keepers: number,
  seed: number,
): Compared[] {
  return truths.models.map((model, at): Compared => {
    const tallies = new Map([...policies.keys()].map((name) => [name, [] as Tally[]]));
    for (let k = 0; k < keepers; k++) {
      const truth = drawKeeper(truths, model, at * 100_000 + k, seed);
      for (const [name, policy] of policies) {
        const choose = policy(truth);
        const sum = emptyTally();
        for (let line = 0; line < truth.lines; line++)
          add(sum, liveLine(truth, line, choose, truths.needlessWithin));
        tallies.get(name)?.push(sum);
      }
    }
    return { model: model.name, weight: model.weight, keepers, tallies };
  });
}

/** Cost of a good jar's worth over all keepers of a model (in jars). */
export function costOf(tallies: readonly Tally[]): number {
  const of = (key: Counted): number => tallies.reduce((sum, tally) => sum + tally[key], 0);
  return of('spent') / of('worth');
}

/** The same over the mix of models. */
export function mixOf(all: readonly Compared[], policy: string): number {
  const weight = all.reduce((sum, one) => sum + one.weight, 0);
  return all.reduce((sum, one) => sum + one.weight * costOf(one.tallies.get(policy) ?? []), 0) / weight;
}

/** Standard error of the difference of two policies over the mix, seeds paired. */
export function errorOfDifference(all: readonly Compared[], a: string, b: string): number {
  const weight = all.reduce((sum, one) => sum + one.weight, 0);
  const variance = all.reduce((sum, one) => {
    const [left, right] = [one.tallies.get(a) ?? [], one.tallies.get(b) ?? []];
    const [costA, costB] = [costOf(left), costOf(right)];
    const worth = (list: readonly Tally[]): number => list.reduce((s, t) => s + t.worth, 0) / list.length;
    const each = left.map((t, i) => {
      const u = right[i] ?? t;
      return (t.spent - costA * t.worth) / worth(left) - (u.spent - costB * u.worth) / worth(right);
    });
    return sum + (one.weight / weight) ** 2 * (each.reduce((s, x) => s + x * x, 0) / each.length ** 2);
  }, 0);
  return Math.sqrt(variance);
}

/** Chances as they were said beside what came of them, over the mix (models weighed), in 100. */
export function calibrationOf(
  all: readonly Compared[],
  policy: string,
): { said: number; came: number; seeds: number }[] {
  const bins = emptyTally().said.map(() => ({ sum: 0, jars: 0, weak: 0, seeds: 0, weight: 0 }));
  for (const { weight, tallies } of all)
    for (const { said } of tallies.get(policy) ?? [])
      said.forEach((bin, i) => {
        const into = bins[i];
        if (!into) return;
        into.sum += weight * bin.sum;
        into.weight += weight * bin.seeds;
        into.jars += weight * bin.jars;
        into.weak += weight * bin.weak;
        into.seeds += bin.seeds;
      });
  return bins
    .filter(({ jars }) => jars > 0)
    .map(({ sum, weight, jars, weak, seeds }) => ({
      said: (100 * sum) / weight,
      came: (100 * weak) / jars,
      seeds,
    }));
}
