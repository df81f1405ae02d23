// Shapes of the calls that bring in readings of a hold.
import { z } from 'zod';
import { Moment, Prose, Uid } from '../ledger/basics';

const why = Prose.nullable().default(null);
const draft = z.string().min(1).max(100).nullable().default(null);
const minutes = z.int().min(0);

/** Without its file, whose shape is the contract's own. */
export const BringInReadings = z.strictObject({
  hold: Uid,
  /** Where the probe stood. */
  where: z.enum(['air', 'bath', 'jar']),
  /** Which jar, where it stood in one that is kept. */
  jar: Uid.nullable().default(null),
  why,
  draft,
});

export const BroughtInReply = z.strictObject({
  /** null where all of it is there already. */
  act: Uid.nullable(),
  series: Uid,
  /** How many readings of the file count, and how many of the file are new. */
  readings: z.int().min(0),
  added: z.int().min(0),
  /** Rows of the file, the first being 1: impossible readings, and what can't be read. */
  leftOut: z.array(z.strictObject({ row: z.int().positive(), sentence: z.string() })),
  gaps: z.array(z.strictObject({ from: Moment, to: Moment, minutes: z.number() })),
  /** Where the readings stay, and how many minutes after the start; null where they never do. */
  settledAt: z.strictObject({ value: z.number(), unit: z.enum(['°C', '°F']) }).nullable(),
  minutesToSettle: minutes.nullable(),
  /** Of the probe, not of the jars. */
  minutesAbove45: minutes,
  /** Of what stood in the hold, which follows a probe outside it; null where the hold was not read. */
  warmHours: z.strictObject({ low: z.number(), mid: z.number(), high: z.number() }).nullable(),
  from: Moment,
  to: Moment,
  /** What was assumed of scale, days and clock, and what else was done. */
  says: z.array(z.string()),
});
