// Figures of one jar's hold and seed, each with its why: hours held, warm hours with their band, minutes above 45 °C, what
// the seed had lost by waiting and the delay that it should cost. Pure; what the culture is made of is passed in.
import { ASSUMED_RANGES } from '../growth/cardinal';
import {
  delayHours,
  expectedCount,
  PUBLISHED_STORAGE,
  STORAGE_SOURCES,
  storageLoss,
  type Band,
} from '../growth/storage';
import { DAMAGE_ABOVE } from '../growth/warm-hours';
import { DEFAULT_COUNT_PER_ML } from '../lineage/lineage-shapes';
import type { Figure } from '../shapes/why';
import { warmthSays } from './warmth-says';
import { bandIn, warmthsOf } from '../vigour/hold-warmth';
import type { HoldWarmth, JarEvidence } from '../vigour/jar-evidence';

/** What a jar's culture is declared to be made of. */
export interface Culture {
  readonly species: readonly string[];
  /** Some of it comes from a past that nobody declared. */
  readonly unknown: boolean;
}

/** A count to one figure, as one says it: "200 million", "1 billion". */
const countInWords = (value: number): string => {
  const rounded = Number(value.toPrecision(1));
  if (rounded >= 1e9) return `${rounded / 1e9} billion`;
  return rounded >= 1e6 ? `${rounded / 1e6} million` : rounded.toLocaleString('en');
};

const hours = (value: number): string => `${value.toFixed(1)} h`;
const band = ({ low, middle, high }: Band): string =>
  `${hours(middle)} (${low.toFixed(1)} to ${high.toFixed(1)})`;
const range = ([low, high]: readonly [number, number]): string => `${low} to ${high} °C`;

const cultureSays = ({ species, unknown }: Culture): string =>
  unknown
    ? 'Not all of this culture is declared, so plain hours come first and warm hours are a rough guide.'
    : species.length > 1
      ? `This culture is a mixture (${species.join(', ')}), so plain hours come first and warm hours are a rough guide.`
      : `Of ${species[0] ?? 'this culture'} no set of temperatures is published, so ranges are carried and shown.`;

function warmthFigures(warmth: HoldWarmth, culture: Culture): Figure[] {
  const found = warmthsOf(warmth);
  const [usual] = found;
  if (!usual) return [];
  const source =
    'Rosso, Lobry & Flandrois 1993, doi 10.1006/jtbi.1993.1099 (model); ranges common practice, no source.';
  const assumptions = [`By ${warmth.from}.`, ...warmthSays(warmth)];
  const warm: Figure = {
    name: 'warm hours',
    shown: band(bandIn(found, usual)),
    why: {
      formula: 'Hours at the best temperature that would do as much: the growth rate at each temperature, as a part of the fastest, added up over the hold.',
      inputs: [
        { name: 'no growth at or below', value: range(ASSUMED_RANGES.min) },
        { name: 'fastest growth at', value: range(ASSUMED_RANGES.opt) },
        { name: 'no growth at or above', value: range(ASSUMED_RANGES.max) },
        { name: 'coolest and warmest of the jar', value: `${usual.coolest.toFixed(1)} and ${usual.warmest.toFixed(1)} °C` },
      ],
      assumptions: [cultureSays(culture), ...assumptions],
      source,
    },
  }; // prettier-ignore
  if (warmth.from === 'the planned temperature') return [warm];
  const minutes = found.map(({ minutesAboveDamage }) => Math.round(minutesAboveDamage));
  const [low, high] = [Math.min(...minutes), Math.max(...minutes)];
  return [
    warm,
    {
      name: `minutes above ${DAMAGE_ABOVE} °C`,
      shown:
        high === 0 ? 'none' : low === high ? `${high} min` : `${minutes[0] ?? 0} min (${low} to ${high})`,
      why: {
        formula: `Time for which the jar stood above ${DAMAGE_ABOVE} °C, where some of the culture may be harmed.`,
        inputs: [{ name: 'warmest of the jar', value: `${usual.warmest.toFixed(1)} °C` }],
        assumptions,
        source: 'common practice, no source',
      },
    },
  ];
}

function storageFigures(storage: NonNullable<JarEvidence['seedStorage']>): Figure[] {
  const loss = storageLoss(storage);
  const count = expectedCount(DEFAULT_COUNT_PER_ML, loss);
  const inputs = [
    { name: 'days in the fridge', value: String(storage.fridgeDays) },
    { name: 'days in the freezer', value: String(storage.frozenDays) },
    { name: 'days in the fridge for the count to fall to a tenth', value: `${PUBLISHED_STORAGE.fridgeDays.middle} (${PUBLISHED_STORAGE.fridgeDays.low} to ${PUBLISHED_STORAGE.fridgeDays.high})` },
  ]; // prettier-ignore
  const frozen = storage.freezings > 0;
  const source = frozen
    ? `${STORAGE_SOURCES.fridgeDays} ${STORAGE_SOURCES.freezeStep} ${STORAGE_SOURCES.frozenPerWeek}`
    : STORAGE_SOURCES.fridgeDays;
  return [
    {
      name: 'count of the seed when used',
      shown: `${countInWords(count.middle)} per mL (${countInWords(count.low)} to ${countInWords(count.high)})`,
      why: {
        formula: `The count falls by the same part each day in the fridge${frozen ? ', in one step by freezing and thawing, and slowly in the freezer' : ''}.`,
        inputs,
        assumptions: [`The seed is taken to have begun at ${countInWords(DEFAULT_COUNT_PER_ML)} per mL.`],
        source,
      },
    },
    {
      name: 'delay expected from how the seed had waited',
      shown: band(delayHours(loss)),
      why: {
        formula: 'Each power of ten lost takes 3.32 more doublings. This is no loss of vigour.',
        inputs: [
          ...inputs,
          { name: 'hours a doubling', value: `${PUBLISHED_STORAGE.doublingHours.middle} (${PUBLISHED_STORAGE.doublingHours.low} to ${PUBLISHED_STORAGE.doublingHours.high})` },
        ],
        assumptions: [],
        source: `${source} ${STORAGE_SOURCES.doublingHours}`,
      },
    },
  ]; // prettier-ignore
}

/** All figures of a jar that what was recorded allows. */
export function jarFigures(jar: JarEvidence, culture: Culture): Figure[] {
  const held: Figure[] =
    jar.heldHours === null
      ? []
      : [
          {
            name: 'hours held',
            shown: hours(jar.heldHours),
            why: {
              formula: 'From the start of the hold to its end. This is never the set time.',
              inputs: [],
              assumptions: [],
              source: null,
            },
          },
        ];
  const warm = jar.warmth ? warmthFigures(jar.warmth, culture) : [];
  const stored = jar.seedStorage ? storageFigures(jar.seedStorage) : [];
  return [...held, ...warm, ...stored];
}
