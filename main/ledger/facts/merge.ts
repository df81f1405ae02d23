// Rows that come from another ledger, put beside ours in one act. A record is known by its id. One that is new is taken;
// one that says the same is left; one that its home has changed since, and nobody here has, is taken over; every other
// difference waits in `received`, never in the row, until the keeper decides.
import { FACTS, fieldsOf, isRef } from '../../../core/ledger/facts/all-facts';
import { wrongIn } from '../../../core/ledger/facts/wrong';
import { Refused } from '../../refusal';
import type { OpenAct } from './open-act';
import { formOfColumns, formOfRow, type HandedRecord, type HandedRows, isOurs, KEPT_BACK } from './hand-over';
import type { Rows } from './fact-rows';
import { type Columns, type FactKind, kindOf, type Stored, toColumns } from './tables';

export interface Merged {
  /** How many records came new, were taken over in a newer form, and wait because they say otherwise. */
  readonly added: number;
  readonly renewed: number;
  readonly waiting: number;
}

/** Acts that bring in what others wrote: a record that only they wrote was not changed here. */
const MERGING = 'ledger.merge';
/** Key of the ledger itself. */
const OURS = 1;

/**
 * Puts handed rows beside ours. Under an open act of kind 'ledger.merge'.
 * @throws Refused 'handed incomplete' where a record points at one that is neither here nor comes along, 'hand-over claims ours'
 */
export function mergeRows(rows: Rows, act: OpenAct, handed: HandedRows): Merged {
  const from = ledgerKey(rows, handed.ledger.uid, handed.ledger.name);
  const tally = { added: 0, renewed: 0, waiting: 0 };
  for (const record of handed.records) {
    const did = mergeRecord(rows, act, record, from);
    if (did) tally[did] += 1;
  }
  return tally;
}

/** The key of a ledger, met before or now. */
function ledgerKey(rows: Rows, uid: string, name: string | null): number {
  const known = rows.prepare('SELECT key FROM ledger WHERE uid = ?').pluck().get(uid);
  if (typeof known === 'number') return known;
  const next = rows.count('SELECT max(key) FROM ledger') + 1;
  rows
    .prepare(
      'INSERT INTO ledger (key, uid, name, own, demo, made_at, made_at_off) VALUES (?, ?, ?, 0, 0, 0, 0)',
    )
    .run(next, uid, name);
  return next;
}

interface Known {
  readonly key: number;
  readonly kind: string;
  readonly home: number;
  readonly home_form: number | null;
  readonly form_no: number;
  readonly gone_in: number | null;
}

function mergeRecord(rows: Rows, act: OpenAct, record: HandedRecord, from: number): keyof Merged | null {
  const known = rows
    .prepare('SELECT key, kind, home, home_form, form_no, gone_in FROM record WHERE uid = ?')
    .get(record.uid) as Known | undefined;
  if (!known) {
    // Whoever was handed a jar knows this ledger's id and could write it into a file: what is ours is here.
    if (from === OURS) throw new Refused('hand-over claims ours');
    insertHanded(rows, act, record, from);
    return 'added';
  }
  if (kindOf(known.kind) !== record.kind) return null;
  if (known.gone_in !== null) return bringBack(rows, act, known, record) ? 'added' : null;
  // Of words that were kept back nothing can be said that is not here already.
  if (record.form.text === KEPT_BACK) return null;
  const ours = formOfRow(rows, record.kind, known.key);
  if (sameForm(ours, record.form)) {
    if (known.home !== 1 && record.homeForm > (known.home_form ?? 0))
      act.learnHomeForm(known.key, record.homeForm);
    return null;
  }
  if (isOlder(rows, known, record)) return null;
  if (known.home !== 1 && record.homeForm > (known.home_form ?? 0) && !changedHere(rows, known.key)) {
    act.update(record.kind, known.key, storedForm(rows, record, true));
    act.learnHomeForm(known.key, record.homeForm);
    return 'renewed';
  }
  return wait(rows, act, known.key, record, from) ? 'waiting' : null;
}

/** The ledger that a new record is of. One that says it is ours and is not here is taken for its sender's. */
function homeOf(rows: Rows, record: HandedRecord, from: number): number {
  const home = ledgerKey(rows, record.home, null);
  return home === OURS ? from : home;
}

/** Adds a record that was not here. A jar entered by mistake was none when it seeded: it is one only from then on. */
function insertHanded(rows: Rows, act: OpenAct, record: HandedRecord, from: number): void {
  const stored: Readonly<Record<string, unknown>> = storedForm(rows, record);
  const mistake = record.kind === 'jar' && stored.state === 'mistake';
  const { key } = act.insertFrom(record.kind, mistake ? { ...stored, state: 'made' } : stored, {
    uid: record.uid,
    home: homeOf(rows, record, from),
    homeForm: record.homeForm,
  });
  if (mistake) act.update('jar', key, { state: 'mistake' });
}

/** What ended here stays ended, since somebody meant it: unless it only ended because taking it in was undone. */
function bringBack(rows: Rows, act: OpenAct, { key, gone_in }: Known, record: HandedRecord): boolean {
  const undone = rows
    .prepare('SELECT 1 FROM act u JOIN act m ON m.key = u.undoes WHERE u.key = ? AND m.kind = ?')
    .get(gone_in, MERGING);
  if (undone === undefined) return false;
  act.bringBack(record.kind, key, toColumns(record.kind, storedForm(rows, record)));
  act.learnHomeForm(key, record.homeForm);
  return true;
}

/** Whether it is a form that we had, or that its home had, before. */
function isOlder(rows: Rows, known: Known, record: HandedRecord): boolean {
  if (known.home !== 1) return record.homeForm < (known.home_form ?? 0);
  if (record.homeForm >= known.form_no) return false;
  // Form n is what the n-th step of the journal found.
  const before = rows
    .prepare('SELECT before FROM journal WHERE record = ? ORDER BY key LIMIT 1 OFFSET ?')
    .pluck()
    .get(known.key, record.homeForm - 1);
  if (typeof before !== 'string') return false;
  return sameForm(formOfColumns(rows, record.kind, JSON.parse(before) as Columns), record.form);
}

/** Whether a record was written here by anything but merging. */
function changedHere(rows: Rows, key: number): boolean {
  return (
    rows.count(
      `SELECT count(*) FROM (SELECT made_in AS act FROM record WHERE key = ? UNION SELECT act FROM journal WHERE record = ?) w
         JOIN act a ON a.key = w.act WHERE a.kind <> '${MERGING}'`,
      key,
      key,
    ) > 0
  );
}

/** @returns false where the same form waits, or was decided on, already */
function wait(rows: Rows, act: OpenAct, about: number, record: HandedRecord, fromLedger: number): boolean {
  const form = JSON.stringify(record.form);
  const there = rows.where('received', 'about', about).some((one) => one.form === form);
  if (there) return false;
  act.insert('received', { about, fromLedger, formNo: record.homeForm, form });
  return true;
}

/** Puts what the keeper decided about a waiting form into the row. Under an open act. */
export function decideReceived(
  rows: Rows,
  act: OpenAct,
  key: number,
  decided: 'kept own' | 'took received',
): void {
  const { about, form } = rows.get('received', key);
  const kind = rows.kindOfKey(about);
  if (decided === 'took received') {
    const uid = rows.uidOf(kind, about);
    const record = { uid, kind, home: '', homeForm: 1, form: JSON.parse(form) as HandedRecord['form'] };
    act.update(kind, about, storedForm(rows, record, true));
  }
  act.update('received', key, { decided });
}

/** Canonical text of a form: fields in order of name. */
const textOf = (form: Readonly<Record<string, unknown>>): string =>
  JSON.stringify(Object.entries(form).toSorted(([a], [b]) => (a < b ? -1 : 1)));
const sameForm = (
  one: Readonly<Record<string, unknown>>,
  other: Readonly<Record<string, unknown>>,
): boolean => textOf(one) === textOf(other);

/**
 * A handed form as it is stored here, checked against the shape of its kind.
 * @param whole whether fields that are absent become null
 * @throws Refused 'handed incomplete', 'handed unreadable'
 */
function storedForm<K extends FactKind>(
  rows: Rows,
  { kind, form }: HandedRecord,
  whole = false,
): Partial<Stored<K>> {
  const checked = FACTS[kind].safeParse(form);
  if (!checked.success || wrongIn(kind, form)) throw new Refused('handed unreadable', { kind });
  const fact: Record<string, unknown> = {};
  for (const [name, { as }] of Object.entries(fieldsOf(kind))) {
    const value = (checked.data as Record<string, unknown>)[name] ?? null;
    if (value === null && (!whole || isOurs(kind, name))) continue;
    if (!isRef(as) || typeof value !== 'string') {
      fact[name] = value;
      continue;
    }
    const found = rows.recordOf(value);
    if (!found || found.gone) throw new Refused('handed incomplete', { kind });
    fact[name] = found.key;
  }
  return fact as Partial<Stored<K>>;
}
