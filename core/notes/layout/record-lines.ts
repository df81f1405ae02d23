// "Date: 2 May", "Seed: 8 caps" one below the other, or all in one line: a table that says its headings again and again.
import { plain, tidy } from '../../quantities/quantities';
import type { Row, Table } from '../table/table-rows';
import { headingMeaning } from './headings';

const KEYED = /^[\s*•·-]*([^:=]{1,40}?)\s*:\s+(\S.*)$/su;

interface Told {
  readonly line: number;
  readonly key: string;
  readonly value: string;
}

/** What the cells of a row tell under names of their own; null where one tells anything else. */
function toldIn(row: Row): Told[] | null {
  const cells = row.cells.map(tidy).filter(Boolean);
  const told = cells.flatMap((cell): Told[] => {
    const found = KEYED.exec(cell);
    const key = found?.[1] ?? '';
    return found && headingMeaning(key)?.sure === 3 ? [{ line: row.line, key, value: found[2] ?? '' }] : [];
  });
  return row.long || told.length === 0 || told.length < cells.length ? null : told;
}

/** A sheet of such lines as a table with one line of headings; any other as it is. A name that comes again begins a record. */
export function fromRecords(table: Table): Table {
  const filled = table.rows.filter((row) => row.cells.some((cell) => tidy(cell) !== ''));
  const told = filled.map((row) => {
    table.look?.();
    return toldIn(row);
  });
  if (filled.length < 2 || told.some((one) => one === null)) return table;
  const records: Map<string, Told>[] = [];
  const names = new Map<string, string>();
  for (const one of told.flatMap((row) => row ?? [])) {
    const key = plain(one.key);
    if (!names.has(key)) names.set(key, one.key);
    const last = records.at(-1);
    if (last && !last.has(key)) last.set(key, one);
    else records.push(new Map([[key, one]]));
  }
  if (records.length < 2 || names.size < 2) return table;
  const rows = records.map((record): Row => ({
    line: [...record.values()][0]?.line ?? 0,
    cells: [...names.keys()].map((key) => record.get(key)?.value ?? ''),
  }));
  return { ...table, rows: [{ line: 0, cells: [...names.values()] }, ...rows] };
}
