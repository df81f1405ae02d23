// How a whole file writes its figures: order of day and month, decimal mark, spoons, scale of temperatures.
import type { Preferences } from '../../ledger/records';
import {
  plain,
  tidy,
  type DecimalMark,
  type SpoonSystem,
  type TemperatureScale,
} from '../../quantities/quantities';
import {
  dayIn,
  dayText,
  findDay,
  orderOf,
  withoutAmounts,
  type DayOrder,
  type OrderEvidence,
  type ReadDay,
} from '../../text/days';
import { commaLanguage, headingDayOrder } from '../layout/headings';
import { SYSTEMS, type Conventions } from './file-habits';
import type { Layout } from '../layout/column-meanings';
import { hasTrait } from '../meanings';
import type { NotesInput } from '../notes-plan';
import type { FileSays, Question, Said } from '../said';
import { assumed, question as ask } from '../notes-says';
import { readBareUnits } from './bare-units';
import type { Separator } from '../table/table-rows';

export interface ConventionsReading {
  readonly conventions: Conventions;
  readonly says: FileSays;
}

const isOrder = (text: string | undefined): text is DayOrder =>
  text === 'day first' || text === 'month first' || text === 'year first';

/**
 * Where the days of the jars are in no doubt, a doubtful one elsewhere is a jar's day, or no day at all: "1/2 a". In the one
 * order in which all of them are, they are meant: "A (05-01)" beside 2025-05-01.
 */
function ofJars(pieces: readonly string[], own: readonly string[], look: Layout['look']): OrderEvidence {
  const sure = own.flatMap((text) => {
    const found = findDay(text);
    return found?.dayFirst ? [`${found.dayFirst.month}-${found.dayFirst.day}`] : [];
  });
  if (sure.length === 0) return orderOf(pieces, look);
  const days = new Set(sure);
  const isOne = (day: ReadDay | null): boolean => day !== null && days.has(`${day.month}-${day.day}`);
  const found = pieces.flatMap((text) => {
    look?.();
    const day = findDay(text);
    return day ? [{ text, day }] : [];
  });
  const meant = found.filter(({ day }) => day.sure || isOne(day.dayFirst) || isOne(day.monthFirst));
  const doubtful = meant.filter(({ day }) => !day.sure);
  const orders = (['day first', 'month first'] as const).filter((order) =>
    doubtful.every(({ day }) => isOne(order === 'day first' ? day.dayFirst : day.monthFirst)),
  );
  const [order] = orders;
  const [first] = doubtful;
  if (first && order && orders.length === 1) return { order, example: first.text, doubtful: 0 };
  return orderOf(
    meant.map(({ text }) => text),
    look,
  );
}

/** The one order in which no jar was made after today, or null where both or none have that. */
function pastOrder(own: readonly string[], today: string, look: Layout['look']): DayOrder | null {
  const found = own.flatMap((text) => {
    look?.();
    return findDay(text) ?? [];
  });
  const orders = (['day first', 'month first'] as const).filter((order) =>
    found.every((one) => {
      const read = dayIn(one, order);
      return read !== null && (read.year === null || (dayText(read, read.year) ?? '9999') <= today);
    }),
  );
  return found.length > 0 && orders.length === 1 ? (orders[0] ?? null) : null;
}

function readOrder(
  layout: Layout,
  answers: Readonly<Record<string, string>>,
  today: string,
): { order: DayOrder; question: Question | null; assumption: Said | null } {
  const { look } = layout;
  const dated = layout.columns.filter(({ meaning }) => hasTrait(meaning, 'dated'));
  const own = layout.columns.filter(({ meaning }) => meaning === 'date' || meaning === 'start');
  const texts = (columns: typeof dated): string[] =>
    layout.rows.flatMap((row) => {
      look?.();
      return columns.map(({ index, meaning }) => {
        const text = row.cells[index] ?? '';
        return meaning === 'seed' ? withoutAmounts(text) : text;
      });
    });
  const settled = (order: DayOrder, sentence: string | null = null): ReturnType<typeof readOrder> => ({
    order,
    question: null,
    assumption: sentence === null ? null : { row: null, sentence },
  });
  const answer = answers['day order']?.trim().toLowerCase();
  if (isOrder(answer)) return settled(answer);
  const ownTexts = texts(own);
  const pieces = texts(dated).flatMap((text) => text.split(/\+|;|&|\band\b|\bund\b|\bet\b/));
  const main = orderOf(ownTexts, look);
  const all = main.doubtful === 0 ? ofJars(pieces, ownTexts, look) : orderOf(pieces, look);
  const { order, example, doubtful, pointsOnly } = main.order ? main : all;
  const told = own.map(({ heading }) => headingDayOrder(heading)).find((one) => one !== null);
  // A day that is possible one way only outweighs the heading.
  if (told && (order === null || pointsOnly === true))
    return settled(told, assumed.dayOrder(told, own[0]?.heading ?? ''));
  if (order) return settled(order, doubtful > 0 ? assumed.dayOrder(order, example ?? '') : null);
  const past = pastOrder(ownTexts, today, look);
  if (past !== null) return settled(past, assumed.pastOrder(past, today));
  if (doubtful === 0) return settled('day first');
  return {
    ...settled('day first'),
    question: {
      id: 'day order',
      row: null,
      sentence: ask.dayOrder(example ?? ''),
      choices: [
        { value: 'day first', label: 'The day first' },
        { value: 'month first', label: 'The month first' },
      ],
      blocks: true,
    },
  };
}

/** Evidence of the decimal mark from cells that hold figures (never from days). */
function readDecimal(layout: Layout, separator: Separator): DecimalMark | undefined {
  const figures = layout.columns.filter(({ meaning }) => !hasTrait(meaning, 'no figures'));
  let comma = 0;
  let point = 0;
  for (const row of layout.rows) {
    layout.look?.();
    for (const { index } of figures) {
      const text = tidy(row.cells[index] ?? '');
      if (/\d,\d{1,2}(?!\d)/.test(text)) comma += 1;
      if (/\d\.\d{1,2}(?![\d.])/.test(text)) point += 1;
    }
  }
  if (comma !== point) return comma > point ? 'comma' : 'point';
  const native = commaLanguage(layout.columns.map(({ heading }) => heading));
  return native || separator === ';' ? 'comma' : undefined;
}

/** Which spoon a bare "tbsp" is, from what stands around it; the keeper's own setting where nothing does. */
function readSpoons(
  layout: Layout,
  preferences: Pick<Preferences, 'spoons'>,
  answers: Readonly<Record<string, string>>,
): { spoons: SpoonSystem; reason: string } {
  const answer = SYSTEMS.find((system) => system.toLowerCase() === answers['spoons']?.trim().toLowerCase());
  if (answer) return { spoons: answer, reason: 'you said so' };
  const texts = new Set(layout.columns.map(({ heading }) => heading));
  for (const row of layout.rows) for (const cell of row.cells) texts.add(cell);
  const flat = Array.from(texts, (text) => {
    layout.look?.();
    return plain(text);
  });
  const told = (pattern: RegExp): boolean => flat.some((text) => pattern.test(text));
  if (told(/\baustralian?\b|\b20 ?ml (?:table)?spoons?\b/))
    return { spoons: 'Australia', reason: 'the notes name Australia' };
  if (told(/\bimperial\b|\bimp\.? (?:pint|pt|gal|cup|fl)/))
    return { spoons: 'UK imperial', reason: 'the notes say imperial' };
  if (told(/\b15 ?ml (?:table)?spoons?\b/))
    return { spoons: 'metric', reason: 'the notes say a spoon is 15 mL' };
  const american = told(
    /\b(?:qts?|quarts?|half ?gallon|gallons?|gal|fl\.? ?oz|half (?:&|and|n|'n') half|2% milk)\b/,
  );
  // Most temperatures decide, so that one slip of the pen does not.
  let fahrenheit = 0;
  let celsius = 0;
  for (const column of layout.columns.filter(({ meaning }) => meaning === 'temperature')) {
    const unit = column.unit?.replace('°', '').trim().toUpperCase()[0];
    for (const row of layout.rows) {
      const cell = tidy(row.cells[column.index] ?? '');
      const scale = /\d\s*(?:°|deg\w*)?\s*([CF])/i.exec(cell)?.[1]?.toUpperCase() ?? unit;
      const number = Number(/\d+(?:[.,]\d+)?/.exec(cell)?.[0].replace(',', '.') ?? Number.NaN);
      if (scale === 'F' || (scale === undefined && number > 60)) fahrenheit += 1;
      else if (scale === 'C' || number <= 60) celsius += 1;
    }
  }
  const metric =
    layout.columns.some(({ unit }) => /^(?:ml|l|dl|cl)$/i.test(unit ?? '')) ||
    told(/\d\s?(?:ml|l|dl|cl|litres?|liters?)\b|\((?:ml|l|dl|cl)\)/);
  if (american) return { spoons: 'US', reason: 'the notes use US measures' };
  if (commaLanguage(layout.columns.map(({ heading }) => heading)))
    return { spoons: 'metric', reason: 'the headings are in a language of metric kitchens' };
  if (fahrenheit > celsius) return { spoons: 'US', reason: 'the temperatures are in °F' };
  if (metric || celsius > 0)
    return {
      spoons: preferences.spoons === 'US' ? 'metric' : preferences.spoons,
      reason: 'the notes use metric measures',
    };
  return { spoons: preferences.spoons, reason: 'that is the spoon chosen in the preferences' };
}

/** The scale of bare temperatures, as the heading tells it. */
function readScale(layout: Layout): TemperatureScale | undefined {
  const heading = layout.columns.find(({ meaning }) => meaning === 'temperature')?.unit;
  const unit = heading?.replace('°', '').trim().toUpperCase()[0];
  return unit === 'F' ? '°F' : unit === 'C' ? '°C' : undefined;
}

/** Reads the habits of a file. A day order that no date settles is a question that blocks. */
export function readConventions(
  layout: Layout,
  separator: Separator,
  { preferences, answers, today }: Pick<NotesInput, 'preferences' | 'answers' | 'today'>,
): ConventionsReading {
  const { order, question, assumption } = readOrder(layout, answers, today);
  const spoons = readSpoons(layout, preferences, answers);
  const says: FileSays = {
    said: assumption ? [assumption] : [],
    questions: question ? [question] : [],
  };
  const habits = {
    order,
    decimal: readDecimal(layout, separator),
    spoons: spoons.spoons,
    spoonsReason: spoons.reason,
    scale: readScale(layout),
  };
  return { conventions: { ...habits, bareUnits: readBareUnits(layout, habits, answers, says) }, says };
}
