// How many cases a property draws. A run of all tests draws as many as show what it is for; a thorough one so many times more.
import { z } from 'zod';

/** JARLINE_THOROUGH=10: ten times as many cases of every property that asks here. */
const times = z.coerce
  .number()
  .int()
  .min(1)
  .parse(process.env['JARLINE_THOROUGH'] ?? 1);

/** @param usual as many as a run of all tests has time for */
export const runs = (usual: number): number => usual * times;

/** Forms that a case can take: one of them, another for each case, or in a thorough run all. */
export const inTurn = <T>(forms: readonly T[], at: number): readonly T[] =>
  times > 1 ? forms : forms.slice(at % forms.length, (at % forms.length) + 1);
