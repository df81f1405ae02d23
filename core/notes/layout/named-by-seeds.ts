// Which column names the jars, told by the seeds: what stands there in one row seeds the jar of another.
import { plain, tidy } from '../../quantities/quantities';
import type { Row } from '../table/text-table';

const LONGEST_NAME = 20;

/**
 * Whether a column holds names that seeds go by: nearly all short and different, and one in half of the seeds that name
 * no product. @returns a seed that shows it, or null
 * @param seeds columns that say what seeded each jar
 */
export function namedBySeeds(index: number, seeds: readonly number[], rows: readonly Row[]): string | null {
  const names = rows.map(({ cells }) => plain(cells[index] ?? ''));
  const told = names.filter((name) => name !== '');
  const known = new Set(told);
  if (told.length < 3 || known.size < told.length * 0.9 || told.some((name) => name.length > LONGEST_NAME))
    return null;
  // A figure alone is an amount, or hours, as well as a name.
  if (told.filter((name) => !/^[\d.,]+$/.test(name)).length < told.length * 0.9) return null;
  const seeding = rows.flatMap((row, at) =>
    seeds
      .map((seed) => ({ text: tidy(row.cells[seed] ?? ''), own: names[at] }))
      .filter(({ text }) => text !== ''),
  );
  const naming = seeding.filter(({ text, own }) =>
    plain(text)
      .split(/\s*[+;,&/]\s*|\s(?:and|und|et|y|e|og|och|en|i)\s/)
      .some((name) => name !== own && known.has(name)),
  );
  return naming.length >= Math.max(2, seeding.length / 2) ? (naming[0]?.text ?? null) : null;
}
