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

/** Where no locale is known. */
export const NEUTRAL_PREFERENCES: Preferences = {
  theme: 'system',
  temperatures: '°C',
  volumes: 'metric',
  spoons: 'US',
  dates: 'day first',
  currency: 'EUR',
  ...NEUTRAL_LIMITS,
};

const US_MEASURES = new Set(['US', 'PR', 'GU', 'VI', 'AS', 'MP']);
const FAHRENHEIT = new Set([...US_MEASURES, 'BS', 'BZ', 'KY', 'PW']);
const MONTH_FIRST = new Set([...US_MEASURES, 'PH', 'FM', 'MH', 'PW']);

const CURRENCIES: Readonly<Record<string, string>> = {
  AE: 'AED', AR: 'ARS', AU: 'AUD', BR: 'BRL', CA: 'CAD', CH: 'CHF', CL: 'CLP', CN: 'CNY', CO: 'COP', CZ: 'CZK', DK: 'DKK',
  EG: 'EGP', GB: 'GBP', GU: 'USD', HK: 'HKD', HU: 'HUF', ID: 'IDR', IL: 'ILS', IN: 'INR', IS: 'ISK', JP: 'JPY', KE: 'KES',
  KR: 'KRW', LI: 'CHF', MA: 'MAD', MX: 'MXN', MY: 'MYR', NG: 'NGN', NO: 'NOK', NZ: 'NZD', PE: 'PEN', PH: 'PHP', PK: 'PKR',
  PL: 'PLN', PR: 'USD', RO: 'RON', RS: 'RSD', SA: 'SAR', SE: 'SEK', SG: 'SGD', TH: 'THB', TR: 'TRY', TW: 'TWD', UA: 'UAH',
  US: 'USD', VN: 'VND', ZA: 'ZAR',
}; // prettier-ignore

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

/** Preferences for a locale: the United States measure in °F and their own spoons, most others in °C and metric. */
export function defaultPreferences(locale: string | null | undefined): Preferences {
  const region = regionOf(locale);
  if (region === null) return NEUTRAL_PREFERENCES;
  return {
    theme: 'system',
    temperatures: FAHRENHEIT.has(region) ? '°F' : '°C',
    volumes: US_MEASURES.has(region) ? 'spoons' : 'metric',
    spoons: US_MEASURES.has(region) ? 'US' : region === 'AU' ? 'Australia' : 'metric',
    dates: MONTH_FIRST.has(region) ? 'month first' : 'day first',
    currency: CURRENCIES[region] ?? (US_MEASURES.has(region) ? 'USD' : 'EUR'),
    ...NEUTRAL_LIMITS,
  };
}
