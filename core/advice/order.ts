// The order of what may be used, and what would change it. What was seen to come out comes before what nobody looked at;
// what descends from a jar on hold comes after everything else, a fresh start included. Within that, the lower cost first.
import type { Ranked } from './next';

const byCost = (a: Ranked, b: Ranked): number => (a.cost ?? 0) - (b.cost ?? 0);

/** @param allowed seeds that may be used; @param fresh the fresh start, always among what is offered */
export function inOrder(allowed: readonly Ranked[], fresh: Ranked): Ranked[] {
  const those = (tells: Ranked['tells']): Ranked[] =>
    allowed.filter((one) => one.tells === tells).toSorted(byCost);
  const seeds = [...those('seen'), ...those('unseen')];
  const dearer = seeds.findIndex((one) => byCost(one, fresh) > 0);
  const place = dearer < 0 ? seeds.length : dearer;
  return [...seeds.slice(0, place), fresh, ...seeds.slice(place), ...those('held line')];
}

/** What would make a good jar from it cheaper. */
const CHEAPER = {
  jar: 'with a better outcome of its batch, or if more jars of its generation came out well',
  'older sibling': 'with a better outcome of its batch, or if more jars of its generation came out well',
  portion: 'with a better outcome of its batch, or if more jars of its generation came out well',
  reserve: 'if it had waited less, or were easier to lay by again',
  'fresh start': 'if what starts a line were cheaper, or lines lasted longer',
} as const satisfies Record<Ranked['kind'], string>;

/** Whether cost alone could put the one before the other. */
const costDecides = (one: Ranked, other: Ranked): boolean =>
  one.tells !== 'held line' &&
  other.tells !== 'held line' &&
  (one.tells === other.tells || one.kind === 'fresh start' || other.kind === 'fresh start');

/** What would change the place of one that may be used. @param all of what may be used, in order */
export function wouldChange(unit: string, ranked: Ranked, i: number, all: readonly Ranked[]): string {
  const [first] = all;
  if (all.length < 2 || !first) return 'Nothing else may be used, so nothing would.';
  if (ranked.tells === 'held line')
    return 'It stands last until that hold is lifted with a written reason, whatever it costs.';
  const other = i === 0 ? all.find((next, j) => j > 0 && costDecides(ranked, next)) : first;
  if (!other) return 'Cost alone would change nothing: the others have to be looked into first.';
  if (!costDecides(ranked, other))
    return `It stands after ${other.label} until somebody writes down how it came out.`;
  const apart = Math.abs((other.cost ?? 0) - (ranked.cost ?? 0));
  if (apart < 0.005) return `It is as good as ${other.label}: either may come first (less than 0.01 apart).`;
  const gap = unit === 'jars' ? `${apart.toFixed(2)} jars’ worth` : `${apart.toFixed(2)} ${unit}`;
  return i === 0
    ? `It would lose its place to ${other.label} if a good jar from it cost ${gap} more.`
    : `It would come first if a good jar from it cost ${gap} less: ${CHEAPER[ranked.kind]}.`;
}
