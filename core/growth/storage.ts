// What a seed loses while it waits: first order in the fridge, one step for each freeze and thaw and a slow loss in the
// freezer. Gives the count to be expected, with a band, and the delay that it should cost. That delay is no loss of vigour.

/** Low and high are the ends of a band, middle the best guess. */
export interface Band {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

export interface StorageModel {
  /** Days in the fridge for the count to fall to a tenth. */
  readonly fridgeDays: Band;
  /** Powers of ten lost by one freezing and thawing. */
  readonly freezeStep: Band;
  /** Powers of ten lost a week in the freezer. */
  readonly frozenPerWeek: Band;
  /** Doubling time of the culture in warm milk (h). */
  readonly doublingHours: Band;
}

/** Published figures, all editable by the keeper; sources in STORAGE_SOURCES. */
export const PUBLISHED_STORAGE: StorageModel = {
  fridgeDays: { low: 10, middle: 27, high: 60 },
  freezeStep: { low: 0.1, middle: 0.5, high: 1 },
  frozenPerWeek: { low: 0, middle: 0.13, high: 0.19 },
  doublingHours: { low: 0.8, middle: 1.08, high: 1.5 },
};

export const STORAGE_SOURCES = {
  fridgeDays:
    'Hekmat & Reid 2007, doi 10.1111/j.1365-2621.2006.01292.x: a tenth after 27 days at 4 °C. Low end: other lactobacilli in yogurt at 5 °C, PMC4304562 (10 to 11 days). High end: strains that hardly fall in a month; a guess.',
  freezeStep:
    'Salem, Fathi & Awad 2005: less than one power of ten for the freezing itself; the middle is a guess.',
  frozenPerWeek:
    'Salem, Fathi & Awad 2005: 1.54 powers of ten in 12 weeks at −26 °C. Low end: no decay in a year reported.',
  doublingHours:
    'El-Ziney 2018, doi 10.4236/aim.2018.81002: 0.641 per hour, 65 minutes; the range is a guess.',
} as const;

/** How a seed was kept. */
export interface Storage {
  readonly fridgeDays: number;
  readonly frozenDays: number;
  /** How often it was frozen and thawed. */
  readonly freezings: number;
}

/** Powers of ten lost, with its band. */
export function storageLoss(storage: Storage, model: StorageModel = PUBLISHED_STORAGE): Band {
  const loss = (days: number, step: number, perWeek: number): number =>
    storage.fridgeDays / days + storage.freezings * step + (storage.frozenDays / 7) * perWeek;
  return {
    low: loss(model.fridgeDays.high, model.freezeStep.low, model.frozenPerWeek.low),
    middle: loss(model.fridgeDays.middle, model.freezeStep.middle, model.frozenPerWeek.middle),
    high: loss(model.fridgeDays.low, model.freezeStep.high, model.frozenPerWeek.high),
  };
}

/** Count to be expected of a seed (CFU per mL); low is the most loss. */
export function expectedCount(countPerMl: number, loss: Band): Band {
  return {
    low: countPerMl * 10 ** -loss.high,
    middle: countPerMl * 10 ** -loss.middle,
    high: countPerMl * 10 ** -loss.low,
  };
}

/** Doublings that a loss of one power of ten costs. */
export const DOUBLINGS_PER_TENTH = Math.log2(10);

/** Hours that the next jar should be behind, for the doublings that make the loss good. */
export function delayHours(loss: Band, model: StorageModel = PUBLISHED_STORAGE): Band {
  return {
    low: loss.low * DOUBLINGS_PER_TENTH * model.doublingHours.low,
    middle: loss.middle * DOUBLINGS_PER_TENTH * model.doublingHours.middle,
    high: loss.high * DOUBLINGS_PER_TENTH * model.doublingHours.high,
  };
}

/** One observed pair: days that the seed stood in the fridge, and the set time (h) of the jar it seeded. */
export interface WaitAndSet {
  readonly fridgeDays: number;
  readonly setHours: number;
}

export interface DelayPerDay {
  /** Jars that it was learned from. */
  readonly jars: number;
  /** Hours of delay a day in the fridge: mean and standard deviation of belief, before and after the keeper's own jars. */
  readonly prior: { readonly mean: number; readonly sd: number };
  readonly posterior: { readonly mean: number; readonly sd: number };
  /** Whether the keeper's own figure may be used: only once it is less than half as wide as the published one. */
  readonly own: boolean;
  readonly used: { readonly mean: number; readonly sd: number };
}

/**
 * Delay per day in the fridge, from published figures and the keeper's own jars (normal belief, least squares on days;
 * the level of the set times is free). Residual spread is at least an hour, since set times are seen as intervals.
 */
export function delayPerDay(
  seen: readonly WaitAndSet[],
  model: StorageModel = PUBLISHED_STORAGE,
): DelayPerDay {
  const perDay = delayHours(storageLoss({ fridgeDays: 1, frozenDays: 0, freezings: 0 }, model), model);
  // The band is taken as two standard deviations each way.
  const prior = { mean: perDay.middle, sd: (perDay.high - perDay.low) / 4 };
  const n = seen.length;
  const meanDays = seen.reduce((sum, { fridgeDays }) => sum + fridgeDays, 0) / n;
  const meanHours = seen.reduce((sum, { setHours }) => sum + setHours, 0) / n;
  const sxx = seen.reduce((sum, { fridgeDays }) => sum + (fridgeDays - meanDays) ** 2, 0);
  if (n < 4 || !(sxx > 0)) return { jars: n, prior, posterior: prior, own: false, used: prior };
  const slope =
    seen.reduce((sum, row) => sum + (row.fridgeDays - meanDays) * (row.setHours - meanHours), 0) / sxx;
  const rest = seen.reduce(
    (sum, row) => sum + (row.setHours - meanHours - slope * (row.fridgeDays - meanDays)) ** 2,
    0,
  );
  const residual = Math.max(1, rest / (n - 2));
  const [before, data] = [1 / prior.sd ** 2, sxx / residual];
  const posterior = {
    mean: (prior.mean * before + slope * data) / (before + data),
    sd: Math.sqrt(1 / (before + data)),
  };
  const own = posterior.sd < prior.sd / 2;
  return { jars: n, prior, posterior, own, used: own ? posterior : prior };
}
