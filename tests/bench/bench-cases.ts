// The one table of benchmarks. Add a list of cases of your own here; run-bench.ts prints them all.
import type { Way } from './timing';
import { judgementCases } from './judgement-cases';
import { ledgerCases } from './ledger-cases';
import { lineageCases } from './lineage-cases';

export interface Case {
  /** Cases of one group are printed together, under this heading. */
  readonly group: string;
  readonly task: string;
  readonly ours: Extract<Way, { prepare: unknown }>;
  /** Other ways to the same answer, by name. */
  readonly others: Readonly<Record<string, Way>>;
  /** A line to print below the table: what came out, where that is worth seeing. */
  readonly prints?: () => string;
}

export const cases: readonly Case[] = [...lineageCases, ...ledgerCases, ...judgementCases];
