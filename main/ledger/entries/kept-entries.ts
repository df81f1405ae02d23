// What went into a jar and what was kept of it: seedings, additions and portions, each with what hangs on it.
import type { Addition, Portion, Seeding } from '../../../core/ledger/records';
import type { OpenAct } from '../facts/open-act';
import type { Rows } from '../facts/fact-rows';
import type { Row as FactRow } from '../facts/tables';
import { whereabouts } from './where-it-stands';
import { type Keyed, over, type Rooted, type Told } from './keyed';
import { mustPut, put, putRemark, remarkOf, removeWith } from './put-fact';

export type PortionEntry = Keyed<Portion, 'jar'>;

interface PortionFacts {
  readonly row?: FactRow<'portion'> | undefined;
  readonly moved?: readonly FactRow<'movement'>[] | undefined;
  readonly note?: FactRow<'remark'> | undefined;
}

const portionFacts = (rows: Rows, row: FactRow<'portion'>): PortionFacts => ({
  row,
  moved: rows.where('movement', 'portion', row.key),
  note: remarkOf(rows.where('remark', 'portion', row.key)),
});

const portionOf = (rows: Rows, row: FactRow<'portion'>): Rooted<PortionEntry> => ({
  ...portionFrom(portionFacts(rows, row)),
  key: row.key,
  uid: row.uid,
});

/** The portion with that key, which is known to be there. */
export const portionEntry = (rows: Rows, key: number): Rooted<PortionEntry> =>
  portionOf(rows, rows.get('portion', key));

/** What was kept of one jar, or of all, in the order of entry. */
export const portionEntries = (rows: Rows, jar: number | null): Rooted<PortionEntry>[] =>
  (jar === null ? [...rows.all('portion')] : rows.where('portion', 'jar', jar)).map((row) =>
    portionOf(rows, row),
  );

/** The day a portion was gone; the day it was kept where it is gone and nobody said since when. */
function goneOn({ row, moved = [] }: PortionFacts): string | null {
  const { onShelf, goneOn: day } = whereabouts(moved);
  return onShelf === false ? (day ?? row?.keptOn ?? null) : null;
}

export const portionFrom = (held: PortionFacts): PortionEntry => ({
  jar: held.row?.jar as number,
  part: held.row?.part ?? null,
  place: held.row?.place as PortionEntry['place'],
  pieces: held.row?.pieces ?? null,
  amount: held.row?.amount ?? null,
  keptOn: held.row?.keptOn as string,
  goneOn: goneOn(held),
  reserve: held.row?.reserve ?? false,
  note: held.note?.text ?? null,
});

const formOf = ({ place, pieces }: PortionEntry): FactRow<'portion'>['form'] =>
  place === 'dried' ? 'flakes' : pieces === null ? 'pot' : 'cubes';

/** Adds a portion. @returns its key */
export const addPortion = (act: OpenAct, told: PortionEntry): number => putPortion(act, undefined, told);

/** Changes what is told of a portion; where nothing is different nothing is written. */
export function changePortion(act: OpenAct, key: number, told: Told<PortionEntry>): void {
  const held = portionFacts(act.rows, act.rows.get('portion', key));
  putPortion(act, held, over(portionFrom(held), told));
}

function putPortion(act: OpenAct, held: PortionFacts | undefined, wanted: PortionEntry): number {
  const { note, goneOn: gone, ...row } = wanted;
  const portion = mustPut(act, 'portion', held?.row, { ...row, form: formOf(wanted) });
  if (gone !== (held ? goneOn(held) : null)) {
    const said = held?.moved?.findLast(({ kind }) => kind === 'gone');
    if (gone === null && !said) act.insert('movement', { portion, kind: 'still there' });
    else put(act, 'movement', said, gone === null ? null : { kind: 'gone', day: gone }, { portion });
  }
  putRemark(act, held?.note, 'portion', portion, note);
  return portion;
}

export type SeedingEntry = Keyed<Seeding, 'jar' | 'fromJar' | 'portion' | 'source' | 'package'> & {
  /** One of those with this number, and nobody is sure which. What is left out stays as it is. */
  readonly either?: number | null;
};

interface SeedingFacts {
  readonly row?: FactRow<'seeding'> | undefined;
  readonly use?: FactRow<'use'> | undefined;
}

const seedingFacts = (rows: Rows, row: FactRow<'seeding'>): SeedingFacts => ({
  row,
  use: rows.where('use', 'seeding', row.key)[0],
});

/** What seeded a jar, in the order of entry. */
export const seedingEntries = (rows: Rows, jar: number): Rooted<SeedingEntry>[] =>
  rows
    .where('seeding', 'jar', jar)
    .map((row) => ({ ...seedingFrom(seedingFacts(rows, row)), key: row.key, uid: row.uid }));

export const seedingFrom = ({ row, use }: SeedingFacts): SeedingEntry => ({
  jar: row?.jar as number,
  fromJar: row?.fromJar ?? null,
  portion: row?.portion ?? null,
  part: row?.part ?? null,
  source: row?.source ?? null,
  package: use?.package ?? null,
  amount: row?.actual ?? null,
});

/** Adds a seeding and the package it came from. @returns its key */
export const addSeeding = (act: OpenAct, told: SeedingEntry): number => putSeeding(act, undefined, told);

export function changeSeeding(act: OpenAct, key: number, told: Told<SeedingEntry>): void {
  const held = seedingFacts(act.rows, act.rows.get('seeding', key));
  putSeeding(act, held, over(seedingFrom(held), told));
}

export const removeSeeding = (act: OpenAct, key: number): void =>
  removeWith(act, 'seeding', key, [['use', 'seeding'], ['remark', 'seeding']]); // prettier-ignore

function putSeeding(act: OpenAct, held: SeedingFacts | undefined, wanted: SeedingEntry): number {
  const { package: box, amount: actual, ...row } = wanted;
  const seeding = mustPut(act, 'seeding', held?.row, { ...row, actual });
  put(act, 'use', held?.use, box === null ? null : { package: box }, { seeding });
  return seeding;
}

export type AdditionEntry = Keyed<Addition, 'jar' | 'package'>;

interface AdditionFacts {
  readonly row?: FactRow<'addition'> | undefined;
  readonly use?: FactRow<'use'> | undefined;
}

const additionFacts = (rows: Rows, row: FactRow<'addition'>): AdditionFacts => ({
  row,
  use: rows.where('use', 'addition', row.key)[0],
});

/** What was stirred into a jar, in the order of entry. */
export const additionEntries = (rows: Rows, jar: number): Rooted<AdditionEntry>[] =>
  rows
    .where('addition', 'jar', jar)
    .map((row) => ({ ...additionFrom(additionFacts(rows, row)), key: row.key, uid: row.uid }));

export const additionFrom = ({ row, use }: AdditionFacts): AdditionEntry => ({
  jar: row?.jar as number,
  name: row?.name as string,
  planned: row?.planned ?? null,
  actual: row?.actual ?? null,
  package: use?.package ?? null,
});

/** Adds an addition and the package it came from. @returns its key */
export const addAddition = (act: OpenAct, told: AdditionEntry): number => putAddition(act, undefined, told);

export function changeAddition(act: OpenAct, key: number, told: Told<AdditionEntry>): void {
  const held = additionFacts(act.rows, act.rows.get('addition', key));
  putAddition(act, held, over(additionFrom(held), told));
}

export const removeAddition = (act: OpenAct, key: number): void =>
  removeWith(act, 'addition', key, [['use', 'addition']]);

function putAddition(act: OpenAct, held: AdditionFacts | undefined, wanted: AdditionEntry): number {
  const { package: box, ...row } = wanted;
  const addition = mustPut(act, 'addition', held?.row, row);
  put(act, 'use', held?.use, box === null ? null : { package: box }, { addition });
  return addition;
}
