// What a tasting can tell at all, said before anyone tastes.
import { tastingsNeeded, triangleShare } from './choices';
import { bestFriedman } from './friedman';

export const LEVEL = 0.05;

export type Task = 'rank' | 'score' | 'pair' | 'triangle';

export interface Reach {
  readonly canTell: boolean;
  /** The chance of the clearest outcome that there can be. */
  readonly best: number;
  /** How many tasters it would take for so many jars; null where it tells already. */
  readonly tasters: number | null;
}

/** Chance of the clearest outcome of a tasting. @param ordered the jars are doses in order */
function bestOf(task: Task, tasters: number, jars: number, ordered: boolean): number {
  if (tasters < 1 || jars < 2) return 1;
  if (task === 'triangle') return (1 / 3) ** tasters;
  if (task === 'pair') return Math.min(1, 2 ** (1 - tasters));
  const all = bestFriedman(tasters, jars);
  if (!ordered || jars < 3) return tasters < 2 ? 1 : all;
  // In the expected order by all: one order of each taster's, not any that they share.
  return bestFriedman(tasters + 1, jars);
}

const MOST_TASTERS = 50;

/** Whether so many tasters and jars can tell anything, however clear. */
export function reachOf(task: Task, tasters: number, jars: number, ordered = false): Reach {
  const best = bestOf(task, tasters, jars, ordered);
  const tells = (n: number): boolean => bestOf(task, n, jars, ordered) <= LEVEL + 1e-12;
  let more: number | null = null;
  if (!tells(tasters)) for (let n = tasters + 1; n <= MOST_TASTERS && more === null; n++) if (tells(n)) more = n;
  return { canTell: tells(tasters), best, tasters: more };
} // prettier-ignore

export interface TastingsFor {
  /** True share of 100 who prefer one of two. */
  readonly of100: number;
  /** Tastings that find it in 80 of 100 cases. */
  readonly tastings: number;
}

/** How many tastings of two jars would find that 70, 80 or 90 of 100 prefer one. */
export const tastingsFor = (task: 'pair' | 'triangle' = 'pair'): TastingsFor[] =>
  [70, 80, 90].flatMap((of100) => {
    const share = of100 / 100;
    const needed =
      task === 'pair'
        ? tastingsNeeded('preference', share)
        : tastingsNeeded('triangle', triangleShare(share));
    return needed ? [{ of100, tastings: needed.first }] : [];
  });
