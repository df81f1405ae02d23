// A row of a keeper's notes with the file that it came from.
import type { OpenAct } from '../facts/open-act';
import type { Row as FactRow } from '../facts/tables';
import { removeWith } from './put-fact';

/** A row of a keeper's notes that came in: found again when the same file, or a longer one, is brought in later. */
export interface NoteRowEntry {
  /** What makes it the same file, in whatever form the reader of notes chooses; at most 500 characters. */
  readonly file: string;
  /** The headings that it came in under, in order. */
  readonly headings: readonly string[];
  /** Cell by heading, as JSON; null where it came without them. */
  readonly cells: string | null;
  /** Its cells, hashed. */
  readonly cellsSha: string;
  /** What was read of it, hashed. */
  readonly readSha: string | null;
  /** 1 for the first row with these cells in the file, 2 for the second, … */
  readonly occurrence: number;
  /** Line in the file when it came in, header 1. */
  readonly line: number;
  /** Key of the jar it became; null for a row that became no jar. */
  readonly jar: number | null;
}

interface NoteRowFacts {
  readonly row?: FactRow<'noteRow'> | undefined;
  readonly file?: FactRow<'noteFile'> | undefined;
}

export const noteRowFrom = ({ row, file }: NoteRowFacts): NoteRowEntry => ({
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
function fileNamed(act: OpenAct, { file, headings }: NoteRowEntry): number {
  const known = FILES.get(act) ?? new Map<string, number>();
  FILES.set(act, known);
  const called = `${file}\n${headings.join('\n')}`;
  const key = known.get(called) ?? fileIn(act, file, headings);
  known.set(called, key);
  return key;
}

function fileIn(act: OpenAct, name: string, headings: readonly string[]): number {
  const there = act.rows
    .prepare('SELECT key FROM note_file WHERE name = ? AND headings = ?')
    .pluck()
    .get(name, JSON.stringify(headings));
  return typeof there === 'number' ? there : act.insert('noteFile', { name, headings: [...headings] }).key;
}

/** Keeps a row that came in. @returns its key */
export function addNoteRow(act: OpenAct, wanted: NoteRowEntry): number {
  const { headings: _headings, ...row } = wanted;
  return act.insert('noteRow', { ...row, file: fileNamed(act, wanted) }).key;
}

export const removeNoteRow = (act: OpenAct, key: number): void =>
  removeWith(act, 'noteRow', key, [['noteAnswer', 'note_row']]);
