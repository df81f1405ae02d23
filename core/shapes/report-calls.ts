// Pages that leave the program to be read: which of them calls ask for, and what they reply.
import { z } from 'zod';
import { Uid } from '../ledger/basics';

const PAPERS = ['A4', 'Letter'] as const;
export type Paper = (typeof PAPERS)[number];
/** Sizes in mm (ISO 216; ANSI/ASME Y14.1), upright. */
export const PAPER_SIZES = {
  A4: { width: 210, height: 297 },
  Letter: { width: 215.9, height: 279.4 },
} as const satisfies Record<Paper, { readonly width: number; readonly height: number }>;

/** Which jars of the family: all, those of a line, what a jar comes from, what came of it, or both. */
const FamilyPart = z.discriminatedUnion('part', [
  z.strictObject({ part: z.literal('all') }),
  z.strictObject({ part: z.literal('line'), line: Uid }),
  z.strictObject({ part: z.enum(['before', 'after', 'around']), jar: Uid }),
]);
export type FamilyPart = z.infer<typeof FamilyPart>;

/** Largest small photograph that goes into a page (bytes), how many of them go, and how many jars are told. */
export const MOST_SMALL_PHOTOGRAPH = 200_000;
export const MOST_PAGE_PHOTOGRAPHS = 400;

/**
 * What is asked for:
 * 'line': a line told on paper; 'making card': what to do for a batch, step by step, with room for what really went in;
 * 'rows': empty rows to be filled in by hand; 'jar': a sheet that goes with a jar that is handed over; 'told': whom to tell of jars that were
 * given and that something stands on now; 'family': the drawing, on sheets of paper or (paper null) as one; 'page': the whole
 * ledger or a line as one page for a screen, with small photographs by their ids, private remarks only where they are asked for.
 */
export const AskReport = z.discriminatedUnion('of', [
  z.strictObject({ of: z.literal('line'), line: Uid, paper: z.enum(PAPERS) }),
  z.strictObject({ of: z.literal('jar'), jar: Uid, paper: z.enum(PAPERS) }),
  z.strictObject({ of: z.literal('making card'), batch: Uid, paper: z.enum(PAPERS) }),
  z.strictObject({ of: z.literal('rows'), paper: z.enum(PAPERS) }),
  z.strictObject({ of: z.literal('told'), paper: z.enum(PAPERS) }),
  z.strictObject({ of: z.literal('family'), part: FamilyPart, paper: z.enum(PAPERS).nullable() }),
  z.strictObject({
    of: z.literal('page'),
    line: Uid.nullable(),
    privateToo: z.boolean().default(false),
    photographs: z
      .array(z.strictObject({ id: Uid, bytes: z.instanceof(Uint8Array) }))
      .max(MOST_PAGE_PHOTOGRAPHS)
      .default([]),
  }),
]);
export type AskReport = z.output<typeof AskReport>;

export const ReportReply = z.strictObject({
  title: z.string(),
  /** One document with nothing from elsewhere in it, and the size of its sheets (mm). */
  html: z.string(),
  page: z.strictObject({ width: z.number(), height: z.number() }),
  /** The family's drawing as a picture by itself; null of any other. */
  svg: z.string().nullable(),
  /** Of a page: the photographs that would go into it small, the newest jar's first. */
  photographs: z.array(z.strictObject({ id: Uid, sha256: z.string() })),
});
export type ReportReply = z.infer<typeof ReportReply>;
