// What a batch's score is the median of, in words: which jars counted and with what, and which were left out.
import { countedIn, type JudgedBatch } from '../vigour/line';
import { median } from '../vigour/medians';
import { shown } from '../vigour/score';
import type { JarEvidence } from '../vigour/jar-evidence';
import { leftOutTogether } from './left-out-says';
import { letterOf, scoresInWords } from './vigour-words';

/** What is said of a jar that a hold touches; null where none does. */
export const heldWords = ({ held }: Pick<JarEvidence, 'held'>): string | null =>
  held === 'set aside'
    ? 'set aside because of a spoiled jar'
    : held === 'from a mate'
      ? 'descends from a set-aside jar'
      : null;

/** "a 36, b 75", of the jars that speak for a batch. */
const countedWords = (batch: JudgedBatch): string =>
  scoresInWords(countedIn(batch).map(({ jar, points }) => ({ label: jar.label, points })));

/** Where the median is not that of the figures that stand beside it: why, with the plain one. @param counted jars with their points */
export function rangesSay(points: number, counted: readonly { readonly points: number }[]): string {
  const plain = shown(median(counted.map((one) => one.points)) ?? points);
  return plain === shown(points)
    ? ''
    : ` The plain median is ${plain}; a set word stands for a range of scores, and over the ranges it is ${shown(points)}.`;
}

/** "56 is the median of its jars that can be compared: a 36, b 75." */
export function batchSays(batch: JudgedBatch): string {
  const left = leftOutTogether(batch.leftOut.map((why) => ({ letter: letterOf(why.jar.label), why })));
  const out = left === '' ? '' : ` ${left}`;
  if (batch.points === null) return `It has no score: no jar of it can be compared.${out}`;
  const counted = countedIn(batch);
  const ranged = rangesSay(batch.points, counted);
  const [only] = counted;
  const touched = counted.length === 1 ? 'It is set aside or descends from a set-aside jar, so it speaks' : 'They are set aside or descend from a set-aside jar, so they speak'; // prettier-ignore
  const held = counted.some(({ jar }) => jar.held !== null) ? ` ${touched} for no other jar.` : '';
  const of =
    counted.length === 1 && only
      ? `It scored ${shown(batch.points)}, by ${letterOf(only.jar.label)} alone: no other jar of it can be compared.`
      : `${shown(batch.points)} is the median of its jars that can be compared: ${countedWords(batch)}.`;
  return `${of}${ranged}${held}${out}`;
}
