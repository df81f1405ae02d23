// What judgement says of a line and of a jar, in calm sentences with their numbers.
import { dayLabel } from '../lineage/labels';
import { inWords } from './way-to-source';
import { correctionSays } from './correction-says';
import { leftOutSays } from './left-out-says';
import { asideSays } from './score-says';
import { blameSays, perhapsFrom, suspectSays } from './suspects-says';
import type { PartName } from '../shapes/vigour-codes';
import { NOTHING_IN, treatmentOf } from '../vigour/effects';
import type { Rate } from '../vigour/fall';
import { FALLEN_BY } from '../vigour/level/line-level';
import { plainSiblings, type JudgedBatch, type LineJudgement } from '../vigour/line';
import { pointsBelow } from '../vigour/trend';
import { scoreJar, shown } from '../vigour/score';
import { USUAL_POINTS, type JarEvidence, type JarScore } from '../vigour/jar-evidence';
import { median } from '../vigour/medians';

export const SAYS_NOTHING_OF_SAFETY =
  'This says nothing about safety. First comes the check at take-out: look, then smell. Does it smell sour and clean and does a curd hold together, or does a meter show pH 4.6 or less, and is there no sign of spoiling? When in doubt, discard.';

const one = (value: number): string => (Math.abs(value) < 0.05 ? '0.0' : value.toFixed(1));

/** "it loses about 3.3 points a generation". */
const slopeWords = (slope: number): string =>
  one(Math.abs(slope)) === '0.0'
    ? 'it neither gains nor loses'
    : `it ${slope < 0 ? 'loses' : 'gains'} about ${one(Math.abs(slope))} points a generation`;

/** The sentence of a line's standing. */
export function standingSentence(judgement: LineJudgement): string {
  const { trend, standing, rules, rate } = judgement;
  const comparable = judgement.batches.filter(({ points }) => points !== null).length;
  if (!trend || !rate) {
    return comparable < rules.fewest
      ? `Too few batches to say: ${comparable === 0 ? 'none' : comparable} can be compared yet, and ${rules.fewest} are needed.`
      : `Too few batches to say: the ${comparable} that can be compared are all of one generation.`;
  }
  const over = `over ${Math.min(comparable, rules.window)} comparable batches`;
  const untold =
    judgement.blocked.length > 0
      ? ` Whether that is the culture or the ${inWords(judgement.blocked)} can't be told apart here.`
      : '';
  switch (standing) {
    case 'steady':
      // The range beside it is the more careful of the two: it must not be gainsaid, as it is printed.
      return `Steady ${over}: ${changeWords(rate)}. A loss of ${rules.lossToRuleOut} points a generation ${Number(one(-rate.low)) < rules.lossToRuleOut ? 'can be ruled out' : 'is unlikely'}.`;
    case 'slipping':
    case 'worn out':
      return `${sentenceCase(standing)}: ${[cameDown(judgement, true), standsWords(judgement)].filter((part) => part !== null).join(', and ')}.${untold}`;
    default:
      return untold && trend.drop > FALLEN_BY
        ? `No slip is put down to the culture ${over}, though it ${belowWords(pointsBelow(trend))}.${untold}`
        : trend.drop > FALLEN_BY
          ? `Not called a slip ${over}, though it ${belowWords(pointsBelow(trend))}: whether for good, the next ones tell.`
          : `No slip seen ${over}, but a loss of ${rules.lossToRuleOut} points a generation can't be ruled out yet.`;
  }
}

/** "from a loss of 0.2 to a gain of 0.1", "0.9 to 2.4" of what is lost either way. */
function rangeWords({ low, high }: Rate): string {
  if (high > 0) return `from a loss of ${one(-low)} to a gain of ${one(high)}`;
  return `${one(-high)} to ${one(-low)}`;
}

/** How fast a line that is not called gains or loses. Set words alone may leave no width at all, which would claim too much. */
const changeWords = (rate: Rate): string =>
  rate.low === rate.high ? slopeWords(rate.slope) : `${slopeWords(rate.slope)} (${rangeWords(rate)})`;

const belowWords = (points: number): string => `stands about ${pointsWords(points)} below its early batches`;

/** Where a line that came down stands now: by the smoothed level that is drawn. */
function standsWords({ trend }: LineJudgement): string {
  const below = trend ? pointsBelow(trend) : 0;
  return below < NEAR ? 'its latest batches stand near its early level again' : `it now ${belowWords(below)}`;
}
/** Points below its early level that are hardly below. */
const NEAR = 3;

const sinceWords = ({ generation, madeOn }: JudgedBatch): string =>
  madeOn === null ? `generation ${generation}` : dayLabel(madeOn, true);

/**
 * How a line came down, with the one day that is said of it, that of the first batch below: "on 19 Jul 2025 it fell by about 25
 * points at once", "since 19 Jul 2025 it loses about 1.7 points with each generation"; null of one that did not.
 * @param ranged with the range of what it loses
 */
function cameDown({ fall, rate, batches }: LineJudgement, ranged: boolean): string | null {
  const batch = fall && batches[fall.at];
  if (!fall || !batch || !rate) return null;
  const day = sinceWords(batch);
  if (fall.shape === 'at once')
    return `${batch.madeOn === null ? 'in' : 'on'} ${day} it fell by about ${pointsWords(fall.points)} at once`;
  if (fall.shape === 'unclear') return `since ${day} it has come out lower`;
  const range = ranged && rate.low !== rate.high ? ` (${rangeWords(rate)})` : '';
  return `since ${day} it loses about ${one(-rate.slope)} points with each generation${range}`;
}

const pointsWords = (points: number): string => {
  const whole = Math.max(1, Math.round(points));
  return `${whole} ${whole === 1 ? 'point' : 'points'}`;
};

/**
 * Since when a line that is called has come down, how, and what that most likely comes from, for its card: "On 19 Jul 2025 it
 * fell by about 25 points at once. Most likely from …"; null of any other line.
 */
export function sinceSentence(judgement: LineJudgement): string | null {
  const { fall, batches, suspects } = judgement;
  const came = cameDown(judgement, false);
  if (came === null || fall === null) return null;
  const generation = batches[fall.at]?.generation ?? 0;
  return `${sentenceCase(came)}. ${blameSays(suspects.flatMap((suspect) => perhapsFrom(suspect, generation) ?? []))}`;
}

/** "more than 99 in 100". */
const inHundred = (odds: number): string => {
  const chance = Math.round(100 / (1 + Math.exp(-odds)));
  return chance >= 99 ? 'more than 98 in 100' : chance <= 1 ? 'hardly any' : `${chance} in 100`;
};

/** What called it. */
const calledBy = ({ look }: LineJudgement): string[] =>
  look === null
    ? []
    : [
        `The chance that it stands more than ${FALLEN_BY} points below its early batches, and not for a bad day alone, is ${inHundred(look.fallen)}.`,
      ];

/** Latest batches so far below the early level (points) that they are named although they are no slip yet. */
const FAR_BELOW = 20;

/** Poor latest batches of a line that is not called: too few to be a slip, and not to be passed over. */
function poorLately({ trend, standing, batches }: LineJudgement): string[] {
  if (!trend || standing === 'slipping' || standing === 'worn out') return [];
  const compared = batches.filter(({ points }) => points !== null);
  const before = compared.findLastIndex(({ points }) => (points ?? 0) > trend.baseline - FAR_BELOW);
  const poor = compared.slice(before + 1);
  if (poor.length === 0) return [];
  const [days, at] = [
    inWords(poor.map(({ madeOn, generation }) => (madeOn === null ? `generation ${generation}` : dayLabel(madeOn, true)))),
    inWords(poor.map(({ points }) => String(shown(points ?? 0)))),
  ];
  return poor.length === 1
    ? [`The latest batch, of ${days}, stands at ${at}, far below its early level of ${shown(trend.baseline)}. One batch is no slip: see what was different, and what the next one says.`]
    : [`The latest ${poor.length} batches, of ${days}, stand at ${at}, far below its early level of ${shown(trend.baseline)}. That is too few to tell a slip from bad luck: see what was different before you seed on.`];
} // prettier-ignore

/** What stands behind a line's standing, the most telling first. @param effects what is said of what was stirred in */
export function lineReasons(judgement: LineJudgement, effects: readonly string[]): string[] {
  const { trend, startedAt, firstCalled, batches } = judgement;
  const unseen = batches.filter(
    ({ leftOut, comparable }) =>
      comparable.length === 0 && leftOut.some(({ because, jar }) => because === 'unseen' && !jar.mixes),
  ).length;
  return [
    ...judgement.suspects.map(suspectSays),
    ...(firstCalled === null ? [] : calledBy(judgement)),
    ...poorLately(judgement),
    ...(startedAt !== null && startedAt < USUAL_POINTS - 10
      ? [`It began low: about ${Math.round(USUAL_POINTS - startedAt)} points below where your lines usually begin.`]
      : []),
    ...effects,
    ...(judgement.perDay?.own ? [`A day in the fridge costs its seed about ${perDay(judgement.perDay.posterior)}, by your own ${judgement.perDay.jars} jars.`] : []),
    ...(trend ? [`Batches differ by about ${one(trend.spread)} points by themselves.`] : []),
    ...(unseen > 0 ? [`Of ${unseen} ${unseen === 1 ? 'batch' : 'batches'} nobody noted how it came out: unknown, neither weak nor fine.`] : []),
  ]; // prettier-ignore
}

/** "0.30 h (0.24 to 0.36)": nineteen in twenty lie between. */
export const perDay = ({ mean, sd }: { readonly mean: number; readonly sd: number }): string =>
  `${mean.toFixed(2)} h (${(mean - 2 * sd).toFixed(2)} to ${(mean + 2 * sd).toFixed(2)})`;

const sentenceCase = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What a score is held against: one early level, the same that the line and its plot say. */
const earlySays = ({ trend }: LineJudgement): string =>
  trend === null ? `${USUAL_POINTS} is usual` : `the line's early batches stood at ${shown(trend.baseline)}`;

/** What of a jar's score nothing tells. */
export const missingSays = (missing: readonly PartName[]): string =>
  `Not noted, or not to be compared: ${missing.join(', ')}.`;

export interface JarSays {
  readonly sentence: string;
  readonly reasons: readonly string[];
}

/** What is said of a jar: its score and whether fibre and culture can be told apart in it. */
export function jarSays(
  jar: JarEvidence,
  score: JarScore | null,
  judgement: LineJudgement,
  jars: readonly JarEvidence[],
): JarSays {
  if (jar.spoiled) return { sentence: 'It is spoiled: discard it. A spoiled jar has no score.', reasons: [] };
  if (!score) return { sentence: 'It has no score: how it came out is unknown, neither weak nor fine.', reasons: [] }; // prettier-ignore
  const name = treatmentOf(jar, judgement.usualTreatment);
  const unlike = name !== '';
  const siblings = plainSiblings(jar, judgement.usualTreatment, jars);
  const plain = median(siblings.flatMap((sibling) => scoreJar(sibling, judgement.usual)?.points ?? []));
  const ownPoints = scoreJar(jar, judgement.usual)?.points ?? score.points;
  const left = judgement.batches
    .find(({ batch }) => batch === jar.batch)
    ?.leftOut.find((one) => one.jar.key === jar.key);
  const reasons: string[] = left?.because === 'ran cool' ? [leftOutSays(left)] : [];
  if (unlike && plain !== null) {
    reasons.push(
      ownPoints < plain - 15
        ? `Its plain siblings of the same seed in the same hold stand at ${shown(plain)}, it at ${shown(ownPoints)} as it came: that was the ${name}, not the culture.`
        : `Its plain siblings of the same seed in the same hold stand at ${shown(plain)}, it at ${shown(ownPoints)} as it came.`,
    );
  } else if (unlike) {
    const recipe = name === NOTHING_IN ? 'having nothing stirred in' : `the ${name}`;
    reasons.push(
      `There is no plain sibling of the same seed in the same hold, so whether that is the culture or ${recipe} can't be told here.`,
    );
  }
  reasons.push(
    ...score.corrections.map((one) => correctionSays(one.name, one.for)),
    ...score.leftAside.map(asideSays),
  );
  if (score.missing.length > 0) reasons.push(missingSays(score.missing));
  return {
    sentence: `${shown(score.points)} of 100 (${shown(score.low)} to ${shown(score.high)}); ${earlySays(judgement)}.`,
    reasons,
  };
}
