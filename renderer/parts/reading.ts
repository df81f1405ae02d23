// From the text in a field to a recorded value, with what was understood said back beside it, or what is wrong below it.
// Pure: preferences, today and the offset of local times are passed in. Empty text is unknown (null), never a mistake.
import {
  MEASURES,
  parseAmount,
  parseHours,
  parsePh,
  parsePrice,
  parseTemperature,
  printPrice,
  readNumber,
  tidy,
  toFahrenheit,
  type AmountAssumption,
} from '../../core/quantities/quantities';
import { printRange, readDayRange } from '../../core/quantities/day-ranges';
import { printDay, readDay, readMoment } from '../../core/quantities/typed-days';
import type { Amount, Price, Temperature } from '../../core/ledger/basics';
import type { Batch, Preferences } from '../../core/ledger/records';

/** What a field's text came to. `echo` is what was understood, in words, or null where there is nothing to add. */
export type Read<T> =
  | { readonly ok: true; readonly value: T | null; readonly echo: string | null }
  | { readonly ok: false; readonly sentence: string };

/** When something was made: on a day, or between two; of nothing that is known all are null. */
export type DaysMade = Pick<Batch, 'madeOn' | 'madeFrom' | 'madeTo'>;

export interface Reader {
  readonly today: string;
  /** "3 tbsp". A bare number is refused unless `bare` says what it means: pieces, or a volume's mL. */
  readonly amount: (text: string, bare?: 'pieces' | 'volume') => Read<Amount>;
  readonly temperature: (text: string) => Read<Temperature>;
  readonly day: (text: string, ahead?: boolean) => Read<string>;
  /** "14 Mar", or roughly: "about 15 Jan", "mid January", "between 3 and 9 Jan". */
  readonly made: (text: string) => Read<DaysMade>;
  readonly moment: (text: string, day: string | null) => Read<string>;
  readonly hours: (text: string) => Read<number>;
  readonly ph: (text: string) => Read<number>;
  readonly price: (text: string) => Read<Price>;
  readonly count: (text: string) => Read<number>;
  readonly whole: (text: string, most: number) => Read<number>;
}

/** How values are written into fields. */
export interface Writer {
  readonly amount: (amount: Amount) => string;
  /** To be read, not typed again: worked-out amounts are rounded, with "about". */
  readonly noted: (amount: Amount) => string;
  readonly temperature: (temperature: Temperature) => string;
  readonly moment: (moment: string) => string;
  readonly day: (day: string) => string;
  readonly made: (days: DaysMade) => string;
  readonly number: (value: number) => string;
}

const unknown = { ok: true, value: null, echo: null } as const;
const bad = (sentence: string): { readonly ok: false; readonly sentence: string } => ({
  ok: false,
  sentence,
});
const good = <T>(value: T, echo: string | null) => ({ ok: true, value, echo }) as const;
const round = (value: number, digits: number): string => String(Number(value.toFixed(digits)));
const blank = (text: string): boolean => text.trim() === '';

const AMOUNT_REFUSED = {
  'amount not read':
    'This is not read as an amount. Type a number and a unit, such as “3 tbsp”, “¼ cup” or “100 ml”.',
  'amount below zero': 'An amount can’t be below zero. Please type it again.',
  'amount without unit': 'Add the unit, such as “tbsp”, “ml”, “g” or “capsules”.',
  'amount too large': 'That is more than one jar can hold. Check the number and the unit.',
} as const;

function assumptionWords(assumption: AmountAssumption): string {
  switch (assumption.kind) {
    case 'range':
      return `middle of ${round(assumption.low, 2)} to ${round(assumption.high, 2)}`;
    case 'about':
      return 'about';
    case 'level':
      return `taken as level, not ${assumption.word}`;
    case 'fluid ounces':
      return 'fluid ounces';
    case 'unit':
      return `taken as ${assumption.unit}`;
  }
}

const SPOON_WORDS: Record<Preferences['spoons'], string> = {
  US: 'US measure',
  metric: 'metric measure',
  Australia: 'Australian measure',
  'UK imperial': 'UK measure',
};

function amountValue({ value, unit }: Amount): string {
  if (unit === 'CFU') return `${value.toExponential(1).replace('e+', ' × 10^')} CFU`;
  if (unit === 'pieces') return `${round(value, 2)} ${value === 1 ? 'piece' : 'pieces'}`;
  return `${round(value, value < 100 ? 1 : 0)} ${unit}`;
}

/** What reads the same for every keeper. */
const FIGURES: Pick<Reader, 'hours' | 'ph' | 'count' | 'whole'> = {
  hours(text) {
    if (blank(text)) return unknown;
    const read = parseHours(text);
    if (!read.ok) return bad('This is not read as hours. Type it like “36”, “36 h” or “1 day 12 h”.');
    if (read.hours <= 0) return bad('The hours must be more than zero. Leave it empty if nobody knows.');
    if (read.hours > 1000) return bad('More than 1000 hours can’t be right. Check the number.');
    return good(read.hours, `= ${round(read.hours, 2)} hours${read.range ? ', the middle' : ''}`);
  },
  ph(text) {
    if (blank(text)) return unknown;
    const read = parsePh(text);
    if (!read.ok)
      return bad(
        read.code === 'pH impossible'
          ? 'The pH of a jar lies between 2 and 9. Please check the reading.'
          : 'This is not read as a pH. Type it like “4.3”.',
      );
    return good(read.ph, `= pH ${round(read.ph, 2)}${read.range ? ', the middle' : ''}`);
  },
  count(text) {
    if (blank(text)) return unknown;
    const clean = tidy(text)
      .replace(/\s*(?:CFU|KBE|UFC|afu)\.?\s*$/i, '')
      .replace(
        /(\d)\s*(bn|b|m)$/i,
        (_, digit: string, word: string) => `${digit} ${/^m$/i.test(word) ? 'million' : 'billion'}`,
      );
    const number = readNumber(clean);
    if (!number || number.length !== clean.length || !(number.value > 0) || number.value > 1e15)
      return bad('This is not read as a count. Type it like “100 million”, “5 billion” or “1e9”.');
    return good(number.value, `= ${number.value.toExponential(1).replace('e+', ' × 10^')} CFU in each piece`);
  },
  whole(text, most) {
    if (blank(text)) return unknown;
    const value = Number(text.trim());
    return /^\d+$/.test(text.trim()) && value >= 1 && value <= most
      ? good(value, null)
      : bad(`Type a whole number from 1 to ${most}, or leave it empty if nobody knows.`);
  },
};

/** Readers for one keeper's preferences. */
export function makeReader(
  preferences: Preferences,
  today: string,
  offsetAt: (local: string) => string,
): Reader {
  const order = preferences.dates;
  const dayEcho = (day: string, yearAssumed: boolean): string =>
    `= ${weekday(day)} ${printDay(day, order)}${yearAssumed ? ', year assumed' : ''}`;
  return {
    today,
    amount(text, bare) {
      if (blank(text)) return unknown;
      const bareUnit = bare === 'pieces' ? 'pieces' : bare === 'volume' ? 'ml' : undefined;
      const read = parseAmount(text, { spoons: preferences.spoons, bareUnit }, true);
      if (!read.ok) return bad(AMOUNT_REFUSED[read.code]);
      const region = read.regional && MEASURES[preferences.spoons] ? [SPOON_WORDS[preferences.spoons]] : [];
      const said = [
        ...region,
        ...read.assumed.filter((one) => one.kind !== 'unit' || bare !== 'pieces').map(assumptionWords),
      ];
      return good(read.amount, [`= ${amountValue(read.amount)}`, ...said].join(', '));
    },
    temperature(text) {
      if (blank(text)) return unknown;
      const read = parseTemperature(text);
      if (!read.ok)
        return bad(
          read.code === 'temperature impossible'
            ? `A temperature of ${read.said} can’t be right in a kitchen. Check the number and the scale.`
            : 'This is not read as a temperature. Type it like “38 °C” or “101 F”.',
        );
      const celsius = read.temperature.value;
      const scales = [`${round(celsius, 1)} °C`, `${round(toFahrenheit(celsius), 1)} °F`];
      if (preferences.temperatures === '°F') scales.reverse();
      const both = `= ${scales.join(', ')}`;
      return good(read.temperature, read.scaleAssumed ? `${both}, taken as ${read.scaleAssumed}` : both);
    },
    day(text, ahead = false) {
      if (blank(text)) return unknown;
      const read = readDay(text, order, today, ahead);
      if (!read.ok) return bad('This is not a day. Type it like “14 Mar”, “14 Mar 2026” or “2026-03-14”.');
      return good(read.day, dayEcho(read.day, read.yearAssumed));
    },
    made(text) {
      if (blank(text)) return unknown;
      const day = readDay(text, order, today);
      if (day.ok) {
        const made = { madeOn: day.day, madeFrom: null, madeTo: null };
        return good(made, dayEcho(day.day, day.yearAssumed));
      }
      const read = readDayRange(text, order, today);
      if (!read.ok)
        return bad('This is not a day. Type it like “14 Mar”, “about 15 Jan” or “between 3 and 9 Jan”.');
      const { from, to } = read.range;
      return good(
        { madeOn: null, madeFrom: from, madeTo: to },
        `= ${printRange(read.range, order)}${read.yearAssumed ? ', year assumed' : ''}`,
      );
    },
    moment(text, day) {
      if (blank(text)) return unknown;
      const read = readMoment(text, day, order, today, offsetAt);
      if (!read.ok)
        return bad(
          read.why === 'which day'
            ? 'On which day? Type it like “16 Mar 6:30”.'
            : 'This is not a time. Type it like “18:30”, “6:30 pm” or “16 Mar 6:30”.',
        );
      return good(read.moment, `= ${weekday(read.day)} ${printDay(read.day, order)}, ${read.time}`);
    },
    price(text) {
      if (blank(text)) return unknown;
      const read = parsePrice(text, preferences.currency);
      return read.ok
        ? good(read.price, `= ${printPrice(read.price)}`)
        : bad('This is not read as a price. Type it like “12.50” or “€12,50”.');
    },
    ...FIGURES,
  };
}

const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const;
const weekday = (day: string): string => WEEKDAYS[new Date(`${day}T00:00:00Z`).getUTCDay()] ?? '';
