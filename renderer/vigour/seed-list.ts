// The seeds that are offered, in the order in which they are shown. Pure.
import type { Reply } from '../../core/contract';

export type NextReply = Reply<'advice.next'>;
export type Ranked = NextReply['ranking'][number];

/** One name for each thing that can seed: a portion, a jar, or the fresh start. */
export const keyOf = ({ portion, jar }: Pick<Ranked, 'portion' | 'jar'>): string =>
  portion ?? jar ?? 'fresh start';

/** What may be used, the verdict's seed first, then what is as good, then by rank: no two screens advise two things. */
export function inOrder(
  ranking: readonly Ranked[],
  { seed, asGood }: Pick<Reply<'advice.line'>, 'seed' | 'asGood'>,
): Ranked[] {
  const first = [...(seed ? [seed] : []), ...asGood].map(keyOf);
  const place = (ranked: Ranked): number => {
    const at = first.indexOf(keyOf(ranked));
    return at < 0 ? first.length : at;
  };
  return ranking.filter(({ allowed }) => allowed).toSorted((a, b) => place(a) - place(b));
}
