// What is told of a jar that is handed over, in the file that goes with it and in the calls that write and read it.
import { z } from 'zod';
import { Day, Line, Uid } from '../ledger/basics';
import { VERDICTS } from './advice-replies';
import { CAUTION_LEVELS, CAUTION_RELATIONS } from './caution-codes';

const share = z.number().min(0).max(1);
const count = z.int().nonnegative().max(1_000_000_000);
const Measured = z.strictObject({
  value: z.number().nonnegative().max(1e15),
  unit: z.enum(['mL', 'g', 'pieces', 'CFU']),
});

/** What of a jar can be told without its records: for the preview, and for a sheet that goes with it. */
export const AboutJar = z.strictObject({
  label: z.string().max(500),
  madeOn: Day.nullable(),
  /** The days between which it was made, where only these are known. */
  madeBetween: z.strictObject({ from: Day, to: Day }).nullable().default(null),
  generation: z.strictObject({ deepest: z.int().min(1), shallowest: z.int().min(1), mean: z.number(), atLeast: z.boolean() }),
  doublings: z.strictObject({ transfers: z.number().nullable(), start: z.number().nullable() }),
  tracedShares: z.array(z.strictObject({ source: z.string().max(500), share })).max(1000),
  /** The verdict on its line on that day: of how the line does, never of safety. Null: not told, or of no line. */
  verdict: z.enum(VERDICTS).nullable().default(null),
  /** Milk by name, as it was noted; whether it was raw as far as that says. Null: not noted. */
  milk: z.array(Line).max(100),
  rawMilk: z.boolean().nullable(),
  additions: z.array(z.strictObject({ name: Line, amount: Measured.nullable() })).max(100),
  /** Of the jar and three generations before it; of older ones, as traces. Never "free from" anything. */
  allergens: z.array(Line).max(1000),
  traces: z.array(Line).max(1000),
  /** What the gate says of the jar and of what seeded it; 'not noted' where nothing was seen. */
  gate: z.strictObject({ jar: z.string().max(50), seeds: z.array(z.strictObject({ label: z.string().max(500), gate: z.string().max(50) })).max(100) }),
  cautions: z
    .array(
      z.strictObject({
        of: Uid, label: z.string().max(500), level: z.enum(CAUTION_LEVELS), relation: z.enum(CAUTION_RELATIONS), steps: count,
        /** Lifted with a reason, on that day; or ended by itself. */
        lifted: z.boolean(), liftedOn: Day.nullable(), ended: z.boolean(),
      }),
    )
    .max(10_000),
  /** Remarks further up that nobody has read: what they say is not in it. */
  unreadBefore: count,
  /** Where it stood since it was taken out, as far as noted. */
  storage: z.array(z.strictObject({ what: z.enum(['fridge', 'freezer', 'thawed', 'opened']), on: Day.nullable() })).max(100),
  /** Limits of a given jar, none a promise: null where its day is not known. */
  eatBy: Day.nullable(),
  seedBy: Day.nullable(),
}); // prettier-ignore
export type AboutJar = z.infer<typeof AboutJar>;
