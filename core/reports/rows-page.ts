// A sheet of empty rows for the kitchen: a row for each jar, to be written by hand and typed in later.
import { escaped } from '../markup';
import { ROW_HEADS, ROW_HINTS, ROWS_TITLE } from '../says/rows-says';
import { PAPER_SIZES, type Paper } from '../shapes/report-calls';
import { documentOf, list } from './document';

const MARGIN = 10;
const ROWS = 18;
const STYLE = `<style>
.rows { table-layout: fixed } .rows th, .rows td { border: .2mm solid #777; padding: .8mm 1.2mm; font-size: 8.5pt }
.rows td { height: 9.6mm } tr { break-inside: avoid }
</style>`;

/** Landscape: what is written by hand needs room. */
export const rowsSize = (paper: Paper): { readonly width: number; readonly height: number } => ({
  width: PAPER_SIZES[paper].height,
  height: PAPER_SIZES[paper].width,
});

/** Two pages at most, so that it is printed on both sides of one sheet. */
export function rowsPage(paper: Paper): string {
  const widths = ROW_HEADS.map(({ part }) => `<col style="width:${part}%">`).join('');
  const heads = ROW_HEADS.map(({ head }) => `<th scope="col">${escaped(head)}</th>`).join('');
  const row = `<tr>${'<td></td>'.repeat(ROW_HEADS.length)}</tr>`;
  const body = [
    STYLE,
    `<h1>${escaped(ROWS_TITLE)}</h1>`,
    `<div class="small">${list(ROW_HINTS)}</div>`,
    `<table class="rows"><colgroup>${widths}</colgroup><thead><tr>${heads}</tr></thead><tbody>${row.repeat(ROWS)}</tbody></table>`,
  ];
  return documentOf({
    title: ROWS_TITLE,
    body: body.join('\n'),
    sheet: { ...rowsSize(paper), margin: MARGIN },
  });
}
