// What stands in a column: the meaning its cells show where its heading tells none.
import type { NoteColumn } from '../../contract';
import { findAmounts, parseHours, parsePh, parseTemperature, plain, tidy } from '../../quantities/quantities';
import { cellDay, findDay, serialDay, withoutSureDays } from '../../text/days';
import { readMoment, readSpan } from '../../text/moments';
import { PIECE_WITHIN, PREVIOUS } from '../cells/seed-words';
import { withoutWeekdayLast } from '../../text/weekdays';
import { saysHowSet } from '../../text/look-words';
import { JAR_HEADING } from './jar-heading';

/** Whether a cell is a bare number. */
export const isNumber = (text: string): boolean => /^-?\d+(?:[.,]\d+)?$/.test(tidy(text));
/** The share of cells that pass a test; 0 where there are none. */
export const share = <Value>(cells: readonly Value[], test: (cell: Value) => boolean): number =>
  cells.length === 0 ? 0 : cells.filter(test).length / cells.length;

const MILKISH =
  /\b(?:milk|whole|skim\w*|uht|half|cream|milch|lait|leche|latte|melk|leite|mjolk|maelk|mleko|sahne|creme)\b/;
export const FIBREISH =
  /\b(?:fib(?:re|er)|inulin\w*|starch|bran|acacia|oat|chicory|psyllium|pectin\w*|starke|kleie|hafer|amidon|fecule|son|almidon|salvado|amido|crusca|zetmeel|zemelen|amido|farelo|starkelse|kli|stivelse|skrobia|otreby|sugar|zucker|sucre|honey)\b/;

const hoursOf = (cell: string): number => {
  const parsed = parseHours(cell);
  return parsed.ok ? parsed.hours : Number.NaN;
};
const number = (cell: string): number => (isNumber(cell) ? Number(tidy(cell).replace(',', '.')) : Number.NaN);
/** A figure with its degrees. */
export const isWarmth = (cell: string): boolean =>
  /°|\d\s*(?:deg\w*\.?\s*)?[FC]\b/i.test(tidy(cell)) && parseTemperature(cell).ok;
/** A figure with the unit of a length, or one that may be the hours of a hold; up to ten they may as well be marks. */
const isLength = (cell: string): boolean =>
  (/[a-z]/i.test(cell) && hoursOf(cell) >= 4) ||
  // "36:00" is no time of day.
  (/^\d{2,3}:\d{2}$/.test(tidy(cell)) && hoursOf(cell) > 24) ||
  (number(cell) >= 6 && number(cell) <= 72);
export const withDay = (cell: string): boolean => findDay(cell) !== null;

/** What stands in a column decides where its heading does not. Strictest first; null where nothing fits. */
export function meaningOfCells(cells: readonly string[], free: ReadonlySet<NoteColumn>): NoteColumn | null {
  const filled = cells.filter((cell) => tidy(cell) !== '');
  if (filled.length === 0) return null;
  const most = (test: (cell: string) => boolean, least = 0.7): boolean => share(filled, test) >= least;
  const tests: readonly (readonly [NoteColumn, () => boolean])[] = [
    ['date', () => most((cell) => cellDay(cell) !== null || serialDay(cell) !== null, 0.8)],
    ['seed', () => most((cell) => PIECE_WITHIN.test(cell) || withDay(cell) || PREVIOUS.test(plain(cell)), 0.5)],
    ['temperature', () => most((cell) => isWarmth(cell) || (number(cell) >= 85 && number(cell) <= 115), 0.8)],
    ['ph', () => most((cell) => number(cell) >= 3 && number(cell) <= 7 && /[.,]/.test(cell) && parsePh(cell).ok, 0.8)],
    ['set', () => most(saysHowSet, 0.6)],
    ['milk', () => most((cell) => MILKISH.test(plain(cell)), 0.6)],
    ['addition', () => most((cell) => FIBREISH.test(plain(cell)), 0.6)],
    ['jar', () => most((cell) => /^[#]?\s*[\p{L}]$/u.test(tidy(cell)) || JAR_HEADING.test(tidy(cell)), 0.9)],
    ['hours', () => most(isLength, 0.9) && !most((cell) => number(cell) <= 10, 0.5)],
    ['temperature', () => most((cell) => number(cell) >= 30 && number(cell) <= 48, 0.9)],
    ['amount', () => most((cell) => findAmounts(cell, { spoons: 'US' }, true).length > 0, 0.6)],
  ]; // prettier-ignore
  return tests.find(([meaning, fits]) => free.has(meaning) && fits())?.[0] ?? null;
}

/** A time of day and nothing else, or a day with one: "19:00", "7:30 pm", "4 May 7:00". */
export const isClock = (cell: string): boolean => {
  if (
    !/\d\s?(?:[:.]\s?\d{2}|[ap]\.?m\b|uhr\b)/i.test(tidy(cell)) ||
    (isNumber(cell) && !/^\d{1,2}\.\d{2}$/.test(tidy(cell)))
  )
    return false;
  const moment = readMoment(cell, 'day first') ?? readMoment(cell, 'month first');
  return moment?.minutes != null;
};

/** Whether bare figures may as well be hours held as degrees: all from 30 to 48. */
export const hoursOrDegrees = (cells: readonly string[]): boolean =>
  share(cells, (cell) => number(cell) >= 30 && number(cell) <= 48) >= 0.9;

/** Cells that can be one thing only, by the unit or the year they are written with. */
const PROOFS: readonly (readonly [NoteColumn, (cell: string) => boolean])[] = [
  ['date', (cell) => cellDay(cell) !== null && withoutSureDays(cell) === ''.padEnd(tidy(cell).length)],
  ['hours', (cell) => readSpan(cell, 'day first') !== null || /\d\s*(?:h|hrs?|hours?|std|stunden|horas|heures|uur|timmar|timer|godz)\b/i.test(cell) && parseHours(cell).ok],
  ['temperature', (cell) => /\d\s*(?:°\s*[CF]?|[CF]\b)/.test(tidy(cell)) && parseTemperature(cell).ok],
]; // prettier-ignore
/** "31h", "36": no time of day, which has at most 24 of them. */
const isLong = (cell: string): boolean =>
  Number(/^(\d{2,3})(?:[.,:]\d+)?\s?(?:h|hrs?|hours?|std|stunden)?\.?$/i.exec(tidy(cell))?.[1]) > 24;
/** Cells that may be what a heading says. */
const MAY_BE: Partial<Record<NoteColumn, (cell: string) => boolean>> = {
  date: (cell) => withDay(cell) || serialDay(cell) !== null,
  hours: (cell) => parseHours(cell).ok,
  temperature: (cell) => parseTemperature(cell).ok,
  ph: (cell) => parsePh(cell).ok,
  amount: (cell) => isNumber(cell) || findAmounts(cell, { spoons: 'US' }, true).length > 0,
  seed: (cell) => withDay(cell) || !isClock(cell),
  start: (cell) => !isLong(cell),
  end: (cell) => !isLong(cell),
  set: (cell) => !/\d/.test(cell) || saysHowSet(cell) || Number(tidy(cell)) <= 10,
};

/** Whether cells may be what a heading says, one in five of them at least. */
export const fitsMeaning = (meaning: NoteColumn, cells: readonly string[]): boolean =>
  cells.length > 0 && share(cells, MAY_BE[meaning] ?? (() => true)) >= 0.2;

/** What cells prove against their heading: hardly one can be what it says, and nearly all are one other thing; else null. */
export function provenOtherwise(meaning: NoteColumn, cells: readonly string[]): NoteColumn | null {
  const may = MAY_BE[meaning];
  if (!may) return null;
  const proven = PROOFS.find(([other, proof]) => other !== meaning && share(cells, proof) >= 0.8)?.[0];
  // "36 h" can be read as a temperature of 36: what proves one thing is no other.
  const own = PROOFS.find(([other]) => other === meaning)?.[1];
  return proven !== undefined && share(cells, own ?? may) < 0.2 ? proven : null;
}

/** "Seed date", "From batch": a part of what names the seed. */
export const SEED_PART =
  /\b(?:seed|seeds|parent|from|mother|starter|source|inoculum|quelle|mutter|starterglas|v|von|vom|aus)\b.*\b(date|day|batch|lot|jar|letter|datum|glas|tag|charge|ansatz)\b/;

/** A hold of more days is a hold in hours. */
export const MOST_DAYS = 5;
/** The middle one of a column's bare figures; 0 where there are none. */
function middleFigure(cells: readonly string[]): number {
  const figures = cells.flatMap((cell) => (isNumber(cell) ? [number(cell)] : [])).toSorted((a, b) => a - b);
  return figures[Math.floor(figures.length / 2)] ?? 0;
}
/** Whether bare figures of a column can be days that jars were held. */
export const fitsDays = (cells: readonly string[]): boolean => middleFigure(cells) <= MOST_DAYS;
/** Or minutes: more than any hold has hours. */
export const fitsMinutes = (cells: readonly string[]): boolean => middleFigure(cells) > MOST_DAYS * 24;

/** A cell that holds an amount and next to nothing else. */
export function isAmount(cell: string): boolean {
  if (isNumber(cell)) return true;
  if (/^\d+(?:[.,]\d+)?\s?%$/.test(tidy(cell))) return true;
  // "2026-01-05 c" names a jar and no five cups.
  if (withoutSureDays(cell) !== tidy(cell)) return false;
  if (/^[\d.,]+(?:(?:\s*[/+;&]\s*|,\s+)[\d.,]+)+$/.test(tidy(cell))) return findDay(cell) === null;
  const found = findAmounts(cell, { spoons: 'US' }, true);
  if (found.length === 0 || found.some(({ amount }) => amount.unit === 'pieces')) return false;
  let rest = tidy(cell);
  for (const amount of found.toReversed()) rest = `${rest.slice(0, amount.start)} ${rest.slice(amount.end)}`;
  // "60 mL of #2" and "of K1.1" name a jar as well.
  return findDay(rest) === null && !/[#\p{L}]\s?\d/u.test(rest) && rest.replace(/[^\p{L}]/gu, '').length <= 5;
}
export const VOLUME_UNIT = /^(?:%|ml|cl|dl|l|tbsps?|tbs|t|tsp|el|tl|msk|spsk|cups?)\.?$/i;
export const MASS_UNIT = /^(?:g|gr|grams?|oz)\.?$/i;

/** "2026-01-05 b", "5 Jan, jar 2": a day and the letter of a jar beside it. */
export function namesJar(cell: string): boolean {
  const text = tidy(cell);
  const found = findDay(text);
  const beside = found
    ? `${withoutWeekdayLast(text.slice(0, found.start))} ${text.slice(found.end)}`.trim()
    : '';
  return /^[\s,;:(_-]*(?:\p{L}\d?|(?:jar|glas|pot|no\.?|nr\.?|#)\s*(?:\p{L}|\d{1,2}))\)?$/iu.test(beside);
}
