// The rows of one jar and all that it descends from, as they go to another ledger. What is private stays here.
import { type FactKind, fieldsOf, isRef } from '../../../core/ledger/facts/all-facts';
import type { Rows } from './fact-rows';
import { fromColumns, snake } from './tables';

/** One record as it goes over: other records by id, nulls left out. */
export interface HandedRecord {
  readonly uid: string;
  readonly kind: FactKind;
  /** Id of the ledger it comes from, and the number of its form there that this is, or that this was made of. */
  readonly home: string;
  readonly homeForm: number;
  readonly form: Readonly<Record<string, unknown>>;
}

export interface HandedRows {
  /** The ledger that hands it over. */
  readonly ledger: { readonly uid: string; readonly name: string | null };
  /** Each after all that it points at. */
  readonly records: readonly HandedRecord[];
}

/** What goes along with a record because it points at it. */
const GOES_ALONG: Partial<Record<FactKind, readonly (readonly [FactKind, string])[]>> = {
  jar: [
    ['milk', 'jar'], ['addition', 'jar'], ['seeding', 'jar'], ['stay', 'jar'], ['observation', 'jar'], ['labResult', 'jar'],
    ['remark', 'jar'], ['lift', 'jar'], ['movement', 'jar'],
  ],
  lift: [['liftKnew', 'lift']],
  batch: [['remark', 'batch']],
  source: [['strain', 'source']],
  hold: [['interruption', 'hold'], ['remark', 'hold']],
  milk: [['use', 'milk']],
  addition: [['use', 'addition']],
  seeding: [['use', 'seeding'], ['remark', 'seeding']],
  observation: [['acidity', 'observation'], ['sign', 'observation'], ['remark', 'observation']],
  remark: [['sign', 'remark']],
}; // prettier-ignore

/** Fields that stay with the keeper, whatever the record: what tells of people, shops, places and prices. */
const STAYS_HERE: Partial<Record<FactKind, readonly string[]>> = {
  source: ['receivedFrom'],
  package: ['price', 'boughtOn'],
  labResult: ['laboratory'],
  noteRow: ['cells'],
  series: ['block'],
  // Where it was entered, and in whose bath.
  hold: ['batch', 'appliance'],
};

/** What goes beside the ancestry, and what of the private goes too. */
export interface Going {
  /** Spoiled jars that cautions of the ancestry rest on: they go as stubs, without what seeded them from outside of it. */
  readonly stubs?: ReadonlySet<number>;
  /** Private remarks and reasons go along in their own words: only where the keeper asks for it. */
  readonly privateToo?: boolean;
}

/** All that goes with a jar, in the order of entry as far as each stands after what it points at. @param jar its key */
export function handOver(rows: Rows, jar: number, also: Going = {}): HandedRows {
  const own = rows.prepare('SELECT uid, name FROM ledger WHERE own = 1').get() as HandedRows['ledger'];
  const going = allThatGoes(rows, jar, also);
  const records: HandedRecord[] = [];
  const sent = new Set<string>();
  for (const key of inOrder(rows, going)) {
    const record = handed(rows, going.get(key) as FactKind, key, also.privateToo === true);
    // What points at something that stays says nothing without it.
    if (!record || !pointsOnlyAt(record, sent)) continue;
    records.push(record);
    sent.add(record.uid);
  }
  return { ledger: own, records };
}

/** A jar and all that it descends from. */
const behind = (rows: Rows, jar: number): ReadonlySet<number> =>
  new Set(
    rows
      .prepare(
        `WITH RECURSIVE up (key) AS (SELECT ? UNION
           SELECT s.from_jar FROM up JOIN seeding s ON s.jar = up.key WHERE s.from_jar IS NOT NULL) SELECT key FROM up`,
      )
      .pluck()
      .all(jar) as number[],
  );

type Row = Readonly<Record<string, unknown>>;

/** Kinds by key of what a jar descends from and of what goes along with that. */
function allThatGoes(
  rows: Rows,
  jar: number,
  { stubs = new Set(), privateToo = false }: Going,
): Map<number, FactKind> {
  const going = new Map<number, FactKind>();
  const jars = new Set([...behind(rows, jar), ...stubs]);
  const waiting: { kind: FactKind; key: number }[] = [jar, ...stubs].map((key) => ({ kind: 'jar', key }));
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const { kind, key } = next;
    const row = going.has(key) ? undefined : rows.columnsNow(kind, key);
    if (!row || !goes(kind, row, jars) || (!privateToo && staysHere(rows, kind, row))) continue;
    going.set(key, kind);
    waiting.push(...pointedAt(kind, row));
    for (const [part, column] of GOES_ALONG[kind] ?? [])
      for (const one of rows.where(part, column, key)) waiting.push({ kind: part, key: one.key });
  }
  return going;
}

/** No other jar goes, nor what leads to one; of what became of a jar only that it was opened, since signs are told by that. */
function goes(kind: FactKind, row: Row, jars: ReadonlySet<number>): boolean {
  if (kind === 'seeding') return row.from_jar === null || jars.has(Number(row.from_jar));
  if (kind === 'lift') return jars.has(Number(row.of_jar));
  if (kind === 'movement') return row.kind === 'opened';
  return kind !== 'jar' || jars.has(Number(row.key));
}

/** A walk with a stack of its own: a line may be as long as its keeper is patient. */
function inOrder(rows: Rows, going: ReadonlyMap<number, FactKind>): number[] {
  const done = new Set<number>();
  const waiting = [...going.keys()].toSorted((a, b) => b - a);
  for (let key = waiting.at(-1); key !== undefined; key = waiting.at(-1)) {
    const kind = going.get(key) as FactKind;
    const before = done.has(key)
      ? []
      : pointedAt(kind, rows.columnsNow(kind, key) ?? {}).filter(
          (one) => going.has(one.key) && !done.has(one.key),
        );
    if (before.length > 0) {
      waiting.push(...before.map((one) => one.key).toSorted((a, b) => b - a));
      continue;
    }
    waiting.pop();
    done.add(key);
  }
  return [...done];
}

/** What stands in place of a private remark that speaks against its jar: that goes along, its words don't. */
export const KEPT_BACK = '(kept private)';

function staysHere(rows: Rows, kind: FactKind, row: Readonly<Record<string, unknown>>): boolean {
  if (row.private !== 1) return false;
  if (kind !== 'remark') return kind === 'taster';
  const against = row.read_as === 'discard' || row.read_as === 'look';
  return !against && rows.count('SELECT count(*) FROM sign WHERE remark = ?', Number(row.key)) === 0;
}

/** Records that a row points at and that go with it. */
function pointedAt(
  kind: FactKind,
  row: Readonly<Record<string, unknown>>,
): { kind: FactKind; key: number }[] {
  return Object.entries(fieldsOf(kind)).flatMap(([name, { as }]) => {
    const key = row[snake(name)];
    if (!isRef(as) || as === 'record' || as === 'block' || as === 'ledger' || typeof key !== 'number')
      return [];
    return STAYS_HERE[kind]?.includes(name) === true ? [] : [{ kind: as, key }];
  });
}

/** A private remark stays, and what says nothing without it. */
const pointsOnlyAt = ({ kind, form }: HandedRecord, sent: ReadonlySet<string>): boolean =>
  Object.entries(fieldsOf(kind)).every(([name, { as }]) => {
    const value = form[name];
    return !isRef(as) || typeof value !== 'string' || sent.has(value);
  });

interface RecordRow {
  readonly uid: string;
  readonly home: string;
  readonly own: number;
  readonly home_form: number | null;
  readonly form_no: number;
}

function handed(rows: Rows, kind: FactKind, key: number, privateToo: boolean): HandedRecord | null {
  const record = rows
    .prepare(
      `SELECT r.uid, l.uid AS home, l.own, r.home_form, r.form_no FROM record r JOIN ledger l ON l.key = r.home
        WHERE r.key = ?`,
    )
    .get(key) as RecordRow | undefined;
  if (!record) return null;
  return {
    uid: record.uid,
    kind,
    home: record.home,
    homeForm: record.own === 1 ? record.form_no : (record.home_form ?? 1),
    form: formOfRow(rows, kind, key, privateToo),
  };
}

/** A row with ids in place of keys, without what is null, and without what stays here. */
export function formOfRow(
  rows: Rows,
  kind: FactKind,
  key: number,
  privateToo = false,
): Record<string, unknown> {
  const row = rows.get(kind, key) as unknown as Record<string, unknown>;
  return toForm(rows, kind, row, privateToo);
}

/** The same of columns, as the journal has them. */
export const formOfColumns = (
  rows: Rows,
  kind: FactKind,
  columns: Readonly<Record<string, unknown>>,
): Record<string, unknown> =>
  toForm(rows, kind, fromColumns(kind, columns as never) as unknown as Record<string, unknown>);

/** Fields that a hand-over says nothing of: what is here of them stays. */
export const isOurs = (kind: FactKind, field: string): boolean =>
  STAYS_HERE[kind]?.includes(field) === true || (kind === 'source' && field === 'note');

function toForm(
  rows: Rows,
  kind: FactKind,
  row: Readonly<Record<string, unknown>>,
  privateToo = false,
): Record<string, unknown> {
  const form: Record<string, unknown> = {};
  for (const [name, { as }] of Object.entries(fieldsOf(kind))) {
    const value = row[name] ?? null;
    if (value === null || STAYS_HERE[kind]?.includes(name)) continue;
    if (kind === 'source' && name === 'note' && row.notePrivate === true && !privateToo) continue;
    if ((kind === 'remark' || kind === 'reason') && name === 'text' && row.private === true && !privateToo) {
      form[name] = KEPT_BACK;
      continue;
    }
    form[name] = isRef(as) && typeof value === 'number' ? rows.uidOf(as as FactKind, value) : value;
  }
  return form;
}
