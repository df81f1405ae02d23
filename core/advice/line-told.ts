// What one judged line tells of the chances by generation. How likely a jar of each generation was to come out weak is read off
// the line's posterior, with what a fibre, a dose, a milk, a cool hold or a waiting seed did already taken out; what spoiled is counted.
import type { JudgedBatch, LineJudgement } from '../vigour/line';
import { LEVEL_RULES } from '../vigour/level/rules';
import { isWeakWord, weakBelow } from './weak';
import { weakByState } from './worth';

export interface LineTold {
  /** Of its first batch: jars that were looked at, and of those the discarded and the weak. */
  readonly first: { readonly jars: number; readonly discarded: number; readonly weak: number };
  /** The same of all that followed. */
  readonly later: { readonly jars: number; readonly discarded: number };
  /** Later jars of which it is known how they set: what its chances of a weak jar rest on. */
  readonly told: number;
  /** Chance of a weak jar by generation, index 0 is generation 1, up to the last seen. */
  readonly weak: readonly number[];
  /** Generations in which jars were seen, and the last of them; 0 where none were. */
  readonly seen: number;
  readonly last: number;
  /** All jars of its last batch spoiled. */
  readonly ended: boolean;
}

/** Jars of a line of which it is known how they set, its first batch apart. */
export const jarsTold = ({ batches }: LineJudgement): number =>
  batches.reduce((sum, { first, comparable }) => sum + (first ? 0 : comparable.length), 0);

const spoiledOf = ({ leftOut }: JudgedBatch): number =>
  leftOut.filter(({ because }) => because === 'spoiled').length;
const firstSeen = ({ leftOut }: JudgedBatch) =>
  leftOut.filter(({ because }) => because === 'first batch').map(({ jar }) => jar);
const jarsSeen = (batch: JudgedBatch): number =>
  (batch.first ? firstSeen(batch).length : batch.comparable.length) + spoiledOf(batch);

const tables = new Map<number, Float64Array>();

/** Chances by hypothesis and state of a line, reckoned once for each usual set word. */
function tableOf({ usual }: LineJudgement): Float64Array {
  const edge = weakBelow(usual['set word'].value);
  const table = tables.get(edge) ?? weakByState(edge, LEVEL_RULES);
  if (tables.size > MOST_TABLES) tables.clear();
  tables.set(edge, table);
  return table;
}
const MOST_TABLES = 40;

/** Chance of a weak jar in a batch, by what is believed of its level and of how uneven its line is. */
function weakInBatch(judgement: LineJudgement, batch: number): number | null {
  const { level } = judgement;
  const place = level.places.get(batch);
  if (place === undefined) return null;
  const belief = level.tree.belief(place);
  const size = belief.length / level.tree.weights.length;
  const chances = tableOf(judgement);
  let sum = 0;
  for (let i = 0; i < belief.length; i++)
    sum += (level.tree.weights[Math.floor(i / size)] as number) * (belief[i] as number) * (chances[i] as number); // prettier-ignore
  return sum;
}

const meanOf = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0) / list.length;

/**
 * Chances by generation; one of which no batch tells has that of the one before. Of a line in which no slip was ever called it
 * is the same at every generation: what is too little for the standing of the line is too little here.
 */
function weakByGeneration(judgement: LineJudgement, last: number): number[] {
  const found: number[][] = Array.from({ length: last }, () => []);
  for (const { batch, generation, first } of judgement.batches) {
    const chance = first || generation > last ? null : weakInBatch(judgement, batch);
    if (chance !== null) found[generation - 1]?.push(chance);
  }
  const all = found.flat();
  const called = judgement.batches.some(({ standing }) => standing === 'slipping' || standing === 'worn out');
  if (!called || all.length === 0) return found.map(() => (all.length === 0 ? 0 : meanOf(all)));
  const known = found.map((list) => (list.length === 0 ? null : meanOf(list)));
  let before = known.find((one) => one !== null) ?? 0;
  return known.map((one) => (before = one ?? before));
}

const told = new WeakMap<LineJudgement, LineTold>();

/** What a judged line tells; reckoned once for each judgement. */
export function lineTold(judgement: LineJudgement): LineTold {
  const before = told.get(judgement);
  if (before) return before;
  const { batches } = judgement;
  const seen = batches.filter((batch) => jarsSeen(batch) > 0);
  const last = Math.max(0, ...seen.map(({ generation }) => generation));
  const sum = (list: readonly JudgedBatch[], of: (batch: JudgedBatch) => number): number =>
    list.reduce((total, batch) => total + of(batch), 0);
  const [firsts, laters] = [batches.filter(({ first }) => first), batches.filter(({ first }) => !first)];
  const newest = batches.at(-1);
  const found: LineTold = {
    first: {
      jars: sum(firsts, jarsSeen),
      discarded: sum(firsts, spoiledOf),
      weak: sum(
        firsts,
        (batch) => firstSeen(batch).filter(({ outcome }) => isWeakWord(outcome?.setWord ?? null)).length,
      ),
    },
    later: { jars: sum(laters, jarsSeen), discarded: sum(laters, spoiledOf) },
    told: jarsTold(judgement),
    weak: weakByGeneration(judgement, last),
    seen: new Set(seen.map(({ generation }) => generation)).size,
    last,
    ended:
      newest !== undefined &&
      newest.leftOut.length > 0 &&
      newest.comparable.length === 0 &&
      newest.leftOut.every(({ because }) => because === 'spoiled'),
  };
  told.set(judgement, found);
  return found;
}
