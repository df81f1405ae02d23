// What to seed from next: every jar, portion and reserve, and a fresh start. Hard stops first, then the expected cost of a
// good jar. No score can lift a stop; the keeper decides.
import type { Preferences } from '../ledger/records';
import { lineWords } from '../lineage/labels';
import type { CautionLevel } from '../lineage/types';
import { shown } from '../vigour/score';
import { USUAL_POINTS } from '../vigour/types';
import { daysWords } from '../vigour/words';
import { costWords } from './costs';
import type { HeldAncestor } from './held-line';
import { inOrder, wouldChange } from './order';
import { costOfGoingOn, type RestartCosts } from './restart';

export interface SeedCandidate {
  /** Jar or portion id, for the caller. */
  readonly id: string;
  readonly label: string;
  readonly kind: 'jar' | 'portion' | 'reserve' | 'older sibling';
  /** Founding batches of the lines it carries. */
  readonly lines: readonly string[];
  readonly generation: number;
  readonly spoiled: boolean;
  readonly failedGate: boolean;
  /** The gravest caution that stands, and what it is about. */
  readonly caution: CautionLevel | null;
  readonly cautionSays: string | null;
  /** The nearest jar on its way back that is on hold: no stop, but it comes after everything else. */
  readonly heldAncestor: HeldAncestor | null;
  readonly place: 'fridge' | 'freezer' | 'dried';
  readonly days: number;
  /** Hours that its storage should cost the next jar. */
  readonly delayHours: number;
  readonly outcomeKnown: boolean;
  /** Score of its batch's comparable jars where there is one; the jar's own says what it looked like. */
  readonly vigour: { readonly points: number; readonly low: number; readonly high: number } | null;
}

/** The keeper's own limits; null is none. */
export interface SeedLimits {
  readonly fridgeDays: number | null;
  readonly freezerDays: number | null;
  readonly generation: number | null;
}

/** The limits among a keeper's preferences. */
export const limitsOf = (
  kept: Pick<Preferences, 'seedFridgeDays' | 'seedFreezerDays' | 'mostGenerations'>,
): SeedLimits => ({
  fridgeDays: kept.seedFridgeDays,
  freezerDays: kept.seedFreezerDays,
  generation: kept.mostGenerations,
});

export type StopCode = 'spoiled' | 'condemned' | 'on hold' | 'failed the gate' | 'too old' | "keeper's limit";
export interface Stop {
  readonly code: StopCode;
  readonly says: string;
  /** What would lift it; null where nothing does. */
  readonly lifts: string | null;
}

/** Hard stops of a candidate, gravest first. Scores are not among what it reads. */
export function stopsOf(candidate: Omit<SeedCandidate, 'vigour' | 'delayHours'>, limits: SeedLimits): Stop[] {
  const stops: Stop[] = [];
  if (candidate.spoiled)
    stops.push({
      code: 'spoiled',
      says: 'It is spoiled. Discard it: it is neither food nor seed.',
      lifts: null,
    });
  if (candidate.caution === 'condemned')
    stops.push({ code: 'condemned', says: candidate.cautionSays ?? 'It is condemned.', lifts: null });
  if (candidate.caution === 'on hold')
    stops.push({
      code: 'on hold',
      says: candidate.cautionSays ?? 'It is on hold because of a spoiled jar.',
      lifts: 'Only a written reason lifts the hold.',
    });
  if (candidate.failedGate)
    stops.push({
      code: 'failed the gate',
      says: 'It had not set at take-out, and no pH at or below 4.6 was shown by a meter.',
      lifts: null,
    });
  const limit = candidate.place === 'fridge' ? limits.fridgeDays : limits.freezerDays;
  if (limit !== null && candidate.days > limit)
    stops.push({
      code: 'too old',
      says: `It has stood ${candidate.place === 'fridge' ? 'in the fridge' : candidate.place === 'freezer' ? 'in the freezer' : 'dried'} for ${daysWords(candidate.days)}; your limit is ${limit}.`,
      lifts: `A limit of ${daysWords(candidate.days)} or more, among your preferences, would let it in again.`,
    });
  if (limits.generation !== null && candidate.generation + 1 > limits.generation)
    stops.push({
      code: "keeper's limit",
      says: `The next jar would be of generation ${candidate.generation + 1}; your limit is ${limits.generation}.`,
      lifts: `A limit of ${candidate.generation + 1} generations or more, among your preferences, would let it in again.`,
    });
  return stops;
}

export interface NextInput {
  readonly candidates: readonly SeedCandidate[];
  readonly limits: SeedLimits;
  readonly costs: RestartCosts;
  /** Of the costs: a currency, or 'jars'. */
  readonly unit: string;
  /** Mean chances by generation, index 0 is generation 1 (core/advice/chances.ts). */
  readonly weak: readonly number[];
  readonly discarded: readonly number[];
  readonly ended: readonly number[];
  /** Jars of the keeper's own that those chances rest on. */
  readonly jarsTell: number;
  /** Cost of a good jar when restarting from a reserve of that generation, its use included. */
  readonly fromReserve: (generation: number) => number;
  /** Lowest cost of a good jar after a fresh start from sources, and how it is called. */
  readonly freshStart: { readonly cost: number; readonly label: string };
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
  /** Whether it was seen how it came out; a line that runs through a jar on hold comes after all others. */
  readonly tells: 'seen' | 'unseen' | 'held line';
  readonly stops: readonly Stop[];
  /** Expected cost of a good jar; null where it may not be used. */
  readonly cost: number | null;
  readonly weakChance: number | null;
  readonly reasons: readonly string[];
  readonly wouldChange: string;
}

export interface NextAdvice {
  readonly ranking: readonly Ranked[];
  readonly nothingMayBeUsed: boolean;
  readonly sentence: string;
  readonly suggestions: readonly string[];
  readonly warnings: readonly string[];
  /** What alone still carries a line and may be used: to be warned of before it is eaten. */
  readonly lastOf: readonly { readonly id: string; readonly line: string; readonly says: string }[];
}

/** Points by which the odds of a weak jar change e-fold (the program's own scale, no source). */
const POINTS_PER_E = 12;
/** What an hour of delay costs, in jars (the program's own assumption): warmth, waiting, and a slower start. */
const HOUR_OF_DELAY = 0.01;
/** A start this much slower (h) is worth a warning: spoilage organisms have time. */
const SLOW_START = 6;
/** No chance is taken to be higher: a jar may always turn out well. */
const MOST_CHANCE = 0.9;
/** With no outcome, the odds are taken this much worse: unknown is neither weak nor fine. */
const UNKNOWN_ODDS = 1.5;

/** Chance of a weak jar from a seed: that of its generation, with odds moved by its vigour. */
export function weakChance(ofGeneration: number, points: number | null): number {
  const p = Math.min(0.99, Math.max(0.001, ofGeneration));
  const factor = points === null ? UNKNOWN_ODDS : Math.exp((USUAL_POINTS - points) / POINTS_PER_E);
  const odds = (p / (1 - p)) * factor;
  return Math.min(MOST_CHANCE, odds / (1 + odds));
}

const at = (chances: readonly number[], generation: number): number =>
  chances[Math.min(generation, chances.length) - 1] ?? 0;
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

function rankOf(candidate: SeedCandidate, input: NextInput): Ranked {
  const stops = stopsOf(candidate, input.limits);
  const generation = candidate.generation + 1;
  const lifts = stops.flatMap((stop) => stop.lifts ?? []);
  const tells = candidate.heldAncestor ? 'held line' : candidate.outcomeKnown ? 'seen' : 'unseen';
  const base = { id: candidate.id, label: candidate.label, kind: candidate.kind, stops, tells } as const;
  if (stops.length > 0) {
    return {
      ...base,
      allowed: false,
      cost: null,
      weakChance: null,
      reasons: stops.map(({ says }) => says),
      wouldChange: lifts.length < stops.length ? 'Nothing changes this.' : lifts.join(' '),
    };
  }
  const weak = weakChance(at(input.weak, generation), candidate.vigour?.points ?? null);
  const goingOn = costOfGoingOn(
    input.costs,
    weak,
    at(input.discarded, generation),
    at(input.ended, generation),
  );
  const slow = candidate.delayHours * HOUR_OF_DELAY * input.costs.jar;
  const cost = (candidate.kind === 'reserve' ? Math.max(goingOn, input.fromReserve(candidate.generation)) : goingOn) + slow; // prettier-ignore
  const reasons = [
    ...(candidate.heldAncestor ? [candidate.heldAncestor.says] : []),
    ...(candidate.outcomeKnown ? [] : ['Nobody has written down how it came out. Look at it first.']),
    `The next jar would be of generation ${generation}. About ${percent(weak)} such jars come out weak${assumedWords(input.jarsTell)}.`,
    candidate.vigour
      ? `Its batch scored ${shown(candidate.vigour.points)} (${shown(candidate.vigour.low)} to ${shown(candidate.vigour.high)}); ${USUAL_POINTS} is as the line's early batches were.`
      : 'There is nothing to score it by, so it is taken to be a little riskier.',
    `It has been kept for ${daysWords(candidate.days)}, which should cost the next jar about ${candidate.delayHours.toFixed(1)} h, counted as ${partOfJar(candidate.delayHours * HOUR_OF_DELAY)}.`,
    ...(candidate.delayHours >= SLOW_START
      ? [
          'That is a slow start. Keep to the early check: if it is still loose or not sour by then, when in doubt, discard.',
        ]
      : []),
    ...(candidate.kind === 'reserve'
      ? ['It is a reserve: using it up is counted as part of a fresh start.']
      : []),
    ...(candidate.caution === 'look' ? [`Look at it first. ${candidate.cautionSays ?? ''}`.trim()] : []),
  ];
  return { ...base, allowed: true, cost, weakChance: weak, reasons, wouldChange: '' };
}

/** What to do, in one sentence. @param allowed in order, the fresh start among them */
function nextSentence(allowed: readonly Ranked[]): string {
  const [first, ...others] = allowed;
  if (!first || (others.length === 0 && first.kind === 'fresh start'))
    return 'Nothing that is kept may be used as seed. Make a fresh start from sources.';
  // A line that runs through a jar on hold never stands first: a fresh start is always offered before it.
  if (first.kind === 'fresh start') {
    const best = `${first.label.charAt(0).toUpperCase()}${first.label.slice(1)} comes out best now`;
    return others.every(({ tells }) => tells === 'held line')
      ? `${best}: all else that is kept descends from a jar on hold. Look into that first.`
      : `${best}.`;
  }
  return first.tells === 'unseen'
    ? `Seed the next batch from ${first.label}, but nobody has written down how it came out: look at it first.`
    : `Seed the next batch from ${first.label}.`;
}

/** Ranks what could seed the next batch. */
export function adviseNext(input: NextInput): NextAdvice {
  const seeds = input.candidates.map((candidate) => rankOf(candidate, input));
  const fresh: Ranked = {
    id: null,
    label: input.freshStart.label,
    kind: 'fresh start',
    allowed: true,
    tells: 'seen',
    stops: [],
    cost: input.freshStart.cost,
    weakChance: null,
    reasons: [
      `A good jar then costs ${costWords(input.freshStart.cost, input.unit)}, the fresh start and its uneven first batch spread over the jars that follow${assumedWords(input.jarsTell)}.`,
    ],
    wouldChange: '',
  };
  const allowed = inOrder(
    seeds.filter((ranked) => ranked.allowed),
    fresh,
  );
  const ranking = [
    ...allowed.map((ranked, i, all) => ({ ...ranked, wouldChange: wouldChange(input.unit, ranked, i, all) })),
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
            says: only.heldAncestor
              ? `${only.label} is the last that carries ${lineWords(name)}, and it descends from ${only.heldAncestor.label}, which is on hold. Look into that before it is eaten or used.`
              : `${only.label} is the last that carries ${lineWords(name)}. Take seed from it before it is eaten.`,
          },
        ]
      : [];
  });
  return {
    ranking,
    nothingMayBeUsed,
    sentence: nextSentence(allowed),
    suggestions: input.blocked.map(
      (name) =>
        `Make one small plain jar in the next batch: without it, ${name} and culture can't be told apart.`,
    ),
    warnings: lastOf.map(({ says }) => says),
    lastOf,
  };
}
