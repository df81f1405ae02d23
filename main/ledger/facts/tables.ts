// How each fact of core/ledger/facts lies in its table: which columns hold which field. The one place where rows become
// facts and back. Inside, a fact points at another by key; ids are for the outside.
import {
  type As,
  FACT_KINDS,
  type FactKind,
  fieldsOf,
  type Stored,
} from '../../../core/ledger/facts/all-facts';
import { momentText, storedMoment } from '../../../core/ledger/stored-moments';

export type { FactKind, Stored };

/** A stored fact with the key and the id of its record. */
export type Row<K extends FactKind> = Stored<K> & { readonly key: number; readonly uid: string };

export type Value = string | number | bigint | null;
/** Column → value, as in SQLite and in the journal. */
export type Columns = Record<string, Value>;

export const snake = (field: string): string =>
  field.replaceAll(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);

const TABLE_OF = new Map<FactKind, string>(FACT_KINDS.map((kind) => [kind, snake(kind)]));
const KIND_OF = new Map<string, FactKind>(FACT_KINDS.map((kind) => [snake(kind), kind]));

/** The table in which a kind lies, which is also what its records call it. */
export const tableOf = (kind: FactKind): string => TABLE_OF.get(kind) ?? kind;

/** The kind of fact that lies in a table. */
export function kindOf(table: string): FactKind {
  const kind = KIND_OF.get(table);
  if (!kind) throw new Error(`no fact lies in a table ${table}`);
  return kind;
}

/** A field with how it lies in the columns that hold it. */
export interface Field {
  readonly field: string;
  readonly as: As;
  readonly columns: readonly string[];
}

function nameColumns(field: string, as: As): readonly string[] {
  const column = snake(field);
  if (as === 'amount' || as === 'price') return [`${column}_v`, `${column}_u`, `${column}_t`];
  if (as === 'temperature') return [`${column}_v`, `${column}_t`];
  if (as === 'moment') return [column, `${column}_off`];
  return [column];
}

// Worked out once: an import asks for each of some hundred thousand rows.
const COLUMN_FIELDS = new Map<FactKind, readonly Field[]>(
  FACT_KINDS.map((kind) => [
    kind,
    Object.entries(fieldsOf(kind)).map(([field, { as }]) => ({ field, as, columns: nameColumns(field, as) })),
  ]),
);
const COLUMNS = new Map<FactKind, readonly string[]>(
  FACT_KINDS.map((kind) => [kind, columnFields(kind).flatMap(({ columns }) => columns)]),
);

/** Fields of a kind, in table order. */
export function columnFields(kind: FactKind): readonly Field[] {
  return COLUMN_FIELDS.get(kind) ?? [];
}

/** All columns of a kind, without the key. */
export const columnsOf = (kind: FactKind): readonly string[] => COLUMNS.get(kind) ?? [];

interface Parts {
  readonly value?: number;
  readonly unit?: string;
  readonly typed?: string | null;
  readonly minor?: number;
  readonly currency?: string;
}

/** What the columns of one field hold for a value, appended in their order. */
function pushValues(values: Value[], as: As, value: unknown): void {
  const part = value as Parts | null | undefined;
  if (as === 'amount') values.push(part?.value ?? null, part?.unit ?? null, part?.typed ?? null);
  else if (as === 'temperature') values.push(part?.value ?? null, part?.typed ?? null);
  else if (as === 'price') values.push(part?.minor ?? null, part?.currency ?? null, part?.typed ?? null);
  else if (value === null || value === undefined) values.push(...(as === 'moment' ? [null, null] : [null]));
  else if (as === 'moment') {
    const { seconds, offset } = storedMoment(value as string);
    values.push(seconds, offset);
  } else if (as === 'list') values.push(JSON.stringify(value));
  else if (as === 'flag') values.push(Number(value));
  else values.push(value as Value);
}

/** Values of a whole fact, in the order of `columnsOf`. A field that is absent is null. */
export function valuesOf<K extends FactKind>(kind: K, fact: Partial<Stored<K>>): Value[] {
  const given = fact as Readonly<Record<string, unknown>>;
  const values: Value[] = [];
  for (const { field, as } of columnFields(kind)) pushValues(values, as, given[field]);
  return values;
}

/** The columns that a part of a fact fills. Fields that are absent stay absent. */
export function toColumns<K extends FactKind>(kind: K, fact: Partial<Stored<K>>): Columns {
  const given = fact as Readonly<Record<string, unknown>>;
  const filled: Columns = {};
  for (const { field, as, columns } of columnFields(kind)) {
    if (given[field] === undefined) continue;
    const values: Value[] = [];
    pushValues(values, as, given[field]);
    for (const [index, column] of columns.entries()) filled[column] = values[index] ?? null;
  }
  return filled;
}

/** One field's value from the columns that hold it. A column that is absent (a form in the journal) is null. */
export function fieldFrom(columns: Columns, { as, columns: names }: Field): unknown {
  const value = (index: number): Value => columns[names[index] ?? ''] ?? null;
  const first = value(0);
  if (first === null) return null;
  if (as === 'flag') return first === 1;
  if (as === 'list') return JSON.parse(String(first));
  if (as === 'amount') return { value: first, unit: value(1), typed: value(2) };
  if (as === 'temperature') return { value: first, unit: '°C', typed: value(1) };
  if (as === 'price') return { minor: first, currency: value(1), typed: value(2) };
  if (as === 'moment') return momentText(Number(first), Number(value(1)));
  return first;
}

/** A fact from its columns. The table's own CHECKs are what makes the types true. */
export function fromColumns<K extends FactKind>(kind: K, columns: Columns): Row<K> {
  const fact: Record<string, unknown> = { key: columns.key, uid: columns.uid };
  for (const field of columnFields(kind)) fact[field.field] = fieldFrom(columns, field);
  return fact as unknown as Row<K>;
}
