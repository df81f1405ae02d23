// A batch of a line in words: what the plot shows for the eye. Pure.
import type { LineBatch } from './plot-scale';

export const scoreWords = (batch: LineBatch): string =>
  batch.score === null ? 'no score' : `${batch.score} of 100`;

const letterOf = (label: string): string => label.split(' ').at(-1) ?? label;

/** Jars told together where the words are the same: "c, d: It had oat bran; …". */
function together(jars: readonly { readonly label: string; readonly words: string }[]): string[] {
  const byWords = new Map<string, string[]>();
  for (const { label, words } of jars) byWords.set(words, [...(byWords.get(words) ?? []), letterOf(label)]);
  return [...byWords].map(([words, letters]) => `${letters.join(', ')}: ${words}`);
}

/** Jars that were left out, with the reason. */
export const leftOutWords = (batch: LineBatch): string[] =>
  together(batch.leftOut.map(({ label, reason }) => ({ label, words: reason })));

/** Jars that a caution touches. */
export const heldWords = (batch: LineBatch): string[] =>
  together(batch.jars.flatMap(({ label, held }) => (held === null ? [] : [{ label, words: held }])));

export const inWords = (batch: LineBatch): string =>
  [
    batch.label,
    `generation ${batch.generation}`,
    scoreWords(batch),
    ...heldWords(batch),
    ...(batch.leftOut.length > 0 ? [`left out: ${leftOutWords(batch).join(' ')}`] : []),
  ].join(', ');
