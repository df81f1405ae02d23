// Stored amounts and temperatures → what a keeper prefers to read.
import type { Amount, Price, Temperature } from '../ledger/basics';
import type { Jar, Preferences } from '../ledger/records';
import { MEASURES, type KitchenMeasure } from './spoons';
import { toFahrenheit } from './temperatures';

const round = (value: number, digits: number): string => String(Number(value.toFixed(digits)));

/** Quarters and thirds of a kitchen measure, where it comes out within 2 %. */
const PARTS: readonly (readonly [number, string])[] = [
  [0, ''], [0.25, '¼'], [1 / 3, '⅓'], [0.5, '½'], [2 / 3, '⅔'], [0.75, '¾'], [1, ''],
]; // prettier-ignore

function inMeasure(value: number, word: string, plural: string): string | null {
  const whole = Math.floor(value + 0.02);
  const part = value - whole;
  const near = PARTS.find(([size]) => Math.abs(size - part) <= 0.02 * Math.max(1, value));
  if (!near || (whole === 0 && near[1] === '')) return null;
  const count = whole + (near[0] === 1 ? 1 : 0);
  return `${count === 0 ? '' : count}${near[1]} ${value > 1.02 ? plural : word}`;
}

const IN_SPOONS: readonly (readonly [KitchenMeasure, string, string, number])[] = [
  ['quart', 'quart', 'quarts', 0.98],
  ['cup', 'cup', 'cups', 0.24],
  ['tablespoon', 'tbsp', 'tbsp', 0.98],
  ['teaspoon', 'tsp', 'tsp', 0.24],
];

function volume(ml: number, preferences: Pick<Preferences, 'volumes' | 'spoons'>): string {
  if (preferences.volumes === 'spoons') {
    const measures = MEASURES[preferences.spoons];
    for (const [measure, word, plural, least] of IN_SPOONS) {
      if (measure === 'quart' && (preferences.spoons === 'metric' || preferences.spoons === 'Australia'))
        continue;
      const count = ml / measures[measure];
      const shown = count >= least ? inMeasure(count, word, plural) : null;
      if (shown) return shown;
    }
    if (ml >= measures.tablespoon) return `${round(ml / measures.tablespoon, 1)} tbsp`;
  }
  if (ml >= 1000) return `${round(ml / 1000, 2)} L`;
  return `${round(ml, ml < 10 ? 1 : 0)} mL`;
}

/** "44 mL" or "3 tbsp", "12 g", "10 pieces", "1 × 10^10 CFU": a stored amount as the keeper prefers it. */
export function printAmount(amount: Amount, preferences: Pick<Preferences, 'volumes' | 'spoons'>): string {
  switch (amount.unit) {
    case 'mL':
      return volume(amount.value, preferences);
    case 'g':
      return amount.value >= 1000
        ? `${round(amount.value / 1000, 2)} kg`
        : `${round(amount.value, amount.value < 10 ? 1 : 0)} g`;
    case 'pieces':
      return `${round(amount.value, 2)} ${amount.value === 1 ? 'piece' : 'pieces'}`;
    case 'CFU': {
      const power = amount.value > 0 ? Math.floor(Math.log10(amount.value)) : 0;
      return power < 4 ? `${amount.value} CFU` : `${round(amount.value / 10 ** power, 2)} × 10^${power} CFU`;
    }
  }
}

/**
 * An amount to be read beside what was noted: as the keeper typed it; where it was worked out and not typed, as the
 * keeper prefers it, with "about" where printing rounds it: "about 991 mL".
 */
export function printNoted(amount: Amount, preferences: Pick<Preferences, 'volumes' | 'spoons'>): string {
  if (amount.typed !== null) return amount.typed;
  const printed = printAmount(amount, preferences);
  const exact = [
    `${amount.value} ${amount.unit}`,
    `${amount.value / 1000} ${amount.unit === 'g' ? 'kg' : 'L'}`,
  ];
  const counted = amount.unit === 'pieces' && Number.isInteger(amount.value);
  return exact.includes(printed) || counted ? printed : `about ${printed}`;
}

/** How a final volume is known, in words: "measured"; one that was worked out says so. */
export const volumeKnown = (how: Jar['finalVolumeKnown'], amount: Amount): string | null =>
  how === 'milk plus seed' && amount.typed === null ? 'worked out from milk plus seed' : how;

/** "38.3 °C" or "101 °F", to a tenth. */
export function printTemperature(
  temperature: Temperature,
  preferences: Pick<Preferences, 'temperatures'>,
): string {
  return preferences.temperatures === '°F'
    ? `${round(toFahrenheit(temperature.value), 1)} °F`
    : `${round(temperature.value, 1)} °C`;
}

/** A temperature to be read beside what was noted: as the keeper typed it, else as the keeper prefers it. */
export const printNotedTemperature = (
  temperature: Temperature,
  preferences: Pick<Preferences, 'temperatures'>,
): string => temperature.typed ?? printTemperature(temperature, preferences);

/** "3.49 EUR": the amount and the ISO 4217 code. */
export function printPrice(price: Price): string {
  return price.currency === 'JPY'
    ? `${price.minor} JPY`
    : `${(price.minor / 100).toFixed(2)} ${price.currency}`;
}
