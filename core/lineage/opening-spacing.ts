// Which of the two spacings a family is first drawn in. Pure.
import { UNKNOWN_DAY } from './counting';

/** Two lines are both alive where their newest jars are at most so many days apart: a season of weekly batches. */
const ALIVE_DAYS = 60;
/** A family with fewer columns is seen whole, or nearly so. */
const MANY_COLUMNS = 18;
/** So many columns from the end of one line to that of another, and no window shows both well. */
const FAR_APART = 8;

/** Columns of a drawing, index i one jar: its lane, its generation, its day. */
interface Standing {
  readonly lane: Int32Array;
  readonly generation: Int32Array;
  readonly day: Int32Array;
}

/**
 * By generations, which shows descent best; on the calendar where lines that are both alive are so far apart in
 * generations that the newest jars of one would be out of sight beside those of the other: in time they lie together.
 */
export function openingSpacing(
  { lane, generation, day }: Standing,
  lanes: number,
): 'generation' | 'calendar' {
  const newest = new Int32Array(lanes).fill(-1);
  let last = -Infinity;
  let deepest = 0;
  for (let i = 0; i < lane.length; i++) {
    deepest = Math.max(deepest, generation[i] as number);
    const own = day[i] as number;
    if (own === UNKNOWN_DAY) continue;
    last = Math.max(last, own);
    const before = newest[lane[i] as number] as number;
    if (before < 0 || own >= (day[before] as number)) newest[lane[i] as number] = i;
  }
  if (deepest <= MANY_COLUMNS) return 'generation';
  const ends = [...newest]
    .filter((i) => i >= 0 && last - (day[i] as number) <= ALIVE_DAYS)
    .map((i) => generation[i] as number);
  return Math.max(...ends) - Math.min(...ends) > FAR_APART ? 'calendar' : 'generation';
}
