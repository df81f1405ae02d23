// A document by itself: nothing in it comes from elsewhere, and its own policy lets nothing come. For paper, or for a telephone.
import { escaped } from '../markup';

/** For paper: black on white, a size that can be read at arm's length, nothing cut in two by the end of a sheet. */
const ON_PAPER = `
body { font: 10.5pt/1.4 'Atkinson Hyperlegible Next', Arial, 'Liberation Sans', sans-serif; color: #000; background: #fff; margin: 0 }
h1 { font-size: 20pt; line-height: 1.2; margin: 0 0 1mm }
h2 { font-size: 12.5pt; margin: 5mm 0 1.5mm; break-after: avoid }
p { margin: 0 0 2mm }
.lead { font-size: 13pt; font-weight: 700 }
.soft { color: #333 }
.small, figcaption { font-size: 9pt }
table { border-collapse: collapse; width: 100%; margin: 0 0 2mm }
th, td { text-align: left; vertical-align: top; padding: 1mm 2mm 1mm 0; border-bottom: .2mm solid #999 }
tr, figure, .keep { break-inside: avoid }
figure { margin: 0 0 2mm }
ul { margin: 0 0 2mm; padding-left: 5mm }
.strip { display: block; max-width: 100%; break-inside: avoid }
.code { float: right; margin: 0 0 3mm 4mm; text-align: center }
`;

/** For a screen of any width: columns fold into one, by night as by day, large enough for a thumb. */
const ON_SCREEN = `
:root { color-scheme: light dark; --ink: #2b251e; --soft: #5c5145; --paper: #f6f0e4; --sheet: #fcf8ef; --line: #cdbfa8 }
@media (prefers-color-scheme: dark) {
  :root { --ink: #efe8db; --soft: #bdb4a5; --paper: #1c2125; --sheet: #252b30; --line: #4a545c }
}
* { box-sizing: border-box }
body { font: 17px/1.5 'Atkinson Hyperlegible Next', system-ui, Arial, sans-serif; color: var(--ink); background: var(--paper) }
body { margin: 0 auto; padding: 16px; max-width: 60rem; overflow-wrap: anywhere }
h1 { font-size: 28px; line-height: 1.2; margin: 8px 0 }
h2 { font-size: 23px; margin: 32px 0 8px }
.lead { font-size: 19px; font-weight: 700 }
.soft, dt { color: var(--soft) }
.small { font-size: 15px }
.scroll { overflow-x: auto; background: #fff; border: 1px solid var(--line); border-radius: 10px }
.scroll svg { display: block }
details { background: var(--sheet); border: 1px solid var(--line); border-radius: 10px; margin: 8px 0; padding: 0 12px }
summary { padding: 11px 0; min-height: 44px; cursor: pointer }
details[open] summary { border-bottom: 1px solid var(--line) }
dl { display: grid; grid-template-columns: minmax(6.5rem, 25%) 1fr; gap: 6px 14px; margin: 12px 0 }
dd { margin: 0 }
figure { display: inline-block; margin: 0 8px 12px 0 }
img { display: block; max-width: min(100%, 320px); height: auto; border-radius: 8px }
a { color: inherit }
@media print { body { background: #fff; color: #000; max-width: none } details { break-inside: avoid } }
`;

interface Document {
  readonly title: string;
  readonly body: string;
  /** The sheet it is printed on, in mm, and its margin; null: for a screen. */
  readonly sheet: { readonly width: number; readonly height: number; readonly margin: number } | null;
}

/** @param body of one's own making, with whatever was typed escaped */
export function documentOf({ title, body, sheet }: Document): string {
  const style =
    sheet === null
      ? ON_SCREEN
      : `@page{size:${sheet.width}mm ${sheet.height}mm;margin:${sheet.margin}mm}${ON_PAPER}`;
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<title>${escaped(title)}</title><style>${style}</style></head>
<body>${body}</body></html>
`;
}

export const paragraph = (text: string, kind = ''): string =>
  text === '' ? '' : `<p${kind === '' ? '' : ` class="${kind}"`}>${escaped(text)}</p>`;

export const list = (items: readonly string[]): string =>
  items.length === 0 ? '' : `<ul>${items.map((item) => `<li>${escaped(item)}</li>`).join('')}</ul>`;

const cell = (kind: 'td' | 'th scope="col"' | 'th scope="row"') => (text: string) =>
  `<${kind}>${escaped(text)}</${kind.slice(0, 2)}>`;

/** @param head without one the first cell of each row heads it */
export function table(rows: readonly (readonly string[])[], head: readonly string[] | null = null): string {
  if (rows.length === 0 && head === null) return '';
  const top = head === null ? '' : `<thead><tr>${head.map(cell('th scope="col"')).join('')}</tr></thead>`;
  const body = rows.map(([first = '', ...others]) => {
    const begins = head === null ? cell('th scope="row"') : cell('td');
    return `<tr>${begins(first)}${others.map(cell('td')).join('')}</tr>`;
  });
  return `<table>${top}<tbody>${body.join('')}</tbody></table>`;
}

/** What is known of a thing, name by name. */
export const terms = (rows: readonly (readonly [name: string, words: string])[]): string =>
  `<dl>${rows.map(([name, words]) => `<dt>${escaped(name)}</dt><dd>${escaped(words)}</dd>`).join('')}</dl>`;
