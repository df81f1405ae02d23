// What to seed from next: every jar, portion and reserve, and a fresh start. Hard stops first, then the expected cost of a
// good jar. No score can lift a stop or answer a doubt; the keeper decides.
import { lineWords } from '../lineage/labels';
import type { CautionLevel } from '../lineage/types';
import { shown } from '../vigour/score';
import { USUAL_POINTS } from '../vigour/types';
import { daysWords } from '../vigour/words';
import { costWords } from './costs';
import type { HeldAncestor } from './held-line';
import { lastSays, nextSentence } from './next-says';
import { inOrder } from './order';
import { chanceAt, HOUR_OF_DELAY, seedCost, weakChance, type CostBasis } from './seed-cost';
import { stopsOf, type SeedLimits, type Stop } from './stops';
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
  readonly spoiled: boolean;
  readonly failedGate: boolean;
  /** The gravest caution that stands, and what it is about. */
  readonly caution: CautionLevel | null;
  readonly cautionSays: string | null;
  /** The nearest jar on its way back that is on hold: no stop, but it comes after everything else. */
  readonly heldAncestor: HeldAncestor | null;
  /** What its own hold leaves in doubt, a sentence each (doubts.ts): no stop, but it comes last of all. */
  readonly doubts: readonly string[];
  readonly place: 'fridge' | 'freezer' | 'dried';
  readonly days: number;
  /** Hours that its storage should cost the next jar. */
  readonly delayHours: number;
  readonly outcomeKnown: boolean;
  /** Score of its batch's comparable jars where there is one; the jar's own says what it looked like. */
  readonly vigour: { readonly points: number; readonly low: number; readonly high: number } | null;
}

export interface NextInput extends CostBasis {
  readonly candidates: readonly SeedCandidate[];
  readonly limits: SeedLimits;
  /** Of the costs: a currency, or 'jars'. */
  readonly unit: string;
  /** Jars of the keeper's own that those chances rest on. */
  readonly jarsTell: number;
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
  /** Whether it was seen how it came out; a line that runs through a jar on hold comes after those, a jar in doubt last. */
  readonly tells: 'seen' | 'unseen' | 'held line' | 'in doubt';
  /** What leaves it in doubt: to be said wherever it is offered. */
  readonly doubts: readonly string[];
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

const RESERVE_COUNTED =
  'It is a reserve: laying it by again counts as part of a fresh start, and that and its first batch’s delay are spread over the jars that follow.';

const scoreSays = ({ vigour }: SeedCandidate): string =>
  vigour
    ? `Its batch scored ${shown(vigour.points)} (${shown(vigour.low)} to ${shown(vigour.high)}); ${USUAL_POINTS} is as the line's early batches were.`
    : 'There is nothing to score it by, so it is taken to be a little riskier.';

function rankOf(candidate: SeedCandidate, input: NextInput): Ranked {
  const stops = stopsOf(candidate, input.limits);
  const generation = candidate.generation + 1;
  const lifts = stops.flatMap((stop) => stop.lifts ?? []);
  const { doubts, heldAncestor } = candidate;
  const tells =
    doubts.length > 0 ? 'in doubt' : heldAncestor ? 'held line' : candidate.outcomeKnown ? 'seen' : 'unseen';
  const base = {
    id: candidate.id,
    label: candidate.label,
    kind: candidate.kind,
    stops,
    tells,
    doubts,
  } as const;
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
  const weak = weakChance(chanceAt(input.weak, generation), candidate.vigour?.points ?? null);
  const cost = seedCost(candidate, weak, input);
  const reserve = candidate.kind === 'reserve';
  const reasons = [
    ...doubts,
    ...(heldAncestor ? [heldAncestor.says] : []),
    ...(candidate.outcomeKnown ? [] : ['Nobody has written down how it came out. Look at it first.']),
    `The next jar would be of generation ${generation}. About ${percent(weak)} such jars come out weak${assumedWords(input.jarsTell)}.`,
    ...(doubts.length > 0 ? [] : [scoreSays(candidate)]),
    `It has been kept for ${daysWords(candidate.days)}, which should cost the next jar about ${candidate.delayHours.toFixed(1)} h, counted as ${partOfJar(candidate.delayHours * HOUR_OF_DELAY)}${reserve ? ' for each jar of its first batch' : ''}.`,
    ...(candidate.delayHours >= SLOW_START
      ? [
          'That makes a slow start likely. Keep to the early check: if the next jar is still loose or not sour by then, when in doubt, discard.',
        ]
      : []),
    ...(reserve ? [RESERVE_COUNTED] : []),
    ...(candidate.caution === 'look' ? [`Look at it first. ${candidate.cautionSays ?? ''}`.trim()] : []),
  ];
  return { ...base, allowed: true, cost, weakChance: weak, reasons, wouldChange: '' };
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
    doubts: [],
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
  const byId = new Map(input.candidates.map((candidate) => [candidate.id, candidate]));
  const ranking = [
    ...allowed.map((ranked, at, all) => ({ ...ranked, wouldChange: wouldChange(at, all, byId, input) })),
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
            says: lastSays(only, lineWords(name)),
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
