// What a planned jar can't have, what a jar can't be at once, and values that nothing has.
import { PH_POSSIBLE } from '../quantities/quantities';
import { jarIn, MOVED_WORDS, type Facts } from './asked-facts';
import type { Broken, Invariant } from './rule';

const UNMADE: ReadonlySet<string> = new Set(['planned', 'not made']);

function* plannedHasNothing(facts: Facts): Generator<Broken> {
  const unmade = (key: number): boolean => UNMADE.has(jarIn(facts, key).state);
  const broken = (key: number, what: string): Broken => {
    const jar = jarIn(facts, key);
    const state = jar.state === 'not made' ? 'not made' : 'only planned';
    return { code: 'planned has facts', params: { jar: facts.label(jar), what, state }, jar: key };
  };
  for (const { jar } of facts.observations) if (unmade(jar)) yield broken(jar, 'seen');
  for (const { jar } of facts.portions.values()) if (unmade(jar)) yield broken(jar, 'kept');
  for (const { jar, kind } of facts.movements)
    if (unmade(jar)) yield broken(jar, kind === 'still there' ? 'on the shelf' : MOVED_WORDS[kind]);
  for (const { jar, came, went } of facts.stays)
    if ((came !== null || went !== null) && unmade(jar)) yield broken(jar, 'in warmth');
  for (const { jar, what } of facts.told) if (unmade(jar)) yield broken(jar, what);
}

function* madeOnADay(facts: Facts): Generator<Broken> {
  for (const key of facts.touched) {
    const jar = jarIn(facts, key);
    // What is planned is planned for a day.
    const known = jar.state === 'planned' ? jar.day : jar.first;
    if (known === null && jar.state !== 'lost' && jar.state !== 'mistake')
      yield { code: 'made on no day', params: {}, jar: key };
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
    holds:
      'Of a jar that is only planned, or came to nothing, nothing was seen, measured, tasted, warmed, kept or moved.',
    ask: plannedHasNothing,
  },
  {
    code: 'made on no day',
    holds:
      'Of a jar that is made the day is known, or between which days it was; of a planned one the day. Of one that nobody can name nothing need be.',
    ask: madeOnADay,
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
