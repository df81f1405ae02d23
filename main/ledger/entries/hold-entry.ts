// A hold with its readings and the keeper's note.
import type { Hold } from '../../../core/ledger/records';
import type { OpenAct } from '../facts/open-act';
import type { Rows } from '../facts/fact-rows';
import type { Row as FactRow } from '../facts/tables';
import { blockOf, readingsIn, withLeftOut } from './series-of-hold';
import { type Keyed, over, type Rooted, type Told } from './keyed';
import { mustPut, put, putRemark, remarkOf, removeWith } from './put-fact';

export type HoldEntry = Keyed<Hold, 'batch'>;

const UNTOLD = {
  startedAt: null, endedAt: null, hours: null, planned: null, probe: null, readings: [], note: null,
}; // prettier-ignore

interface HoldFacts {
  readonly row?: FactRow<'hold'> | undefined;
  readonly series?: FactRow<'series'> | undefined;
  readonly note?: FactRow<'remark'> | undefined;
}

const factsOf = (rows: Rows, row: FactRow<'hold'>): HoldFacts => ({
  row,
  series: rows.where('series', 'hold', row.key)[0],
  note: remarkOf(rows.where('remark', 'hold', row.key)),
});

/** The hold with that key, which is known to be there. */
export function holdEntry(rows: Rows, key: number): Rooted<HoldEntry> {
  const row = rows.get('hold', key);
  return { ...holdFrom(rows, factsOf(rows, row)), key, uid: row.uid };
}

export function holdFrom(facts: Rows, { row, series, note }: HoldFacts): HoldEntry {
  return {
    batch: row?.batch as number,
    startedAt: row?.began ?? null,
    endedAt: row?.ended ?? null,
    hours: row?.hours ?? null,
    planned: row?.planned ?? null,
    probe: series?.place ?? null,
    readings: readingsIn(facts, series?.block ?? null),
    basis: row?.basis ?? 'recorded',
    note: note?.text ?? null,
  };
}

/** Adds a hold and what hangs on it. @param plannedFrom when it is planned to begin, or to have begun @returns its key */
export const addHold = (
  act: OpenAct,
  told: Pick<HoldEntry, 'batch' | 'basis'> & Partial<HoldEntry>,
  plannedFrom: string | null = null,
): number => putHold(act, undefined, { ...UNTOLD, ...told }, plannedFrom);

export function changeHold(act: OpenAct, key: number, told: Told<HoldEntry>): void {
  const held = factsOf(act.rows, act.rows.get('hold', key));
  putHold(act, held, over(holdFrom(act.rows, held), told));
}

export const removeHold = (act: OpenAct, key: number): void =>
  removeWith(act, 'hold', key, [['series', 'hold'], ['interruption', 'hold'], ['remark', 'hold']]); // prettier-ignore

function putHold(
  act: OpenAct,
  held: HoldFacts | undefined,
  wanted: HoldEntry,
  plannedFrom: string | null = null,
): number {
  const { batch, startedAt: began, endedAt: ended, hours, planned, basis, probe, readings, note } = wanted;
  const own = { batch, began, ended, hours, planned, basis };
  const hold = mustPut(act, 'hold', held?.row, own, { purpose: 'jars', plannedFrom });
  const before = held?.series?.block ?? null;
  const all = withLeftOut(act.rows, readings, before);
  const none = probe === null && all.length === 0;
  const block = none ? null : blockOf(act.rows, all, before);
  put(act, 'series', held?.series, none ? null : { place: probe, block }, { hold });
  putRemark(act, held?.note, 'hold', hold, note);
  return hold;
}
