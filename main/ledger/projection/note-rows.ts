// A row of a keeper's notes with the file that it came from.
import type { OpenAct } from '../facts/open-act';
import type { Rows as FactRows } from '../facts/fact-rows';
import type { Row as FactRow } from '../facts/tables';
import type { Stored } from './records';

export interface HeldNoteRow {
  readonly row?: FactRow<'noteRow'> | undefined;
  readonly file?: FactRow<'noteFile'> | undefined;
}

export const heldNoteRow = (facts: FactRows, row: FactRow<'noteRow'>): HeldNoteRow => ({
  row,
  file: facts.find('noteFile', row.file),
});

export const noteRowFrom = ({ row, file }: HeldNoteRow): Stored['noteRow'] => ({
  file: file?.name as string,
  headings: file?.headings ?? [],
  cells: row?.cells ?? null,
  cellsSha: row?.cellsSha as string,
  readSha: row?.readSha ?? null,
  occurrence: row?.occurrence ?? 1,
  line: row?.line ?? 1,
  jar: row?.jar ?? null,
});

/** Files of notes by name and headings, as each act found or made them: an import asks for each of its rows. */
const FILES = new WeakMap<OpenAct, Map<string, number>>();

/** The file of that name with those headings, made where it is new. */
function fileNamed(act: OpenAct, facts: FactRows, { file, headings }: Stored['noteRow']): number {
  const known = FILES.get(act) ?? new Map<string, number>();
  FILES.set(act, known);
  const called = `${file}\n${headings.join('\n')}`;
  const key = known.get(called) ?? fileIn(act, facts, file, headings);
  known.set(called, key);
  return key;
}

function fileIn(act: OpenAct, facts: FactRows, name: string, headings: readonly string[]): number {
  const there = facts
    .prepare('SELECT key FROM note_file WHERE name = ? AND headings = ?')
    .pluck()
    .get(name, JSON.stringify(headings));
  return typeof there === 'number' ? there : act.insert('noteFile', { name, headings: [...headings] }).key;
}

/** Keeps a row that came in. @returns its key */
export function putNoteRow(act: OpenAct, facts: FactRows, wanted: Stored['noteRow']): number {
  const { headings: _headings, ...row } = wanted;
  return act.insert('noteRow', { ...row, file: fileNamed(act, facts, wanted) }).key;
}
