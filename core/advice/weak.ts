// What the keeper calls weak: runny or soft. The edge lies between soft and spoonable, on every line's own scale.
import { SET_WORDS } from '../ledger/jar-fields';
import type { SetWord } from '../ledger/records';
import { SCORE_RULES } from '../vigour/score';
import { USUAL_POINTS } from '../vigour/jar-evidence';

export const WEAK_EDGE = SET_WORDS.indexOf('soft') + 0.5;

/** A jar of which nobody wrote down how it set is not weak, it is unknown. */
export const isWeakWord = (word: SetWord | null): boolean =>
  word !== null && SET_WORDS.indexOf(word) < WEAK_EDGE;

/** Points on a line's own scale below which a jar is weak. @param usualWord index of its usual set word */
export const weakBelow = (usualWord: number): number =>
  USUAL_POINTS + SCORE_RULES.pointsPer['set word'] * (WEAK_EDGE - usualWord);
