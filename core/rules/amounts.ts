// How much can have gone where. Only what is given as volume is compared, and pieces with pieces: an unknown amount, and
// one in grams, breaks nothing.
import { mlPerPiece, takenMl } from '../ledger/portions';
import { fromJars, jarIn, type Facts, type Measured, type PortionFact, type SeedingFact } from './facts';
import type { Broken, Invariant } from './rule';

/** Volumes are rounded when they are measured and turned into mL: a hundredth more is the same. */
const ROUNDING = 1.01;
/** Of several measures each is rounded by itself, so together they may be a little further out. */
const ROUNDING_TOGETHER = 1.05;

const typed = (amount: Measured | null) => (amount === null ? null : { ...amount, typed: null });
const inMl = (amount: Measured | null): number | null => (amount?.unit === 'mL' ? amount.value : null);

/** mL that a seeding took; null where it can't be told. */
function mlOf(facts: Facts, { amount, portion }: SeedingFact): number | null {
  const kept = portion === null ? undefined : facts.portions.get(portion);
  return kept ? takenMl({ ...kept, amount: typed(kept.amount) }, typed(amount)) : inMl(amount);
}

const rounded = (ml: number): number => Math.round(ml);

function* seedFits(facts: Facts): Generator<Broken> {
  const into = new Map<number, number>();
  for (const seeding of facts.seedings) {
    const ml = mlOf(facts, seeding);
    if (ml === null) continue;
    into.set(seeding.jar, (into.get(seeding.jar) ?? 0) + ml);
    const seed = seeding.fromJar === null ? null : jarIn(facts, seeding.fromJar);
    if (seed === null || seed.volumeMl === null || ml <= seed.volumeMl * ROUNDING) continue;
    const params = { jar: facts.label(seed), seed: rounded(ml), volume: rounded(seed.volumeMl) };
    yield { code: 'seed more than jar', params, jar: seeding.jar };
  }
  // Of a neighbour only some of its seedings are here: less than all of them is compared, never more.
  for (const [key, ml] of into) {
    const jar = jarIn(facts, key);
    if (jar.volumeMl === null || ml <= jar.volumeMl * ROUNDING) continue;
    const params = { jar: facts.label(jar), seed: rounded(ml), volume: rounded(jar.volumeMl) };
    yield { code: 'seed more than jar', params, jar: key };
  }
}

const isWhey = ({ part }: Pick<PortionFact, 'part'>): boolean => part === 'whey';

function* portionFits(facts: Facts): Generator<Broken> {
  for (const portion of facts.portions.values()) {
    const jar = jarIn(facts, portion.jar);
    const ml = inMl(portion.amount);
    // Whey is not compared: what a strained jar is said to hold may be what stayed in the cloth.
    if (isWhey(portion) || ml === null || jar.volumeMl === null || ml <= jar.volumeMl * ROUNDING) continue;
    const params = { jar: facts.label(jar), portion: rounded(ml), volume: rounded(jar.volumeMl) };
    yield { code: 'portion more than jar', params, jar: portion.jar };
  }
}

function* portionIsSomething(facts: Facts): Generator<Broken> {
  for (const { jar, amount } of facts.portions.values()) {
    if (amount?.value === 0)
      yield { code: 'portion of nothing', params: { jar: facts.label(jarIn(facts, jar)) }, jar };
  }
}

/**
 * Portions kept of a jar, what was eaten, given or discarded of it, and seed taken straight from it, together. What is taken
 * of a portion is part of the portion.
 */
function* takenFits(facts: Facts): Generator<Broken> {
  const taken = new Map<number, number>();
  const take = (jar: number, ml: number | null): void => {
    if (ml !== null) taken.set(jar, (taken.get(jar) ?? 0) + ml);
  };
  for (const portion of facts.portions.values())
    if (portion.ofPortion === null && !isWhey(portion)) take(portion.jar, inMl(portion.amount));
  for (const { jar, portion, amount } of facts.movements) if (portion === null) take(jar, inMl(amount));
  const over = (key: number, ml: number, about: number): Broken | null => {
    const jar = jarIn(facts, key);
    if (jar.volumeMl === null || ml <= jar.volumeMl * ROUNDING_TOGETHER) return null;
    const params = { jar: facts.label(jar), taken: rounded(ml), volume: rounded(jar.volumeMl) };
    return { code: 'taken more than jar', params, jar: about };
  };
  for (const [key, ml] of taken) {
    const broken = over(key, ml, key);
    if (broken) yield broken;
  }
  for (const seeding of fromJars(facts)) {
    const ml = seeding.portion === null ? mlOf(facts, seeding) : null;
    if (ml === null) continue;
    const before = taken.get(seeding.fromJar) ?? 0;
    const broken = over(seeding.fromJar, before + ml, seeding.jar);
    // On an import only what no longer fits stays aside.
    if (broken) yield broken;
    else taken.set(seeding.fromJar, before + ml);
  }
}

interface Taken {
  readonly of: number;
  readonly pieces: number | null;
  readonly ml: number | null;
  /** Of whose jar it is said. */
  readonly jar: number;
}

const inPieces = (amount: Measured | null): number | null =>
  amount?.unit === 'pieces' ? amount.value : null;

/** All that was taken of portions: seeded, eaten, given, discarded, split off. */
function* takenOfPortions(facts: Facts): Generator<Taken> {
  for (const { jar, ofPortion: of, pieces, amount } of facts.portions.values())
    if (of !== null) yield { of, jar, pieces, ml: inMl(amount) };
  const amounts = [...facts.movements, ...facts.seedings];
  for (const { jar, portion: of, amount } of amounts)
    if (of !== null) yield { of, jar, pieces: inPieces(amount), ml: inMl(amount) };
}

/** What was taken of a portion, in its pieces, or in mL where it is not kept in pieces. */
function* portionLasts(facts: Facts): Generator<Broken> {
  const used = new Map<number, number>();
  for (const taken of takenOfPortions(facts)) {
    const portion = facts.portions.get(taken.of);
    if (!portion) continue;
    const [had, unit] =
      portion.pieces === null
        ? [inMl(portion.amount), 'mL']
        : [portion.pieces, portion.pieces === 1 ? 'piece' : 'pieces'];
    const took = portion.pieces === null ? taken.ml : (taken.pieces ?? piecesOf(portion, taken.ml));
    if (had === null || took === null) continue;
    const all = (used.get(taken.of) ?? 0) + took;
    if (all <= had * ROUNDING_TOGETHER) {
      used.set(taken.of, all);
      continue;
    }
    const jar = facts.label(jarIn(facts, portion.jar));
    yield {
      code: 'more than portion',
      params: { jar, taken: Math.round(all * 10) / 10, had, unit },
      jar: taken.jar,
    };
  }
}

/** A volume in a portion's own pieces; null where it can't be told. */
function piecesOf(portion: PortionFact, ml: number | null): number | null {
  const each = mlPerPiece({ ...portion, amount: typed(portion.amount) });
  return each === null || ml === null ? null : ml / each;
}

export const AMOUNT_RULES: readonly Invariant[] = [
  {
    code: 'seed more than jar',
    holds:
      'All the seed of a jar is no more than it holds, and none of it is more than the jar it came from held.',
    ask: seedFits,
  },
  {
    code: 'portion more than jar',
    holds: 'A portion is no more than its jar held. Whey may be: a strained jar is measured after.',
    ask: portionFits,
  },
  {
    code: 'portion of nothing',
    holds: 'A portion is not of nothing; its amount may be unknown.',
    ask: portionIsSomething,
  },
  {
    code: 'taken more than jar',
    holds:
      'All that was kept apart of a jar, eaten or given of it, and seeded straight from it is no more than it held.',
    ask: takenFits,
  },
  {
    code: 'more than portion',
    holds: 'All that was taken of a portion is no more than was kept.',
    ask: portionLasts,
  },
];
