// How long things are kept for eating and for seed: days that a keeper may change, none of them a promise.

/** Whole days. */
export interface ShelfLimits {
  /** Unopened, at or below 4 °C, from the day it came out of warmth. */
  readonly eatFridge: number;
  readonly eatOpened: number;
  /** From the day it was thawed; it isn't frozen again. */
  readonly eatThawed: number;
  readonly eatFrozen: number;
  /** From the day it was given away. */
  readonly eatGiven: number;
  readonly seedFridge: number;
  readonly seedFreezer: number;
}
export type LimitName = keyof ShelfLimits;

/** Common practice, no source. Two months are 60 days, three are 90. */
const SHELF_LIMITS: ShelfLimits = {
  eatFridge: 14,
  eatOpened: 5,
  eatThawed: 3,
  eatFrozen: 60,
  eatGiven: 7,
  seedFridge: 14,
  seedFreezer: 90,
};

/** Under which name the ledger keeps a keeper's own figure. */
export const LIMIT_SETTINGS: Readonly<Record<LimitName, string>> = {
  eatFridge: 'eat fridge days',
  eatOpened: 'eat opened days',
  eatThawed: 'eat thawed days',
  eatFrozen: 'eat frozen days',
  eatGiven: 'eat given days',
  seedFridge: 'seed fridge days',
  seedFreezer: 'seed freezer days',
};
export const LIMIT_NAMES = Object.keys(SHELF_LIMITS) as readonly LimitName[];
const MOST_DAYS = 3650;

const isDays = (value: number | undefined): value is number =>
  value !== undefined && Number.isInteger(value) && value >= 1 && value <= MOST_DAYS;

/** The days that hold: the keeper's own where there are any, else what is usual. @param settings the ledger's settings by name */
export function shelfLimits(settings: ReadonlyMap<string, number>): ShelfLimits {
  const own = (name: LimitName): number => {
    const set = settings.get(LIMIT_SETTINGS[name]);
    return isDays(set) ? set : SHELF_LIMITS[name];
  };
  return {
    eatFridge: own('eatFridge'),
    eatOpened: own('eatOpened'),
    eatThawed: own('eatThawed'),
    eatFrozen: own('eatFrozen'),
    eatGiven: own('eatGiven'),
    seedFridge: own('seedFridge'),
    seedFreezer: own('seedFreezer'),
  };
}
