// The judgement of a line: every jar's score against the line's early batches, each batch by the median of its comparable
// jars, the trend over them and the word for it, and what else could explain a fall.
import { delayPerDay, type DelayPerDay, type WaitAndSet } from '../growth/storage';
import { batchMedian, type ScoredRange } from './batch-median';
import { batchesOf, earlyBatches, type BatchEvidence } from './comparable';
import {
  BATCHES_PER_COEFFICIENT,
  correctionsOf,
  lackedWarmth,
  missingHourCoefficient,
  type Coefficient,
  type CorrectionInput,
} from './corrections';
import { siblingEffects, treatmentOf, type Effect, type UsualTreatment } from './effects';
import { madeName, madeOtherwise } from './made-otherwise';
import { mean, median } from './medians';
import { scoreJar, SCORE_RULES } from './score';
import { storedShift } from './level/stored-seed';
import { LineLevel, type LevelGroup, type LevelLook } from './level/line-level';
import { fallOf, rateOf, type Fall, type Rate } from './fall';
import { StandingWalk } from './standing';
import { suspectsOf } from './suspects';
import { trendOf, TREND_RULES, type Trend, type TrendPoint, type TrendRules } from './trend';
import type { JarEvidence, JarScore } from './jar-evidence';
import { measuresOf, usualOf, usualOfAll, type Usual } from './usual';
import type { Suspect, Standing } from '../shapes/vigour-codes';

export interface JudgedBatch extends BatchEvidence {
  /** Median of its comparable jars, corrected; null where none could be compared. */
  readonly points: number | null;
  /** The same before corrections. */
  readonly uncorrected: number | null;
  readonly scores: readonly JarScore[];
  /** What was said of the line when this was its newest batch. */
  readonly standing: Standing;
}

export interface LineJudgement {
  readonly line: number;
  readonly batches: readonly JudgedBatch[];
  readonly usual: Usual;
  readonly usualTreatment: UsualTreatment;
  readonly effects: readonly Effect[];
  readonly perMissingHour: Coefficient;
  /** Delay a day in the fridge; null with too few batches to learn it from. */
  readonly perDay: DelayPerDay | null;
  readonly trend: Trend | null;
  /** The posterior of its batches' levels, and what it says of the newest that could be compared. */
  readonly level: LineLevel;
  readonly look: LevelLook | null;
  /** Log odds of a lasting fall from which that batch would have had it called. */
  readonly calledFrom: number;
  readonly standing: Standing;
  /** Index in `batches` of the one at which slipping or worn out was first said. */
  readonly firstCalled: number | null;
  /** How it came down, where it is called; `at` is an index in `batches`. */
  readonly fall: Fall | null;
  /** How fast it gains or loses: the one rate that is said and drawn; null with too few batches. */
  readonly rate: Rate | null;
  /** Level of its early batches on the scale of all the keeper's lines (75 is usual there); null with one line. */
  readonly startedAt: number | null;
  readonly suspects: readonly Suspect[];
  /** Treatments whose effect can't be told from the culture's: no plain sibling. */
  readonly blocked: readonly string[];
  readonly rules: TrendRules;
}

/** Scores of the jars that speak for a batch, by label. */
export function countedIn({ comparable, scores }: JudgedBatch): JarScore[] {
  const counted = new Set(comparable);
  return scores
    .filter(({ jar }) => counted.has(jar))
    .toSorted((a, b) => a.jar.label.localeCompare(b.jar.label));
}

/** Jars of a line's early batches, by batch: what its baseline and the keeper's usual are made of. */
export const earlyOf = (line: number, jars: readonly JarEvidence[]): readonly (readonly JarEvidence[])[] =>
  earlyBatches(batchesOf(line, jars).batches).map(({ comparable }) => comparable);

/** What is usual of all lines a keeper has: their early batches together. */
export const keepersUsual = (lines: readonly number[], jars: readonly JarEvidence[]): Usual =>
  usualOfAll(lines.flatMap((line) => earlyOf(line, jars)));

/** A pH unit at the early check counts as much as this many doublings of the set time: the scale of the score. */
const DOUBLINGS_A_PH = SCORE_RULES.pointsPer['early pH'] / SCORE_RULES.pointsPer['set time'];

/** Waiting of a seed beside how fast its jar set: by its set time, else by the early pH put on the scale of set times. */
function waits(batches: readonly BatchEvidence[], usual: Usual): WaitAndSet[] {
  return batches.flatMap(({ comparable }) =>
    comparable.flatMap((jar) => {
      const seen = measuresOf(jar);
      const early = seen['early pH'];
      const byPh =
        early === null
          ? null
          : usual['set time'].value * 2 ** (DOUBLINGS_A_PH * (early - usual['early pH'].value));
      const setHours = seen['set time'] ?? byPh;
      const { seedStorage } = jar;
      if (!seedStorage || seedStorage.frozenDays > 0 || setHours === null) return [];
      return [{ fridgeDays: seedStorage.fridgeDays, setHours }];
    }),
  );
}

/** What was recorded of a batch's jars by the scores given, and the median of it. */
const rangesOf = (jars: readonly JarEvidence[], by: ReadonlyMap<JarEvidence, JarScore>): ScoredRange[] =>
  jars.flatMap((jar) => {
    const score = by.get(jar);
    return score ? [{ score: score.points, width: score.width }] : [];
  });
const medianOf = (jars: readonly JarEvidence[], by: ReadonlyMap<JarEvidence, JarScore>): number | null =>
  batchMedian(rangesOf(jars, by));

/** What a frozen seed does to its first batch, which never blames the line; null where no jar's seed had been frozen. */
function thawedShift(
  jars: readonly JarEvidence[],
  scores: ReadonlyMap<JarEvidence, JarScore>,
): LevelGroup['shift'] {
  const thawed = jars.find(({ seedStorage }) => (seedStorage?.freezings ?? 0) > 0);
  if (!thawed?.seedStorage) return undefined;
  const corrected = scores.get(thawed)?.corrections.some((one) => one.for.code === 'seed waited') ?? false;
  return storedShift(thawed.seedStorage, corrected);
}

/** What the posterior is told of a batch: its jars by the batch that seeded them, the larger group last. */
function groupsOf(
  batch: BatchEvidence,
  scores: ReadonlyMap<JarEvidence, JarScore>,
  treatment: string | null,
): LevelGroup[] {
  const groups = new Map<number | null, JarEvidence[]>();
  for (const jar of [...batch.comparable, ...batch.leftOut.map((left) => left.jar)])
    groups.set(jar.seedBatch, [...(groups.get(jar.seedBatch) ?? []), jar]);
  return [...groups]
    .map(([seedBatch, jars]): LevelGroup => {
      const compared = jars.filter((jar) => batch.comparable.includes(jar));
      return {
        batch: batch.batch,
        seedBatch,
        jars: rangesOf(compared, scores),
        treatment,
        shift: thawedShift(compared, scores),
      };
    })
    .toSorted((a, b) => a.jars.length - b.jars.length);
}

/** Where a line began, against what is usual of all the keeper's lines. @param early comparable jars of its early batches */
const startOf = (early: readonly (readonly JarEvidence[])[], keeper: Usual): number | null =>
  mean(
    early.flatMap(
      (list) =>
        batchMedian(
          list.flatMap((jar) => {
            const score = scoreJar(jar, keeper);
            return score ? [{ score: score.points, width: score.width }] : [];
          }),
        ) ?? [],
    ),
  );

/** Scores by the batch of their jars. */
function scoresByBatch(scores: ReadonlyMap<JarEvidence, JarScore>): ReadonlyMap<number, JarScore[]> {
  const byBatch = new Map<number, JarScore[]>();
  for (const score of scores.values()) {
    const list = byBatch.get(score.jar.batch);
    if (list) list.push(score);
    else byBatch.set(score.jar.batch, [score]);
  }
  return byBatch;
}

/** How batches came down; `at` is an index among them. */
function fallIn(batches: readonly JudgedBatch[]): Fall | null {
  const compared = batches.flatMap(({ points, generation }, at) =>
    points === null ? [] : [{ generation, score: points, at }],
  );
  const fall = fallOf(compared);
  return fall && { ...fall, at: compared[fall.at]?.at ?? 0 };
}

/** What a judgement is made in: a step for each batch, so that whoever has something else to answer may do it between. */
export type Steps<T> = Generator<undefined, T>;

/** All steps at once. */
export function atOnce<T>(steps: Steps<T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/**
 * Judges one line.
 * @param line key of its founding batch; @param jars evidence of all jars (those of other lines are passed over)
 * @param keeper what is usual of all the keeper's lines (keepersUsual); @param lineCount how many lines there are
 */
export const judgeLine = (...of: Parameters<typeof judgingLine>): LineJudgement => atOnce(judgingLine(...of));

/** The same a batch at a step. */
export function* judgingLine(
  line: number,
  jars: readonly JarEvidence[],
  keeper: Usual,
  lineCount: number,
  rules: TrendRules = TREND_RULES,
): Steps<LineJudgement> {
  const { batches: plain, usual: usualTreatment } = batchesOf(line, jars);
  const early = earlyBatches(plain).map(({ comparable }) => comparable);
  const usual = usualOf(early, keeper);
  const own = jars.filter((jar) => jar.lines.includes(line));
  const bare = own.flatMap((jar) => scoreJar(jar, usual) ?? []);
  const effects = siblingEffects(bare, usualTreatment);
  const { batches } = batchesOf(line, jars, effects);
  const compared = batches.filter(({ comparable }) => comparable.length > 0);
  const coefficients = Math.floor(compared.length / BATCHES_PER_COEFFICIENT);
  const perDay: DelayPerDay | null = coefficients >= 2 ? delayPerDay(waits(compared, usual)) : null;
  const barePoints = new Map(bare.map((score) => [score.jar, score]));
  const lacked = (jar: JarEvidence): number => lackedWarmth(jar, usual, perDay);
  const perMissingHour = missingHourCoefficient(
    compared.flatMap(({ comparable }) => {
      const points = medianOf(comparable, barePoints);
      return points === null ? [] : [{ missing: median(comparable.map(lacked)) ?? 0, points }];
    }),
  );
  const input: CorrectionInput = {
    usual,
    usualTreatment,
    effects,
    perMissingHour,
    perDay,
    usualSeedDays: median(early.flat().flatMap(({ seedStorage }) => seedStorage?.fridgeDays ?? [])),
  };
  const scores = new Map(
    own.flatMap((jar) => {
      const score = scoreJar(jar, usual, correctionsOf(jar, input));
      return score ? [[jar, score] as const] : [];
    }),
  );

  const otherwise = madeOtherwise(
    compared.map(({ batch, madeOn, comparable }) => ({ batch, madeOn, comparable, points: medianOf(comparable, scores) ?? 0 })),
  ); // prettier-ignore

  const byBatch = scoresByBatch(scores);

  const points: TrendPoint[] = [];
  const level = new LineLevel();
  const walk = new StandingWalk();
  let standing: Standing = 'too few batches to say';
  let trend: Trend | null = null;
  let newest: LevelLook | null = null;
  let firstCalled: number | null = null;
  const judged: JudgedBatch[] = [];
  for (const [index, batch] of batches.entries()) {
    yield;
    const score = medianOf(batch.comparable, scores);
    const changed = otherwise?.batches.includes(batch.batch) ? madeName(otherwise) : null;
    const look = level.add(groupsOf(batch, scores, batch.unlike ?? changed));
    if (score !== null && look !== null) {
      points.push({ generation: batch.generation, score });
      trend = trendOf(points, rules);
      standing = walk.next(trend, look);
      newest = look;
      if (!walk.called) firstCalled = null;
      else firstCalled ??= index;
    }
    judged.push({
      ...batch,
      points: score,
      uncorrected: medianOf(batch.comparable, barePoints),
      scores: byBatch.get(batch.batch) ?? [],
      standing,
    });
  }
  const fall = walk.called ? fallIn(judged) : null;
  return {
    line,
    batches: judged,
    usual,
    usualTreatment,
    effects: [...effects.values()],
    perMissingHour,
    perDay,
    trend,
    level,
    look: newest,
    calledFrom: walk.limit,
    standing,
    firstCalled,
    fall,
    rate: rateOf(trend, fall),
    startedAt: lineCount > 1 ? startOf(early, keeper) : null,
    ...suspectsOf(batches, effects, usualTreatment, lacked, otherwise),
    rules,
  };
}

/** Plain siblings of a jar: same seed, same hold, the line's usual treatment, seen and not spoiled. */
export const plainSiblings = (
  jar: JarEvidence,
  usualTreatment: UsualTreatment,
  jars: readonly JarEvidence[],
): JarEvidence[] =>
  jars.filter(
    (other) =>
      other !== jar &&
      other.batch === jar.batch &&
      other.hold === jar.hold &&
      other.seed === jar.seed &&
      treatmentOf(other, usualTreatment) === '' &&
      other.outcome !== null &&
      !other.spoiled,
  );
