// From judgement to what the calls reply: names and ids are passed in, figures are rounded for showing, each with its why.
import { SET_WORDS } from '../ledger/jar-fields';
import { correctionSays } from './correction-says';
import { suspectSays } from './suspects-says';
import type { Why } from '../shapes/why';
import { batchSays, heldWords } from './batch-says';
import { jarFigures, type Culture } from './hold-figures-says';
import { FALLEN_BY } from '../vigour/level/line-level';
import { LEVEL_RULES } from '../vigour/level/rules';
import { leftOutSays } from './left-out-says';
import { effectsSay } from './effects-says';
import { partSays } from './score-says';
import { PRIOR_SOURCES } from './vigour-sources';
import {
  jarSays,
  lineReasons,
  perDay,
  SAYS_NOTHING_OF_SAFETY,
  sinceSentence,
  standingSentence,
} from './vigour-says';
import { SCORE_RULES, shown } from '../vigour/score';
import type { JarJudgementReply, LineJudgementReply } from '../shapes/vigour-replies';
import type { JudgedBatch, LineJudgement } from '../vigour/line';
import { STANDING_RULES } from '../vigour/standing';
import { USUAL_POINTS, type JarEvidence } from '../vigour/jar-evidence';
import type { UsualFrom } from '../vigour/usual';
import { usualWords } from './vigour-words';
import { PART_NAMES } from '../shapes/vigour-codes';

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

function lineWhy(judgement: LineJudgement): Why {
  const { trend, look, usual } = judgement;
  return {
    formula:
      'Each batch is the median of its comparable jars. What is believed of the level that a batch inherits is that of its seed with drift, moved by the batch itself and by what came of it; the line is said to slip where it very likely stands well below its early batches.',
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
      ...(look
        ? [
            {
              name: `chance that it stands more than ${FALLEN_BY} points below its early batches for good`,
              value: `${(1 / (1 + Math.exp(-look.fallen))).toFixed(3)}; called above ${(1 / (1 + Math.exp(-judgement.calledFrom))).toFixed(2)}`,
            },
            {
              name: 'how closely the level that the newest batch passes on is known',
              value: `give or take ${look.sd.toFixed(0)} points`,
            },
            { name: 'batches differ about their level by', value: `${look.spread.toFixed(1)} points` },
          ]
        : []),
      ...(trend
        ? [
            {
              name: 'chance that luck alone gives so steady a fall, at one look (Mann–Kendall)',
              value: `${trend.mannKendall.pFalling.toFixed(4)}; by itself it says nothing`,
            },
          ]
        : []),
    ],
    assumptions: [
      'A batch inherits the level of its seed, with some drift: now and then a culture begins to lose with each generation, or falls at once.',
      'A poor batch may have had a passing bad day; whether it had is told by what follows.',
      'What batches share (milk, bath, season) goes on a little from one to the next, so that two poor batches in a row tell less than two apart.',
      'How much batches differ, and how restless the culture is, is learned from the line, starting from a wide belief.',
      'One budget of false alarms covers all looks: of steady lines, about one in twenty is ever said to slip within twelve batches.',
      'Once a line is said to slip, that stands until three batches in a row are seen back at the early level.',
      'The slope and the smoothed level are shown beside it; neither decides by itself.',
      `A jar that comes out as jars of the first batches after the founding one usually did scores ${USUAL_POINTS}.`,
    ],
    source: PRIOR_SOURCES.trend,
  };
}

/** What the posterior starts from, as figures that are kept with a decision. */
function levelParameters(): Record<string, number | number[]> {
  const { rates, spreads, drifts, badDay, early } = LEVEL_RULES;
  return {
    rates: [...rates],
    spreads: spreads.map(({ value }) => value),
    spreadWeights: spreads.map(({ weight }) => weight),
    driftWeights: drifts.map(({ weight }) => weight),
    begins: drifts.map(({ begins }) => begins),
    falls: drifts.map(({ falls }) => falls),
    badDay,
    earlySd: early.sd,
    fallenBy: FALLEN_BY,
    ...STANDING_RULES,
  };
}

/** How a batch came out as a whole: what its jar is drawn by. */
function seenOf({
  comparable,
  leftOut,
}: JudgedBatch): Pick<LineJudgementReply['batches'][number], 'setWord' | 'spoiled'> {
  const jars = [...comparable, ...leftOut.map(({ jar }) => jar)];
  const words = jars
    .filter(({ spoiled }) => !spoiled)
    .flatMap(({ outcome }) => (outcome?.setWord ? [SET_WORDS.indexOf(outcome.setWord)] : []))
    .toSorted((a, b) => a - b);
  return {
    setWord: SET_WORDS[words[(words.length - 1) >> 1] ?? -1] ?? null,
    spoiled: jars.length > 0 && jars.every(({ spoiled }) => spoiled),
  };
}

/**
 * The reply of judgement.line.
 * @param others the keeper's other lines, asked only where something was stirred in that they may gainsay
 */
export function lineReply(
  judgement: LineJudgement,
  names: Names,
  others: () => readonly LineJudgement[],
): LineJudgementReply {
  const { trend, batches, rules } = judgement;
  const { uid, name } = names.line(judgement.line);
  const called = judgement.firstCalled === null ? undefined : batches[judgement.firstCalled];
  const fell = judgement.fall === null ? undefined : batches[judgement.fall.at];
  return {
    line: uid,
    name,
    standing: judgement.standing,
    sentence: standingSentence(judgement),
    since: sinceSentence(judgement),
    reasons: lineReasons(
      judgement,
      effectsSay(judgement, others, (line) => names.line(line).name),
    ),
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
        ...seenOf(batch),
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
        leftOut: batch.leftOut.map((one) => ({
          jar: names.jar(one.jar.key).uid,
          label: one.jar.label,
          reason: leftOutSays(one),
        })),
      };
    }),
    comparable: batches.filter(({ points }) => points !== null).length,
    slope: maybe(judgement.rate?.slope),
    slopeLow: maybe(judgement.rate?.low),
    slopeHigh: maybe(judgement.rate?.high),
    baseline: maybe(trend?.baseline),
    spread: maybe(trend?.spread),
    drop: maybe(trend?.drop),
    lowerLimit: trend ? round(trend.baseline - rules.limit * trend.dropError) : null,
    running: (trend?.running ?? []).map(round),
    calledAt: called ? names.batch(called.batch).uid : null,
    startedAt: judgement.startedAt === null ? null : round(judgement.startedAt),
    cameDown: judgement.fall === null || judgement.fall.shape === 'unclear' ? null : judgement.fall.shape,
    cameDownAt: fell ? names.batch(fell.batch).uid : null,
    suspects: judgement.suspects.map(suspectSays),
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
        ...levelParameters(),
        perMissingHour: round(judgement.perMissingHour.mean),
      },
    },
  };
}

/**
 * The reply of judgement.jar, by the judgement of a line it belongs to (null: it belongs to none).
 * @param holds what is said where it is set aside itself, and where its way back runs through a set-aside jar
 */
export function jarReply(
  jar: JarEvidence,
  judgement: LineJudgement | null,
  jars: readonly JarEvidence[],
  names: Names,
  culture: Culture,
  holds: Pick<JarJudgementReply, 'discard' | 'caution' | 'onHold' | 'descendsFromHeld' | 'asSeed'>,
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
  const left = batch?.leftOut.find((one) => one.jar.key === jar.key);
  const says = jarSays(jar, score, judgement, jars);
  return {
    ...base,
    line: names.line(judgement.line).uid,
    score: score && shown(score.points),
    low: score && shown(score.low),
    high: score && shown(score.high),
    sentence: says.sentence,
    reasons: [...says.reasons],
    parts: (score?.parts ?? []).map((part) => ({
      name: part.name,
      points: round(part.points),
      weight: part.weight,
      says: partSays(part.seen),
    })),
    missing: [...(score?.missing ?? PART_NAMES)],
    corrections: (score?.corrections ?? []).map((correction) => ({
      name: correction.name,
      points: round(correction.points),
      says: correctionSays(correction.name, correction.for),
    })),
    leftOut: left ? leftOutSays(left) : null,
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
