// The verdict on a line as every screen shows it: word for word, in its two parts, with the jars it may name. Pure.
import type { Reply } from '../../core/contract';
import type { NamedJar } from './linked-parts';

/** What to do, and why: the first sentence and the rest, together the verdict as it was said. */
export function verdictParts(said: string): { readonly sentence: string; readonly reason: string } {
  const [sentence = '', ...reason] = said.split(/(?<=\.) (?=\p{Lu})/u);
  return { sentence, reason: reason.join(' ') };
}

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
export const alsoAgainst = ({
  reason,
  seed,
  against,
}: Pick<Reply<'advice.line'>, 'reason' | 'seed' | 'against'>): string | null =>
  against === null || (reason.code === 'look' && seed?.jar === against.jar) ? null : against.says;
