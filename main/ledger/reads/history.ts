// The history: acts in words, newest first, with what each changed field by field.
import type { Parsed, Reply } from '../../../core/contract';
import { RECORD_KINDS, type RecordKind } from '../../../core/ledger/records';
import { fieldWords, saysNothing } from '../../../core/ledger/field-words';
import { type Change, changeFrom, type JournalRow } from '../acts';
import type { Ledger } from '../ledger';
import { KIND_WORDS } from '../rows';
import { type Columns, type Field, fieldFrom, fieldsOf, TABLES } from '../tables';
import { valueWords } from './values';
import { type ActRow, undoneActs, wordsOf } from '../undo';

const CHANGES_SHOWN = 40;

type Shown = Reply<'history.list'>['acts'][number]['changes'][number];

export function listHistory(ledger: Ledger, input: Parsed<'history.list'>): Reply<'history.list'> {
  const { rows } = ledger;
  const before = input.before === null ? Number.MAX_SAFE_INTEGER : actKey(ledger, input.before);
  const about = input.record === null ? null : rowOf(ledger, input.record.kind, input.record.id);
  const acts = (
    about
      ? rows
          .prepare(
            `SELECT DISTINCT a.* FROM journal j JOIN act a ON a.key = j.act
              WHERE j.table_name = ? AND j.row_key = ? AND a.key < ? ORDER BY a.key DESC LIMIT ?`,
          )
          .all(about.table, about.key, before, input.limit + 1)
      : rows.prepare('SELECT * FROM act WHERE key < ? ORDER BY key DESC LIMIT ?').all(before, input.limit + 1)
  ) as ActRow[];
  const undone = undoneActs(rows);
  return {
    acts: acts.slice(0, input.limit).map((act) => ({
      act: act.uid,
      kind: act.kind,
      says: wordsOf(act),
      at: act.at,
      why: act.why,
      undone: undone.has(act.key),
      undoes:
        act.undoes === null
          ? null
          : String(rows.prepare('SELECT uid FROM act WHERE key = ?').pluck().get(act.undoes)),
      ...changesShown(ledger, act.key, about),
    })),
    more: acts.length > input.limit,
  };
}

function actKey(ledger: Ledger, uid: string): number {
  const key = ledger.rows.prepare('SELECT key FROM act WHERE uid = ?').pluck().get(uid);
  // An act this ledger does not have is before nothing: the list begins anew.
  return typeof key === 'number' ? key : Number.MAX_SAFE_INTEGER;
}

/** The row behind a record, also one that is gone: its tombstone or its journal knows it. An outcome goes by its jar. */
function rowOf(ledger: Ledger, kind: RecordKind, uid: string): { table: string; key: number } {
  const { rows } = ledger;
  const { table } = TABLES[kind];
  if (kind === 'outcome') {
    const [outcome] = rows.where('outcome', 'jar', rows.keyOf('jar', uid));
    if (outcome) return { table, key: outcome.key };
  }
  const gone = rows
    .prepare('SELECT act FROM tombstone WHERE uid = ? AND table_name = ?')
    .pluck()
    .get(uid, table);
  if (gone !== undefined) {
    const key = rows
      .prepare(
        "SELECT row_key FROM journal WHERE act = ? AND table_name = ? AND json_extract(before, '$.uid') = ?",
      )
      .pluck()
      .get(gone, table, uid);
    if (typeof key === 'number') return { table, key };
  }
  return { table, key: rows.keyOf(kind, uid) };
}

function changesShown(
  ledger: Ledger,
  act: number,
  about: { table: string; key: number } | null,
): { changes: Shown[]; moreChanges: number } {
  const { rows } = ledger;
  const only = about ? 'AND table_name = ? AND row_key = ?' : '';
  const which = about ? [about.table, about.key] : [];
  const found = rows
    .prepare(`SELECT * FROM journal WHERE act = ? ${only} ORDER BY key LIMIT ${CHANGES_SHOWN}`)
    .all(act, ...which) as JournalRow[];
  const total = rows.count(`SELECT count(*) FROM journal WHERE act = ? ${only}`, act, ...which);
  const changes = found.flatMap((row) => shownOf(ledger, changeFrom(row)));
  return {
    changes: changes.slice(0, CHANGES_SHOWN),
    moreChanges: total - found.length + Math.max(0, changes.length - CHANGES_SHOWN),
  };
}

function shownOf(ledger: Ledger, change: Change): Shown[] {
  const { kind, before, after } = change;
  const image = after ?? before ?? {};
  const base = {
    kind: RECORD_KINDS.find((one) => one === kind) ?? kind,
    id: kind === 'outcome' ? ledger.rows.uidOf('jar', Number(image.jar)) : String(image.uid),
    label: labelOf(ledger, change, image),
  };
  if (!before || !after) {
    const says = summary(ledger, kind, image);
    return [{ ...base, field: null, before: before ? says : null, after: after ? says : null }];
  }
  return fieldsOf(kind)
    .filter(({ columns }) => columns.some((column) => before[column] !== after[column]))
    .map((field) => ({
      ...base,
      field: fieldWords(kind, field.field),
      before: print(ledger, before, field),
      after: print(ledger, after, field),
    }));
}

const labelOfJar = (ledger: Ledger, key: unknown): string =>
  ledger.index.jars.get(Number(key))?.label ?? 'a jar';

/** What a record is called in the list. */
function labelOf(ledger: Ledger, { kind, key }: Change, image: Columns): string {
  if (kind === 'jar') return labelOfJar(ledger, key);
  if (kind === 'batch') {
    const day = valueWords(ledger, 'plain', image.made_on);
    return ['batch of', day ?? 'a day not known', image.word].filter(Boolean).join(' ');
  }
  if (kind === 'preferences') return 'preferences';
  if (typeof image.name === 'string') return image.name;
  if (kind === 'seeding') return `seed of ${labelOfJar(ledger, image.jar)}`;
  if (kind === 'hold') return 'time in warmth';
  if (image.jar !== undefined) return `${KIND_WORDS[kind]} of ${labelOfJar(ledger, image.jar)}`;
  return KIND_WORDS[kind];
}

/** The fields of a record that came or went, in one line; empty where nothing was said of it. */
function summary(ledger: Ledger, kind: RecordKind, image: Columns): string {
  const parts = fieldsOf(kind).flatMap((field) => {
    const value = print(ledger, image, field);
    const named = ['jar', 'batch', 'letter', 'name'].includes(field.field);
    return value === null || named || saysNothing(field.field, value)
      ? []
      : [`${fieldWords(kind, field.field)}: ${value}`];
  });
  return parts.join('; ').slice(0, 500);
}

function print(ledger: Ledger, image: Columns, field: Field): string | null {
  return valueWords(ledger, field.type, fieldFrom(image, field));
}
