// What a tasting tells, and what several of them do together: overall is ranked and tested, everything else is counted.
// Taste never enters vigour.
import { kendallW, pairsAlike } from './agreement';
import { preference, triangle } from './choices';
import { friedman } from './friedman';
import { LEVEL, type Task } from './least';
import { page } from './page';

/** One taster's overall marks: by treatment, 1 the best for ranks, higher better for scores. */
export interface Block {
  readonly taster: string;
  readonly marks: ReadonlyMap<string, number>;
}

export interface Told {
  readonly tells: boolean;
  readonly p: number | null;
  readonly test: 'Friedman' | 'Page' | 'paired preference' | 'triangle' | null;
  readonly method: 'exact' | 'chi-square' | 'normal' | null;
  /** Friedman's Q (corrected for ties), Page's L, or how many chose the one or found the odd one. */
  readonly statistic: number | null;
  /** Treatments, the best first; equal rank sums stand beside each other. */
  readonly order: readonly { readonly treatment: string; readonly rankSum: number }[];
  /** How far the tasters agree: Kendall's W from three on; pairs put the same way round for two. */
  readonly agreement: { readonly w: number } | { readonly alike: number; readonly of: number } | null;
  readonly tasters: number;
  /** Why it can't be worked out; null where it is. */
  readonly lacks: 'too few marks' | 'nobody told them apart' | null;
}

const NOTHING = {
  tells: false,
  p: null,
  test: null,
  method: null,
  statistic: null,
  agreement: null,
} as const;

/** Blocks that mark every treatment, as rows with the best lowest. */
function tableOf(blocks: readonly Block[], treatments: readonly string[], task: Task): number[][] {
  return blocks
    .filter(({ marks }) => treatments.every((name) => marks.has(name)))
    .map(({ marks }) => treatments.map((name) => (task === 'score' ? -1 : 1) * (marks.get(name) ?? 0)));
}

/**
 * A tasting by rank or score.
 * @param expected the treatments in the order that was expected before anyone tasted, the best first; null: none was
 */
export function toldByRanks(
  blocks: readonly Block[],
  treatments: readonly string[],
  task: 'rank' | 'score',
  expected: readonly string[] | null,
): Told {
  const table = tableOf(blocks, treatments, task);
  const rankIn = (row: readonly number[], i: number): number => {
    const [below, level] = [row.filter((other) => other < (row[i] ?? 0)), row.filter((other) => other === row[i])];
    return 1 + below.length + (level.length - 1) / 2;
  };
  const sums = treatments.map((treatment, i) => ({
    treatment,
    rankSum: table.reduce((sum, row) => sum + rankIn(row, i), 0),
  }));
  const order = sums.toSorted((a, b) => a.rankSum - b.rankSum || (a.treatment < b.treatment ? -1 : 1));
  const base = { order, tasters: table.length };
  if (table.length < 2 || treatments.length < 2) return { ...NOTHING, ...base, lacks: 'too few marks' };
  const found = friedman(table);
  if (!found) return { ...NOTHING, ...base, lacks: 'nobody told them apart' };
  const [one, two] = table;
  const agreement = table.length === 2 && one && two ? pairsAlike(one, two) : { w: kendallW(table)?.w ?? 0 };
  // Ranks rise from the best on, so that the expected order is the one of rising ranks.
  const trend = expected && expected.length > 2 ? page(tableOf(blocks, expected, task)) : null;
  const p = trend ? trend.p : found.p;
  const { method } = trend ?? found;
  const statistic = trend ? trend.l : found.q;
  return { ...base, tells: p <= LEVEL + 1e-12, p, test: trend ? 'Page' : 'Friedman', method, statistic, agreement, lacks: null };
} // prettier-ignore

/** Two jars, one preferred by each taster. @param chosen treatment that each taster picked */
export function toldByPairs(chosen: readonly string[], [one, two]: readonly [string, string]): Told {
  const counts = [one, two].map((treatment) => ({
    treatment,
    rankSum: chosen.filter((pick) => pick !== treatment).length,
  }));
  const order = counts.toSorted((a, b) => a.rankSum - b.rankSum);
  const base = { order, tasters: chosen.length, agreement: null };
  if (chosen.length === 0) return { ...NOTHING, ...base, lacks: 'too few marks' };
  const ones = chosen.filter((pick) => pick === one).length;
  const p = preference(ones, chosen.length);
  const statistic = Math.max(ones, chosen.length - ones);
  return { ...base, tells: p <= LEVEL + 1e-12, p, test: 'paired preference', method: 'exact', statistic, lacks: null };
} // prettier-ignore

/** Three spoonfuls, two alike: how many found the odd one. */
export function toldByTriangle(right: number, tasters: number): Told {
  const base = { order: [], tasters, agreement: null };
  if (tasters === 0) return { ...NOTHING, ...base, lacks: 'too few marks' };
  const p = triangle(right, tasters);
  return { ...base, tells: p <= LEVEL + 1e-12, p, test: 'triangle', method: 'exact', statistic: right, lacks: null };
} // prettier-ignore

/** One tasting among several. */
export interface Session {
  readonly batch: string;
  /** What seeded all its jars; null: not one seed. */
  readonly seed: string | null;
  readonly blocks: readonly Block[];
}

export interface Combined {
  readonly told: Told | null;
  readonly batches: number;
  /** Batches whose jars all came from one seed: those are told together where there are three. */
  readonly sameSeed: boolean;
  /** Three batches are needed before anything is said of a treatment. */
  readonly enough: boolean;
}

const BATCHES_NEEDED = 3;

/**
 * Several tastings of like treatments together, a block for each taster of each batch. Batches whose jars share a seed come
 * first: only where there are not three of them do the others count, too.
 */
export function combined(
  sessions: readonly Session[],
  treatments: readonly string[],
  task: 'rank' | 'score',
  expected: readonly string[] | null,
): Combined {
  const batchesOf = (some: readonly Session[]): number => new Set(some.map(({ batch }) => batch)).size;
  const alike = sessions.filter(({ blocks }) => blocks.some(({ marks }) => treatments.every((name) => marks.has(name))));
  const seeded = alike.filter(({ seed }) => seed !== null);
  const sameSeed = batchesOf(seeded) >= BATCHES_NEEDED;
  const used = sameSeed ? seeded : alike;
  const batches = batchesOf(used);
  const enough = batches >= BATCHES_NEEDED;
  return { told: enough ? toldByRanks(used.flatMap(({ blocks }) => blocks), treatments, task, expected) : null, batches, sameSeed, enough };
} // prettier-ignore
