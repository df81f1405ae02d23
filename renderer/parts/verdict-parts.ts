// The verdict on a line as every screen shows it: word for word, in its two parts, with the jars it may name. Pure.
import type { Reply } from '../../core/contract';
import type { NamedJar } from './linked-parts';

/** What to do, and the one reason that decides, without what comes after it. */
export const verdictParts = ({ parts }: Pick<Reply<'advice.line'>, 'parts'>): { readonly sentence: string; readonly reason: string } => ({
  sentence: parts.verdict,
  reason: parts.reason,
}); // prettier-ignore

/** Jars that the verdict may name. */
export function namedIn({ seed, asGood, against }: Reply<'advice.line'>): NamedJar[] {
  const seeds = [seed, ...asGood].flatMap((one) =>
    one === null || one.jar === null ? [] : [{ jar: one.jar, label: one.label }],
  );
  if (against === null) return seeds;
  return [
    ...seeds,
    { jar: against.jar, label: against.label },
    ...(against.root === null ? [] : [against.root]),
  ];
}

/** What stands against the newest jar, where the verdict has not said it already as what its seed has to be looked at for. */
const alsoAgainst = ({ reason, seed, against }: Reply<'advice.line'>): string | null =>
  against === null || (reason.code === 'look' && seed?.jar === against.jar) ? null : against.says;

/** All that is said after the verdict and its reason; null where nothing is. */
export const saidAfter = (verdict: Reply<'advice.line'>): string | null =>
  [verdict.also, alsoAgainst(verdict)].filter((one) => one !== null).join(' ') || null;
