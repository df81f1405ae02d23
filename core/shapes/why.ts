// Where a figure came from: every derived figure that is shown carries one.
import { z } from 'zod';

export const Why = z.strictObject({
  formula: z.string(),
  inputs: z.array(z.strictObject({ name: z.string(), value: z.string() })),
  assumptions: z.array(z.string()),
  /** A published source, 'common practice, no source', or null for plain arithmetic. */
  source: z.string().nullable(),
});
export type Why = z.infer<typeof Why>;

export const Figure = z.strictObject({ name: z.string(), shown: z.string(), why: Why });
export type Figure = z.infer<typeof Figure>;
