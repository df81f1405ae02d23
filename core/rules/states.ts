// What a planned jar can't have, what a jar can't be at once, and values that nothing has.
import { PH_POSSIBLE } from '../quantities';
import { jarIn, type Facts } from './facts';
import type { Broken, Invariant } from './rule';

function* plannedHasNothing(facts: Facts): Generator<Broken> {
  const planned = (key: number): boolean => jarIn(facts, key).state === 'planned';
  const broken = (key: number, what: string): Broken => ({
    code: 'planned has facts',
    params: { jar: facts.label(jarIn(facts, key)), what },
    jar: key,
  });
  for (const { jar } of facts.observations) if (planned(jar)) yield broken(jar, 'seen');
  for (const { jar } of facts.portions.values()) if (planned(jar)) yield broken(jar, 'kept');
  for (const { jar, portion } of facts.movements)
    if (portion === null && planned(jar)) yield broken(jar, 'gone');
  for (const key of facts.touched)
    if (jarIn(facts, key).stillThere && planned(key)) yield broken(key, 'on the shelf');
}

function* notBoth(facts: Facts): Generator<Broken> {
  for (const { jar: key, portion } of facts.movements) {
    const jar = jarIn(facts, key);
    if (portion === null && jar.stillThere)
      yield { code: 'on the shelf and gone', params: { jar: facts.label(jar) }, jar: key };
  }
}

function* acidityPossible(facts: Facts): Generator<Broken> {
  for (const { jar, acidity } of facts.observations) {
    for (const ph of acidity) {
      if (ph < PH_POSSIBLE.least || ph > PH_POSSIBLE.most)
        yield { code: 'pH impossible', params: { ph }, jar };
    }
  }
}

function* packagesFit(facts: Facts): Generator<Broken> {
  for (const { jar, package: key, as, source } of facts.uses) {
    const used = facts.packages.get(key);
    if (!used) continue;
    const fits = used.of === as && (as !== 'source' || used.source === null || used.source === source);
    if (!fits) yield { code: 'package of something else', params: { name: used.name }, jar };
  }
  for (const { of, source, name } of facts.packages.values()) {
    if (source !== null && of !== 'source')
      yield { code: 'package of something else', params: { name }, jar: null };
  }
}

export const STATE_RULES: readonly Invariant[] = [
  {
    code: 'planned has facts',
    holds: 'Of a jar that is only planned nothing was seen, kept or gone.',
    ask: plannedHasNothing,
  },
  {
    code: 'on the shelf and gone',
    holds: 'A jar is not on the shelf and gone at once.',
    ask: notBoth,
  },
  {
    code: 'pH impossible',
    holds: `The pH of a jar lies between ${PH_POSSIBLE.least} and ${PH_POSSIBLE.most}.`,
    ask: acidityPossible,
  },
  {
    code: 'package of something else',
    holds:
      'A package is used for what it is of: milk as milk, an addition as that, a product as the seed it is.',
    ask: packagesFit,
  },
];
