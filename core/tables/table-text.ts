// A table as text that any spreadsheet program opens: comma-separated values by RFC 4180, where no cell can start a formula.
import Papa from 'papaparse';

/**
 * What a spreadsheet program may take for a formula or a command: an apostrophe is put before it, which such programs show as
 * plain text (OWASP, "CSV Injection"). Also where apostrophes stand before it already, so that taking one away gives back what was there.
 */
const LIKE_A_FORMULA = /^'*[\s\0]*[=+\-@＝＋－＠\t\r]/;

/** Text of a cell as it was before the apostrophe that keeps it from being a formula. */
export const withoutApostrophe = (cell: string): string =>
  cell.startsWith("'") && LIKE_A_FORMULA.test(cell) ? cell.slice(1) : cell;

export type TableCell = string | number | null;

/** Rows as text, each with its line end. Null is an empty cell. */
export const tableText = (rows: readonly (readonly TableCell[])[]): string =>
  `${Papa.unparse(rows as TableCell[][], { newline: '\r\n', escapeFormulae: LIKE_A_FORMULA, skipEmptyLines: false })}\r\n`;
