// Two weak batches in a row, in words: which jars they were, and why each counts.
import { dayLabel, lineWords } from '../lineage/labels';
import { inWords } from './way-to-source';
import type { WeakRow, WeakStep } from '../advice/two-weak-in-a-row';

function stepSays({ label, madeOn, setWord, recorded, alsoWeak }: WeakStep): string {
  const jars = recorded === 1 ? 'jar' : 'jars';
  return `${label}, ${madeOn === null ? '' : `made ${dayLabel(madeOn, true)}, `}set ${setWord}; ${alsoWeak} of ${recorded} recorded ${jars} of its batch in this line ${alsoWeak === 1 ? 'was' : 'were'} weak (runny or soft).`;
}

/** @param lineName printed name of its line; null where it belongs to none */
export function freshStartSays(
  { weak, unseen, spoiled }: WeakRow,
  lineName: string | null,
): { readonly sentence: string; readonly reasons: readonly string[] } {
  const named = weak.length > 4 ? [...weak.slice(0, 1), ...weak.slice(-2)] : weak;
  const jars = named.map(({ label, setWord }) => `${label} (${setWord})`);
  const list = named.length < weak.length ? `${jars[0]}, ${weak.length - 3} more, ${jars[1]} and ${jars[2]}` : inWords(jars); // prettier-ignore
  const where = lineName === null ? '' : `In ${lineWords(lineName)}, `;
  return {
    sentence: `${where}${list} were weak one after the other: a fresh start from your sources may be worth planning.`,
    reasons: [
      ...weak.map(stepSays),
      ...(unseen.length > 0 ? [`Passed over, because nothing is recorded of how it set: ${inWords(unseen)}.`] : []),
      ...(spoiled.length > 0 ? [`Left out, because it was spoiled: ${inWords(spoiled)}.`] : []),
      'Not corrected for warmth or fibre: a cool hold or something stirred in can thin a jar too.',
    ],
  };
} // prettier-ignore
