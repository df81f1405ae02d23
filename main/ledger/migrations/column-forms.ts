// Columns in the forms they take in every table. Released text: tests/ledger/migrations.test.ts holds its hash.

const checked = (column: string, type: string, check: string, more: string): string =>
  `${column} ${type} CHECK (${check})${more}`;

/** Appended to a column that is always filled. */
export const ALWAYS = ' NOT NULL';

/** Text of at most so many characters; something of it where it is there at all. */
export const text = (column: string, most: number, more = ''): string =>
  checked(column, 'TEXT', `length(${column}) BETWEEN 1 AND ${most}`, more);
export const line = (column: string, more = ''): string => text(column, 200, more);
export const name = (column: string): string => line(column, ALWAYS);

/** A civil day. `date` with a modifier, since by itself it takes 30 February in some versions. */
export const day = (column: string, more = ''): string =>
  checked(column, 'TEXT', `${column} IS date(${column}, '+0 days')`, more);

/** A moment: seconds since 1970 in UTC and the offset in minutes that it was given with, both or none. */
export const moment = (column: string, more = ''): string[] => [
  `${column} INTEGER${more}`,
  checked(
    `${column}_off`,
    'INTEGER',
    `${column}_off BETWEEN -1080 AND 1080`,
    ` CHECK ((${column} IS NULL) = (${column}_off IS NULL))${more}`,
  ),
];

const typed = (column: string, more = ''): string =>
  checked(`${column}_t`, 'TEXT', `length(${column}_t) <= 200`, more);
const bothOrNone = (column: string): string => ` CHECK ((${column}_v IS NULL) = (${column}_u IS NULL))`;

/** A value, its unit and what was typed. */
export const amount = (column: string): string[] => [
  checked(`${column}_v`, 'REAL', `${column}_v >= 0`, ''),
  checked(`${column}_u`, 'TEXT', `${column}_u IN ('mL', 'g', 'pieces', 'CFU')`, ''),
  typed(column, bothOrNone(column)),
];
export const temperature = (column: string): string[] => [
  checked(`${column}_v`, 'REAL', `${column}_v BETWEEN -90 AND 150`, ''),
  typed(column),
];
/** Minor units of a currency. */
export const price = (column: string): string[] => [
  checked(`${column}_v`, 'INTEGER', `${column}_v >= 0`, ''),
  checked(`${column}_u`, 'TEXT', `${column}_u GLOB '[A-Z][A-Z][A-Z]'`, ''),
  typed(column, bothOrNone(column)),
];

export const oneOf = (column: string, words: readonly string[], more = ''): string =>
  checked(column, 'TEXT', `${column} IN (${words.map((word) => `'${word}'`).join(', ')})`, more);
export const flag = (column: string, more = ''): string =>
  checked(column, 'INTEGER', `${column} IN (0, 1)`, more);
export const above = (column: string, least: number, more = ''): string =>
  checked(column, 'REAL', `${column} >= ${least}`, more);
export const whole = (column: string, least: number, more = ''): string =>
  checked(column, 'INTEGER', `${column} >= ${least}`, more);
/** A key of another table. NO ACTION: an undo may take away in any order what it takes away together. */
export const key = (column: string, table: string, more = ''): string =>
  `${column} INTEGER REFERENCES ${table} (key)${more}`;
export const json = (column: string, type: 'object' | 'array', more = ''): string =>
  checked(column, 'TEXT', `json_valid(${column}) AND json_type(${column}) = '${type}'`, more);
/** Exactly one of these columns is filled. */
export const exactlyOne = (columns: readonly string[]): string =>
  `CONSTRAINT exactly_one CHECK (${columns.map((column) => `(${column} IS NOT NULL)`).join(' + ')} = 1)`;
