// What may have seeded what.
import { earliest, fromJars, jarIn, latest, type Facts, type JarFact } from './asked-facts';
import { loopOf, seedsBefore } from './loop';
import type { Broken, Invariant } from './rule';

const STATE_WORDS = {
  planned: 'only planned',
  'not made': 'not made',
  mistake: 'marked as entered by mistake',
} as const;
/** As many jars as a sentence names. */
const MOST_NAMED = 5;

function* dayKnown(facts: Facts): Generator<Broken> {
  for (const { jar: key } of facts.seedings) {
    const jar = jarIn(facts, key);
    if (jar.last === null) yield { code: 'day not known', params: { jar: facts.label(jar) }, jar: key };
  }
}

function* noLoop(facts: Facts): Generator<Broken> {
  const loop = loopOf(facts);
  if (loop === null) return;
  const labels = loop.map((key) => facts.label(jarIn(facts, key)));
  yield { code: 'own ancestor', params: { jar: labels[0] ?? '', loop: labels }, jar: loop[0] ?? null };
}

function* madeInOrder(facts: Facts): Generator<Broken> {
  for (const { jar: key, fromJar } of fromJars(facts)) {
    const jar = jarIn(facts, key);
    const seed = jarIn(facts, fromJar);
    if (jar.last === null || seed.first === null || seed.first <= jar.last) continue;
    yield madeLater(facts, seed, seed.first, jar, jar.last);
  }
  yield* madeInOrderThroughRanges(facts);
}

/** That a seed was surely made after a jar that descends from it, by way of others or none. */
function madeLater(
  facts: Facts,
  seed: JarFact,
  seedDay: string,
  jar: JarFact,
  day: string,
  through: readonly JarFact[] = [],
): Broken {
  const by = through.length === 0 ? {} : { through: through.slice(0, MOST_NAMED).map(facts.label) };
  const days = { day, seedDay, ...earliest(seed), ...latest(jar) };
  return {
    code: 'seed made later',
    params: { jar: facts.label(jar), seed: facts.label(seed), ...days, ...by },
    jar: jar.key,
  };
}

/** Of what a jar descends from by way of jars of ranges of days, the one that was surely made last. */
interface MadeLast {
  readonly jar: JarFact;
  readonly first: string;
  /** The jars of ranges between the two. */
  readonly through: readonly JarFact[];
}

/**
 * A jar of a range may have been made before or after others, but not both: what seeded it and what it seeded stand in
 * order, too.
 */
function* madeInOrderThroughRanges(facts: Facts): Generator<Broken> {
  const ranged = ({ day, first }: JarFact): boolean => day === null && first !== null;
  if (![...facts.jars.values()].some(ranged)) return;
  const edges = [...facts.sameDay, ...facts.seedings];
  const last = new Map<number, MadeLast>();
  for (const key of seedsBefore(edges)) {
    const jar = jarIn(facts, key.jar);
    for (const from of key.seeds) {
      const seed = jarIn(facts, from);
      const own = seed.first === null ? undefined : { jar: seed, first: seed.first, through: [] };
      const above = ranged(seed) ? last.get(from) : undefined;
      if (above && jar.last !== null && above.first > jar.last) {
        yield madeLater(facts, above.jar, above.first, jar, jar.last, above.through);
      }
      const next = above && (!own || above.first > own.first) ? above : own;
      const known = last.get(key.jar);
      if (ranged(jar) && next && (!known || next.first > known.first))
        last.set(key.jar, { ...next, through: [...next.through, jar] });
    }
  }
}

/** Whether a seed is no jar that can have seeded another. What was written down before a jar was found to be a mistake stays. */
function unmade(seed: JarFact, jar: JarFact, writtenIn: number | null): keyof typeof STATE_WORDS | null {
  if (seed.state === 'planned' || seed.state === 'not made')
    return jar.state === 'made' || jar.state === 'lost' ? seed.state : null;
  if (seed.state !== 'mistake') return null;
  return writtenIn === null || seed.mistakeIn === null || writtenIn > seed.mistakeIn ? 'mistake' : null;
}

function* seedsMade(facts: Facts): Generator<Broken> {
  const seeded = new Map<number, string[]>();
  for (const { jar: key, fromJar, writtenIn } of fromJars(facts)) {
    const jar = jarIn(facts, key);
    const seed = jarIn(facts, fromJar);
    const state = unmade(seed, jar, writtenIn);
    if (state === null) continue;
    if (state !== 'mistake' && !facts.touched.has(key)) {
      // The jar stood as it is: it is the seed that was changed.
      seeded.set(fromJar, [...(seeded.get(fromJar) ?? []), facts.label(jar)]);
      continue;
    }
    yield {
      code: 'seed not made',
      params: { seed: facts.label(seed), state: STATE_WORDS[state] },
      jar: key,
    };
  }
  for (const [key, others] of seeded) {
    const params = { jar: facts.label(jarIn(facts, key)), others: others.slice(0, MOST_NAMED) };
    yield { code: 'has descendants', params, jar: key };
  }
}

function* ownPortion(facts: Facts): Generator<Broken> {
  for (const { jar, fromJar, portion } of fromJars(facts)) {
    if (portion === null || facts.portions.get(portion)?.jar === fromJar) continue;
    yield { code: 'portion of another jar', params: { jar: facts.label(jarIn(facts, fromJar)) }, jar };
  }
}

export const SEED_RULES: readonly Invariant[] = [
  {
    code: 'own ancestor',
    holds: 'No jar descends from itself.',
    ask: noLoop,
  },
  {
    code: 'seed not made',
    holds:
      'A jar that is made was seeded by jars that were made. A jar entered by mistake seeds nothing from then on; what it was said to have seeded before stays.',
    ask: seedsMade,
  },
  {
    code: 'day not known',
    holds: 'A jar of unknown day has no seeds: nothing about them could be checked.',
    ask: dayKnown,
  },
  {
    code: 'seed made later',
    holds: 'A seed is made no later than the jar it seeded.',
    ask: madeInOrder,
  },
  {
    code: 'portion of another jar',
    holds: 'A portion that seeds is a portion of the jar that seeds.',
    ask: ownPortion,
  },
];
