// From judgement to what the calls reply: names and ids are passed in, figures are rounded for showing, each with its why.
import type { Why } from '../why';
import { batchSays, heldWords } from './batch-says';
import { jarFigures, type Culture } from './figures';
import { LIKELIHOOD_RULES } from './likelihood';
import { PRIOR_SOURCES } from './sources';
import { jarSays, lineReasons, perDay, SAYS_NOTHING_OF_SAFETY, standingSentence } from './says';
import { SCORE_RULES, shown } from './score';
import type { JarJudgementReply, LineJudgementReply } from './shapes';
import type { LineJudgement } from './line';
import type { Trend, TrendRules } from './trend';
import { PART_NAMES, USUAL_POINTS, type JarEvidence } from './types';
import type { UsualFrom } from './usual';
import { usualWords } from './words';

/** How the caller names things. */
export interface Names {
  readonly jar: (key: number) => { readonly uid: string; readonly label: string };
  readonly batch: (key: number) => { readonly uid: string; readonly label: string };
  readonly line: (batch: number) => { readonly uid: string; readonly name: string };
}

const round = (value: number): number => Math.round(value * 100) / 100;
const maybe = (value: number | undefined): number | null => (value === undefined ? null : round(value));

const FROM_WORDS = {
  "the line's early batches": "from the line's early batches",
  "all the keeper's lines": 'from the early batches of all your lines',
  assumed: 'assumed',
} as const satisfies Record<UsualFrom, string>;

/** How many times likelier on a losing line, as it is said: "0.4", "12", "over 1000". */
const timesLikelier = (log: number): string => {
  const times = Math.exp(log);
  return times > 1000 ? 'over 1000' : times < 10 ? times.toFixed(1) : times.toFixed(0);
};

function likelihoodInputs({ likelihood, likelihoodLimit }: Trend, rules: TrendRules): Why['inputs'] {
  if (!likelihood) return [];
  return [
    {
      name: 'times likelier on a line that has lost since the first of these batches',
      value: `${timesLikelier(likelihood.throughout)} (alarm above ${timesLikelier(likelihoodLimit)})`,
    },
    ...(likelihood.lately === null
      ? []
      : [
          {
            name: 'times likelier on a line that began to lose 3 to 7 batches ago',
            value: `${timesLikelier(likelihood.lately)} (alarm above ${timesLikelier(rules.latelyLimit)})`,
          },
        ]),
  ];
}

function lineWhy(judgement: LineJudgement): Why {
  const { trend, rules, usual } = judgement;
  return {
    formula:
      'Each batch is the median of its comparable jars; the slope is the median of the slopes between all pairs of batches; the alarm compares slope and level with their standard errors, and asks how much likelier such jars are on a line that loses 3 to 7 points a generation than on a steady one.',
    inputs: [
      ...PART_NAMES.map((name) => ({
        name: `usual ${name}`,
        value: `${usualWords(name, usual[name].value)} (${FROM_WORDS[usual[name].from]})`,
      })),
      ...(judgement.perDay
        ? [
            {
              name: 'delay for each day that a seed stood in the fridge',
              value: judgement.perDay.own
                ? `${perDay(judgement.perDay.posterior)}, by ${judgement.perDay.jars} jars of this line`
                : `${perDay(judgement.perDay.prior)}, published; ${judgement.perDay.jars} jars of this line don't tell it closely enough yet`,
            },
          ]
        : []),
      ...(trend
        ? [
            {
              name: 'how far it falls, in standard errors (1 is what chance alone does)',
              value: trend.fall.toFixed(2),
            },
            { name: 'alarm level at this many batches, counted the same way', value: trend.limit.toFixed(2) },
            ...likelihoodInputs(trend, rules),
            {
              name: 'chance that luck alone gives so steady a fall, at one look (Mann–Kendall)',
              value: `${trend.mannKendall.pFalling.toFixed(4)}; by itself it raises the alarm at ${rules.steadyFallChance} or less`,
            },
          ]
        : []),
    ],
    assumptions: [
      `A line's batches are expected to differ by about ${rules.priorSpread} points until they tell themselves.`,
      'One budget of false alarms covers all looks: of steady lines, about one in twenty is ever said to slip within twelve batches.',
      'A line is looked at after every batch, and a low chance at one of so many looks is common by luck: by itself it is no alarm.',
      'How much likelier is asked of every jar, so a line can be called before its smoothed level crosses the alarm level drawn. It takes jars of a batch to differ by about half of what batches do.',
      `Jars are compared with the first batches after the founding one, which count as ${USUAL_POINTS}.`,
    ],
    source: PRIOR_SOURCES.trend,
  };
}

/** What likelihoods are averaged over, as figures that are kept with a decision. */
function likelihoodParameters(): Record<string, number | number[]> {
  const { spreads, jarSpreads, wander, losses, lateStarts, steadyPower, jarPart, jarPartLogSd, lateFrom } = LIKELIHOOD_RULES; // prettier-ignore
  const values = (list: typeof losses): number[] => list.map(({ value }) => value);
  const weights = (list: typeof losses): number[] => list.map(({ weight }) => weight);
  return {
    spreads: [...spreads],
    steadyPower,
    jarSpreads: [...jarSpreads],
    jarPart,
    jarPartLogSd,
    wander: values(wander),
    wanderWeights: weights(wander),
    losses: values(losses),
    lossWeights: weights(losses),
    lateFrom,
    lateStarts: [...lateStarts],
  };
}

/** The reply of judgement.line. */
export function lineReply(judgement: LineJudgement, names: Names): LineJudgementReply {
  const { trend, batches, rules } = judgement;
  const { uid, name } = names.line(judgement.line);
  const called = judgement.firstCalled === null ? undefined : batches[judgement.firstCalled];
  return {
    line: uid,
    name,
    standing: judgement.standing,
    sentence: standingSentence(judgement),
    reasons: lineReasons(judgement),
    batches: batches.map((batch) => {
      const compared = new Set(batch.comparable);
      return {
        batch: names.batch(batch.batch).uid,
        label: names.batch(batch.batch).label,
        madeOn: batch.madeOn,
        generation: batch.generation,
        score: batch.points === null ? null : shown(batch.points),
        points: batch.points === null ? null : round(batch.points),
        uncorrected: batch.uncorrected === null ? null : round(batch.uncorrected),
        first: batch.first,
        standing: batch.standing,
        jars: batch.scores.map(({ jar, points, low, high, corrections }) => ({
          jar: names.jar(jar.key).uid,
          label: jar.label,
          score: shown(points),
          low: shown(low),
          high: shown(high),
          asItCame: shown(corrections.reduce((sum, one) => sum - one.points, points)),
          compared: compared.has(jar),
          held: heldWords(jar),
        })),
        says: batchSays(batch),
        leftOut: batch.leftOut.map(({ jar, reason }) => ({
          jar: names.jar(jar.key).uid,
          label: jar.label,
          reason,
        })),
      };
    }),
    comparable: batches.filter(({ points }) => points !== null).length,
    slope: maybe(trend?.slope),
    slopeLow: maybe(trend?.slopeLow),
    slopeHigh: maybe(trend?.slopeHigh),
    baseline: maybe(trend?.baseline),
    spread: maybe(trend?.spread),
    drop: maybe(trend?.drop),
    lowerLimit: trend ? round(trend.baseline - (trend.limit / rules.levelAlone) * trend.dropError) : null,
    running: (trend?.running ?? []).map(round),
    calledAt: called ? names.batch(called.batch).uid : null,
    startedAt: judgement.startedAt === null ? null : round(judgement.startedAt),
    suspects: judgement.suspects.map(({ says }) => says),
    blocked: [...judgement.blocked],
    effects: judgement.effects.map((effect) => ({
      name: effect.name,
      points: round(effect.points),
      error: round(effect.error),
      sets: effect.sets,
    })),
    why: lineWhy(judgement),
    safety: SAYS_NOTHING_OF_SAFETY,
    model: {
      version: SCORE_RULES.version,
      parameters: {
        ...rules,
        limits: [...rules.limits],
        likelihoodLimits: [...rules.likelihoodLimits],
        ...likelihoodParameters(),
        perMissingHour: round(judgement.perMissingHour.mean),
      },
    },
  };
}

/**
 * The reply of judgement.jar, by the judgement of a line it belongs to (null: it belongs to none).
 * @param holds what is said where it is on hold itself, and where its way back runs through a jar on hold
 */
export function jarReply(
  jar: JarEvidence,
  judgement: LineJudgement | null,
  jars: readonly JarEvidence[],
  names: Names,
  culture: Culture,
  holds: Pick<JarJudgementReply, 'onHold' | 'descendsFromHeld' | 'asSeed'>,
): JarJudgementReply {
  const base = {
    jar: names.jar(jar.key).uid,
    label: jar.label,
    figures: jarFigures(jar, culture),
    ...holds,
    safety: SAYS_NOTHING_OF_SAFETY,
  };
  if (!judgement) {
    return {
      ...base, line: null, score: null, low: null, high: null, parts: [], missing: [...PART_NAMES], corrections: [],
      leftOut: 'Its past is not known, so there is no line to compare it with.', why: null, reasons: [],
      sentence: 'Its past is not known, so there is no line to compare it with.',
    }; // prettier-ignore
  }
  const batch = judgement.batches.find((one) => one.batch === jar.batch);
  const score = batch?.scores.find((one) => one.jar.key === jar.key) ?? null;
  const says = jarSays(jar, score, judgement, jars);
  return {
    ...base,
    line: names.line(judgement.line).uid,
    score: score && shown(score.points),
    low: score && shown(score.low),
    high: score && shown(score.high),
    sentence: says.sentence,
    reasons: [...says.reasons],
    parts: (score?.parts ?? []).map(({ name, points, weight, says }) => ({
      name,
      points: round(points),
      weight,
      says,
    })),
    missing: [...(score?.missing ?? PART_NAMES)],
    corrections: (score?.corrections ?? []).map((correction) => ({
      ...correction,
      points: round(correction.points),
    })),
    leftOut: batch?.leftOut.find((one) => one.jar.key === jar.key)?.reason ?? null,
    why: score && {
      formula:
        'Points of what was seen, weighed together, with corrections added; the range holds four jars in five.',
      inputs: score.parts.map(({ name, points, weight }) => ({
        name,
        value: `${points.toFixed(0)} points, weight ${weight}`,
      })),
      assumptions: score.parts.flatMap(({ name }) =>
        judgement.usual[name].from === "the line's early batches"
          ? []
          : [
              `The usual ${name} is ${judgement.usual[name].from === 'assumed' ? 'assumed' : "that of all your lines' early batches"}.`,
            ],
      ),
      source: PRIOR_SOURCES.score,
    },
  };
}
