// Bare numbers of an amount column whose heading tells no unit: which unit they are in, for the whole column at once.
import { findAmounts, plain, readNumber, tidy } from '../../quantities/quantities';
import type { Column, Layout } from '../layout/column-meanings';
import { hasTrait } from '../meanings';
import type { NotesInput } from '../notes-plan';
import type { FileSays, Question } from '../said';
import { assumed, question } from '../notes-says';
import type { Row } from '../table/table-rows';
import type { Conventions } from './file-habits';

/** A bare number, for amounts whose unit the column tells. */
export const bareNumber = (text: string): number | null => {
  const clean = tidy(text);
  const number = readNumber(clean, undefined, false);
  return number && number.length === clean.length ? number.value : null;
};

type Habits = Omit<Conventions, 'bareUnits'>;

/** Above it bare numbers are no spoons or cups, and no seed. */
const MOST_SEED_ML = 400;
/** Units that a column without one may have, by what it tells: every unit of its kind that amounts are read in. */
const unitsFor = ({ meaning }: Column): readonly string[] =>
  meaning === 'milk' || meaning === 'milk amount' || meaning === 'volume'
    ? ['mL', 'L', 'dL', 'cL', 'cup', 'pint', 'quart', 'gallon', 'fl oz', 'g', 'kg']
    : ['mL', 'tbsp', 'tsp', 'cup', 'g', 'cL', 'dL', 'L', 'fl oz', 'oz'];
/** Answer: small figures in the spoons of the column, large ones in mL. */
const BY_SIZE = 'by size';
const OR_ML = ' or mL';

/** A bare number of a column, and the line it stands on. */
interface Bare {
  readonly line: number;
  readonly number: number;
  readonly text: string;
}

const shown = ({ text, line }: Bare): string => `“${text}” (row ${line})`;

/** The one unit that the other cells of a column are in, as written there; null where they are in several or in none. */
function unitOfOthers(cells: readonly string[], { spoons, decimal }: Habits): string | null {
  const words = new Set(
    cells
      .flatMap((cell) => findAmounts(cell, { spoons, decimal }))
      .filter(({ amount }) => amount.unit === 'mL' || amount.unit === 'g')
      .map(({ text }) => /[\p{L}].*$/u.exec(text)?.[0].trim().replace(/\.$/, '') ?? ''),
  );
  const [first] = words;
  const sizes = new Set([...words].map((word) => sizeOf(word, spoons)));
  return first !== undefined && sizes.size === 1 ? first : null;
}

/** How much one of a unit is, in mL or g. */
const sizeOf = (unit: string, spoons: Habits['spoons']): number =>
  findAmounts(`1 ${unit}`, { spoons }, true)[0]?.amount.value ?? 0;

/** Whether a row names nothing but products: no figure, and no name that a jar of the sheet goes by. */
function onlySources(row: Row, layout: Layout, jars: ReadonlySet<string>): boolean {
  const cells = layout.columns
    .filter(({ meaning }) => meaning === 'seed')
    .map(({ index }) => row.cells[index] ?? '');
  return cells.every((cell) => !/\d/.test(cell) && !jars.has(plain(cell)) && plain(cell).length !== 1);
}

/** Names that the jars of a sheet go by, plain. */
const jarNames = (layout: Layout): ReadonlySet<string> =>
  new Set(
    layout.columns
      .filter(({ meaning }) => meaning === 'jar' || meaning === 'label')
      .flatMap(({ index }) => layout.rows.map((row) => plain(row.cells[index] ?? '')))
      .filter((name) => name !== ''),
  );

/** The unit that the figures of a column leave no doubt of, or the question that settles it. */
function unitOf(
  column: Column,
  layout: Layout,
  conventions: Habits,
  jars: ReadonlySet<string>,
): { unit: string } | { question: Question; bySize?: string } | null {
  const seeds = column.meaning === 'amount';
  const text = (row: Row): string => row.cells[column.index] ?? '';
  // Beside a product bare numbers are pieces, whatever the column's others are.
  const bare = layout.rows.flatMap((row): Bare[] => {
    layout.look?.();
    const number = bareNumber(text(row));
    return number === null || (seeds && onlySources(row, layout, jars))
      ? []
      : [{ line: row.line, number, text: tidy(text(row)) }];
  });
  const [first] = bare;
  if (first === undefined)
    return layout.rows.some((row) => bareNumber(text(row)) !== null) ? { unit: 'pieces' } : null;
  const unit = unitOfOthers(layout.rows.map(text), conventions);
  const large = bare.find(
    ({ number }) => unit !== null && number * sizeOf(unit, conventions.spoons) > MOST_SEED_ML,
  );
  const small = bare.find(
    ({ number }) => unit !== null && number * sizeOf(unit, conventions.spoons) <= MOST_SEED_ML,
  );
  if (seeds && unit !== null && large && small && sizeOf(unit, conventions.spoons) > 1)
    return {
      question: askUnit(column, question.unitBySize(column.heading, shown(small), shown(large), unit), unit),
      bySize: `${unit}${OR_ML}`,
    };
  if (unit !== null && !(seeds && large)) return { unit };
  if (column.meaning !== 'addition amount' && bare.every(({ number }) => number >= 100))
    return { unit: 'mL' };
  return { question: askUnit(column, question.bareUnit(column.heading, first.text), null) };
}

const askUnit = (column: Column, sentence: string, unit: string | null): Question => ({
  id: `unit:${column.heading}`,
  row: null,
  sentence,
  choices: [
    ...(unit === null ? [] : [{ value: BY_SIZE, label: `Small figures in ${unit}, large ones in mL` }]),
    ...unitsFor(column).map((value) => ({ value, label: value })),
  ],
  blocks: true,
});

/** The unit of bare numbers by heading: the unit of the column's other cells, else a question that blocks. */
export function readBareUnits(
  layout: Layout,
  conventions: Habits,
  answers: NotesInput['answers'],
  says: FileSays,
): Map<string, string> {
  const units = new Map<string, string>();
  const jars = jarNames(layout);
  for (const column of layout.columns) {
    if (!hasTrait(column.meaning, 'unit') || column.unit !== null) continue;
    const found = unitOf(column, layout, conventions, jars);
    const answer = answers[`unit:${column.heading}`]?.trim();
    if (found === null) continue;
    if (answer)
      units.set(column.heading, answer === BY_SIZE && 'bySize' in found ? (found.bySize ?? answer) : answer);
    else if ('question' in found) says.questions.push(found.question);
    else {
      units.set(column.heading, found.unit);
      const example = layout.rows
        .map(({ cells }) => cells[column.index] ?? '')
        .find((text) => bareNumber(text) !== null);
      says.said.push({
        row: null,
        sentence: assumed.unit(`${column.heading}: ${tidy(example ?? '')}`, found.unit),
      });
    }
  }
  return units;
}

/** The unit of one bare number under a heading; undefined where none was found. */
export function bareUnitOf(
  text: string,
  heading: string,
  { bareUnits, spoons }: Conventions,
): string | undefined {
  const unit = bareUnits.get(heading);
  if (!unit?.endsWith(OR_ML)) return unit;
  const small = unit.slice(0, -OR_ML.length);
  return (bareNumber(text) ?? 0) * sizeOf(small, spoons) > MOST_SEED_ML ? 'mL' : small;
}
