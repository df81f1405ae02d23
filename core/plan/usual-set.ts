// How firm such jars came out so far: the range in which most of them lie.
import { SET_WORDS } from '../ledger/jar-fields';

type SetWord = (typeof SET_WORDS)[number];

/** So many jars are needed before a range is told, and so many in a hundred may lie outside it at each end. */
const FEWEST = 5;
const OUTSIDE = 0.1;

/** The range of most of these, by rank (nearest rank, one in ten left out at each end); null where they are too few. */
export function usualSet(
  words: readonly SetWord[],
): { readonly low: SetWord; readonly high: SetWord; readonly jars: number } | null {
  if (words.length < FEWEST) return null;
  const ranked = words.toSorted((a, b) => SET_WORDS.indexOf(a) - SET_WORDS.indexOf(b));
  const out = Math.floor(words.length * OUTSIDE);
  const [low, high] = [ranked[out], ranked[ranked.length - 1 - out]];
  return low && high ? { low, high, jars: words.length } : null;
}
