// Labels drawn on pages, in mm: words broken into lines that fit, and a square code beside them by which the program finds the
// jar. Sizes are reckoned from wide letters, so that words keep inside their label whatever font a printer has.
import makeCode from 'qrcode-generator';
import { escaped } from '../markup';
import type { LabelLine } from '../says/label-says';
import type { LabelLayout } from '../shapes/label-calls';

export interface Label {
  readonly lines: readonly LabelLine[];
  readonly code: string;
}

/** Room around the words of a label (mm). */
const EDGE = 2;
/** Text is no smaller than this, and no larger (mm): 1.9 mm are 5.4 points. */
const SMALLEST = 1.9;
const LARGEST = 4.2;
const STEP = 0.1;
/** Width of a letter and height of a line, in sizes: of a wide plain font. */
const LETTER = 0.56;
const BOLD_LETTER = 0.62;
const LINE = 1.22;
/** A code is no smaller than this (mm), so that a telephone can read it: 0.4 mm for each of its dots. */
const LEAST_CODE = 11;

/** A text in lines of at most so many letters; a word that is longer is cut. */
function broken(text: string, most: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).flatMap((one) => one.match(new RegExp(`.{1,${most}}`, 'gu')) ?? [])) {
    if (line === '') line = word;
    else if (line.length + 1 + word.length <= most) line += ` ${word}`;
    else {
      lines.push(line);
      line = word;
    }
  }
  return line === '' ? lines : [...lines, line];
}

interface Drawn {
  readonly text: string;
  readonly size: number;
  readonly bold: boolean;
}

/** Lines at a text size, and how high they are together. */
function set(lines: readonly LabelLine[], width: number, size: number): { drawn: Drawn[]; height: number } {
  const drawn = lines.flatMap(({ text, size: own, bold }) => {
    const most = Math.max(1, Math.floor(width / (size * own * (bold ? BOLD_LETTER : LETTER))));
    return broken(text, most).map((one) => ({ text: one, size: size * own, bold }));
  });
  return { drawn, height: drawn.reduce((sum, one) => sum + one.size * LINE, 0) };
}

/** The largest text with which a label's words fit; null where they don't at all. */
function fitted({ lines }: Label, width: number, height: number): Drawn[] | null {
  for (let size = LARGEST; size >= SMALLEST - 1e-9; size -= STEP) {
    const { drawn, height: needed } = set(lines, width, size);
    if (needed <= height) return drawn;
  }
  return null;
}

/** A square code (ISO/IEC 18004) as one path, with its quiet zone of four dots, in a square of that size. */
function codePath(code: string, x: number, y: number, size: number): string {
  const made = makeCode(0, 'M');
  made.addData(code, 'Alphanumeric');
  made.make();
  const count = made.getModuleCount();
  const dot = size / (count + 8);
  const at = (index: number): string => ((index + 4) * dot).toFixed(3);
  let path = '';
  for (let row = 0; row < count; row += 1)
    for (let column = 0; column < count; column += 1)
      if (made.isDark(row, column)) path += `M${at(column)} ${at(row)}h${dot.toFixed(3)}v${dot.toFixed(3)}h-${dot.toFixed(3)}z`; // prettier-ignore
  return `<path transform="translate(${x.toFixed(3)} ${y.toFixed(3)})" d="${path}"/>`;
}

function drawnLabel(label: Label, { width, height }: LabelLayout['label'], x: number, y: number): string | null {
  const code = Math.max(LEAST_CODE, Math.min(18, height / 3));
  const words = fitted(label, width - 2 * EDGE - code - 1, height - 2 * EDGE);
  if (words === null || code + 4 > height) return null;
  const codeX = x + width - EDGE - code;
  let below = y + EDGE;
  const texts = words.map(({ text, size, bold }) => {
    below += size * LINE;
    return `<text x="${(x + EDGE).toFixed(2)}" y="${(below - size * 0.25).toFixed(2)}" font-size="${size.toFixed(2)}"${bold ? ' font-weight="700"' : ''}>${escaped(text)}</text>`;
  });
  const typed = `<text x="${(codeX + code / 2).toFixed(2)}" y="${(y + EDGE + code + 2.6).toFixed(2)}" font-size="2.4" text-anchor="middle">${label.code}</text>`;
  return `<g>${texts.join('')}${codePath(label.code, codeX, y + EDGE, code)}${typed}</g>`;
} // prettier-ignore

/** What of a layout lies beyond its page; null where all fits. */
export function beyondPage({
  page,
  rows,
  columns,
  label,
  margin,
  gap,
}: LabelLayout): 'width' | 'height' | null {
  const across = margin.left + columns * label.width + (columns - 1) * gap.across;
  const down = margin.top + rows * label.height + (rows - 1) * gap.down;
  return across > page.width + 0.01 ? 'width' : down > page.height + 0.01 ? 'height' : null;
}

/** Pages of labels, row by row. @returns null where the words of one do not fit its label */
export function labelPages(labels: readonly Label[], layout: LabelLayout): string[] | null {
  const { page, rows, columns, label: size, margin, gap } = layout;
  const each = rows * columns;
  const skip = layout.skip % each;
  const pages = Array.from({ length: Math.ceil((labels.length + skip) / each) }, (): string[] => []);
  for (const [at, label] of labels.entries()) {
    const place = at + skip;
    const [row, column] = [Math.floor((place % each) / columns), place % columns];
    const x = margin.left + column * (size.width + gap.across);
    const y = margin.top + row * (size.height + gap.down);
    const drawn = drawnLabel(label, size, x, y);
    if (drawn === null) return null;
    pages[Math.floor(place / each)]?.push(drawn);
  }
  return pages.map(
    (drawn) =>
      // Paper is white by night, too.
      `<svg xmlns="http://www.w3.org/2000/svg" width="${page.width}mm" height="${page.height}mm" viewBox="0 0 ${page.width} ${page.height}" font-family="Arial, Liberation Sans, sans-serif" fill="#000"><rect width="100%" height="100%" fill="#fff"/>${drawn.join('')}</svg>`,
  );
} // prettier-ignore

/** Pages as one document to print, each page of paper one of them. */
export const labelDocument = (pages: readonly string[], { page }: LabelLayout): string =>
  `<!doctype html><html lang="en"><head><meta charset="utf-8"><title>Labels</title><style>@page{size:${page.width}mm ${page.height}mm;margin:0}html,body{margin:0;background:#fff}svg{display:block;break-after:page}svg:last-child{break-after:auto}</style></head><body>${pages.join('')}</body></html>\n`; // prettier-ignore
