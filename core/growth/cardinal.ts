// How fast a culture grows at a temperature, by the cardinal temperature model with inflection (Rosso, Lobry & Flandrois
// 1993, doi 10.1006/jtbi.1993.1099). No published set exists for the keeper's species, so it is carried as ranges.

/** Cardinal temperatures (°C): no growth at or beyond the outer two, fastest at the middle one. */
export interface CardinalTemperatures {
  readonly min: number;
  readonly opt: number;
  readonly max: number;
}

/**
 * γ(T): growth rate at a temperature as a part of the fastest, 0 to 1.
 * @throws RangeError where the optimum is not above the middle between minimum and maximum: the model has a pole there.
 */
export function growthFactor(celsius: number, { min, opt, max }: CardinalTemperatures): number {
  if (!(opt > (min + max) / 2 && opt < max)) throw new RangeError('cardinal temperatures out of order');
  if (celsius <= min || celsius >= max) return 0;
  const above = (celsius - max) * (celsius - min) ** 2;
  const below = (opt - min) * ((opt - min) * (celsius - opt) - (opt - max) * (opt + min - 2 * celsius));
  return above / below;
}

export interface CardinalSource {
  readonly set: CardinalTemperatures;
  /** Growth at the optimum, in the unit of its source. */
  readonly rate: number;
  readonly unit: string;
  readonly source: string;
}

/** Published sets, for checking the model; none is of the keeper's species. */
export const PUBLISHED_SETS = {
  rhamnosusInMilk: {
    set: { min: 2.7, opt: 44.4, max: 52 },
    rate: 0.88,
    unit: 'log10 CFU/mL per h',
    source: 'Valik et al. 2013, doi 10.2478/s11696-013-0365-1',
  },
  threeSpeciesInMilk: {
    set: { min: 4, opt: 38.3, max: 49.6 },
    rate: 1.56,
    unit: 'per h',
    source: 'Slovak University of Technology, predictive microbiology of a dairy culture in milk (abstract)',
  },
} as const satisfies Record<string, CardinalSource>;

/** What is assumed of a slow heat-loving milk culture: ranges, common practice and textbooks (from memory), no fit. */
export const ASSUMED_RANGES = { min: [8, 15], opt: [37, 42], max: [46, 50] } as const;

const middle = ([low, high]: readonly [number, number]): number => (low + high) / 2;

/** The middle of the ranges first, then every corner: what holds for all of them is what can be said. */
function setsWithin(ranges: {
  readonly min: readonly [number, number];
  readonly opt: readonly [number, number];
  readonly max: readonly [number, number];
}): readonly CardinalTemperatures[] {
  const corners = ranges.min.flatMap((min) =>
    ranges.opt.flatMap((opt) => ranges.max.map((max) => ({ min, opt, max }))),
  );
  return [{ min: middle(ranges.min), opt: middle(ranges.opt), max: middle(ranges.max) }, ...corners];
}

export const ASSUMED_SETS = setsWithin(ASSUMED_RANGES);
