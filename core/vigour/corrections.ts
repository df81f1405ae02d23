// What is taken out of a score before it is called vigour: warmth that a hold lacked, a seed that had waited, an addition
// whose effect siblings show. Coefficients start from a stated belief and are fitted at most one per five batches.
import { ASSUMED_SETS } from '../growth/cardinal';
import {
  delayHours,
  PUBLISHED_STORAGE,
  storageLoss,
  type DelayPerDay,
  type Storage,
} from '../growth/storage';
import { warmthOf, type WarmPoint } from '../growth/warm-hours';
import { treatmentOf, type Effect, type UsualTreatment } from './effects';
import { median } from './medians';
import { missingWarmth, SCORE_RULES, type CorrectionOf } from './score';
import type { Correction, JarEvidence } from './jar-evidence';
import type { Usual } from './usual';

/** Comparable batches needed for each coefficient that is fitted. */
export const BATCHES_PER_COEFFICIENT = 5;
const MIDDLE_SET = ASSUMED_SETS.slice(0, 1);

/** Hours that a seed's storage should cost: in the fridge by the keeper's own figure once it is known, else published. */
function waitDelay(storage: Storage | null, perDay: DelayPerDay | null): number {
  if (!storage) return 0;
  if (!perDay?.own) return delayHours(storageLoss(storage), PUBLISHED_STORAGE).middle;
  const frozen = delayHours(storageLoss({ ...storage, fridgeDays: 0 }), PUBLISHED_STORAGE).middle;
  return frozen + perDay.used.mean * storage.fridgeDays;
}

const warmHours = new WeakMap<readonly WarmPoint[], number>();

/** Warm hours of a whole hold, reckoned once for each profile. */
function warmHoursOf(profile: readonly WarmPoint[]): number | null {
  const known = warmHours.get(profile);
  if (known !== undefined) return known;
  const warmth = warmthOf(profile, MIDDLE_SET);
  if (warmth) warmHours.set(profile, warmth.warmHours.middle);
  return warmth && warmth.warmHours.middle;
}

/** Warm hours that the hold lacked for what the seed needed. */
export function lackedWarmth(jar: JarEvidence, usual: Usual, perDay: DelayPerDay | null): number {
  const warm = jar.profile && warmHoursOf(jar.profile);
  return missingWarmth(warm, usual['set time'].value, waitDelay(jar.seedStorage, perDay));
}

export interface Coefficient {
  readonly mean: number;
  readonly sd: number;
  readonly fitted: boolean;
}

/**
 * Points an end score loses per missing warm hour: normal belief from SCORE_RULES, moved by the line's own batches once
 * there are five (least squares on how far each fell below the middle of all).
 */
export function missingHourCoefficient(
  rows: readonly { readonly missing: number; readonly points: number }[],
): Coefficient {
  const prior = SCORE_RULES.perMissingHour;
  const middle = median(rows.filter(({ missing }) => missing === 0).map(({ points }) => points));
  if (rows.length < BATCHES_PER_COEFFICIENT || middle === null) return { ...prior, fitted: false };
  const residual = 8 ** 2;
  const sxx = rows.reduce((sum, { missing }) => sum + missing ** 2, 0);
  if (sxx === 0) return { ...prior, fitted: false };
  const sxy = rows.reduce((sum, { missing, points }) => sum + missing * (middle - points), 0);
  const precision = 1 / prior.sd ** 2 + sxx / residual;
  const mean = (prior.mean / prior.sd ** 2 + sxy / residual) / precision;
  return { mean: Math.max(0, mean), sd: 1 / Math.sqrt(precision), fitted: true };
}

export interface CorrectionInput {
  readonly usual: Usual;
  readonly usualTreatment: UsualTreatment;
  readonly effects: ReadonlyMap<string, Effect>;
  readonly perMissingHour: Coefficient;
  readonly perDay: DelayPerDay | null;
  /** Days that seeds usually wait in this line's early batches. */
  readonly usualSeedDays: number | null;
}

/** Corrections of one jar, before they are weighed by its parts. */
export function correctionsOf(
  jar: JarEvidence,
  input: CorrectionInput,
): readonly (Correction & { readonly of: CorrectionOf })[] {
  const found: (Correction & { readonly of: CorrectionOf })[] = [];
  const lacked = lackedWarmth(jar, input.usual, input.perDay);
  if (lacked > 0) {
    const points = Math.min(
      SCORE_RULES.mostWordsForWarmth * SCORE_RULES.pointsPer['set word'],
      input.perMissingHour.mean * lacked,
    );
    found.push({
      name: 'too little warmth',
      points,
      of: 'end',
      for: { code: 'short of warmth', hours: lacked },
    });
  }
  const set = input.usual['set time'].value;
  const { seedStorage: storage } = jar;
  const usually = { fridgeDays: input.usualSeedDays ?? 0, frozenDays: 0, freezings: 0 };
  const extra = waitDelay(storage, input.perDay) - waitDelay(usually, input.perDay);
  if (storage && input.usualSeedDays !== null && Math.abs(extra) >= 0.25 && set + extra > 0) {
    found.push({
      name: 'how long the seed had waited',
      points: SCORE_RULES.pointsPer['set time'] * Math.log2((set + extra) / set),
      of: 'speed',
      for: {
        code: 'seed waited',
        fridgeDays: storage.fridgeDays,
        frozenDays: storage.frozenDays,
        usualDays: input.usualSeedDays,
        hours: extra,
      },
    });
  }
  const name = treatmentOf(jar, input.usualTreatment);
  const effect = input.effects.get(name);
  if (effect) {
    found.push({
      name,
      points: -effect.points,
      of: 'all',
      for: { code: 'treatment', does: effect.points, sets: effect.sets },
    });
  }
  return found;
}
