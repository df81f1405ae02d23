// The hidden truths of the simulated keepers: read from a file of data (models.json), so that other truths can be tried, and
// drawn for each keeper. Ranges are common practice and judgement, no source.
import { z } from 'zod';
import { seededRandom } from '../../../core/advice/random';

const Range = z.tuple([z.number(), z.number()]);
type Range = z.infer<typeof Range>;
const chance = z.number().min(0).max(1);

/** Ranges that hold for every keeper. Levels and effects in points of 0 to 100, money in one currency. */
const All = z.strictObject({
  startLevel: Range,
  batchSd: Range,
  jarSd: Range,
  autocorrelation: Range,
  coldChance: Range,
  coldEffect: Range,
  coldNoted: chance,
  powerCutChance: Range,
  firstEffect: Range,
  firstNotSet: Range,
  laterNotSet: Range,
  tenfoldDays: Range,
  tenfoldWeeksFrozen: Range,
  freezeStep: Range,
  /** What a tenfold loss of the seed in storage takes from the batch that it seeds, and from that alone. */
  pointsATenfold: z.number(),
  forgotten: Range,
  goodForgottenMore: z.number(),
  wordOff: chance,
  /** Chance that a keeper writes down set words and nothing finer. */
  wordsOnly: chance,
  wrongSeed: Range,
  jars: Range,
  batchesAYear: Range,
  lines: Range,
  /** How long one jar of each batch is kept to seed from. */
  shelfDays: Range,
  /** Chance that a keeper freezes cubes of the second batch. */
  reserve: chance,
  milkAJar: Range,
  creamAJar: Range,
  cream: chance,
  piece: Range,
  pieces: Range,
  fibreAJar: Range,
  unplanned: Range,
  years: z.number().positive(),
});

/** What is wrong with a keeper's lines, if anything. */
const Model = z.strictObject({
  name: z.string(),
  weight: z.number().positive(),
  loss: Range.optional(),
  lossFrom: Range.optional(),
  floor: z.number().default(0),
  losing: chance.default(0),
  sudden: Range.optional(),
  suddenChance: Range.optional(),
  inherited: chance.default(1),
  seenInJars: Range.optional(),
  hiddenInBatches: Range.optional(),
  hiddenShare: chance.default(0),
  hiddenGrowth: Range.optional(),
  hiddenSeenAt: Range.optional(),
  takeoverAfter: Range.optional(),
  takeoverScore: Range.optional(),
  takeoverSetTime: Range.optional(),
  fibreSd: z.number().default(0),
  fibreWrecks: chance.default(0),
  fibreWreck: Range.optional(),
  fibreChanges: Range.optional(),
  /** Points that a culture loses for good with each week that its seed stood. */
  lossAWeek: Range.optional(),
  /** Chance that a carton is a poor one, what that takes from its batches and from them alone, and how many it lasts for. */
  poorCarton: Range.optional(),
  cartonEffect: Range.optional(),
  cartonBatches: Range.optional(),
  /** Half of what a year's warm and cool seasons part batches by. */
  season: Range.optional(),
  /** What the second batch of a start lacks; the third lacks half of it, and so on. */
  slowStart: Range.optional(),
  /** Days for which pieces of one lot last, and spread of lots about the usual level: a lot is one start's like another's. */
  lotDays: Range.optional(),
  lotSd: z.number().default(0),
  /** Chance that half of the seed is the newest other batch's, and nobody writes it down. */
  mixes: chance.default(0),
  /** Chance after a batch that so many days pass before the next. */
  skips: Range.optional(),
  skipDays: Range.optional(),
});

const Policy = z.strictObject({
  /** Afresh after so many generations. */
  after: z.int().positive().optional(),
  /** Afresh after so many weak batches in a row. */
  weakInARow: z.int().positive().optional(),
  /** A smoothed level: afresh below it, one step back after a sudden fall. */
  weight: z.number().optional(),
  below: z.number().optional(),
  fall: z.number().optional(),
});
export type PolicyRules = z.infer<typeof Policy>;

export const Truths = z.strictObject({
  all: All,
  models: z.array(Model).min(1),
  policies: z.record(z.string(), Policy),
  /** A fresh start is needless while the true level is within so many points of the early one. */
  needlessWithin: z.number(),
});
export type Truths = z.infer<typeof Truths>;

export type Random = () => number;
const between = ([low, high]: Range, random: Random): number => low + (high - low) * random();
const wholeBetween = ([low, high]: Range, random: Random): number =>
  low + Math.floor((high - low + 1) * random());
const NEVER: Range = [0, 0];

/** Independent random numbers for each use: the same keeper, line and batch draw the same under every policy. */
export function streamOf(...numbers: readonly number[]): Random {
  let mixed = 0x9e3779b9;
  for (const number of numbers) {
    mixed = Math.imul(mixed ^ (number + 0x7f4a7c15), 0x85ebca6b);
    mixed = Math.imul(mixed ^ (mixed >>> 13), 0xc2b2ae35);
    mixed ^= mixed >>> 16;
  }
  const random = seededRandom(mixed >>> 0);
  random();
  return random;
}

export const normal = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** One keeper's truth: every range drawn. */
export type KeeperTruth = ReturnType<typeof drawKeeper>;

/** @param number of the keeper: the same number and seed give the same keeper */
export function drawKeeper(truths: Truths, model: Truths['models'][number], number: number, seed: number) {
  const random = streamOf(seed, number, 1);
  const { all } = truths;
  const draw = (range: Range | undefined): number => between(range ?? NEVER, random);
  const cream = random() < all.cream;
  const milk = draw(all.milkAJar);
  const creamPrice = draw(all.creamAJar);
  const perYear = wholeBetween(all.batchesAYear, random);
  return {
    number,
    seed,
    startLevel: all.startLevel,
    batchSd: draw(all.batchSd),
    jarSd: draw(all.jarSd),
    autocorrelation: draw(all.autocorrelation),
    coldChance: draw(all.coldChance),
    coldEffect: all.coldEffect,
    coldNoted: all.coldNoted,
    powerCutChance: draw(all.powerCutChance),
    firstEffect: all.firstEffect,
    firstNotSet: draw(all.firstNotSet),
    laterNotSet: draw(all.laterNotSet),
    tenfoldDays: draw(all.tenfoldDays),
    tenfoldWeeksFrozen: draw(all.tenfoldWeeksFrozen),
    freezeStep: draw(all.freezeStep),
    pointsATenfold: all.pointsATenfold,
    forgotten: draw(all.forgotten),
    goodForgottenMore: all.goodForgottenMore,
    wordOff: all.wordOff,
    wordsOnly: random() < all.wordsOnly,
    wrongSeed: draw(all.wrongSeed),
    jars: wholeBetween(all.jars, random),
    days: 365 / perYear,
    batches: Math.round(perYear * all.years),
    lines: wholeBetween(all.lines, random),
    shelfDays: draw(all.shelfDays),
    reserve: random() < all.reserve,
    jarCost: cream ? creamPrice : milk,
    startCost: Math.round(draw(all.pieces)) * draw(all.piece),
    fibreCost: draw(all.fibreAJar),
    unplanned: draw(all.unplanned),
    loss: draw(model.loss),
    lossFrom: wholeBetween(model.lossFrom ?? NEVER, random),
    floor: model.floor,
    losing: model.losing,
    sudden: model.sudden ?? NEVER,
    suddenChance: draw(model.suddenChance),
    inherited: model.inherited,
    seenInJars: draw(model.seenInJars),
    hiddenInBatches: draw(model.hiddenInBatches),
    hiddenShare: model.hiddenShare,
    hiddenGrowth: draw(model.hiddenGrowth),
    hiddenSeenAt: draw(model.hiddenSeenAt),
    takeoverAfter: model.takeoverAfter ? wholeBetween(model.takeoverAfter, random) : Number.POSITIVE_INFINITY,
    takeoverScore: draw(model.takeoverScore),
    takeoverSetTime: draw(model.takeoverSetTime),
    fibreSd: model.fibreSd,
    fibreWrecks: model.fibreWrecks,
    fibreWreck: model.fibreWreck ?? NEVER,
    fibreChanges: model.fibreChanges ?? null,
    lossAWeek: draw(model.lossAWeek),
    poorCarton: draw(model.poorCarton),
    cartonEffect: model.cartonEffect ?? NEVER,
    cartonBatches: model.cartonBatches ? wholeBetween(model.cartonBatches, random) : 1,
    season: draw(model.season),
    slowStart: draw(model.slowStart),
    lotDays: model.lotDays ? draw(model.lotDays) : null,
    lotSd: model.lotSd,
    mixes: model.mixes,
    skips: draw(model.skips),
    skipDays: model.skipDays ?? NEVER,
  };
}
