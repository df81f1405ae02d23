// A verdict as it is shown: what to do, and then the one reason. Pure.

/** Parts at the end of the first sentence: what to do, and the rest, which says why. */
export function verdictParts(sentence: string): { readonly verdict: string; readonly reason: string } {
  const [verdict = '', ...reason] = sentence.split(/(?<=\.) (?=\p{Lu})/u);
  return { verdict, reason: reason.join(' ') };
}
