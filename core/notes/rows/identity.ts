// Which jar each row is: its day (also where the year, or the whole day, is left out), its letter and its names.
import type { NoteColumn } from '../../contract';
import { cutOut, plain, tidy } from '../../quantities/quantities';
import { filled, type RowLog, type Cell } from './row-cells';
import type { DayOrder } from '../../text/days';
import { type DayRange, middleDay } from '../../quantities/day-ranges';
import {
  daysOf,
  type RoughDay,
  roughDay,
  upTo,
  withoutAbout,
  yearTold as yearOf,
} from '../../text/rough-days';
import {
  cellDay,
  dayIn,
  dayText,
  findDay,
  likeDay,
  nearestDay,
  serialDay,
  strayDigits,
  type ReadDay,
} from '../../text/days';
import { assumed, problem, question } from '../notes-says';
import { withoutWeekdayLast } from '../../text/weekdays';
import { unused, words as wordsOf } from '../cells/seed-words';

export interface Identity {
  /** Where only a range of days is told, the one in its middle: where the jar stands in order. */
  day: string | null;
  /** The days between which it was made, where only these are told; set once the year is known. */
  between: DayRange | null;
  readonly rough: RoughDay | null;
  /** As told: the day in full, "--10-15" without its year, or the text that can't be read. Never depends on today. */
  readonly toldDay: string;
  letter: string | null;
  readonly word: string | null;
  readonly aliases: readonly string[];
  /** The name was too long for a letter. */
  readonly longName: string | null;
  /** Set while the year is open. */
  readonly yearless: ReadDay | null;
  readonly yearlessText: string;
}

const words = (text: string): string => wordsOf(text).join(' ');
const JAR_WORD =
  /^(?:jar|glass?|pot|bocal|frasco|tarro|vasetto|barattolo|burk|sloik|słoik|potje|pote|batch|no|nr|number|num|n°|letter)\b\.?\s*/i;

/** A letter or number with something told beside it. */
const BESIDE =
  /^#?(?:(?:jar|glas|glass|pot|no\.?)\s+)?#?(\p{L}|\d{1,3})\s*(?:\((?=.{2,})|[-:,=]\s+|\s+(?=\p{L}{3}))\s*\p{L}{2,}.*$/iu;

/** A letter or number out of a jar's cell, without "Jar" and "#". */
export function letterOf(text: string): string {
  const bare = tidy(text)
    .replace(/^#\s*/, '')
    .replace(JAR_WORD, '')
    .replace(/^#\s*/, '')
    .replace(/^[\s\-_/.,:()]+|[\s\-_/.,:()]+$/g, '');
  return bare.toLowerCase();
}

/** Whether a label says nothing but the day and the letter that are told already. */
function saysAgain(text: string, order: DayOrder, day: string | null, letter: string | null): boolean {
  const clean = tidy(text);
  const found = findDay(clean);
  const read = found && dayIn(found, order);
  if (!found || !read || day === null) return false;
  const rest = letterOf(cutOut(clean, [found]));
  return dayText(read, read.year ?? Number(day.slice(0, 4))) === day && (rest === '' || rest === letter);
}

/** The day of a row, as far as it is told. */
interface Told {
  day: string | null;
  toldDay: string;
  yearless: ReadDay | null;
  yearlessText: string;
  rough: RoughDay | null;
}

/** What the row above has. */
export type DayAbove = Pick<Identity, 'day' | 'toldDay' | 'yearless' | 'yearlessText' | 'rough' | 'word'> & {
  /** The number of the batch that a line above tells. */
  readonly number?: string | null;
};

/** A day as read, with its year or without. */
export function tellDay(read: ReadDay, shown: string): Told {
  const day = read.year === null ? null : dayText(read, read.year);
  if (read.year !== null)
    return { day, toldDay: day ?? shown, yearless: null, yearlessText: '', rough: null };
  const toldDay = `--${String(read.month).padStart(2, '0')}-${String(read.day).padStart(2, '0')}`;
  return { day, toldDay, yearless: read, yearlessText: shown, rough: null };
}

const UNTOLD: Told = { day: null, toldDay: '', yearless: null, yearlessText: '', rough: null };

/** A day that is told only roughly, by the one in its middle. */
function tellRough(rough: RoughDay, shown: string): Told | null {
  const year = yearOf(rough);
  // A year that is not written changes no day in the middle by more than one.
  const days = daysOf(rough, year ?? 2025);
  if (days === null) return null;
  const [told, month, day] = middleDay(days).split('-').map(Number);
  const middle = { year: year === null ? null : (told ?? 0), month: month ?? 1, day: day ?? 1 };
  const { day: exact, toldDay, ...rest } = tellDay(middle, shown);
  return { ...rest, day: exact, toldDay: `~${toldDay}`, yearlessText: shown, rough };
}

/** The day of a day cell. @param within whether it may stand among other words, as a start does */
function dayOfCell(cell: Cell, within: boolean, order: DayOrder, log: RowLog): Told {
  const { text } = cell;
  const shown = text.trim();
  const rough = roughDay(text, order);
  const roughly = rough && tellRough(rough, shown);
  if (roughly) return roughly;
  const serial = serialDay(text);
  const found = cellDay(text) ?? (within ? findDay(text) : null);
  const read = found && dayIn(found, order);
  if (serial !== null && !found?.sure) {
    log.assume(assumed.serial(shown, serial));
    return { ...UNTOLD, day: serial, toldDay: serial };
  }
  if (read) return tellDay(read, shown);
  // "Sat 15 Oct, evening": the day can be told and the rest is kept.
  const inside = findDay(text);
  const readInside = inside && dayIn(inside, order);
  const clean = tidy(text);
  const stray = inside && strayDigits(clean.slice(0, inside.start), clean.slice(inside.end));
  if (readInside && !stray) {
    log.keep(cell);
    return tellDay(readInside, shown);
  }
  const impossible = stray || (inside === null && likeDay(clean));
  log.problem((impossible ? problem.dayImpossible : problem.dayNotRead)(shown), cell);
  return { ...UNTOLD, toldDay: clean };
}

/** What a jar is called, and the day its name tells. */
interface Named {
  letter: string | null;
  word: string | null;
  readonly labelDay: ReadDay | null;
  /** Its name holds a day that can't be. */
  readonly impossible: boolean;
}

const ONLY_NUMBER = /^#?\d{1,3}$/;

/** Reads the name of a jar: "15 Oct b", "A (plain)", "plain b", "7". */
function nameOf(cell: Cell, order: DayOrder, log: RowLog): Named {
  const clean = withoutAbout(tidy(cell.text));
  const found = findDay(clean);
  const read = found && dayIn(found, order);
  const dated = found && read && !ONLY_NUMBER.test(clean);
  const rest = dated ? `${withoutWeekdayLast(clean.slice(0, found.start))} ${clean.slice(found.end)}` : clean;
  // "1026-03-08 a" names no letter but a day that can't be.
  const impossible = found
    ? !ONLY_NUMBER.test(clean) && strayDigits(clean.slice(0, found.start), clean.slice(found.end))
    : likeDay(clean);
  let letter: string | null = letterOf(rest) || null;
  let word: string | null = null;
  // "A (plain)", "B - inulin": the letter, and words that are kept.
  const beside = BESIDE.exec(rest.trim());
  if (beside && letter !== beside[1]?.toLowerCase()) {
    letter = beside[1]?.toLowerCase() ?? null;
    log.assume(assumed.letterOf(rest.trim(), letter ?? ''));
    log.keep(cell);
  }
  if (dated && letter?.includes(' ')) {
    const parts = letter.split(' ');
    letter = parts.at(-1) ?? null;
    word = parts.slice(0, -1).join(' ') || null;
  }
  return { letter, word, labelDay: dated ? read : null, impossible };
}

/** The word of a batch beside the letters of its jars: "plain" and "b". Also from the row above. */
function batchWord(
  { jar, label }: { readonly jar: Cell | undefined; readonly label: Cell | undefined },
  named: Named,
  above: string | null,
  log: RowLog,
  apart: boolean,
): { word: string | null; aliases: string[] } {
  const { letter } = named;
  if (jar && label && !findDay(label.text) && letter !== null) {
    const text = tidy(label.text);
    const again = letterOf(text) === letter && !apart;
    const own = again ? '' : text.replace(JAR_WORD, '').replace(/^#\s*/, '').slice(0, 60);
    const word = again ? named.word : own || null;
    return {
      word,
      aliases:
        word === null
          ? []
          : [words(`${word} ${letter}`), words(`${word}${letter}`), words(`${text} ${letter}`)],
    };
  }
  if (above === null) return { word: named.word, aliases: [] };
  log.assume(assumed.batchFromAbove(above));
  return { word: above, aliases: [words(`${above} ${letter}`), words(`${above}${letter}`)] };
}

/** What a jar is called by its cell, also beside the heading: "red", "red sticker". */
function namesOf({ column, text }: Cell): string[] {
  const [name, heading] = [words(text), unused(column.heading).join(' ')];
  return name === '' || !/^[^ ]+$/.test(heading)
    ? [name]
    : [name, `${name} ${heading}`, `${heading} ${name}`];
}

/** A jar by its day as it is told roughly, with its year and without: "mid January 2025 a". */
const roughNames = ({ rough, yearlessText }: Told, letter: string | null): string[] =>
  rough === null || letter === null
    ? []
    : [yearlessText, yearlessText.replace(/\b\d{4}\b/, '')].map((day) => words(`${day} ${letter}`));

/** Other texts that mean a jar: without the words around a name, and written together. */
const withShort = (aliases: readonly string[]): string[] =>
  [
    ...aliases,
    ...aliases.map((alias) => unused(alias).join(' ')),
    ...aliases.map((alias) => alias.replace(/ /g, '')),
  ].filter((alias) => alias.length > 1);

/**
 * Which jar a row is, from its cells and, where they tell no day, from the row above.
 * @param apart labels name batches, be one of them called as its jar is: "batch 1, jar 1" beside "batch 2, jar 1"
 */
export function readIdentity(
  cells: readonly Cell[],
  log: RowLog,
  order: DayOrder,
  dayAbove: DayAbove | null,
  apart: boolean,
): Identity {
  const of = (meaning: NoteColumn): Cell | undefined => filled(cells, meaning)[0];
  const start = of('start');
  // A start with a day in it tells the day, where no column of its own does.
  const date = of('date') ?? (start && findDay(start.text) ? start : undefined);
  const [jar, label] = [of('jar'), of('label')];
  const naming = jar ?? label;
  let told = date ? dayOfCell(date, date === start, order, log) : UNTOLD;
  const named = naming
    ? nameOf(naming, order, log)
    : { letter: null, word: null, labelDay: null, impossible: false };
  if (!date && naming && named.labelDay) {
    told = tellDay(named.labelDay, tidy(naming.text));
    // Without its year the day is told once the year is found.
    if (named.labelDay.year !== null) log.assume(assumed.dayFromLabel(tidy(naming.text), told.toldDay));
  }
  if (!date && naming && named.impossible) {
    log.problem(problem.dayImpossible(tidy(naming.text)), naming);
    told = { ...told, toldDay: tidy(naming.text) };
  }
  if (jar && label && findDay(label.text) && !saysAgain(label.text, order, told.day, named.letter))
    log.keep(label);
  const batched = (['label', 'jar'] as const).every((meaning) =>
    cells.some(({ column }) => column.meaning === meaning),
  );
  const fromAbove =
    batched && jar && !label && !date && named.labelDay === null ? (dayAbove?.word ?? null) : null;
  const { word, aliases } = batchWord({ jar, label }, named, fromAbove, log, apart);
  if (date && naming && named.labelDay !== null && told.day !== null) {
    const { month, day } = named.labelDay;
    if (Number(told.day.slice(5, 7)) !== month || Number(told.day.slice(8)) !== day)
      log.ask('label', question.labelDay(tidy(naming.text), told.day));
  }
  let numbered: string | null = null;
  if (!date && named.labelDay === null && told.toldDay === '') {
    if (dayAbove && (dayAbove.day !== null || dayAbove.yearless !== null)) {
      const { day, toldDay, yearless, yearlessText, rough } = dayAbove;
      told = { day, toldDay, yearless, yearlessText, rough };
      numbered = dayAbove.number ?? null;
      log.assume(assumed.dayFromAbove(day ?? yearlessText));
    } else log.problem(problem.dayMissing());
  }
  const long = named.letter !== null && named.letter.length > 20;
  return {
    ...told,
    between: null,
    letter: long ? null : named.letter,
    word,
    aliases: withShort([
      ...[jar, label].flatMap((cell) => (cell ? namesOf(cell) : [])),
      ...roughNames(told, named.letter),
      ...(numbered === null ? [] : [`${numbered} ${named.letter ?? ''}`.trim()]),
      ...aliases,
    ]),
    longName: long ? tidy(naming?.text ?? '') : null,
  };
}

/** The years that a row may be of, where a line above it tells one: a winter goes on into the next. */
const yearsOf = (told: number | null): number[] | undefined => (told === null ? undefined : [told, told + 1]);

const shifted = (day: string, years: number): string => `${Number(day.slice(0, 4)) + years}${day.slice(4)}`;

/**
 * Gives days without a year the year that keeps neighbouring rows close together. Where no row has a year, the newest
 * day is the last one that is not after today.
 * @param known days known from elsewhere, by row: what the ledger has for the same row.
 */
export function fillYears(
  rows: readonly {
    readonly identity: Identity;
    readonly log: RowLog;
    readonly known: string | null;
    readonly yearTold: number | null;
  }[],
  today: string,
): void {
  const open = rows.filter(({ identity }) => identity.yearless !== null && identity.day === null);
  if (open.length === 0) return;
  const days = rows.map(({ identity, known, yearTold }, at) => {
    // The first row below a line that tells the year; those after it stay close to it.
    const first = yearTold !== null && yearTold !== rows[at - 1]?.yearTold;
    const told = identity.yearless !== null && first ? dayText(identity.yearless, yearTold) : null;
    return identity.day ?? told ?? (identity.yearless ? known : null);
  });
  const told = days.some((day) => day !== null);
  if (!told) {
    const first = rows.findIndex(({ identity }) => identity.yearless !== null);
    const read = rows[first]?.identity.yearless;
    if (read)
      days[first] = dayText(read, Number(today.slice(0, 4))) ?? dayText(read, Number(today.slice(0, 4)) - 1);
  }
  const spread = (indices: readonly number[]): void => {
    let last: string | null = null;
    for (const index of indices) {
      const read = rows[index]?.identity.yearless;
      if (days[index] === null && read && last !== null)
        days[index] = nearestDay(read, last, yearsOf(rows[index]?.yearTold ?? null));
      last = days[index] ?? last;
    }
  };
  const forward = rows.map((_, index) => index);
  spread(forward);
  spread(forward.toReversed());
  if (!told) {
    // Shift whole years until the newest day is the last possible one.
    const newest = days.reduce<string>((most, day) => (day !== null && day > most ? day : most), '');
    const latest = Number(today.slice(0, 4)) - (newest.slice(4) > today.slice(4) ? 1 : 0);
    const years = newest === '' ? 0 : latest - Number(newest.slice(0, 4));
    for (const [index, day] of days.entries()) if (day !== null) days[index] = shifted(day, years);
  }
  for (const [index, { identity, log }] of rows.entries()) {
    const day = days[index];
    if (identity.yearless === null || identity.day !== null) continue;
    if (day === null || day === undefined) log.problem(problem.dayNotRead(identity.yearlessText));
    else {
      identity.day = dayText(identity.yearless, Number(day.slice(0, 4)));
      if (identity.day === null) log.problem(problem.dayNotRead(identity.yearlessText));
      else log.assume(assumed.year(identity.yearlessText, identity.day));
    }
  }
}

/** Once years are known: the days between which jars were made of which no single day is told. */
export function setRanges(
  rows: readonly { readonly identity: Identity; readonly log: RowLog }[],
  today: string,
): void {
  for (const { identity, log } of rows) {
    const { rough, day } = identity;
    if (rough === null || day === null) continue;
    // Around New Year the days of two years hang together.
    const year = Number(day.slice(0, 4));
    const may = [year, year + 1].flatMap((one) => daysOf(rough, one) ?? []);
    const days = may.find(({ from, to }) => from <= day && day <= to);
    if (!days) continue;
    identity.between = upTo(days, today);
    identity.day = middleDay(identity.between);
    log.assume(assumed.roughly(identity.yearlessText, identity.between));
  }
}

/** The letters of one day's jars. */
export class Letters {
  readonly #taken = new Set<string>();
  /** All before it are taken. */
  #count = 0;

  take(letter: string): void {
    this.#taken.add(letter);
  }

  /** For a row without one: the first that is free. */
  next(): string {
    for (; ; this.#count += 1) {
      const letter = this.#count < 26 ? String.fromCharCode(97 + this.#count) : `a${this.#count - 25}`;
      if (!this.#taken.has(letter)) return letter;
    }
  }
}

/** What a jar is known by within a ledger: its day, the batch's word, its letter. */
export const labelKey = (day: string | null, word: string | null, letter: string): string =>
  `${day}|${plain(word ?? '')}|${letter.toLowerCase()}`;
