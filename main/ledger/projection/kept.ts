// What went into a jar and what was kept of it: seedings, additions and portions, each with what hangs on it.
import type { OpenAct } from '../facts/open-act';
import type { Row as FactRow } from '../facts/tables';
import { whereabouts } from './jar';
import { mustPut, put, putRemark, remarkOf, type Under } from './put';
import type { Stored } from './records';

export interface HeldPortion {
  readonly row?: FactRow<'portion'> | undefined;
  readonly moved?: readonly FactRow<'movement'>[] | undefined;
  readonly note?: FactRow<'remark'> | undefined;
}

export const heldPortion = (under: Under, row: FactRow<'portion'>): HeldPortion => ({
  row,
  moved: under.of('movement', 'portion', row.key),
  note: remarkOf(under.of('remark', 'portion', row.key)),
});

/** The day a portion was gone; the day it was kept where it is gone and nobody said since when. */
function goneOn({ row, moved = [] }: HeldPortion): string | null {
  const { onShelf, goneOn: day } = whereabouts(moved);
  return onShelf === false ? (day ?? row?.keptOn ?? null) : null;
}

export const portionFrom = (held: HeldPortion): Stored['portion'] => ({
  jar: held.row?.jar as number,
  part: held.row?.part ?? null,
  place: held.row?.place as Stored['portion']['place'],
  pieces: held.row?.pieces ?? null,
  amount: held.row?.amount ?? null,
  keptOn: held.row?.keptOn as string,
  goneOn: goneOn(held),
  reserve: held.row?.reserve ?? false,
  note: held.note?.text ?? null,
});

const formOf = ({ place, pieces }: Stored['portion']): FactRow<'portion'>['form'] =>
  place === 'dried' ? 'flakes' : pieces === null ? 'pot' : 'cubes';

/** Writes a portion and what hangs on it. @returns its key */
export function putPortion(act: OpenAct, held: HeldPortion | undefined, wanted: Stored['portion']): number {
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

export interface HeldSeeding {
  readonly row?: FactRow<'seeding'> | undefined;
  readonly use?: FactRow<'use'> | undefined;
}

export const heldSeeding = (under: Under, row: FactRow<'seeding'>): HeldSeeding => ({
  row,
  use: under.of('use', 'seeding', row.key)[0],
});

export const seedingFrom = ({ row, use }: HeldSeeding): Stored['seeding'] => ({
  jar: row?.jar as number,
  fromJar: row?.fromJar ?? null,
  portion: row?.portion ?? null,
  part: row?.part ?? null,
  source: row?.source ?? null,
  package: use?.package ?? null,
  amount: row?.actual ?? null,
});

/** Writes a seeding and the package it came from. @returns its key */
export function putSeeding(act: OpenAct, held: HeldSeeding | undefined, wanted: Stored['seeding']): number {
  const { package: box, amount: actual, ...row } = wanted;
  const seeding = mustPut(act, 'seeding', held?.row, { ...row, actual });
  put(act, 'use', held?.use, box === null ? null : { package: box }, { seeding });
  return seeding;
}

export interface HeldAddition {
  readonly row?: FactRow<'addition'> | undefined;
  readonly use?: FactRow<'use'> | undefined;
}

export const heldAddition = (under: Under, row: FactRow<'addition'>): HeldAddition => ({
  row,
  use: under.of('use', 'addition', row.key)[0],
});

export const additionFrom = ({ row, use }: HeldAddition): Stored['addition'] => ({
  jar: row?.jar as number,
  name: row?.name as string,
  planned: row?.planned ?? null,
  actual: row?.actual ?? null,
  package: use?.package ?? null,
});

/** Writes an addition and the package it came from. @returns its key */
export function putAddition(
  act: OpenAct,
  held: HeldAddition | undefined,
  wanted: Stored['addition'],
): number {
  const { package: box, ...row } = wanted;
  const addition = mustPut(act, 'addition', held?.row, row);
  put(act, 'use', held?.use, box === null ? null : { package: box }, { addition });
  return addition;
}
