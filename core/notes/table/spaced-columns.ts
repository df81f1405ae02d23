// Columns held apart by runs of spaces, as in a table typed by hand.
import { MOST_EMPTY, type Row } from './text-table';

/** Notes written by hand are never wider. */
const MOST_WIDE = 1000;

/** Cells by where they stand, blank ones too; null where no two spaces stand in every line. */
export function splitBySpaces(text: string, firstLine: number): { rows: Row[]; moreEmpty: number } | null {
  const lines = text.split('\n');
  const filled = lines.filter((line) => line.trim() !== '').length;
  const width = lines.reduce((most, line) => Math.max(most, line.trimEnd().length), 0);
  if (filled < 2 || width > MOST_WIDE) return null;
  const used = Array.from({ length: width }, () => false);
  for (const line of lines) for (let at = 0; at < line.length; at += 1) if (line[at] !== ' ') used[at] = true;
  const starts: number[] = [0];
  for (let at = 2; at < width; at += 1) if (!used[at - 1] && !used[at - 2] && used[at]) starts.push(at);
  if (starts.length < 3) return null;
  const rows: Row[] = [];
  let empty = 0;
  // What follows the last line end is no line.
  if (lines.at(-1)?.trim() === '') lines.pop();
  for (const [at, line] of lines.entries()) {
    if (line.trim() === '') empty += 1;
    if (line.trim() === '' && empty > MOST_EMPTY) continue;
    const cells = starts.map((start, index) => line.slice(start, starts[index + 1]).trim());
    rows.push({ line: firstLine + at, cells });
  }
  return { rows, moreEmpty: Math.max(0, empty - MOST_EMPTY) };
}
