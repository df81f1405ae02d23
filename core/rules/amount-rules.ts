// How much can have gone where. Volumes and masses are compared, 1 g of a culture, of curd or of whey taken as 1 mL, and
// pieces with pieces: an unknown amount breaks nothing.
import {
  fromJars,
  jarIn,
  type Facts,
  type JarFact,
  type Measured,
  type PortionFact,
  type SeedingFact,
} from './asked-facts';
import type { Broken, Invariant } from './rule';

/** Volumes are rounded when they are measured and turned into mL: a hundredth more is the same. */
const ROUNDING = 1.01;
/** Of several measures each is rounded by itself, so together they may be a little further out. */
const ROUNDING_TOGETHER = 1.05;

/** So many mL, and whether some of them were weighed. */
interface Bulk {
  readonly ml: number;
  readonly weighed: boolean;
}

/** Null where it is neither a volume nor a mass, or not known. */
function bulkOf(amount: Measured | null): Bulk | null {
  if (amount?.unit !== 'mL' && amount?.unit !== 'g') return null;
  return { ml: amount.value, weighed: amount.unit === 'g' };
}

const inPieces = (amount: Measured | null): number | null =>
  amount?.unit === 'pieces' ? amount.value : null;
const piecesIn = ({ pieces, amount }: Pick<PortionFact, 'pieces' | 'amount'>): number | null =>
  pieces ?? inPieces(amount);

/** One piece of a portion; null where it can't be told. */
function perPiece({ pieces, amount }: PortionFact): Bulk | null {
  const all = bulkOf(amount);
  return all === null || pieces === null || all.ml === 0 ? null : { ...all, ml: all.ml / pieces };
}

/** What a seeding took of a jar; null where it can't be told. A powder that was weighed has no volume. */
function takenBy(facts: Facts, { amount, portion, fromJar }: SeedingFact): Bulk | null {
  if (fromJar === null && amount?.unit === 'g') return null;
  const count = inPieces(amount);
  if (count === null) return bulkOf(amount);
  const kept = portion === null ? undefined : facts.portions.get(portion);
  const each = kept ? perPiece(kept) : null;
  return each === null ? null : { ...each, ml: each.ml * count };
}

const rounded = (ml: number): number => Math.round(ml);
const plus = (one: Bulk | undefined, other: Bulk): Bulk =>
  one ? { ml: one.ml + other.ml, weighed: one.weighed || other.weighed } : other;

/** Whether so much is more than a jar held; null where it is not, or nobody knows what it held. */
function tooMuch(jar: JarFact, taken: Bulk, rounding: number): { volume: number; weighed: boolean } | null {
  const held = bulkOf(jar.volume);
  if (held === null || taken.ml <= held.ml * rounding) return null;
  return { volume: rounded(held.ml), weighed: held.weighed || taken.weighed };
}

/** Planned jars, and jars entered by mistake, took nothing. */
const tookSome = (facts: Facts, { jar: key }: SeedingFact): boolean => {
  const { state } = jarIn(facts, key);
  return state === 'made' || state === 'lost';
};

function* seedFits(facts: Facts): Generator<Broken> {
  const broken = (about: number, jar: JarFact, taken: Bulk): Broken[] => {
    const over = tooMuch(jar, taken, ROUNDING);
    const params = { jar: facts.label(jar), seed: rounded(taken.ml), ...over };
    return over ? [{ code: 'seed more than jar', params, jar: about }] : [];
  };
  const into = new Map<number, Bulk>();
  for (const seeding of facts.seedings) {
    const taken = takenBy(facts, seeding);
    if (taken === null) continue;
    into.set(seeding.jar, plus(into.get(seeding.jar), taken));
    if (seeding.fromJar !== null) yield* broken(seeding.jar, jarIn(facts, seeding.fromJar), taken);
  }
  // Of a neighbour only some of its seedings are here: less than all of them is compared, never more.
  for (const [key, taken] of into) yield* broken(key, jarIn(facts, key), taken);
}

const isWhey = ({ part }: Pick<PortionFact, 'part'>): boolean => part === 'whey';

function* portionFits(facts: Facts): Generator<Broken> {
  for (const portion of facts.portions.values()) {
    const jar = jarIn(facts, portion.jar);
    const kept = bulkOf(portion.amount);
    // Whey is not compared: what a strained jar is said to hold may be what stayed in the cloth.
    const over = isWhey(portion) || kept === null ? null : tooMuch(jar, kept, ROUNDING);
    if (over === null) continue;
    const params = { jar: facts.label(jar), portion: rounded(kept?.ml ?? 0), ...over };
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
  const taken = new Map<number, Bulk>();
  const take = (jar: number, amount: Measured | null): void => {
    const bulk = bulkOf(amount);
    if (bulk !== null) taken.set(jar, plus(taken.get(jar), bulk));
  };
  for (const portion of facts.portions.values())
    if (portion.ofPortion === null && !isWhey(portion)) take(portion.jar, portion.amount);
  for (const { jar, portion, amount } of facts.movements) if (portion === null) take(jar, amount);
  const over = (key: number, all: Bulk, about: number): Broken | null => {
    const jar = jarIn(facts, key);
    const more = tooMuch(jar, all, ROUNDING_TOGETHER);
    const params = { jar: facts.label(jar), taken: rounded(all.ml), ...more };
    return more ? { code: 'taken more than jar', params, jar: about } : null;
  };
  for (const [key, all] of taken) {
    const broken = over(key, all, key);
    if (broken) yield broken;
  }
  for (const seeding of fromJars(facts)) {
    const own = seeding.portion === null && tookSome(facts, seeding) ? takenBy(facts, seeding) : null;
    if (own === null) continue;
    const all = plus(taken.get(seeding.fromJar), own);
    const broken = over(seeding.fromJar, all, seeding.jar);
    // On an import only what no longer fits stays aside.
    if (broken) yield broken;
    else taken.set(seeding.fromJar, all);
  }
}

interface Taken {
  readonly of: number;
  readonly pieces: number | null;
  readonly bulk: Bulk | null;
  /** Of whose jar it is said. */
  readonly jar: number;
}

/** All that was taken of portions: seeded, eaten, given, discarded, split off. */
function* takenOfPortions(facts: Facts): Generator<Taken> {
  for (const { jar, ofPortion: of, pieces, amount } of facts.portions.values())
    if (of !== null) yield { of, jar, pieces: pieces ?? inPieces(amount), bulk: bulkOf(amount) };
  for (const { jar, portion: of, pieces, amount } of facts.movements)
    if (of !== null) yield { of, jar, pieces: pieces ?? inPieces(amount), bulk: bulkOf(amount) };
  for (const seeding of facts.seedings) {
    const { jar, portion: of, amount } = seeding;
    if (of !== null && tookSome(facts, seeding))
      yield { of, jar, pieces: inPieces(amount), bulk: bulkOf(amount) };
  }
}

/** What was taken of a portion, in its pieces, or in mL where it is not kept in pieces. */
function* portionLasts(facts: Facts): Generator<Broken> {
  const used = new Map<number, number>();
  for (const { of, pieces, bulk, jar: about } of takenOfPortions(facts)) {
    const portion = facts.portions.get(of);
    if (!portion) continue;
    const count = piecesIn(portion);
    const each = perPiece(portion);
    const had = count ?? bulkOf(portion.amount)?.ml ?? null;
    const took = count === null ? bulk?.ml : (pieces ?? (each && bulk ? bulk.ml / each.ml : null));
    if (had === null || took === null || took === undefined) continue;
    const all = (used.get(of) ?? 0) + took;
    if (all <= had * ROUNDING_TOGETHER) {
      used.set(of, all);
      continue;
    }
    const jar = facts.label(jarIn(facts, portion.jar));
    const unit = count === null ? 'mL' : count === 1 ? 'piece' : 'pieces';
    const weighed = count === null && (bulk?.weighed === true || bulkOf(portion.amount)?.weighed === true);
    yield {
      code: 'more than portion',
      params: { jar, taken: Math.round(all * 10) / 10, had, unit, weighed },
      jar: about,
    };
  }
}

function* unitsPossible(facts: Facts): Generator<Broken> {
  const odd = (jar: number, amount: Measured | null, units: readonly string[]): Broken[] => {
    if (amount === null || units.includes(amount.unit) || !facts.touched.has(jar)) return [];
    const params = {
      jar: facts.label(jarIn(facts, jar)),
      unit: amount.unit,
      mayBePieces: units.includes('pieces'),
    };
    return [{ code: 'unit impossible', params, jar }];
  };
  for (const { key, volume } of facts.jars.values()) yield* odd(key, volume, ['mL', 'g']);
  for (const { jar, amount } of facts.portions.values()) yield* odd(jar, amount, ['mL', 'g', 'pieces']);
  for (const { jar, amount } of facts.movements) yield* odd(jar, amount, ['mL', 'g', 'pieces']);
}

export const AMOUNT_RULES: readonly Invariant[] = [
  {
    code: 'unit impossible',
    holds:
      'What a jar holds is a volume or a mass; what is kept apart or taken of it is one of these, or pieces. 1 g is taken as 1 mL.',
    ask: unitsPossible,
  },
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
