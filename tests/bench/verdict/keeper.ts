// One line of a simulated keeper under one way of choosing: what truly happens, and what of it is written down. Whatever a
// policy decides, the calendar is the same (common random numbers): a cold night falls on the same batch under all of them.
import { normal, streamOf, type KeeperTruth, type Random } from './models';

/** A jar as it was written down: points, and the width of the range that the record leaves open. */
export interface SeenJar {
  readonly score: number;
  readonly width: number;
  readonly weak: boolean;
  readonly firm: boolean;
}

/** A batch as the keeper knows it. Places count batches of this line from 0, ended cultures included. */
export interface SeenBatch {
  /** Place of the batch that seeded it; -1: started from sources. */
  readonly parent: number;
  readonly day: number;
  readonly generation: number;
  readonly jars: readonly SeenJar[];
  readonly discarded: number;
  /** Of those the ones with a sign of spoiling; the others did not set. */
  readonly spoiled: number;
  /** Days in the fridge and the freezer of what seeded it. */
  readonly fridgeDays: number;
  readonly frozenDays: number;
  /** A cold night or a power cut that was written down. */
  readonly cold: boolean;
  /** What was stirred in, by number; 0 is nothing. */
  readonly fibre: number;
}

interface TrueBatch {
  readonly level: number;
  /** Level at which this culture was started. */
  readonly early: number;
  readonly loses: boolean;
  readonly generation: number;
  readonly hidden: number;
  readonly takenOver: boolean;
  readonly usable: boolean;
}
export type Hidden = TrueBatch;

/** What could seed the next batch. */
export interface Candidate {
  readonly place: number;
  readonly fridgeDays: number;
  readonly frozenDays: number;
  /** Chance of a weak jar that was said of it, by a policy that says one. */
  readonly said?: number;
}

/** A choice of a policy: a candidate, or null for a fresh start. */
export type Choose = (state: {
  readonly seen: readonly SeenBatch[];
  readonly candidates: readonly Candidate[];
  /** For the oracle alone. */
  readonly hidden: readonly Hidden[];
}) => Candidate | null;

export interface Tally {
  /** In jars' worth of money: what was spent, and the good jars' worth that came of it. */
  spent: number;
  worth: number;
  jars: number;
  weak: number;
  discarded: number;
  starts: number;
  needless: number;
  unplanned: number;
  /** Seeds, jars and weak jars by the chance that was said of them, in steps of five in 100. */
  readonly said: Calibration;
}
/** Said chances: so many seeds, their sum, jars that came of them, and weak ones. */
export type Calibration = { seeds: number; sum: number; jars: number; weak: number }[];
export const SAID_STEP = 0.05;
const emptyCalibration = (): Calibration => Array.from({ length: Math.round(1 / SAID_STEP) }, () => ({ seeds: 0, sum: 0, jars: 0, weak: 0 })); // prettier-ignore
export const emptyTally = (): Tally => ({ spent: 0, worth: 0, jars: 0, weak: 0, discarded: 0, starts: 0, needless: 0, unplanned: 0, said: emptyCalibration() }); // prettier-ignore

const between = ([low, high]: readonly [number, number], random: Random): number =>
  low + (high - low) * random();
const WORD_STEP = 20;
const wordOf = (score: number): number => Math.min(4, Math.max(0, Math.floor(score / WORD_STEP)));
/** Runny and soft. */
export const WEAK_BELOW = 40;

interface FibreDay {
  readonly number: number;
  readonly effect: number;
}
/** What is stirred in by batch of the calendar: changes come every few batches, every second stretch is plain. */
function fibresOf(truth: KeeperTruth, line: number): FibreDay[] {
  const { fibreChanges } = truth;
  if (!fibreChanges) return Array.from({ length: truth.batches }, () => ({ number: 0, effect: 0 }));
  const random = streamOf(truth.seed, truth.number, line, 2);
  const kinds = Array.from({ length: 4 }, (_, i) => ({
    number: i + 1,
    effect:
      random() < truth.fibreWrecks ? -between(truth.fibreWreck, random) : truth.fibreSd * normal(random),
  }));
  const days: FibreDay[] = [];
  for (let stretch = 0; days.length < truth.batches; stretch++) {
    const kind = stretch % 2 === 0 ? undefined : kinds[Math.floor(random() * kinds.length)];
    const length = Math.round(between(fibreChanges, random));
    for (let i = 0; i < length; i++) days.push(kind ?? { number: 0, effect: 0 });
  }
  return days;
}

/** Day of each batch: so many days apart, and now and then some weeks more. */
function daysOf(truth: KeeperTruth, line: number): number[] {
  const random = streamOf(truth.seed, truth.number, line, 5);
  let skipped = 0;
  return Array.from({ length: truth.batches }, (_, place) => {
    const [skips, size] = [random() < truth.skips, random()];
    if (place > 0 && skips) skipped += truth.skipDays[0] + size * (truth.skipDays[1] - truth.skipDays[0]);
    return place * truth.days + skipped;
  });
}

/** What the lot of pieces that a line is started from on a day does to it; null where lots are alike. */
function lotOf(truth: KeeperTruth, day: number): { readonly level: number; readonly loses: boolean } | null {
  if (truth.lotDays === null) return null;
  const random = streamOf(truth.seed, truth.number, Math.floor(day / truth.lotDays), 6);
  return { level: truth.lotSd * normal(random), loses: random() < truth.losing };
}

/** What a day of the year and the carton in use take from a batch, and from it alone. */
function passingOf(truth: KeeperTruth, line: number, place: number, day: number): number {
  const random = streamOf(truth.seed, truth.number, line, Math.floor(place / truth.cartonBatches), 7);
  const carton = random() < truth.poorCarton ? between(truth.cartonEffect, random) : 0;
  return carton - truth.season * Math.sin((2 * Math.PI * day) / 365 + truth.number);
}

/** Everything of one batch that the calendar decides. */
function calendarOf(truth: KeeperTruth, line: number, place: number, day: number) {
  const lot = lotOf(truth, day);
  const random = streamOf(truth.seed, truth.number, line, place, 3);
  const drawn = {
    shared: normal(random),
    cold: random() < truth.coldChance ? between(truth.coldEffect, random) : 0,
    cut: random() < truth.powerCutChance ? between(truth.coldEffect, random) : 0,
    noted: random() < truth.coldNoted,
    start: between(truth.startLevel, random),
    loses: random() < truth.losing,
    first: between(truth.firstEffect, random),
    sudden: random() < truth.suddenChance ? between(truth.sudden, random) : 0,
    lasts: random() < truth.inherited,
    becomesHidden: random() < truth.hiddenInBatches,
    wrongSeed: random() < truth.wrongSeed ? random() : null,
    mixes: random() < truth.mixes,
    passing: passingOf(truth, line, place, day),
    jars: streamOf(truth.seed, truth.number, line, place, 4),
  };
  return lot ? { ...drawn, start: Math.max(30, drawn.start + lot.level), loses: lot.loses } : drawn;
}

interface Made {
  readonly batch: TrueBatch;
  readonly seen: SeenBatch;
  readonly worth: number;
  readonly weak: number;
  readonly discarded: number;
}

/** Two seeds in one jar: level and share are the mean, it loses where either does. */
const mixed = (one: TrueBatch, other: TrueBatch): TrueBatch => ({
  ...one,
  level: (one.level + other.level) / 2,
  loses: one.loses || other.loses,
  hidden: (one.hidden + other.hidden) / 2,
});

/** What the culture of a batch is, by that of its seed. @param weeks that the seed stood in the fridge */
function cultureOf(
  truth: KeeperTruth,
  from: TrueBatch | null,
  weeks: number,
  day: ReturnType<typeof calendarOf>,
) {
  if (!from)
    return {
      level: day.start,
      early: day.start,
      loses: day.loses,
      generation: 1,
      hidden: 0,
      takenOver: false,
    };
  const generation = from.generation + 1;
  let { level } = from;
  if (from.loses && generation >= truth.lossFrom)
    level = Math.max(Math.min(level, truth.floor), level - truth.loss);
  level = Math.max(0, level - truth.lossAWeek * weeks);
  if (day.sudden > 0 && day.lasts) level = Math.max(0, level - day.sudden);
  const takenOver = generation > truth.takeoverAfter;
  if (takenOver && !from.takenOver) level += truth.takeoverScore;
  const hidden = from.hidden > 0 ? Math.min(1, from.hidden * truth.hiddenGrowth) : day.becomesHidden ? truth.hiddenShare : 0; // prettier-ignore
  return { level, early: from.early, loses: from.loses, generation, hidden, takenOver };
}

function makeBatch(
  truth: KeeperTruth,
  line: number,
  place: number,
  chosen: Candidate | null,
  all: readonly TrueBatch[],
  shared: number,
  fibre: FibreDay,
  madeOn: number,
): Made {
  const day = calendarOf(truth, line, place, madeOn);
  // Now and then the jar that was written down is not the one that was used.
  const other = all.findLastIndex((one, at) => one.usable && at !== chosen?.place);
  const mixedUp = chosen !== null && day.wrongSeed !== null && other >= 0;
  const used = chosen === null ? null : (all[mixedUp ? other : chosen.place] ?? null);
  const beside = used !== null && day.mixes ? all[other] : undefined;
  const from = used && beside ? mixed(used, beside) : used;
  const culture = cultureOf(truth, from, (chosen?.fridgeDays ?? 0) / 7, day);
  const lacks = culture.generation === 1 ? 0 : truth.slowStart / 2 ** (culture.generation - 2);
  const tenths = chosen === null ? 0 : chosen.fridgeDays / truth.tenfoldDays + (chosen.frozenDays > 0 ? truth.freezeStep + chosen.frozenDays / 7 / truth.tenfoldWeeksFrozen : 0); // prettier-ignore
  const expected =
    culture.level + shared - Math.max(day.cold, day.cut) - (day.lasts ? 0 : day.sudden) + fibre.effect -
    tenths * truth.pointsATenfold - (from ? 0 : day.first) - lacks - day.passing; // prettier-ignore
  const jarSd = truth.jarSd * (from ? 1 : 2);
  const allSpoil = culture.hidden > 0 && culture.hidden >= truth.hiddenSeenAt;
  const jars: SeenJar[] = [];
  let [worth, weak, discarded, spoiled] = [0, 0, 0, 0];
  for (let i = 0; i < truth.jars; i++) {
    const random = day.jars;
    const score = expected + jarSd * normal(random);
    const isSpoiled = random() < truth.seenInJars || allSpoil;
    const notSet = random() < (from ? truth.laterNotSet : truth.firstNotSet);
    const [forget, off, up, error] = [random(), random(), random(), normal(random)];
    if (isSpoiled || notSet) {
      discarded++;
      if (isSpoiled) spoiled++;
      continue;
    }
    const isWeak = score < WEAK_BELOW;
    worth += isWeak ? 0.5 : 1;
    if (isWeak) weak++;
    if (forget < truth.forgotten * (isWeak ? 1 / truth.goodForgottenMore : 1)) continue;
    const word = Math.min(4, Math.max(0, wordOf(score) + (off < truth.wordOff ? (up < 0.5 ? -1 : 1) : 0)));
    const said = { weak: word < 2, firm: word > 2 };
    jars.push(
      truth.wordsOnly
        ? { score: word * WORD_STEP + WORD_STEP / 2, width: WORD_STEP, ...said }
        : { score: score + 4 * error, width: 0, ...said },
    );
  }
  return {
    batch: { ...culture, usable: spoiled === 0 && 2 * discarded < truth.jars },
    seen: {
      parent: chosen?.place ?? -1,
      day: madeOn,
      generation: culture.generation,
      jars,
      discarded,
      spoiled,
      fridgeDays: chosen?.fridgeDays ?? 0,
      frozenDays: chosen?.frozenDays ?? 0,
      cold: day.noted && Math.max(day.cold, day.cut) > 0,
      fibre: fibre.number,
    },
    worth,
    weak,
    discarded,
  };
}

/** Cubes older than this are thrown away (days). */
const FROZEN_AT_MOST = 180;

/** What may be used: the same safety stops for every policy. */
function candidatesOf(
  truth: KeeperTruth,
  all: readonly TrueBatch[],
  seen: readonly SeenBatch[],
  today: number,
): Candidate[] {
  const found: Candidate[] = [];
  for (let place = all.length - 1; place >= 0; place--) {
    const waited = today - (seen[place]?.day ?? 0);
    if (waited > truth.shelfDays) break;
    if (all[place]?.usable) found.push({ place, fridgeDays: waited, frozenDays: 0 });
  }
  if (truth.reserve) {
    const place = seen.findLastIndex(({ generation }, at) => generation === 2 && (all[at]?.usable ?? false));
    const frozenDays = place < 0 ? 0 : today - (seen[place]?.day ?? 0);
    if (place >= 0 && frozenDays <= FROZEN_AT_MOST && frozenDays > truth.shelfDays)
      found.push({ place, fridgeDays: 0, frozenDays });
  }
  return found;
}

/** Lives one line of a keeper from its first start to the end of the years. */
export function liveLine(truth: KeeperTruth, line: number, choose: Choose, needlessWithin: number): Tally {
  const tally = emptyTally();
  const all: TrueBatch[] = [];
  const seen: SeenBatch[] = [];
  const fibres = fibresOf(truth, line);
  const days = daysOf(truth, line);
  let shared = 0;
  for (const [place, today] of days.entries()) {
    const fresh = calendarOf(truth, line, place, today).shared;
    const rho = place === 0 ? 0 : truth.autocorrelation;
    shared = rho * shared + Math.sqrt(1 - rho * rho) * truth.batchSd * fresh;
    const candidates = candidatesOf(truth, all, seen, today);
    const chosen = candidates.length === 0 ? null : choose({ seen, candidates, hidden: all });
    if (chosen === null) {
      tally.spent += truth.startCost;
      if (place > 0) tally.starts++;
      if (place > 0 && candidates.length === 0) {
        tally.unplanned++;
        tally.spent += truth.unplanned;
      }
      const best = candidates.map((one) => all[one.place]).filter((one) => one !== undefined);
      if (best.some(({ level, early, hidden }) => hidden === 0 && level >= early - needlessWithin))
        tally.needless++;
    }
    const fibre = fibres[place] ?? { number: 0, effect: 0 };
    const made = makeBatch(truth, line, place, chosen, all, shared, fibre, today);
    all.push(made.batch);
    seen.push(made.seen);
    tally.spent += truth.jars * (truth.jarCost + (fibre.number > 0 ? truth.fibreCost : 0));
    tally.worth += made.worth;
    tally.jars += truth.jars;
    tally.weak += made.weak;
    tally.discarded += made.discarded;
    const bin = chosen?.said === undefined ? undefined : tally.said[Math.min(tally.said.length - 1, Math.floor(chosen.said / SAID_STEP))]; // prettier-ignore
    if (bin && chosen?.said !== undefined) {
      bin.seeds++;
      bin.sum += chosen.said;
      bin.jars += truth.jars - made.discarded;
      bin.weak += made.weak;
    }
  }
  // In jars of this keeper's, so that dear milk does not outweigh the rest.
  tally.spent /= truth.jarCost;
  return tally;
}
