// Every fact of a ledger as rows of a table, one table for each kind: fields that have parts in a column for each part.
import { FACT_KINDS, type FactKind, fieldsOf, type Field } from '../../core/ledger/facts/all-facts';
import type { TableCell } from '../../core/tables/table-text';
import { factsOf, readingsOf } from '../archive/archive-lines';
import type { Rows } from '../ledger/facts/fact-rows';

/** Parts of a field that is more than one figure or text. */
const PARTS: Partial<Record<Field['as'], readonly string[]>> = {
  amount: ['value', 'unit', 'typed'],
  temperature: ['value', 'unit', 'typed'],
  price: ['minor', 'currency', 'typed'],
};

interface FactColumn {
  readonly heading: string;
  readonly field: string;
  readonly part: string | null;
}

function columnsOf(kind: FactKind): FactColumn[] {
  return Object.entries(fieldsOf(kind)).flatMap(([field, { as }]): FactColumn[] =>
    (PARTS[as] ?? [null]).map((part) => ({
      heading: part === null ? field : `${field} ${part}`,
      field,
      part,
    })),
  );
}

function cellOf(value: unknown): TableCell {
  if (value === null || value === undefined) return null;
  return typeof value === 'number' || typeof value === 'string' ? value
    : typeof value === 'boolean' ? String(value)
    : JSON.stringify(value); // prettier-ignore
}

export interface FactTable {
  readonly name: string;
  readonly headings: readonly string[];
  readonly rows: Iterable<readonly TableCell[]>;
}

function* rowsOfKind(rows: Rows, kind: FactKind, columns: readonly FactColumn[]): Generator<TableCell[]> {
  for (const fact of factsOf(rows, kind))
    yield [
      fact.id,
      ...columns.map(({ field, part }) => {
        const value = fact[field];
        return cellOf(part === null ? value : (value as Record<string, unknown> | undefined)?.[part]);
      }),
    ];
}

function* readingRows(rows: Rows): Generator<TableCell[]> {
  for (const { sha256, readings } of readingsOf(rows))
    for (const { at, c, leftOut } of readings) yield [sha256, at, c, leftOut === true ? 'true' : null];
}

/** The tables of a ledger, each made as it is gone through. Nothing may be written meanwhile. */
export function factTables(rows: Rows): FactTable[] {
  return [
    ...FACT_KINDS.map((kind) => {
      const columns = columnsOf(kind);
      const headings = ['id', ...columns.map(({ heading }) => heading)];
      return { name: `facts/${kind}.csv`, headings, rows: rowsOfKind(rows, kind, columns) };
    }),
    { name: 'readings.csv', headings: ['block', 'at', 'celsius', 'left out'], rows: readingRows(rows) },
  ];
}
