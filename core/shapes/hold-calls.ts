// Shapes of the calls about one hold: what it shows, what is done with the jars in it, and what today asks for.
import { z } from 'zod';
import { Line, Moment, Prose, Temperature, Uid } from '../ledger/basics';
import { SetWord } from '../ledger/records';
import { CAUTION_LEVELS } from './caution-codes';

const why = Prose.nullable().default(null);
const draft = z.string().min(1).max(100).nullable().default(null);
const count = z.int().min(0);
/** When it happened; null: now. */
const at = Moment.nullable().default(null);
const jars = z.array(Uid).min(1).max(60);

const HOLD_LOOKS = z.array(
  z.strictObject({
    what: z.enum(['look', 'take-out']),
    hours: z.number(),
    at: Moment,
    state: z.enum(['done', 'due', 'missed', 'to come']),
    lateMinutes: count,
  }),
);

const EARLY_SETS = ['loose', 'starting', 'set', 'not set'] as const;

/** What was seen at one look; null: not noted. */
const Seen = z.strictObject({
  set: z.enum(EARLY_SETS).nullable(),
  sour: z.boolean().nullable(),
  ph: z.number().min(0).max(14).nullable(),
});

const HoldJar = z.strictObject({
  id: Uid,
  label: z.string(),
  letter: z.string(),
  batch: Uid,
  /** Names of what was stirred in. */
  additions: z.array(z.string()),
  generation: z.int().positive(),
  atLeast: z.boolean(),
  setWord: SetWord.nullable(),
  outcomeKnown: z.boolean(),
  spoiled: z.boolean(),
  caution: z.enum(CAUTION_LEVELS).nullable(),
  /** Still in this hold. */
  inside: z.boolean(),
  /** In this hold, in order; null: as the hold itself. */
  stays: z.array(z.strictObject({ id: Uid, came: Moment.nullable(), went: Moment.nullable() })),
  /** What was noted at its last early look, and how many hours in. */
  look: Seen.extend({ hours: z.number().nullable(), at: Moment.nullable() }).nullable(),
});

const HoldSeries = z.strictObject({
  id: Uid,
  place: z.enum(['air', 'bath', 'jar']).nullable(),
  /** Label of the jar that the probe stood in. */
  jar: z.string().nullable(),
  /** Of the readings that count, as many as can be told apart in a drawing: seconds since 1970, and °C. */
  at: z.array(z.int()),
  c: z.array(z.number()),
  readings: count,
  leftOut: count,
  gaps: z.array(z.strictObject({ from: Moment, to: Moment, minutes: z.number() })),
});

export const HoldReply = z.strictObject({
  now: Moment,
  id: Uid,
  label: z.string(),
  batches: z.array(z.strictObject({ id: Uid, label: z.string() })),
  /** Minutes by which the keeper's clock was ahead of UTC while it ran. */
  offset: z.int(),
  began: Moment.nullable(),
  ended: Moment.nullable(),
  /** When it is planned to end. */
  ends: Moment.nullable(),
  /** Nobody ended it, and it is not so long past that it counts as forgotten. */
  runs: z.boolean(),
  planned: Temperature.nullable(),
  /** With what its newest run proves, in a sentence; null: no run is noted. */
  appliance: z.strictObject({ id: Uid, name: z.string(), says: z.string().nullable() }).nullable(),
  minutesLeft: z.int().nullable(),
  /** "24 h 50 min" large, and what goes with it. */
  title: z.string(),
  rest: z.string(),
  looks: HOLD_LOOKS,
  /** Hours of the look that can be noted now; null: none. */
  lookNow: z.strictObject({ hours: z.number(), says: z.string() }).nullable(),
  jars: z.array(HoldJar),
  /** Jars of its batches that never stood in it: they can still be put in. */
  others: z.array(z.strictObject({ id: Uid, label: z.string(), letter: z.string() })),
  interruptions: z.array(
    z.strictObject({
      id: Uid,
      what: z.enum(['power', 'heater', 'lid', 'other']),
      from: Moment.nullable(),
      to: Moment.nullable(),
      hours: z.number().nullable(),
      /** "Power cut", and the whole of it. */
      name: z.string(),
      says: z.string(),
    }),
  ),
  series: z.array(HoldSeries),
  /** What the readings amount to: of the probe in a jar, else in the bath, else in the air. null: fewer than two. */
  warmth: z
    .strictObject({
      says: z.string(),
      settledAt: z.number().nullable(),
      minutesToSettle: z.int().nullable(),
      minutesAbove45: count,
      warmHours: z.strictObject({ low: z.number(), mid: z.number(), high: z.number() }).nullable(),
      /** How it was worked out, a sentence each. */
      why: z.array(z.string()),
    })
    .nullable(),
});

export const HoldList = z.strictObject({
  holds: z.array(
    z.strictObject({
      id: Uid,
      label: z.string(),
      began: Moment.nullable(),
      runs: z.boolean(),
      says: z.string(),
    }),
  ),
});

/** Takes jars out; with the last of them the hold ends. null: all that stand in it. */
export const TakeOut = z.strictObject({ hold: Uid, jars: jars.nullable().default(null), at, why, draft });
/** Puts jars into a hold later than the others. */
export const PutIn = z.strictObject({ hold: Uid, jars, at, why, draft });
/** Moves jars to another hold; null: to a new one with the same plan. */
export const MoveJars = z.strictObject({ hold: Uid, jars, to: Uid.nullable().default(null), at, why, draft });
/** Warmth that failed. With `id`, what is known of it by now: "the power is back". */
export const Interrupt = z.strictObject({
  hold: Uid,
  id: Uid.nullable().default(null),
  what: z.enum(['power', 'heater', 'lid', 'other']),
  began: Moment.nullable().default(null),
  ended: Moment.nullable().default(null),
  hours: z.number().min(0).max(1000).nullable().default(null),
  why,
  draft,
});
/** One look at jars of a hold: what was seen of each. */
export const NoteLook = z.strictObject({
  hold: Uid,
  at,
  jars: z
    .array(Seen.extend({ jar: Uid }))
    .min(1)
    .max(60),
  why,
  draft,
});
/** A reading by hand. */
export const NoteReading = z.strictObject({
  hold: Uid,
  where: z.enum(['air', 'bath', 'jar']),
  jar: Uid.nullable().default(null),
  at,
  /** °C. */
  c: z.number().min(-90).max(150),
  why,
  draft,
});

export const TodayReply = z.strictObject({
  now: Moment,
  /** What is due first, then what is to come; none: nothing asks for anything. */
  items: z.array(
    z.strictObject({
      /** Lasting: the same thing asked for again has the same. */
      id: z.string(),
      kind: z.enum([
        'look',
        'take-out',
        'in warmth',
        'eat by',
        'seed by',
        'check',
        'order pieces',
        'reserve',
      ]),
      due: z.boolean(),
      lateMinutes: count,
      title: z.string(),
      rest: z.string(),
      /** Where it is done: a hold, what is kept, a tool, or a source. */
      of: z.strictObject({ kind: z.enum(['hold', 'kept', 'tool', 'source']), id: Line }),
    }),
  ),
});
