// What would change the place of one that may be used, as far as a keeper can see it or do it: look at a jar, say that it is
// still kept, write down how it came out, answer a doubt. No figure is solved for that nobody could bring about.
import { AS_GOOD_COST } from './ties';
import type { NextInput, Ranked } from './seed-candidate';

/** Whether cost decides between the two. */
const costDecides = (one: Ranked, other: Ranked): boolean =>
  [one, other].every(({ tells }) => tells === 'seen' || tells === 'unseen') &&
  (one.tells === other.tells || one.kind === 'fresh start' || other.kind === 'fresh start');

/** "A good jar from it costs 0.14 EUR less.": by what it costs, whatever it counts as for its place. */
function gapSays(ranked: Ranked, other: Ranked, unit: string): string {
  const more = (ranked.cost ?? 0) - (other.cost ?? 0);
  const far = Math.abs(more).toFixed(2);
  if (Number(far) === 0) return 'A good jar from either costs the same.';
  const gap = unit !== 'jars' ? `${far} ${unit}` : Number(far) < 1 ? `${far} of a jar` : `${far} jars`;
  return `A good jar from it costs ${gap} ${more < 0 ? 'less' : 'more'}.`;
}

const FRESH = {
  first: 'It would come second only if what starts a line were dearer, or lines lasted less long.',
  later: 'It would come first only if what starts a line were cheaper, or lines lasted longer.',
} as const;

/** What a keeper can do so that it counts as what it costs and no more. */
function canDo({ looks, keptSaid }: Ranked): string | null {
  const things = [
    ...(looks.length > 0 ? ['it has been looked at and nothing speaks against it'] : []),
    ...(keptSaid ? [] : ['somebody has said that it is still kept']),
  ];
  return things.length === 0 ? null : things.join(' and ');
}

/** @param other the one before it, of the first the one after it */
function turned(ranked: Ranked, other: Ranked, first: boolean, input: NextInput): string {
  const gap = gapSays(ranked, other, input.unit);
  if (ranked.kind === 'fresh start') return `${first ? FRESH.first : FRESH.later} ${gap}`;
  const [mover, still] = first ? [other, ranked] : [ranked, other];
  const doing = canDo(mover);
  if (doing !== null && (mover.cost ?? 0) < (still.placeCost ?? 0) - AS_GOOD_COST * input.costs.jar)
    return first
      ? `It would lose its place to ${other.label} once ${doing.replace('it has', 'that has').replace('against it', 'against that')}. ${gap}`
      : `It would come before ${other.label} once ${doing}. ${gap}`;
  return `Nothing that can be seen or done now would change its place; the next batch may. ${gap}`;
}

/**
 * What would change the place of one that may be used, against the one before it (of the first: the one that would take its
 * place). What stands last for another reason than cost says what has to be looked into.
 * @param all of what may be used, in order
 */
export function wouldChange(at: number, all: readonly Ranked[], input: NextInput): string {
  const ranked = all[at];
  if (!ranked || all.length < 2) return 'Nothing else may be used, so nothing would.';
  if (ranked.tells === 'in doubt')
    return 'No score would change its place: it stands after every seed without such a doubt, unless what was written down of it is wrong and is corrected.';
  const other = at === 0 ? all.find((next, i) => i > 0 && costDecides(ranked, next)) : all[at - 1];
  if (!other) return 'Cost alone would change nothing: what else is kept has to be looked into first, or is in doubt.'; // prettier-ignore
  if (!costDecides(ranked, other))
    return `It stands after ${other.label} until somebody writes down how it came out.`;
  const apart = Math.abs((ranked.placeCost ?? 0) - (other.placeCost ?? 0));
  if (
    apart <= AS_GOOD_COST * input.costs.jar &&
    other.kind !== 'fresh start' &&
    ranked.kind !== 'fresh start'
  )
    return `It is as good as ${other.label}: either may come first.`;
  return turned(ranked, other, at === 0, input);
}
