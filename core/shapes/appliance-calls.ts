// Shapes of the calls about appliances and the tools that a keeper trusts.
import { z } from 'zod';
import { Day, Line, Moment, Name, Prose, Uid } from '../ledger/basics';

const why = Prose.nullable().default(null);
const draft = z.string().min(1).max(100).nullable().default(null);
const acted = { act: Uid };

const Appliance = z.strictObject({
  id: Uid.nullable(),
  name: Name,
  type: z.enum(['bath', 'box', 'cooker', 'other']).nullable(),
});

/** Temperatures in °C. */
export const ProofReply = z.strictObject({
  passes: z.boolean(),
  /** One sentence, and what is missing, each in words. */
  says: z.string(),
  lacks: z.array(z.string()),
  began: Moment.nullable(),
  hours: z.number(),
  settledAt: z.number().nullable(),
  minutesToSettle: z.int().nullable(),
  /** Half the way from its cool to its warm end. */
  swing: z.number().nullable(),
  /** Part of the time once settled that lies within the limits, 0 to 1. */
  within: z.number().min(0).max(1).nullable(),
  warmest: z.number().nullable(),
  edgeCooler: z.number().nullable(),
  jarCooler: z.number().nullable(),
  /** How a jar follows its bath, by log regression (h); `high` null: no bound. */
  timeConstant: z
    .strictObject({ low: z.number(), mid: z.number(), high: z.number().nullable(), points: z.int() })
    .nullable(),
});

export const ApplianceList = z.strictObject({
  appliances: z.array(
    Appliance.extend({
      id: Uid,
      // One kept before a name had to be seen is still told.
      name: Line,
      /** Holds of jars in it. */
      holds: z.int().min(0),
      /** Its newest run. */
      proof: ProofReply.nullable(),
    }),
  ),
});

export const SaveAppliance = z.strictObject({ appliance: Appliance, why, draft });
export const SavedAppliance = z.strictObject({ ...acted, id: Uid });

/** Without the file of each probe, whose shape is the contract's own. */
export const ProofRun = z.strictObject({
  where: z.enum(['air', 'bath', 'jar']),
  spot: z.enum(['centre', 'edge']).nullable().default(null),
});
export const ProveAppliance = z.strictObject({
  appliance: Uid,
  /** null: by the first and last reading. */
  began: Moment.nullable().default(null),
  ended: Moment.nullable().default(null),
  /** Whether all its places were filled with jars of water or milk. */
  filled: z.boolean().nullable().default(null),
  why,
  draft,
});
export const ProvedAppliance = z.strictObject({
  ...acted,
  hold: Uid,
  proof: ProofReply,
  says: z.array(z.string()),
});

export const CheckTool = z.strictObject({
  tool: z.enum(['meter', 'thermometer', 'fridge']),
  /** Which one, where there are several. */
  name: Line.nullable().default(null),
  day: Day,
  /** pH of a meter in buffer, else a temperature. */
  shown: z.number().min(-90).max(150),
  unit: z.enum(['pH', '°C', '°F']),
  why,
  draft,
});
export const CheckedTool = z.strictObject({ ...acted, id: Uid, passes: z.boolean(), says: z.string() });
export const ToolList = z.strictObject({
  tools: z.array(
    z.strictObject({
      tool: CheckTool.shape.tool,
      /** The newest check; null: never checked, and so it proves nothing. */
      day: Day.nullable(),
      shown: z.number().nullable(),
      passes: z.boolean().nullable(),
      due: z.boolean(),
      says: z.string(),
    }),
  ),
}); // prettier-ignore
