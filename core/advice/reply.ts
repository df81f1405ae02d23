// From the keeper's history, prices and shelf to what advice.next and advice.restart reply. Seeded: the same ledger gives
// the same advice.
import { SAYS_NOTHING_OF_SAFETY } from '../vigour/says';
import { daysWords } from '../vigour/words';
import { CHANCE_PRIORS, drawChances, type GenerationRecord, type PooledChances } from './chances';
import { costWords, type KeptCosts } from './costs';
import type { History } from './history';
import { adviseNext, type SeedCandidate } from './next';
import { seededRandom } from './random';
import { LOOK_AGAIN, LOOK_FIRST, MAY_BE_GONE } from './order';
import { bestReserve, reserveCosts } from './reserve';
import { ABOUT_AS_GOOD, restartOf, rivals, type Restart } from './restart';
import { AS_GOOD, type CostBasis } from './seed-cost';
import type { SeedLimits } from './stops';
import type { NextReply, RestartReply } from './shapes';
import { evidenceOf, tellsEnough, tooEarlySentence, type Evidence } from './sureness';

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
  readonly kept: KeptCosts;
}

const meanOf = (draws: readonly (readonly number[])[]): number[] =>
  (draws[0] ?? []).map((_, i) => draws.reduce((sum, draw) => sum + (draw[i] ?? 0), 0) / draws.length);

const drawn = new WeakMap<readonly GenerationRecord[], PooledChances>();

/** Draws of the chances by generation, made once for each list of records. */
export function chancesOf(records: readonly GenerationRecord[]): PooledChances {
  const known = drawn.get(records);
  if (known) return known;
  const lastSeen = Math.max(0, ...records.filter(({ jars }) => jars > 0).map(({ generation }) => generation));
  const chances = drawChances(records, reach(lastSeen), DRAWS, seededRandom(SEED));
  drawn.set(records, chances);
  return chances;
}

/** What all advice stands on. @param history of all lines (history.ts) */
export function outlookOf({ all, telling }: History, kept: KeptCosts): Outlook {
  const chances = chancesOf(all);
  const sources = restartOf(kept.costs, chances);
  const byTelling = telling === all ? sources : restartOf(kept.costs, chancesOf(telling));
  if (!sources || !byTelling) throw new Error('no draws were made');
  return {
    chances,
    sources,
    evidence: evidenceOf(telling, byTelling, all),
    kept,
    costs: kept.costs,
    weak: meanOf(chances.draws.map(({ weak }) => weak)),
    discarded: meanOf(chances.draws.map(({ discarded }) => discarded)),
    ended: meanOf(chances.draws.map(({ ended }) => ended)),
    lastSeen: chances.lastSeen,
    fromReserve: reserveCosts(kept.costs, chances),
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

/** That later generations rest on fewer lines, in words. */
const fewerSays = ({ chances: { fewer } }: Outlook): string[] =>
  fewer === null
    ? []
    : [
        `From generation ${fewer.from} on only ${fewer.lines} of your ${fewer.of} lines ${fewer.lines === 1 ? 'tells' : 'tell'}. Those not yet restarted may be the better ones, so later chances are taken as less sure.`,
      ];

const money = ({ kept }: Outlook, value: number): string => costWords(value, kept.unit);

/** Said wherever a reserve's cost is worked out. */
const RESERVE_ASSUMED =
  'Laying a reserve by again is taken to cost a third of a fresh start. That, and what its storage delays its first batch, is spread over the jars that follow.';

/**
 * The reply of advice.restart.
 * @param candidates what is kept (shelf.ts): the reserve that a restart is held against is among them
 * @param today generation of the newest jar of the line asked about
 */
export function restartReply(
  outlook: Outlook,
  candidates: readonly SeedCandidate[],
  limits: SeedLimits,
  today: number | null,
): RestartReply {
  const { costs, assumed, unit } = outlook.kept;
  const found = rivals(costs, outlook.chances, bestReserve(candidates, limits, outlook), unit, outlook.sources); // prettier-ignore
  if (!found) throw new Error('no draws were made');
  const { sources, reserve, better, sentence } = found;
  const sure = tellsEnough(outlook.evidence);
  return {
    sentence: sure ? sentence : tooEarlySentence(sources, outlook.evidence),
    sure,
    best: sources.best,
    from: sources.from,
    to: sources.to,
    openEnded: sources.openEnded,
    curve: sources.curve.map((point) => ({ ...point, cost: cents(point.cost), low: cents(point.low), high: cents(point.high) })), // prettier-ignore
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
    assumed: [...assumed, ...fewerSays(outlook)],
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
        ...fewerSays(outlook),
        `Until your own jars tell, one jar in ${Math.round(CHANCE_PRIORS.weak.of / CHANCE_PRIORS.weak.bad)} is taken to come out weak. From the second generation on, the chance never falls.`,
        ...(reserve ? [RESERVE_ASSUMED] : []),
        `Anything within ${100 * ABOUT_AS_GOOD} % of the lowest cost counts as about as good.`,
      ],
      // The reference is from memory.
      source: 'With no weak jars this is age replacement (Barlow & Hunter 1960).',
    },
    model: { version: VERSION, parameters: parametersOf(outlook) },
  };
}

/** A candidate with the ids that the reply names. */
export type KeptSeed = SeedCandidate & { readonly jar: string; readonly portion: string | null };

/** The reply of advice.next. */
export function nextReply(
  outlook: Outlook,
  candidates: readonly KeptSeed[],
  limits: SeedLimits,
  freshStart: string,
  blocked: readonly string[],
  lineNames: ReadonlyMap<string, string>,
): NextReply {
  const advice = adviseNext({
    ...outlook,
    candidates,
    limits,
    unit: outlook.kept.unit,
    jarsTell: outlook.evidence.jars,
    freshStart: { cost: outlook.sources.cost, label: freshStart },
    blocked,
    lineNames,
  });
  const byId = new Map(candidates.map((candidate) => [candidate.id, candidate]));
  return {
    sentence: advice.sentence,
    nothingMayBeUsed: advice.nothingMayBeUsed,
    ranking: advice.ranking.map((ranked) => ({
      jar: (ranked.id !== null && byId.get(ranked.id)?.jar) || null,
      portion: (ranked.id !== null && byId.get(ranked.id)?.portion) || null,
      label: ranked.label,
      kind: ranked.kind,
      allowed: ranked.allowed,
      stops: [...ranked.stops],
      doubts: [...ranked.doubts],
      looks: [...ranked.looks],
      cost: ranked.cost === null ? null : cents(ranked.cost),
      weakChance: ranked.weakChance,
      reasons: [...ranked.reasons],
      wouldChange: ranked.wouldChange,
    })),
    suggestions: [...advice.suggestions],
    warnings: [...advice.warnings],
    lastOf: advice.lastOf.map(({ id, line, says }) => ({
      jar: byId.get(id)?.jar ?? null,
      portion: byId.get(id)?.portion ?? null,
      line,
      says,
    })),
    unit: outlook.kept.unit,
    why: {
      formula:
        'Hard stops first. Then the cost of a good jar of one more batch from each seed, against the lowest cost of a good jar after a fresh start.',
      inputs: [
        { name: 'a good jar after a fresh start', value: money(outlook, outlook.sources.cost) },
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
        ...outlook.kept.assumed,
        'Vigour moves the odds of a weak jar; it never lifts a stop.',
        `The batch counts, not the jar that was picked of it: a third of what a jar scored more than ${AS_GOOD} points below its batch counts against it; what it scored above counts for nothing.`,
        `What has to be looked at first counts as ${Math.round(100 * LOOK_FIRST)} in 100 dearer for its place, with ${Math.round(100 * LOOK_AGAIN)} more for each further thing to look at, and what nobody has said to be still kept as ${Math.round(100 * MAY_BE_GONE)} in 100: they come before another only where they are clearly cheaper.`,
        'What nobody has written an outcome of comes after what was seen; while it may still be in its hold it is no seed.',
        'What descends from a jar in doubt, or from one whose hold was lifted, has to be looked at first; no score changes that.',
        'Where a past is not known, chances are those of the furthest generation that any jar of yours has reached.',
        'An hour of delay is taken to cost a hundredth of a jar.',
        RESERVE_ASSUMED,
        'What its own hold left in doubt puts a seed last, and what descends from a jar on hold before those; no score changes that.',
      ],
      source: null,
    },
    safety: SAYS_NOTHING_OF_SAFETY,
    model: { version: VERSION, parameters: { ...parametersOf(outlook), ...limits } },
  };
}
