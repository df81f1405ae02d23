// What to seed from next: every jar, portion and reserve, and a fresh start. Hard stops first, then the expected cost of a
// good jar. No score can lift a stop or answer a doubt; the keeper decides.
import { lineWords } from '../lineage/labels';
import type { CautionLevel } from '../lineage/lineage-shapes';
import { shown } from '../vigour/score';
import { daysWords } from '../vigour/words';
import { costWords } from './costs';
import type { SafetyStop } from '../safety/answer';
import type { Discard } from '../safety/own';
import { NOT_NOTED } from '../says/safety-says';
import { lastSays, nextSentence } from './next-says';
import { looksOf, placeCostOf } from './looks';
import { cardLines, FRESH_START_LINES } from '../says/seed-card-says';
import { inOrder, looksDearer, MAY_BE_GONE } from './order';
import { HOUR_OF_DELAY, reckonedGeneration, seedCost, weakFrom, type CostBasis } from './seed-cost';
import type { SeedLevel } from './seed-level';
import { stopsOf, type SeedLimits, type Stop } from '../safety/stops';
import { wouldChange } from './would-change';

export interface SeedCandidate {
  /** Jar or portion id, for the caller. */
  readonly id: string;
  readonly label: string;
  readonly kind: 'jar' | 'portion' | 'reserve' | 'older sibling';
  /** The batch of its jar: what scores one of its jars scores all. */
  readonly batch: string;
  /** Founding batches of the lines it carries. */
  readonly lines: readonly string[];
  readonly generation: number;
  /** Any path runs into a past that isn't known: its generation is at least that. */
  readonly atLeast: boolean;
  /** The path runs into a jar of which nobody knows the seed, not into a received culture. */
  readonly pastUnknown: boolean;
  readonly discard: Discard | null;
  readonly spoiled: boolean;
  /** What stops it by the one answer on safety, gravest first. */
  readonly stops: readonly SafetyStop[];
  /** It smelled sour and clean at take-out and a curd held, or a meter showed it: of equals the known come first. */
  readonly passed: boolean;
  /** Why it is no seed although nobody said that it did not set (doubts.ts); null where that is not so. */
  readonly acidNotThere: string | null;
  /** The gravest caution that stands, and what it is about. */
  readonly caution: CautionLevel | null;
  readonly cautionSays: string | null;
  /** What its own hold leaves in doubt, a sentence each (doubts.ts): no stop, but it comes last of all. */
  readonly doubts: readonly string[];
  /** Remarks that nobody has answered, quoted. */
  readonly quotes: readonly string[];
  /** What is to be looked at first although it leaves no doubt of the jar itself, a sentence each (doubts.ts, way-back.ts). */
  readonly asks: readonly string[];
  /** Nobody has seen how it came out, and its hold may not have ended (in-hold.ts). */
  readonly inHold: boolean;
  /** Somebody said that it is still kept. */
  readonly keptSaid: boolean;
  readonly place: 'fridge' | 'freezer' | 'dried';
  readonly days: number;
  /** Hours that its storage should cost the next jar. */
  readonly delayHours: number;
  readonly outcomeKnown: boolean;
  /** What its odds rest on: the score of its batch's comparable jars, or its own where it was left out of them. */
  readonly vigour: { readonly points: number; readonly low: number; readonly high: number } | null;
  /** What its batch promises by the posterior of its line (seed-level.ts); null where no line tells. */
  readonly level: SeedLevel | null;
  /** What it scored itself; null where it has no score. */
  readonly own: { readonly points: number } | null;
  /** What is said of either (scored.ts), a sentence each; empty where there is nothing to score it by. */
  readonly scoreSays: readonly string[];
}

export interface NextInput extends CostBasis {
  readonly candidates: readonly SeedCandidate[];
  readonly limits: SeedLimits;
  /** Of the costs: a currency, or 'jars'. */
  readonly unit: string;
  /** Jars of the keeper's own that those chances rest on. */
  readonly jarsTell: number;
  /** How a fresh start from sources is called. */
  readonly freshLabel: string;
  /** Treatments that can't be told from the culture: no plain sibling. */
  readonly blocked: readonly string[];
  /** Names of lines, by the ids used in candidates. */
  readonly lineNames: ReadonlyMap<string, string>;
}

export interface Ranked {
  readonly id: string | null;
  readonly label: string;
  readonly kind: SeedCandidate['kind'] | 'fresh start';
  readonly allowed: boolean;
  /** Whether it was seen how it came out; a jar in doubt comes last. */
  readonly tells: 'seen' | 'unseen' | 'in doubt';
  /** What leaves it in doubt: to be said wherever it is offered. */
  readonly doubts: readonly string[];
  /** What has to be looked at first: to be said wherever it is offered. */
  readonly looks: readonly string[];
  readonly keptSaid: boolean;
  /** It is known to have passed the gate; else that is said, and it stands behind equals that are known. */
  readonly passed: boolean;
  readonly discard: Discard | null;
  readonly level: CautionLevel | null;
  readonly stops: readonly Stop[];
  /** Expected cost of a good jar; null where it may not be used. */
  readonly cost: number | null;
  /** The same as it counts for its place (order.ts). */
  readonly placeCost: number | null;
  /** What it scored itself, as it is shown: of equals the better comes first. */
  readonly own: number | null;
  /** Days it has been kept, and what going on from it is worth beyond a fresh start (jars), where a line tells. */
  readonly days: number;
  readonly worth: number | null;
  /** Chance that it carries on unseen what spoiled a whole batch (carried.ts). */
  readonly carries: number;
  readonly weakChance: number | null;
  readonly reasons: readonly string[];
  /** What its card says, the deciding thing first. */
  readonly lines: readonly string[];
  readonly wouldChange: string;
}

export interface NextAdvice {
  /** What a jar costs: the scale on which costs are near ties. */
  readonly jar: number;
  readonly ranking: readonly Ranked[];
  readonly nothingMayBeUsed: boolean;
  readonly sentence: string;
  readonly suggestions: readonly string[];
  readonly warnings: readonly string[];
  /** What alone still carries a line and may be used: to be warned of before it is eaten. */
  readonly lastOf: readonly { readonly id: string; readonly line: string; readonly says: string }[];
}

/** A start this much slower (h) is worth a warning: spoilage organisms have time. */
const SLOW_START = 6;
const percent = (x: number): string => `${Math.round(100 * x)} in 100`;

const partOfJar = (part: number): string =>
  part < 0.005 ? 'next to nothing' : `${part.toFixed(2)} of a jar`;

/** Fewer jars than this tell nothing: what is said then rests on the assumption it started from. */
const JARS_TO_TELL = 5;
/** Said beside a figure that no jars of the keeper's own stand behind. */
export const STARTING_ASSUMPTION = 'a starting assumption';
/** " (a starting assumption: nothing of yours tells yet)"; '' once enough does. */
const assumedWords = (jars: number): string =>
  jars >= JARS_TO_TELL
    ? ''
    : ` (${STARTING_ASSUMPTION}: ${jars === 0 ? 'nothing of yours tells yet' : `only ${jars} of your jars ${jars === 1 ? 'tells' : 'tell'} yet, too few`})`;

const RESERVE_COUNTED = 'It is a reserve: it is kept back while something fresh is as good.';

const NO_SCORE = 'There is nothing to score it by, so it is taken to be a little riskier.';

/** "1 in 100": by how much dearer something counts. */
const dearer = (part: number, why: string): string =>
  `For its place it counts as ${percent(part)} dearer than it is, since ${why}.`;

/** Its generation, and what follows where its past is not known. */
function generationSays(candidate: SeedCandidate, input: NextInput): string[] {
  const { generation, atLeast, pastUnknown } = candidate;
  const says = `The next jar would be of generation ${generation + 1}${atLeast ? ' at least' : ''}.`;
  if (!pastUnknown) return [says];
  const { generation: limit } = input.limits;
  return [
    `${says} Its past is not known, so its chances are taken as those of generation ${reckonedGeneration(candidate, input)}, ${input.lastSeen > generation ? 'the furthest that any jar of yours has gone' : 'and may be worse'}.`,
    ...(limit === null ? [] : [`Whether your limit of ${limit} generations is reached can't be told.`]),
  ];
}

/** A chance below this that it carries something on is not said. */
const TOLD_FROM = 0.1;
const carriesSays = (chance: number): string =>
  `Nearly a whole batch of its line spoiled. The chance that this seed carries on unseen what spoiled it is about ${percent(chance)}, which counts against it.`;

/** How long it has been kept, as far as that was said, and what it costs. */
function keptSays({ kind, keptSaid, days, delayHours }: SeedCandidate): string {
  const delay = `should cost the next jar about ${delayHours.toFixed(1)} h, counted as ${partOfJar(delayHours * HOUR_OF_DELAY)}${kind === 'reserve' ? ' for each jar of its first batch' : ''}`;
  return keptSaid
    ? `It has been kept for ${daysWords(days)}, which ${delay}.`
    : `Nobody has said whether it is still kept. It has stood for ${daysWords(days)}, and that ${delay}.`;
}

function rankOf(candidate: SeedCandidate, input: NextInput): Ranked {
  const stops = stopsOf(candidate, input.limits);
  const lifts = stops.flatMap((stop) => stop.lifts ?? []);
  const { doubts } = candidate;
  const tells = doubts.length > 0 ? 'in doubt' : candidate.outcomeKnown ? 'seen' : 'unseen';
  const base = {
    id: candidate.id,
    label: candidate.label,
    kind: candidate.kind,
    stops,
    tells,
    doubts,
    looks: looksOf(candidate),
    keptSaid: candidate.keptSaid,
    passed: candidate.passed,
    discard: candidate.discard,
    level: candidate.caution,
    own: candidate.own && shown(candidate.own.points),
    days: candidate.days,
    worth: candidate.level?.worth ?? null,
    carries: candidate.level?.carries ?? 0,
  } as const;
  if (stops.length > 0) {
    return {
      ...base,
      allowed: false,
      cost: null,
      placeCost: null,
      weakChance: null,
      reasons: stops.map(({ says }) => says),
      lines: stops.slice(0, 1).map(({ says }) => says),
      wouldChange: lifts.length < stops.length ? 'Nothing changes this.' : lifts.join(' '),
    };
  }
  const weak = weakFrom(candidate, input);
  const cost = seedCost(candidate, weak, input);
  const { looks, keptSaid } = base;
  const [generation = '', ...past] = generationSays(candidate, input);
  const reasons = [
    ...doubts,
    ...looks,
    ...(candidate.outcomeKnown ? [] : ['Nobody has written down how it came out. Look at it first.']),
    ...candidate.quotes,
    ...(candidate.passed ? [] : [NOT_NOTED]),
    `${generation} About ${percent(weak)} such jars come out weak${assumedWords(input.jarsTell)}.`,
    ...past,
    ...(base.carries < TOLD_FROM ? [] : [carriesSays(base.carries)]),
    // A score must not speak for what its own hold left in doubt.
    ...(doubts.length > 0 ? [] : candidate.vigour ? candidate.scoreSays : [...candidate.scoreSays, NO_SCORE]),
    keptSays(candidate),
    ...(candidate.delayHours >= SLOW_START
      ? [
          'That makes a slow start likely. Keep to the early check: if the next jar is still loose or not sour by then, when in doubt, discard.',
        ]
      : []),
    ...(candidate.kind === 'reserve' ? [RESERVE_COUNTED] : []),
    ...(looks.length > 0 ? [dearer(looksDearer(looks), 'it has to be looked at first')] : []),
    ...(keptSaid ? [] : [dearer(MAY_BE_GONE, 'it may be gone')]),
  ];
  return {
    ...base,
    allowed: true,
    cost,
    placeCost: placeCostOf(candidate, weak, input),
    weakChance: weak,
    reasons,
    lines: cardLines({ ...candidate, looks, weakChance: weak, slow: candidate.delayHours >= SLOW_START }),
    wouldChange: '',
  };
}

/** Ranks what could seed the next batch. */
export function adviseNext(input: NextInput): NextAdvice {
  const seeds = input.candidates.map((candidate) => rankOf(candidate, input));
  const fresh: Ranked = {
    id: null,
    label: input.freshLabel,
    kind: 'fresh start',
    allowed: true,
    tells: 'seen',
    doubts: [],
    looks: [],
    keptSaid: true,
    passed: true,
    discard: null,
    level: null,
    own: null,
    days: 0,
    worth: null,
    carries: 0,
    stops: [],
    cost: input.freshStart.cost,
    placeCost: input.freshStart.cost,
    weakChance: null,
    reasons: [
      `A good jar then costs ${costWords(input.freshStart.cost, input.unit)}, the fresh start and its uneven first batch spread over the jars that follow${assumedWords(input.jarsTell)}.`,
    ],
    lines: FRESH_START_LINES,
    wouldChange: '',
  };
  const allowed = inOrder(
    seeds.filter((ranked) => ranked.allowed),
    fresh,
    input.costs.jar,
  );
  const ranking = [
    ...allowed.map((ranked, at, all) => ({ ...ranked, wouldChange: wouldChange(at, all, input) })),
    ...seeds.filter((ranked) => !ranked.allowed),
  ];
  const nothingMayBeUsed = seeds.every((ranked) => !ranked.allowed);
  const usable = input.candidates.filter((candidate) => stopsOf(candidate, input.limits).length === 0);
  const lastOf = [...input.lineNames].flatMap(([line, name]) => {
    const carries = usable.filter(({ lines }) => lines.includes(line));
    const [only] = carries;
    return carries.length === 1 && only
      ? [
          {
            id: only.id,
            line,
            says: lastSays(only, looksOf(only), lineWords(name)),
          },
        ]
      : [];
  });
  return {
    jar: input.costs.jar,
    ranking,
    nothingMayBeUsed,
    sentence: nextSentence(
      allowed,
      seeds.filter(({ stops }) => stops.length > 0 && stops.every(({ code }) => code === 'in its hold')),
    ),
    suggestions: input.blocked.map(
      (name) =>
        `Make one small plain jar in the next batch: without it, ${name} and culture can't be told apart.`,
    ),
    warnings: lastOf.map(({ says }) => says),
    lastOf,
  };
}
