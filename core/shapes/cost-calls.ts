// What the calls of costs take and reply, as zod shapes for the table of calls.
import { z } from 'zod';
import { Prose, Uid } from '../ledger/basics';

const minor = z.int().nonnegative().max(1e12);

const Figure = z.strictObject({
  name: z.string(),
  /** Minor units of the currency; null where it is not known. */
  minor: minor.nullable(),
  /** Something that belongs to it has no price. */
  atLeast: z.boolean(),
  /** "1.49 GBP", "at least 1.49 GBP", "not known". */
  says: z.string(),
  /** Where it comes from, or why it is not known. */
  from: z.string(),
});

export const CostSheetReply = z.strictObject({
  /** The one that is counted in. */
  currency: z.string(),
  sentence: z.string(),
  reason: z.string(),
  /** A jar, a cup, a good jar, a fresh start. */
  figures: z.array(Figure.extend({ what: z.enum(['jar', 'cup', 'good jar', 'start']) })),
  /** Each thing stirred in, of a jar. */
  additions: z.array(Figure),
  /** A cup of one's own beside one from the shop. */
  bars: z.array(z.strictObject({ name: z.string(), minor: minor.nullable(), says: z.string() })),
  milkPerLitre: minor.nullable(),
  shop: z.strictObject({ minor, ml: z.number().positive() }).nullable(),
  /** Packages that can't be counted until somebody types what is missing. */
  missing: z.array(z.strictObject({ package: Uid, name: z.string(), says: z.string() })),
  notCounted: z.string(),
});

/** Prices that belong to no package: null forgets one, left out it stays. */
export const SavePrices = z.strictObject({
  prices: z.strictObject({
    /** What a litre of milk costs that came from no noted package. */
    milkPerLitre: minor.nullable().optional(),
    /** What the shop asks, for so many mL. */
    shop: z
      .strictObject({ minor, ml: z.number().positive().max(1e6) })
      .nullable()
      .optional(),
  }),
  why: Prose.nullable().default(null),
});
