// What judgement says of a line and of a jar, in calm sentences with their numbers.
import { dayLabel } from '../lineage/labels';
import { inWords } from './way-to-source';
import { correctionSays, timesSeen } from './correction-says';
import { leftOutSays } from './left-out-says';
import { asideSays } from './score-says';
import { blameSays, perhapsFrom, suspectSays } from './suspects-says';
import type { PartName } from '../shapes/vigour-codes';
import { NOTHING_IN, treatmentOf } from '../vigour/effects';
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
  const { trend, standing, rules } = judgement;
  const comparable = judgement.batches.filter(({ points }) => points !== null).length;
  if (!trend) {
    return comparable < rules.fewest
      ? `Too few batches to say: ${comparable === 0 ? 'none' : comparable} can be compared yet, and ${rules.fewest} are needed.`
      : `Too few batches to say: the ${comparable} that can be compared are all of one generation.`;
  }
  const over = `over ${Math.min(comparable, rules.window)} comparable batches`;
  const [least, most] = [trend.slopeLow, trend.slopeHigh].map(Math.abs).toSorted((a, b) => a - b) as [
    number,
    number,
  ];
  const bothLose = trend.slopeHigh <= 0;
  const interval = bothLose
    ? `${one(least)} to ${one(most)}`
    : `from a loss of ${one(-trend.slopeLow)} to a gain of ${one(trend.slopeHigh)}`;
  const below = pointsBelow(trend);
  // Set words alone may leave no width at all, which would claim too much.
  const change =
    trend.slopeLow === trend.slopeHigh ? slopeWords(trend.slope) : `${slopeWords(trend.slope)} (${interval})`;
  const untold =
    judgement.blocked.length > 0
      ? ` Whether that is the culture or the ${inWords(judgement.blocked)} can't be told apart here.`
      : '';
  // A slope is never said of one drop and a level stretch.
  const came = cameDown(judgement, 'it fell by about');
  if (came !== null && (standing === 'slipping' || standing === 'worn out'))
    return `${sentenceCase(standing)} ${over}: ${came}, and it now stands about ${below} points below its early batches.${untold}`;
  switch (standing) {
    case 'steady':
      // The range beside it is the more careful of the two: it must not be gainsaid, as it is printed.
      return `Steady ${over}: ${change}. A loss of ${rules.lossToRuleOut} points a generation ${Number(one(-trend.slopeLow)) < rules.lossToRuleOut ? 'can be ruled out' : 'is unlikely'}.`;
    case 'slipping':
      return `Slipping: ${change} ${over}, and it now stands about ${below} points below its early batches.${untold}`;
    case 'worn out':
      return `Worn out: it now stands about ${below} points below its early batches. ${sentenceCase(change)} ${over}.${untold}`;
    default:
      return untold && trend.drop > FALLEN_BY
        ? `No slip is put down to the culture ${over}, though it stands about ${pointsBelow(trend)} points below its early batches.${untold}`
        : `No slip seen ${over}, but a loss of ${rules.lossToRuleOut} points a generation can't be ruled out yet.`;
  }
}

const sinceWords = ({ generation, madeOn }: JudgedBatch): string =>
  madeOn === null ? `generation ${generation}` : dayLabel(madeOn, true);

/** "it fell by about 25 points at once on 19 Jul 2025"; null where it did not come down at once. */
function cameDown({ fall, batches }: LineJudgement, fell: string): string | null {
  const batch = fall && batches[fall.at];
  if (!fall || !batch || fall.shape !== 'at once') return null;
  const when = batch.madeOn === null ? `in ${sinceWords(batch)}` : `on ${sinceWords(batch)}`;
  return `${fell} ${pointsWords(fall.points)} at once ${when}`;
}

const pointsWords = (points: number): string => {
  const whole = Math.max(1, Math.round(points));
  return `${whole} ${whole === 1 ? 'point' : 'points'}`;
};

/**
 * Since when a line that is called has come down, how, and what that most likely comes from, for its card: "Worn out since
 * 19 Jul 2025: it fell by about 25 points at once. Most likely from …"; null of any other line.
 */
export function sinceSentence({ standing, fall, batches, suspects }: LineJudgement): string | null {
  const batch = fall && batches[fall.at];
  if (!fall || !batch) return null;
  const how =
    fall.shape === 'at once'
      ? `it fell by about ${pointsWords(fall.points)} at once`
      : `it loses about ${pointsWords(fall.points)} with each generation`;
  const said = `${sentenceCase(standing)} since ${sinceWords(batch)}: ${how}.`;
  const from = suspects.flatMap((suspect) => perhapsFrom(suspect, batch.generation) ?? []);
  return `${said} ${blameSays(from)}`;
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

const madeWords = ({ generation, madeOn }: JudgedBatch): string =>
  `generation ${generation}${madeOn ? `, made ${dayLabel(madeOn, true)}` : ''}`;

/** When a slip was first noticed, and since when all its batches have stood below their early level. */
function noticedSays({ firstCalled, batches, trend }: LineJudgement): string[] {
  const called = firstCalled === null ? undefined : batches[firstCalled];
  if (firstCalled === null || !called || !trend) return [];
  const until = batches.slice(0, firstCalled + 1).filter(({ points }) => points !== null);
  const since = until[until.findLastIndex(({ points }) => (points ?? 0) > trend.baseline - FALLEN_BY) + 1];
  const noticed = `The slip was first noticed at ${madeWords(called)}`;
  return [
    since && since !== called ? `${noticed}; since ${madeWords(since)}, every batch has stood clearly below the early ones.` : `${noticed}.`,
  ];
} // prettier-ignore

/** What stands behind a line's standing, the most telling first. */
export function lineReasons(judgement: LineJudgement): string[] {
  const { trend, startedAt, firstCalled, batches, effects } = judgement;
  const unseen = batches.filter(
    ({ leftOut, comparable }) =>
      comparable.length === 0 && leftOut.some(({ because, jar }) => because === 'unseen' && !jar.mixes),
  ).length;
  return [
    ...noticedSays(judgement),
    ...judgement.suspects.map(suspectSays),
    ...(firstCalled === null ? [] : calledBy(judgement)),
    ...poorLately(judgement),
    ...(startedAt !== null && startedAt < USUAL_POINTS - 10
      ? [`It began low: about ${Math.round(USUAL_POINTS - startedAt)} points below where your lines usually begin.`]
      : []),
    ...effects
      .filter(({ points }) => Math.abs(points) >= 5)
      .map(({ name, points, sets }) => `${name === NOTHING_IN ? 'Leaving out what is usually stirred in' : sentenceCase(name)} ${points < 0 ? 'takes' : 'adds'} about ${Math.abs(Math.round(points))} points, ${timesSeen(sets)} beside jars of the same seed and hold made as usual.`),
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
