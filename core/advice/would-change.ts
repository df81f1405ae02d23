// What would change the place of one that may be used, as far as a keeper can see it or do it: look at a jar, say that it is
// still kept, write down how it came out, answer a doubt. No figure is solved for that nobody could bring about. A code and its
// figures; core/says/would-change-says.ts makes the sentence.
import type { Ranked } from './seed-candidate';
import { AS_GOOD_COST } from './ties';

/** What a keeper can do so that a seed counts as what it costs and no more. */
export interface CanDo {
  readonly look: boolean;
  readonly sayKept: boolean;
}

export type PlaceChange =
  | { readonly code: 'alone' | 'in doubt' | 'cost decides nothing' }
  | { readonly code: 'stands after' | 'as good'; readonly other: string }
  /** `more` is by how much a good jar from it costs more, in the unit of costs. */
  | { readonly code: 'fresh start' | 'nothing'; readonly first: boolean; readonly more: number }
  /** `loses`: it is the first, and the other would take its place. */
  | {
      readonly code: 'once done';
      readonly loses: boolean;
      readonly other: string;
      readonly doing: CanDo;
      readonly more: number;
    };

/** Whether cost decides between the two. */
const costDecides = (one: Ranked, other: Ranked): boolean =>
  [one, other].every(({ tells }) => tells === 'seen' || tells === 'unseen') &&
  (one.tells === other.tells || one.kind === 'fresh start' || other.kind === 'fresh start');

/** @param other the one before it, of the first the one after it */
function turned(ranked: Ranked, other: Ranked, first: boolean, jar: number): PlaceChange {
  const more = (ranked.cost ?? 0) - (other.cost ?? 0);
  if (ranked.kind === 'fresh start') return { code: 'fresh start', first, more };
  const [mover, still] = first ? [other, ranked] : [ranked, other];
  const doing = { look: mover.looks.length > 0, sayKept: !mover.keptSaid };
  return (doing.look || doing.sayKept) && (mover.cost ?? 0) < (still.placeCost ?? 0) - AS_GOOD_COST * jar
    ? { code: 'once done', loses: first, other: other.label, doing, more }
    : { code: 'nothing', first, more };
}

/**
 * What would change the place of one that may be used, against the one before it (of the first: the one that would take its
 * place). What stands last for another reason than cost says what has to be looked into.
 * @param all of what may be used, in order; @param jar what a jar costs
 */
export function wouldChange(at: number, all: readonly Ranked[], jar: number): PlaceChange {
  const ranked = all[at];
  if (!ranked || all.length < 2) return { code: 'alone' };
  if (ranked.tells === 'in doubt') return { code: 'in doubt' };
  const other = at === 0 ? all.find((next, i) => i > 0 && costDecides(ranked, next)) : all[at - 1];
  if (!other) return { code: 'cost decides nothing' };
  if (!costDecides(ranked, other)) return { code: 'stands after', other: other.label };
  const apart = Math.abs((ranked.placeCost ?? 0) - (other.placeCost ?? 0));
  const seeds = other.kind !== 'fresh start' && ranked.kind !== 'fresh start';
  if (seeds && apart <= AS_GOOD_COST * jar) return { code: 'as good', other: other.label };
  return turned(ranked, other, at === 0, jar);
}
