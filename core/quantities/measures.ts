// Hours, pH and prices as people type them.
import type { Price } from '../ledger/basics';
import { digitsValue, readNumber, type DecimalMark } from './numbers';
import { tidy } from './tidy-text';

const DAYS =
  /^\s*(?:d|days?|tage?n?|jours?|j|d(?:í|i)as?|giorn[oi]|dag(?:en|ar|er|e)?|dygn|d(?:o|ó)b[aęy]?|dni|dzie(?:ń|n))(?![\p{L}])\.?/iu;
const HOURS =
  /^\s*(?:h|hrs?|hours?|std|stunden?|heures?|horas?|or[ae]|uur|uren|u|timmar|timme|timer|time|t|tim|godz(?:in[ay]?)?|hs)(?![\p{L}])\.?/iu;
const MINUTES = /^\s*(?:m|min(?:ute[sn]?|uten|utos?|uti|uter|utter|ut[ay]?)?)(?![\p{L}])\.?/iu;

const DAY_AND_A_HALF =
  /^(?:anderthalb\s+tage?|(?:un )?jour et demi|(?:un )?d[ií]a y medio|(?:un )?giorno e mezzo|anderhalve dag|(?:um )?dia e meio|ett och ett halvt dygn|halvanne[nt] (?:dag|døgn)|półtora dnia)$/i;

export type ParsedHours =
  | {
      readonly ok: true;
      readonly hours: number;
      readonly range: readonly [number, number] | null;
      readonly about: boolean;
    }
  | { readonly ok: false; readonly code: 'hours not read' | 'hours below zero' };

/** A length of time in hours: "36", "36h", "36 hrs", "1.5 days", "1 d 12 h", "36:30", "a day and a half", "34–36". */
export function parseHours(text: string, decimal?: DecimalMark): ParsedHours {
  const said = tidy(text).replace(/^(?:for|held|für|während|pendant|durante)\s+/i, '');
  const roughly = /\s*\(?(?:ish|or so|approx\.?|about|ca\.?|etwa|env\.?|circa)\)?$/i.exec(said);
  const clean = roughly ? said.slice(0, roughly.index) : said;
  if (/^-\s*\d/.test(clean)) return { ok: false, code: 'hours below zero' };
  const clock = /^(\d{1,3}):([0-5]\d)(?::00)?(?:\s*h)?$/.exec(clean);
  if (clock) return { ok: true, hours: Number(clock[1]) + Number(clock[2]) / 60, range: null, about: false };
  if (/\d\s*\/\s*\d{2}/.test(clean)) return { ok: false, code: 'hours not read' };
  const half = /^(?:an?|one)\s+(day|hour) and a half$/i.exec(clean);
  if (half)
    return { ok: true, hours: half[1]?.toLowerCase() === 'day' ? 36 : 1.5, range: null, about: false };
  if (/^(?:a|one)\s+(?:full\s+)?day$/i.test(clean)) return { ok: true, hours: 24, range: null, about: false };
  if (DAY_AND_A_HALF.test(clean)) return { ok: true, hours: 36, range: null, about: false };
  let rest = clean;
  let hours = 0;
  let range: readonly [number, number] | null = null;
  let about = roughly !== null;
  for (let parts = 0; rest !== ''; parts += 1) {
    const number = readNumber(rest, decimal, parts === 0);
    if (!number || parts > 2) return { ok: false, code: 'hours not read' };
    rest = rest.slice(number.length);
    const unit = [DAYS, HOURS, MINUTES].map((pattern) => pattern.exec(rest));
    const at = unit.findIndex((found) => found !== null);
    if (at < 0 && (rest.trim() !== '' || parts > 0)) {
      // "34h30": the minutes carry no word of their own.
      if (!(rest.trim() === '' && parts === 1 && number.value < 60))
        return { ok: false, code: 'hours not read' };
      hours += number.value / 60;
      break;
    }
    rest = at < 0 ? '' : rest.slice(unit[at]?.[0].length ?? 0);
    const halfMore = /^\s*(?:and a half|et demie?|y media)(?!\p{L})/iu.exec(rest);
    if (halfMore) rest = rest.slice(halfMore[0].length);
    const times = at === 0 ? 24 : at === 2 ? 1 / 60 : 1;
    hours += (number.value + (halfMore ? 0.5 : 0)) * times;
    if (number.range) range = [number.range[0] * times, number.range[1] * times];
    about ||= number.about;
    rest = rest.replace(/^\s*(?:,|and|und|et|y|e|en|och|og|i|\+)?\s*/i, '');
  }
  return clean === ''
    ? { ok: false, code: 'hours not read' }
    : { ok: true, hours: Number(hours.toPrecision(12)), range, about };
}

export type ParsedPh =
  | {
      readonly ok: true;
      readonly ph: number;
      readonly how: 'meter' | 'strip' | null;
      readonly range: readonly [number, number] | null;
      readonly about: boolean;
    }
  | { readonly ok: false; readonly code: 'pH not read' | 'pH impossible' };

/**
 * What a pH of milk, fresh to long soured, can be read as: fresh milk has about 6.7 and no lactic culture comes near 2;
 * past 9 the meter or the figure is wrong. From memory, set wide.
 */
export const PH_POSSIBLE = { least: 2, most: 9 } as const;

/** A pH: "4.28", "4,28", "pH 4.3 (strip)", "4.2–4.4". Outside 0 to 14 it is impossible. */
export function parsePh(text: string): ParsedPh {
  const clean = tidy(text);
  const how = /strip|paper|streifen|papier|bandelette|tira|cartin|strook|remsa|pasek/i.test(clean)
    ? 'strip'
    : /meter|metre|probe|messger|metro|mètre|elektrode|mätare|måler/i.test(clean)
      ? 'meter'
      : null;
  const body = clean.replace(/^p\.?h\.?\s*(?:wert|value)?\s*[:=]?\s*/i, '').replace(/^[<>≤≥]\s*/, '');
  if (/^-\s*\d/.test(body)) return { ok: false, code: 'pH impossible' };
  const number = readNumber(body, /^\d+,\d+/.test(body) ? 'comma' : 'point', false);
  if (!number) return { ok: false, code: 'pH not read' };
  const rest = body
    .slice(number.length)
    .replace(
      /[()\s.]|pH|by|on|with|the|a|test|strips?|paper|meter|metre|probe|(?:pH-?)?(?:mess)?(?:streifen|gerät)|mit/gi,
      '',
    );
  if (rest !== '' && how === null) return { ok: false, code: 'pH not read' };
  if (number.value < PH_POSSIBLE.least || number.value > PH_POSSIBLE.most)
    return { ok: false, code: 'pH impossible' };
  return { ok: true, ph: number.value, how, range: number.range, about: number.about };
}

const CURRENCIES: readonly (readonly [RegExp, string])[] = [
  [/€|\beuros?\b|\bEUR\b/i, 'EUR'],
  [/£|\bGBP\b/i, 'GBP'],
  [/\bA\$|\bAUD\b/i, 'AUD'],
  [/\bC\$|\bCAD\b/i, 'CAD'],
  [/\bCHF\b|\bFr\./i, 'CHF'],
  [/zł|\bPLN\b/i, 'PLN'],
  [/\bSEK\b/i, 'SEK'],
  [/\bNOK\b/i, 'NOK'],
  [/\bDKK\b/i, 'DKK'],
  [/¥|\bJPY\b/i, 'JPY'],
  [/\$|\bUSD\b|\bdollars?\b/i, 'USD'],
];

/** ISO 4217 minor units: two digits for all of these but the yen, which has none. */
export const minorDigits = (currency: string): number => (currency === 'JPY' ? 0 : 2);

export type ParsedPrice =
  { readonly ok: true; readonly price: Price } | { readonly ok: false; readonly code: 'price not read' };

/** A price: "€3,49", "$4.99", "12 kr", "3.49". Without a mark it is in the keeper's currency. */
export function parsePrice(text: string, currency: string): ParsedPrice {
  const clean = tidy(text);
  const named = CURRENCIES.find(([mark]) => mark.test(clean))?.[1] ?? currency;
  const digits = /\d+(?:[ ']\d{3})*(?:[.,]\d+)*/.exec(clean)?.[0];
  const left = clean
    .replace(digits ?? '', '')
    .replace(/[€£$¥\s.,-]|[A-Z]{3}|zł|kr|euros?|dollars?|[AC](?=\$)|:-|Fr/gi, '');
  if (digits === undefined || left !== '' || /^-\s*[\d€£$]/.test(clean))
    return { ok: false, code: 'price not read' };
  const tail = /[.,](\d+)$/.exec(digits)?.[1];
  const value = digitsValue(
    digits,
    tail && tail.length <= 2 ? (digits.at(-tail.length - 1) === ',' ? 'comma' : 'point') : undefined,
  );
  if (Number.isNaN(value)) return { ok: false, code: 'price not read' };
  return {
    ok: true,
    price: {
      minor: Math.round(value * 10 ** minorDigits(named)),
      currency: named,
      typed: text.trim().slice(0, 200),
    },
  };
}
