// Which column tells the seeds, proven by its cells: they name jars by days and letters that other rows have, and not their own.
import { tidy } from '../../quantities/quantities';
import { cellDay, daysBetween, findDay } from '../../text/days';
import type { Row } from '../table/table-rows';

/** A day in a cell, in the one order or the other; the year is often left out. */
function monthDay(text: string, whole: boolean): string | null {
  const found = whole ? cellDay(text) : findDay(text);
  const read = found?.dayFirst ?? found?.monthFirst;
  return read ? `${read.month}-${read.day}` : null;
}

/** What stands beside the day in the name of a jar: a letter, a number, "jar b". */
const BESIDE = /^[\s,(:#/-]*(?:(?:jar|glas|glass|pot|batch)\s*)?(?:\p{L}|\d{1,2})?[\s).:-]*$/iu;

/** The day of a cell that names a jar by it and by next to nothing else; null for any other cell. */
function dayNamed(cell: string): string | null {
  const text = tidy(cell);
  const found = findDay(text);
  if (!found) return null;
  const rest = `${text.slice(0, found.start)} ${text.slice(found.end)}`;
  return BESIDE.test(rest.trim()) ? monthDay(text, false) : null;
}

/** Of the cells that name a day, so many name that of another row; of all filled ones, so many name one at all. */
const NAMING = 0.9;
const NAMED = 0.5;

/**
 * Whether a column tells the seeds: half of its cells and more name a jar by a day that another row has, and hardly one its
 * own. @param days the column of days
 */
export function namesOtherRows(index: number, days: number, rows: readonly Row[]): boolean {
  const own = rows.map(({ cells }) => monthDay(cells[days] ?? '', true));
  const known = new Set(own);
  let [filled, named, others] = [0, 0, 0];
  // What seeded a jar is older, in one order of day and month at least, as far as years are told.
  const apart: Record<'day first' | 'month first', number[]> = { 'day first': [], 'month first': [] };
  for (const [at, { cells }] of rows.entries()) {
    const cell = cells[index] ?? '';
    if (tidy(cell) === '') continue;
    filled += 1;
    const day = dayNamed(cell);
    if (day === null) continue;
    named += 1;
    if (day !== own[at] && known.has(day)) others += 1;
    const [seed, made] = [findDay(cell), cellDay(cells[days] ?? '')];
    for (const order of ['day first', 'month first'] as const) {
      const days = seed && made ? daysBetween(seed, made, order) : null;
      if (days !== null) apart[order].push(days);
    }
  }
  const older = Object.values(apart).some(
    (told) => told.filter((count) => count > 0).length >= NAMING * told.length,
  );
  return older && named >= 3 && named >= NAMED * filled && others >= NAMING * named;
}
