// The sentence of a verdict, made from its code and figures: at most fifteen words of verdict, then the one reason that decides
// in at most twenty, with at most one number (labels and days are none), whole before anything else is said.
import { inWords } from './way-to-source';
import type { VerdictBecause } from '../advice/verdict';
import type { Source } from '../ledger/records';
import { daysWords } from '../quantities/typed-days';
import type { VerdictReply, VerdictWord } from '../shapes/advice-replies';
import { lookInShort } from './seed-looks-says';

/** What of a verdict is said: its word, its reason, the labels of its seed and of what is as good. */
interface SaidVerdict {
  readonly word: VerdictWord;
  readonly reason: VerdictBecause;
  readonly seed: { readonly label: string } | null;
  readonly asGood: readonly { readonly label: string }[];
}

/** Where there is nothing at home to start from, by the form of what started the line. */
const WITHOUT: Readonly<Record<NonNullable<Source['form']>, string>> = {
  capsules: 'Without capsules at home',
  tablets: 'Without tablets at home',
  sachets: 'Without sachets at home',
  powder: 'Without powder at home',
  culture: 'Until you have a new culture',
};
const withoutWords = (form: Source['form']): string =>
  form === null ? 'With nothing at home to start from' : WITHOUT[form];

const most = 3;
/** "22 Nov a, or b": labels as they are, the last of many counted. */
const orWords = (labels: readonly string[]): string => {
  const shown = labels.length > most ? labels.slice(0, most - 1) : labels;
  return shown.join(', or ') + (labels.length > most ? `, or ${labels.length - shown.length} more` : '');
};

/** "hardly any" below 1 in 50. */
export const weakJars = (inHundred: number): string =>
  inHundred < 2 ? 'hardly any jar would come out weak' : `about ${inHundred} in 100 jars would come out weak`;

const TANG_WORDS = { none: 'not sour', mild: 'mildly sour', clear: 'clearly sour', sharp: 'sharp' } as const;

const sentenceCase = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

function verdictWords({ word, seed, asGood, reason }: SaidVerdict): string {
  const label = seed?.label ?? '';
  const also =
    asGood.length === 0 ? '' : `, or ${orWords(asGood.slice(0, 2).map((one) => one.label))}, as good`;
  switch (word) {
    case 'go on':
      return `Go on from ${label}${also}.`;
    case 'go on, but look first':
      // What is asked there is whether the jar is left, which must not sound like a warning of spoilage.
      return reason.code === 'not said to be kept'
        ? `Go on from ${label}, if it is still there.`
        : `Go on from ${label}, but look first.`;
    case 'take the reserve':
      return `Take the reserve: ${label}.`;
    case 'too early to say':
      return seed ? `Too early to say; go on from ${label}.` : 'Too early to say.';
    case 'start afresh':
      return 'Start afresh.';
  }
}

/** What to do about a fresh start with nothing at home to start from; null of any other verdict. */
function withoutStart({ word, asGood, reason }: SaidVerdict, form: Source['form']): string | null {
  if (word !== 'start afresh') return null;
  const [left] = asGood;
  if (left) return `${withoutWords(form)}, seed once more from ${left.label}.`;
  return reason.code === 'nothing may be used' ||
    reason.code === 'all in doubt' ||
    reason.code === 'may be carried'
    ? `${withoutWords(form)}, make no jar of it${form === null || form === 'culture' ? '' : ' until you have some'}.`
    : null;
}

/** That a seed stands on the last day of the keeper's own limit. */
export const lastDaySays = (limit: number): string =>
  `Today is its last day as seed: your limit is ${daysWords(limit)} (Preferences).`;

function reasonWords(reason: VerdictBecause): string {
  switch (reason.code) {
    case 'nothing may be used':
      return 'Nothing that is kept of this line may be used as seed.';
    case 'in its hold':
      return `Nobody has written down how ${reason.label} came out of its hold.`;
    case 'all in doubt':
      return 'All that is kept of this line is in doubt: when in doubt, discard.';
    case 'weak jars to come':
      return `Whichever you seed from, about ${reason.inHundred} in 100 jars or more would come out weak.`;
    case 'fallen':
      return `The line now stands about ${reason.points} points below its early batches, and more weak jars are likely to follow.`;
    case 'may be carried':
      return 'Nearly a whole batch spoiled, and what is kept may carry on unseen what spoiled it.';
    case 'a start pays':
      return 'With what a start costs you, a new line pays more than going on.';
    case 'look':
      return lookInShort(reason.look);
    case 'unseen':
      return 'Nobody has written down how it came out: look and smell before you use it.';
    case 'not said to be kept':
      return 'Nobody has noted whether it was used up.';
    case 'changed':
      return `It suddenly sets in about ${reason.hours} hours: it is not weaker but changed. Taste and smell it first.`;
    case 'tastes changed':
      return `It suddenly tastes otherwise: ${TANG_WORDS[reason.tang]}, usually ${TANG_WORDS[reason.usual]}. Smell it first.`;
    case 'untold':
      return `Culture and ${inWords(reason.treatments.slice(0, 2))} can't be told apart: make one small plain jar in the next batch.`;
    case 'slipping':
      return `The line has slipped, but a start does not pay yet: ${weakJars(reason.inHundred)}.`;
    case 'older is better':
      return `It promises more than the newest: ${weakJars(reason.inHundred)}.`;
    case 'reserve is better':
      return `It promises more than what is fresh: ${weakJars(reason.inHundred)}.`;
    case 'reserve stands higher':
      return 'It is from when the line stood higher than what is fresh.';
    case 'nothing fresh':
      return 'Nothing fresh may be used as seed.';
    case 'fresh waits':
      return reason.doubt
        ? `What is fresh, such as ${reason.label}, is in doubt: when in doubt, discard.`
        : `What is fresh, such as ${reason.label}, has to be looked at first.`;
    case 'few batches':
      return reason.batches === 0
        ? 'No batch can be compared yet.'
        : `Only ${reason.batches} ${reason.batches === 1 ? 'batch' : 'batches'} can be compared yet.`;
    case 'steady':
      return 'The latest batches of the line come out about as its early ones did.';
    case 'stands lower':
      return `Its latest batches stand about ${reason.points} points below its early ones; whether for good, the next will tell.`;
    case 'no slip seen':
      return 'No slip is seen, and only more batches can rule out a slow one.';
  }
}

/**
 * What is added to advice on when lines are best ended, so that it says of this line what the verdict says.
 * @param reached the line has come as far as where such advice begins
 */
export function beside(verdict: VerdictWord, reached: boolean): string {
  if (verdict === 'start afresh')
    return reached ? '' : ' This line is to be ended sooner: the verdict is to start afresh.';
  return reached ? ' That is what pays over many lines; of this one the verdict is to go on.' : '';
}

/** What is added where two weak batches in a row suggest a fresh start and the verdict on the line is another. */
export const thoughWeak = (verdict: VerdictWord): string =>
  verdict === 'start afresh'
    ? ''
    : verdict === 'take the reserve'
      ? ' By all its batches the verdict is to take the reserve first.'
      : ' By all its batches the verdict is to go on for now.';

/** What stands against a jar, after its name: "22 Apr b: it has stood in the fridge for 28 days; the limit is 21 (Preferences)." */
export const againstSentence = (label: string, inShort: string): string =>
  `${label}: ${inShort.charAt(0).toLowerCase()}${inShort.slice(1)}`;

/** What has to be minded of a seed is no reason for it: the reason is that nothing better is there. */
const MINDED: ReadonlySet<VerdictBecause['code']> = new Set([
  'look',
  'unseen',
  'not said to be kept',
  'changed',
  'tastes changed',
]);

const becauseOf = ({ code }: VerdictBecause, reason: string): string =>
  MINDED.has(code)
    ? `Nothing that is kept promises more. ${reason}`
    : `Because ${reason.charAt(0).toLowerCase()}${reason.slice(1)}`;

/**
 * The verdict, the one reason that decides, and what comes after them.
 * @param form of what the line was started from; null: nobody said, or of several
 * @param lastOf the limit in days that the seed reaches today; null: it does not
 */
export function verdictSays(
  verdict: SaidVerdict,
  form: Source['form'],
  lastOf: number | null,
): Pick<VerdictReply, 'sentence' | 'parts' | 'because' | 'also'> {
  const without = withoutStart(verdict, form);
  const reason = reasonWords(verdict.reason);
  const parts = { verdict: sentenceCase(verdictWords(verdict)), reason };
  const decided = `${parts.verdict} ${reason}`;
  return {
    sentence: without === null ? decided : `${decided} ${without}`,
    parts,
    because: becauseOf(verdict.reason, reason),
    also: without ?? (lastOf === null ? null : lastDaySays(lastOf)),
  };
}
