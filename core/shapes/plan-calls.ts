// Shapes of the calls that plan a batch and say what a hold asks for.
import { z } from 'zod';
import { Day, Line, Moment, Name, Uid } from '../ledger/basics';

const Time = z
  .string()
  .regex(/^(?:[01]\d|2[0-3]):[0-5]\d$/, { message: 'this is not a time written as 06:30' });
const mL = z.number().min(1).max(100_000);
const PerLitre = z.strictObject({
  name: Name,
  value: z.number().positive().max(1000),
  unit: z.enum(['g', 'mL']),
});

export const PlanBatch = z.strictObject({
  /** Length of the hold. */
  hours: z.number().min(1).max(96).default(36),
  /** When the keeper is awake. */
  awake: z.strictObject({ from: Time, to: Time }).default({ from: '06:30', to: '22:30' }),
  /** How full each jar will be. */
  jars: z.array(z.strictObject({ vessel: Line.nullable().default(null), volume: mL })).min(1).max(60),
  /** Part of the final volume that is seed (3 tablespoons within a quart); 0 where it starts from pieces alone. */
  seedFraction: z.number().min(0).max(0.5).default(3 / 64),
  /** Pieces that go into each jar, and what all of them are declared to hold. */
  pieces: z.strictObject({ count: z.number().min(1).max(1e15), pastBestBefore: z.boolean().default(false) }).nullable().default(null),
  additions: z.array(PerLitre).max(20).default([]),
  milkAtHand: mL.nullable().default(null),
  cartons: z.array(z.strictObject({ kind: z.enum(['milk', 'half-and-half']), openedOn: Day })).max(20).default([]),
}); // prettier-ignore

const Range = z.strictObject({ low: z.number(), mid: z.number(), high: z.number() });
export const PlanReply = z.strictObject({
  /** Any start within one of these puts the looks at 12 and 24 h and the take-out into waking hours. */
  starts: z.array(z.strictObject({ from: Moment, to: Moment, takeOut: Moment })),
  jars: z.array(
    z.strictObject({
      vessel: z.string().nullable(),
      volume: z.number(),
      seed: z.number(),
      milk: z.number(),
      additions: z.array(PerLitre.extend({ value: z.number() })),
      /** null: nothing that seeds it was said. */
      doublings: Range.nullable(),
    }),
  ),
  total: z.strictObject({ milk: z.number(), seed: z.number() }),
  /** How many of the jars the milk at hand fills; null where that was not said. */
  filled: z.int().min(0).nullable(),
  short: z.array(z.strictObject({ what: z.string(), needed: z.number(), has: z.number(), unit: z.enum(['g', 'mL']) })),
  /** Part of such jars that come out uneven or do not set. */
  uneven: z.strictObject({ low: z.number().nullable(), mid: z.number(), high: z.number().nullable(), basis: z.enum(['your own record', 'a stated belief']) }),
  warnings: z.array(z.string()),
}); // prettier-ignore

export const HoldsReply = z.strictObject({
  now: Moment,
  holds: z.array(
    z.strictObject({
      hold: Uid,
      label: z.string(),
      began: Moment,
      ends: Moment.nullable(),
      /** Below 0 once it is over; null where nobody said when it ends. */
      minutesLeft: z.int().nullable(),
      looks: z.array(z.strictObject({ what: z.enum(['look', 'take-out']), hours: z.number(), at: Moment, state: z.enum(['done', 'due', 'missed', 'to come']), lateMinutes: z.int().min(0) })),
    }),
  ),
}); // prettier-ignore

export const CalendarReply = z.strictObject({
  /** A calendar file (RFC 5545) of what is to come. */
  ics: z.string(),
  events: z.array(z.strictObject({ uid: z.string(), at: Moment, summary: z.string() })),
});
