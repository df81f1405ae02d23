// Sources with their strains; packages, batches and photographs with the keeper's note.
import type { OpenAct } from '../facts/open-act';
import type { Row as FactRow } from '../facts/tables';
import { mustPut, put, putRemark, remarkOf, type Under } from './put';
import type { Stored } from './records';

export interface HeldSource {
  readonly row?: FactRow<'source'> | undefined;
  readonly strains?: readonly FactRow<'strain'>[] | undefined;
}

export const heldSource = (under: Under, row: FactRow<'source'>): HeldSource => ({
  row,
  strains: under.of('strain', 'source', row.key).toSorted((a, b) => a.place - b.place),
});

export const sourceFrom = ({ row, strains = [] }: HeldSource): Stored['source'] => ({
  name: row?.name as string,
  form: row?.form ?? null,
  strains: strains.map(({ genus, species, designation, count }) => ({
    genus,
    species,
    designation,
    countPerPiece: count,
  })),
  blendTotalPerPiece: row?.blendCount ?? null,
  guaranteed: row?.guaranteed ?? null,
  receivedFrom: row?.receivedFrom ?? null,
  knownGenerations: row?.knownGenerations ?? null,
  note: row?.note ?? null,
});

/** Writes a source and its strains, each in its place on the label. @returns its key */
export function putSource(act: OpenAct, held: HeldSource | undefined, wanted: Stored['source']): number {
  const { strains, blendTotalPerPiece: blendCount, ...row } = wanted;
  const source = mustPut(act, 'source', held?.row, { ...row, blendCount }, { notePrivate: true });
  const there = held?.strains ?? [];
  for (let at = 0; at < Math.max(there.length, strains.length); at++) {
    const strain = strains[at];
    const wantedStrain = strain && {
      genus: strain.genus,
      species: strain.species,
      designation: strain.designation,
      count: strain.countPerPiece,
      place: at + 1,
    };
    put(act, 'strain', there[at], wantedStrain ?? null, { source });
  }
  return source;
}

interface Noted<K extends 'package' | 'batch' | 'photograph'> {
  readonly row?: FactRow<K> | undefined;
  readonly note?: FactRow<'remark'> | undefined;
}

export type HeldPackage = Noted<'package'>;
export type HeldBatch = Noted<'batch'>;
export type HeldPhotograph = Noted<'photograph'>;

export const noted = <K extends 'package' | 'batch' | 'photograph'>(
  under: Under,
  kind: K,
  row: FactRow<K>,
): Noted<K> => ({ row, note: remarkOf(under.of('remark', kind, row.key)) });

export const packageFrom = ({ row, note }: HeldPackage): Stored['package'] => ({
  of: row?.of as Stored['package']['of'],
  source: row?.source ?? null,
  name: row?.name as string,
  size: row?.size ?? null,
  price: row?.price ?? null,
  boughtOn: row?.boughtOn ?? null,
  openedOn: row?.openedOn ?? null,
  bestBefore: row?.bestBefore ?? null,
  note: note?.text ?? null,
});

export function putPackage(act: OpenAct, held: HeldPackage | undefined, wanted: Stored['package']): number {
  const { note, ...row } = wanted;
  const key = mustPut(act, 'package', held?.row, row);
  putRemark(act, held?.note, 'package', key, note);
  return key;
}

export const batchFrom = ({ row, note }: HeldBatch): Stored['batch'] => ({
  madeOn: row?.madeOn ?? null,
  word: row?.word ?? null,
  note: note?.text ?? null,
});

export function putBatch(act: OpenAct, held: HeldBatch | undefined, wanted: Stored['batch']): number {
  const { note, ...row } = wanted;
  // Of a day that is known there is no range.
  const range = row.madeOn === null ? {} : { madeFrom: null, madeTo: null };
  const key = mustPut(act, 'batch', held?.row, { ...row, ...range });
  putRemark(act, held?.note, 'batch', key, note);
  return key;
}

export const photographFrom = ({ row, note }: HeldPhotograph): Stored['photograph'] => ({
  jar: row?.jar as number,
  sha256: row?.sha as string,
  width: row?.width as number,
  height: row?.height as number,
  caption: note?.text ?? null,
});

export function putPhotograph(
  act: OpenAct,
  held: HeldPhotograph | undefined,
  wanted: Stored['photograph'],
): number {
  const { caption, sha256: sha, ...row } = wanted;
  const key = mustPut(act, 'photograph', held?.row, { ...row, sha });
  putRemark(act, held?.note, 'photograph', key, caption);
  return key;
}
