// How each record of core/ledger/records.ts lies in its table: which column holds which field. The one place where
// rows become records and back. Inside, a record points at another by integer key; uids are for the outside.
import type {
  Addition,
  Batch,
  Choice,
  Clearing,
  Hold,
  Jar,
  Outcome,
  Package,
  Photograph,
  Portion,
  Preferences,
  RecordKind,
  Seeding,
  Source,
} from '../../core/ledger/records';

/** A record without its uid and with keys in place of the uids of `R`. */
type Keyed<T, R extends keyof T = never> = {
  [F in Exclude<keyof T, 'id'>]: F extends R ? (null extends T[F] ? number | null : number) : T[F];
};

/** A row of a keeper's notes that came in: found again when the same file, or a longer one, is brought in later. */
export interface NoteRow {
  /** What makes it the same file, in whatever form the reader of notes chooses; at most 500 characters. */
  readonly file: string;
  /** The row's content, hashed; at most 200 characters. */
  readonly fingerprint: string;
  /** 1 for the first row with this content in the file, 2 for the second, … */
  readonly occurrence: number;
  /** Line in the file when it came in, header 1. */
  readonly line: number;
  /** Key of the jar it became; null for a row that became no jar. */
  readonly jar: number | null;
}

/** What is stored of each kind. */
export interface Stored {
  source: Keyed<Source>;
  package: Keyed<Package, 'source'>;
  /** madeOn is null only for the batch that stands for a lost jar of unknown day. */
  batch: Omit<Keyed<Batch>, 'madeOn'> & { madeOn: string | null };
  hold: Keyed<Hold, 'batch'>;
  jar: Keyed<Jar, 'batch' | 'hold' | 'milkPackage'>;
  addition: Keyed<Addition, 'jar' | 'package'>;
  portion: Keyed<Portion, 'jar'>;
  seeding: Keyed<Seeding, 'jar' | 'fromJar' | 'portion' | 'source' | 'package'>;
  outcome: Keyed<Outcome, 'jar'>;
  photograph: Keyed<Photograph, 'jar'>;
  clearing: Keyed<Clearing, 'jar' | 'of'>;
  preferences: Keyed<Preferences>;
  noteRow: NoteRow;
  choice: Keyed<Choice, 'line' | 'jar' | 'portion'>;
}

/** A stored record with the bookkeeping of its row. */
export type Row<K extends RecordKind> = Stored[K] & {
  readonly key: number;
  readonly uid: string;
  readonly revision: number;
};

export type FieldType =
  'plain' | 'document' | 'flag' | 'list' | 'amount' | 'temperature' | 'price' | RecordKind;

interface Table<K extends RecordKind> {
  readonly table: string;
  readonly fields: { readonly [F in keyof Stored[K]]: FieldType };
}

export const TABLES: { readonly [K in RecordKind]: Table<K> } = {
  source: {
    table: 'source',
    fields: {
      name: 'plain', form: 'plain', strains: 'list', blendTotalPerPiece: 'plain', guaranteed: 'plain',
      receivedFrom: 'plain', knownGenerations: 'plain', note: 'plain',
    },
  },
  package: {
    table: 'package',
    fields: {
      of: 'plain', source: 'source', name: 'plain', size: 'amount', price: 'price', boughtOn: 'plain',
      openedOn: 'plain', bestBefore: 'plain', note: 'plain',
    },
  },
  batch: { table: 'batch', fields: { madeOn: 'plain', word: 'plain', note: 'plain' } },
  hold: {
    table: 'hold',
    fields: {
      batch: 'batch', startedAt: 'plain', endedAt: 'plain', hours: 'plain', planned: 'temperature', probe: 'plain',
      readings: 'list', basis: 'plain', note: 'plain',
    },
  },
  jar: {
    table: 'jar',
    fields: {
      batch: 'batch', letter: 'plain', hold: 'hold', state: 'plain', vessel: 'plain', finalVolume: 'amount',
      finalVolumeKnown: 'plain', milk: 'plain', milkAmount: 'amount', milkPackage: 'package', countPerMl: 'plain',
      onShelf: 'flag', goneOn: 'plain', note: 'plain',
    },
  },
  addition: {
    table: 'addition',
    fields: { jar: 'jar', name: 'plain', planned: 'amount', actual: 'amount', package: 'package' },
  },
  portion: {
    table: 'portion',
    fields: {
      jar: 'jar', part: 'plain', place: 'plain', pieces: 'plain', amount: 'amount', keptOn: 'plain', goneOn: 'plain',
      reserve: 'flag', note: 'plain',
    },
  },
  seeding: {
    table: 'seeding',
    fields: {
      jar: 'jar', fromJar: 'jar', portion: 'portion', part: 'plain', source: 'source', package: 'package',
      amount: 'amount',
    },
  },
  outcome: {
    table: 'outcome',
    fields: {
      jar: 'jar', earlyCheckHours: 'plain', earlySet: 'plain', earlyPh: 'plain', earlySour: 'flag',
      setAfterHours: 'plain', setByHours: 'plain', setAtTakeOut: 'flag', setWord: 'plain', texture: 'plain',
      whey: 'plain', tang: 'plain', smell: 'plain', colour: 'plain', ph: 'plain', phHow: 'plain', signs: 'list',
      bubbles: 'plain', powerCut: 'flag', powerCutHours: 'plain', spoiledSaid: 'flag', seenAt: 'plain', openedDays: 'plain', fibreDidThis: 'flag', note: 'plain',
    },
  },
  photograph: {
    table: 'photograph',
    fields: { jar: 'jar', sha256: 'plain', width: 'plain', height: 'plain', caption: 'plain' },
  },
  clearing: { table: 'clearing', fields: { jar: 'jar', of: 'jar', reason: 'plain' } },
  preferences: {
    table: 'preferences',
    fields: {
      theme: 'plain', temperatures: 'plain', volumes: 'plain', spoons: 'plain', dates: 'plain', currency: 'plain',
      seedFridgeDays: 'plain', seedFreezerDays: 'plain', mostGenerations: 'plain', jarFollowsHours: 'plain',
    },
  },
  noteRow: {
    table: 'note_row',
    fields: { file: 'plain', fingerprint: 'plain', occurrence: 'plain', line: 'plain', jar: 'jar' },
  },
  choice: {
    table: 'choice',
    fields: {
      line: 'batch', jar: 'jar', portion: 'portion', label: 'plain', place: 'plain', modelVersion: 'plain',
      advice: 'document',
    },
  },
}; // prettier-ignore

export type Value = string | number | bigint | null;
/** Column → value, as in SQLite and in the journal. */
export type Columns = Record<string, Value>;

const snake = (field: string): string => field.replaceAll(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);

function nameColumns(field: string, type: FieldType): readonly string[] {
  const column = snake(field);
  if (type === 'amount') return [`${column}_value`, `${column}_unit`, `${column}_typed`];
  if (type === 'temperature') return [`${column}_value`, `${column}_typed`];
  if (type === 'price') return [`${column}_minor`, `${column}_currency`, `${column}_typed`];
  return [column];
}

/** A field with its type and the columns that hold it. */
export interface Field {
  readonly field: string;
  readonly type: FieldType;
  readonly columns: readonly string[];
}

// Worked out once: an import asks for each of some hundred thousand rows.
const FIELDS = Object.fromEntries(
  Object.entries(TABLES).map(([kind, { fields }]) => [
    kind,
    Object.entries(fields).map(([field, type]) => ({ field, type, columns: nameColumns(field, type) })),
  ]),
) as unknown as { readonly [K in RecordKind]: readonly Field[] };
const COLUMNS = Object.fromEntries(
  Object.entries(FIELDS).map(([kind, fields]) => [kind, fields.flatMap(({ columns }) => columns)]),
) as unknown as { readonly [K in RecordKind]: readonly string[] };

/** Fields of a kind, in table order. */
export const fieldsOf = (kind: RecordKind): readonly Field[] => FIELDS[kind];

/** All columns of a kind's record, without key, uid, revision and seams. */
export const columnsOf = (kind: RecordKind): readonly string[] => COLUMNS[kind];

interface Parts {
  readonly value?: number;
  readonly unit?: string;
  readonly typed?: string | null;
  readonly minor?: number;
  readonly currency?: string;
}

/** What the columns of one field hold for a value, appended in their order. */
function pushValues(values: Value[], type: FieldType, value: unknown): void {
  const part = value as Parts | null;
  if (type === 'amount') values.push(part?.value ?? null, part?.unit ?? null, part?.typed ?? null);
  else if (type === 'temperature') values.push(part?.value ?? null, part?.typed ?? null);
  else if (type === 'price') values.push(part?.minor ?? null, part?.currency ?? null, part?.typed ?? null);
  else if (type === 'list') values.push(JSON.stringify(value));
  else if (type === 'flag') values.push(value === null || value === undefined ? null : Number(value));
  else values.push((value as Value | undefined) ?? null);
}

/** Values of a whole record, in the order of `columnsOf`. */
export function valuesOf<K extends RecordKind>(kind: K, record: Stored[K]): Value[] {
  const given = record as Readonly<Record<string, unknown>>;
  const values: Value[] = [];
  for (const { field, type } of FIELDS[kind]) pushValues(values, type, given[field]);
  return values;
}

/** The columns that a part of a record fills. Fields that are absent stay absent. */
export function toColumns<K extends RecordKind>(kind: K, record: Partial<Stored[K]>): Columns {
  const given = record as Readonly<Record<string, unknown>>;
  const filled: Columns = {};
  for (const { field, type, columns } of FIELDS[kind]) {
    if (given[field] === undefined) continue;
    const values: Value[] = [];
    pushValues(values, type, given[field]);
    for (const [index, column] of columns.entries()) filled[column] = values[index] ?? null;
  }
  return filled;
}

/** One field's value from the columns that hold it. A column that is absent (a journal form) is null. */
export function fieldFrom(columns: Columns, { type, columns: names }: Field): unknown {
  const value = (index: number): Value => columns[names[index] ?? ''] ?? null;
  const first = value(0);
  if (type === 'flag') return first === null ? null : first === 1;
  if (type === 'list') return first === null ? [] : JSON.parse(String(first));
  if (type === 'amount') return first === null ? null : { value: first, unit: value(1), typed: value(2) };
  if (type === 'temperature') return first === null ? null : { value: first, unit: '°C', typed: value(1) };
  if (type === 'price') return first === null ? null : { minor: first, currency: value(1), typed: value(2) };
  return first;
}

/** A record from its columns. The table's own CHECKs are what makes the types true. */
export function fromColumns<K extends RecordKind>(kind: K, columns: Columns): Row<K> {
  const record: Record<string, unknown> = {
    key: columns.key,
    uid: columns.uid,
    revision: columns.revision,
  };
  for (const field of FIELDS[kind]) record[field.field] = fieldFrom(columns, field);
  return record as unknown as Row<K>;
}
