// Shapes of the calls that plan a batch and say what a hold asks for.
import { z } from 'zod';
import { SET_WORDS } from '../ledger/jar-fields';
import { Day, Line, Moment, Name, Prose, Uid } from '../ledger/basics';

const Time = z
  .string()
  .regex(/^(?:[01]\d|2[0-3]):[0-5]\d$/, { message: 'this is not a time written as 06:30' });
const mL = z.number().min(1).max(100_000);
const PerLitre = z.strictObject({
  name: Name,
  value: z.number().positive().max(1000),
  unit: z.enum(['g', 'mL']),
});

const Awake = z.strictObject({ from: Time, to: Time });
export const SaveAwake = Awake.extend({ why: Prose.nullable().default(null) });

const InUnit = z.strictObject({
  value: z.number().min(0).max(1e6),
  unit: z.enum(['g', 'mL', 'pieces', 'CFU']),
});
const JarToPlan = z.strictObject({
  vessel: Line.nullable().default(null),
  volume: mL,
  /** Seed by jar or product, in place of `seedFraction` and `pieces`. A gram of seed is taken as a mL. */
  seeds: z.array(z.strictObject({ source: Uid.nullable(), package: Uid.nullable(), amount: InUnit.nullable() })).max(50).nullable().default(null),
  /** Amounts of this jar, in place of `additions`. */
  additions: z.array(z.strictObject({ name: Name, amount: InUnit.nullable(), package: Uid.nullable() })).max(20).nullable().default(null),
  milkPackage: Uid.nullable().default(null),
}); // prettier-ignore

export const PlanBatch = z.strictObject({
  /** Length of the hold. */
  hours: z.number().min(1).max(96).default(36),
  /** When the keeper is awake; left out: as plan.awake has it, else 06:30 to 22:30. */
  awake: Awake.optional(),
  /** How full each jar will be, and what goes into it where that is told jar by jar. None: only starts are asked for. */
  jars: z.array(JarToPlan).max(60),
  /** Part of the final volume that is seed (3 tablespoons within a quart); 0 where it starts from pieces alone. */
  seedFraction: z.number().min(0).max(0.5).default(3 / 64),
  /** Pieces that go into each jar, and what all of them are declared to hold. */
  pieces: z.strictObject({ count: z.number().min(1).max(1e15), pastBestBefore: z.boolean().default(false) }).nullable().default(null),
  additions: z.array(PerLitre).max(20).default([]),
  milkAtHand: mL.nullable().default(null),
  /** Which seed will still serve after this day. */
  awayUntil: Day.nullable().default(null),
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
      /** How such jars of the keeper's came out, from the least firm of most to the firmest; null where there are too few. */
      expected: z.strictObject({ low: z.enum(SET_WORDS), high: z.enum(SET_WORDS), jars: z.int().positive() }).nullable(),
      /** In minor units of `currency`; null: not even its milk has a price. */
      cost: z.strictObject({ minor: z.int().nonnegative(), atLeast: z.boolean() }).nullable(),
    }),
  ),
  currency: z.string(),
  awake: Awake,
  /** What is kept and may seed, and whether it still serves after the day one is back; empty where none was asked for. */
  serves: z.array(z.strictObject({ id: Uid, name: z.string(), until: Day.nullable(), still: z.boolean() })),
  /** When to start and why, and the rest line by line. */
  says: z.strictObject({ start: z.string(), reason: z.string(), rest: z.array(z.string()) }),
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
