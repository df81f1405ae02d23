// Text of a spreadsheet → cells, each row with the line of the file it starts on (RFC 4180, and what is seen besides:
// other separators, a "sep=" line, stray quotes, any line ends).

/** " ": columns held apart by runs of spaces, looked for where no other fits. */
export type Separator = ',' | ';' | '\t' | '|' | ' ';
export const SEPARATORS: readonly Separator[] = [',', ';', '\t', '|'];
/** Columns of spaces are looked for in files up to this length, written by hand. */
const MOST_ALIGNED = 1_000_000;
const MOST_WIDE = 1000;

export interface Row {
  /** Line of the file the row starts on, the first being 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

export interface Table {
  readonly separator: Separator;
  readonly rows: readonly Row[];
}

/** Splits with one separator; null where a quote opens and never closes. */
function split(text: string, separator: string, firstLine: number, quotes: boolean): Row[] | null {
  const rows: Row[] = [];
  let cells: string[] = [];
  let cell = '';
  let line = firstLine;
  let startedOn = firstLine;
  let quoted = false;
  let closed = false;
  for (let at = 0; at < text.length; at += 1) {
    const character = text[at] ?? '';
    if (quoted) {
      if (character === '"') {
        if (text[at + 1] === '"') {
          cell += '"';
          at += 1;
        } else {
          quoted = false;
          closed = true;
        }
      } else {
        if (character === '\n') line += 1;
        cell += character;
      }
    } else if (character === '"' && quotes && !closed && cell.trim() === '') {
      quoted = true;
      cell = '';
    } else if (character === separator) {
      cells.push(cell);
      cell = '';
      closed = false;
    } else if (character === '\n') {
      cells.push(cell);
      rows.push({ line: startedOn, cells });
      cells = [];
      cell = '';
      closed = false;
      line += 1;
      startedOn = line;
    } else if (!(closed && character === ' ')) {
      cell += character;
    }
  }
  if (quoted) return null;
  if (cell !== '' || cells.length > 0) rows.push({ line: startedOn, cells: [...cells, cell] });
  return rows;
}

/** Columns held apart by at least two spaces that stand in every line: cells by where they stand, blank ones too. */
function splitBySpaces(text: string, firstLine: number): Row[] | null {
  const lines = text.split('\n');
  const width = lines.reduce((most, line) => Math.max(most, line.length), 0);
  // Notes written by hand are never this wide.
  if (width > MOST_WIDE) return null;
  const gap = Array.from({ length: width }, (_, at) => lines.every((line) => (line[at] ?? ' ') === ' '));
  const starts: number[] = [0];
  for (let at = 2; at < width; at += 1) if (gap[at - 1] && gap[at - 2] && !gap[at]) starts.push(at);
  if (starts.length < 3) return null;
  return lines.flatMap((line, at) =>
    line.trim() === ''
      ? []
      : [
          {
            line: firstLine + at,
            cells: starts.map((start, index) => line.slice(start, starts[index + 1]).trim()),
          },
        ],
  );
}

/** How well rows agree on a number of columns: columns of the commonest width, times the rows that have it. */
function agreement(rows: readonly Row[]): number {
  const widths = new Map<number, number>();
  for (const row of rows.slice(0, 200)) {
    if (row.cells.length > 1) widths.set(row.cells.length, (widths.get(row.cells.length) ?? 0) + 1);
  }
  let best = 0;
  for (const [width, count] of widths) best = Math.max(best, Math.min(width, 6) * count);
  return best;
}

/**
 * Reads a table from text. The separator is what a "sep=" line says, else the one that splits most rows into the same
 * number of columns.
 */
export function readTable(text: string): Table {
  let body = text
    .replace(/^\uFEFF/, '')
    .replace(/\r\n?/g, '\n')
    .replace(/[\u2028\u2029]/g, ' ');
  let firstLine = 1;
  const told = /^"?sep=(.)"?[;,\t]*\n/i.exec(body);
  if (told) {
    body = body.slice(told[0].length);
    firstLine = 2;
  }
  const named = SEPARATORS.find((separator) => separator === told?.[1]);
  const candidates = named ? [named] : SEPARATORS;
  let best: Table | null = null;
  let bestScore = -1;
  for (const separator of candidates) {
    const rows = split(body, separator, firstLine, true) ?? split(body, separator, firstLine, false) ?? [];
    const score = agreement(rows);
    if (score > bestScore) {
      best = { separator, rows };
      bestScore = score;
    }
  }
  const lines = body.split('\n').filter((line) => line.trim() !== '').length;
  // Hardly a line has a separator in it: perhaps spaces hold the columns apart.
  const parted = best?.rows.filter(({ cells }) => cells.length > 1).length ?? 0;
  const spaced =
    !told && lines >= 2 && parted < lines / 2 && body.length < MOST_ALIGNED
      ? splitBySpaces(body, firstLine)
      : null;
  return spaced ? { separator: ' ', rows: spaced } : (best ?? { separator: ',', rows: [] });
}
