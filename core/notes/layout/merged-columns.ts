// Columns that tell one thing together: crosses below "Soft" and "Firm", crosses below "3 tbsp", figures beside their units.
import type { NoteColumn } from '../../contract';
import { parseHours, parseTemperature, plain, tidy } from '../../quantities/quantities';
import { milkName, readYesNo } from '../cells/cell-words';
import { readSet } from '../../text/look-words';
import { meaningInWords } from '../meanings';
import { assumed } from '../notes-says';
import type { Said } from '../said';
import type { Row, Table } from '../table/table-rows';
import { isAmount, isNumber, share } from './column-cells';
import { monthAlone, type Headed } from './heading-lines';
import { headingMeaning, isUnit } from './headings';

/** Called for each row where all are gone through; may throw to stop. */
type Look = Table['look'];

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

/** Rows that a column is known by; what is otherwise further down is kept as it stands there. */
const SAMPLE = 400;
const cellsOf = (rows: readonly Row[], index: number): string[] =>
  rows
    .slice(0, SAMPLE)
    .map(({ cells }) => tidy(cells[index] ?? ''))
    .filter(Boolean);
const isCross = (cell: string): boolean => readYesNo(cell) !== null;

/** Of crosses in columns whose headings are values of one thing: those values. */
function byCrosses(headed: Headed, look: Look): Headed {
  const { names, rows } = headed;
  const values = names.flatMap((name, index) => {
    look?.();
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
          const cell = tidy(cells[index] ?? '');
          if (cell === '') return [];
          return yes === null ? `${bare(name)}: ${cell}` : yes ? bare(name) : `not ${bare(name)}`;
        })
        // Beside a cross a "no" says nothing more.
        .filter((one, _, all) => !one.startsWith('not ') || all.every((other) => other.startsWith('not ')))
        .join('; ');
    return merged(now, together.map(({ index }) => index), called, says, assumed.crosses(
      together.map(({ name }) => name), meaningInWords(meaning),
    ), look); // prettier-ignore
  }, headed);
}

/** The first of some columns with what they tell together, the others left blank and nameless. */
function merged(
  headed: Headed,
  columns: readonly number[],
  name: string,
  told: (row: Row) => string,
  sentence: string,
  look: Look,
): Headed {
  const [first = 0, ...others] = columns;
  return {
    ...headed,
    names: headed.names.map((one, index) =>
      index === first ? name : others.includes(index) ? `Column ${index + 1}` : one,
    ),
    rows: headed.rows.map((row) => {
      look?.();
      const cells = row.cells.map((cell, index) =>
        index === first ? told(row) : others.includes(index) ? '' : cell,
      );
      return { ...row, cells };
    }),
    assumptions: [...headed.assumptions, { row: null, sentence }],
  };
}

/** "Qty | Unit": bare figures with a column of units beside them. */
function byUnits(headed: Headed, look: Look): Headed {
  return headed.names.reduce<Headed>((now, name, index) => {
    look?.();
    const [figures, units] = [cellsOf(now.rows, index), cellsOf(now.rows, index + 1)];
    const beside = now.names[index + 1];
    if (beside === undefined || units.length < 2 || !units.every(isUnit) || share(figures, isNumber) < 0.6)
      return now;
    const told = ({ cells }: Row): string => {
      const [figure = '', unit = ''] = [cells[index], cells[index + 1]].map((cell) => tidy(cell ?? ''));
      return isNumber(figure) ? `${figure} ${unit}`.trim() : [figure, unit].filter(Boolean).join(' ');
    };
    return merged(now, [index, index + 1], name, told, assumed.unitsBeside(beside, name), look);
  }, headed);
}

const PARTS_OF_DAY: readonly RegExp[] = [
  /^(?:year|yr|jahr|annee|ano|anno|jaar|rok)$/,
  /^(?:month|mon|monat|mois|mes|mese|maand|manad|maned|miesiac)$/,
  /^(?:day|day of month|tag|jour|dia|giorno|dag|dzien)$/,
];

/** "Year | Month | Day", or the last two: a day in columns of its own. */
function byPartsOfDay(headed: Headed, look: Look): Headed {
  const [year = -1, month = -1, day = -1] = PARTS_OF_DAY.map((part) =>
    headed.names.findIndex((name) => part.test(plain(name))),
  );
  const whole = (cell: string): boolean => /^\d{1,2}\.?$/.test(cell);
  if (month < 0 || day < 0 || share(cellsOf(headed.rows, day), whole) < 0.8) return headed;
  // A year or a month written once holds for the days below it.
  let above = ['', ''];
  const told = ({ cells }: Row): string => {
    const [ownYear = '', ownMonth = '', d = ''] = [year, month, day].map((index) =>
      tidy(cells[index] ?? '').replace(/\.$/, ''),
    );
    const [y = '', m = ''] =
      d === '' ? [ownYear, ownMonth] : [ownYear || (above[0] ?? ''), ownMonth || (above[1] ?? '')];
    above = [ownYear || (above[0] ?? ''), ownMonth || (above[1] ?? '')];
    if (!whole(d) || m === '') return [y, m, d].filter(Boolean).join(' ');
    if (!whole(m)) return `${d} ${m} ${y}`.trim();
    const two = (part: string): string => part.padStart(2, '0');
    return /^\d{4}$/.test(y)
      ? `${y}-${two(m)}-${two(d)}`
      : `${d} ${MONTHS_SHORT[Number(m) - 1] ?? m} ${y}`.trim();
  };
  const columns = [day, month, ...(year < 0 ? [] : [year])];
  const heading = headed.names[day] ?? '';
  return merged(
    headed,
    columns,
    heading,
    told,
    assumed.partsOfDay(columns.map((index) => headed.names[index] ?? '')),
    look,
  );
}

const MONTHS_SHORT = 'Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec'.split(' ');

const BARE_DAY = /^(?:[1-9]|[12]\d|3[01])(?:\.|st|nd|rd|th)?$/;

/** "May 2025" on a line of its own, above figures from 1 to 31: days of that month. */
function byMonthLines(headed: Headed, look: Look): Headed {
  const first = headed.rows.slice(0, SAMPLE).findIndex((row) => {
    look?.();
    return monthAlone(row) !== '';
  });
  if (first < 0) return headed;
  const below = headed.rows.slice(first + 1, first + SAMPLE).filter((row) => monthAlone(row) === '');
  const column = headed.names.findIndex((name, index) => {
    const cells = cellsOf(below, index);
    const dayish = headed.headings === null ? index === 0 : headingMeaning(name)?.meaning === 'date';
    return dayish && cells.length > 0 && cells.every((cell) => BARE_DAY.test(cell));
  });
  if (column < 0) return headed;
  let month = '';
  const said: Said[] = [];
  const rows = headed.rows.flatMap((row): Row[] => {
    look?.();
    const told = monthAlone(row);
    if (told !== '') {
      month = told;
      said.push({ row: row.line, sentence: assumed.monthBelow(told) });
      return [];
    }
    const day = tidy(row.cells[column] ?? '');
    const dated = `${day.replace(/\D+$/, '')} ${month}`;
    return [
      month === '' || !BARE_DAY.test(day)
        ? row
        : { ...row, cells: row.cells.map((cell, index) => (index === column ? dated : cell)) },
    ];
  });
  return { ...headed, rows, assumptions: [...headed.assumptions, ...said] };
}

/** The columns of a table, those together that tell one thing. */
export function mergeColumns(headed: Headed, look: Look): Headed {
  const dated = byMonthLines(headed, look);
  return headed.headings === null ? dated : byUnits(byCrosses(byPartsOfDay(dated, look), look), look);
}
