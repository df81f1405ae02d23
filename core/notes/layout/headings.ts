// What a column's heading means, in the words and languages keepers write in.
import type { NoteColumn } from '../../contract';
import { HEADED } from '../meanings';
import { plain } from '../../quantities/quantities';
import { milkName } from '../cells/cell-words';
import { headingPhrases } from './heading-phrases';

const EXACT = new Map<string, NoteColumn>();
/** What else a phrase means, where that is more than one thing. */
const ELSE = new Map<string, NoteColumn[]>();
for (const meaning of HEADED)
  for (const phrase of headingPhrases(meaning)) {
    const first = EXACT.get(phrase);
    if (first === undefined) EXACT.set(phrase, meaning);
    else if (first !== meaning) ELSE.set(phrase, [...(ELSE.get(phrase) ?? []), meaning]);
  }
const BY_FIRST_WORD = new Map<string, { phrase: string; meaning: NoteColumn; count: number }[]>();
for (const [phrase, meaning] of EXACT) {
  const parts = phrase.replace(/[/,;-]/g, ' ').split(' ');
  const first = parts[0] ?? '';
  BY_FIRST_WORD.set(first, [...(BY_FIRST_WORD.get(first) ?? []), { phrase, meaning, count: parts.length }]);
}
/** Words that mean something as a whole heading only: "Product code" is neither seed nor jar. */
const WHOLE_ONLY: ReadonlySet<string> = new Set(['code']);
const OF_A_CODE = /\b(?:codes?|numbers?|no|nr|id|sku|barcode|ean)\b/;
const PRODUCT_WORD = /^(?:products?|produkt|produit|producto|prodotto)$/;
/** A pH before the hold ended: never the pH of the jar. */
const EARLY_PH = /\b(?:early|start|initial|milk|before|seed|after \d+|at \d+|\d+ ?h)\b/;
/** Not hold hours: these are set times, and a set time is never read as hours held. */
const SET_TIME =
  /set time|time to set|hours to set|set (?:after|by)|gesetzt nach|fest nach|temps de prise|tiempo de cuajado/;

/** How many of what. */
const COUNT_OF = /^(?:(?:no|nr|number|count|anzahl|zahl)(?: of| der)?|#(?: of)?|how many)\s+(.+)$/;

/** How many jars a batch filled: no name of one. */
const HOW_MANY =
  /\b(?:jars|glaser) (?:made|filled|total)\b|\b(?:number|no|nr|count|anzahl|zahl) (?:of |der )?(?:jars|glaser)\b|\bhow many jars\b/;
/** A keeper's own count: the ledger counts itself, and says so. */
const GENERATIONS = /\b(?:gen|gens|generations?|generationen|passages?)\b/;
/** What a jar weighs, empty or full: no amount of what is in it. */
const WEIGHT = /\b(?:empty|full|tare|gross|net|weights?|wt|leer|voll|brutto|netto|gewicht|leergewicht)\b/;
/** "Parent amt", "Milk qty": how much of what else the heading names. */
const AMOUNT_OF: Partial<Record<NoteColumn, NoteColumn>> = {
  seed: 'amount',
  milk: 'milk amount',
  addition: 'addition amount',
};

/** A heading without its unit, marks and accents. */
export function bareHeading(heading: string): string {
  return plain(heading)
    .replace(/\bw\/(?=\s|$)/, 'with')
    .replace(/[([{].*?[)\]}]/g, ' ')
    .replace(/[?:.!*"'_]/g, ' ')
    .replace(/°\s?[cf]?/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}

export interface HeadingMeaning {
  readonly meaning: NoteColumn;
  /** 3 the very word, 2 the word within a longer heading. */
  readonly sure: 2 | 3;
  /** It names what is kept apart on purpose: no set word, no pH of the jar. */
  readonly apart?:
    'a set time' | 'a pH before the end' | 'a number of jars' | 'a count of generations' | 'a weight';
  /** What else the words mean, should the cells say so. */
  readonly others?: readonly NoteColumn[];
}

/** What a heading means and how sure that is (3 the very word, 2 the word within a longer heading), or null. */
export function headingMeaning(heading: string): HeadingMeaning | null {
  const whole = plain(heading)
    .replace(/[?:.!*"'_]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
  if (SET_TIME.test(whole)) return { meaning: 'note', sure: 3, apart: 'a set time' };
  if (GENERATIONS.test(whole)) return { meaning: 'note', sure: 3, apart: 'a count of generations' };
  if (HOW_MANY.test(whole)) return { meaning: 'note', sure: 3, apart: 'a number of jars' };
  if (/\bph\b/.test(whole))
    return EARLY_PH.test(whole)
      ? { meaning: 'note', sure: 3, apart: 'a pH before the end' }
      : { meaning: 'ph', sure: 3 };
  // "No. of tbsp", "# hrs": how many of a unit.
  const counted = COUNT_OF.exec(whole)?.[1];
  if (counted !== undefined && isUnit(counted)) return headingMeaning(counted);
  const bare = bareHeading(heading);
  if (/^°\s?[cf]$/.test(whole)) return { meaning: 'temperature', sure: 3 };
  for (const text of [
    whole,
    bare,
    bare.replace(/[,/-]?\s?(?:in )?(?:ml|cl|dl|l|g|tbsp|tsp|el|tl|h|hrs?|std|f|c)$/, '').trim(),
  ]) {
    const exact = EXACT.get(text);
    const others = ELSE.get(text);
    if (exact) return { meaning: exact, sure: 3, ...(others ? { others } : {}) };
  }
  // "Half & half (qt)": the milk itself.
  if (milkName(bare) !== null) return { meaning: 'milk', sure: 2 };
  const within = phraseWithin(bare);
  if (within !== null) return { meaning: within, sure: 2 };
  if (WEIGHT.test(bare)) return { meaning: 'note', sure: 2, apart: 'a weight' };
  // A heading that tells nothing but its unit.
  const unit = headingUnit(heading);
  if (unit === null || (bare.length > 6 && !onlyUnits(bare))) return null;
  if (/^(?:deg )?[cf]$/i.test(unit)) return { meaning: 'temperature', sure: 2 };
  if (/^(?:h|hrs?|hours|std)$/i.test(unit)) return { meaning: 'hours', sure: 2 };
  return VOLUME.test(plain(onlyUnits(heading) ? unit : heading)) ? { meaning: 'amount', sure: 2 } : null;
}

/** What the longest phrase within a heading means; of "Temp start" the temperature: when it was taken only tells it apart. */
function phraseWithin(bare: string): NoteColumn | null {
  const said = bare.replace(/[/,;-]/g, ' ').split(/\s+/);
  const found = said.flatMap((word, at) =>
    (BY_FIRST_WORD.get(word) ?? []).filter(
      ({ phrase, count }) =>
        phrase.length > 2 &&
        !WHOLE_ONLY.has(phrase) &&
        !(PRODUCT_WORD.test(phrase) && OF_A_CODE.test(bare)) &&
        said.slice(at, at + count).join(' ') === phrase.replace(/[/,;-]/g, ' '),
    ),
  );
  // "Type of seed" names none.
  if (/\b(?:types?|kinds?|art|sorte)\b/.test(bare) && found.some(({ meaning }) => meaning === 'seed'))
    return null;
  const of = found.find(({ meaning }) => AMOUNT_OF[meaning] !== undefined);
  if (of && found.some(({ meaning }) => meaning === 'amount')) return AMOUNT_OF[of.meaning] ?? null;
  // "Which jar did I take as starter" names the seed.
  const seed = found.find(({ meaning }) => meaning === 'seed');
  if (seed && found.some(({ meaning }) => meaning === 'jar')) return 'seed';
  const measured = found.some(({ phrase }) => phrase.startsWith('temp'));
  const [longest] = found
    .filter(({ meaning }) => !measured || (meaning !== 'start' && meaning !== 'end'))
    .toSorted((a, b) => b.phrase.length - a.phrase.length);
  return longest?.meaning ?? null;
}

/** Headings of notes whose text needs no heading before it. */
export const isNotes = (heading: string): boolean =>
  EXACT.get(bareHeading(heading)) === 'note' ||
  (headingMeaning(heading)?.sure === 2 && headingMeaning(heading)?.meaning === 'note');

const VOLUME = /^\(?(?:ml|cl|dl|tbsps?|tbs|tablespoons?|tsps?|el|tl|msk|spsk|cups?)\)?$/;
const UNIT_WORD =
  /^(?:ml|cl|dl|l|lit(?:er|re)s?|g|gr|grams?|kg|oz|fl\.? ?oz|tbsps?|tbs|tablespoons?|t|tsps?|teaspoons?|el|tl|msk|spsk|cups?|c|qts?|quarts?|pints?|gal|caps?|capsules?|pieces|pcs|stk|h|hrs?|hours?|std|stunden|days?|tage|d|min|f|deg f|deg c|fahrenheit|celsius|%)\.?$/i;
/** "Starter in ml", "amount_g". */
const UNIT_LAST = new RegExp(
  `[\\s,/_-](?:in\\s+)?(${[
    'ml|cl|dl|l|g|tbsp|tbs|T|tsp|EL|TL|cups?|msk|spsk|h|hrs?|hours|std|days?|tage|F|C|min|%|qts?|quarts?|pints?|pts?',
    'oz|kg|lit(?:er|re)s?|tablespoons?|teaspoons?',
  ].join('|')})\\.?$`,
  'i',
);

/** "mL / pcs", "tbsp or caps": nothing but units; bare figures have the first of them. */
const unitsIn = (text: string): string[] =>
  text
    .trim()
    .split(/\s*[/|,&]\s*|\s+or\s+/i)
    .filter(Boolean);
const onlyUnits = (text: string): boolean => unitsIn(text).length > 1 && unitsIn(text).every(isUnit);

/** "mL / pcs": beside a product its bare figures are pieces. */
export const countsPieces = (heading: string): boolean =>
  onlyUnits(heading) &&
  unitsIn(heading).some((unit) => /^(?:caps?|capsules?|pieces|pcs|stk)\.?$/i.test(unit));

/** The unit a heading tells, as written in it: "Amount (ml)" → "ml", "Temp °C" → "C", "Hold h" → "h", "Tbsp" → "Tbsp". */
export function headingUnit(heading: string): string | null {
  const text = heading
    .replaceAll('_', ' ')
    .replace(/[\s:]+$/, '')
    .trim();
  const degrees = /(?:°|\bdeg(?:rees)?\.?)\s?([CF])\b/i.exec(text)?.[1];
  if (degrees) return degrees.toUpperCase();
  const inside = [...text.matchAll(/[([{]\s*(?:in\s+)?([^)\]}]{1,20}?)\s*[)\]}]/g)].map(
    (found) => found[1] ?? '',
  );
  const told = inside.find((word) => UNIT_WORD.test(word));
  if (told) return /^fahrenheit$/i.test(told) ? 'F' : /^celsius$/i.test(told) ? 'C' : told;
  if (isUnit(text)) return text;
  if (onlyUnits(text)) return unitsIn(text)[0] ?? null;
  // "ml starter"
  const before =
    /^(ml|cl|dl|l|g|kg|oz|tbsps?|tsps?|EL|TL|cups?|grams?|qts?|quarts?|pints?|lit(?:er|re)s?)\.?\s+(?:of\s+)?\p{L}{3}/iu.exec(
      text,
    )?.[1];
  if (before) return before;
  return UNIT_LAST.exec(text)?.[1] ?? null;
}

/** Whether a heading of how long tells it in days. */
export const headingSaysDays = (heading: string): boolean =>
  /^(?:d|days?|tage?|jours?|dias?|giorni|dagen|dagar|dage|dni)$/i.test(headingUnit(heading) ?? '') ||
  /(?:^|[\s(/|,])(?:days|tage|jours|dias|giorni|dagen|dagar|dage|dni)\b/i.test(plain(heading));

/** A cell that holds nothing but a unit, as under the headings of some tables. */
export const isUnit = (text: string): boolean =>
  UNIT_WORD.test(text.trim()) || /^°\s?[CF]$/i.test(text.trim());

/** The order of day and month a heading tells: "Date (dd/mm/yyyy)". */
export function headingDayOrder(heading: string): 'day first' | 'month first' | null {
  const text = plain(heading);
  if (/\b(?:d{1,2}|t{1,2}|j{1,2}|g{1,2})[./ -]?m{1,2}\b|\b(?:dd|jj|tt|gg)[./-]?mm/.test(text))
    return 'day first';
  return /\bm{1,2}[./-]d{1,2}\b/.test(text) && !/y{2,4}[./-]m/.test(text) ? 'month first' : null;
}

const NATIVE =
  /\b(?:datum|menge|milch|stunden|temperatur|lait|duree|quantite|remarques|leche|cantidad|horas|fecha|latte|quantita|ore|hoeveelheid|melk|uren|leite|quantidade|mjolk|mangd|timmar|maelk|mengde|timer|mleko|ilosc|godziny|glas|bemerkung\w*|notizen|uwagi)\b/;
/** Whether headings are in a language that writes a decimal comma and cooks in metric spoons. */
export const commaLanguage = (headings: readonly string[]): boolean =>
  headings.some((heading) => NATIVE.test(plain(heading)));
