// Remarks and their answers as calls tell them.
import { z } from 'zod';
import { Prose, Uid } from '../ledger/basics';
import { READ_AS, REMARK_FIELDS } from '../ledger/facts/seen-facts';

/** What a remark about a jar is on, as the jar sees it: an observation is its own. */
export const REMARKED_OF = ['jar', 'batch', 'hold', 'portion', 'photograph', 'seeding', 'package'] as const;

/** A remark and how the keeper has read it. */
export const RemarkReply = z.strictObject({
  id: Uid,
  of: z.enum(REMARKED_OF),
  field: z.enum(REMARK_FIELDS),
  text: z.string(),
  /** null: nobody has answered it. */
  readAs: z.enum(READ_AS).nullable(),
  /** A plain word of spoilage stands in it, and nobody has answered: the jar is *discard* until somebody does. */
  stops: z.boolean(),
});
export type RemarkReply = z.infer<typeof RemarkReply>;

export const AnswerRemarks = z.strictObject({
  answers: z.array(z.strictObject({ id: Uid, readAs: z.enum(READ_AS).nullable() })).min(1).max(5000),
  why: Prose.nullable().default(null),
}); // prettier-ignore

export const ListRemarks = z.strictObject({
  jar: Uid.nullable().default(null),
  unread: z.boolean().default(true),
  limit: z.int().min(1).max(1000).default(200),
});

const count = z.int().nonnegative();

export const RemarksReply = z.strictObject({
  remarks: z.array(
    RemarkReply.extend({
      /** The first few jars it is about, and how many they are. */
      jars: z.array(z.strictObject({ id: Uid, label: z.string() })),
      about: count,
    }),
  ),
  more: z.boolean(),
  /** How many stop a jar, and how many nobody has answered. */
  stopping: count,
  unread: count,
});

/**
 * What a row of notes says in words. `id` goes into `answers`, with 'fine', 'look' or 'discard'; 'remark:suspicious' answers all
 * rows whose words tell of spoilage, 'remark:others' all the rest of which nothing is in doubt, except where a row has an answer
 * of its own.
 */
export const NoteRemark = z.strictObject({
  id: z.string(),
  row: z.int().positive(),
  label: z.string().nullable(),
  text: z.string(),
  /** A plain word of spoilage stands in it, answered or not. */
  tells: z.boolean(),
  /** The program itself doubts something of the row (a power cut, its warmth): only its own answer counts. */
  doubted: z.boolean(),
  /** Until it is answered its jar counts as *discard*. */
  stops: z.boolean(),
  readAs: z.enum(READ_AS).nullable(),
});
