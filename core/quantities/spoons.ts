// Spoons, cups and other volumes by region, in mL, exact by definition.
// US: the gallon is 231 cubic inches = 3.785411784 L (NIST Handbook 44, appendix C); quart 1/4, pint 1/8, cup 1/16,
//   fluid ounce 1/128, tablespoon 1/256, teaspoon 1/768 of it.
// Metric: spoon 15 and 5 mL, cup 250 mL. Australia: tablespoon 20 mL, teaspoon 5 mL, cup 250 mL (common practice).
// UK imperial: the gallon is 4.54609 L (Weights and Measures Act 1985, from memory); fluid ounce 1/160 of it,
//   tablespoon 5/8 and teaspoon 5/24 fluid ounce, cup 10 fluid ounces (kitchen measures from memory).
import type { Preferences } from '../ledger/records';

export type SpoonSystem = Preferences['spoons'];

export const KITCHEN_MEASURES = [
  'teaspoon', 'dessertspoon', 'tablespoon', 'fluid ounce', 'cup', 'pint', 'quart', 'gallon',
] as const; // prettier-ignore
export type KitchenMeasure = (typeof KITCHEN_MEASURES)[number];

const US_GALLON = 3785.411784;
const IMPERIAL_GALLON = 4546.09;

const us: Record<KitchenMeasure, number> = {
  teaspoon: US_GALLON / 768,
  dessertspoon: US_GALLON / 384,
  tablespoon: US_GALLON / 256,
  'fluid ounce': US_GALLON / 128,
  cup: US_GALLON / 16,
  pint: US_GALLON / 8,
  quart: US_GALLON / 4,
  gallon: US_GALLON,
};
const imperial: Record<KitchenMeasure, number> = {
  teaspoon: (IMPERIAL_GALLON / 160) * (5 / 24),
  dessertspoon: (IMPERIAL_GALLON / 160) * (5 / 12),
  tablespoon: (IMPERIAL_GALLON / 160) * (5 / 8),
  'fluid ounce': IMPERIAL_GALLON / 160,
  cup: IMPERIAL_GALLON / 16,
  pint: IMPERIAL_GALLON / 8,
  quart: IMPERIAL_GALLON / 4,
  gallon: IMPERIAL_GALLON,
};

/** mL of one measure. Where a region has no pint or quart of its own (metric), the US one stands in. */
export const MEASURES: Record<SpoonSystem, Readonly<Record<KitchenMeasure, number>>> = {
  US: us,
  metric: { ...us, teaspoon: 5, dessertspoon: 10, tablespoon: 15, cup: 250 },
  Australia: { ...imperial, teaspoon: 5, dessertspoon: 10, tablespoon: 20, cup: 250 },
  'UK imperial': imperial,
};

/** Grams in an ounce and a pound (international avoirdupois, exact). */
export const OUNCE_G = 28.349523125;
export const POUND_G = 453.59237;
