// What judgement replies, as zod shapes for the table of calls. Scores are 0 to 100 and say nothing about safety.
import { z } from 'zod';
import { Day, Uid } from '../ledger/basics';
import { SetWord } from '../ledger/records';
import { Figure, Why } from './why';
import { CAUTION_LEVELS } from './caution-codes';
import { DISCARDS } from './safety-codes';
import { PART_NAMES, STANDINGS } from './vigour-codes';

const points = z.number();
const score = z.number().min(0).max(100);
const count = z.int().nonnegative();
const StandingReply = z.enum(STANDINGS);

/** That it is set aside, or descends from a jar that is, in words; null where neither. */
const HeldReply = z.string().nullable();

const LineBatchReply = z.strictObject({
  batch: Uid,
  label: z.string(),
  madeOn: Day.nullable(),
  generation: z.int().positive(),
  /** Median of its comparable jars, corrected, 0 to 100; null where none could be compared. */
  score: score.nullable(),
  /** The same on the line's own scale, not cut off: what the trend runs on, and before corrections. */
  points: points.nullable(),
  uncorrected: points.nullable(),
  /** The first batch of the line: never compared. */
  first: z.boolean(),
  /** How it came out: the median set word of its jars that were seen; null where none was noted. */
  setWord: SetWord.nullable(),
  /** Every jar of it is spoiled. */
  spoiled: z.boolean(),
  /** What was said of the line when this was its newest batch. */
  standing: StandingReply,
  jars: z.array(z.strictObject({ jar: Uid, label: z.string(), score, low: score, high: score, asItCame: score, compared: z.boolean(), held: HeldReply })),
  /** Which jars its score is the median of, and by how much each counted; which were left out. */
  says: z.string(),
  leftOut: z.array(z.strictObject({ jar: Uid, label: z.string(), reason: z.string() })),
}); // prettier-ignore

export const LineJudgementReply = z.strictObject({
  line: Uid,
  name: z.string(),
  standing: StandingReply,
  sentence: z.string(),
  /** Of a slipping or worn-out line: since when it has come down, how, and from what, if something may be behind it. */
  since: z.string().nullable(),
  /** Each a sentence, the most telling first. */
  reasons: z.array(z.string()),
  batches: z.array(LineBatchReply),
  /** How many of them can be compared. */
  comparable: count,
  /**
   * Points a generation, with the 90 % interval: since it began to fall where it falls with each generation, else over its latest
   * batches (Theil–Sen); null with too few batches.
   */
  slope: points.nullable(),
  slopeLow: points.nullable(),
  slopeHigh: points.nullable(),
  /** Level of the early batches, spread of a batch about the line, and how far the latest stand below. */
  baseline: points.nullable(),
  spread: points.nullable(),
  drop: points.nullable(),
  /** Running mean below which the level alone raises the alarm. */
  lowerLimit: points.nullable(),
  running: z.array(points),
  /** The batch at which slipping or worn out was first said. */
  calledAt: Uid.nullable(),
  /** Level of its early batches among all the keeper's lines; null where there is no other. */
  startedAt: points.nullable(),
  /** How a line that was called came down: no slope is drawn across one drop. null: of any other line, or where it can't be told. */
  cameDown: z.enum(['at once', 'with each generation']).nullable(),
  /** The first batch below: the one day since which it is said to have come down. */
  cameDownAt: Uid.nullable(),
  suspects: z.array(z.string()),
  /** Additions or milks that can't be told from the culture. */
  blocked: z.array(z.string()),
  effects: z.array(z.strictObject({ name: z.string(), points, error: points, sets: count })),
  why: Why,
  safety: z.string(),
  model: z.strictObject({ version: z.int(), parameters: z.record(z.string(), z.union([z.number(), z.array(z.number())])) }),
}); // prettier-ignore
export type LineJudgementReply = z.infer<typeof LineJudgementReply>;

export const JarJudgementReply = z.strictObject({
  jar: Uid,
  label: z.string(),
  line: Uid.nullable(),
  /** null where there is nothing to go by, or the jar is spoiled. */
  score: score.nullable(),
  low: score.nullable(),
  high: score.nullable(),
  sentence: z.string(),
  reasons: z.array(z.string()),
  parts: z.array(z.strictObject({ name: z.enum(PART_NAMES), points, weight: z.number(), says: z.string() })),
  missing: z.array(z.enum(PART_NAMES)),
  corrections: z.array(z.strictObject({ name: z.string(), points, says: z.string() })),
  /** Why it does not speak for its batch; null where it does. */
  leftOut: z.string().nullable(),
  /** Why it is neither food nor seed, and the gravest caution that stands; null where neither. */
  discard: z.enum(DISCARDS).nullable(),
  caution: z.enum(CAUTION_LEVELS).nullable(),
  /** That it is set aside itself, and why, in a sentence; null where it isn't. */
  onHold: z.string().nullable(),
  /** That its way back runs through a set-aside jar, in a sentence; null where it doesn't or it is set aside itself. */
  descendsFromHeld: z.string().nullable(),
  /** What speaks against it as a seed beside its cautions, a sentence each: its own hold, notes, and its way back. */
  asSeed: z.array(z.string()),
  why: Why.nullable(),
  /** Of its hold and its seed: hours held, warm hours, minutes above 45 °C, count and delay of the seed. */
  figures: z.array(Figure),
  safety: z.string(),
}); // prettier-ignore
export type JarJudgementReply = z.infer<typeof JarJudgementReply>;
