// What the calls of the shelf take and reply, as zod shapes for the table of calls.
import { z } from 'zod';
import { Amount, Day, Line, Moment, Prose, Uid } from '../ledger/basics';
import { SET_WORDS } from '../ledger/jar-fields';
import { DISCARDS, GONE_WORDS } from './safety-codes';
import { CAUTION_LEVELS } from './caution-codes';

const days = z.int().min(1).max(3650);
/** Days that things keep; each can be changed. */
const Limits = z.strictObject({
  eatFridge: days, eatOpened: days, eatThawed: days, eatFrozen: days, eatGiven: days, seedFridge: days, seedFreezer: days,
}); // prettier-ignore

/**
 * Where a thing belongs: 'eat' in order; 'seed' kept back on purpose; 'past' its day; 'warm' not to be touched yet; 'aside' not
 * food and not seed; 'discard' to be thrown out.
 */
export const SHELF_GROUPS = ['eat', 'seed', 'past', 'warm', 'aside', 'discard'] as const;
export type ShelfGroup = (typeof SHELF_GROUPS)[number];

/** A last day. `on` null: nobody noted when it was thawed. */
const ByDay = z.strictObject({
  on: Day.nullable(),
  because: z.enum([
    'unopened',
    'opened',
    'opened, day not noted',
    'thawed',
    'thawed, day not noted',
    'frozen',
  ]),
  /** It lies before today. */
  past: z.boolean(),
  says: z.string(),
});

/** What may be done with it by its one call each; the others are refused. */
const SHELF_VERBS = ['open', 'eat', 'give', 'freeze', 'thaw', 'discard', 'keep'] as const;
export type ShelfVerb = (typeof SHELF_VERBS)[number];

const Item = z.strictObject({
  /** Of the jar, or of what was kept apart of it. */
  id: Uid,
  kind: z.enum(['jar', 'portion']),
  jar: Uid,
  batch: Uid,
  /** The jar's label, and what the thing itself is called: "12 cubes of 30 Nov a". */
  label: z.string(),
  name: z.string(),
  madeOn: Day.nullable(),
  /** Days since the jar was made. */
  age: z.int().nullable(),
  place: z.enum(['warmth', 'fridge', 'freezer', 'dried']),
  /** In the order in which it should be eaten: `eat`, then what is kept for seed, past its day, in warmth, set aside, to be discarded. */
  group: z.enum(SHELF_GROUPS),
  form: z.enum(['jar', 'pot', 'cubes', 'flakes']),
  /** Deepest. */
  generation: z.int().positive(),
  atLeast: z.boolean(),
  setWord: z.enum(SET_WORDS).nullable(),
  opened: z.strictObject({ on: Day.nullable(), by: z.enum(['opened', 'eaten', 'seed', 'given', 'kept apart']) }).nullable(),
  thawed: z.boolean(),
  /** It was kept for seed, unopened. */
  reserve: z.boolean(),
  left: z.strictObject({
    amount: z.strictObject({ value: z.number().min(0), unit: z.enum(['mL', 'g']) }).nullable(),
    pieces: z.number().min(0).nullable(),
    /** From 0 to 1 of what it held; null where that can't be told. */
    share: z.number().min(0).max(1).nullable(),
    says: z.string(),
  }),
  /** Null where it is no food, in warmth or dried. */
  eatBy: ByDay.nullable(),
  /** The day by which it is best used; `until`: up to which it may be used at all. Null where it is no seed, in warmth or dried. */
  seedBy: ByDay.extend({ until: Day.nullable() }).nullable(),
  /** When it comes out of warmth; null where it is not in it, or nobody said. */
  outAt: Moment.nullable(),
  lines: z.array(z.string()),
  /** As declared at the start, not tested since. */
  strains: z.array(z.string()),
  /** What it alone still carries: "22 Apr b is the last that carries line Heron …" */
  lastOf: z.array(z.string()),
  /** Lines of which the verdict names it as the next seed. */
  nextSeedOf: z.array(z.string()),
  /** Lines that have nothing to fall back on, of which this could be kept as the reserve. */
  reserveOf: z.array(z.string()),
  /** Nobody has said since it came out that it is still there. */
  asked: z.boolean(),
  /** What a remark of it says became of it, word for word: suggested where it is asked about, answered for nobody. */
  suggests: z.strictObject({ what: z.enum(GONE_WORDS), says: z.string() }).nullable(),
  discard: z.enum(DISCARDS).nullable(),
  caution: z.enum(CAUTION_LEVELS).nullable(),
  safety: z.strictObject({ eat: z.boolean(), seed: z.boolean() }),
  verbs: z.array(z.enum(SHELF_VERBS)),
  says: z.strictObject({
    /** The one thing that stands below its name: by when, or why not. */
    below: z.string(),
    /** Whether it may be eaten, and what has to be minded first. */
    eat: z.string(),
    opened: z.string().nullable(),
    /** Because of which jar it has a caution; null where it has none. */
    caution: z.string().nullable(),
    /** Some of it was eaten, and it is not food: what to do and whom to ask. */
    eaten: z.string().nullable(),
  }),
}); // prettier-ignore

const Given = z.strictObject({
  id: Uid,
  jar: Uid,
  label: z.string(),
  name: z.string(),
  on: Day.nullable(),
  to: z.string().nullable(),
  by: Day.nullable(),
  discard: z.enum(DISCARDS).nullable(),
  caution: z.enum(CAUTION_LEVELS).nullable(),
  says: z.string(),
});

export const ShelfReply = z.strictObject({
  today: Day,
  /** What decides first; then the one reason. */
  sentence: z.string(),
  reason: z.string(),
  items: z.array(Item),
  given: z.array(Given),
  /** Eaten up, and not food as is known by now: the caution and whom to ask. */
  eaten: z.array(z.strictObject({ jar: Uid, label: z.string(), says: z.string() })),
  /** One question for all of which nobody said whether they are still there. */
  asked: z.strictObject({ ids: z.array(Uid), sentence: z.string(), rest: z.string() }).nullable(),
  /** Of which nobody said for so long that they are taken for gone: not on the shelf. */
  longUnsaid: z
    .strictObject({ count: z.int().nonnegative(), ids: z.array(Uid), sentence: z.string() })
    .nullable(),
  /** What is to be eaten, or to have seeded, today or tomorrow. */
  due: z.array(z.strictObject({ id: Uid, name: z.string(), what: z.enum(['eat by', 'seed by']), on: Day })),
  limits: Limits,
});

const why = Prose.nullable().default(null);
/** The keeper was asked, and meant it. */
const meant = z.boolean().default(false);
const one = { id: Uid, on: Day.nullable().default(null), meant, why };
/** How much: so much, so many pieces, or all of it. None of these: some. */
const howMuch = {
  amount: Amount.nullable().default(null),
  pieces: z.int().positive().max(10_000).nullable().default(null),
  all: z.boolean().default(false),
};

/** `looked`: it was looked at and smelled as it was opened, and nothing was seen; said of what is open already, too. */
export const OpenKept = z.strictObject({ ...one, looked: z.boolean().default(false) });
export const EatKept = z.strictObject({ ...one, ...howMuch });
export const GiveKept = z.strictObject({ ...one, ...howMuch, to: Line.nullable().default(null) });
/** `into`: so many cubes; null: as it is. `amount` null: all that is left. */
export const FreezeKept = z.strictObject({
  ...one,
  into: z.int().positive().max(10_000).nullable().default(null),
  amount: Amount.nullable().default(null),
  forSeed: z.boolean().default(false),
});
/** `pieces` null: all of it. */
export const ThawKept = z.strictObject({
  ...one,
  pieces: z.int().positive().max(10_000).nullable().default(null),
});
export const DiscardKept = z.strictObject(one);
export const KeepForSeed = z.strictObject(one);
export const AnswerShelf = z.strictObject({
  answers: z
    .array(z.strictObject({ id: Uid, what: z.enum(['still there', 'eaten up', 'discarded', 'gone']) }))
    .min(1)
    .max(1000),
  why,
});
/** Only those that change; null: as usual again. */
export const ShelfLimitsChange = z.strictObject({
  limits: z.strictObject(
    Object.fromEntries(
      Object.entries(Limits.shape).map(([name, of]) => [name, of.nullable().optional()]),
    ) as {
      readonly [N in keyof typeof Limits.shape]: z.ZodOptional<z.ZodNullable<typeof days>>;
    },
  ),
  why,
});
/** `says`: what was done, as a sentence. `caution`: what was eaten or given is not food: what to do, and whom to ask. `made`: what it was kept in. */
export const ShelfDone = z.strictObject({
  act: Uid,
  says: z.string(),
  caution: z.string().nullable(),
  made: Uid.nullable(),
});
