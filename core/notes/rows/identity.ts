// Which jar each row is: its day (also where the year, or the whole day, is left out), its letter and its names.
import { plain, tidy } from '../../quantities';
import type { RowLog, Cell } from './row-cells';
import type { DayOrder } from '../cells/days';
import {
  cellDay,
  dayIn,
  dayText,
  findDay,
  likeDay,
  serialDay,
  strayDigits,
  type ReadDay,
} from '../cells/days';
import { assumed, problem, question } from '../says';
import { unused } from '../cells/seed-words';

export interface Identity {
  day: string | null;
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

const words = (text: string): string =>
  plain(text)
    .split(/[^\p{L}\p{N}']+/u)
    .filter(Boolean)
    .join(' ');
const JAR_WORD =
  /^(?:jar|glass?|pot|bocal|frasco|tarro|vasetto|barattolo|burk|sloik|słoik|potje|pote|batch|no|nr|number|num|n°|letter)\b\.?\s*/i;

/** A letter or number with something told beside it. */
const BESIDE =
  /^#?(?:(?:jar|glas|glass|pot|no\.?)\s+)?#?(\p{L}|\d{1,3})\s*(?:\((?=.{2,})|[-:,=]\s+|\s+(?=\p{L}{3}))\s*\p{L}{2,}.*$/iu;

/** A letter or number out of a jar's cell, without "Jar" and "#". */
function letterOf(text: string): string {
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
  const rest = letterOf(`${clean.slice(0, found.start)} ${clean.slice(found.end)}`);
  return dayText(read, read.year ?? Number(day.slice(0, 4))) === day && (rest === '' || rest === letter);
}

/** @param dayAbove what the row above has: [day in full or null, as told, without its year or null]. */
export function readIdentity(
  cells: readonly Cell[],
  log: RowLog,
  order: DayOrder,
  dayAbove: Pick<Identity, 'day' | 'toldDay' | 'yearless' | 'yearlessText' | 'word'> | null,
): Identity {
  const of = (meaning: string): Cell | undefined =>
    cells.find(({ column, text }) => column.meaning === meaning && tidy(text) !== '');
  const start = of('start');
  // A start with a day in it tells the day, where no column of its own does.
  const date = of('date') ?? (start && findDay(start.text) ? start : undefined);
  const jar = of('jar');
  const label = of('label');
  let day: string | null = null;
  let toldDay = '';
  let yearless: ReadDay | null = null;
  let yearlessText = '';
  const take = (read: ReadDay, shown: string): void => {
    if (read.year === null) {
      yearless = read;
      yearlessText = shown;
      toldDay = `--${String(read.month).padStart(2, '0')}-${String(read.day).padStart(2, '0')}`;
    } else {
      day = dayText(read, read.year);
      toldDay = day ?? shown;
    }
  };

  if (date) {
    const serial = serialDay(date.text);
    const found = cellDay(date.text) ?? (date === start ? findDay(date.text) : null);
    const read = found && dayIn(found, order);
    if (serial !== null && !found?.sure) {
      day = serial;
      toldDay = serial;
      log.assume(assumed.serial(date.text.trim(), serial));
    } else if (read) take(read, date.text.trim());
    else {
      // "Sat 15 Oct, evening": the day can be told and the rest is kept.
      const inside = findDay(date.text);
      const readInside = inside && dayIn(inside, order);
      const clean = tidy(date.text);
      const stray = inside && strayDigits(clean.slice(0, inside.start), clean.slice(inside.end));
      if (readInside && !stray) {
        take(readInside, date.text.trim());
        log.keep(date.column.heading, date.text);
      } else {
        toldDay = clean;
        const impossible = stray || (inside === null && likeDay(clean));
        log.problem(
          (impossible ? problem.dayImpossible : problem.dayNotRead)(date.text.trim()),
          date.column.heading,
          date.text,
        );
      }
    }
  }

  const aliases: string[] = [];
  let letter: string | null = null;
  let word: string | null = null;
  let labelDay: ReadDay | null = null;
  const naming = jar ?? label;
  if (jar) aliases.push(words(jar.text));
  if (label) aliases.push(words(label.text));
  if (naming) {
    const clean = tidy(naming.text);
    const found = findDay(clean);
    const read = found && dayIn(found, order);
    let rest = clean;
    if (found && read && !/^#?\d{1,3}$/.test(clean)) {
      labelDay = read;
      rest = `${clean.slice(0, found.start)} ${clean.slice(found.end)}`;
      if (!date) {
        take(read, clean);
        // Without its year the day is told once the year is found.
        if (read.year !== null) log.assume(assumed.dayFromLabel(clean, toldDay));
      }
    }
    // "1026-03-08 a" names no letter but a day that can't be.
    const impossible = found
      ? !/^#?\d{1,3}$/.test(clean) && strayDigits(clean.slice(0, found.start), clean.slice(found.end))
      : likeDay(clean);
    if (!date && impossible) {
      log.problem(problem.dayImpossible(clean), naming.column.heading, naming.text);
      toldDay = clean;
    }
    letter = letterOf(rest) || null;
    // "A (plain)", "B - inulin": the letter, and words that are kept.
    const beside = BESIDE.exec(rest.trim());
    if (beside && letter !== beside[1]?.toLowerCase()) {
      letter = beside[1]?.toLowerCase() ?? null;
      log.assume(assumed.letterOf(rest.trim(), letter ?? ''));
      log.keep(naming.column.heading, naming.text);
    }
    if (labelDay && letter?.includes(' ')) {
      const parts = letter.split(' ');
      letter = parts.at(-1) ?? null;
      word = parts.slice(0, -1).join(' ') || null;
    }
  }
  if (jar && label && !findDay(label.text) && letter !== null) {
    const named = tidy(label.text);
    if (letterOf(named) !== letter)
      word = named.replace(JAR_WORD, '').replace(/^#\s*/, '').slice(0, 60) || null;
    if (word !== null)
      aliases.push(words(`${word} ${letter}`), words(`${word}${letter}`), words(`${named} ${letter}`));
  }
  if (jar && label && findDay(label.text) && !saysAgain(label.text, order, day, letter))
    log.keep(label.column.heading, label.text);
  const batched =
    cells.some(({ column }) => column.meaning === 'label') &&
    cells.some(({ column }) => column.meaning === 'jar');
  if (batched && jar && !label && !date && labelDay === null && dayAbove?.word) {
    const above = dayAbove.word;
    word = above;
    log.assume(assumed.batchFromAbove(above));
    aliases.push(words(`${word} ${letter}`), words(`${word}${letter}`));
  }
  const full = day as string | null;
  if (date && labelDay !== null && full !== null && naming) {
    const said = labelDay as ReadDay;
    const same = Number(full.slice(5, 7)) === said.month && Number(full.slice(8)) === said.day;
    if (!same) log.ask('label', question.labelDay(tidy(naming.text), full));
  }
  if (!date && labelDay === null && toldDay === '') {
    if (dayAbove && (dayAbove.day !== null || dayAbove.yearless !== null)) {
      ({ day, toldDay, yearless, yearlessText } = dayAbove);
      if (day !== null) log.assume(assumed.dayFromAbove(day));
      else log.assume(assumed.dayFromAbove(yearlessText));
    } else log.problem(problem.dayMissing(), null, null);
  }
  let longName: string | null = null;
  if (letter !== null && letter.length > 20) {
    longName = tidy(naming?.text ?? letter);
    letter = null;
  }
  return {
    day,
    toldDay,
    letter,
    word,
    aliases: [
      ...aliases,
      ...aliases.map((alias) => unused(alias).join(' ')),
      ...aliases.map((alias) => alias.replace(/ /g, '')),
    ].filter((alias) => alias.length > 1),
    longName,
    yearless,
    yearlessText,
  };
}

const at = (day: string): number =>
  Date.UTC(Number(day.slice(0, 4)), Number(day.slice(5, 7)) - 1, Number(day.slice(8)));

const shifted = (day: string, years: number): string => `${Number(day.slice(0, 4)) + years}${day.slice(4)}`;

/** The year that brings a day closest to another. */
function closest(read: ReadDay, to: string): string | null {
  const year = Number(to.slice(0, 4));
  let best: string | null = null;
  for (const candidate of [year - 1, year, year + 1]) {
    const text = dayText(read, candidate);
    if (text !== null && (best === null || Math.abs(at(text) - at(to)) < Math.abs(at(best) - at(to))))
      best = text;
  }
  return best;
}

/**
 * Gives days without a year the year that keeps neighbouring rows close together. Where no row has a year, the newest
 * day is the last one that is not after today.
 * @param known days known from elsewhere, by row: what the ledger has for the same row.
 */
export function fillYears(
  rows: readonly { readonly identity: Identity; readonly log: RowLog; readonly known: string | null }[],
  today: string,
): void {
  const open = rows.filter(({ identity }) => identity.yearless !== null && identity.day === null);
  if (open.length === 0) return;
  const days = rows.map(({ identity, known }) => identity.day ?? (identity.yearless ? known : null));
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
      if (days[index] === null && read && last !== null) days[index] = closest(read, last);
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
