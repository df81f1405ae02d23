// The text of an export cut into rows of cells, in every way that such files are cut. The layout chooses among them.
import type { Row } from '../notes/table/table-rows';
import { readTable, SEPARATORS } from '../notes/table/text-table';

/** Cells of a line held apart by blanks. */
const blanks = (text: string): Row[] =>
  text.split(/\r\n|\r|\n/).map((line, at) => ({ line: at + 1, cells: line.trim().split(/\s+/) }));

/** The last figure of a line, and all that stands before it: "Feb 10 2026 7:40 PM 84.1". */
const tails = (text: string): Row[] =>
  text.split(/\r\n|\r|\n/).map((line, at) => {
    const parts = /^(.*\S)\s+(?:\p{L}+\s?[=:]\s?)?([-+]?\d+(?:[.,]\d+)?\s*°?\s*[CF]?)$/iu.exec(line.trim());
    return { line: at + 1, cells: parts ? [parts[1] ?? '', parts[2] ?? ''] : [line.trim()] };
  });

/** A name begins where no letter stands before it, and is bounded: else each letter of a long word is tried up to its end. */
const PAIR = /"?(?<![\p{L}_])([\p{L}_][\p{L}\d_ .]{0,99}?)"?\s?[:=]\s?("[^"]*"|[^\s,;{}"]+)/gu;
/** Lines that name each value, '{"time": "…", "temp": 37.5}' or "time=… temp=37.5": the names of the first head them all. */
function pairs(text: string): Row[] {
  const lines = text.replaceAll(/\}\s*,\s*\{/g, '}\n{').split(/\r\n|\r|\n/);
  const rows = lines.map((line, at) => ({ line: at + 1, told: [...line.matchAll(PAIR)] }));
  const named = rows.filter(({ told }) => told.length >= 2);
  if (named.length < 0.8 * lines.filter((line) => line.trim() !== '').length) return [];
  const names = named[0]?.told.map(([, name]) => (name ?? '').trim()) ?? [];
  const cells = named.map(({ line, told }) => {
    const values = new Map(told.map(([, name, value]) => [(name ?? '').trim(), (value ?? '').replaceAll('"', '')]));
    return { line, cells: names.map((name) => values.get(name) ?? '') };
  });
  return [{ line: 0, cells: names }, ...cells];
} // prettier-ignore

/** The rows of a text by each way of cutting it. */
export const rowsBy = (text: string): (readonly Row[])[] => [
  ...SEPARATORS.map((separator) => readTable(text, undefined, separator).rows),
  blanks(text),
  tails(text),
  pairs(text),
];
