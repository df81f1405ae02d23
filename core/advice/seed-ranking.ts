// What to seed from next: every jar, portion and reserve, and a fresh start. Hard stops first, then the expected cost of a
// good jar. No score can lift a stop or answer a doubt; the keeper decides.
import { lineWords } from '../lineage/labels';
import { shown } from '../vigour/score';
import { costWords } from './costs';
import { NOT_NOTED } from '../says/safety-says';
import { lastSays, nextSentence } from './next-says';
import { looksOf, placeCostOf } from './looks';
import { cardLines, FRESH_START_LINES } from '../says/seed-card-says';
import { inOrder, looksDearer, MAY_BE_GONE } from './ranking-order';
import { HOUR_OF_DELAY, reckonedGeneration, seedCost, weakFrom } from './seed-cost';
import { stopsOf } from './stops';
import { wouldChange } from './would-change';
import { daysWords } from '../quantities/typed-days';
import type { SeedCandidate, NextInput, Ranked } from './seed-candidate';

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
