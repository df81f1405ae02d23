// What to seed from next: every jar, portion and reserve, and a fresh start. Hard stops first, then the expected cost of a
// good jar. No score can lift a stop; the keeper decides.
import type { Preferences } from '../ledger/records';
import { lineWords } from '../lineage/labels';
import type { CautionLevel } from '../lineage/types';
import { shown } from '../vigour/score';
import { USUAL_POINTS } from '../vigour/types';
import { costWords } from './costs';
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
      says: `It has stood ${candidate.place === 'fridge' ? 'in the fridge' : candidate.place === 'freezer' ? 'in the freezer' : 'dried'} for ${candidate.days} days; your limit is ${limit}.`,
      lifts: `A limit of ${candidate.days} days or more, among your preferences, would let it in again.`,
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

function rankOf(candidate: SeedCandidate, input: NextInput): Ranked {
  const stops = stopsOf(candidate, input.limits);
  const generation = candidate.generation + 1;
  const lifts = stops.flatMap((stop) => stop.lifts ?? []);
  const base = { id: candidate.id, label: candidate.label, kind: candidate.kind, stops };
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
    `The next jar would be of generation ${generation}. About ${percent(weak)} such jars come out weak.`,
    candidate.vigour
      ? `Its batch scored ${shown(candidate.vigour.points)} (${shown(candidate.vigour.low)} to ${shown(candidate.vigour.high)}); ${USUAL_POINTS} is as the line's early batches were.`
      : 'Its outcome is not known, so it is taken to be a little riskier.',
    `It has been kept for ${candidate.days} days, which should cost the next jar about ${candidate.delayHours.toFixed(1)} h, counted as ${(candidate.delayHours * HOUR_OF_DELAY).toFixed(2)} of a jar.`,
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

/** What would make a good jar from it cheaper. */
const CHEAPER = {
  jar: 'with a better outcome of its batch, or if more jars of its generation came out well',
  'older sibling': 'with a better outcome of its batch, or if more jars of its generation came out well',
  portion: 'with a better outcome of its batch, or if more jars of its generation came out well',
  reserve: 'if it had waited less, or were easier to lay by again',
  'fresh start': 'if what starts a line were cheaper, or lines lasted longer',
} as const satisfies Record<Ranked['kind'], string>;

function changes(unit: string, ranked: Ranked, i: number, all: readonly Ranked[]): Ranked {
  if (!ranked.allowed || ranked.cost === null) return ranked;
  const other = i === 0 ? all.find((next, j) => j > 0 && next.cost !== null) : all[0];
  if (!other || other.cost === null)
    return { ...ranked, wouldChange: 'Nothing else may be used, so nothing would.' };
  const apart = Math.abs(other.cost - ranked.cost);
  const gap = unit === 'jars' ? `${apart.toFixed(2)} jars` : `${apart.toFixed(2)} ${unit}`;
  if (apart < 0.005)
    return {
      ...ranked,
      wouldChange: `It is as good as ${other.label}: either may come first (less than 0.01 apart).`,
    };
  return {
    ...ranked,
    wouldChange:
      i === 0
        ? `It would lose its place to ${other.label} if a good jar from it cost ${gap} more.`
        : `It would come first if a good jar from it cost ${gap} less: ${CHEAPER[ranked.kind]}.`,
  };
}

/** Ranks what could seed the next batch. */
export function adviseNext(input: NextInput): NextAdvice {
  const seeds = input.candidates.map((candidate) => rankOf(candidate, input));
  const fresh: Ranked = {
    id: null,
    label: input.freshStart.label,
    kind: 'fresh start',
    allowed: true,
    stops: [],
    cost: input.freshStart.cost,
    weakChance: null,
    reasons: [
      `A good jar then costs ${costWords(input.freshStart.cost, input.unit)}, the fresh start and its uneven first batch spread over the jars that follow.`,
    ],
    wouldChange: '',
  };
  const allowed = [...seeds.filter((ranked) => ranked.allowed), fresh].toSorted((a, b) => (a.cost ?? 0) - (b.cost ?? 0)); // prettier-ignore
  const ranking = [
    ...allowed.map((ranked, i, all) => changes(input.unit, ranked, i, all)),
    ...seeds.filter((ranked) => !ranked.allowed),
  ];
  const nothingMayBeUsed = seeds.every((ranked) => !ranked.allowed);
  const [first] = ranking;
  const usable = input.candidates.filter((candidate) => stopsOf(candidate, input.limits).length === 0);
  const lastOf = [...input.lineNames].flatMap(([line, name]) => {
    const carries = usable.filter(({ lines }) => lines.includes(line));
    const [only] = carries;
    return carries.length === 1 && only
      ? [
          {
            id: only.id,
            line,
            says: `${only.label} is the last that carries ${lineWords(name)}. Take seed from it before it is eaten.`,
          },
        ]
      : [];
  });
  return {
    ranking,
    nothingMayBeUsed,
    sentence: nothingMayBeUsed
      ? 'Nothing that is kept may be used as seed. Make a fresh start from sources.'
      : first?.kind === 'fresh start'
        ? `${first.label.charAt(0).toUpperCase()}${first.label.slice(1)} comes out best now.`
        : `Seed the next batch from ${first?.label ?? ''}.`,
    suggestions: input.blocked.map(
      (name) =>
        `Make one small plain jar in the next batch: without it, ${name} and culture can't be told apart.`,
    ),
    warnings: lastOf.map(({ says }) => says),
    lastOf,
  };
}
