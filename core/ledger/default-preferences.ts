// What a keeper reads and writes who never said otherwise: by the region of the system's locale. Pure.
// Regions by what is measured how: CLDR territory data (measurementSystem-category-temperature, calendar order) and
// ISO 4217, all from memory. Spoons: common practice; a UK tablespoon is sold as 15 mL today.
import type { Preferences } from './records';

/** Common practice, no source: seed is kept cold one to two weeks, and a jar is eaten over three at most. */
export const NEUTRAL_LIMITS = {
  seedFridgeDays: 21,
  seedFreezerDays: 365,
  mostGenerations: null,
  jarFollowsHours: null,
} as const;

/** Where no locale is known: measures, spoons and money of one kind, a place that may be any. */
export const NEUTRAL_PREFERENCES: Preferences = {
  theme: 'system',
  temperatures: '°C',
  volumes: 'metric',
  spoons: 'metric',
  dates: 'day first',
  currency: 'EUR',
  ...NEUTRAL_LIMITS,
};

const US_MEASURES = new Set(['US', 'PR', 'GU', 'VI', 'AS', 'MP']);
const FAHRENHEIT = new Set([...US_MEASURES, 'BS', 'BZ', 'KY', 'PW']);
const MONTH_FIRST = new Set([...US_MEASURES, 'PH', 'FM', 'MH', 'PW']);

/** Regions by the money they count in, the one that it is named after first. */
const REGIONS_OF: Readonly<Record<string, string>> = {
  AED: 'AE', ALL: 'AL', AMD: 'AM', ARS: 'AR', AUD: 'AU', AZN: 'AZ', BAM: 'BA', BBD: 'BB', BDT: 'BD', BHD: 'BH', BND: 'BN', BOB: 'BO',
  BRL: 'BR', BSD: 'BS', BWP: 'BW', BYN: 'BY', BZD: 'BZ', CAD: 'CA', CHF: 'CH LI', CLP: 'CL', CNY: 'CN', COP: 'CO', CRC: 'CR',
  CZK: 'CZ', DKK: 'DK FO GL', DOP: 'DO', DZD: 'DZ', EGP: 'EG', ETB: 'ET', EUR: '', FJD: 'FJ', GBP: 'GB GG IM JE', GEL: 'GE', GHS: 'GH',
  GTQ: 'GT', GYD: 'GY', HKD: 'HK', HNL: 'HN', HUF: 'HU', IDR: 'ID', ILS: 'IL', INR: 'IN', IQD: 'IQ', IRR: 'IR', ISK: 'IS', JMD: 'JM',
  JOD: 'JO', JPY: 'JP', KES: 'KE', KGS: 'KG', KHR: 'KH', KRW: 'KR', KWD: 'KW', KYD: 'KY', KZT: 'KZ', LAK: 'LA', LBP: 'LB', LKR: 'LK',
  MAD: 'MA', MDL: 'MD', MKD: 'MK', MMK: 'MM', MNT: 'MN', MUR: 'MU', MXN: 'MX', MYR: 'MY', NAD: 'NA', NGN: 'NG', NIO: 'NI', NOK: 'NO SJ',
  NPR: 'NP', NZD: 'NZ CK NU TK', OMR: 'OM', PEN: 'PE', PGK: 'PG', PHP: 'PH', PKR: 'PK', PLN: 'PL', PYG: 'PY', QAR: 'QA', RON: 'RO',
  RSD: 'RS', RUB: 'RU', RWF: 'RW', SAR: 'SA', SEK: 'SE', SGD: 'SG', THB: 'TH', TND: 'TN', TRY: 'TR', TTD: 'TT', TWD: 'TW', TZS: 'TZ',
  UAH: 'UA', UGX: 'UG', USD: 'US AS EC FM GU MH MP PA PR PW SV VI', UYU: 'UY', UZS: 'UZ', VND: 'VN', XAF: 'CM CF CG GA GQ TD',
  XOF: 'SN BF BJ CI GW ML NE TG', ZAR: 'ZA LS SZ', ZMW: 'ZM',
}; // prettier-ignore

const CURRENCY_OF: ReadonlyMap<string, string> = new Map(
  Object.entries(REGIONS_OF).flatMap(([currency, regions]) =>
    regions.split(' ').map((region) => [region, currency]),
  ),
);

/** What the region tells, and may be changed one by one. */
export type Measures = Pick<Preferences, 'temperatures' | 'volumes' | 'spoons' | 'dates' | 'currency'>;

/** A place to choose: the first region of each money; `region` is null for all that count in euros. */
export const PLACES: readonly { readonly region: string | null; readonly measures: Measures }[] = Object.entries(REGIONS_OF).map(
  ([currency, regions]) => {
    const region = regions.split(' ')[0] || null;
    return { region, measures: { ...measuresOf(region ?? ''), currency } };
  },
); // prettier-ignore

/** The place whose measures these are; undefined where they are a mixture of the keeper's own. */
export const placeOf = (wanted: Measures): (typeof PLACES)[number] | undefined =>
  PLACES.find(({ measures }) =>
    (Object.keys(measures) as (keyof Measures)[]).every((field) => measures[field] === wanted[field]),
  );

/** The region of a locale such as "de-AT", "en_US.UTF-8" or "en"; null where it names none that can be told. */
export function regionOf(locale: string | null | undefined): string | null {
  const tag = (locale ?? '').split(/[.@]/)[0]?.replaceAll('_', '-') ?? '';
  if (tag === '' || /^(c|posix)$/i.test(tag)) return null;
  try {
    return new Intl.Locale(tag).maximize().region ?? null;
  } catch {
    // Not a language tag at all: as good as none.
    return null;
  }
}

/** What is measured how in a region: the United States in °F and their own spoons, most others in °C and metric. */
function measuresOf(region: string): Measures {
  return {
    temperatures: FAHRENHEIT.has(region) ? '°F' : '°C',
    volumes: US_MEASURES.has(region) ? 'spoons' : 'metric',
    spoons: US_MEASURES.has(region) ? 'US' : region === 'AU' ? 'Australia' : 'metric',
    dates: MONTH_FIRST.has(region) ? 'month first' : 'day first',
    currency: CURRENCY_OF.get(region) ?? 'EUR',
  };
}

/** Preferences for a locale. */
export function defaultPreferences(locale: string | null | undefined): Preferences {
  const region = regionOf(locale);
  return region === null
    ? NEUTRAL_PREFERENCES
    : { theme: 'system', ...measuresOf(region), ...NEUTRAL_LIMITS };
}
