// From the keeper's history, prices and shelf to what advice.next and advice.restart reply. Seeded: the same ledger gives
// the same advice.
import { SAYS_NOTHING_OF_SAFETY } from './vigour-says';
import type { LineJudgement } from '../vigour/line';
import { againstSentence, beside, verdictSays } from './verdict-says';
import { costAssumedSays, costWords, goodJarWords } from './cost-says';
import { fewerSays, reserveSentence, restartSentence, restartShort, tooEarlySentence } from './restart-says';
import { CHANCE_PRIORS, chancesBy, discardedShare, type PooledChances } from '../advice/chances';
import type { KeptCosts } from '../advice/costs';
import type { LineTold } from '../advice/line-told';
import { adviseNext } from '../advice/seed-ranking';
import { nextSays } from './next-says';
import {
  doubtInShort,
  doubtSays,
  lookInShort,
  lookSays,
  stopInShort,
  stopLifts,
  stopSays,
} from './seed-looks-says';
import { seededRandom } from '../advice/random';
import { LOOK_AGAIN, LOOK_FIRST, MAY_BE_GONE } from '../advice/ranking-order';
import { bestReserve } from '../advice/reserve';
import { lastDayOf } from '../advice/stops';
import { ABOUT_AS_GOOD, restartOf, rivals, type Restart } from '../advice/restart-curve';
import { AS_GOOD, HOUR_OF_DELAY, type CostBasis } from '../advice/seed-cost';
import type { NextReply, RestartReply, VerdictReply, VerdictWord } from '../shapes/advice-replies';
import { AS_GOOD_COST } from '../advice/ties';
import { verdictOf, type Verdict } from '../advice/verdict';
import { evidenceOf, lackingIn, restsOnAssumption, tellsOfGoingOn, type Evidence } from '../advice/sureness';
import type { Source } from '../ledger/records';
import { daysWords } from '../quantities/typed-days';
import type {
  KeptSeed,
  NextAdvice,
  NextInput,
  Ranked,
  SeedCandidate,
  SeedLimits,
} from '../advice/seed-candidate';

const VERSION = 2;
const DRAWS = 200;
const SEED = 20261125;
/** Generations looked at: twice as far as any line has gone, at least 20, at most 60. */
const reach = (lastSeen: number): number => Math.min(60, Math.max(20, 2 * lastSeen));

const cents = (value: number): number => Math.round(value * 100) / 100;

export interface Outlook extends CostBasis {
  readonly chances: PooledChances;
  /** Starting afresh from sources. */
  readonly sources: Restart;
  readonly evidence: Evidence;
  /** Part of jars, first batches apart, that are discarded: the stated one until the keeper's own tell. */
  readonly discardedShare: number;
  readonly kept: KeptCosts;
}

const drawn = new WeakMap<readonly LineTold[], PooledChances>();

/** The chances by generation and their draws, made once for each list of lines. */
function chancesOf(lines: readonly LineTold[]): PooledChances {
  const known = drawn.get(lines);
  if (known) return known;
  const chances = chancesBy(
    lines,
    reach(Math.max(0, ...lines.map(({ last }) => last))),
    DRAWS,
    seededRandom(SEED),
  );
  drawn.set(lines, chances);
  return chances;
}

/** What all advice stands on. @param lines what each line tells (line-told.ts) */
export function outlookOf(lines: readonly LineTold[], kept: KeptCosts): Outlook {
  const chances = chancesOf(lines);
  const telling = lines.filter(tellsOfGoingOn);
  const sources = restartOf(kept.costs, chances, 0, kept.doubt);
  const byTelling =
    telling.length === lines.length ? sources : restartOf(kept.costs, chancesOf(telling), 0, kept.doubt);
  if (!sources || !byTelling) throw new Error('no generation was looked at');
  return {
    chances,
    sources,
    evidence: evidenceOf(telling, byTelling, lines),
    discardedShare: discardedShare(lines),
    kept,
    costs: kept.costs,
    ...chances.mean,
    lastSeen: chances.lastSeen,
    freshStart: { cost: sources.cost, generations: sources.best },
  };
}

const parametersOf = ({ kept }: Outlook): Record<string, number> => ({
  ...kept.costs,
  weakPriorBad: CHANCE_PRIORS.weak.bad,
  weakPriorOf: CHANCE_PRIORS.weak.of,
  discardedPriorBad: CHANCE_PRIORS.discarded.bad,
  discardedPriorOf: CHANCE_PRIORS.discarded.of,
  draws: DRAWS,
  seed: SEED,
});

const fewer = ({ chances }: Outlook): string[] => (chances.fewer === null ? [] : [fewerSays(chances.fewer)]);

const money = ({ kept }: Outlook, value: number): string => costWords(value, kept.unit);

/** Said wherever a reserve's cost is worked out. */
const RESERVE_ASSUMED =
  'What the storage of a reserve delays its first batch by is counted; it is kept back while something fresh is as good.';

/**
 * The reply of advice.restart.
 * @param candidates what is kept (shelf.ts): the reserve that a restart is held against is among them
 * @param today generation of the newest jar of the line asked about, @param verdict on it; null: no line was asked about
 */
export function restartReply(
  outlook: Outlook,
  candidates: readonly SeedCandidate[],
  limits: SeedLimits,
  today: number | null,
  verdict: VerdictWord | null,
): RestartReply {
  const { costs, unit } = outlook.kept;
  const assumed = outlook.kept.assumed.map(costAssumedSays);
  const found = rivals(
    costs,
    outlook.chances,
    bestReserve(candidates, limits, outlook),
    outlook.sources,
    outlook.kept.doubt,
  );
  if (!found) throw new Error('no draws were made');
  const { sources, reserve, better } = found;
  const lacking = lackingIn(outlook.evidence);
  const sure = lacking === null;
  const told = [
    restartSentence(sources, outlook.chances.lastSeen),
    ...(reserve ? [reserveSentence(reserve, sources.cost, unit)] : []),
  ].join(' ');
  return {
    sentence: lacking
      ? tooEarlySentence(sources, lacking)
      : told + (verdict === null ? '' : beside(verdict, today !== null && today >= sources.from)),
    short: restartShort(sources, sure, verdict, today),
    sure,
    best: sources.best,
    from: sources.from,
    to: sources.to,
    openEnded: sources.openEnded,
    curve: sources.curve.map((point) => ({
      ...point,
      cost: cents(point.cost),
      low: cents(point.low),
      high: cents(point.high),
    })),
    today,
    lastSeen: outlook.chances.lastSeen,
    reserve: reserve && {
      label: reserve.label,
      generation: reserve.generation,
      best: reserve.restart.best,
      cost: cents(reserve.goodJar),
    },
    better,
    unit,
    assumed: [...assumed, ...fewer(outlook)],
    why: {
      formula:
        'Cost of a good jar if every line is ended after so many generations: a fresh start and all its jars, weak and discarded ones with their losses, an unplanned end at its extra cost, shared among the good jars.',
      inputs: [
        { name: 'a fresh start', value: money(outlook, costs.freshStart) },
        { name: 'a jar', value: money(outlook, costs.jar) },
        { name: 'jars a generation', value: String(costs.jarsPerGeneration) },
        { name: 'last generation of which jars were seen', value: String(outlook.chances.lastSeen) },
      ],
      assumptions: [
        ...assumed,
        ...fewer(outlook),
        `Until your own jars tell, one jar in ${Math.round(CHANCE_PRIORS.weak.of / CHANCE_PRIORS.weak.bad)} is taken to come out weak. Then the chance is what is believed of how each of your lines stood, generation by generation; beyond the last one seen it stays, and is less sure.`,
        'Jars are discarded, and lines end, as often at every generation after the first.',
        ...(reserve ? [RESERVE_ASSUMED] : []),
        `Anything within ${100 * ABOUT_AS_GOOD} % of the lowest cost counts as about as good.`,
      ],
      // The reference is from memory.
      source: 'With no weak jars this is age replacement (Barlow & Hunter 1960).',
    },
    model: { version: VERSION, parameters: parametersOf(outlook) },
  };
}

/** What advice stands on for one question: what is kept, the keeper's limits, what a fresh start is called, the lines asked about. */
export interface Asked {
  readonly candidates: readonly KeptSeed[];
  readonly limits: SeedLimits;
  readonly freshLabel: string;
  /** Form of what a line was started from; null: nobody said, or of several forms. */
  readonly startForm: Source['form'];
  readonly blocked: readonly string[];
  readonly lineNames: ReadonlyMap<string, string>;
}

const inputFor = (outlook: Outlook, asked: Asked): NextInput => ({
  ...outlook,
  ...asked,
  unit: outlook.kept.unit,
  jarsTell: outlook.evidence.jars,
});

/** The reply of advice.line. @param rootOf the jar because of which a jar is held, or in doubt; null where it is itself */
export function verdictReply(
  outlook: Outlook,
  asked: Asked,
  judgement: LineJudgement,
  rootOf: (jar: string) => { readonly jar: string; readonly label: string } | null,
): VerdictReply {
  const advice = adviseNext(inputFor(outlook, asked));
  const verdict = verdictOf(judgement, advice);
  const byId = new Map(asked.candidates.map((candidate) => [candidate.id, candidate]));
  const against = againstNewest(advice, byId, rootOf);
  const seedOf = ({ id, label, level }: Ranked): VerdictReply['asGood'][number] => ({
    jar: (id !== null && byId.get(id)?.jar) || null,
    portion: (id !== null && byId.get(id)?.portion) || null,
    label,
    level,
  });
  return {
    verdict: verdict.word,
    reason:
      verdict.reason.code === 'look'
        ? { code: 'look', look: lookSays(verdict.reason.look) }
        : { ...verdict.reason },
    ...verdictSays(
      verdict,
      asked.startForm,
      verdict.seed?.candidate ? lastDayOf(verdict.seed.candidate, asked.limits) : null,
    ),
    seed: verdict.seed && seedOf(verdict.seed),
    asGood: verdict.asGood.map(seedOf),
    look: verdict.look.map(lookSays),
    against,
    lift: liftable(verdict, against, advice, byId),
  };
}

/** The jar of which the verdict, or what stands against the newest jar, tells a caution that a written reason can lift. */
function liftable(
  { reason, seed }: Verdict,
  against: VerdictReply['against'],
  { ranking }: NextAdvice,
  byId: ReadonlyMap<string | null, KeptSeed>,
): VerdictReply['lift'] {
  const told =
    reason.code === 'look' && reason.look.code === 'caution'
      ? seed
      : ranking.find(
          ({ id, kind, stops, doubts, looks }) =>
            kind === 'jar' &&
            byId.get(id)?.jar === against?.jar &&
            (stops[0]?.code === 'set aside' ||
              (stops.length === 0 && doubts.length === 0 && looks[0]?.code === 'caution')),
        );
  const jar = told && byId.get(told.id)?.jar;
  return told && jar ? { jar, label: told.label } : null;
}

/** The gravest thing that stands against a line's newest jar: a stop, else a doubt, else what has to be looked at. */
function againstNewest(
  { ranking }: NextAdvice,
  byId: ReadonlyMap<string | null, KeptSeed>,
  rootOf: (jar: string) => { readonly jar: string; readonly label: string } | null,
): VerdictReply['against'] {
  for (const { id, kind, label, stops, doubts, looks } of ranking) {
    const jar = byId.get(id)?.jar;
    const [stop] = stops;
    const [doubt] = doubts;
    const [look] = looks;
    const says = stop
      ? stopInShort(stop)
      : doubt
        ? doubtInShort(doubt)
        : look
          ? lookInShort(look)
          : undefined;
    if (kind !== 'jar' || says === undefined || jar === undefined) continue;
    // That it stands in warmth still is how it should be.
    if (stop?.code === 'in its hold') continue;
    const ownLimit = stop?.code === 'too old' || stop?.code === "keeper's limit";
    return { jar, label, says: againstSentence(label, says), root: ownLimit ? null : rootOf(jar) };
  }
  return null;
}

/** The reply of advice.next. */
export function nextReply(outlook: Outlook, asked: Asked): NextReply {
  const input = inputFor(outlook, asked);
  const advice = adviseNext(input);
  const { sentence, ranking, suggestions, lastOf } = nextSays(advice, input);
  const { candidates, limits } = asked;
  const byId = new Map(candidates.map((candidate) => [candidate.id, candidate]));
  return {
    sentence,
    nothingMayBeUsed: advice.nothingMayBeUsed,
    ranking: ranking.map((ranked) => ({
      jar: (ranked.id !== null && byId.get(ranked.id)?.jar) || null,
      portion: (ranked.id !== null && byId.get(ranked.id)?.portion) || null,
      label: ranked.label,
      kind: ranked.kind,
      allowed: ranked.allowed,
      discard: ranked.discard,
      level: ranked.level,
      stops: ranked.stops.map((stop) => ({ code: stop.code, says: stopSays(stop), lifts: stopLifts(stop) })),
      doubts: ranked.doubts.map(doubtSays),
      looks: ranked.looks.map(lookSays),
      cost: ranked.cost === null ? null : cents(ranked.cost),
      weakChance: ranked.weakChance,
      assumed: ranked.allowed && restsOnAssumption(input.jarsTell),
      reasons: [...ranked.reasons],
      lines: [...ranked.lines],
      wouldChange: ranked.wouldChange,
    })),
    suggestions: [...suggestions],
    warnings: lastOf.map(({ says }) => says),
    lastOf: lastOf.map(({ id, line, says }) => ({
      jar: byId.get(id)?.jar ?? null,
      portion: byId.get(id)?.portion ?? null,
      line,
      says,
    })),
    unit: outlook.kept.unit,
    why: {
      formula:
        'Hard stops first. Then what going on from each seed is worth, all that may follow taken in, against a fresh start; as the cost of a good jar. A jar of no line goes by the chances of its generation.',
      inputs: [
        {
          name: 'a good jar after a fresh start',
          value: goodJarWords(outlook.sources.cost, outlook.kept.unit),
        },
        {
          name: 'limit in the fridge',
          value: limits.fridgeDays === null ? 'none' : daysWords(limits.fridgeDays),
        },
        {
          name: 'limit in the freezer',
          value: limits.freezerDays === null ? 'none' : daysWords(limits.freezerDays),
        },
        {
          name: 'generations at most',
          value: limits.generation === null ? 'no limit' : String(limits.generation),
        },
      ],
      assumptions: [
        ...outlook.kept.assumed.map(costAssumedSays),
        'What is believed of the level that its batch passes on moves the chance of a weak jar; it never lifts a stop.',
        `The batch counts, not the jar that was picked of it: a third of what a jar scored more than ${AS_GOOD} points below its batch counts against it; what it scored above counts for nothing.`,
        `Costs less than ${AS_GOOD_COST * 1000} in 1,000 of a jar apart are as good as equal: the fresher comes first, and a reserve is kept back.`,
        `What has to be looked at first counts as ${Math.round(100 * LOOK_FIRST)} in 100 dearer for its place, with ${Math.round(100 * LOOK_AGAIN)} more for each further thing to look at, and what nobody has said to be still kept as ${Math.round(100 * MAY_BE_GONE)} in 100: they come before another only where they are clearly cheaper.`,
        'What nobody has written an outcome of comes after what was seen; while it may still be in its hold it is no seed.',
        'What descends from a jar in doubt, or from one whose hold was lifted, has to be looked at first; no score changes that.',
        'Where a past is not known, chances are those of the furthest generation that any jar of yours has reached.',
        `An hour of delay is taken to cost ${100 * HOUR_OF_DELAY} in 100 of a jar.`,
        RESERVE_ASSUMED,
        'What its own hold left in doubt puts a seed last; no score changes that.',
      ],
      source: null,
    },
    safety: SAYS_NOTHING_OF_SAFETY,
    model: { version: VERSION, parameters: { ...parametersOf(outlook), ...limits } },
  };
}
