// The making card of a batch: what to do in which order, with room for what really went in.
import { z } from 'zod';

export const MakingCard = z.strictObject({
  title: z.string(),
  /** From what, how many, when it is to begin. */
  intro: z.string(),
  /** In the order of doing, under the heads they stand under. */
  parts: z.array(z.strictObject({ head: z.string(), steps: z.array(z.string()) })),
  /** For each jar what is planned; what went in is written beside it. */
  jars: z.array(
    z.strictObject({ letter: z.string(), seed: z.string(), stirredIn: z.string(), milk: z.string() }),
  ),
  cautions: z.array(z.string()),
});
export type MakingCard = z.infer<typeof MakingCard>;
