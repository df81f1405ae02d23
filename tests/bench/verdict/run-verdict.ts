// npm run bench:verdict [-- --models FILE --seed N --keepers N --only POLICY,POLICY]: two simulated years of each keeper under the verdict, under
// habits and under an oracle that knows the truth. Seeded: the same numbers every time.
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import {
  calibrationOf,
  compare,
  costOf,
  errorOfDifference,
  mixOf,
  type Compared,
  type Policy,
} from './compare';
import { habit } from './habits';
import given from './models.json';
import { Truths } from './models';
import { oracle } from './oracle';
import { verdict } from './verdict-policy';

const { values } = parseArgs({
  options: {
    models: { type: 'string' },
    seed: { type: 'string', default: '1' },
    keepers: { type: 'string', default: '200' },
    only: { type: 'string' },
  },
});
const truths = Truths.parse(values.models ? JSON.parse(readFileSync(values.models, 'utf8')) : given);
const every: [string, Policy][] = [
  ...Object.entries(truths.policies).map(([name, rules]): [string, Policy] => [name, () => habit(rules)]),
  ['verdict', verdict],
  ['oracle', oracle],
];
const policies = new Map(every.filter(([name]) => !values.only || values.only.split(',').includes(name)));

const names = [...policies.keys()];
const table = (
  title: string,
  cell: (one: Compared, policy: string) => string,
  mix: (policy: string) => string,
): void => {
  console.log(`\n${title}\n\n| model | ${names.join(' | ')} |\n|---|${names.map(() => '---|').join('')}`);
  for (const one of all)
    console.log(`| ${one.model} | ${names.map((name) => cell(one, name)).join(' | ')} |`);
  console.log(`| the mix | ${names.map(mix).join(' | ')} |`);
};
const started = performance.now();
const all = compare(truths, policies, Number(values.keepers), Number(values.seed));
const mean = (
  one: Compared,
  policy: string,
  key: 'discarded' | 'needless' | 'starts' | 'weak',
  per: 'jars' | 'keeper',
): number => {
  const tallies = one.tallies.get(policy) ?? [];
  const sum = tallies.reduce((total, tally) => total + tally[key], 0);
  return (
    sum / (per === 'keeper' ? tallies.length : tallies.reduce((total, { jars }) => total + jars / 100, 0))
  );
};
const weight = all.reduce((sum, one) => sum + one.weight, 0);
const overMix = (of: (one: Compared) => number): number =>
  all.reduce((sum, one) => sum + (one.weight / weight) * of(one), 0);

console.log(`Verdict bench: ${values.keepers} keepers of each model, seed ${values.seed}.`);
table(
  'Cost of a good jar’s worth, in jars',
  (one, name) => costOf(one.tallies.get(name) ?? []).toFixed(3),
  (name) => mixOf(all, name).toFixed(3),
);
for (const [title, key, per] of [
  ['Discarded jars in 100', 'discarded', 'jars'],
  ['Weak jars in 100', 'weak', 'jars'],
  ['Fresh starts a keeper', 'starts', 'keeper'],
  ['Needless fresh starts a keeper', 'needless', 'keeper'],
] as const)
  table(
    title,
    (one, name) => mean(one, name, key, per).toFixed(2),
    (name) => overMix((one) => mean(one, name, key, per)).toFixed(2),
  );
if (policies.has('verdict')) {
  console.log('\nThe verdict less another policy over the mix, with the standard error of the difference:\n');
  for (const name of names.filter((other) => other !== 'verdict'))
    console.log(
      `- ${name}: ${(mixOf(all, 'verdict') - mixOf(all, name)).toFixed(4)} ± ${errorOfDifference(all, 'verdict', name).toFixed(4)}`,
    );
}
console.log(
  '\nWeak jars in 100, as the verdict said of the seed it chose and as they came:\n\n| said | came | seeds |\n|---|---|---|',
);
for (const { said, came, seeds } of calibrationOf(all, 'verdict'))
  console.log(`| ${said.toFixed(1)} | ${came.toFixed(1)} | ${seeds} |`);
console.log(`\n${((performance.now() - started) / 1000).toFixed(1)} s`);
