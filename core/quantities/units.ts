// Words for units, in the languages keepers write in. Patterns are matched at the start of tidied text.
import type { KitchenMeasure } from './spoons';

/** What a unit word means: an exact factor, or a measure that depends on the region. */
export type UnitMeaning =
  | { readonly kind: 'mL' | 'g' | 'CFU'; readonly factor: number }
  | { readonly kind: 'kitchen'; readonly measure: KitchenMeasure; readonly metric: boolean }
  | { readonly kind: 'ounce' }
  | { readonly kind: 'pieces'; readonly form: PieceForm };

export type PieceForm = 'capsules' | 'tablets' | 'sachets' | null;

const unit = (pattern: string, meaning: UnitMeaning, flags = 'i') =>
  [new RegExp(`^(?:${pattern})(?![\\p{L}\\p{N}])\\.?`, `${flags}u`), meaning] as const;
const kitchen = (measure: KitchenMeasure, metric = false): UnitMeaning => ({
  kind: 'kitchen',
  measure,
  metric,
});
const pieces = (form: PieceForm): UnitMeaning => ({ kind: 'pieces', form });

/** In order: the first that matches is meant. "T" and "t" differ, every other word is read without regard to case. */
export const UNITS: readonly (readonly [RegExp, UnitMeaning])[] = [
  unit('T|Tb|Tbl|TB', kitchen('tablespoon'), ''),
  unit('t', kitchen('teaspoon'), ''),
  unit(String.raw`table\s?spoon(?:s|sful|fuls|ful)?|tbsps?|tbs|tblsp?s?|tblspn`, kitchen('tablespoon')),
  unit(String.raw`tea\s?spoon(?:s|sful|fuls|ful)?|tsps?|tspn`, kitchen('teaspoon')),
  unit('dessert\\s?spoons?|dsp', kitchen('dessertspoon')),
  // Spoons named in languages whose kitchens are metric: 15 and 5 mL.
  unit(String.raw`EL|E(?:ss|ß)l(?:(?:ö|oe|o)ffeln?)?|eetlepels?|msk|matskedar|matsked|spsk|spiseskeer?|spiseskefuld|spiseskjeer?|ss|ł(?:yżka|yżki|yżek|yżkę)(?: stołow\p{L}+)?|lyzk[aie]`, kitchen('tablespoon', true)),
  unit(String.raw`c(?:uill?(?:è|e)?re?s?)?\.?\s?(?:à|a)\.?\s?s(?:oupe)?|càs|cas|c\.?s\.?|cuill(?:è|e)re?es?(?: à soupe)?`, kitchen('tablespoon', true)),
  unit(String.raw`cucharadas?|cdas?|cucchiai[oa]?|colher(?:es)?(?: \(?de\)? sopa|\s?\(sopa\))|c\.?\s?(?:de\s)?sopa`, kitchen('tablespoon', true)),
  unit(String.raw`TL|Teel(?:(?:ö|oe|o)ffeln?)?|theelepels?|tsk|teskedar|tesked|teskeer?|teskjeer?|ts|ł(?:yżeczka|yżeczki|yżeczek)|lyzecz\p{L}+`, kitchen('teaspoon', true)),
  unit(String.raw`c(?:uill?(?:è|e)re?s?)?\.?\s?(?:à|a)\.?\s?c(?:af(?:é|e))?|càc|cac|cucharaditas?|cdtas?|cditas?|cucchiain[io]|colher(?:es)? de ch(?:á|a)`, kitchen('teaspoon', true)),
  unit(String.raw`Tassen?|tasses?|tazas?|tazz[ae]|kop(?:je|jes)?|x(?:í|i)caras?|kopp(?:ar|er)?|szklank[aię]|szklanek`, kitchen('cup', true)),
  unit('cups?|c', kitchen('cup')),
  unit(String.raw`fl(?:uid)?\.?\s?oz\.?|fl(?:uid)?\.?\s?ounces?`, kitchen('fluid ounce')),
  unit('pints?|pts?', kitchen('pint')),
  unit('quarts?|qts?', kitchen('quart')),
  unit('gallons?|gals?', kitchen('gallon')),
  unit(String.raw`milli?lit(?:er|re)s?|millilitros?|millilitri|mililitr\p{L}*|mls?|cc|cm\^?3`, { kind: 'mL', factor: 1 }),
  unit(String.raw`centi?lit(?:er|re)s?|cls?`, { kind: 'mL', factor: 10 }),
  unit(String.raw`d(?:e|é)ci?lit(?:er|re)s?|dls?`, { kind: 'mL', factor: 100 }),
  unit(String.raw`lit(?:er|re)s?|litros?|litr[io]|litr(?:y|ów)?|L`, { kind: 'mL', factor: 1000 }),
  unit('krm', { kind: 'mL', factor: 1 }),
  unit(String.raw`milligrams?|mg`, { kind: 'g', factor: 0.001 }),
  unit(String.raw`kilo(?:gram(?:me|m)?s?|s)?|kg`, { kind: 'g', factor: 1000 }),
  unit(String.raw`gram(?:me|m|mo|mi|os|as|y|ów)?s?|gr?`, { kind: 'g', factor: 1 }),
  unit('pounds?|lbs?', { kind: 'g', factor: 453.59237 }),
  unit('ounces?|oz', { kind: 'ounce' }),
  unit(String.raw`(?:CFUs?|KBE|UFC|KVE|JTK)`, { kind: 'CFU', factor: 1 }),
  unit(String.raw`capsules?|caps?|kapseln?|kps|g(?:é|e)lules?|c(?:á|a)psulas?|capsula|kapsl(?:ar|er)|kapsel|kapsuł(?:ka|ki|ek)`, pieces('capsules')),
  unit(String.raw`tablets?|tabs?|tabl|tablett(?:en?|er)?|pills?|pillen|comprim(?:é|e)s?|comprimidos?|pastillas?|compress[ae]|tabletk[ai]|tabletek|pill`, pieces('tablets')),
  unit(String.raw`sachets?|packets?|pkts?|beutel|sobres?|bustin[ae]|zakjes?|p(?:å|a)s(?:e|ar)|pos(?:e|er)|brev|saszetk[ai]|saszetek|saquetas?`, pieces('sachets')),
  unit(String.raw`pieces?|pcs?|cubes?|stück|stk|pi(?:è|e)ces?|piezas?|pezzi|stuks|st|szt`, pieces(null)),
]; // prettier-ignore
