// What is said of a tasting: that it tells, or honestly that it does not, and how far the tasters agree.
import { fewestThatTell } from '../trials/choices';
import type { Difference, Differing } from '../trials/differences';
import type { Why } from '../shapes/why';
import { leastFriedman } from '../trials/friedman';
import { reachOf, tastingsFor, type Task } from '../trials/least';
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
  const words = agreementWords(agreement);
  return 'of' in agreement ? `${words}.` : `${words} (Kendall's W ${agreement.w.toFixed(2)}).`;
}

function agreementWords(agreement: NonNullable<Told['agreement']>): string {
  if ('of' in agreement) {
    if (agreement.of === 0) return 'They told no two jars apart alike';
    return agreement.alike === agreement.of
      ? 'Both put the jars in the same order'
      : `Of ${agreement.of} pairs of jars they put ${agreement.alike} the same way round`;
  }
  const { w } = agreement;
  const word = w >= 0.7 ? 'agree well' : w >= 0.4 ? 'agree somewhat' : 'hardly agree';
  return `The tasters ${word}`;
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

/** Tastings of two jars that find it where 80 of 100 prefer one, or can truly tell the odd bowl. */
const neededFor = (task: 'pair' | 'triangle'): string =>
  String(tastingsFor(task).find(({ of100 }) => of100 === 80)?.tastings ?? 'too many');
const eightyOf100 = (task: 'pair' | 'triangle'): string =>
  task === 'pair'
    ? 'to find what four of five people prefer'
    : 'to find what four of five people can tell apart';

/** How a tasting was asked. */
export interface Asked {
  readonly task: Task;
  readonly jars: number;
  /** The jars are doses in order. */
  readonly ordered: boolean;
}

/** What decides, or what it would take. @param asked of one tasting: how it was asked; null of several together */
export function reasonSays(told: Told, asked: Asked | null): string | null {
  if (told.tells) return told.agreement ? `${agreementWords(told.agreement)}.` : null;
  if (asked === null || told.tasters === 0) return null;
  if (!reachOf(asked.task, told.tasters, asked.jars, asked.ordered).canTell)
    return reachSays(asked.task, told.tasters, asked.jars, asked.ordered);
  if (asked.task === 'pair' || asked.task === 'triangle') return `${upper(eightyOf100(asked.task))} takes ${neededFor(asked.task)} tastings.`;
  return told.agreement ? `${agreementWords(told.agreement)}.` : null;
} // prettier-ignore

const CHANCE = 'That is the chance of so clear an outcome, or a clearer one, where all jars taste alike.';
const FORMULAS: Readonly<Record<NonNullable<Told['test']>, readonly [formula: string, source: string]>> = {
  Friedman: [
    'Each taster’s order gives ranks, equal places the middle of theirs. How far the sums of the jars lie apart is held against all orders that the tasters might have given by chance (Friedman’s test).',
    'Hollander and Wolfe, Nonparametric Statistical Methods, 7.1; corrected for ties as R’s friedman.test and SciPy do.',
  ],
  Page: [
    'Each taster’s order gives ranks. Whether they follow the doses is held against all orders that the tasters might have given by chance (Page’s test, one-sided, since the direction was said before).',
    'Page 1963, Journal of the American Statistical Association 58, 216 to 230; a statistic that ties make a half is rounded down, as SciPy does.',
  ],
  'paired preference': [
    'How many chose the one jar is held against tossing a coin for each taster, either way round.',
    'Exact binomial, as in ISO 5495.',
  ],
  triangle: [
    'How many found the odd bowl of three is held against guessing, which finds it one time in three.',
    'Exact binomial, as in ISO 4120.',
  ],
}; // prettier-ignore

/** "3 in 100", "1 in 400". */
function chanceWords(p: number): string {
  if (p >= 0.01) return `${Math.round(100 * p)} in 100`;
  return p > 0 ? `1 in ${Math.round(1 / p).toLocaleString('en')}` : 'none';
}

const STATISTIC: Readonly<Record<NonNullable<Told['test']>, string>> = {
  Friedman: 'Friedman’s Q',
  Page: 'Page’s L',
  'paired preference': 'chose the one that more preferred',
  triangle: 'found the odd bowl',
};

const neededInput = (task: 'pair' | 'triangle'): Why['inputs'][number] => ({
  name: `tastings of two jars ${eightyOf100(task)}`,
  value: neededFor(task),
});

/** The test and the figures behind what a tasting tells. */
export function toldWhy({ tells, test, method, p, statistic, tasters, order, agreement }: Told): Why {
  const shown = (value: number): string => (Number.isInteger(value) ? String(value) : value.toFixed(2));
  const [formula, source] = test === null ? ['Nothing was tested.', null] : FORMULAS[test];
  return {
    formula,
    inputs: [
      { name: 'tasters who marked every jar', value: String(tasters) },
      ...(test === 'Friedman' || test === 'Page'
        ? order.map(({ treatment, rankSum }) => ({ name: `sum of ranks, ${treatment}`, value: shown(rankSum) }))
        : []),
      ...(test === null || statistic === null ? [] : [{ name: STATISTIC[test], value: shown(statistic) }]),
      ...(agreement && 'w' in agreement ? [{ name: 'agreement (Kendall’s W, 0 to 1)', value: agreement.w.toFixed(2) }] : []),
      ...(p === null ? [] : [{ name: 'by chance', value: chanceWords(p) }]),
      ...(tells ? [] : [neededInput(test === 'triangle' ? 'triangle' : 'pair')]),
    ],
    assumptions: [
      ...(p === null ? [] : [CHANCE, 'It tells where that is 5 in 100 or less.']),
      ...(method === 'exact' ? ['Counted exactly.'] : method === null ? [] : [`By the ${method} distribution: there are too many orders to count.`]),
      'Taste is never counted into vigour.',
    ],
    source,
  };
} // prettier-ignore

const TIMES = ['', 'once', 'twice'];
/** "smooth twice, sweet once". */
export const wordsSays = (words: readonly { readonly word: string; readonly count: number }[]): string =>
  words
    .toSorted((a, b) => b.count - a.count)
    .map(({ word: one, count }) => `${one} ${TIMES[count] ?? `${word(count)} times`}`)
    .join(', ');

/** What whoever pours is told. @param bowls how many there are */
export const pourSays = (bowls: number): string[] => [
  `${upper(counted(bowls, 'bowl'))}: write a code on each, and pour where no taster looks.`,
  '15 to 20 g in each, at 8 to 12 °C, all stirred or none. Water and a plain cracker stand beside them.',
  'Look at each jar and smell it once more. What is not right is not served.',
];

const DIFFERING: Readonly<Record<Differing, string>> = {
  'stirred in': 'what was stirred in',
  amount: 'how much was stirred in',
  milk: 'the milk',
  seed: 'the seed',
};
/** What a trial is said to differ in: "what was stirred in", "how much oat bran". */
export const differsIn = ({ what, of }: Difference): string =>
  what === 'amount' && of !== null ? `how much ${of}` : DIFFERING[what];

export const differenceSays = (difference: Difference | null): string =>
  difference === null
    ? 'Nothing that is noted tells these jars apart, so there is nothing to compare.'
    : `They differ in ${differsIn(difference)}.`;

/** What else they differ in, said before anyone tastes; null where it is one thing only. Of the seed its own caution tells. */
export const alsoSays = ({ also }: Difference): string | null => {
  const others = also.filter((one) => one !== 'seed').map((one) => DIFFERING[one]);
  return others.length === 0
    ? null
    : `They differ in ${listed(others)}, too: a difference may come from that.`;
};

/** How far a tasting is that is not revealed. */
export const begunSays = (done: number, tasters: number): string =>
  done >= tasters
    ? 'All have tasted: reveal which jar is which.'
    : `Being tasted: ${done === 0 ? 'none' : word(done)} of ${word(tasters)} ${done < 2 ? 'has' : 'have'} marked.`;

export const NOT_TASTED = 'Not tasted yet.';
