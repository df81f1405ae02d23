// Reading and printing quantities: what people type on one side, stored values and units on the other.
export { cutOut, findAmounts, parseAmount } from './amounts';
export type { AmountAssumption, AmountOptions, FoundAmount, ParsedAmount } from './amounts';
export { minorDigits, parseHours, parsePh, parsePrice, PH_POSSIBLE } from './measures';
export type { ParsedHours, ParsedPh, ParsedPrice } from './measures';
export { digitsValue, readNumber } from './numbers';
export type { DecimalMark, ReadNumber } from './numbers';
export { isNothing, isUnknown } from './not-told';
export { printAmount, printPrice, printTemperature } from './printing';
export { KITCHEN_MEASURES, MEASURES, OUNCE_G, POUND_G } from './spoons';
export type { KitchenMeasure, SpoonSystem } from './spoons';
export { remembered } from './remembered';
export { bareScale, fromFahrenheit, parseTemperature, toFahrenheit } from './temperatures';
export type { ParsedTemperature, TemperatureScale } from './temperatures';
export { plain, tidy } from './tidy-text';
export type { PieceForm } from './units';
