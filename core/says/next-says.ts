// The ranking of seeds in words: the one sentence, each seed's reasons, its card and what would change its place, and what is said
// before the last of a line is eaten. A seed that has to be looked into or is in doubt is never recommended by any.
import { CARRIED_RULES } from '../advice/carried';
import type { NextAdvice, NextInput, Ranked, SeedCandidate } from '../advice/seed-candidate';
import { goodJarSays } from './cost-says';
import { looksOf } from '../advice/looks';
import { lastDayOf } from '../advice/stops';
import { reckonedGeneration } from '../advice/seed-cost';
import { restsOnAssumption } from '../advice/sureness';
import { wouldChange } from '../advice/would-change';
import { lineWords } from '../lineage/labels';
import { inWords } from './way-to-source';
import { daysSpan } from '../quantities/typed-days';
import type { SeedLook } from '../shapes/seed-codes';
import { NOT_NOTED, quoteSentence } from './safety-says';
import { cardLines, FRESH_START_LINES, MAY_BE_USED_UP } from './seed-card-says';
import { doubtSays, lookSays, stopLifts, stopSays } from './seed-looks-says';
import { seedScoreSays } from './seed-score-says';
import { lastDaySays } from './verdict-says';
import { wouldChangeSays } from './would-change-says';

/** A start this much slower (h) is worth a warning: spoilage organisms have time. */
const SLOW_START = 6;
const isSlow = ({ delayHours }: SeedCandidate): boolean => delayHours >= SLOW_START;
const SLOW_SAYS =
  'That makes a slow start likely. Keep to the early check: if the next jar is still loose or not sour by then, when in doubt, discard.';
const percent = (x: number): string => `${Math.round(100 * x)} in 100`;

/** Said beside a figure that no jars of the keeper's own stand behind. */
export const STARTING_ASSUMPTION = 'a starting assumption';
/** " (a starting assumption: nothing of yours tells yet)"; '' once enough does. */
const assumedWords = (jars: number): string =>
  !restsOnAssumption(jars)
    ? ''
    : ` (${STARTING_ASSUMPTION}: ${jars === 0 ? 'nothing of yours tells yet' : `only ${jars} of your jars ${jars === 1 ? 'tells' : 'tell'} yet, too few`})`;

const RESERVE_COUNTED = 'It is a reserve: it is kept back while something fresh is as good.';

const NO_SCORE = 'There is nothing to score it by, so it is taken to be a little riskier.';

/** From this chance of a weak jar on its price is explained: the two would seem to disagree. */
const OFTEN_WEAK = 0.2;
const PRICE_SPREAD =
  'Its price rises less than that: it is spread over all batches that follow, fresh starts too, and a weak jar is still worth half.';

/** Why it stands where it stands beside others that cost as much. */
const waits = (why: string): string => `It stands a little further back, because ${why}.`;

/** Its generation, and what follows where its past is not known. */
function generationSays(candidate: SeedCandidate, input: NextInput): string[] {
  const { generation, atLeast, pastUnknown } = candidate;
  const says = `The next jar would be of generation ${generation + 1}${atLeast ? ' at least' : ''}.`;
  if (!pastUnknown) return [says];
  const { generation: limit } = input.limits;
  return [
    `${says} Its past is not known, so its chances are taken as those of generation ${reckonedGeneration(candidate, input)}, ${input.lastSeen > generation ? 'the furthest that any jar of yours has gone' : 'and may be worse'}.`,
    ...(limit === null
      ? []
      : [`Whether the limit of ${limit} generations (Preferences) is reached can't be told.`]),
  ];
}

const carriesSays = (chance: number): string =>
  `Nearly a whole batch of its line spoiled. The chance that this seed carries on unseen what spoiled it is about ${percent(chance)}, which counts against it.`;

/** A delay that is shorter than this is not said. */
const TOLD_HOURS = 0.5;

/** How long it has been kept, as far as that was said, and by how much later the next jar should set. */
function keptSays({ kind, keptSaid, days, daysLeast, delayHours }: SeedCandidate): string {
  const first = keptSaid
    ? `It has been kept for ${daysSpan(days, daysLeast)}`
    : `${MAY_BE_USED_UP} It has stood for ${daysSpan(days, daysLeast)}`;
  if (delayHours < TOLD_HOURS) return `${first}.`;
  const hours = Math.round(delayHours) === 1 ? 'an hour' : `${Math.round(delayHours)} hours`;
  return `${first}, so ${kind === 'reserve' ? 'each jar of its first batch' : 'the next jar'} should set about ${hours} later.`;
}

function lastDay(candidate: SeedCandidate, { limits }: NextInput): string[] {
  const limit = lastDayOf(candidate, limits);
  return limit === null ? [] : [lastDaySays(limit)];
}

/** Why a seed stands where it stands, the deciding thing first. @param first it stands first of all */
function seedReasons(ranked: Ranked, candidate: SeedCandidate, input: NextInput, first: boolean): string[] {
  const { doubts, looks, keptSaid } = ranked;
  const mayCarry = candidate.level?.mayCarry ?? 0;
  const [generation = '', ...past] = generationSays(candidate, input);
  const scored = seedScoreSays(candidate.scored);
  return [
    ...doubts.map(doubtSays),
    ...looks.map(lookSays),
    ...(candidate.outcomeKnown ? [] : ['Nobody has written down how it came out. Look at it first.']),
    ...candidate.quotes.map((one) => quoteSentence(one)),
    ...(candidate.passed ? [] : [NOT_NOTED]),
    `${generation} About ${percent(ranked.weakChance ?? 0)} such jars come out weak${assumedWords(input.jarsTell)}.`,
    ...(candidate.level !== null && (ranked.weakChance ?? 0) >= OFTEN_WEAK ? [PRICE_SPREAD] : []),
    ...past,
    ...(mayCarry < CARRIED_RULES.toldFrom ? [] : [carriesSays(mayCarry)]),
    // A score must not speak for what its own hold left in doubt.
    ...(doubts.length > 0 ? [] : candidate.vigour ? scored : [...scored, NO_SCORE]),
    keptSays(candidate),
    ...lastDay(candidate, input),
    ...(isSlow(candidate) ? [SLOW_SAYS] : []),
    ...(candidate.kind === 'reserve' ? [RESERVE_COUNTED] : []),
    ...(looks.length > 0 && !first ? [waits('it has to be looked at first')] : []),
    ...(keptSaid || first ? [] : [waits('it may be gone')]),
  ];
}

/** What is said of one that is ranked. */
export interface RankedSays {
  readonly reasons: readonly string[];
  /** What its card says, the deciding thing first. */
  readonly lines: readonly string[];
  readonly wouldChange: string;
}

function stoppedSays({ stops, candidate }: Ranked): RankedSays {
  const lifts = stops.flatMap((stop) => stopLifts(stop) ?? []);
  const says = stops.map(stopSays);
  return {
    reasons: [...says, ...(candidate?.quotes ?? []).map((one) => quoteSentence(one))],
    lines: says.slice(0, 1),
    wouldChange: lifts.length < stops.length ? 'Nothing lifts this.' : lifts.join(' '),
  };
}

const freshReason = ({ freshStart, unit, jarsTell }: NextInput): string =>
  `${goodJarSays(freshStart.cost, unit, ' then')}, the fresh start and its uneven first batch spread over the jars that follow${assumedWords(jarsTell)}.`;

/** @param allowed all that may be used, in order */
function rankedSays(ranked: Ranked, allowed: readonly Ranked[], input: NextInput): RankedSays {
  if (!ranked.allowed) return stoppedSays(ranked);
  const { candidate, looks, weakChance } = ranked;
  const change = wouldChangeSays(wouldChange(allowed.indexOf(ranked), allowed, input.costs.jar), input.unit);
  return candidate === null
    ? { reasons: [freshReason(input)], lines: FRESH_START_LINES, wouldChange: change }
    : {
        reasons: seedReasons(ranked, candidate, input, allowed[0] === ranked),
        lines: cardLines({
          ...candidate,
          doubts: candidate.doubts.map(doubtSays),
          quotes: candidate.quotes.map((one) => quoteSentence(one)),
          looks: looks.map(lookSays),
          weakChance: weakChance ?? 0,
          lastOf: lastDayOf(candidate, input.limits),
          slow: isSlow(candidate),
        }),
        wouldChange: change,
      };
}

export interface NextSays {
  readonly sentence: string;
  readonly ranking: readonly (Ranked & RankedSays)[];
  readonly suggestions: readonly string[];
  readonly lastOf: readonly { readonly id: string; readonly line: string; readonly says: string }[];
}

/** All that is said with a ranking. */
export function nextSays(advice: NextAdvice, input: NextInput): NextSays {
  const allowed = advice.ranking.filter((ranked) => ranked.allowed);
  const waiting = advice.ranking.filter(
    ({ stops }) => stops.length > 0 && stops.every(({ code }) => code === 'in its hold'),
  );
  return {
    sentence: nextSentence(allowed, waiting),
    ranking: advice.ranking.map((ranked) => ({ ...ranked, ...rankedSays(ranked, allowed, input) })),
    suggestions: input.blocked.map(
      (name) =>
        `Make one small plain jar in the next batch: without it, ${name} and culture can't be told apart.`,
    ),
    lastOf: advice.lastOf.map(({ only, line }) => ({
      id: only.id,
      line,
      says: lastSays(only, looksOf(only), lineWords(input.lineNames.get(line) ?? '')),
    })),
  };
}

/** Why nothing but a fresh start is offered in earnest; null where something is. @param others what may be used beside it */
const whyLast = (others: readonly Ranked[]): string | null =>
  others.length > 0 && others.every(({ tells }) => tells === 'in doubt')
    ? 'all else that is kept is in doubt from its own hold. When in doubt, discard.'
    : null;

/** What has to be done before a seed is used, as it is said with every recommendation of it. */
const beforeUse = ({ keptSaid }: Pick<Ranked, 'keptSaid'>, looks: readonly SeedLook[]): string[] => [
  ...looks.map(lookSays),
  ...(keptSaid ? [] : [MAY_BE_USED_UP]),
];

/**
 * What to do: one sentence, and what has to be looked at first.
 * @param allowed in order, the fresh start among them @param waiting what only its hold keeps from being offered
 */
function nextSentence(allowed: readonly Ranked[], waiting: readonly Ranked[]): string {
  const [first, ...others] = allowed;
  if ((!first || (others.length === 0 && first.kind === 'fresh start')) && waiting.length > 0)
    return `Nothing that is kept may be used as seed yet: nobody has written down how ${inWords(waiting.map(({ label }) => label))} came out. Write that down after the hold, or make a fresh start from sources.`;
  if (!first || (others.length === 0 && first.kind === 'fresh start'))
    return 'Nothing that is kept may be used as seed. Make a fresh start from sources.';
  // What is in doubt never stands first: a fresh start is offered before it.
  if (first.kind === 'fresh start') {
    const best = `${first.label.charAt(0).toUpperCase()}${first.label.slice(1)} comes out best now`;
    const looks = whyLast(others);
    return looks === null ? `${best}.` : `${best}: ${looks}`;
  }
  const seed =
    first.tells === 'unseen'
      ? `Seed the next batch from ${first.label}, but nobody has written down how it came out: look at it first.`
      : `Seed the next batch from ${first.label}.`;
  return [seed, ...beforeUse(first, first.looks)].join(' ');
}

/** What is said of the last that carries a line, before it is eaten or used. @param looks what has to be looked at first */
function lastSays(only: SeedCandidate, looks: readonly SeedLook[], line: string): string {
  const { label, doubts } = only;
  const last = `${label} is the last that carries ${line}`;
  if (doubts.length > 0)
    return `${last}, and its own hold left it in doubt. When in doubt, discard it: a line can be started afresh.`;
  const take = looks.length > 0 ? 'If nothing speaks against it, take seed' : 'Take seed';
  return [`${last}.`, ...beforeUse(only, looks), `${take} from it before it is eaten.`].join(' ');
}
