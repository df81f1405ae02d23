// What makes a row of notes the same row: its own cells by heading, never what they are taken to mean. Separators, quotes,
// case, spaces and the order of columns don't matter, nor do blank cells; a column that is new or gone changes no row.
import { plain, remembered } from '../../quantities/quantities';
import type { OwnCells } from '../notes-plan';
import type { Layout } from '../layout/column-meanings';
import type { Row } from '../table/table-rows';

/** A cell longer than this is compared, and kept, by its beginning. */
export const LONGEST_KEPT = 10_000;

/** A heading however it is cased and spaced. */
export const headingKey = remembered(
  (heading: string): string => plain(heading).replace(/[\s_]/g, ''),
  () => '',
);

/** @param dayAbove the text of the day above, where the row has none of its own */
export function ownCells(row: Row, layout: Layout, dayAbove: string): OwnCells {
  const cells = layout.columns.flatMap(({ heading, index }): [string, string][] => {
    const text = row.long?.get(index) ?? row.cells[index] ?? '';
    return plain(text) === '' ? [] : [[heading, text]];
  });
  return Object.fromEntries(dayAbove === '' ? cells : [['', dayAbove], ...cells]);
}

/**
 * What two rows share that are the same row.
 * @param within only these headings count (by headingKey); null: all
 */
export function rowText(cells: OwnCells, within: ReadonlySet<string> | null): string {
  const parts = Object.entries(cells).flatMap(([heading, cell]) => {
    const key = headingKey(heading);
    if (within !== null && key !== '' && !within.has(key)) return [];
    const text = plain(within === null ? cell : cell.slice(0, LONGEST_KEPT));
    return [`${key}=${text.replace(/ ?([,;+&/]) ?/g, '$1')}`];
  });
  return JSON.stringify(parts.toSorted());
}
