// What advice replies, as zod shapes for the table of calls.
import { z } from 'zod';
import { Moment, Uid } from '../ledger/basics';
import { Why } from '../why';

const generation = z.int().positive();
const cost = z.number();

const Stop = z.strictObject({
  code: z.enum([
    'spoiled',
    'condemned',
    'on hold',
    'failed the gate',
    'in its hold',
    'too old',
    "keeper's limit",
  ]),
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
      stops: z.array(Stop),
      /** What its own hold left in doubt: said wherever it is offered. Choices kept by earlier versions have none. */
      doubts: z.array(z.string()).default([]),
      /** What has to be looked at first: said wherever it is offered. Choices kept by earlier versions have none. */
      looks: z.array(z.string()).default([]),
      /** Of a good jar, in `unit`; null where it may not be used. */
      cost: cost.nullable(),
      weakChance: z.number().min(0).max(1).nullable(),
      reasons: z.array(z.string()),
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

export const RestartReply = z.strictObject({
  sentence: z.string(),
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
