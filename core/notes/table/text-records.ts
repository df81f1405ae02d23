// Text of a spreadsheet → its records: a line each, or several where a quoted cell runs on over them. Quotes are made such
// as RFC 4180 has them, so that a parser can be trusted with the rest. Each character is looked at a fixed number of times.

export interface TextRecord {
  /** Line of the file it starts on. */
  readonly line: number;
  /** Without its line end; each quoted cell is closed, and quotes within it stand twice. */
  readonly text: string;
}

const quoted = (cell: string): string => `"${cell.replaceAll('"', '""')}"`;

/** A quoted cell: where it ends, and its text. */
interface Closed {
  readonly end: number;
  readonly cell: string;
}

/** Reads the records of a text, one after the other. */
export class TextRecords {
  #at = 0;
  #line: number;

  /** @param width cells of most rows, where that is known */
  constructor(
    readonly text: string,
    readonly separator: string,
    firstLine: number,
    readonly width: number | null,
  ) {
    this.#line = firstLine;
  }

  /** The next record, or null at the end. */
  next(): TextRecord | null {
    if (this.#at >= this.text.length) return null;
    const start = this.#at;
    const line = this.#line;
    const lineEnd = this.#breakFrom(start);
    const raw = this.text.slice(start, lineEnd);
    this.#at = lineEnd + 1;
    this.#line += 1;
    if (!raw.includes('"')) return { line, text: raw };
    const parts = raw.split(this.separator);
    // Quotes alone in cells of a row as wide as the others are ditto marks.
    if (parts.length === this.width && parts.some((part) => part.trim() === '"'))
      return {
        line,
        text: parts.map((part) => (part.includes('"') ? quoted(part) : part)).join(this.separator),
      };
    return { line, text: this.#cellsFrom(start) };
  }

  #breakFrom(place: number): number {
    const found = this.text.indexOf('\n', place);
    return found < 0 ? this.text.length : found;
  }

  /** The cells of the record that starts at a place, its quotes made legal, and on to behind it. */
  #cellsFrom(start: number): string {
    const { text, separator } = this;
    const cells: string[] = [];
    let lineEnd = this.#breakFrom(start);
    for (let at = start; ; at += 1) {
      let open = at;
      while (text[open] === ' ') open += 1;
      const closed =
        text[open] === '"' ? (this.#closed(open, lineEnd) ?? this.#closedWithStray(open, lineEnd)) : null;
      if (closed) {
        cells.push(quoted(closed.cell));
        at = closed.end;
        if (at > lineEnd) {
          this.#line += closed.cell.split('\n').length - 1;
          lineEnd = this.#breakFrom(at);
        }
      } else {
        const next = text.slice(at, lineEnd).indexOf(separator);
        const end = next < 0 ? lineEnd : at + next;
        const cell = text.slice(at, end);
        cells.push(cell.includes('"') ? quoted(cell) : cell);
        at = end;
      }
      if (at >= lineEnd) break;
    }
    this.#at = lineEnd + 1;
    return cells.join(separator);
  }

  /** Where the cell quoted from a place ends; null where its quote is a stray one: it never closes, words follow, or it takes in rows. */
  #closed(open: number, lineEnd: number): Closed | null {
    const { text } = this;
    let close = text.indexOf('"', open + 1);
    while (close >= 0 && text[close + 1] === '"') close = text.indexOf('"', close + 2);
    const end = close < 0 ? null : this.#endAfter(close);
    if (end === null || (close > lineEnd && this.#takesInRows(open, close, lineEnd))) return null;
    return { end, cell: text.slice(open + 1, close).replaceAll('""', '"') };
  }

  /** The place behind a closing quote and spaces, where a cell ends there. */
  #endAfter(close: number): number | null {
    const { text, separator } = this;
    let end = close + 1;
    while (text[end] === ' ') end += 1;
    return end >= text.length || text[end] === '\n' || text[end] === separator ? end : null;
  }

  /** "He said "wow"": quotes that are not doubled, in a cell that closes on its line before another one opens. */
  #closedWithStray(open: number, lineEnd: number): Closed | null {
    const { text, separator } = this;
    for (
      let close = text.indexOf('"', open + 1);
      close >= 0 && close < lineEnd;
      close = text.indexOf('"', close + 1)
    ) {
      const end = this.#endAfter(close);
      if (end !== null) return { end, cell: text.slice(open + 1, close) };
      if (
        text
          .slice(open + 1, close)
          .trimEnd()
          .endsWith(separator)
      )
        return null;
    }
    return null;
  }

  /** Whether all lines from one quote to another would be rows by themselves, as wide as the others. */
  #takesInRows(open: number, close: number, lineEnd: number): boolean {
    const { text, width, separator } = this;
    let from = lineEnd;
    const parts = (start: number, end: number): number => text.slice(start, end).split(separator).length;
    const wanted = parts(text.lastIndexOf('\n', open) + 1, from);
    if (wanted < 3 || (width !== null && wanted !== width)) return false;
    for (; from >= 0 && from < close; from = text.indexOf('\n', from + 1))
      if (parts(from + 1, this.#breakFrom(from + 1)) !== wanted) return false;
    return true;
  }
}
