// Whether anything is said of how a jar came out. A look while it stood in warmth says how it goes, and nothing of that.
import type { Outcome } from './records';

/** @param outcome what all looks at a jar amount to; null: nobody looked. That it exists, or an early look, is not enough. */
export function isSeenOut(outcome: Omit<Outcome, 'jar'> | null): boolean {
  if (outcome === null) return false;
  const { setWord, setAtTakeOut, sour, texture, whey, tang, smell, colour, ph, setByHours } = outcome;
  const seen = [setWord, setAtTakeOut, sour, texture, whey, tang, smell, colour, ph, setByHours];
  return outcome.spoiledSaid || outcome.signs.length > 0 || seen.some((one) => one != null);
}
