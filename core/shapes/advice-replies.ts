// What advice replies, as zod shapes for the table of calls.
import { z } from 'zod';
import { Moment, Uid } from '../ledger/basics';
import { TANGS } from '../ledger/jar-fields';
import { Why } from './why';
import { CAUTION_LEVELS } from './caution-codes';
import { DISCARDS, STOP_CODES } from './safety-codes';
import { UNPRICED } from './cost-codes';

const generation = z.int().positive();
const cost = z.number();

export const VERDICTS = [
  'go on',
  'go on, but look first',
  'take the reserve',
  'start afresh',
  'too early to say',
] as const;
export type VerdictWord = (typeof VERDICTS)[number];

const VerdictSeed = z.strictObject({
  jar: Uid.nullable(),
  portion: Uid.nullable(),
  label: z.string(),
  /** The gravest caution that stands on it. A seed that is to be discarded is never named. */
  level: z.enum(CAUTION_LEVELS).nullable(),
});

const Stop = z.strictObject({
  code: z.enum(STOP_CODES),
  says: z.string(),
  lifts: z.string().nullable(),
});

export const NextReply = z.strictObject({
  sentence: z.string(),
  nothingMayBeUsed: z.boolean(),
  ranking: z.array(
    z.strictObject({
      /** The jar it is or was taken from; null for a fresh start. */
      jar: Uid.nullable(),
      portion: Uid.nullable(),
      label: z.string(),
      kind: z.enum(['jar', 'portion', 'reserve', 'older sibling', 'fresh start']),
      allowed: z.boolean(),
      /** Why it is neither food nor seed, and the gravest caution that stands; null where neither. */
      discard: z.enum(DISCARDS).nullable().default(null),
      level: z.enum(CAUTION_LEVELS).nullable().default(null),
      stops: z.array(Stop),
      /** What its own hold left in doubt: said wherever it is offered. Choices kept by earlier versions have none. */
      doubts: z.array(z.string()).default([]),
      /** What has to be looked at first: said wherever it is offered. Choices kept by earlier versions have none. */
      looks: z.array(z.string()).default([]),
      /** Of a good jar, in `unit`; null where it may not be used. */
      cost: cost.nullable(),
      weakChance: z.number().min(0).max(1).nullable(),
      /** Its figures rest on a starting assumption: too few jars of the keeper's own tell. Choices kept by earlier versions don't say. */
      assumed: z.boolean().default(false),
      reasons: z.array(z.string()),
      /** What its card says, the deciding thing first. Choices kept by earlier versions have none. */
      lines: z.array(z.string()).default([]),
      wouldChange: z.string(),
    }),
  ),
  suggestions: z.array(z.string()),
  warnings: z.array(z.string()),
  /** What alone still carries a line: each is among the warnings. */
  lastOf: z.array(
    z.strictObject({ jar: Uid.nullable(), portion: Uid.nullable(), line: Uid, says: z.string() }),
  ),
  /** A currency, or 'jars'. */
  unit: z.string(),
  why: Why,
  safety: z.string(),
  model: z.strictObject({ version: z.int(), parameters: z.record(z.string(), z.number().nullable()) }),
});
export type NextReply = z.infer<typeof NextReply>;

const reasonOf = <const C extends string, S extends z.ZodRawShape>(code: C, shape: S) =>
  z.strictObject({ code: z.literal(code), ...shape });
const inHundred = z.int().min(0).max(100);
const plain = (
  code:
    | 'nothing may be used'
    | 'all in doubt'
    | 'a start pays'
    | 'may be carried'
    | 'unseen'
    | 'not said to be kept'
    | 'steady'
    | 'no slip seen'
    | 'nothing fresh'
    | 'reserve stands higher',
) => reasonOf(code, {});

/** The one reason that decides, as a code with its figures. */
const VerdictReasonReply = z.discriminatedUnion('code', [
  plain('nothing may be used'),
  reasonOf('in its hold', { label: z.string() }),
  plain('all in doubt'),
  reasonOf('weak jars to come', { inHundred }),
  reasonOf('fallen', { points: z.int() }),
  plain('a start pays'),
  plain('may be carried'),
  reasonOf('look', { look: z.string() }),
  plain('unseen'),
  plain('not said to be kept'),
  reasonOf('changed', { hours: z.int(), usual: z.int() }),
  reasonOf('tastes changed', { tang: z.enum(TANGS), usual: z.enum(TANGS) }),
  reasonOf('untold', { treatments: z.array(z.string()) }),
  reasonOf('slipping', { inHundred }),
  reasonOf('older is better', { inHundred }),
  reasonOf('reserve is better', { inHundred }),
  plain('nothing fresh'),
  plain('reserve stands higher'),
  reasonOf('fresh waits', { label: z.string(), doubt: z.boolean() }),
  reasonOf('few batches', { batches: z.int().nonnegative() }),
  plain('steady'),
  reasonOf('stands lower', { points: z.int() }),
  plain('no slip seen'),
]);
/**
 * The reason that decides. "fallen" and "stands lower" (not called a slip): points below its early batches; "weak jars to come", "slipping", "older is better" and
 * "reserve is better": jars in 100 that would come out weak; "changed": hours it now takes and usually took to set;
 * "tastes changed": how sour it is and was; "untold": what
 * was stirred in with no plain jar beside it; "look": what has to be looked at, as it is said of the seed; "fresh waits": the
 * fresh jar that promises as much or more and stands behind only because it is in doubt or has to be looked at.
 */
export type VerdictReason = z.infer<typeof VerdictReasonReply>;

/** The one verdict on a line, the reason that decides, and the seed. */
export const VerdictReply = z.strictObject({
  verdict: z.enum(VERDICTS),
  reason: VerdictReasonReply,
  /** At most fifteen words of verdict, then the reason in at most twenty; then, of a fresh start, what to do with nothing at home. */
  sentence: z.string(),
  /** Its first two parts: what to do, and the one reason that decides. */
  parts: z.strictObject({ verdict: z.string(), reason: z.string() }),
  /** The same reason as the answer to "why?": "Because no slip is seen." */
  because: z.string(),
  /** What is said after the deciding reason: that same what to do, or that today is the seed's last day; null: nothing. */
  also: z.string().nullable(),
  /** jar null: a fresh start. */
  seed: VerdictSeed.nullable(),
  /** As good as the seed; after "start afresh" what to seed from where no capsules are at home. */
  asGood: z.array(VerdictSeed),
  /** What has to be looked at before it is used. */
  look: z.array(z.string()),
  /** What stands against the newest jar of the line; null where nothing does, or nothing of it is kept. */
  against: z
    .strictObject({
      jar: Uid,
      label: z.string(),
      says: z.string(),
      /** The jar at the root of it: the spoiled one, the one in doubt on its way back; null where it is the jar itself. */
      root: z.strictObject({ jar: Uid, label: z.string() }).nullable(),
    })
    .nullable(),
  /** The jar whose caution is told of here and may be lifted with a written reason; null where no such is. */
  lift: z.strictObject({ jar: Uid, label: z.string() }).nullable(),
});
export type VerdictReply = z.infer<typeof VerdictReply>;

export const RestartReply = z.strictObject({
  sentence: z.string(),
  /** The same in one sentence with at most one figure. */
  short: z.string(),
  /** Enough of the keeper's own lines tell; else the figures rest on what is assumed and aren't to be shown as known. */
  sure: z.boolean(),
  best: generation,
  from: generation,
  to: generation,
  /** Anything from `from` on is about as good as far as was looked at. */
  openEnded: z.boolean(),
  curve: z.array(z.strictObject({ generation, cost, low: cost, high: cost, reckonedOn: z.boolean() })),
  /** Generation of the line's newest jar: where today stands on the curve. */
  today: generation.nullable(),
  lastSeen: z.int().nonnegative(),
  reserve: z.strictObject({ label: z.string(), generation, best: generation, cost }).nullable(),
  better: z.enum(['sources', 'reserve']),
  unit: z.string(),
  assumed: z.array(z.string()),
  why: Why,
  model: z.strictObject({ version: z.int(), parameters: z.record(z.string(), z.number().nullable()) }),
});
export type RestartReply = z.infer<typeof RestartReply>;

/** A choice of seed that was kept, with the advice as it stood then. */
export const ChoiceReply = z.strictObject({
  id: Uid,
  at: Moment,
  why: z.string().nullable(),
  line: Uid.nullable(),
  /** null: a fresh start. */
  jar: Uid.nullable(),
  portion: Uid.nullable(),
  label: z.string(),
  /** Place in the ranking, 1 the first. */
  place: z.int().min(1),
  advice: NextReply,
});
export type ChoiceReply = z.infer<typeof ChoiceReply>;

const times = z.int().nonnegative();

/** As `cost.list` replies it. */
export const CostsReply = z.strictObject({
  /** What is known first, in one sentence; then what no cost holds. */
  sentence: z.string(),
  notCounted: z.string(),
  costs: z.array(
    z.strictObject({
      what: z.enum(['milk', 'addition', 'start']),
      name: z.string(),
      usual: z.strictObject({ minor: times, currency: z.string() }).nullable(),
      priced: times,
      of: times,
      unpriced: z.array(z.strictObject({ why: z.enum(UNPRICED), times })),
      jars: times,
      /** "1.49 GBP a jar", "not known". */
      says: z.string(),
      /** Why some have no price; null where all have. */
      unpricedSays: z.string().nullable(),
    }),
  ),
});
