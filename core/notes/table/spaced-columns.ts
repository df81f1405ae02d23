// Columns held apart by runs of spaces, as in a table typed by hand.
import { listed, rowOf, type Table } from './table-rows';

/** Notes written by hand are never longer, nor wider. */
const MOST_LENGTH = 1_000_000;
const MOST_WIDE = 1000;

/** Cells by where they stand; null where no two spaces stand in every line. */
export function splitBySpaces(text: string, firstLine: number): Table | null {
  if (text.length > MOST_LENGTH) return null;
  const lines = text.split('\n');
  // What follows the last line end is no line.
  if (lines.at(-1)?.trim() === '') lines.pop();
  const width = lines.reduce((most, line) => Math.max(most, line.trimEnd().length), 0);
  if (lines.filter((line) => line.trim() !== '').length < 2 || width > MOST_WIDE) return null;
  const used = Array.from({ length: width }, () => false);
  for (const line of lines) for (let at = 0; at < line.length; at += 1) if (line[at] !== ' ') used[at] = true;
  const starts: number[] = [0];
  for (let at = 2; at < width; at += 1) if (!used[at - 1] && !used[at - 2] && used[at]) starts.push(at);
  if (starts.length < 3) return null;
  const rows = lines.map((line, at) =>
    rowOf(
      firstLine + at,
      starts.map((start, index) => line.slice(start, starts[index + 1]).trim()),
    ),
  );
  return { separator: ' ', ...listed(rows) };
}
