// What an act did, told in the records that the calls know: each record once, as it was before and as it was after, as far
// as the act touched it. Fields that rest on facts the act left alone are missing on both sides.
import type { RecordKind } from '../../../core/ledger/records';
import type { Change } from '../facts/act-changes';
import type { Rows as FactRows } from '../facts/fact-rows';
import { type Columns, type FactKind, fromColumns, type Row as FactRow, tableOf } from '../facts/tables';
import { type Belongs, recordOf, rootOf } from './belongs';
import { jarFrom } from './jar-entry';
import { additionFrom, portionFrom, seedingFrom } from './kept-entries';
import { batchFrom, packageFrom, photographFrom, sourceFrom } from './larder-entries';
import { type Observed, outcomeFrom } from './outcome-of-jar';
import { holdFrom } from './hold-entry';
import { noteRowFrom } from './note-row-entry';
import { remarkOf } from './put-fact';

type Fields = Readonly<Record<string, unknown>>;

/** A record that an act touched. */
export interface ChangedRecord {
  readonly of: Belongs;
  /** Its fields; null where it was not there. */
  readonly before: Fields | null;
  readonly after: Fields | null;
  /** The facts that were touched: told by themselves where no field of the record tells of them. */
  readonly facts: readonly ChangedFact[];
}

/** A fact that belongs to no record of the calls, as its columns were. */
export interface ChangedFact {
  readonly fact: FactKind;
  readonly key: number;
  readonly before: Columns | null;
  readonly after: Columns | null;
}

/** One side of what an act did to a record: its facts as they were on that side. */
class Side {
  readonly #facts: FactRows;
  readonly #forms = new Map<FactKind, Columns[]>();

  constructor(facts: FactRows) {
    this.#facts = facts;
  }

  add(kind: FactKind, key: number, form: Columns | null): void {
    if (form) this.#forms.set(kind, [...(this.#forms.get(kind) ?? []), { ...form, key }]);
  }

  get empty(): boolean {
    return this.#forms.size === 0;
  }

  all<K extends FactKind>(kind: K): FactRow<K>[] {
    return (this.#forms.get(kind) ?? [])
      .toSorted((a, b) => Number(a.key) - Number(b.key))
      .map((form) => fromColumns(kind, form));
  }

  one = <K extends FactKind>(kind: K): FactRow<K> | undefined => this.all(kind)[0];

  has(kind: FactKind): boolean {
    return this.#forms.has(kind);
  }

  #observed(): Observed[] {
    return this.all('observation').map((row) => ({
      row,
      acidity: this.all('acidity').filter(({ observation }) => observation === row.key),
      signs: this.all('sign').filter(({ observation }) => observation === row.key),
      remarks: this.all('remark').filter(({ observation }) => observation === row.key),
    }));
  }

  /** The record's fields, as far as the act touched them. */
  fields(kind: RecordKind): Fields {
    const [row, note] = [this.one.bind(this), remarkOf(this.all('remark'))] as const;
    switch (kind) {
      case 'source': return { ...sourceFrom({ row: row('source'), strains: this.all('strain') }) };
      case 'package': return { ...packageFrom({ row: row('package'), note }) };
      case 'batch': return { ...batchFrom({ row: row('batch'), note }) };
      case 'hold': return { ...holdFrom(this.#facts, { row: row('hold'), series: row('series'), note }) };
      case 'jar': return {
        ...jarFrom({
          row: row('jar'), stay: this.all('stay').at(-1), milk: row('milk'), use: row('use'), count: row('labResult'),
          moved: this.all('movement'), note,
        }),
      };
      case 'addition': return { ...additionFrom({ row: row('addition'), use: row('use') }) };
      case 'portion': return { ...portionFrom({ row: row('portion'), moved: this.all('movement'), note }) };
      case 'seeding': return { ...seedingFrom({ row: row('seeding'), use: row('use') }) };
      case 'photograph': return { ...photographFrom({ row: row('photograph'), note }) };
      case 'clearing': return { jar: row('lift')?.jar, of: row('lift')?.ofJar, reason: row('reason')?.text };
      case 'outcome': return { ...outcomeFrom(this.#observed()) };
      case 'noteRow': {
        const told = row('noteRow');
        return { ...noteRowFrom({ row: told, file: told && this.#facts.find('noteFile', told.file) }) };
      }
      case 'preferences': return { ...row('preferences') };
      case 'choice': return { ...row('choice') };
    }
  } // prettier-ignore
}

/** Records by what belongs to them, gathered from an act's changes. */
class Gathered {
  readonly before: Side;
  readonly after: Side;
  readonly #touched = new Map<number, ChangedFact>();
  #made = false;
  #gone = false;

  constructor(
    readonly facts: FactRows,
    readonly of: Belongs,
  ) {
    this.before = new Side(facts);
    this.after = new Side(facts);
  }

  take({ kind, key, before, after }: Change): void {
    this.#touched.set(key, { fact: kind, key, before, after });
    this.before.add(kind, key, before);
    this.after.add(kind, key, after);
    if (this.of.kind !== 'outcome' && kind === rootOf(this.of.kind)) {
      this.#made = before === null;
      this.#gone = after === null;
    }
  }

  /** Facts of an outcome that the act left alone, on both sides: a sign is told by the observation that it hangs on. */
  #besides(act: number): void {
    const rows = (kind: FactKind, column: string, on: number): Columns[] =>
      this.facts
        .prepare(
          `SELECT t.* FROM ${tableOf(kind)} t JOIN record r ON r.key = t.key
            WHERE t.${column} = ? AND r.made_in < ? ORDER BY t.key`,
        )
        .all(on, act) as Columns[];
    const add = (kind: FactKind, columns: Columns): void => {
      if (this.#touched.has(Number(columns.key))) return;
      this.before.add(kind, Number(columns.key), columns);
      this.after.add(kind, Number(columns.key), columns);
    };
    for (const columns of rows('observation', 'jar', this.of.key)) {
      add('observation', columns);
      for (const kind of ['acidity', 'sign', 'remark'] as const)
        for (const child of rows(kind, 'observation', Number(columns.key))) add(kind, child);
    }
  }

  told(act: number): ChangedRecord {
    const { of } = this;
    if (of.kind === 'outcome') {
      this.#besides(act);
      this.#made = !this.before.has('observation');
      this.#gone = !this.after.has('observation');
    }
    return {
      of,
      before: this.#made ? null : this.before.fields(of.kind),
      after: this.#gone ? null : this.after.fields(of.kind),
      facts: [...this.#touched.values()],
    };
  }
}

/** An act's changes by record, in the order in which they were first touched. */
export function changedRecords(
  facts: FactRows,
  act: number,
  changes: Iterable<Change>,
): (ChangedRecord | ChangedFact)[] {
  const gathered = new Map<string, Gathered | ChangedFact>();
  for (const change of changes) {
    const { kind, key, before, after } = change;
    const of = recordOf(facts, kind, key, after ?? before ?? {});
    if (!of) {
      if (kind !== 'noteFile') gathered.set(`fact ${key}`, { fact: kind, key, before, after });
      continue;
    }
    const name = `${of.kind} ${of.key}`;
    const known = gathered.get(name) ?? new Gathered(facts, of);
    gathered.set(name, known);
    if (known instanceof Gathered) known.take(change);
  }
  return [...gathered.values()].map((one) => (one instanceof Gathered ? one.told(act) : one));
}
