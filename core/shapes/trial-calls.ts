// Shapes of the calls about trials and tastings. Before it is revealed a tasting tells codes and no jars.
import { z } from 'zod';
import { Why } from './why';
import { SetWord } from '../ledger/records';
import { CAUTION_LEVELS } from './caution-codes';
import { Day, Line, Moment, Name, Prose, Uid } from '../ledger/basics';

const why = Prose.nullable().default(null);
const draft = z.string().min(1).max(100).nullable().default(null);
const Code = z.int().min(100).max(999);

const Treatment = z.strictObject({
  jar: Uid,
  name: Name,
  /** How much of what differs, where it is a matter of how much. */
  dose: z.number().min(0).max(1e9).nullable().default(null),
});
const EXPECTED = z.enum(['more is better', 'less is better']);
const TASKS = ['rank', 'score', 'pair', 'triangle'] as const;

export const SaveTrial = z.strictObject({
  batch: Uid,
  differsIn: Name,
  /** Of doses: what is expected before anyone tastes; then a trend is tested. */
  expected: EXPECTED.nullable().default(null),
  treatments: z.array(Treatment).min(1).max(60),
  why,
  draft,
});
export const SavedTrial = z.strictObject({ act: Uid, trial: Uid });

const Reach = z.strictObject({
  canTell: z.boolean(),
  /** "Three tasters and two jars can never tell: it takes six tasters." */
  says: z.string(),
  /** How many tasters it takes; null where these are enough. */
  tasters: z.int().positive().nullable(),
});

export const AskReach = z.strictObject({
  task: z.enum(TASKS),
  tasters: z.int().min(1).max(100),
  jars: z.int().min(2).max(12),
  ordered: z.boolean().default(false),
});
export const ReachReply = Reach.extend({
  /** How many tastings of two jars find that so many of 100 prefer one. */
  needed: z.array(z.strictObject({ of100: z.int(), tastings: z.int() })),
});

export const StartTasting = z.strictObject({
  trial: Uid,
  day: Day,
  task: z.enum(TASKS),
  /** By id, or by a name: a taster who is new is kept in the same act, and so is what one is newly said to avoid. */
  tasters: z.array(z.union([z.strictObject({ id: Uid, avoids: z.array(Name).max(20).default([]) }), z.strictObject({ name: Name, avoids: z.array(Name).max(20).default([]) })])).min(1).max(60),
  /** Jars of the trial; a pair or a triangle takes two. null: all of them. */
  jars: z.array(Uid).min(1).max(60).nullable().default(null),
  /** Who pours, of the tasters by their place in the list; null: somebody who does not taste. */
  pouredBy: z.int().min(0).nullable().default(null),
  why,
  draft,
}); // prettier-ignore

const Told = z.strictObject({
  /** One sentence: what it tells, or that it does not. */
  says: z.string(),
  tells: z.boolean(),
  p: z.number().min(0).max(1).nullable(),
  test: z.enum(['Friedman', 'Page', 'paired preference', 'triangle']).nullable(),
  method: z.enum(['exact', 'chi-square', 'normal']).nullable(),
  /** Friedman's Q (corrected for ties), Page's L, or how many chose the one or found the odd one. */
  statistic: z.number().nullable(),
  order: z.array(z.strictObject({ treatment: z.string(), rankSum: z.number() })),
  /** How far tasters agree, in words. */
  agreement: z.string().nullable(),
  tasters: z.int(),
  /** What decides, or what it would take; null where nothing is to be added. */
  reason: z.string().nullable(),
  why: Why,
});

export const TastingReply = z.strictObject({
  session: Uid,
  trial: Uid.nullable(),
  day: Day,
  /** What the batch is called; null where it belongs to no trial. */
  label: z.string().nullable(),
  task: z.enum(TASKS),
  /** Nobody who tasted knew which jar is which; else it says "not blind". */
  blind: z.boolean(),
  notBlind: z.string().nullable(),
  reach: Reach,
  cautions: z.array(z.string()),
  tasters: z.array(
    z.strictObject({
      taster: Uid,
      name: z.string(),
      /** Has ranked, scored or picked. */
      done: z.boolean(),
      /** In the order in which they are served. `jar` and `treatment` only once it is revealed. */
      servings: z.array(
        z.strictObject({
          serving: Uid,
          code: Code,
          jar: Uid.nullable(),
          treatment: z.string().nullable(),
          marks: z.array(z.strictObject({ aspect: z.string(), rank: z.int().nullable(), score: z.number().nullable(), word: z.string().nullable(), picked: z.boolean().nullable() })),
        }),
      ),
    }),
  ),
  revealedAt: Moment.nullable(),
  told: Told.nullable(),
  /** Which jar was which, the best liked first, with the words it was given; null before it is revealed. */
  jars: z.array(z.strictObject({ jar: Uid, label: z.string(), treatment: z.string(), plain: z.boolean(), words: z.string() })).nullable(),
  /** Everything but overall, by treatment: words and how often. Only once it is revealed. */
  words: z.array(z.strictObject({ aspect: z.string(), treatment: z.string(), word: z.string(), count: z.int().positive() })),
}); // prettier-ignore
export const StartedTasting = TastingReply.extend({ act: Uid });

/** `overall` is what is ranked, scored or picked; texture, smoothness, taste are words. */
export const OVERALL = 'overall';
const Mark = z.strictObject({
  code: Code,
  aspect: Name.default(OVERALL),
  rank: z.int().min(1).max(100).nullable().default(null),
  score: z.number().min(-1e6).max(1e6).nullable().default(null),
  word: Line.nullable().default(null),
  picked: z.boolean().nullable().default(null),
});
export const RecordMarks = z.strictObject({ session: Uid, marks: z.array(Mark).min(1).max(500), why, draft });
export const RecordedMarks = z.strictObject({ act: Uid, marks: z.int().positive() });
export const Reveal = z.strictObject({ session: Uid, why });

/** What is poured into which bowl: for whoever pours, and for nobody who tastes. */
export const PourReply = z.strictObject({
  session: Uid,
  says: z.array(z.string()),
  bowls: z.array(
    z.strictObject({
      jar: Uid,
      label: z.string(),
      treatment: z.string(),
      codes: z.array(z.strictObject({ code: Code, taster: z.string(), place: z.int() })),
    }),
  ),
});

const Drawn = z.strictObject({
  generation: z.int(),
  atLeast: z.boolean(),
  setWord: SetWord.nullable(),
  spoiled: z.boolean(),
  caution: z.enum(CAUTION_LEVELS).nullable(),
});
const TrialJar = z.strictObject({
  jar: Uid,
  label: z.string(),
  name: z.string(),
  dose: z.number().nullable(),
  plain: z.boolean(),
  /** Why nobody tastes it; null: it may be tasted. */
  not: z.string().nullable(),
  /** Nothing of it is left, as far as is noted. */
  gone: z.boolean(),
  drawn: Drawn.nullable(),
});

/** What the jars of a batch differ in, as far as is noted: what a trial of them would compare. */
export const ProposeTrial = z.strictObject({ batch: Uid });
export const ProposedTrial = z.strictObject({
  batch: Uid,
  label: z.string(),
  /** null where nothing that is noted tells them apart. */
  differsIn: z.string().nullable(),
  says: z.string(),
  cautions: z.array(z.string()),
  treatments: z.array(TrialJar),
  /** Trials of this batch that there are. */
  trials: z.array(Uid),
});

const TrialReply = z.strictObject({
  id: Uid,
  batch: Uid,
  label: z.string(),
  /** What the batch is called. */
  batchLabel: z.string(),
  differsIn: z.string(),
  expected: EXPECTED.nullable(),
  /** The one sentence: what its last tasting tells, where it stands, or that nobody has tasted. */
  says: z.string(),
  treatments: z.array(TrialJar),
  /** Said before anyone tastes: allergens, seeds that differ. */
  cautions: z.array(z.string()),
  sessions: z.array(
    z.strictObject({
      id: Uid,
      day: Day,
      task: z.enum(TASKS),
      revealed: z.boolean(),
      /** How many taste, and how many of them have marked. */
      tasters: z.int(),
      done: z.int(),
      says: z.string().nullable(),
    }),
  ),
  /** All tastings of like treatments, whatever their batch: a claim needs three batches. */
  together: z
    .strictObject({
      batches: z.int(),
      sameSeed: z.boolean(),
      enough: z.boolean(),
      told: Told.nullable(),
      says: z.string(),
    })
    .nullable(),
});
export const TrialList = z.strictObject({
  /** The newest first. */
  trials: z.array(TrialReply),
  /** Batches that could be tasted side by side and are in no trial yet, the newest first. */
  offers: z.array(z.strictObject({ batch: Uid, label: z.string(), says: z.string() })),
  tasters: z.array(z.strictObject({ id: Uid, name: z.string(), avoids: z.array(z.string()) })),
});
