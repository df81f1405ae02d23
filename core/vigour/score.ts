// The score of one jar: each thing seen, in points against what is usual of its line, weighed together. How fast it set and
// soured says most; end pH and firmness say how far it got; whey counts by its distance from the usual, either way.
import { measuresOf, type Measures, type Usual } from './usual';
import {
  USUAL_POINTS,
  type CheckAside,
  type Correction,
  type JarEvidence,
  type JarScore,
  type Part,
  type PartSeen,
} from './jar-evidence';
import { PART_NAMES, type PartName } from '../shapes/vigour-codes';

/** Points and weights are the program's own scale (no source); what they are worth is shown by the bench. */
export const SCORE_RULES = {
  version: 2,
  pointsPer: { 'set time': 40, 'early pH': 40, 'early set': 25, 'end pH': 100, 'set word': 20, whey: 10 },
  weights: { 'set time': 3, 'early pH': 3, 'early set': 1.5, 'end pH': 1.5, 'set word': 2, whey: 0.5 },
  /** Jars of one batch differ by about this much (points), whatever is recorded. */
  jarError: 4,
  /** An early check is compared only if its warm hours are within this part of the usual. */
  checkWithin: 0.25,
  /** Points that a missing warm hour costs an end score: belief before the keeper's own batches, and its spread. */
  perMissingHour: { mean: 5, sd: 2.5 },
  /** Warm hours that a jar needs after it has set, to firm and sour (common practice, no source). */
  hoursAfterSet: 12,
  /** Set words that a hold which was too short may explain at most: from runny to firm. */
  mostWordsForWarmth: 3,
  /** Normal quantile of the interval shown: 80 in 100. */
  interval: 1.2816,
} as const;

const END_PARTS: readonly PartName[] = ['end pH', 'set word'];
const SPEED_PARTS: readonly PartName[] = ['set time', 'early pH', 'early set'];

/** Warm hours missing from what a hold gave, against what the seed needed; 0 where it was enough or is unknown. */
export function missingWarmth(warmHours: number | null, usualSet: number, delay: number): number {
  if (warmHours === null) return 0;
  return Math.max(0, usualSet + delay + SCORE_RULES.hoursAfterSet - warmHours);
}

interface Aside {
  readonly parts: Part[];
  readonly aside: CheckAside[];
}

function partsOf(jar: JarEvidence, m: Measures, usual: Usual): Aside {
  const { pointsPer, weights } = SCORE_RULES;
  const parts: Part[] = [];
  const aside: CheckAside[] = [];
  const add = (seen: PartSeen, points: number, error: number, weight: number = weights[seen.name]): void => {
    parts.push({ name: seen.name, points: USUAL_POINTS + points, error, seen, weight });
  };
  if (m.setBetween && m['set time'] !== null) {
    const [low, high] = m.setBetween.map((time) => Math.max(time, 0.5)) as [number, number];
    const per = pointsPer['set time'];
    const error = Math.hypot(4, (per * Math.log2(high / low)) / Math.sqrt(12));
    const { value } = usual['set time'];
    add(
      { name: 'set time', low, high, warm: jar.profile !== null, usual: value },
      -per * Math.log2(Math.max(m['set time'], 0.5) / value),
      error,
    );
  }
  const check = usual.checkHours.value;
  const early = m['early pH'] !== null || m['early set'] !== null;
  if (early && m.checkHours !== null && Math.abs(m.checkHours - check) > SCORE_RULES.checkWithin * check) {
    aside.push({ hours: m.checkHours, usual: check });
  } else {
    const early = m['early pH'];
    const { value } = usual['early pH'];
    if (early !== null)
      add({ name: 'early pH', ph: early, usual: value }, -pointsPer['early pH'] * (early - value), 5);
    const at = m['early set'];
    if (at !== null)
      add({ name: 'early set', at }, pointsPer['early set'] * (at - usual['early set'].value), 9);
  }
  const ph = m['end pH'];
  if (ph !== null) {
    const how = jar.outcome?.phHow;
    const [weight, error] = how === 'meter' ? [1, 6] : how === 'strip' ? [0.2, 30] : [0.5, 15];
    const { value } = usual['end pH'];
    add(
      { name: 'end pH', ph, usual: value, strip: how === 'strip' },
      -pointsPer['end pH'] * (ph - value),
      error,
      weights['end pH'] * weight,
    );
  }
  const word = m['set word'];
  if (word !== null)
    add(
      { name: 'set word', at: word },
      pointsPer['set word'] * (word - usual['set word'].value),
      pointsPer['set word'] / Math.sqrt(12),
    );
  if (m.whey !== null)
    add({ name: 'whey', at: m.whey }, -pointsPer.whey * Math.abs(m.whey - usual.whey.value), 8);
  return { parts, aside };
}

/** What a correction is of: how fast it was, how far it got, or the jar as a whole. */
export type CorrectionOf = 'speed' | 'end' | 'all';

/**
 * Scores a jar. Corrections are passed in as points; those of speed or end scores count only by the weight that such parts
 * have in this jar.
 * @returns null where nothing of it was seen, or it is spoiled: a spoiled jar has no vigour to speak of.
 */
export function scoreJar(
  jar: JarEvidence,
  usual: Usual,
  corrections: readonly (Correction & { readonly of: CorrectionOf })[] = [],
): JarScore | null {
  if (jar.spoiled || !jar.outcome) return null;
  const m = measuresOf(jar);
  const { parts, aside } = partsOf(jar, m, usual);
  const weight = parts.reduce((sum, part) => sum + part.weight, 0);
  if (weight === 0) return null;
  const shareOf = (names: readonly PartName[]): number =>
    parts.reduce((sum, part) => sum + (names.includes(part.name) ? part.weight : 0), 0) / weight;
  const share = { speed: shareOf(SPEED_PARTS), end: shareOf(END_PARTS), all: 1 };
  const applied = corrections.map(({ of, ...correction }) => ({
    ...correction,
    points: correction.points * share[of],
  }));
  const raw = parts.reduce((sum, part) => sum + part.weight * part.points, 0) / weight;
  const points = raw + applied.reduce((sum, { points }) => sum + points, 0);
  const fromParts = Math.sqrt(parts.reduce((sum, part) => sum + (part.weight * part.error) ** 2, 0)) / weight;
  const error = Math.hypot(fromParts, SCORE_RULES.jarError) * SCORE_RULES.interval;
  const word = parts.find(({ name }) => name === 'set word');
  return {
    jar,
    points,
    low: points - error,
    high: points + error,
    parts,
    missing: PART_NAMES.filter((name) => !parts.some((part) => part.name === name)),
    leftAside: aside,
    corrections: applied.filter(({ points }) => Math.abs(points) >= 0.05),
    width: word ? (SCORE_RULES.pointsPer['set word'] * word.weight) / weight : 0,
  };
}

/** The figure shown: 0 to 100. */
export const shown = (points: number): number => Math.round(Math.min(100, Math.max(0, points)));
