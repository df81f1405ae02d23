// What the keeper is bringing in: the file, what they rematched and mended, the latest preview, the job that runs.
// Lives outside React, so that leaving the screen and coming back loses nothing. Plain functions, one snapshot.
import { useSyncExternalStore } from 'react';
import type { NoteColumn, NoteRowState, NotesPreview, NotesView, Reply } from '../../core/contract';
import { type Job, startJob } from '../state/ledger-calls';
import { go } from '../state/store';
import { questionOf } from './ambiguous';
import type { Problem, Question } from './note-lists';

/** A file from the window crosses as bytes, this many at most. */
const MOST_BYTES = 20 * 1024 * 1024;

export interface NotesFile {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

export interface Running {
  readonly what: 'reading' | 'bringing in';
  readonly done: number;
  readonly total: number | null;
  readonly says: string | null;
}

/** Which page of which rows is looked at, and which of the assumptions. */
export interface Look {
  readonly state: NoteRowState | null;
  readonly rows: number;
  readonly assumptions: number;
  readonly remarks: number;
}

export const ROWS_SHOWN = 50;
export const ASSUMPTIONS_SHOWN = 30;
export const REMARKS_SHOWN = 20;
/** More problems or questions are shown once some of these are settled. */
const MOST_OPEN = 500;

export interface Notes {
  readonly file: NotesFile | null;
  readonly mapping: Readonly<Record<string, NoteColumn>>;
  readonly answers: Readonly<Record<string, string>>;
  /** The latest preview; stays up while a newer one is on its way. */
  readonly preview: NotesPreview | null;
  readonly looking: Look;
  /** Every problem with a cell that was ever shown for this file: a mended one stays where it was. */
  readonly cells: ReadonlyMap<string, Problem>;
  /** Every question ever asked about this file: an answered one stays, with its answer. */
  readonly asked: ReadonlyMap<string, Question>;
  /** Headings of columns that only their cells told the meaning of, in any reading of this file. */
  readonly doubtful: ReadonlySet<string>;
  readonly running: Running | null;
  /** A sentence on why the last step did not happen. */
  readonly trouble: string | null;
  readonly result: Reply<'notes.bringIn'> | null;
}

const nothing: Notes = {
  file: null,
  mapping: {},
  answers: {},
  preview: null,
  looking: { state: null, rows: 0, assumptions: 0, remarks: 0 },
  cells: new Map(),
  asked: new Map(),
  doubtful: new Set(),
  running: null,
  trouble: null,
  result: null,
};

let notes: Notes = nothing;
let job: Job<'notes.preview'> | Job<'notes.bringIn'> | null = null;
/** How often the ledger had changed when the file was last read against it. */
let readAt = 0;
/** Counts up with every job: what an earlier one still says is not listened to. */
let turn = 0;
const listeners = new Set<() => void>();

function set(change: Partial<Notes>): void {
  notes = { ...notes, ...change };
  for (const listen of listeners) listen();
}

export const useNotes = (): Notes =>
  useSyncExternalStore(
    (listen) => {
      listeners.add(listen);
      return () => listeners.delete(listen);
    },
    () => notes,
  );

/** The id under which a mended cell is answered. */
export const cellId = (row: number, heading: string): string => `cell:${row}:${heading}`;

const request = () => ({
  file: { name: notes.file?.name ?? '', bytes: notes.file?.bytes ?? new Uint8Array() },
  mapping: { ...notes.mapping },
  answers: { ...notes.answers },
});

/** What is drawn now. */
const view = ({ state, rows, assumptions, remarks }: Look): NotesView => ({
  state,
  rows: { from: rows, most: ROWS_SHOWN },
  assumptions: { from: assumptions, most: ASSUMPTIONS_SHOWN },
  problems: { most: MOST_OPEN },
  questions: { most: MOST_OPEN },
  remarks: { from: remarks, most: REMARKS_SHOWN },
});

/** A page that is past the end, since fewer rows are left, is the last one there is. */
function within(looking: Look, { pages }: NotesPreview): Look {
  if (!pages) return looking;
  const counts = pages.rows;
  const rows =
    looking.state === null ? Object.values(counts).reduce((sum, one) => sum + one, 0) : counts[looking.state];
  const last = (of: number, size: number): number => Math.max(0, Math.ceil(of / size) - 1) * size;
  return {
    ...looking,
    rows: Math.min(looking.rows, last(rows, ROWS_SHOWN)),
    assumptions: Math.min(looking.assumptions, last(pages.assumptions, ASSUMPTIONS_SHOWN)),
    remarks: Math.min(looking.remarks, last(pages.remarks, REMARKS_SHOWN)),
  };
}

function keepLists(problems: readonly Problem[], questions: readonly Question[]): Partial<Notes> {
  const cells = new Map(notes.cells);
  for (const problem of problems) {
    if (problem.column === null) continue;
    const id = cellId(problem.row, problem.column);
    // What stands in the file and why it was aside at first, not what was typed for it since.
    const { cell, reason } = cells.get(id) ?? problem;
    cells.set(id, { ...problem, cell, reason });
  }
  const asked = new Map(notes.asked);
  for (const question of questions) asked.set(question.id, question);
  return { cells, asked };
}

/** Looks at another page, or at rows of one state; nothing is read again for it. */
export function look(change: Partial<Look>): void {
  set({ looking: { ...notes.looking, ...change } });
  void preview(notes.running === null);
}

/**
 * Reads the file again with all that was answered so far. A preview still under way is dropped.
 * @param quietly only another page is asked for, which is there at once
 */
export async function preview(quietly = false): Promise<void> {
  if (notes.file === null) return;
  job?.cancel();
  turn += 1;
  const mine = turn;
  if (!quietly) set({ running: { what: 'reading', done: 0, total: null, says: null }, trouble: null });
  const started = startJob(
    'notes.preview',
    { ...request(), view: view(notes.looking) },
    ({ done, total, says }) => {
      if (turn === mine) set({ running: { what: 'reading', done, total, says } });
    },
  );
  job = started;
  const answer = await started.done;
  if (turn !== mine) return;
  job = null;
  if (answer.ok) {
    const { value } = answer;
    const looking = within(notes.looking, value);
    const past = (['rows', 'assumptions', 'remarks'] as const).some(
      (list) => looking[list] !== notes.looking[list],
    );
    const open = value.columns.flatMap((one) => (one.doubtful === true ? [one.heading] : []));
    const doubtful = new Set([...notes.doubtful, ...open]);
    set({ running: null, preview: value, looking, doubtful, ...keepLists(value.problems, value.questions) });
    if (past) void preview(true);
    return;
  }
  const question = questionOf(answer.error, answer.sentence);
  if (question) set({ running: null, ...keepLists([], [question]) });
  else set({ running: null, trouble: answer.error.code === 'cancelled' ? null : answer.sentence });
}

/** Ends what runs; its answer is not waited for. */
function drop(): void {
  job?.cancel();
  job = null;
  turn += 1;
}

/** Reads the file again where the ledger has changed since: what was new may be there by now, or gone again. */
export function freshen(revision: number): void {
  if (revision === readAt) return;
  readAt = revision;
  if (notes.file !== null && notes.result === null && notes.running?.what !== 'bringing in') void preview();
}

const sizeTrouble = (name: string, size: number): string | null => {
  if (size === 0) return `There is nothing in ${name}. Choose another file.`;
  if (size <= MOST_BYTES) return null;
  const megabytes = Math.ceil(size / 1024 / 1024);
  return `${name} is ${megabytes} MB, and 20 MB at most can come in at once. Save it in two parts and bring in both.`;
};

/** Takes a file in and reads it. What was answered for another file is forgotten. */
export async function takeFile(name: string, bytes: Uint8Array<ArrayBuffer>): Promise<void> {
  const trouble = sizeTrouble(name, bytes.byteLength);
  if (trouble !== null) {
    set({ trouble });
    return;
  }
  drop();
  set({ ...nothing, file: { name, bytes } });
  await preview();
}

/** Takes in a file as the page was handed it. Too large a one is refused unread. */
export async function takeBlob(file: File): Promise<void> {
  const trouble = sizeTrouble(file.name, file.size);
  if (trouble !== null) {
    set({ trouble });
    return;
  }
  try {
    await takeFile(file.name, new Uint8Array(await file.arrayBuffer()));
  } catch (error) {
    // A file that was moved or locked between choosing and reading.
    const why = error instanceof Error ? error.message : String(error);
    set({ trouble: `${file.name} could not be read (${why}). Choose it again.` });
  }
}

/** What a heading means, from now on; null lets the reader decide again. */
export function rematch(heading: string, meaning: NoteColumn | null): void {
  const mapping = { ...notes.mapping };
  if (meaning === null) delete mapping[heading];
  else mapping[heading] = meaning;
  // What was answered before about the columns as a whole gives way to what is said of this one.
  const {
    'which seeds': _seeds,
    'which days': _days,
    [`means:${heading}`]: _means,
    ...answers
  } = notes.answers;
  set({ mapping, answers });
  void preview();
}

/** Columns mean what they were taken as: as good as chosen. */
export function confirmColumns(columns: NotesPreview['columns']): void {
  const meant = columns.flatMap(({ heading, meaning }) =>
    meaning === null ? [] : [[heading, meaning] as const],
  );
  set({ mapping: { ...notes.mapping, ...Object.fromEntries(meant) } });
  void preview();
}

/** Answers a question or mends a cell ('' leaves the cell blank); null takes the answer back. */
export function answer(asked: string | readonly string[], text: string | null): void {
  const ids = typeof asked === 'string' ? [asked] : asked;
  if (ids.every((id) => (notes.answers[id] ?? null) === text)) return;
  const answers = { ...notes.answers };
  for (const id of ids) {
    if (text === null) delete answers[id];
    else answers[id] = text;
  }
  set({ answers });
  void preview();
}

/** Brings in everything that is ready, as one act. */
export async function bringIn(): Promise<void> {
  if (notes.file === null || notes.running !== null) return;
  turn += 1;
  const mine = turn;
  set({ running: { what: 'bringing in', done: 0, total: null, says: null }, trouble: null });
  const started = startJob('notes.bringIn', request(), ({ done, total, says }) => {
    if (turn === mine) set({ running: { what: 'bringing in', done, total, says } });
  });
  job = started;
  const answer = await started.done;
  if (turn !== mine) return;
  job = null;
  if (answer.ok) {
    set({ running: null, result: answer.value });
    return;
  }
  const stopped = 'Stopped. Nothing came in; the ledger is as it was.';
  const question = questionOf(answer.error, answer.sentence);
  if (question) set({ running: null, ...keepLists([], [question]) });
  else set({ running: null, trouble: answer.error.code === 'cancelled' ? stopped : answer.sentence });
}

/** Stops what is running; the ledger stays as it was. */
export function cancel(): void {
  job?.cancel();
}

/** From the summary back to the rows, with what is still aside. */
export function backToRows(): void {
  set({ result: null });
  void preview();
}

/** Puts the file away. */
export function putAway(): void {
  drop();
  set(nothing);
}

/** Puts the file away, and asks for another one at once. */
export function anotherFile(): void {
  putAway();
  go('notes', 'choose');
}
