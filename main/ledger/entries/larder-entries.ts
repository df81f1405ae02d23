// Sources with their strains; packages, batches and photographs with the keeper's note.
import { Refused } from '../../refusal';
import type { Batch, Package, Photograph, Source } from '../../../core/ledger/records';
import type { OpenAct } from '../facts/open-act';
import type { Rows } from '../facts/fact-rows';
import type { Row as FactRow } from '../facts/tables';
import { type Keyed, over, type Rooted, type Told } from './keyed';
import { mustPut, put, putRemark, remarkOf } from './put-fact';

export type SourceEntry = Keyed<Source>;

interface SourceFacts {
  readonly row?: FactRow<'source'> | undefined;
  readonly strains?: readonly FactRow<'strain'>[] | undefined;
}

const sourceFacts = (rows: Rows, row: FactRow<'source'>): SourceFacts => ({
  row,
  strains: rows.where('strain', 'source', row.key).toSorted((a, b) => a.place - b.place),
});

const sourceOf = (rows: Rows, row: FactRow<'source'>): Rooted<SourceEntry> => ({
  ...sourceFrom(sourceFacts(rows, row)),
  key: row.key,
  uid: row.uid,
});

/** All sources, in the order of entry. */
export const sourceEntries = (rows: Rows): Rooted<SourceEntry>[] =>
  [...rows.all('source')].map((row) => sourceOf(rows, row));

export const sourceFrom = ({ row, strains = [] }: SourceFacts): SourceEntry => ({
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

const UNTOLD = {
  form: null, strains: [], blendTotalPerPiece: null, guaranteed: null, receivedFrom: null, knownGenerations: null, note: null,
}; // prettier-ignore

/** Adds a source with its strains, each in its place on the label. @returns its key */
export const addSource = (act: OpenAct, told: Pick<SourceEntry, 'name'> & Partial<SourceEntry>): number =>
  putSource(act, undefined, { ...UNTOLD, ...told });

export function changeSource(act: OpenAct, key: number, told: Told<SourceEntry>): void {
  const held = sourceFacts(act.rows, act.rows.get('source', key));
  putSource(act, held, over(sourceFrom(held), told));
}

function putSource(act: OpenAct, held: SourceFacts | undefined, wanted: SourceEntry): number {
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

const noted = <K extends 'package' | 'batch' | 'photograph'>(
  rows: Rows,
  kind: K,
  row: FactRow<K>,
): Noted<K> => ({
  row,
  note: remarkOf(rows.where('remark', kind, row.key)),
});

export type PackageEntry = Keyed<Package, 'source'>;

/** All packages, in the order of entry. */
export const packageEntries = (rows: Rows): Rooted<PackageEntry>[] =>
  Array.from(rows.all('package'), (row) => ({
    ...packageFrom(noted(rows, 'package', row)),
    key: row.key,
    uid: row.uid,
  }));

export const packageFrom = ({ row, note }: Noted<'package'>): PackageEntry => ({
  of: row?.of as PackageEntry['of'],
  source: row?.source ?? null,
  name: row?.name as string,
  size: row?.size ?? null,
  price: row?.price ?? null,
  boughtOn: row?.boughtOn ?? null,
  openedOn: row?.openedOn ?? null,
  bestBefore: row?.bestBefore ?? null,
  note: note?.text ?? null,
});

/** Adds a package, or changes the one with that key. @returns its key */
export function putPackage(act: OpenAct, key: number | null, { note, ...fields }: PackageEntry): number {
  const held = key === null ? undefined : noted(act.rows, 'package', act.rows.get('package', key));
  const made = mustPut(act, 'package', held?.row, fields);
  putRemark(act, held?.note, 'package', made, note);
  return made;
}

export type BatchEntry = Keyed<Batch>;

/** The batch with that key, which is known to be there. */
export function batchEntry(rows: Rows, key: number): Rooted<BatchEntry> {
  const row = rows.get('batch', key);
  return { ...batchFrom(noted(rows, 'batch', row)), key, uid: row.uid };
}

export const batchFrom = ({ row, note }: Noted<'batch'>): BatchEntry => ({
  madeOn: row?.madeOn ?? null,
  madeFrom: row?.madeFrom ?? null,
  madeTo: row?.madeTo ?? null,
  word: row?.word ?? null,
  note: note?.text ?? null,
});

const NO_RANGE = { madeFrom: null, madeTo: null } as const;

type NewBatch = Omit<BatchEntry, keyof typeof NO_RANGE> & Partial<BatchEntry>;

export const addBatch = (act: OpenAct, told: NewBatch): number =>
  putBatch(act, undefined, { ...NO_RANGE, ...told });

/** Of a day that is told there is no range any more, and of a range no day. */
export function changeBatch(act: OpenAct, key: number, told: Told<BatchEntry>): void {
  const held = noted(act.rows, 'batch', act.rows.get('batch', key));
  const ranged = typeof told.madeFrom === 'string' || typeof told.madeTo === 'string';
  const other = typeof told.madeOn === 'string' ? NO_RANGE : ranged ? { madeOn: null } : {};
  putBatch(act, held, over(batchFrom(held), { ...other, ...told }));
}

/** @throws Refused 'range of days' for half a range, one the wrong way round, or one beside a day */
export function refuseHalfRange({
  madeOn,
  madeFrom,
  madeTo,
}: Pick<BatchEntry, 'madeOn' | 'madeFrom' | 'madeTo'>): void {
  const whole = madeFrom !== null && madeTo !== null;
  if (whole ? madeOn !== null || madeFrom > madeTo : madeFrom !== madeTo) throw new Refused('range of days');
}

function putBatch(act: OpenAct, held: Noted<'batch'> | undefined, { note, ...row }: BatchEntry): number {
  refuseHalfRange(row);
  const key = mustPut(act, 'batch', held?.row, row);
  putRemark(act, held?.note, 'batch', key, note);
  return key;
}

export type PhotographEntry = Keyed<Photograph, 'jar'>;

/** Photographs of a jar, in the order of entry. */
export const photographEntries = (rows: Rows, jar: number): Rooted<PhotographEntry>[] =>
  rows
    .where('photograph', 'jar', jar)
    .map((row) => ({ ...photographFrom(noted(rows, 'photograph', row)), key: row.key, uid: row.uid }));

export const photographFrom = ({ row, note }: Noted<'photograph'>): PhotographEntry => ({
  jar: row?.jar as number,
  sha256: row?.sha as string,
  width: row?.width as number,
  height: row?.height as number,
  caption: note?.text ?? null,
});

/** @returns its key */
export function addPhotograph(act: OpenAct, { caption, sha256: sha, ...fields }: PhotographEntry): number {
  const { key } = act.insert('photograph', { ...fields, sha });
  putRemark(act, undefined, 'photograph', key, caption);
  return key;
}

export function captionPhotograph(act: OpenAct, key: number, caption: string | null): void {
  putRemark(act, remarkOf(act.rows.where('remark', 'photograph', key)), 'photograph', key, caption);
}
