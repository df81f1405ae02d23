// Small phrases that judgement and advice share, in plain words.
import { EARLY_SETS, SET_WORDS, WHEYS } from '../ledger/jar-fields';
import { shown } from '../vigour/score';
import type { PartName } from '../shapes/vigour-codes';

const WORDS = { 'set word': SET_WORDS, 'early set': EARLY_SETS, whey: WHEYS } as const;

/** A usual value as a keeper would say it: "firm", "between firm and very firm", "12.0 h", "4.35". */
export function usualWords(name: PartName, value: number): string {
  if (name === 'set time') return `${value.toFixed(1)} h`;
  if (name === 'end pH' || name === 'early pH') return value.toFixed(2);
  const words = WORDS[name];
  const [low, high] = [words[Math.floor(value)] ?? words[0], words[Math.ceil(value)] ?? words.at(-1)];
  return low === high ? low : `between ${low} and ${high}`;
}

/** "13 May a" within its batch: "a". */
export const letterOf = (label: string): string => label.split(' ').at(-1) ?? label;

/** Scores of jars of one batch: "a 36, b 75". */
export const scoresInWords = (
  scores: readonly { readonly label: string; readonly points: number }[],
): string => scores.map(({ label, points }) => `${letterOf(label)} ${shown(points)}`).join(', ');
