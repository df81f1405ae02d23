// Columns that tell one thing together: crosses below "Soft" and "Firm", crosses below "3 tbsp", figures beside their units.
import type { NoteColumn } from '../../contract';
import { parseHours, parseTemperature, tidy } from '../../quantities/quantities';
import { milkName, readSet, readYesNo } from '../cells/cell-words';
import { assumed, meaningInWords } from '../notes-says';
import type { Row } from '../table/table-rows';
import { isAmount, isNumber, share } from './column-cells';
import type { Headed } from './heading-lines';
import { headingMeaning, isUnit } from './headings';

/** What a heading can be a value of, and what the column of such values is called. */
const VALUES: readonly (readonly [NoteColumn, string, (heading: string) => boolean])[] = [
  ['set', 'Set', (heading) => readSet(bare(heading)).kind === 'word'],
  ['temperature', 'Temperature', (heading) => /\d\s*°/.test(heading) && parseTemperature(bare(heading)).ok],
  [
    'hours',
    'Hours',
    (heading) => /\d\s*(?:h|hrs?|hours?|std)\b/i.test(heading) && parseHours(bare(heading)).ok,
  ],
  [
    'amount',
    'Amount',
    (heading) => !isNumber(heading) && isAmount(bare(heading)) && /\d|[½¼¾⅓⅔]/.test(heading),
  ],
  ['milk', 'Milk', (heading) => milkName(bare(heading)) !== null],
];
const bare = (heading: string): string => tidy(heading).replace(/[?:.!]+$/, '');

const cellsOf = (rows: readonly Row[], index: number): string[] =>
  rows.map(({ cells }) => tidy(cells[index] ?? '')).filter(Boolean);
const isCross = (cell: string): boolean => readYesNo(cell) !== null;

/** Of crosses in columns whose headings are values of one thing: those values. */
function byCrosses(headed: Headed): Headed {
  const { names, rows } = headed;
  const values = names.flatMap((name, index) => {
    const cells = cellsOf(rows, index);
    const found = VALUES.find(([, , fits]) => cells.length > 0 && cells.every(isCross) && fits(name));
    return found ? [{ index, name, meaning: found[0], called: found[1] }] : [];
  });
  // Where a column tells the thing itself, crosses are something else.
  const told = new Set(
    names.flatMap((name, index) =>
      values.some((one) => one.index === index) ? [] : [headingMeaning(name)?.meaning],
    ),
  );
  const crossed = values.filter(({ meaning }) => !told.has(meaning));
  return crossed.reduce<Headed>((now, { meaning, called }, at) => {
    const together = crossed.filter((one) => one.meaning === meaning);
    if (crossed.findIndex((one) => one.meaning === meaning) !== at) return now;
    const says = ({ cells }: Row): string =>
      together
        .flatMap(({ index, name }) => {
          const yes = readYesNo(cells[index] ?? '');
          return tidy(cells[index] ?? '') === '' || yes === null
            ? []
            : yes
              ? bare(name)
              : `not ${bare(name)}`;
        })
        // Beside a cross a "no" says nothing more.
        .filter((one, _, all) => !one.startsWith('not ') || all.every((other) => other.startsWith('not ')))
        .join('; ');
    return merged(now, together.map(({ index }) => index), called, says, assumed.crosses(
      together.map(({ name }) => name), meaningInWords(meaning),
    )); // prettier-ignore
  }, headed);
}

/** The first of some columns with what they tell together, the others left blank and nameless. */
function merged(
  headed: Headed,
  columns: readonly number[],
  name: string,
  told: (row: Row) => string,
  sentence: string,
): Headed {
  const [first = 0, ...others] = columns;
  return {
    ...headed,
    names: headed.names.map((one, index) =>
      index === first ? name : others.includes(index) ? `Column ${index + 1}` : one,
    ),
    rows: headed.rows.map((row) => ({
      ...row,
      cells: row.cells.map((cell, index) =>
        index === first ? told(row) : others.includes(index) ? '' : cell,
      ),
    })),
    assumptions: [...headed.assumptions, { row: null, sentence }],
  };
}

/** "Qty | Unit": bare figures with a column of units beside them. */
function byUnits(headed: Headed): Headed {
  return headed.names.reduce<Headed>((now, name, index) => {
    const [figures, units] = [cellsOf(now.rows, index), cellsOf(now.rows, index + 1)];
    const beside = now.names[index + 1];
    if (beside === undefined || units.length < 2 || !units.every(isUnit) || share(figures, isNumber) < 0.6)
      return now;
    const told = ({ cells }: Row): string => {
      const [figure = '', unit = ''] = [cells[index], cells[index + 1]].map((cell) => tidy(cell ?? ''));
      return isNumber(figure) ? `${figure} ${unit}`.trim() : [figure, unit].filter(Boolean).join(' ');
    };
    return merged(now, [index, index + 1], name, told, assumed.unitsBeside(beside, name));
  }, headed);
}

/** The columns of a table, those together that tell one thing. */
export const mergeColumns = (headed: Headed): Headed =>
  headed.headings === null ? headed : byUnits(byCrosses(headed));
