// What is said of a tasting: that it tells, or honestly that it does not, and how far the tasters agree.
import { fewestThatTell } from '../trials/choices';
import { leastFriedman } from '../trials/friedman';
import { reachOf, type Task } from '../trials/least';
import { leastPage } from '../trials/page';
import type { Combined, Told } from '../trials/tasting';

const listed = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

/** The best by rank sum, ties together. */
function bestOf({ order }: Told): string[] {
  const [first] = order;
  return order.filter(({ rankSum }) => rankSum === first?.rankSum).map(({ treatment }) => treatment);
}

/** @param oneOfEach a single jar of each treatment: then two jars are told apart, not two fibres */
export function toldSays(told: Told, oneOfEach: boolean): string {
  if (told.lacks === 'too few marks') return 'Too few have marked every jar to say anything.';
  if (told.lacks === 'nobody told them apart') return 'Nobody told the jars apart.';
  if (told.test === 'triangle')
    return told.tells ? 'You told these two jars apart.' : 'Nobody can say that these two jars differ: so many are right by guessing.'; // prettier-ignore
  if (!told.tells) return 'This tasting does not tell which is better: chance alone does as much.';
  const best = listed(bestOf(told));
  if (told.test === 'Page') return 'The taste follows the dose, as you expected.';
  return oneOfEach && told.order.length === 2
    ? `You told these two jars apart, and preferred ${best}.`
    : `You told these jars apart, and preferred ${best}.`;
} // prettier-ignore

/** Kendall's W in a word: 0 to 1, without a threshold that anybody published for so few. */
export function agreementSays({ agreement }: Told): string | null {
  if (!agreement) return null;
  if ('of' in agreement) {
    if (agreement.of === 0) return 'They told no two jars apart alike.';
    return agreement.alike === agreement.of
      ? 'Both put the jars in the same order.'
      : `Of ${agreement.of} pairs of jars they put ${agreement.alike} the same way round.`;
  }
  const { w } = agreement;
  const word = w >= 0.7 ? 'agree well' : w >= 0.4 ? 'agree somewhat' : 'hardly agree';
  return `The tasters ${word} (Kendall's W ${w.toFixed(2)}).`;
}

/** What all tastings of like treatments say together. */
export function togetherSays({ told, batches, sameSeed, enough }: Combined): string {
  if (!enough)
    return `Tasted in ${batches === 1 ? 'one batch' : `${batches} batches`}: three are needed before anything is said of what differs.`;
  if (!told) return 'Nothing can be told.';
  const seed = sameSeed ? '' : ' Not all batches had one seed for all jars.';
  if (!told.tells) return `Over ${batches} batches no difference is told.${seed}`;
  return `Over ${batches} batches ${listed(bestOf(told))} is preferred.${seed}`;
} // prettier-ignore

const WORDS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const word = (count: number): string => WORDS[count] ?? String(count);
const counted = (count: number, one: string): string => `${word(count)} ${one}${count === 1 ? '' : 's'}`;
const upper = (text: string): string => `${text[0]?.toUpperCase() ?? ''}${text.slice(1)}`;

/** "Three tasters and two jars can never tell: it takes six tasters." */
export function reachSays(task: Task, tasters: number, jars: number, ordered = false): string {
  const { canTell, best, tasters: needed } = reachOf(task, tasters, jars, ordered);
  const who = `${counted(tasters, 'taster')} and ${counted(jars, 'jar')}`;
  if (!canTell) {
    const more = needed === null ? '' : `: it takes ${counted(needed, 'taster')}`;
    return `${upper(who)} can never tell${more}.`;
  }
  if (task === 'pair' || task === 'triangle') {
    const least = fewestThatTell(task === 'pair' ? 'preference' : 'triangle', tasters) ?? tasters;
    return least === tasters
      ? `${upper(who)} can tell only if all choose alike.`
      : `${upper(who)} can tell if ${word(least)} of ${word(tasters)} choose alike.`;
  }
  const least = ordered ? leastPage(tasters, jars) : leastFriedman(tasters, jars);
  const only = least !== null && Math.abs(least.p - best) < 1e-9;
  return only
    ? `${upper(who)} can tell only if all put them in the same order.`
    : `${upper(who)} can tell if they mostly agree.`;
}
