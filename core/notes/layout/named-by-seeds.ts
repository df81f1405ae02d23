// Which column names the jars, told by the seeds: what stands there in one row seeds the jar of another.
import { cutOut, findAmounts, plain, tidy } from '../../quantities/quantities';
import { findDay, type FoundDay, withoutAmounts } from '../../text/days';
import { PIECE_WITHIN, unused } from '../cells/seed-words';
import type { Row } from '../table/table-rows';

const LONGEST_NAME = 20;

/**
 * Whether a column holds names that seeds go by: nearly all short and different, and one in half of the seeds that name
 * no product. @returns a seed that shows it, or null
 * @param seeds columns that say what seeded each jar
 * @param days the column of days: a name may come again on another one
 */
export function namedBySeeds(
  index: number,
  seeds: readonly number[],
  rows: readonly Row[],
  days: number,
): string | null {
  const written = rows.map(({ cells }) => plain(cells[index] ?? ''));
  const names = written.map((name) => name.replace(/^#\s*/, ''));
  const told = names.filter((name) => name !== '');
  const known = new Set(told);
  const madeOn = downBatches(days, days, rows);
  const different = new Set(names.map((name, at) => `${madeOn[at]}|${name}`));
  if (
    told.length < 3 ||
    different.size < rows.length * 0.9 ||
    told.some((name) => name.length > LONGEST_NAME)
  )
    return null;
  // A figure alone is an amount, or hours, as well as a name; but not where the seeds of each row are numbers of rows before it.
  const running = areNumbersOfRows(names, seeds, rows);
  if (running !== null) return running;
  // "6/7/25 2": beside a day a figure is a name.
  const figures = written.filter((name) => name !== '' && !/^[\d.,]+$/.test(name)).length < told.length * 0.9;
  if (figures && told.some((name) => !/^\d{1,2}$/.test(name))) return null;
  const seeding = rows.flatMap((row, at) =>
    seeds
      .map((seed) => ({ text: tidy(row.cells[seed] ?? ''), own: names[at] }))
      .filter(({ text }) => text !== '' && !PIECE_WITHIN.test(text)),
  );
  const made = days < 0 ? null : daysOfNames(madeOn, names);
  const naming = seeding.filter(({ text, own }) => {
    // "2 May blue" names a jar of another day: its own name may come again.
    const day = findDay(withoutAmounts(text));
    const dated = day !== null;
    const bare = dated ? cutOut(tidy(text), [day]) : text;
    const names = plain(cutOut(bare, findAmounts(bare, { spoons: 'US' }, true)))
      .split(/\s*[+;,&/]\s*|\s(?:and|und|et|y|e|og|och|en|i)\s/)
      .map((name) => name.replace(/^[^\p{L}\p{N}]+|[^\p{L}\p{N}]+$|'s$/gu, ''))
      .map((name) => name.replace(/^(?:of|from|von|vom|aus|de|du|di|del|van|av|af|ze?)\s+/, ''))
      // "The red one" is red.
      .flatMap((name) => [name, unused(name).join(' ')]);
    return [...names, ...(dated ? names.flatMap((name) => name.split(' ')) : [])].some(
      (name) =>
        known.has(name) &&
        (day !== null
          ? made === null || keysOf(day, name).some((key) => made.has(key))
          : !figures && name !== own),
    );
  });
  return naming.length >= Math.max(2, seeding.length / 2) ? (naming[0]?.text ?? null) : null;
}

/** A name with its day, in either order of day and month. */
const keysOf = ({ dayFirst, monthFirst }: FoundDay, name: string): string[] =>
  [dayFirst, monthFirst].flatMap((day, order) => (day ? [`${order} ${day.month}-${day.day} ${name}`] : []));

/** What stands in a column; where a row has no day of its own, what stands above it: told once for a batch. */
export function downBatches(index: number, days: number, rows: readonly Row[]): string[] {
  let above = '';
  return rows.map(({ cells }) => {
    const own = tidy(cells[index] ?? '');
    if (own !== '' || tidy(cells[days] ?? '') !== '') above = own;
    return above;
  });
}

/** The names of all rows with their days. */
const daysOfNames = (days: readonly string[], names: readonly string[]): ReadonlySet<string> =>
  new Set(
    names.flatMap((name, at) => {
      const day = findDay(days[at] ?? '');
      return day ? keysOf(day, name) : [];
    }),
  );

const NUMBER = /^#?\d{1,3}$/;

/** Whether names are 1, 2, 3 … and all seeds that name no product numbers of other rows. @returns a seed that shows it, or null */
function areNumbersOfRows(
  names: readonly string[],
  seeds: readonly number[],
  rows: readonly Row[],
): string | null {
  const told = names.filter((name) => name !== '');
  if (told.some((name) => !/^\d{1,3}$/.test(name)) || new Set(told).size < told.length) return null;
  const numbers = told.map(Number).toSorted((a, b) => a - b);
  if ((numbers.at(-1) ?? 0) - (numbers[0] ?? 0) >= told.length * 2) return null;
  const naming = rows.flatMap(({ cells }, at) =>
    seeds
      .map((seed) => tidy(cells[seed] ?? ''))
      .filter((text) => text !== '' && !PIECE_WITHIN.test(text))
      .map((text) => ({ text, own: names[at], of: text.split(/\s*[+;,&/]\s*/) })),
  );
  const known = new Set(told);
  const good = naming.filter(({ of, own }) =>
    of.every((one) => NUMBER.test(one) && one !== own && known.has(one.replace('#', ''))),
  );
  return good.length >= 2 && good.length >= naming.length * 0.8 ? (good[0]?.text ?? null) : null;
}
