// What is believed of how the level of a culture moves from seed to batch, before a keeper's own batches tell. The figures are
// the program's own (no source); what they are worth is measured in simulated kitchens (npm run bench:verdict).

/** One belief of how often something happens to a culture. */
export interface Drift {
  readonly weight: number;
  /** Part of cultures that are of the kind that loses; the others never begin to. */
  readonly prone: number;
  /** Chance a generation that one of those begins to lose with each generation, and that a losing one stops. */
  readonly begins: number;
  readonly ends: number;
  /** Chance a generation of a sudden lasting fall, and of a sudden lasting rise. */
  readonly falls: number;
  readonly rises: number;
}

export interface LevelRules {
  /** Levels looked at: from, step and how many (points). */
  readonly from: number;
  readonly step: number;
  readonly levels: number;
  /** Points lost a generation: nothing by a sound culture, nothing yet by one that will lose, and what a losing one may lose. */
  readonly rates: readonly number[];
  /** Spread of batches about their level that is looked for (points), with weights. */
  readonly spreads: readonly { readonly value: number; readonly weight: number }[];
  /** Spread of jars about their batch: what is expected and how many jars that weighs, and the values looked at (points). */
  readonly jarSpread: { readonly usual: number; readonly weight: number; readonly values: readonly number[] };
  readonly drifts: readonly Drift[];
  /** A sudden fall or rise is anything between (steps). */
  readonly fall: readonly [number, number];
  readonly rise: readonly [number, number];
  /** Chance of a passing bad day, and how far below its level it may put a batch (points). */
  readonly badDay: number;
  readonly badDayFalls: readonly { readonly value: number; readonly weight: number }[];
  /**
   * Correlation of what batches share from one to the next in time, and by how many spreads at most the one before counts as
   * off its level.
   */
  readonly carriesOver: { readonly correlation: number; readonly most: number };
  /** Level of a line's early batches before any was seen. */
  readonly early: { readonly mean: number; readonly sd: number };
  /** Spread of what a treatment may do before it was seen (points). */
  readonly treatmentSd: number;
  /** How many generations back a batch still tells of its forebears. */
  readonly back: number;
}

/** From this row of the rates on a culture is losing. */
export const LOSING_FROM = 2;

export const LEVEL_RULES: LevelRules = {
  from: -24,
  step: 3,
  levels: 50,
  rates: [0, 0, 2, 4.5],
  spreads: [
    { value: 3, weight: 0.2 },
    { value: 5, weight: 0.35 },
    { value: 8, weight: 0.35 },
    { value: 12, weight: 0.1 },
  ],
  jarSpread: { usual: 3.5, weight: 6, values: [1, 1.7, 3, 5, 8.5] },
  drifts: [
    { weight: 0.3, prone: 0.03, begins: 0.12, ends: 0.02, falls: 0.006, rises: 0.002 },
    { weight: 0.3, prone: 0.4, begins: 0.12, ends: 0.01, falls: 0.006, rises: 0.002 },
    { weight: 0.15, prone: 0.05, begins: 0.12, ends: 0.02, falls: 0.03, rises: 0.006 },
    { weight: 0.25, prone: 0.97, begins: 0.12, ends: 0.01, falls: 0.006, rises: 0.002 },
  ],
  fall: [3, 20],
  rise: [2, 8],
  badDay: 0.07,
  badDayFalls: [
    { value: 6, weight: 0.25 },
    { value: 12, weight: 0.25 },
    { value: 18, weight: 0.2 },
    { value: 24, weight: 0.12 },
    { value: 30, weight: 0.1 },
    { value: 42, weight: 0.05 },
    { value: 60, weight: 0.03 },
  ],
  carriesOver: { correlation: 0.2, most: 1.5 },
  early: { mean: 75, sd: 10 },
  treatmentSd: 14,
  back: 8,
};
